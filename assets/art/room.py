"""The room every drop is seen in, as light by direction: a bench by a window up on the left, linen below and behind."""
import numpy as np

import film
from canvas import step

# The ground of every picture, as the screen shows it: #F3EBDD.
LINEN = np.array((243, 235, 221), float)

WINDOW, SIDE = (-0.50, 0.62, 0.60), (0.90, 0.12, 0.42)  # x right, y up, z to the eye


def pane(x, y, z, to, wide, tall, soft):
    """A rectangular window seen in a direction, upright, half `wide` and `tall` in slopes."""
    to = np.array(to) / np.linalg.norm(to)
    side = np.cross((0, 1, 0), to)
    side /= np.linalg.norm(side)
    up = np.cross(to, side)
    ahead = x * to[0] + y * to[1] + z * to[2]
    u, v = ((x * a[0] + y * a[1] + z * a[2]) / np.maximum(ahead, 1e-3) for a in (side, up))
    edge = np.maximum(np.abs(u) - wide, np.abs(v) - tall)
    return step(-edge, -soft, soft) * (ahead > 0), u, v


def light(x, y, z):
    """Light from a direction, red, green and blue."""
    grey = 0.24 + 0.46 * step(y, -0.05, 1.0) - 0.20 * np.exp(-(((y + 0.34) / 0.22) ** 2)) + 0.26 * step(-y, 0.5, 1.0)
    grey = grey - 0.20 * np.exp(-(((y - 0.26) / 0.14) ** 2)) * step(x, -0.5, 0.5) * step(z, -0.2, 0.5)
    # Away from the window the room is dark.
    grey = grey * (1.0 - 0.45 * step(x - 0.4 * y, -0.4, 0.8))
    rgb = np.maximum(grey, 0.03)[..., None] * np.array((1.0, 0.97, 0.92))
    # The linen behind the drop, as light as the screen shows it; straight behind, the drop itself takes some of its light.
    linen = step(-z, 0.0, 0.2) * (1.0 - 0.45 * np.maximum(-z, 0.0) ** 6)
    rgb = rgb * (1.0 - linen)[..., None] + linen[..., None] * film.light_of(LINEN / 255)
    key, u, v = pane(x, y, z, WINDOW, 0.50, 0.62, 0.05)
    bars = 1 - 0.75 * np.exp(-((np.minimum(np.abs(u), np.abs(v - 0.10)) / 0.035) ** 2))
    rgb = rgb + (key * bars * 6.5)[..., None] * np.array((1.0, 0.93, 0.80))
    fill, _, _ = pane(x, y, z, SIDE, 0.20, 0.75, 0.08)
    return rgb + (fill * 2.4)[..., None] * np.array((0.88, 0.95, 1.0))


def around(rows):
    """All directions by longitude and latitude, poles to the eye and away: x, y, z, and how much of the sphere each is."""
    u, v = np.meshgrid((np.arange(2 * rows) + 0.5) / (2 * rows), (np.arange(rows) + 0.5) / rows)
    a, b = -(u - 0.5) * 2 * np.pi, (0.5 - v) * np.pi
    return np.cos(a) * np.cos(b), np.sin(a) * np.cos(b), np.sin(b), np.cos(b) * (np.pi / rows) ** 2


def on_the_ground(rows=256):
    """Light that comes off a white, dull ground with nothing on it, red, green and blue: Lambert's law."""
    x, y, z, share = around(rows)
    return (light(x, y, z) * (np.maximum(z, 0) * share)[..., None]).sum((0, 1)) / np.pi


def write(path, rows=512):
    """As an environment picture of all directions, four bytes a pixel (RGBE)."""
    x, y, z, _ = around(rows)
    rgb = light(x, y, z)
    most = rgb.max(-1)
    power = np.floor(np.log2(most)) + 1
    pixels = np.dstack([rgb * (256 / 2**power)[..., None], power + 128]).astype(np.uint8)
    path.write_bytes(b"#?RADIANCE\nFORMAT=32-bit_rle_rgbe\n\n" + f"-Y {rows} +X {2 * rows}\n".encode() + pixels.tobytes())
