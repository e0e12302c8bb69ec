# The desk in English: the sizes and weights of a base.

base-sizes = Sizes, weights, clasp
base-sizes-hint = A number alone is as the field says; 24in, 61cm or 20awg is read as well.
base-in-mm = { $what }, in millimetres
base-in-g = { $what }, in grams
base-in-g-per-m = { $what }, in grams a metre
base-in-degrees = { $what }, in degrees
base-is-guess = Only a guess: { $what }
base-no-size = “{ $found }” can’t be read; write it as { $like }
base-end_outside = Outside diameter
base-end_wire = Thickness of its wire
base-clasp_length = Length
base-clasp_width = Width
base-clasp_thickness = Thickness
base-clasp_outside = Its ring, outside diameter
base-clasp_wire = Its ring, thickness of the wire
base-breakaway = When somebody pulls hard
base-breakaway-yes = it opens by itself
base-breakaway-no = it holds
