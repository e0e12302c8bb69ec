"""Beads on ball-ended head pins, closed above by a wrapped loop."""
import numpy as np

from mesh import Mesh, linear
from solids import ball, lathe, tube

TURN = 2 * np.pi
TOP = 4.7  # where the bead begins, mm below the upper edge


def head_pin(c, top, low, finish, seed, wire=0.40):
    """A pin with a ball end below, bent above into a loop and wound round its own neck down to the bead, each wrap a little askew."""
    r = 1.12
    middle = r + wire
    around = np.linspace(TURN / 2, -TURN / 2, 60)
    bend = np.stack([r * np.sin(around), middle - r * np.cos(around), 0.32 * np.cos(around / 2 + 0.3)], -1)
    stem = np.array([(0, low + 0.3, 0), (0, (top + low) / 2, 0), (0, top, 0), (0, middle + r + 0.9, 0), (0.05, middle + r + 0.2, 0.0)])
    turns = max(2.0, (top - 0.1 - (middle + r + 0.25)) / (2.02 * wire))
    t = np.linspace(0, turns * TURN, int(48 * turns))
    coil = 2.0 * wire * np.minimum(1.0, 0.25 + t / 2.0)
    y = middle + r + 0.25 + 2.02 * wire * t / TURN + 0.04 * np.sin(t * 0.5 + seed)
    wraps = np.stack([-coil * np.sin(t + 0.2), y, coil * np.cos(t + 0.2)], -1)
    metal = {"kind": "metal", "finish": finish, "rough": 0.20, "patina": 0.9, "grain": 0.6, "seed": seed}
    c.part(tube(np.concatenate([stem, bend, wraps]), wire * 0.96, 18), **metal)
    c.part(ball(0, low + 0.55, 0, 0.72, n=64), **metal)


def cap(c, y, r, tall, flip, finish, seed, petals=11):
    """A fluted cap over one end of a bead."""
    t = np.linspace(0, TURN / 4, 20)
    rows = [(0.35, 0.0)] + [(r * np.sin(a) + 0.06, tall * (1 - np.cos(a))) for a in t[3:]] + [(r * 0.96, tall + 0.05), (r * 0.8, tall - 0.1)]
    flute = lambda a, row: 1 + 0.055 * np.cos(a * petals) * np.clip((row - 4) / 8, 0, 1)
    m = lathe([(p, y + (-q if flip else q)) for p, q in rows], 176, flute)
    # The lower edge is scalloped: each petal reaches furthest in its middle.
    angle = np.arctan2(m.points[:, 2], m.points[:, 0])
    share = np.clip(np.abs(m.points[:, 1] - y) / tall, 0, 1) ** 3
    m.points[:, 1] += (-1 if flip else 1) * share * (0.16 * np.abs(np.cos(angle * petals / 2)) - 0.08)
    c.part(m, kind="metal", finish=finish, rough=0.22, patina=1.0, grain=0.6, seed=seed)


def bead(finish, seed, body, capped=True):
    """A bead between its pin's loop and ball; `body(c, cy, a, b)` makes the bead itself."""

    def recipe(c, w, h):
        low = h - 1.25
        a, b = w / 2, (low - TOP) / 2
        head_pin(c, TOP, low, finish, seed)
        body(c, (TOP + low) / 2, a, b)
        if capped:
            r = min(a, b)
            cap(c, TOP - 0.28, r * 0.58, r * 0.30, False, finish, seed + 3)
            cap(c, low + 0.28, r * 0.58, r * 0.30, True, finish, seed + 4)

    return recipe


def clear(colour, dense, cloud=0.0, ior=1.5):
    """A clear bead; the pin is seen in it."""

    def body(c, cy, a, b):
        c.lets_through = 0.5
        c.part(ball(0, cy, 0, a, b, a, 128).outward(), kind="glass", colour=colour, dense=dense, ior=ior, cloud=cloud)

    return body


def veined(base, tint, seed, specks=None, veins=None, glow=0.15):
    """A stone bead with clouds, veins and specks in its colour."""

    def body(c, cy, a, b):
        mix = np.clip(0.5 + 0.36 * c.noise(1.7, seed) + 0.12 * c.noise(0.5, seed + 1), 0, 1)[..., None]
        rgb = np.array(base, np.float32) * (1 - mix) + np.array(tint, np.float32) * mix
        if veins:
            v = np.exp(-((c.noise(1.6, seed + 2) / 0.07) ** 2)) * 0.55 * np.clip(c.noise(2.0, seed + 4) + 0.4, 0, 1)
            rgb = rgb + (np.array(veins) - rgb) * v[..., None]
        if specks:
            s = np.clip((c.noise(0.10, seed + 5) - 2.0 + 0.4 * c.noise(1.5, seed + 6)) * 1.5, 0, 1)[..., None]
            rgb = rgb + (np.array(specks) - rgb) * s
        painted(c, cy, a, b, rgb, gloss=1.0, rough=0.14, glow=glow)

    return body


def painted(c, cy, a, b, rgb, **surface):
    """An egg with the canvas's colours on it, as seen from in front, under a polish."""
    m = ball(0, cy, 0, a, b, a, 320)
    m = Mesh(m.points, m.faces[m.points[m.faces].mean(1)[:, 2] > -0.5 * a]).trimmed()
    j = np.clip(((m.points[:, 0] + c.w / 2 + c.MARGIN) * c.k).astype(int), 0, c.cols - 1)
    i = np.clip(((m.points[:, 1] + c.MARGIN) * c.k).astype(int), 0, c.rows - 1)
    m.values["tint"] = linear(np.clip(rgb, 0, 255))[i, j]
    c.part(m, kind="body", **surface)


def pearl(c, cy, a, b):
    m = ball(0, cy, 0, a, b, a, 160)
    c.part(m, kind="pearl")


def wood(c, cy, a, b):
    r = np.hypot(c.x + 1.6 + 0.30 * c.noise(1.6, 62, 3), (c.y - cy) * 0.16 + 2.0)
    rings = (0.5 + 0.5 * np.sin(r * 7.5 + 0.8 * c.noise(1.0, 63, 4)))[..., None] ** 2.2
    pores = np.clip(c.noise(0.06, 64, 7) - 1.0, 0, 1)[..., None] * 0.4
    rgb = (np.array((206, 150, 88)) * (1 - rings) + np.array((106, 60, 30)) * rings) * (1 - pores)
    painted(c, cy, a, b, rgb, gloss=0.5, rough=0.32, glow=0.0)


RECIPES = {
    "bead-garnet": bead("brass", 50, clear((0.75, 0.015, 0.04), 0.42)),
    "bead-jade": bead("brass", 51, veined((52, 122, 82), (140, 196, 142), 51, glow=0.10)),
    "bead-amber": bead("copper", 52, clear((0.985, 0.60, 0.03), 0.30), False),
    "bead-pearl": bead("silver", 53, pearl, False),
    "bead-lapis": bead("gold", 54, veined((16, 34, 112), (38, 70, 166), 54, specks=(232, 190, 96), veins=(180, 192, 216), glow=0.0)),
    "bead-wood": bead("copper", 55, wood),
    "bead-rose": bead("silver", 56, veined((232, 160, 170), (248, 206, 208), 56, veins=(255, 236, 234), glow=0.16)),
}
