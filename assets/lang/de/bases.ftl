# The desk in German: the sizes and weights of a base.

base-sizes = Größen, Gewichte, Verschluss
base-sizes-hint = Eine Zahl allein gilt so, wie es am Feld steht; auch 24in, 61cm oder 20awg wird gelesen.
base-in-mm = { $what }, in Millimetern
base-in-g = { $what }, in Gramm
base-in-g-per-m = { $what }, in Gramm je Meter
base-in-degrees = { $what }, in Grad
base-is-guess = Nur angenommen: { $what }
base-no-size = „{ $found }“ lässt sich nicht lesen; schreib es wie { $like }
base-end_outside = Außendurchmesser
base-end_wire = Dicke seines Drahts
base-clasp_length = Länge
base-clasp_width = Breite
base-clasp_thickness = Dicke
base-clasp_outside = Sein Ring, Außendurchmesser
base-clasp_wire = Sein Ring, Dicke des Drahts
base-breakaway = Wenn jemand fest daran zieht
base-breakaway-yes = geht sie von selbst auf
base-breakaway-no = hält sie
