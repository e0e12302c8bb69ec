"""The room every drop is seen in, as light by direction: a bench by a window up on the left, linen below and behind."""
import numpy as np

from canvas import step

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
    # Linen behind the drop, lit from above.
    rgb = rgb + (step(-z, 0.0, 0.7) * (0.42 + 0.18 * y))[..., None] * np.array((1.0, 0.94, 0.85))
    key, u, v = pane(x, y, z, WINDOW, 0.50, 0.62, 0.05)
    bars = 1 - 0.75 * np.exp(-((np.minimum(np.abs(u), np.abs(v - 0.10)) / 0.035) ** 2))
    rgb = rgb + (key * bars * 6.5)[..., None] * np.array((1.0, 0.93, 0.80))
    fill, _, _ = pane(x, y, z, SIDE, 0.20, 0.75, 0.08)
    return rgb + (fill * 2.4)[..., None] * np.array((0.88, 0.95, 1.0))


def write(path, rows=512):
    """As an environment picture: all directions by longitude and latitude, poles to the eye and away, four bytes a pixel (RGBE)."""
    u, v = np.meshgrid((np.arange(2 * rows) + 0.5) / (2 * rows), (np.arange(rows) + 0.5) / rows)
    a, b = -(u - 0.5) * 2 * np.pi, (0.5 - v) * np.pi
    rgb = light(np.cos(a) * np.cos(b), np.sin(a) * np.cos(b), np.sin(b))
    most = rgb.max(-1)
    power = np.floor(np.log2(most)) + 1
    pixels = np.dstack([rgb * (256 / 2**power)[..., None], power + 128]).astype(np.uint8)
    path.write_bytes(b"#?RADIANCE\nFORMAT=32-bit_rle_rgbe\n\n" + f"-Y {rows} +X {2 * rows}\n".encode() + pixels.tobytes())
