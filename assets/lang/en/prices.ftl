# The desk in English: what things cost and earn.

prices-title = Costs and prices
prices-travel = Travel, there and back
prices-pieces = Pieces you expect to sell, bases and drops counted one by one
prices-points = How many different prices at most
prices-of = What another price would do: of
prices-to = The other price, in { $currency }
prices-reckon = Work it out
prices-change = What another price would do
prices-earns = One earns { $then } then, in place of { $now }.
prices-same = { $n ->
    [one] If 1 is sold at a show then, it earns what { $sold } earn now: { $earned }.
   *[other] If { $n } are sold at a show then, they earn what { $sold } earn now: { $earned }.
  }
prices-never = However many are sold, they never earn what is earned now: { $earned }.
prices-at-a-loss = As it is, each one loses { $loss } once its share of the stall is in.
prices-by-price = By price
prices-suggested = { $n ->
    [one] By the costs one price would do: { $points }.
   *[other] By the costs these few prices would do: { $points }.
  }
prices-even = { $n ->
    [one] 1 piece earns the stall of { $stall }, at { $earned } a piece as you sell.
   *[other] { $n } pieces earn the stall of { $stall }, at { $earned } a piece as you sell.
  }
prices-never-even = No number of pieces earns the stall of { $stall }: they cost more than they bring.
prices-price = Price
prices-at = { $n ->
    [one] 1 kind; { $sold } sold at a show
   *[other] { $n } kinds; { $sold } sold at a show
  }
prices-margin = Earned by one
prices-least = the one that earns least: { $amount }
prices-each = Piece by piece
prices-about = Costs are parts by your lots, minutes at your rate, and the share of the stall. A “?” stands where parts.ron has no recipe or no lot.
prices-costs = Sold for { $price }, costs { $cost }.
prices-point = By its cost: { $point }
prices-longest = In its longest length it costs { $cost }, at the same price.
prices-no-pieces = “{ $found }” is no number of pieces; write a whole number up to 100000.
prices-no-points = “{ $found }” is no number of prices; write one from 1 to { $most }.
prices-no-price = { $why }
prices-no-cost = What “{ $name }” costs is not known: parts.ron has no recipe or no lot for it.
