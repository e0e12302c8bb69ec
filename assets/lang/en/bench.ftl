# The desk in English: the bench, before and after a show.

tab-bench = Bench
bench-how-many = How many to make
bench-from-shows = { $n ->
    [0] No show is closed yet: the counts of the catalogue stand for a guess.
    [one] From the one show so far. In eight of ten shows as many are wanted as the pale bar covers.
   *[other] From the { $n } shows so far. In eight of ten shows as many are wanted as the pale bar covers.
  }
bench-usual-show = Any show
bench-legend-usual = usually wanted
bench-legend-there = there
bench-legend-take = take so many
bench-there = There
bench-make = Make
bench-usually = Usually { $from } to { $to }; all of them sold: { $percent } %.
bench-basis-shows = { $n ->
    [one] From 1 show.
   *[other] From { $n } shows.
  }
bench-basis-sold-out = { $n ->
    [one] Sold out at its only show: more was wanted.
   *[other] From { $n } shows, { $out } of them sold out: more was wanted.
  }
bench-basis-sort = As others of its sort sell.
bench-basis-guess = A guess by your count.
bench-how-reckoned = So many are made that one more would cost more, if it is left, than it would earn. All shows count alike; weather and season are yours to add.
bench-no-recipes = What the parts cost is not known: parts.ron in the catalogue’s folder says what drops are made of. Until then half the price stands for the cost.
bench-no-numbers = No numbers can be worked out: a count in the ledger or the catalogue is larger than any show’s.
bench-after = After the shows
bench-restock = What to make again
bench-close-out = The close-out of this show
bench-file-wrong = parts.ron has mistakes; the bench goes without it
bench-cuts = Cut spools
after-net = Sold, without the tax
after-parts = Parts in it
after-fee = Stall fee
after-reward = Reward of the host
after-for-work = Left for your work
after-work = Your hours at your rate
after-beyond = Beyond your hours
after-without-cost = { $n ->
    [one] 1 piece is not in these costs: parts.ron has no recipe or no lot for it.
   *[other] { $n } pieces are not in these costs: parts.ron has no recipe or no lot for them.
  }
after-todays-costs = Costs are those of today’s recipes and lots. Travel is not in it.
after-by-sort = What sold, by sort
after-sort = Sort
after-sold = Sold
after-margin = Earned
after-by-home = What sold, by home
cuts-from = Cut from
cuts-length = Length, as 18in or 45cm
cuts-count = How many
cuts-hint = What is left empty is not cut. What is left of a spool and long enough stays for later.
cuts-plan = Plan the cuts
cuts-better = Look for a better plan
cuts-searching = Looking for { $n } s. The plan below is good already.
cuts-searching-so-far = Looking for { $n } s: what is known so far is at most { $percent } % above the best plan there can be.
cuts-stop = Stop and show the best so far
cuts-list = Cut and tick off
cuts-spool = From { $length }:
cuts-times = { $n } × { $length }
cuts-stays = { $length } stay on it
cuts-lost = { $length } are lost
cuts-missing = The spools are not enough. Missing: { $what }.
cuts-sum = Taken off the spools: { $drawn }, of it lost: { $lost }.
cuts-proven = No plan loses less.
cuts-gap = At most { $percent } % above the best plan there can be.
cuts-no-length = “{ $found }” is no length; write 18in or 45cm.
cuts-no-count = How many of { $length } are wanted can’t be read; write a whole number up to 10000.
cuts-impossible = From “{ $part }” this can’t be cut; choose what lies on spools, and lengths above nothing.
backup-title = Safe keeping
backup-about = The copy holds all that the desk has entered, is read back, and stays beside the ledger. Save it elsewhere as well: a stick, another computer. It holds keys, so keep it to yourself.
backup-do = Make a copy now
backup-save = Save it elsewhere
backup-none = There is no copy of the ledger yet.
backup-old = The last copy of the ledger is of { $day }.
backup-failed = The ledger could not be copied, and no copy was kept; look how much room the disk has.
backup-restore = A copy that lies elsewhere takes the ledger’s place by chatelaine restore --from FILE while the desk is not running. What it replaces is kept in a folder beside it.
bench-nothing-to-make = Nothing has to be made: enough of everything is there.
bench-enough = Enough is there
