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
