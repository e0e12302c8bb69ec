# The desk in English: what is made, bought, packed and planned, and the year.

act-bench = Work at the bench
bench-no-form = This form is not whole. Open the page again; nothing was entered.
bench-off-list = Remove
cuts-keep = Keep as a list to tick off
cuts-kept = Lists that are worked on
cuts-done = { $n } of { $all } cut
cuts-changed = The spools have changed since this plan was made; plan the cuts again. Nothing was kept.
cuts-follow = Tick off each spool when it is cut. What stays on it is what the next plan begins with.
cuts-tick = Cut, line { $n }
cuts-away = Put this list away

parts-title = Parts and shopping
parts-about = { $n ->
    [0] Nothing has to be made, so no parts are needed.
    [one] What 1 piece to make takes from the drawers.
   *[other] What { $n } pieces to make take from the drawers.
  }
parts-buy = To buy
parts-enough = The drawers have enough of everything.
parts-short = Short
parts-price = Price
parts-lots = { $n ->
    [one] 1 lot, { $amount } in all.
   *[other] { $n } lots, { $amount } in all.
  }
parts-no-offer = No lot is offered in parts.ron.
parts-stops = Without it these stop: { $what }.
parts-in-all = In all
parts-drawers = What the batch takes
parts-needed = Takes
parts-without = Not in this, since parts.ron has no recipe: { $what }.

made-title = Made and checked
made-about = Note what you made, of which lots, and what you checked. By this the desk knows later which sold pieces can have a bad lot in them.
made-what = What was made
made-put-in = Put them into their compartment: the count grows by so many
made-checks = Checked on each piece
made-check-loops_closed = Loops and rings are closed
made-check-wire_trimmed = Wire ends are trimmed and turned in
made-check-corks_glued = Corks are glued, or there are none
made-check-end_rings = End rings hold
made-check-pull = Pulled by hand, nothing came off
made-lots = Which lots went into them
made-lots-hint = A part whose lots you leave out counts as being of any lot.
made-note = Note
made-keep = Keep
made-before = What was made before
made-of-lots = Lots: { $lots }.
made-all-checked = All was checked.
made-not-checked = Not checked: { $what }.

lots-title = Lots and recall
lots-find = Which pieces have lot
lots-look = Look
lots-none = No lot is called “{ $found }” in parts.ron; write it as it stands in the list below
lots-where = Where lot { $lot } may be
lots-used-nowhere = No recipe takes a part of this lot.
lots-used-in = Its parts go into: { $what }.
lots-take-out = May lie on the table still; take these out and look at them:
lots-sold = { $n ->
    [0] No sold piece can have it.
    [one] 1 sold piece may have it.
   *[other] { $n } sold pieces may have it.
  }
lots-shown = Sold pieces { $from } to { $to } of { $all }, the oldest first.
lots-by-show = By show: { $what }.
lots-by-state = Where they are: { $what }.
lots-earlier = Earlier ones
lots-later = Later ones
lots-all-file = All of them as a table
lots-worst = Pieces in one compartment can’t be told apart, so each that was sold is named until all of them were gone. What is not noted counts as the worst.
lots-bought = What was bought
lots-broken = { $all }, of it broken: { $broken }
lots-paper = Paper: { $paper }.
lots-no-paper = No test report or declaration is noted.
lots-about = Lots stand in parts.ron. Keep the supplier’s report or declaration where the list says that it lies.
lots-children = Pieces for children: what to ask for
lots-children-about = Rules differ by country and change. This list says what to ask about, and not what is right for you.
lots-children-age = For which age is it meant, and which age would others take it for?
lots-children-test = Which tests does a piece for that age need (small parts, metals, pull), and which laboratory may make them?
lots-children-certificate = Who has to write which certificate or declaration, and how long is it kept?
lots-children-label = Which tracking label goes onto the piece or its card (maker, place, day or batch)?
lots-children-small-parts = Which small-parts words stand on the card and beside the table?
lots-children-records = Which lots, checks and sales have to be found again, and for how many years?
lots-children-who = Ask the authority for product safety where you sell, or an accredited laboratory. Until they have said so, sell nothing as made for children.

packing-title = Packing
packing-about = { $n ->
    [0] Everything on the list is packed.
    [one] 1 thing is still to be packed.
   *[other] { $n } things are still to be packed.
  }
packing-again = Next show: unpack all
packing-what = What else
packing-spare = It is a spare
packing-add = Add
packing-usual = Add the usual things
packing-pack = Packed: { $what }
packing-is-spare = spare
packing-forgotten = { $n ->
    [one] forgotten once
   *[other] forgotten { $n } times
  }
packing-forgot = Forgot it
packing-nothing = write what is to be packed
packing-usual-chain = Chain on spools, for lengths cut at the table
packing-usual-tools = Pliers, cutters, gauge and ruler
packing-usual-clasps = Spare clasps and rings
packing-usual-drops = Spare drops in their boxes
packing-usual-bases = Spare chains and bangles
packing-usual-float = Float in notes and coins
packing-usual-tablets = Tablets and the computer
packing-usual-chargers = Chargers, power bank, extension lead
packing-usual-reader = Card reader, charged
packing-usual-lights = Lights and mirror
packing-usual-paper = Printer paper, bags, cards
packing-usual-cautions = Printed cautions and permit

plans-title = Shows to come and orders
plans-shows = Shows to come
plans-no-shows = No show is planned.
plans-day = Day
plans-place = Place
plans-fee = Stall fee
plans-deadline = Deadline
plans-permit = Number of the permit
plans-note = Note
plans-add-show = Add the show
plans-passed = over
plans-is-fee = Fee: { $fee }.
plans-is-deadline = Deadline: { $day }.
plans-is-permit = Permit: { $permit }.
plans-no-place = write where the show is
plans-no-fee = “{ $found }” is no fee; write an amount from 0, as 45.00
plans-orders = Custom orders
plans-no-orders = Nothing is ordered.
plans-due = Wanted by
plans-agreed = What was agreed
plans-number = Number
plans-number-hint = A number by which you know whoever ordered, and nothing else: no name and no address.
plans-add-order = Add the order
plans-done = done
plans-late = late
plans-is-done = Done
plans-nothing-agreed = write what was agreed
plans-no-number = “{ $found }” is no number; write digits alone, 15 at most, and no name

year-title = The year
year-which = Year
year-stock-on = Stock at the end of
year-show = Show
year-no-year = “{ $found }” is no year; write four digits, as 2026
year-no-day = “{ $found }” is no day; write year, month and day, as 2026-12-31
year-nothing = Nothing was sold in { $year }.
year-about = By the calendar of this computer. What was taken back or put right counts in the quarter in which that was done. Shows of practice are not in it. What of it is taxable where is for your tax adviser to say.
year-by-closing = Of some shows an earlier version kept the sums only: these count on the day on which the show was closed.
year-set-apart = Not in these sums, since it could not be added (show, number, amount): { $what }
year-tax = Tax by quarter, place and rate
year-quarter = Quarter
year-q = Q{ $n }
year-net = Sold, without tax
year-the-tax = Tax
year-no-place = place not told
year-rate = { $percent } %
year-rate-unknown = rate not kept
year-payments = Taken, by kind of payment
year-taken = Taken less paid out
year-reductions = Reductions, and what was put right
year-amount = Amount
year-off-reductions = Reductions in all
year-off-by_hand = Of these by hand
year-off-taken_back = Taken back, with tax
year-off-tax_taken_back = Tax in what was taken back
year-off-paid_out = Paid out
year-off-cash_rounding = Cash rounding
year-off-deposits = Paid for what is not sold yet
year-stock = Stock at cost
year-stock-unknown = What lay there at the end of { $day } is not known: this ledger kept no counts by then.
year-stock-worth = At the end of { $day }, the parts in all finished pieces had cost { $worth }.
year-stock-no-cost = Without { $n } pieces whose cost is not known.
year-stock-about = By all lots bought so far. Your own hours, and parts that still lie in drawers, are not in it.
year-stock-since = Counts are known since { $day }.

act-restore = Putting a backup in the ledger’s place
restore-this = Put this copy in the ledger’s place
restore-about = When the desk starts next, everything is as it was in this copy: tickets, sums, counts, PINs and paired tablets. What was entered since then is kept in a folder beside the ledger, but is in no page and no sum any more.
restore-do = At the next start
restore-waits = When the desk starts next, { $name } takes the ledger’s place. What is entered until then will not be in it.
restore-not = Not after all
restore-failed = the copy “{ $name }” is not whole or of another version, so it can’t take the ledger’s place; choose another

hand-over-title = Card for piece { $number }
hand-over-piece = Piece { $number }
card-not-known = What it is made of is not known.
card-keep = Keep this card: by its number the maker finds what the piece was made of.
paper-link-card = Card for the piece
