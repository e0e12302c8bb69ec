# The desk in English: the tickets' pages.

# Who a piece is for.
for-under3 = for under 3
for-from3to5 = for 3 to 5 years
for-from6to12 = for 6 to 12 years
for-from13 = for 13 or older
for-unknown = wearer not asked

# Counts, lengths and what is left.
count-drops = { $n ->
    [one] { $n } drop
   *[other] { $n } drops
  }
count-tickets = { $n ->
    [one] { $n } ticket
   *[other] { $n } tickets
  }
count-free-pieces = { $n ->
    [one] { $n } free piece
   *[other] { $n } free pieces
  }
length-both = { $inches } in · { $cm } cm
free-all-held = all held
free-none = sold out
free-some = { $n } free
none-left-touch = The count says that no “{ $name }” is left. If it lies before you, touch “It is here”.
no-picture = no picture

# What became of a ticket.
state-sent = sent
state-called = called
state-checked = checked
state-rung_up = rung up
state-handed_over = handed over
state-let_go = let go
state-taken_back = taken back

# All tickets.
queue-new-sale = New sale
queue-find = Find by number
queue-find-do = Find
queue-paid-sale = Find a paid sale
queue-waiting = Waiting
queue-waiting-none = Nobody waits. Tickets from the kiosks appear here by themselves.
queue-checked = Checked
queue-checked-none = Nothing waits for the money.
queue-done = Done
queue-done-none = Nothing was rung up yet in this show.
queue-bills = Open bills
queue-bill = { $n ->
    [one] Bill { $number }, { $n } ticket
   *[other] Bill { $number }, { $n } tickets
  }
queue-bill-part = { $n ->
    [one] Bill { $number }, { $n } ticket, paid in part
   *[other] Bill { $number }, { $n } tickets, paid in part
  }
queue-older = Show older ones
queue-later = Show later ones
queue-all = To all tickets
queue-of-show = of show { $show }
queue-not-suitable = not suitable for this wearer
queue-not-held = a part is not held
queue-unreadable = This ticket can’t be read
queue-numbered = Tickets { $number }
queue-several = Several tickets have this number. Compare the piece.
queue-found = Found
queue-none-arrived = No ticket { $number } has arrived at this desk yet.
refused-no-group = { $name } is no group of tickets; it is one of waiting, checked and done

# One ticket: its piece.
ticket-title = Ticket { $number }
ticket-piece = The piece
ticket-came = came { $ago }, in show { $show }
ticket-as-it-should = The piece as it should look
ticket-drops-nearer = Its drops, nearer
ticket-number-called = Number called
ticket-who = Who it is for; the cautions follow
ticket-one-more = One more like this
ticket-set = Set
ticket-length-free = Length, free of charge
ticket-shorter = an inch shorter
ticket-longer = an inch longer

# Ticking off.
tick-title = Tick off
tick-tally = { $done } of { $all }
tick-all = All here
tick-sign = ticked off
tick-base = base
tick-instead = instead of { $name }
tick-taken-off = taken off
tick-missing = Missing?
tick-missing-of = Missing? { $name }
tick-here = It is here: count one more
tick-none-left = The count says none is left.

# Changing the piece.
change-title = Change the piece
change-add = Add a drop, by its home
change-add-do = Add
change-base = Base; the drops stay
change-no-home = No drop lives at “{ $typed }”. A home is a tray's letter and a compartment's number, as in B3.
change-none-left = The count says that no “{ $name }” is left.
change-here = It is here: count one more, and add it

# Letting go.
let-go-ask = Let ticket { $number } go?
let-go-text = Its drops are free for other guests at once. The ticket can’t be taken up again.
let-go-yes = Let it go
let-go-title = Let go?
let-go-do = Let the ticket go

# What the page’s forms never send.
refused-part = { $found } is no part of a piece; send base or the line's number
refused-length = a length is a number of millimetres from { $least } to { $most }
refused-wearer = { $found } is no wearer; send one of { $codes }
refused-charge = { $found } is no sum to charge; send seen or today

# A drop is missing.
missing-page = A drop is missing
missing-title = { $name } ({ $home }) is missing
missing-take-off = Take it off the piece
missing-instead = Or hang another one instead
missing-search = Search by name, colour or home
missing-search-do = Search
missing-nothing = Nothing that fits and is in stock.
missing-first = The first { $shown } of { $all }; search to see others.
missing-not-for = Not for this wearer
missing-price-free = { $price } · { $free } free

# What happened so far.
history-title = What happened so far
history-others = Other tickets with this number
history-other = of show { $show }, { $state }
history-by = – by { $name }
history-sent = sent by the guest
history-opened = opened at the desk, for a piece threaded by hand
history-all-ticked = all ticked off
history-added-counted = { $name } added, one more counted
history-added = { $name } added
history-added-one = a drop added
history-base = base changed to { $name }
history-called = called
history-ticked-counted = { $name }: ticked off, one more counted
history-ticked = { $name }: ticked off
history-unticked = { $name }: tick taken back
history-swapped = a drop swapped for { $name }
history-swapped-one = a drop swapped
history-removed = { $name }: taken off
history-removed-one = a drop taken off
history-length = made { $length }
history-length-other = another length
history-judged = the catalogue changed, and with it the cautions
history-wearer-unknown = nobody knows who it is for
history-wearer = it is { $wearer }
history-wearer-other = for somebody else
history-grown-up = sold for a grown-up: { $hazard }
history-grown-up-not = not sold for a grown-up after all: { $hazard }
history-grown-up-one = sold for a grown-up
history-sum-today = today’s prices are charged
history-sum-seen = the sum that the guest saw is charged
history-told = the guest was told of the cautions
history-told-not = not told of the cautions after all
history-rung-up = { $way ->
    [cash] rung up, paid in cash
    [card] rung up, paid by card
   *[other] rung up, paid by { $name }
  }
history-rung-up-so = rung up
history-handed-over = handed over
history-let-go = let go
history-hold-ended = what was not ticked off is not held any more: it waited too long
history-hold-shortened = held no longer than usual: it came while the clock was ahead
history-reduced-percent = { $percent } % taken off, { $reason }
history-reduced-amount = { $amount } taken off, { $reason }
history-reduced-to = down to { $amount }, { $reason }
history-reduced-not = nothing taken off by hand any more
history-reduced-one = something taken off by hand
history-package = package: { $name }
history-package-none = no package
history-plain = { $name } added, without a home
history-plain-one = something without a home added
history-plain-off = something without a home taken off
history-taken-back-home = taken back, the parts are in their homes: { $reason }
history-taken-back-gone = taken back, the parts are gone: { $reason }
history-taken-back = taken back
history-line-back-home = { $name } taken back into { $home }: { $reason }
history-line-back-gone = { $name } taken back, and gone: { $reason }
history-line-back = a drop taken back

# A ticket whose entry is damaged.
unreadable-why = This ticket can’t be read: its entry in the ledger is damaged.
unreadable-what-to-do = All other tickets are as they were. Look at the guest’s piece and let them send it once more; what this one holds is free again when the show is closed. A backup from before may have it whole.
unreadable-technical = For whoever looks into the ledger: { $why }

# The cautions on a ticket's page.
told-cautions = Cautions
told-title = Tell the guest
told-read-at-kiosk = A grown-up confirmed at the kiosk that they had read them.
told-done = The guest was told
told-was = The guest was told.
told-forbidden-piece = A part of this piece may not be sold to anybody. Take it off the piece.
told-not-everyone = This piece does not suit everyone, and nobody said who it is for.
told-not-suitable = This piece is not suitable: { $wearer }.
told-change-or-confirm = Change the piece or who it is for, or confirm each hazard below by its name: it is then sold for a grown-up, and the ledger keeps that.
told-suits-nothing = Nothing on this table suits.
told-suits = On this table suit: { $names }.
told-suits-more = On this table suit: { $names } and { $n } more.
told-never-sold = It may not be sold to anybody.
told-grown-up = Sold for a grown-up: { $hazard }
told-grown-up-was = Sold for a grown-up: { $hazard }.

# The sum, and what comes next.
sum-title = The sum
sum-subtotal = Subtotal
sum-taken-off = Taken off, { $reason }
sum-discount = Discount
sum-tax = Tax
sum-tax-inside = Tax, contained
sum-total = Total
sum-prices-changed = Prices changed since the guest saw this sum: the piece as sent would be { $sum } now. The guest pays what was on the screen.
sum-refund = Refund or exchange
sum-hand-over = Handed over
sum-let-go = This ticket came to nothing; its drops are free again.
sum-taken-back = This piece was paid and taken back.
sum-to-bill = To its bill
sum-paid = { $way ->
    [cash] Paid { $sum } in cash.
    [card] Paid { $sum } by card.
   *[other] Paid { $sum } by { $name }.
  }
sum-paid-over = { $way ->
    [cash] Paid { $sum } in cash and handed over.
    [card] Paid { $sum } by card and handed over.
   *[other] Paid { $sum } by { $name } and handed over.
  }
sum-paid-on-bill = Paid, { $sum } on its bill.
sum-paid-on-bill-over = Paid, { $sum } on its bill and handed over.
sum-bill-left = Bill { $number }, { $sum } left
sum-implausible = No table takes such a sum. Let the ticket go.
sum-say-charged = Say first what is charged.
sum-first = { $what } first.
sum-and = { $one } and { $other }
first-tick = { $n ->
    [one] tick off { $n } more part
   *[other] tick off { $n } more parts
  }
first-tell = tell the guest of the cautions
first-take-off = take off what may not be sold
first-confirm = change the piece or its wearer, or confirm as sold for a grown-up: { $hazards }
sum-cash-rounded = Cash is rounded to the nearest { $step }.
sum-given = Or the cash that is given
sum-together = Together with others, in parts, deposit
sum-changed = The sum has changed to { $sum } meanwhile. Look at the piece again; nothing was charged.

# The bar at the foot of the screen.
bar-tick = { $n ->
    [one] { $n } to tick
   *[other] { $n } to tick
  }
bar-tell = tell the guest
bar-hazards = not suitable: decide
bar-sum = say what is charged
bar-ready = ready
bar-paid = paid
bar-pay = Pay

# Where the sum is none of this table’s.
which-not-ours = The tablet showed the guest { $sum }, which these parts never cost at this table. What is charged?
which-currency = The tablet showed the guest { $sum } in { $currency }, which this table does not take any more. What is charged?
which-seen = What the guest saw, { $sum }
which-today = Today’s prices
which-today-sum = Today’s prices, { $sum }

# The price by hand.
price-title = Price by hand
price-package = A party’s package
price-package-of = { $name }: base and { $n }, { $price }
price-no-package = No package
price-package-gone = There is no package { $name } any more.
price-without-home = On the piece, without a home: from a mixed tray, or the guest’s own
price-what = What it is
price-its-price = Its price; 0 for the guest’s own
price-add = Add
price-off = take off { $name }
price-because = Take something off, because of
price-reason-friend = a friend
price-reason-flaw = a small flaw
price-reason-several = several pieces
price-reason-host = the host’s reward
price-reason-round = to a round sum
price-to = To { $sum }
price-percent = Percent
price-percent-off = % off
price-amount = Amount
price-amount-off = off
price-nothing-off = Take nothing off

# A piece that was threaded by hand.
sale-title = New sale
sale-no-drop = No drop lives at { $homes }. A home is a tray's letter and a compartment's number, as in B3.
sale-no-drops = No drops live at { $homes }. A home is a tray's letter and a compartment's number, as in B3.
sale-quoted = “{ $home }”
sale-does-it-lie = The count says that no “{ $name }” is left. Does it lie before you?
sale-begin-with = Begin with the piece of a ticket, by its number
sale-take = Take
sale-only-goods = Only other goods, without a piece
sale-base = Base
sale-who = Who it is for
sale-who-under3 = under 3
sale-who-from3to5 = 3 to 5 years
sale-who-from6to12 = 6 to 12 years
sale-who-from13 = 13 or older
sale-none-yet = Touch a drop, or type its home. The base alone can be sold as well.
sale-homes = Homes, left to right
sale-read = Read
sale-rub-out = rub out the last one
sale-no-sum = No sum
sale-here = It is here: count it, and to the till
sale-to-till = To the till
sale-tray = Tray { $letter }
sale-none-left = none left
sale-not-counted = not counted

together-other = { $name } has this ticket open as well.
together-own = You have this ticket open on another device as well.
together-changed = Somebody else has changed this ticket since you looked, so nothing of yours was entered:
together-look-again = Look once more, and do it again if it is still right.
