# The desk in French: the sizes and weights of a base.

base-sizes = Tailles, poids, fermoir
base-sizes-hint = Un nombre seul vaut comme le dit le champ ; 24in, 61cm ou 20awg se lisent aussi.
base-in-mm = { $what }, en millimètres
base-in-g = { $what }, en grammes
base-in-g-per-m = { $what }, en grammes par mètre
base-in-degrees = { $what }, en degrés
base-is-guess = Seulement supposé : { $what }
base-no-size = « { $found } » ne se lit pas ; écris-le comme { $like }
base-end_outside = Diamètre extérieur
base-end_wire = Épaisseur de son fil
base-clasp_length = Longueur
base-clasp_width = Largeur
base-clasp_thickness = Épaisseur
base-clasp_outside = Son anneau, diamètre extérieur
base-clasp_wire = Son anneau, épaisseur du fil
base-breakaway = Si quelqu’un tire fort
base-breakaway-yes = elle s’ouvre d’elle-même
base-breakaway-no = elle tient
