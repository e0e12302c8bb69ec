# The desk in French: what the seller reads of cautions.

# The hazards by their names.
hazard-small_part = petite pièce
hazard-small_ball = petite balle
hazard-magnet = aimant
hazard-coin_cell = pile bouton
hazard-glass = verre
hazard-sharp = coupant ou pointu
hazard-breakaway = ne s’ouvre pas en tirant
hazard-cord_loop = longue boucle
hazard-unknown_metal = métal inconnu
hazard-lead = plomb
hazard-cadmium = cadmium
hazard-nickel = nickel
hazard-paint = peinture
hazard-food_allergen = allergène alimentaire
hazard-looks_like_food = ressemble à un aliment
hazard-liquid = liquide
hazard-heavy_on_child = lourd pour un enfant
hazard-chain_too_short = chaîne trop courte
hazard-bangle_size = taille du bracelet
