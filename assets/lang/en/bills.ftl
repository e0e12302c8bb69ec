# The desk in English: bills, paying and sales.

# Ways to pay, amounts, cash that is given.
way-cash = Cash
way-card = Card
paid-in-cash = in cash
paid-by-card = by card
paid-by-way = by { $way }
cash-given = Cash given
change-due = Given { $given }, change { $change }
refused-way = "{ $name }" is no way to pay here; send one of { $ways }

# What is typed as an amount and is none, and sums that can’t be: the beginning of a sentence each.
amount-no-price = "{ $found }" is not a price; write "8.50"
amount-not-above-zero = "{ $found }" is not a price above zero
amount-above-most = "{ $found }" is not a price up to { $most }
amount-decimals = { $n ->
   *[other] "{ $found }" is not a price in { $currency } with at most { $n } decimals
  }
amount-no-percent = "{ $found }" is not a percentage from 0 to 100; write "6.25"
money-price = the price { $price } of "{ $id }" is not between 0 and { $most }
money-too-large = the sum is larger than { $most }
money-decimals = { $amount } has more decimals than its currency
money-absurd = no table takes { $amount }
money-lines = the sum is not that of its lines
money-percent = a reduction of { $percent } percent is not between 0 and 100 percent
money-below-zero = { $amount } is below zero; a reduction takes off zero or more, and leaves zero or more
money-above-total = { $wish } is more than the sum of { $total }; a reduction only takes off
money-too-little = { $given } is given, which is { $missing } less than what is due
money-reward-percent = a reward of { $percent } percent is not between 0 and 100 percent
money-reward-sum = { $amount } is no sum for free pieces; write one above 0 and up to { $most }
reduce-how-much = Say how much is taken off: a round sum, percent or an amount.

# A bill and what is on it.
bill-title = Bill { $number }
bill-items = On the bill
bill-gifts = Gifts, wrapped apart
bill-to-ticket = to ticket { $number }
bill-gift = Gift
bill-no-gift = No gift
bill-ticket-off = take { $number } off the bill
bill-take-back = Take back
bill-parts-to-tick = { $n ->
    [one] 1 part to tick off
   *[other] { $n } parts to tick off
  }
bill-tell-cautions = tell the guest of the cautions
bill-say-sum = say what is charged
bill-not-for-wearer = not for this wearer yet
bill-goods = Other goods
bill-goods-off = take off { $words }
bill-empty = Nothing is on it yet: add a ticket by its number, or goods with their price.
bill-more = Add to the bill
bill-add-ticket = Add a ticket, by its number
bill-add-goods = Add goods without a home
bill-add = Add
bill-goods-what = What it is
bill-goods-example = Gift box
bill-goods-price = Its price
bill-no-such-ticket = No ticket { $number } has arrived at this desk yet.
bill-ticket-not-open = Ticket { $number } is not open any more.
bill-tickets-alike = Several open tickets have the number { $number }: open the one you mean, and its bill.

# Its sum, and how it is paid.
bill-sum = The sum
bill-taken-off = Taken off goods
bill-taken-off-because = Taken off goods, { $reason }
bill-tax = Tax in all of it
bill-total = Total
bill-so-far = Paid
bill-to-pay-out = To pay out
bill-left = Left to pay
bill-paid = Paid.
bill-next-guest = Next guest
bill-pay-out = Pay out
bill-or-given = Or the cash that is given
bill-reduce-goods = Take something off the goods
bill-or-part = Or a part of it: a deposit, or the first of two ways

# Money that moved, and what was put right.
bill-payments = Payments
bill-money = Money
bill-put-right = Put right
bill-why-sale = paid
bill-why-part = a part of it
bill-why-paid-out = paid out
bill-why-not-this-way = taken out again: it was in another way
bill-why-this-way = put right
bill-in-show = in show { $show }
bill-other-way = It was in another way
bill-why = Why
bill-wrong-button = touched the wrong button
bill-piece-back = Piece { $number } taken back.
bill-some-piece-back = A piece taken back.
bill-part-back = { $name } taken back.
bill-some-drop-back = A drop taken back.
bill-some-goods-back = Goods taken back.
bill-way-put-right = The way to pay put right.
bill-because = Because of: { $reason }.
bill-parts-home = The parts are in their homes again.
bill-parts-gone = The parts are gone.

# Refunds and exchanges.
back-of-bill = From bill { $number }.
back-what = What comes back
back-whole-piece = The whole piece, { $number }
back-parts = Its parts
back-parts-home = lie in their homes again: they can be sold
back-parts-gone = are broken or gone
back-reason-mind = changed their mind
back-reason-broke = it broke
back-reason-too-much = a line too much
back-reason-size = wrong size
back-reason-present = a present that did not suit
back-pay-out = Pay it out
back-not-yet = Not yet: something else comes in its place
refused-back = say what comes back

# Finding a sale again.
sales-title = Sales
sales-find = Find a paid sale
sales-fill-in = Fill in what you know of it.
sales-number = Number
sales-sum = Sum
sales-day = Day
sales-home = Home of a drop
sales-show = Show
sales-search = Find
sales-found = Found
sales-none = No paid sale is like that.
sales-newest = The newest { $n } are shown; say more about the sale to find an older one.
sales-in-show = show { $show }
sales-open = Open
sales-no-show = "{ $found }" is no show; write its number, as in 3.
sales-no-day = "{ $found }" is no day; write it as in 2026-05-31.
sales-no-home = "{ $found }" is not a home; write the tray's letter and the compartment's number, as in "B3".
