# Chatelaine's tablet and its printed card in English.
back = Back
ok = All right
close = Close
languages = Language
looks = Text and colours
looks-text = Size of the text
looks-usual = Usual
looks-large = Large
looks-largest = Largest
looks-contrast = Colours
looks-daylight = Daylight
looks-high = High contrast
looks-motion = Motion
looks-lively = Things move
looks-calm = Things stay still
desk-away = The desk is out of reach; you can go on.
disk-nearly-full = This tablet is nearly full; please tell the seller.
let-go = This tablet can give no numbers; please tell the seller.
practice = Practice: nothing counts
mix-named = { $name }, one from { $home }
mix-one = one from { $home }
mix-note = A mix lies in { $homes }: yours may look different.
sold-out = All taken
tray = Tray { $letter }

welcome-unnamed = Make your own jewellery
welcome-not-paired = This tablet does not belong to a desk yet. Seller: hold the top left corner of the screen, then choose “Pair with a desk”.
welcome-no-catalogue = Waiting for the catalogue from the desk. Seller: check that the desk is running and on the same network.
welcome-being-laid = This table is still being laid. Please come again in a little while.
welcome-invitation = Make your own necklace or bangle. See what it looks like and what it costs, and change it as often as you like.
welcome-begin = Touch to begin
seat-come = Please come to the table
seat-from-to = A seat at the table: { $from } to { $to } min
seat-up-to = A seat at the table: up to { $to } min
put-back = Where does this go?
put-back-hint = Touch the picture of what you have found.
thread = I have a number
thread-ask = Type the number of the ticket
thread-asking = Looking it up…
thread-no-number = One digit is wrong. Look at the number again.
thread-unknown = No piece has this number.
thread-away = The desk can’t be asked now. Try the tablet on which the piece was made.
thread-collect = Collect these and thread them as in the picture
thread-collected = { $n } of { $of }
thread-done = Finished

base-title = Choose your base
base-onward = On to charms and beads
base-shorter = Shorter
base-longer = Longer
base-unfit = Not for this age
base-closes = closes on necks up to { $neck }
base-neck = Neck: { $neck }
base-neck-ask = Neck size
neck-title = How far round is the neck?
neck-why = Measured where the chain will lie. It is only used for this piece.
neck-unknown = Not measured
not-to-be-worn = Not to be worn
base-left-off-title = Some charms went back
base-left-off = { $n ->
    [one] One charm does not go onto this base. It is back in its compartment.
   *[other] { $n } charms do not go onto this base. They are back in their compartments.
  }
falls-throat = close round the throat
falls-neck = round the base of the neck
falls-collarbone = on the collarbone
falls-below-collarbone = just below the collarbone
falls-breastbone = on the breastbone
falls-low = below the breastbone

stage-undo = Undo
stage-redo = Redo
stage-anew = Start over
stage-surprise = Surprise me
stage-no-surprise = Nothing that is left fits what you asked for. Ask for less under “Find”, or raise the budget.
stage-to-left = One place to the left
stage-to-right = One place to the right
stage-take-off = Take off
stage-nearer = Look closer
stage-whole = See the whole piece
stage-true-size = See it at its real size
stage-usual-size = Back to the usual size
stage-hint = Touch a charm, or drag it onto the base.
stage-review = Look it over
stage-no-room-title = No more room
stage-no-room = { $n ->
    [one] Only one charm has room on this base. Take one off first, or choose a longer base.
   *[other] { $n } charms have room on this base. Take one off first, or choose a longer base.
  }
stage-no-room-at-all = { $n ->
    [one] Only one charm fits on this base. Take one off, or choose another base.
   *[other] Only { $n } charms fit on this base. Take one off, or choose another base.
  }
trouble-too-short = This length is too short for that neck. Choose a longer one.
trouble-other = This piece can’t be made as it is. Change the base or take a charm off.
rows-before = Rows before
rows-after = More rows

why-sold-out-title = All taken
why-sold-out = Every { $name } of the table is taken, or hangs on your piece already.
why-too-dear-title = More than your budget
why-too-dear = With { $name } the piece would cost more than you have. Take something off, or raise the budget.
why-not-for-title = Not for this age
why-no-fit-title = The ring is too small
why-no-fit = The ring of { $name } opens { $opens } mm; this base needs { $needs } mm. Another base may take it.

filters = Find
filters-title = What do you want to see?
filters-any = Any
filters-clear = See everything
filters-show = Done
filters-budget = I have
filters-price = Each costs at most
filters-up-to = up to { $sum }
filters-have = I have { $sum }
filters-end = No longer asked:
filters-sort = Sort
filters-colour = Colour
filters-finish = Metal

sort-Charm = Charms
sort-Bead = Beads
sort-Vial = Vials
sort-Locket = Lockets
sort-Key = Keys
sort-Crystal = Crystals
sort-Tassel = Tassels
sort-Found = Found pieces
colour-Golden = golden
colour-Silvery = silvery
colour-Coppery = coppery
colour-Clear = clear
colour-White = white
colour-Black = black
colour-Red = red
colour-Pink = pink
colour-Orange = orange
colour-Yellow = yellow
colour-Green = green
colour-Blue = blue
colour-Violet = violet
colour-Brown = brown
finish-AntiqueBrass = antique brass
finish-AntiqueSilver = antique silver-coloured
finish-Copper = copper
finish-Gold = gold-coloured
finish-Silver = silver-coloured
finish-Gunmetal = gunmetal
finish-Steel = steel

wearer-ask = Who is it for?
wearer-ask-short = Who is it for?
wearer-why = Some pieces are not safe for small children. Nothing else is asked.
wearer-under3 = Under 3 years
wearer-from3to5 = 3 to 5 years
wearer-from6to12 = 6 to 12 years
wearer-from13 = 13 or older
wearer-unknown = Not said

lines-title = What it costs
lines-subtotal = Subtotal
lines-discount = Discount
lines-tax = Tax
lines-tax-inside = Tax included
tag-with-tax = with tax
lines-total = Total

caution-title = Good to know
caution-count = { $n ->
    [one] { $n } caution
   *[other] { $n } cautions
  }
caution-none = Nothing to be careful about was found.
caution-deferral = A guide, not a test report; local rules and a qualified safety assessment decide.
caution-small_part = Small parts: a child under 3 can choke on them.
caution-small_part-away = Small parts: keep away from children under 3.
caution-small_ball = Choking hazard: as large as a small ball. A child under 3 can choke on it.
caution-magnet = A strong magnet. Swallowed magnets can do grave harm: keep it from children, and away from pacemakers.
caution-magnet-unknown = A magnet, and nobody knows how strong it is. Swallowed magnets can do grave harm: keep it from children, and away from pacemakers.
caution-magnet-within = A weak magnet. A swallowed magnet can do harm: watch a child who wears it, and keep it away from pacemakers.
caution-magnet-together = Several magnets. Swallowed, they can draw together inside the body and do grave harm: keep them from children, and away from pacemakers.
caution-coin_cell = A button cell: keep it from children. If swallowed, it burns within hours: get medical help at once.
caution-glass = Glass: it can break into sharp pieces.
caution-sharp = A sharp edge or point.
caution-breakaway = It does not come apart when pulled: take it off a child for play and sleep. Not recommended under 3.
caution-breakaway-apart = It comes apart when pulled hard, but that may not be enough: take it off a young child for play and sleep. Not recommended under 3.
caution-cord_loop = A long loop can catch: watch a child who wears it.
caution-unknown_metal = Nobody knows this metal: it was not tested for all of lead, cadmium and nickel.
caution-unknown_metal-declared = Nobody knows this metal. Its supplier states in writing that lead, cadmium and nickel are within the limits; it was not tested.
caution-lead = It may contain lead; it was not tested.
caution-lead-declared = It may contain lead; its supplier states in writing that it is within the limit. It was not tested.
caution-lead-found = A test found { $number } ppm of lead, beyond the limit of { $limit }.
caution-lead-elsewhere = A test found { $number } ppm of lead: within the limit of { $limit } here, yet more than some rules allow for children.
caution-lead-children = A test found { $number } ppm of lead: beyond the limit of { $limit } for children. No limit for this age is known to us.
caution-lead-exempt = A test found { $number } ppm of lead. The rule exempts it from its limit of { $limit }.
caution-cadmium = It may contain cadmium; it was not tested.
caution-cadmium-declared = It may contain cadmium; its supplier states in writing that it is within the limit. It was not tested.
caution-cadmium-found = A test found { $number } ppm of cadmium, beyond the limit of { $limit }.
caution-cadmium-elsewhere = A test found { $number } ppm of cadmium: within the limit of { $limit } here, yet more than some rules allow for children.
caution-cadmium-children = A test found { $number } ppm of cadmium: beyond the limit of { $limit } for children. No limit for this age is known to us.
caution-nickel = It may give off nickel; it was not tested. Do not wear it with a nickel allergy.
caution-nickel-declared = It may give off nickel; its supplier states in writing that it is within the limit. It was not tested. Do not wear it with a nickel allergy.
caution-nickel-found = A test found { $number } µg/cm² a week of nickel, beyond the limit of { $limit }. Do not wear it with a nickel allergy.
caution-nickel-elsewhere = A test found { $number } µg/cm² a week of nickel: within the limit of { $limit } here, yet more than some rules allow for children. Do not wear it with a nickel allergy.
caution-nickel-children = A test found { $number } µg/cm² a week of nickel: beyond the limit of { $limit } for children. No limit for this age is known to us. Do not wear it with a nickel allergy.
caution-paint = Its paint may contain lead; it was not tested.
caution-paint-declared = Its paint may contain lead; its supplier states in writing that it is within the limit. It was not tested.
caution-paint-found = A test found { $number } ppm lead in the paint, beyond the limit of { $limit }.
caution-paint-elsewhere = A test found { $number } ppm lead in the paint: within the limit of { $limit } here, yet more than some rules allow for children.
caution-paint-children = A test found { $number } ppm lead in the paint: beyond the limit of { $limit } for children. No limit for this age is known to us.
caution-food_allergen = A decoration, not to be eaten. Its allergens are not known: do not wear it with a food allergy.
caution-food_allergen-known = A decoration, not to be eaten. It contains: { $allergens }. Do not wear it with an allergy to that.
caution-looks_like_food = It looks like food, but is not to be eaten: a child can take it for food and choke on it.
caution-liquid = A liquid is in it: it can break or leak. Do not drink it.
caution-heavy_on_child = It weighs { $number } g with all that hangs on it, much for a young neck.
caution-chain_too_short = It closes on necks up to { $number } mm round: measure the neck.
caution-chain_too_short-own = It closes on necks up to { $number } mm round; you gave { $limit } mm.
caution-bangle_size = It goes over hands up to { $number } mm round: measure the hand.
caution-bangle_size-slips = It is { $number } mm round inside and may slip off the hand.
unsuitable-under3 = This piece is not for a child under 3.
unsuitable-child = This piece is not for a child of this age.
unsuitable-anyone = A part of this piece should not be worn as it is. Please ask the seller.
unsuitable-forbidden = A part of this piece may not be sold. Please ask the seller.
unsuitable-nothing = Nothing on this table suits. Please ask the seller.
unsuitable-unknown = A part of this piece is not for every child. Who is it for?
unsuitable-base = Another base or length
unsuitable-change = Change who it is for
unsuitable-show = See what suits
unsuitable-back = Back to the charms
grown-up = I am a grown-up and have read this.
grown-up-read = { $n ->
    [one] Read the caution first
   *[other] Read the { $n } cautions first
  }

allergen-Milk = milk
allergen-Egg = egg
allergen-Fish = fish
allergen-Crustaceans = crustaceans
allergen-TreeNuts = tree nuts
allergen-Peanuts = peanuts
allergen-Wheat = wheat
allergen-Soybeans = soybeans
allergen-Sesame = sesame
allergen-Gluten = gluten
allergen-Celery = celery
allergen-Mustard = mustard
allergen-Sulphites = sulphites
allergen-Lupin = lupin
allergen-Molluscs = molluscs
month-1 = January
month-2 = February
month-3 = March
month-4 = April
month-5 = May
month-6 = June
month-7 = July
month-8 = August
month-9 = September
month-10 = October
month-11 = November
month-12 = December
date-month = { $month } { $year }
date-day = { $n } { $month } { $year }
dated-not_noted = date not noted
dated-as_of = as of { $day }
dated-of = of { $day }
dated-in_force = in force since { $day }
dated-applies = applies from { $day }
dated-made_after = for what is made after { $day }
dated-edition = edition { $edition }
status-read = read
status-second_hand = second-hand
status-from_memory = from memory
status-practice = common practice, no source

review-title = Your piece
review-send = Send to the desk
review-sending = Sending…
send-failed-title = Not sent
send-not-paired = This tablet does not belong to a desk yet. Your piece stays here; please ask the seller.
send-let-go = The desk does not know this tablet any more, so it can give no number. Your piece stays here; please ask the seller.
send-practice-over = Practice has just ended, so your piece was not sent. Send it again: from now on it counts.
send-no-numbers = This tablet has no number left to give. Your piece stays here; please ask the seller.
send-disk = This tablet can’t store your piece just now. It stays on the screen; please show it to the seller.
send-refused = The desk could not take the piece. It stays on the screen; please show it to the seller.
send-short-title = Somebody was quicker
send-short = { $names }: the last one has just been taken. The rest of your piece is here; please choose again.

sent-title = Your number
sent-next = Go to the desk. When your number is called, your piece is put together.
sent-thread = Collect your charms from their homes and thread them. Then bring your piece to the desk. On every tablet your number shows this list again.
sent-kept = Your piece is kept on this tablet and will be delivered to the desk. Your number is good.
sent-short = One of your charms may be gone; the desk will help you choose.
sent-refused = The desk could not take your ticket. Please go there with your number; the seller can take it in.
sent-homes = Where your charms live on the table
sent-done = Done

anew-title = Start over?
anew-text = Your piece is put away, and you begin with an empty base.
anew-keep = Keep my piece
anew-yes = Start over
idle-title = Still there?
idle-text = Without an answer your piece is put away.
idle-here = I am here

seller-title = For the seller
seller-asking = Asking the desk…
seller-language = Language of a new guest
seller-hand = Trays
seller-right-handed = Trays on the right
seller-left-handed = Trays on the left
seller-looks = How the screens look for a new guest
seller-screen = Size of the screen
seller-measured = One millimetre is { $px } pixels wide. Guests can see their piece as large as it is.
seller-not-measured = Not measured yet.
seller-card = Match a bank card
card-ask = Hold a bank card against the drawn one, top left corners together. Make the drawn card just as large.
card-much-smaller = Much smaller
card-smaller = Smaller
card-larger = Larger
card-much-larger = Much larger
card-same = Same size
seller-desk = Desk
seller-paired = Paired with { $desk } as kiosk { $digit }.
seller-not-paired = Not paired with a desk.
seller-waiting = { $n ->
    [0] No ticket waits.
    [one] One ticket waits to be delivered.
   *[other] { $n } tickets wait to be delivered.
  }
seller-let-go = The desk does not know this tablet any more: it gives no numbers until it is paired again.
seller-aside = { $n ->
    [one] One ticket was not taken by the desk; its page “Kiosks” shows it.
   *[other] { $n } tickets were not taken by the desk; its page “Kiosks” shows them.
  }
seller-open-desk = Open the desk here
seller-phone = Or open the desk on a phone in the same network: point its camera here.
seller-desk-not-opened = No browser could be started here. Use a phone, or another computer.
seller-pair = Pair with a desk
seller-leave = Leave the kiosk
seller-not-kept = The settings hold until the tablet is switched off; its disk did not take them.
pin-ask = The seller’s PIN
pin-not-set = No PIN was chosen yet. Choose one at the desk, or type the setup code that its terminal shows.
pin-wrong = That is not the PIN.
pin-wait = Too many tries. Wait { $seconds } seconds.
pin-away = The desk is out of reach, and this tablet has not seen the PIN yet.
pair-address = Address of the desk
pair-code = Code shown at the desk
pair-done = Paired. This is kiosk { $digit }.
pair-wrong-code = That is not the code the desk shows. Compare it with the page “Kiosks”.
pair-no-code = The desk shows no code now: each is good once, for ten minutes. Ask for a new one on the page “Kiosks”.
pair-no-digit = The desk has no digit left for another tablet. Close the show, or pair a released tablet again.
pair-desk-failed = The desk could not write the pairing down. Look at the desk and try again.
pair-not-reached = No desk answers at { $desk }. Compare the address with the desk’s page “Kiosks”.
pair-not-a-desk = What answers at { $desk } is no desk. Compare the address with the desk’s page “Kiosks”.
pair-disk = This tablet could not store the pairing. Make room on it and try again.
key-erase = Erase
key-enter = Enter

## The card of cautions that is printed at the desk

card-title = { $table }: who can wear it?
card-about = Cautions under the rules of { $region }, one by one. What hangs together can weigh too much or be too long; the ticket says so.
card-bases = Bases
card-ready = without charms, at the length that lies ready
card-drop = Charm or bead
card-base = Base
card-care = With care
card-fine = Nothing found
card-signs = What the signs mean and where they come from
card-found = { $what } (found by a test)
card-declared = { $what } (stated by the supplier)
code-small_part = small part
code-small_ball = size of a small ball
code-magnet = magnet
code-coin_cell = button cell
code-glass = glass
code-sharp = sharp
code-breakaway = round the neck
code-cord_loop = long loop
code-unknown_metal = unknown metal
code-lead = lead
code-cadmium = cadmium
code-nickel = nickel
code-paint = paint
code-food_allergen = food, allergens
code-looks_like_food = looks like food
code-liquid = liquid
code-heavy_on_child = heavy
code-chain_too_short = neck size
code-bangle_size = hand size
