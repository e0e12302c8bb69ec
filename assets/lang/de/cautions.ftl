# The desk in German: what the seller reads of cautions.

# The hazards by their names.
hazard-small_part = Kleinteil
hazard-small_ball = kleiner Ball
hazard-magnet = Magnet
hazard-coin_cell = Knopfzelle
hazard-glass = Glas
hazard-sharp = spitz oder scharf
hazard-breakaway = öffnet sich nicht von selbst
hazard-cord_loop = lange Schlaufe
hazard-unknown_metal = unbekanntes Metall
hazard-lead = Blei
hazard-cadmium = Cadmium
hazard-nickel = Nickel
hazard-paint = Lack
hazard-food_allergen = Lebensmittelallergen
hazard-looks_like_food = sieht aus wie Essen
hazard-liquid = Flüssigkeit
hazard-heavy_on_child = schwer für ein Kind
hazard-chain_too_short = Kette zu kurz
hazard-bangle_size = Größe des Armreifs
