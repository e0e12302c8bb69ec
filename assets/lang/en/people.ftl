# The desk in English: signing in, helpers, tablets, trays.

# Choosing a PIN and signing in.
setup-title = Choose a PIN
setup-heading = Choose the seller’s PIN
setup-about = 6 to 12 digits without a pattern. It opens this desk, and the settings of every kiosk.
setup-code = Setup code, as the desk’s terminal shows it
pin-field = PIN
pin-again = The PIN again
pin-shape = 6 to 12 digits
setup-keep = Keep this PIN
setup-not-the-code = This is not the code that the desk’s terminal shows.
pin-not-same = The two are not the same. Type the PIN twice.
pin-not-right = This is not the PIN.
pin-too-many = { $n ->
    [one] Too many tries. Wait 1 second, or sign in on the machine that the desk runs on.
   *[other] Too many tries. Wait { $n } seconds, or sign in on the machine that the desk runs on.
  }
pin-not-a-pin = A PIN has 6 to 12 digits and nothing else.
pin-too-easy = This PIN is among the first that anybody would try. Choose digits without a pattern.
sign-in = Sign in
sign-in-lost = You were signed out before this was entered. Sign in and do it again.
sign-in-sellers-desk = The seller’s desk
sign-in-desk = The desk
sign-in-name = Your name
sign-in-name-hint = – the seller leaves this empty
sign-in-who = Who are you?
sign-in-no-match = This name and this PIN do not go together.

# Who did something.
seller-by-name = Seller
approved-by-the-seller = { $name }, approved by the seller

# Another PIN.
change-pin = Change the PIN
change-pin-of = Change the PIN of { $name }
change-own-pin = Change your PIN
change-pin-about = Every other phone and laptop on which you are signed in is signed out.
change-pin-tablets = A tablet that is out of reach goes on with the old PIN until the desk has told it the new one.
pin-now = The PIN now
pin-new = The new PIN, 6 to 12 digits without a pattern
pin-new-again = The new PIN again
change-it = Change it
new-pin-not-same = The two are not the same. Type the new PIN twice.

# Helpers.
staff-title = People
staff-who = Who works here
staff-you = – you. Everything is yours to do.
staff-about = A helper checks pieces, rings them up and counts. Giving money back, taking much off, closing a show and pairing or releasing a tablet need your PIN, which you can type on the helper’s phone for that one time. This page and signing others out are yours alone.
staff-add = Add a helper
staff-name = Name, as entries will say it
staff-add-yes = Add, and make a PIN
staff-since = – helps since { $time }
staff-new-pin = New PIN
staff-remove = Remove
staff-act = { $act } – { $name }
staff-pin-title = A helper’s PIN
staff-pin-of = The PIN of { $name }
staff-pin-told = Tell { $name } now: it is shown only this once. On their phone they open this desk, type their name and this PIN, and can choose another PIN on the page Kiosks.
done = Done
staff-ask-pin = A new PIN for { $name }?
staff-ask-pin-text = The one they have opens nothing any more, and their phones are signed out.
staff-ask-pin-yes = Make a new PIN
staff-ask-remove = Remove { $name }?
staff-ask-remove-text = They are signed out everywhere and can’t sign in any more. What they entered keeps their name.

# Who is signed in.
devices = Signed-in devices
devices-own = Where you are signed in
device-of = { $name }:
device-at = at { $address }, since { $time }
device-this = , this one
browser-on = { $program } on { $system }
browser-unnamed = A browser
sign-out-everywhere = Sign out everywhere
sign-everybody-out = Sign everybody out

# The tablets, and a phone as another till.
phone-till = A phone as another till
phone-till-scan = Point the camera of a phone in the same network at this, and sign in there.
phone-till-others = If it finds nothing there: other addresses
phone-till-alone = This desk is in no network, so no phone reaches it: { $address } works on this machine alone.
qr-of = QR code for { $address }
pair-kiosk = Pair a kiosk
pair-type-code = { $n ->
    [one] Type this on the tablet, within 1 minute:
   *[other] Type this on the tablet, within { $n } minutes:
  }
pair-desks-address = The desk’s address:
pair-here-alone = { $address } (only on this machine: it is in no network)
pair-another-code = Another code
pair-about = Each code pairs one tablet and is good for ten minutes.
pair-new-code = New pairing code
kiosks-paired = Paired kiosks
kiosks-tally = Paired
kiosks-none = No kiosk is paired yet.
kiosk-since = Paired { $time }
kiosk-in-reach = in reach
kiosk-silent = { $n ->
    [one] silent for 1 minute
   *[other] silent for { $n } minutes
  }
kiosk-not-heard = not heard since the desk started
kiosk-release = Release
kiosk-waiting = { $n ->
    [one] 1 ticket on the way
   *[other] { $n } tickets on the way
  }
kiosk-not-taken = { $n ->
    [one] 1 ticket was not taken
   *[other] { $n } tickets were not taken
  }
kiosk-guest-waits = The guest may wait with the number.
kiosk-unreadable = { $n ->
    [one] 1 file on this tablet should be a ticket and can’t be read. It is kept in the folder “refused”.
   *[other] { $n } files on this tablet should be a ticket and can’t be read. It is kept in the folder “refused”.
  }
kiosk-renumbered-of = Of the guest with { $before }:
kiosk-renumbered = { $before } came in as { $number }
kiosk-comes-in = It comes in as soon as the tablet answers.
kiosk-goes-away = It is put away as soon as the tablet answers.
kiosk-take-in = Take it in
kiosk-put-away = Put it away
put-away-title = Put a ticket away?
put-away-ask = Put ticket { $number } away?
put-away-text = It is not told any more and can’t be taken in. Its file stays on the tablet, in the folder “put-away”.
release-title = Release a kiosk?
release-ask = Release kiosk { $digit }?
release-text = It can send no tickets any more, not even those it still keeps, until it is paired again; then it has its digit again, and they arrive. Another tablet gets the digit only after the show is closed.
release-keeps = { $n ->
    [one] It still keeps 1 ticket: { $numbers }.
   *[other] It still keeps { $n } tickets: { $numbers }.
  }
release-yes = Release it

# The trays and their counts.
trays-card = Who can wear what: the card of cautions, to print
trays-bases = Bases
mistakes-title = Mistakes in the catalogue
mistakes-about = The last good catalogue stays in use until they are mended; this page follows by itself.
mistake-at = , line { $line }, column { $column }
remarks = Remarks
remarks-title = Worth a look
cell-change = change the count
cell-held = { $n } held
part-free = Free
part-held = Held for tickets
part-on-hand = On hand
part-how-many = How many lie in the compartment, free to take?
part-one-less = one less
part-one-more = one more
part-keep = Keep this count
part-sold-out = Mark sold out
to-trays = To the trays
part-no-count = “{ $typed }” is no count; type a number from 0 to { $most }.
cautions-title = Cautions
card-print = Print this card
region-US = United States
region-EU = European Union
region-UK = United Kingdom

# An address that leads nowhere.
nowhere = There is no such page
nowhere-text = There is no page { $path } at this desk. The address may be mistyped, or what stood there is gone.
refused-nowhere = there is nothing at { $path } for tablets

# Why something is refused.
refused-sellers = this is the seller’s to do; you are signed in as { $name }
refused-sellers-pin = the seller’s PIN is changed by who knows it
refused-no-device = that device is not signed in any more
refused-no-such-ticket = no such ticket lies on kiosk { $digit } any more; look at the Kiosks page again
refused-no-part = nothing in the catalogue is called "{ $name }"
refused-no-picture = no picture is called "{ $name }"
refused-pin-not-checked = the PIN could not be checked
refused-system = this machine can’t do it now ({ $why }); do it again
refused-closing = the desk is closing
refused-panic = something went wrong at the desk; what was entered before is safe
refused-too-much = that is more than the desk takes at once
refused-broke-off = what was sent broke off
refused-too-slow = what was sent did not arrive in time; send it again
refused-not-read = what was sent makes no sense here
refused-not-read-because = what was sent can't be read: { $why }
refused-nobody = nobody knows who asks
refused-other-name = open the desk by its number, as in { $address }
refused-other-site = this change was asked for by another site; nothing was changed
refused-practice-not-begun = practice can't begin, and everything is as it was: { $why }
refused-practice-busy = practice can't begin, and everything is as it was: the ledger was busy all the time; try again
refused-lost-in-practice = this would be lost when practice ends: PINs and tablets stay as they are while somebody practises. End practice first, on the Show page
refused-practice-began = practice has begun since this page was shown, so nothing was done; look at the page again
refused-practice-ended = practice has ended since this page was shown, so nothing was done; look at the page again
refused-tablet-unknown = the desk does not know this tablet; pair it again
refused-tablets-not-looked-up = the desk can't look up its tablets now
refused-own-key = the kiosk’s own key has to be 64 hexadecimal digits
refused-practice-old-tablet = the desk practises now; this tablet is of an earlier version, which can't practise
refused-practice-waits = the desk practises now; what is real waits on its tablet until practice ends
