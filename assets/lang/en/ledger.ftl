# The desk in English: why the ledger refuses.

# The ledger's file and its disk.
ledger-disk-full = the disk is full, so nothing was entered; what is stored is safe. Make room on this computer and do it again
ledger-database = the ledger could not be read or written: { $why }
ledger-damaged = an entry of the ledger is damaged: { $why }
ledger-unreadable = ticket { $number } can't be read ({ $why }); what else is in the ledger is not touched by that
ledger-damaged-file = the ledger { $file } is damaged ({ $why }), so the desk did not start; nothing in it was changed.
ledger-emptied = the ledger { $file } is empty or gone, though this folder had one, so the desk did not start. Was it copied without ledger.sqlite-wal beside it, while a desk was running?
ledger-what-to-do = What you can do: move every file whose name begins with "ledger." out of { $folder } and keep them. Then either
ledger-put-backup = - put a backup there under the name ledger.sqlite (made by `chatelaine backup`) and start again: what was entered since that backup is lost, apart from tickets that still wait on a tablet; or
ledger-begin-anew = - start again without one: a new ledger begins. Tickets, sums and counts of the old one are not in it; the PIN is chosen anew and the tablets are paired anew.
ledger-found-damaged = the ledger's file is damaged; end the desk and start it again: it then says what can be done
ledger-not-kept = this could not be kept, and nothing of it was entered ({ $why }); do it again
ledger-panicked = something went wrong at the desk, and nothing of this was entered; what was entered before is safe
ledger-old-library = this program was built with SQLite { $version }, which can lose an acknowledged entry; 3.51.3 or later is needed
ledger-newer = the ledger was written by a later version of this program (layout { $found }, this one knows { $known })
ledger-older = the ledger is of an earlier version (layout { $found }, this one has { $known }); start the desk on it once

# Shows.
ledger-last-show = show { $show } has the last number that a ledger has, so no other can follow it; nothing was closed. Begin a new ledger
ledger-show-closed = show { $show } is closed, and what it was can't be changed any more
ledger-no-place-name = "{ $found }" is no name of a place; write up to { $most } plain characters
ledger-no-host-name = "{ $found }" is no name of a host; write up to { $most } plain characters
ledger-no-fee = { $found } is no stall fee; write an amount from 0 to { $most } with at most { $digits } decimals
ledger-no-float = { $found } is no float; write an amount from 0 to { $most } with at most { $digits } decimals
ledger-no-tax = { $found } is no tax; write a percentage from 0 to 100 with at most 4 decimals

# Tickets.
ledger-sum-not-confirmed = the sum on the ticket is none of this table's; say first what is charged
ledger-sum-stands = the sum on the ticket is one of this table's; it is charged as the guest saw it
ledger-other-currency = the sum is in { $found }, and this table takes { $taken }; charge today's prices or let the ticket go
ledger-no-ticket = there is no ticket { $id }
ledger-no-line = the ticket has no such line
ledger-state = a ticket that is { $from } can't become { $to }
ledger-closed = a ticket that is { $state } can't be changed any more
ledger-not-ticked = { $n ->
    [one] 1 of the piece's parts are not ticked off yet
   *[other] { $n } of the piece's parts are not ticked off yet
  }
ledger-not-told = the piece has cautions; tick that the guest was told before ringing up
ledger-not-suitable = the piece is not for this wearer ({ $hazards }); change the piece or the wearer, or confirm each of these as sold for a grown-up
ledger-forbidden = a part of the piece may not be sold to anybody ({ $hazards }); take it off the piece
ledger-no-hazard = nothing of this kind speaks against the piece as it is now
ledger-none-left = the count says that no "{ $name }" is left; if it lies before you, say that it was found
ledger-not-sold = a ticket that is { $state } was not sold, so nothing of it can be taken back
ledger-opened-otherwise = another piece was opened with this form already; begin a new sale for this one

# Bills.
ledger-no-bill = there is no bill { $id }
ledger-not-on-bill = the ticket does not stand on this bill
ledger-with-others = the ticket is on a bill with other things, or a part of it is paid; take the money on the bill
ledger-long-bill = a bill has { $most } tickets and { $most } lines at most; begin another
ledger-bill-changed = the bill has changed meanwhile, { $due } is left to pay; look at it again, nothing was taken
ledger-nothing-to-pay = everything on the bill is paid
ledger-no-part = { $amount } is no part of what is due: say an amount above 0 and up to { $due }, in coins that there are
ledger-given-too-little = { $given } was given and { $due } is due; say what was given, or take a part
ledger-paid-already = this is paid, or a part of it is; take it back with its reason
ledger-not-paid = this is not paid yet; take it off
ledger-right-already = this payment is noted in that way already, or was put right before
ledger-no-reason = say why; a few words are enough
ledger-no-words = write a few words in one line, { $most } characters at most

# Parts and the catalogue.
ledger-no-count = nothing called "{ $name }" is counted here
ledger-too-many-there = there would be more than { $most } of it, which no compartment holds
ledger-no-base = there is no base "{ $name }" in the catalogue
ledger-no-base-like = there is no base "{ $name }" in the catalogue; did you mean "{ $like }"?
ledger-no-drop = there is no drop "{ $name }" in the catalogue
ledger-no-drop-like = there is no drop "{ $name }" in the catalogue; did you mean "{ $like }"?
ledger-no-fit = the ring of "{ $name }" does not go onto "{ $base }" by hand: it opens { $opens } mm, and more than { $needs } mm are needed
ledger-no-length = "{ $base }" is made from { $shortest } mm to { $longest } mm, not { $length } mm
ledger-bangle-length = "{ $base }" is a bangle, which has no length; leave `length` out

# Tablets, helpers, numbers.
ledger-nine-kiosks = nine digits are given, or rest until the show closes since their tablet was released, and one is the desk's own; close the show, or pair a released tablet again
ledger-no-digit-for-the-desk = tablets have all ten digits, so the desk has none for numbers of its own; release a tablet, then close the show
ledger-no-name = "{ $name }" can't be a name: a name has 1 to { $most } characters, all of which can be seen, and no comma
ledger-name-taken = "{ $name }" works here already; take another name, so that entries say who made them
ledger-sellers-name = { $name } is the seller's own name; take another, so that entries say who made them
ledger-staff-full = { $most } people help here already; remove somebody who does not come any more
ledger-nobody = nobody called "{ $name }" works here
ledger-number-shape = a ticket number has five digits, as in 3-042-6
ledger-number-check = { $number } is not a ticket number: one digit is wrong or two are swapped; look at the ticket again
ledger-number-range = a kiosk gives the numbers 000 to 999 in one show; close the show to begin anew
