# The desk in English: what the seller reads of cautions.

# The hazards by their names.
hazard-small_part = small part
hazard-small_ball = small ball
hazard-magnet = magnet
hazard-coin_cell = coin cell
hazard-glass = glass
hazard-sharp = sharp
hazard-breakaway = breakaway
hazard-cord_loop = cord loop
hazard-unknown_metal = unknown metal
hazard-lead = lead
hazard-cadmium = cadmium
hazard-nickel = nickel
hazard-paint = paint
hazard-food_allergen = food allergen
hazard-looks_like_food = looks like food
hazard-liquid = liquid
hazard-heavy_on_child = heavy on child
hazard-chain_too_short = chain too short
hazard-bangle_size = bangle size

# What is said to the seller beside a caution; the English stands in the rules and the code as well, and a test holds them together.
seller-for-you = For you:
seller-small-both = Ring and body fit the test cylinder.
seller-small-drop = The ring { $ring ->
    [fits] fits the test cylinder
    [measure] is too close to call: measure it against the test cylinder
   *[no] does not fit the test cylinder
  }; the body { $body ->
    [fits] fits the test cylinder
    [measure] is too close to call: measure it against the test cylinder
   *[no] does not fit the test cylinder
  }.
seller-small-ends = { $size ->
    [fits] Clasp or end rings fit the test cylinder.
    [measure] Clasp or end rings are too close to call: measure them against the test cylinder.
   *[no] Clasp and end rings do not fit the test cylinder.
  }
seller-small-hoop = { $size ->
    [fits] The whole bangle fits the test cylinder.
    [measure] It is too close to call: measure it against the test cylinder.
   *[no] The bangle itself does not fit the test cylinder.
  }
seller-small-off = { $size ->
    [fits] What comes off fits the test cylinder.
    [near] What comes off is too close to call: measure it.
    [measure] What comes off is too close to call: measure it against the test cylinder.
   *[no] What comes off does not fit the test cylinder.
  }
seller-found-forbidden = A test found more than the rule allows ({ $figure }): it may not be sold.
seller-found-grave = A test found more than the rule allows ({ $figure }): do not sell it for this wearer.
seller-found = A test found more than is allowed for children ({ $figure }).
seller-ppm = { $number } ppm
seller-nickel-rate = { $number } µg/cm² a week
seller-elsewhere = A test found it within the limit here. Say what was found to whom it concerns.
seller-exempt = The rule exempts { $why }, under its conditions; keep what proves it.
exempt-CrystalGlass = crystal glass of category 1 to 4
exempt-Enamel = enamel
exempt-NaturalStone = natural stone
exempt-Before1961 = a piece from before 1961
seller-declared = Its supplier states it in writing ({ $paper }, { $day }); that is not a test report. Keep the paper.

# As the rules have it, where nothing was tested and nobody stated anything.
seller-usual-small_part = Not for a child under 3. From 3 to 5 say that it can be swallowed; to all others say: keep it away from children under 3.
seller-usual-small_ball = It does not fit the test cylinder, yet it is as large as a small ball. Balls on a cord or loop count as well: not for a child under 3.
seller-usual-magnet = At 50 or more, or where nobody knows, it may not be sold where it is loose or can come loose. Measure it, or take it off the table.
seller-within-magnet = It is below the limit of the rule, yet no magnet belongs to a small child, and two can draw together inside the body. To all say what swallowed magnets do, and to keep them from pacemakers.
seller-usual-coin_cell = Try the lid before it is handed over. Say that a swallowed cell is an emergency: get medical help at once.
seller-usual-glass = Say that it is glass and can break. Not for a child under 3.
seller-usual-sharp = Show the point or edge. The rule ends at 8 years, within 6 to 12: not for a child of 12 or younger.
seller-usual-breakaway = This chain holds when pulled. Say that a child takes it off for play and sleep.
seller-within-breakaway = It comes apart when pulled hard. A small child's airway shuts at far less: say that it is taken off for play and sleep. Necklaces are not recommended under 3.
seller-usual-cord_loop = The figure is for children under 3; longer loops catch more easily at any age. A shorter length costs the same.
seller-usual-unknown_metal = Say that nobody tested this metal. Do not sell it for a child of 12 or younger: children put things into their mouths.
seller-usual-lead = Brass, cast metal, plate and crystal often hold lead; without a test do not sell it for a child of 12 or younger.
seller-proof-lead = Brass, cast metal, plate and crystal often hold lead; without a test, or what proves an exemption, do not sell it for a child of 12 or younger.
seller-usual-cadmium = Cadmium is usual in cheap cast metal; without a test do not sell it for a child of 12 or younger.
seller-usual-nickel = Ask for a nickel allergy. Without a test nobody can say how much nickel it gives off.
seller-usual-paint = Without a test of the paint do not sell it for a child of 12 or younger.
seller-usual-food_allergen = Say that it is no food any more, and which allergens it holds.
seller-usual-looks_like_food = Say that it is not to be eaten. Not for a child of 5 or younger.
seller-usual-liquid = Say what is in it, and that it is not to be drunk. Not for a child under 3.
seller-usual-heavy_on_child = Offer to take a drop off.
seller-usual-chain_too_short = Measure the neck. A longer chain costs the same.
seller-usual-bangle_size = Let the wearer try it on, or measure the hand round the knuckles.
