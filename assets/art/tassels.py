"""Tassels: some hundred threads under a turned cap."""
import numpy as np

from canvas import step
from mesh import together
from solids import ball, lathe, loop, tube

TURN = 2 * np.pi


def skirt(c, w, h, top, seed, flare, neck, bound, threads=1100, wire=0.135, **material):
    """Threads from under the cap to the hem: tight as far as `bound` (mm below the upper edge), then swelling over the binding
    and spreading. They lie in locks; each lock, and in it each thread, has its own length, tone and way of falling. A few
    have come loose."""
    rs = np.random.RandomState(seed)
    hair = []
    t = np.linspace(0, 1, 40)
    tight = (bound - top) / (h - top)
    reach = w / 2 - wire - 0.1
    # The hem is a little longer in the middle, as threads of one length are that start round a neck.
    locks = 23
    lock_long, lock_out, lock_sway = rs.normal(0, 0.32, locks), rs.normal(0, 0.045, locks), rs.normal(0, 0.05, (locks, 2))
    lock_tone = rs.normal(0, 0.10, locks)
    for i in range(threads):
        a = i * 2.39996 + rs.normal(0, 0.1)
        share = np.sqrt((i + 0.5) / threads)
        lock = int(a / TURN * 3 * locks + share * 2) % locks
        loose = i > threads * 0.9 and rs.uniform() < 0.16
        swell = (1 - neck - flare) * step(t, tight - 0.01, tight + 0.14) + flare * np.clip((t - tight) / (1 - tight), 0, 1) ** 1.4
        half = reach * (neck + swell) * share * (0.94 + lock_out[lock] * t)
        wander = rs.normal(0, 0.045, 2)[:, None] * np.sin(t * rs.uniform(2, 6) + rs.uniform(0, TURN)) * step(t, tight, 1) * w / 4
        wander = wander + lock_sway[lock][:, None] * np.sin(np.pi * t * 0.9 + lock) * step(t, tight, 1) * w / 4
        if loose:
            # Out of its lock from half way down.
            out = step(t, rs.uniform(0.3, 0.6), 1.0)
            wander = wander + np.array([np.sin(a), np.cos(a)])[:, None] * out * rs.uniform(0.3, 1.0)
            wander = wander + rs.normal(0, 0.3, 2)[:, None] * np.sin(out * rs.uniform(3, 6)) * out
        short = 0.25 + abs(rs.normal(0, 0.50)) + 0.6 * share**2 + lock_long[lock] + (rs.uniform(0, 2.2) if loose or rs.uniform() < 0.03 else 0)
        length = h - top - max(short, 0)
        angle = a + 0.08 * np.sin(a * 7 + t * 2.0) * share + 0.10 * t
        x, z = half * np.sin(angle) + wander[0], half * np.cos(angle) + wander[1]
        q = np.hypot(x, z)
        k = np.minimum(1, (w / 2 - wire) / np.maximum(q, 1e-6))
        thick = wire * rs.uniform(0.85, 1.15) * (0.8 if loose else 1)
        thread = tube(np.stack([x * k, top + length * t, z * k], -1), thick, 6, caps=False)
        hair.append(thread.valued(tone=np.clip(rs.normal(0.55, 0.2) + lock_tone[lock], 0, 1)))
    c.part(together(hair), kind="silk", **material)


def binding(c, r, top, low, wire, seed, **material):
    """Thread wound tightly round a neck of radius r, its last turn tucked under."""
    rs = np.random.RandomState(seed)
    turns = int((low - top) / (wire * 1.8))
    rings = []
    a = np.linspace(0, TURN, 90)
    for i in range(turns):
        y = top + (i + 0.5) * (low - top) / turns
        bulge = 0.22 * np.sin(np.pi * (i + 0.5) / turns)
        tilt = rs.normal(0.10, 0.03)
        ring = np.stack([(r + bulge) * np.sin(a), y + tilt * np.sin(a + 0.4), (r + bulge) * np.cos(a)], -1)[:-1]
        rings.append(tube(ring, wire, 12, True).valued(tone=np.clip(rs.normal(0.7, 0.14), 0, 1)))
    end = [(0.5, low - 0.5, r + 0.35), (0.8, low + 0.3, r + 0.45), (0.95, low + 1.3, r + 0.75), (0.9, low + 2.4, r + 0.95)]
    rings.append(tube(end, wire * 0.8, 10).valued(tone=0.8))
    c.part(together(rings), kind="silk", **material)


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


def tassel(colour, finish, cap, seed, sheen=0.30, flare=0.20, neck=0.58, bound=0.0, thread=None):
    """`bound` mm of the neck are wound with thread (of its own colour, or `thread`) below the cap."""

    def recipe(c, w, h):
        top = 7.2
        low = 8.6 + bound
        skirt(c, w, h, top, seed, flare, neck, low, colour=colour, sheen=sheen)
        if bound:
            binding(c, neck * w / 2 + 0.05, 8.5, low, 0.21, seed + 30, colour=thread or colour, sheen=sheen)
        cap(c, w, top, finish, seed)

    return recipe


def knotted(c, w, h):
    """Ink cotton: a knotted head of its own thread under a gunmetal bail."""
    ink = {"colour": (0.030, 0.034, 0.055), "sheen": 0.08}
    skirt(c, w, h, 8.6, 94, 0.24, 0.50, 11.2, 420, 0.24, **ink)
    hair = []
    rs = np.random.RandomState(95)
    t = np.linspace(0.10, 0.98, 40) * np.pi
    for i in range(34):
        a = i * TURN / 34 + 0.5 * (t - t[0]) / np.pi
        out = w * 0.29 * np.sin(t)
        thread = tube(np.stack([out * np.sin(a), 6.2 - 2.9 * np.cos(t), out * np.cos(a)], -1), 0.34, 10)
        hair.append(thread.valued(tone=np.clip(rs.normal(0.6, 0.2), 0, 1)))
    c.part(together(hair), kind="silk", **ink)
    binding(c, w * 0.265, 8.7, 11.2, 0.27, 96, **ink)
    c.part(loop(0, 1.5, 1.08, 0.42), **metal("gunmetal", 95))
    c.part(tube([(0, 2.5, 0), (0, 3.8, 0)], 0.6), **metal("gunmetal", 95))


RECIPES = {
    "tassel-plum": tassel((0.15, 0.006, 0.085), "brass", cap_domed, 90, flare=0.26, neck=0.54, bound=2.6, thread=(0.50, 0.30, 0.07)),
    "tassel-teal": tassel((0.005, 0.15, 0.17), "silver", cap_bell, 91, flare=0.34, neck=0.47, bound=3.2),
    "tassel-ochre": tassel((0.64, 0.32, 0.032), "brass", cap_wound, 92, flare=0.28, neck=0.46),
    "tassel-ivory": tassel((0.84, 0.76, 0.60), "gold", cap_domed, 93, 0.24, flare=0.30, neck=0.54, bound=2.2),
    "tassel-ink": knotted,
}
