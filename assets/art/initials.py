"""Letters punched into small discs."""
import pathlib
import string

import numpy as np
from PIL import Image, ImageDraw, ImageFont
from scipy import ndimage as nd

from relief import Relief

FONT = pathlib.Path(__file__).resolve().parents[1] / "fonts/serif-semibold.ttf"


def written(c, letter, x, y, tall, within):
    """A letter's outline as distances, its middle at (x, y); capitals are `tall` mm high, or as high as leaves their corners
    within a circle of radius `within`."""
    # Capitals of this face are 0.65 of its size.
    size = tall * c.k / 0.65
    font = ImageFont.truetype(str(FONT), round(size))
    left, top, right, low = font.getbbox(letter)
    size *= min(1, 2 * within * c.k / np.hypot(right - left, low - top))
    font = ImageFont.truetype(str(FONT), round(size))
    left, top, right, low = font.getbbox(letter)
    image = Image.new("L", (c.cols, c.rows))
    at = ((x + c.w / 2 + c.MARGIN) * c.k - (left + right) / 2, (y + c.MARGIN) * c.k - (top + low) / 2)
    ImageDraw.Draw(image).text(at, letter, 255, font)
    inside = np.asarray(image) > 127
    return (nd.distance_transform_edt(~inside) - nd.distance_transform_edt(inside)).astype(np.float32) / c.k


def initial(letter, seed):
    def drawn(c, w, h):
        r = w / 2
        cy = h - r
        q, _ = c.polar(0, cy)
        disc = Relief(c).plate(q - r, 0.7, 0.3).groove(q - r * 0.86, 0.22, 0.16)
        disc.sink(written(c, letter, 0, cy, r * 1.02, r * 0.8), 0.42, 0.16)
        disc.wire(c.line(0, 2.2, 0, cy - r + 0.5), 0.55).eye().paint("brass", patina=1.3, seed=seed)

    return drawn


RECIPES = {f"initial-{letter.lower()}": initial(letter, 131 + n) for n, letter in enumerate(string.ascii_uppercase)}
