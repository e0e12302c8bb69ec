# The desk in English: lots as they are written down, and spools that are promised.

lot-write = Write down a lot
lot-part = Part
lot-name = The supplier’s number of the lot
lot-day = The day on which it came
lot-amount = How much came: pieces, or the length as 20m
lot-count = How many pieces came
lot-length = The length that came, as 20m
lot-spools = On how many spools, if it goes by the length
lot-broken = Of it broken: pieces, or millimetres
lot-price = What all of it cost, in { $currency }
lot-paper = The supplier’s test report or declaration
lot-paper-hint = Which one, and where you keep it. It is what you show when somebody asks about this lot.
lot-put-away = Add what is whole to the drawer, or to the spools on the bench
lot-keep = Keep
lot-change = Change { $lot }
lot-strike = Strike this lot out
lot-drawers-stay = Drawer and spools stay as they are; only what is told of the lot changes.
lot-did-write = lot { $lot } written down
lot-did-change = lot { $lot } changed
lot-did-strike = lot { $lot } struck out
lot-no-part = No part is called that; choose one of the list. Parts stand in parts.ron.
lot-no-name = Write what the supplier calls the lot, in { $most } letters at most.
lot-no-amount = Write how many of “{ $part }” came, from 1.
lot-too-broken = More is broken than came; give what of it was broken.
lot-no-spools = “{ $found }” is no number of spools; write one from 1 to { $most }.
lot-no-paper = Tell in { $most } letters at most which paper it is and where it lies.
lot-there = lot { $lot } of this part and day is written down already; change it there
lot-none = there is no lot “{ $lot }” of that part and day
lot-no-workshop = there is no parts.ron in the catalogue’s folder yet, which says what drops are made of
lot-file-wrong = parts.ron has mistakes, which the bench’s pages show; mend them first, nothing was written

cuts-promised = { $n ->
    [one] Left out, since a list that is worked on cuts it: { $what }.
   *[other] Left out, since lists that are worked on cut them: { $what }.
  }
cuts-not-there = No spool or remnant of { $length } lies there any more: it was cut by another list, or the spools were counted anew. Nothing was ticked off; put this list away and plan again.
cuts-rest-gone = What was left of this spool, { $length }, has been cut since, so the tick stays. Nothing was changed.
