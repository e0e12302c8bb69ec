"""Keys: a bow, a stem with collars, bits."""
import numpy as np

from canvas import both, cut, heart, join
from relief import Relief

TURN = 2 * np.pi


def stem(relief, c, y0, y1, r, collars):
    """A stem from y0 to y1 with turned collars at the given heights."""
    relief.turned(y0, y1 - r * 0.8, lambda t: r + 0 * t, 1.0).ball(0, y1 - r * 1.1, r * 1.25, r * 1.1)
    for y, wide, tall in collars:
        relief.turned(y - tall, y + tall, lambda t, wide=wide: r + (wide - r) * np.sqrt(np.clip(1 - (2 * t - 1) ** 2, 0, 1)), 0.9)


def bits(relief, c, x, blocks, thick=1.0, wards=(), lines=()):
    """Rectangles (y, reach, half height) to the right of the stem, filed all round; `wards` (x, y, half width, half height) are
    sawn through them, `lines` (x, y, half height) cut into their faces."""
    body = join(*[c.box((x + reach) / 2 - 0.3, y, (reach - x) / 2 + 0.3, half, 0.08) for y, reach, half in blocks])
    if wards:
        body = cut(body, *[c.box(*ward, 0.06) for ward in wards])
    low, high = min(y - half for y, _, half in blocks), max(y + half for y, _, half in blocks)
    # The face is rounded a little from top to bottom and thinner towards the far edge, as it is filed.
    round_off = 0.30 * ((c.y - (low + high) / 2) / (high - low) * 2) ** 2 + 0.035 * np.clip(c.x - x, 0, 9)
    relief.bevelled(body, thick + 0.35 - round_off, 0.34, 0.15)
    # A shoulder where the bit is brazed to the stem.
    relief.bevelled(c.box(x + 0.15, (low + high) / 2, 0.42, (high - low) / 2 + 0.28, 0.1), thick + 0.5, 0.25)
    for at, y, half in lines:
        relief.groove(np.where(body < -0.2, c.line(at, y - half, at, y + half), 9), 0.28, 0.12)


def heart_key(c, w, h):
    relief = Relief(c)
    a = w / 2 - 0.85
    cy = 2.3 + a
    d = c.curve(heart(0, cy, a, a * 0.92))
    relief.wire(np.abs(d), 0.95)
    # Two ribbons of a bow inside the heart.
    for s in (-1, 1):
        loop = [(0, cy + 0.6)] + [(s * (2.1 + 1.5 * np.sin(t)), cy - 0.3 - 1.6 * np.cos(t) - 0.3) for t in np.linspace(-2.2, 2.2, 14)] + [(0, cy + 0.6)]
        relief.wire(c.path(loop), 0.52)
        relief.wire(c.path([(0, cy + 0.6), (s * 1.3, cy + 2.2), (s * 1.9, cy + 3.9)]), 0.45)
    relief.ball(0, cy + 0.6, 0.95, depth=1.2).wire(c.line(0, cy + 1, 0, cy + a), 0.5)
    low = cy + a * 0.95
    stem(relief, c, low - 0.6, h, 1.15, [(low + 0.4, 2.1, 0.55), (low + 1.6, 1.7, 0.4), (h - 7.5, 1.6, 0.45)])
    bits(relief, c, 0.8, [(h - 2.3, 5.0, 1.0), (h - 5.0, 4.3, 1.0), (h - 3.6, 2.5, 1.4)], wards=[(3.9, h - 2.3, 0.28, 0.55)], lines=[(1.9, h - 3.6, 1.7)])
    relief.eye().paint("brass", seed=31)


def wheel_key(c, w, h):
    relief = Relief(c)
    r = w / 2 - 0.9
    cy = 2.4 + w / 2
    q, a = c.polar(0, cy)
    relief.wire(np.abs(q - r), 0.9)
    for t in np.arange(8) * TURN / 8:
        relief.wire(c.line(0, cy, r * np.sin(t), cy - r * np.cos(t)), 0.42)
        relief.ball(r * 0.62 * np.sin(t), cy - r * 0.62 * np.cos(t), 0.8)
    relief.ball(0, cy, 2.0, depth=1.5).groove(c.disc(0, cy, 1.25), 0.3, 0.15)
    low = cy + r
    stem(relief, c, low, h, 1.25, [(low + 1.2, 2.3, 0.6), (low + 2.5, 1.8, 0.4), (low + 3.5, 2.1, 0.45), (h - 8.4, 1.75, 0.5)])
    bits(relief, c, 0.8, [(h - 2.0, 5.2, 0.75), (h - 4.2, 4.6, 0.75), (h - 6.4, 5.2, 0.75), (h - 4.2, 2.7, 2.9)], lines=[(1.95, h - 4.2, 2.4), (4.5, h - 2.0, 0.4), (4.5, h - 6.4, 0.4)])
    relief.eye(y=1.45).paint("silver", seed=32)


def trefoil_key(c, w, h):
    relief = Relief(c)
    r = w * 0.247
    cy = 2.1 + r * 2.1
    spots = [(np.sin(t) * r * 1.17, cy - np.cos(t) * r * 1.17) for t in (0, TURN / 3, 2 * TURN / 3)]
    for x, y in spots:
        relief.wire(np.abs(c.disc(x, y, r - 0.8)), 0.8)
        relief.ball(x, y, 0.75).wire(c.line(x, y, 0, cy), 0.35)
    relief.ball(0, cy, 1.5, depth=1.5)
    low = cy + r * 1.5
    stem(relief, c, cy + r * 0.6, h, 1.05, [(low + 1.0, 2.0, 0.6), (low + 2.6, 1.6, 0.45), (low + 9, 1.5, 0.5)])
    relief.groove(np.where(both(low + 10 - c.y, c.y - h + 7) < 0, np.abs(np.sin((c.y + c.x * 0.8) * 2.0)) * 0.5, 9), 0.22, 0.12)
    bits(relief, c, 0.6, [(h - 2.6, 5.4, 1.5), (h - 5.8, 4.4, 0.8), (h - 4.2, 2.0, 1.6)], wards=[(3.7, h - 2.6, 0.5, 0.6)], lines=[(2.2, h - 2.6, 1.2), (3.4, h - 5.8, 0.45)])
    relief.eye().paint("copper", seed=33)


def warder_key(c, w, h):
    relief = Relief(c)
    a = w / 2 - 1.0
    cy = 2.6 + w / 2
    relief.plate(np.abs(c.box(0, cy, a, a, 1.8)) - 1.0, 1.2, 0.55)
    relief.wire(np.abs(c.box(0, cy, a * 0.5, a * 0.5, 0.2, TURN / 8)), 0.5)
    for s, t in ((1, 0), (-1, 0), (0, 1), (0, -1)):
        relief.wire(c.line(s * a * 0.66, cy + t * a * 0.66, s * a, cy + t * a), 0.5)
    low = cy + a
    stem(relief, c, low, h, 1.5, [(low + 1.9, 2.7, 0.8), (low + 3.7, 2.2, 0.5), (h - 10.2, 2.2, 0.6)])
    # Two bridge wards from the far edge, a cross ward within.
    wards = [(5.9, h - 3.5, 1.5, 0.34), (5.9, h - 6.3, 1.5, 0.34), (3.0, h - 4.9, 0.32, 1.5), (3.9, h - 4.9, 0.7, 0.32)]
    bits(relief, c, 1, [(h - 4.9, 6.6, 3.3)], 1.2, wards, [(5.9, h - 2.35, 0.5), (5.9, h - 4.9, 0.5), (5.9, h - 7.45, 0.5)])
    relief.eye().paint("gunmetal", seed=34)


def petal_key(c, w, h):
    relief = Relief(c)
    R = w / 2 * 0.957
    cy = 2.0 + R
    for t in np.arange(5) * TURN / 5:
        x, y = 0.56 * R * np.sin(t), cy - 0.56 * R * np.cos(t)
        u, v = (c.x - x) * np.cos(t) + (c.y - y) * np.sin(t), -(c.x - x) * np.sin(t) + (c.y - y) * np.cos(t)
        q = np.hypot(u / (R * 0.30), v / (R * 0.44))
        relief.wire(np.abs(q - 1) * R * 0.33, 0.62)
        relief.wire(c.line(0.2 * R * np.sin(t), cy - 0.2 * R * np.cos(t), 0.66 * R * np.sin(t), cy - 0.66 * R * np.cos(t)), 0.36)
        relief.ball(0.68 * R * np.sin(t), cy - 0.68 * R * np.cos(t), 0.7)
    relief.ball(0, cy, 2.1, depth=1.7)
    low = cy + R * 0.86
    stem(relief, c, cy + R * 0.45, h, 1.15, [(low + 0.6, 2.3, 0.8), (low + 2.6, 1.9, 0.5), (low + 17, 1.7, 0.8), (h - 9, 1.8, 0.5)])
    relief.groove(np.where(both(low + 4 - c.y, c.y - low - 15) < 0, np.abs(np.sin((c.y * 0.9 - c.x * 1.1) * 1.7)) * 0.6, 9), 0.25, 0.14)
    bits(relief, c, 0.8, [(h - 2.1, 6.2, 0.85), (h - 4.5, 4.8, 0.85), (h - 6.9, 6.2, 0.85), (h - 4.5, 2.9, 3.2)], wards=[(4.6, h - 2.1, 0.6, 0.28), (4.6, h - 6.9, 0.6, 0.28)], lines=[(2.0, h - 4.5, 2.7)])
    relief.eye().paint("gold", rough=0.16, seed=35)


def diary_key(c, w, h):
    relief = Relief(c)
    cy = 3.0 + 2.9
    relief.plate(c.oval(0, cy, w / 2, 3.4), 0.9, 0.4).groove(c.oval(0, cy, w / 2 - 0.9, 2.5), 0.2, 0.12)
    relief.pierce(c.oval(0, cy - 0.2, w * 0.23, 1.35))
    for s in (-1, 1):
        relief.raised(c.disc(s * w * 0.38, cy, 0.42), 0.25, 0.35)
    stem(relief, c, cy + 2.9, h, 0.85, [(cy + 3.9, 1.5, 0.4)])
    bits(relief, c, 0.5, [(h - 1.7, 3.3, 0.8), (h - 4.1, 2.7, 0.7)], 0.75, lines=[(2.3, h - 1.7, 0.5)])
    relief.eye().paint("brass", seed=36)


RECIPES = {
    "key-heart": heart_key, "key-round": wheel_key, "key-trefoil": trefoil_key, "key-square": warder_key,
    "key-petal": petal_key, "key-tiny": diary_key,
}
