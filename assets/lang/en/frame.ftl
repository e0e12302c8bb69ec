# The desk in English: what all pages of the desk share.

# Navigation and what stands on every page.
tab-tickets = Tickets
tab-trays = Trays
tab-show = Show
tab-kiosks = Kiosks
pages = Pages
sign-out = Sign out
do-it = Do it
go-back = Go back
to-tickets = To the tickets
understood = Understood
practice-on = Practice: nothing counts.
practice-ends-below = It ends below.
practice-end-there = End it on the Show page
practice-cut-short = The desk was ended while somebody practised. What was practised is thrown away; everything else is as it was.
catalogue-mistakes = { $n ->
    [one] The catalogue has 1 mistake; the last good one is in use.
   *[other] The catalogue has { $n } mistakes; the last good one is in use.
  }
see-mistakes = See what is wrong
tickets-not-taken = { $n ->
    [one] 1 ticket on the tablets was not taken.
   *[other] { $n } tickets on the tablets were not taken.
  }
see-not-taken = See which, and take them in
battery-low-here = The battery of this computer is at { $n } %. Plug its charger in.
battery-low-tablet = The battery of tablet { $digit } is at { $n } %. Plug its charger in.
battery-charging = battery { $n } %, charger plugged in
battery-alone = battery { $n } %, no charger plugged in
back-to-kiosk = Back to the kiosk
refused-way-back = no kiosk runs on this machine
disk-nearly-full-here = This computer’s disk is nearly full. Make room soon: with a full disk no ticket can be entered.

# A refusal, and the seller’s PIN for one act.
not-done-title = Not done
not-done = That was not done
refused-sign-in = sign in first
refused-language = there are no pages in this language
refused-number = this is not a ticket number
refused-no-number = no ticket of this show has this number
sellers-pin = The seller’s PIN
needs-sellers-pin = This needs the seller’s PIN
sellers-to-do = { $what } is the seller’s to do
sellers-this-once = { $what } is the seller’s to do. With the seller’s PIN it is done this once, and you stay signed in as { $helper }.
act-take-back = Taking back what is paid
act-other-way = Putting a payment right
act-reduce = Taking so much off
act-other-sum = Charging a sum that is none of this table’s
act-about-show = Saying what a show is
act-close-show = Closing a show
act-practise = Beginning to practise
act-end-practice = Ending practice
act-pair = Pairing a tablet
act-release = Releasing a tablet

# What the page’s script says.
script-silent = No answer from the desk since { $time }. It is tried again by itself.
script-waiting = The desk has not answered yet…
script-lost = “{ $what }” may not have arrived.
script-unsure = The desk did not answer “{ $what }”. Look whether it was done.
script-again = Enter it again
script-leave = Leave it
script-signed-out = You were signed out before “{ $what }” was entered.
script-enter = Enter it now
script-five-digits = A ticket number has five digits, as in 3-042-6.
script-wrong-digit = { $typed } is not a ticket number: one digit is wrong or two are swapped; look at the ticket again.
ago-now = just now
script-minutes = { $n } min ago
script-hours = { $h } h { $n } min ago
script-new-above = { $n } new above
script-new-below = { $n } new below
script-new-ticket = New ticket { $what }
script-new-tickets = New tickets: { $what }
script-more-waiting = New tickets at the end; { $n } are waiting
