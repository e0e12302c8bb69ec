# The desk in Spanish: the sizes and weights of a base.

base-sizes = Medidas, pesos, cierre
base-sizes-hint = Un número solo vale como dice el campo; también se lee 24in, 61cm o 20awg.
base-in-mm = { $what }, en milímetros
base-in-g = { $what }, en gramos
base-in-g-per-m = { $what }, en gramos por metro
base-in-degrees = { $what }, en grados
base-is-guess = Solo supuesto: { $what }
base-no-size = «{ $found }» no se puede leer; escríbelo como { $like }
base-end_outside = Diámetro exterior
base-end_wire = Grosor de su alambre
base-clasp_length = Largo
base-clasp_width = Ancho
base-clasp_thickness = Grosor
base-clasp_outside = Su anilla, diámetro exterior
base-clasp_wire = Su anilla, grosor del alambre
base-breakaway = Si alguien tira fuerte
base-breakaway-yes = se abre sola
base-breakaway-no = aguanta
