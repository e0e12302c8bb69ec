"""Glass in the colours of the twelve months' stones, each in a bezel with its loop."""
import numpy as np

from crystals import brilliant, stone
from relief import Relief
from solids import cut_stone

# What light is left after a millimetre of it, and how much of that counts. The stones they are coloured after are those of the
# list of the American National Association of Jewelers of 1912 with its later additions (from memory); all of them are glass.
COLOURS = {
    "january": ((0.60, 0.02, 0.05), 0.30),
    "february": ((0.42, 0.12, 0.82), 0.24),
    "march": ((0.45, 0.82, 0.98), 0.10),
    "april": ((0.95, 0.97, 1.00), 0.01),
    "may": ((0.03, 0.60, 0.22), 0.28),
    "june": ((0.78, 0.55, 0.92), 0.13),
    "july": ((0.92, 0.02, 0.18), 0.26),
    "august": ((0.58, 0.85, 0.10), 0.20),
    "september": ((0.05, 0.14, 0.78), 0.28),
    "october": ((0.98, 0.38, 0.66), 0.17),
    "november": ((1.00, 0.62, 0.08), 0.20),
    "december": ((0.10, 0.62, 0.90), 0.20),
}


def month(colour, dense):
    def drawn(c, w, h):
        r = w / 2
        cy = h - r
        round_stone = brilliant(cy, r - 0.55, r - 0.55, 8, 0.56, 1.3, 3.2)
        stone(c, cut_stone(round_stone, (0, cy, 0)), colour, dense)
        bezel = Relief(c).wire(np.abs(c.disc(0, cy, r - 0.5)), 0.5, 0.45)
        # Small beads round the bezel, as a milling tool leaves them.
        angle = c.polar(0, cy)[1]
        bezel.z += np.where(bezel.d < 0, 0.06 * np.cos(angle * 40), 0)
        bezel.wire(c.line(0, 2.2, 0, cy - r + 0.5), 0.58).eye().paint("silver", rough=0.2, patina=0.8, seed=121)

    return drawn


RECIPES = {f"birthstone-{name}": month(*look) for name, look in COLOURS.items()}
