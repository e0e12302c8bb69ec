# The desk in English: the show, practice, trays.

# What a show is.
show-title = Show
show-kind-fair = fair
show-kind-open_house = open house
show-kind-home_party = home party
show-kind-childrens_party = children’s party
show-kind-practice = practice
show-name = Show { $show }
show-name-at = Show { $show }, { $place }
show-practice = Practice
show-no-tax = no tax here
show-tax = { $percent } % tax here
show-float = float { $amount }
show-fee = stall fee { $amount }
show-host = host: { $host }
show-since = Running since { $when }
show-what-it-is = What it is
show-change = Change
show-which = What is this show?
show-which-hint = Place, tax, fee and float then belong to it. It runs without, too, at the table’s own tax.
show-close = Close the show
show-practise = Practise
show-earlier = Earlier shows

# Telling what it is.
about-title = What is the show?
about-ask = What is show { $show }?
about-kind = What kind of event
about-not-told = not told
about-place = Where the table stands
about-place-hint = as Mill Lane, hall 2
about-tax = Tax of the place, in percent
about-own-none = empty: the table shows no tax
about-own-added = on top of the marked prices; empty: { $percent } % as the table has it
about-own-included = contained in the marked prices; empty: { $percent } % as the table has it
about-on-top = on top of the marked prices
about-contained = contained in them
about-float = Cash in the box before the first sale ({ $currency })
about-float-hint = the float
about-fee = Stall fee ({ $currency })
about-fee-hint = what the place costs
about-host = Host
about-host-hint = a label for the reward, as Host at Mill Lane; no name is needed
about-keep = Keep this
about-hint = What you leave empty is not told. All of it can be changed while the show runs; each change is an entry.
typed-no-fee = “{ $found }” is no stall fee; write an amount up to { $most }, as { $like }.
typed-no-float = “{ $found }” is no float; write an amount up to { $most }, as { $like }.
typed-no-sum = “{ $found }” is no sum of cash; write an amount up to { $most }, as { $like }.
typed-no-tax = “{ $found }” is no tax; write a percentage from 0 to 100, as { $like }.
typed-no-count = “{ $found }” is no count of { $piece }; write a whole number.

# Counting the cash and closing.
close-title = Close the show?
close-ask = Close show { $show }?
close-open = { $n ->
    [0] No ticket is open.
    [one] 1 ticket is still open; it is let go, and its drops are free again.
   *[other] { $n } tickets are still open; they are let go, and their drops are free again.
  }
close-next = The next show begins at once, and its numbers start anew.
close-cash = The cash
cash-before = In the box before the first sale
cash-moved = Came in, less what went out
cash-should-be = Should be there
close-counted = Counted in the box ({ $currency })
close-counted-hint = Empty: nobody counted, or note by note below.
close-pieces = Count notes and coins
close-not-alike = Note by note it is { $pieces }, and the sum says { $sum }; count again, or leave one of them empty.
refused-not-running = show { $show } is not the running one

# A show’s sums.
sums = Sums
sums-rung-up = Tickets rung up
sums-let-go = Let go
sums-let-go-closing = { $n }, { $closing } of them at closing
sums-cash = In cash
sums-card = By card
sums-way = By { $way }
sums-paid-out = Of this paid out again
sums-owing = Paid for what is not sold yet
sums-tax = Tax in it
sums-rate = { $rate } % on { $net }
sums-discounts = Discounts and reductions given
sums-back = { $n ->
    [one] Taken back, 1 time
   *[other] Taken back, { $n } times
  }
sums-rounding = Cash rounding
sums-taken = Taken
sums-late = Of this late, from earlier shows
sums-late-tickets = { $n ->
    [one] 1 ticket, { $amount }
   *[other] { $n } tickets, { $amount }
  }
sums-kept-open = Kept open, a part of them is paid
sums-let-go-earlier = Let go, from earlier shows
sums-set-apart = Ticket { $number } was charged { $charged }, which is in none of these sums: it is in another currency, or no table takes as much.
sums-too-large = too large to be added
cash-title = Cash
cash-counted = Counted
cash-agrees = It agrees
cash-missing = Missing
cash-too-much = Too much
cash-difference = Difference
cash-not-counted = not counted
earned = What is left
earned-title = After tax, fee and reward
earned-sold = Sold, without the tax
earned-fee = Stall fee
earned-reward = The host’s reward
earned-pieces-up-to = { $n ->
    [one] 1 free piece, up to { $amount } each
   *[other] { $n } free pieces, up to { $amount } each
  }
earned-left = Left
earned-profit = Profit, before your hours
earned-profit-hint = Parts count at today’s recipes and lots. Your hours and travel are not in it.
earned-hint = What the parts cost is not known, or not of all of them, so this is not the profit.
sold-title = Sold, by home
sold = Sold
sold-by-sort-title = Sold, by sort
sold-by-sort = Sold by sort
sold-what = What
sold-home = Home
sold-part = Part
sold-back = Back
sold-left = Left
sold-marked = As marked
sold-sort = Sort
sold-sort-base = base
sold-sort-Charm = charm
sold-sort-Bead = bead
sold-sort-Vial = vial
sold-sort-Locket = locket
sold-sort-Key = key
sold-sort-Crystal = crystal
sold-sort-Tassel = tassel
sold-sort-Found = found piece

# A closed show.
closed-title = Close-out of show { $show }
closed-title-at = Close-out of show { $show }, { $place }
closed-practice = Close-out of Practice
closed-when = { $table }, closed { $when }
closed-came-late = Came late
closed-came-after = Came after it was closed
closed-came-after-hint = These are not in the sums above. Each counts in the show in which it was rung up.
closed-came-to = { $state } in show { $show }
closed-left = Everything that was left
closed-print = Print
closed-to-running = To the running show
files = Files
files-hint = Tables for a spreadsheet: with points in amounts, as 8.50, or with commas, as 8,50.
files-lines = What was sold, by home
files-tickets = Every ticket
files-money = The money
files-tax = The tax by rate
files-left = What is left
files-all = All of it (JSON)
refused-nothing-called = there is nothing called "{ $name }" at this desk
refused-not-closed = show { $show } has not been closed at this desk
refused-no-show = there is no show { $show } at this desk
refused-no-file = the file could not be made

# Practice.
practice-ask = Practise?
practice-ask-text = Everything works as it always does, on desk and tablets, and nothing of it counts: no stock is taken, no number is used up, and every screen says “Practice”. For as long as it lasts nothing real can be sold.
practice-open-wait = { $n ->
    [one] The ticket that is open waits until practice ends.
   *[other] The { $n } tickets that are open wait until practice ends.
  }
practice-begin = Begin to practise
practice-end-text = All that was done since practice began is thrown away when it ends; then everything is as it was before.
practice-end = End practice
