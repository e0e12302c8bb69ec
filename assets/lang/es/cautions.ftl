# The desk in Spanish: what the seller reads of cautions.

# The hazards by their names.
hazard-small_part = pieza pequeña
hazard-small_ball = pelota pequeña
hazard-magnet = imán
hazard-coin_cell = pila de botón
hazard-glass = vidrio
hazard-sharp = afilado o punzante
hazard-breakaway = no se abre al tirar
hazard-cord_loop = lazo largo
hazard-unknown_metal = metal desconocido
hazard-lead = plomo
hazard-cadmium = cadmio
hazard-nickel = níquel
hazard-paint = pintura
hazard-food_allergen = alérgeno alimentario
hazard-looks_like_food = parece comida
hazard-liquid = líquido
hazard-heavy_on_child = pesado para un niño
hazard-chain_too_short = cadena demasiado corta
hazard-bangle_size = talla del brazalete
