"""Tassels: some hundred threads under a turned cap."""
import numpy as np

from canvas import step
from mesh import together
from solids import ball, lathe, loop, tube

TURN = 2 * np.pi


def skirt(c, w, h, top, seed, flare, neck, threads=1100, wire=0.135, **material):
    """Threads from under the cap to the hem; each has its own tone, length and way of falling."""
    rs = np.random.RandomState(seed)
    hair = []
    t = np.linspace(0, 1, 34)
    for i in range(threads):
        a = i * 2.39996 + rs.normal(0, 0.1)
        share = np.sqrt((i + 0.5) / threads)
        # Loose threads on the outside wander more than those within.
        half = (w / 2 - wire - 0.12) * (neck + (1 - neck - flare) * step(t, -0.08, 0.26) + flare * t) * share
        clump = 0.16 * np.sin(a * 7 + t * 2.0) * share
        wander = rs.normal(0, 0.055, 2)[:, None] * np.sin(t * rs.uniform(2, 6) + rs.uniform(0, TURN)) * (0.3 + t) * w / 4
        length = h - top - abs(rs.normal(0, 0.35)) - (0.9 * (1 - share) if share < 0.9 else 0)
        angle = a + clump * 0.5 + 0.10 * t
        x, z = half * np.sin(angle) + wander[0], half * np.cos(angle) + wander[1]
        q = np.hypot(x, z)
        k = np.minimum(1, (w / 2 - wire) / np.maximum(q, 1e-6))
        m = tube(np.stack([x * k, top + length * t, z * k], -1), wire * rs.uniform(0.85, 1.15), 6, caps=False)
        m.values["tone"] = np.full(len(m.points), np.clip(rs.normal(0.55, 0.22), 0, 1), np.float32)
        hair.append(m)
    c.part(together(hair), kind="silk", **material)


def metal(finish, seed, rough=0.2):
    return {"kind": "metal", "finish": finish, "rough": rough, "patina": 1.0, "grain": 0.7, "seed": seed}


def cap_domed(c, w, top, finish, seed):
    """A dome with two grooves and a beaded edge."""
    r, low = w * 0.34, top + 1.3
    t = np.linspace(0, TURN / 4, 30)
    rows = [(r * np.sin(a) ** 0.9, 2.9 + (low - 2.9) * 0.62 * (1 - np.cos(a))) for a in t]
    y0 = rows[-1][1]
    y = np.linspace(y0, low, 40)
    rows += [(r + 0.06 - 0.2 * np.exp(-(((q - y0 - 0.5) / 0.14) ** 2)) - 0.2 * np.exp(-(((q - y0 - 1.0) / 0.14) ** 2)), q) for q in y]
    rows += [(r - 0.2, low + 0.1)]
    c.part(lathe(rows), **metal(finish, seed))
    beads = [ball(r * 1.02 * np.sin(a), low - 0.1, r * 1.02 * np.cos(a), 0.40, n=24) for a in np.arange(20) * TURN / 20]
    c.part(together(beads), **metal(finish, seed))
    c.part(loop(0, 1.5, 1.08, 0.42), **metal(finish, seed))


def cap_bell(c, w, top, finish, seed):
    """A bell with rings turned into it."""
    y = np.linspace(0, 1, 90)
    rows = [(0, 2.6)] + [(w * (0.10 + 0.24 * q**1.3 + 0.016 * np.cos(q * 26) * np.sqrt(q)), 2.6 + (top - 1.7) * q) for q in y]
    low = rows[-1][1]
    rows += [(w * 0.34 + 0.34 * np.sin(a), low + 0.35 - 0.35 * np.cos(a)) for a in np.linspace(0.2, np.pi, 14)] + [(w * 0.28, low + 0.6)]
    c.part(lathe(rows), **metal(finish, seed))
    c.part(loop(0, 1.5, 1.08, 0.42), **metal(finish, seed))


def cap_wound(c, w, top, finish, seed):
    """A ball, and wire wound round the neck."""
    c.part(ball(0, 4.4, 0, 1.95), **metal(finish, seed))
    t = np.linspace(0, 1, 400)
    turns, r = 3, w * 0.27
    a = t * turns * TURN
    c.part(tube(np.stack([r * np.sin(a), 6.3 + (top + 1.6 - 6.3) * t + 0.05 * np.sin(a * 0.7), r * np.cos(a)], -1), 0.42, 16), **metal(finish, seed))
    c.part(lathe([(0, 5.9), (r, 6.1), (r, top + 1.6), (0, top + 1.6)]), **metal(finish, seed + 1, 0.4))
    c.part(loop(0, 1.5, 1.08, 0.42), **metal(finish, seed))


def tassel(colour, finish, cap, seed, sheen=0.20, flare=0.20, neck=0.58):
    def recipe(c, w, h):
        top = 7.2
        skirt(c, w, h, top, seed, flare, neck, colour=colour, sheen=sheen)
        cap(c, w, top, finish, seed)

    return recipe


def knotted(c, w, h):
    """Ink cotton: a knotted head of its own thread under a gunmetal bail."""
    ink = {"kind": "silk", "colour": (0.030, 0.034, 0.055), "sheen": 0.08}
    skirt(c, w, h, 8.6, 94, 0.16, 0.52, 420, 0.24, colour=ink["colour"], sheen=ink["sheen"])
    hair = []
    rs = np.random.RandomState(95)
    t = np.linspace(0.10, 0.98, 40) * np.pi
    for i in range(34):
        a = i * TURN / 34 + 0.5 * (t - t[0]) / np.pi
        m = tube(np.stack([w * 0.29 * np.sin(t) * np.sin(a), 6.2 - 2.9 * np.cos(t), w * 0.29 * np.sin(t) * np.cos(a)], -1), 0.34, 10)
        m.values["tone"] = np.full(len(m.points), np.clip(rs.normal(0.6, 0.2), 0, 1), np.float32)
        hair.append(m)
    a = np.linspace(0, 4 * TURN, 300)
    band = tube(np.stack([w * 0.285 * np.sin(a), 8.5 + 1.7 * a / a[-1], w * 0.285 * np.cos(a)], -1), 0.30, 12)
    band.values["tone"] = np.full(len(band.points), 0.95, np.float32)
    c.part(together([*hair, band]), **ink)
    c.part(loop(0, 1.5, 1.08, 0.42), **metal("gunmetal", 95))
    c.part(tube([(0, 2.5, 0), (0, 3.8, 0)], 0.6), **metal("gunmetal", 95))


RECIPES = {
    "tassel-plum": tassel((0.17, 0.010, 0.10), "brass", cap_domed, 90),
    "tassel-teal": tassel((0.006, 0.18, 0.20), "silver", cap_bell, 91, flare=0.28, neck=0.56),
    "tassel-ochre": tassel((0.64, 0.32, 0.032), "brass", cap_wound, 92, flare=0.12, neck=0.46),
    "tassel-ivory": tassel((0.84, 0.76, 0.60), "gold", cap_domed, 93, 0.16),
    "tassel-ink": knotted,
}
