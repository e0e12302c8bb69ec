"""One-of-a-kind pieces: what was cut from old things, with a bail put on."""
import numpy as np

from canvas import both, cut, join, step
from crystals import brilliant
from relief import Relief
from solids import cut_stone

TURN = 2 * np.pi


def bail(relief, c, low):
    return relief.wire(c.line(0, 2.3, 0, low), 0.6).eye()


def gear(c, w, h):
    r = w / 2
    cy = h - r
    q, a = c.polar(0, cy)
    tooth = step(np.cos(a * 30), -0.25, 0.45)
    d = q - r * (0.885 + 0.115 * tooth)
    relief = Relief(c).plate(cut(d, q - r * 0.70), 0.7, 0.2)
    arms = []
    for t in np.arange(5) * TURN / 5 + 0.3:
        arms.append(c.line(0, cy, r * 0.75 * np.sin(t), cy - r * 0.75 * np.cos(t), 0.30) - 0.020 * np.clip(q - r * 0.1, 0, 99) - 0.12)
    relief.plate(join(*arms), 0.55, 0.25)
    relief.plate(q - r * 0.27, 1.2, 0.35).groove(q - r * 0.20, 0.25, 0.12)
    relief.z += np.where((q > r * 0.71) & (q < r * 0.86), 0.03 * np.sin(q * 22), 0)
    for t in np.arange(3) * TURN / 3 + 0.3:
        relief.sink(c.disc(r * 0.235 * np.sin(t), cy - r * 0.235 * np.cos(t), 0.34), 0.5, 0.15)
    bail(relief, c, cy - r + 0.8).paint("brass", patina=1.3, seed=101)
    Relief(c).puff(c.disc(0, cy, r * 0.125), 0.7).stone((138, 0, 22), 1.4, 0.06, lift=1.0)


def button(c, w, h):
    r = w / 2
    cy = h - r
    q, a = c.polar(0, cy)
    relief = Relief(c).plate(q - r, 1.5, 0.9)
    rope = np.sin(a * 26 + (q - r) * 2.2)
    relief.z += np.where((q > r * 0.80) & (q < r * 0.96), 0.30 * np.clip(rope, -0.6, 1), 0)
    relief.groove(q - r * 0.78, 0.45, 0.2)
    # A woven knot of bands.
    x, y = (c.x + c.y - cy) * 0.707, (c.y - cy - c.x) * 0.707
    inside = step(r * 0.74 - q, 0, 0.4)
    over = np.sign(np.sin(x * 1.35) * np.sin(y * 1.35))
    weave = np.where(over > 0, np.abs(np.cos(x * 1.35)), np.abs(np.cos(y * 1.35)))
    strands = 0.08 * np.sin(np.where(over > 0, y, x) * 11)
    relief.z += inside * (0.75 * np.sqrt(1.001 - weave**2) + strands + 0.5 * (1 - (q / r) ** 2))
    bail(relief, c, cy - r + 1).paint("gunmetal", patina=0.9, seed=102)


def fracture(c, x, cy, seed=105):
    """Where cast metal gave way from top to bottom, about `x`: straight runs of uneven length with sharp corners, and a fine
    tooth on each."""
    rs = np.random.RandomState(seed)

    def jagged(low, high, deep):
        ys = np.cumsum(rs.uniform(low, high, int(2 * c.h / low)))
        return np.interp(c.y, ys - c.MARGIN * 2, rs.uniform(-deep, deep, len(ys)))

    return x + jagged(1.2, 3.0, 1.0) + jagged(0.35, 0.9, 0.38) + jagged(0.12, 0.3, 0.10) + 0.16 * (c.y - cy)


def brooch(c, w, h):
    r = w / 2
    cy = h - r
    q, a = c.polar(0, cy)
    torn = c.x - fracture(c, r * 0.45, cy)
    # Filigree: a rim, scrolls between it and the setting, and the pin stem across the back.
    relief = Relief(c)
    relief.wire(np.abs(q - r * 0.94), 0.75).wire(np.abs(q - r * 0.60), 0.7)
    for t in np.arange(14) * TURN / 14:
        x, y = r * 0.77 * np.sin(t), cy - r * 0.77 * np.cos(t)
        relief.wire(np.abs(c.disc(x, y, r * 0.125)), 0.38, 0.15)
    relief.plate(q - r * 0.58, 0.8, 0.4)
    for t in np.arange(40) * TURN / 40:
        x, y = r * 0.60 * np.sin(t), cy - r * 0.60 * np.cos(t)
        relief.ball(x, y, 0.5, lift=0.7)
    relief.sink(q - r * 0.50, 0.3, 0.2)
    # Where it broke: a bright, grainy face that falls away from the eye, a lip drawn up by the bend before it, cracks behind it.
    grain = 0.55 * c.noise(0.10, 112) + 0.45 * c.noise(0.22, 113)
    face = step(torn, -0.75, -0.45)
    relief.z += (relief.d < 0) * (0.16 * np.exp(-(((torn + 0.95) / 0.3) ** 2)) - face * (0.55 + 0.9 * np.clip(torn + 0.75, 0, 1) + 0.13 * grain))
    relief.z = np.maximum(relief.z, 0.1 * (relief.d < 0))
    for x0, y0, x1, y1, x2, y2 in ((0.42, -0.62, 0.30, -0.60, 0.24, -0.52), (0.44, 0.50, 0.33, 0.53, 0.28, 0.60)):
        crack = c.path([(x0 * r, cy + y0 * r), (x1 * r, cy + y1 * r), (x2 * r, cy + y2 * r)])
        relief.groove(crack, 0.5, 0.09)
    relief.d = np.maximum(relief.d, torn)
    # The pin stem stayed whole, a little bent.
    relief.wire(c.path([(r * 0.30, cy + r * 0.42), (r * 0.60, cy + r * 0.37), (r * 0.93, cy + r * 0.26)]), 0.42)
    pin = c.path([(-r * 0.45, cy + r * 0.52), (r * 0.30, cy + r * 0.42)])
    relief.wire(np.where(torn < 0.4, pin, 9), 0.42)
    bail(relief, c, cy - r + 0.8).paint("gold", patina=1.2, seed=103)
    stone = Relief(c).puff(c.oval(-r * 0.04, cy, r * 0.44, r * 0.48), 3.2)
    stone.stone(np.clip(np.array((8, 84, 58)) + 22 * c.noise(1.5, 104)[..., None] * np.array((0.5, 1, 0.8)), 0, 255), 1.4, 0.08, lift=0.7)
    for i, t in enumerate(np.arange(14) * TURN / 14 + TURN / 28):
        x, y = r * 0.77 * np.sin(t), r * 0.77 * np.cos(t)
        if x < r * 0.42 and i not in (10, 6):
            setting = Relief(c).plate(c.disc(x, cy - y, 1.08), 1.1, 0.35)
            setting.sink(c.disc(x, cy - y, 0.85), 0.5, 0.1).paint("silver", rough=0.12, patina=0.5, seed=106)
            gem = cut_stone(brilliant(0, 0.86, 0.86, 6, 0.5, 0.35, 0.4), (0, 0, 0.05)).moved(x, cy - y, 1.1)
            c.part(gem.outward(), kind="glass", colour=(0.86, 0.93, 1.0), dense=0.0, ior=1.7)


def token(c, w, h):
    r = w / 2
    cy = h - r
    q, a = c.polar(0, cy)
    relief = Relief(c).plate(q - r + 0.10 * np.sin(a * 3 + 1) ** 2, 0.9, 0.3)
    worn = 0.75 + 0.25 * np.clip(c.noise(4, 107), -1.5, 1)
    relief.z += worn * np.where((q > r * 0.88) & (q < r * 0.97), 0.26, 0)
    relief.z += worn * np.where((q > r * 0.80) & (q < r * 0.88), 0.14 * (np.sin(a * 64) > 0), 0)
    # Eight rays and dots about the hole: an emblem of nothing.
    fold = np.abs((a + TURN / 16) % (TURN / 8) - TURN / 16)
    ray = np.maximum(q * np.sin(fold) - r * 0.085 * (1 - (q / r - 0.26) * 1.9), both(r * 0.30 - q, q - r * 0.74))
    relief.raised(ray, 0.34, 0.5)
    for t in (np.arange(8) + 0.5) * TURN / 8:
        relief.raised(c.disc(r * 0.60 * np.sin(t), cy - r * 0.60 * np.cos(t), 0.85), 0.34, 0.6)
    relief.raised(np.abs(q - r * 0.235) - 0.5, 0.35, 0.4).pierce(q - r * 0.17)
    relief.z -= np.where(relief.d < 0, 0.05 * np.clip(c.noise(0.35, 108) - 1.2, 0, 1), 0)
    for x0, y0, x1, y1 in ((-6, 8, 3, 11), (2, 17, 8, 15), (-4, 20, 1, 22)):
        relief.groove(c.line(x0, y0, x1, y1), 0.07, 0.06)
    bail(relief, c, cy - r + 0.6).paint("copper", patina=1.5, seed=109)


def plate(c, w, h):
    top = 2.6
    cy, b, a = (top + h) / 2, (h - top) / 2, w / 2
    v = (c.y - cy) / b
    half = a * (0.60 + 0.34 * np.cos(v * 5.6) ** 2 * (np.abs(v) < 0.84) + 0.06) * np.sqrt(np.clip(1 - np.abs(v) ** 5, 0, 1))
    d = np.maximum((np.abs(c.x) - half) * 0.8, np.abs(c.y - cy) - b)
    d = c.blur(d, 0.12)
    relief = Relief(c).plate(d, 0.9, 0.55).groove(d + 1.3, 0.30, 0.15)
    hole = join(c.disc(0, cy - 2.2, 1.95), c.shape([(-0.8, cy - 2), (0.8, cy - 2), (1.35, cy + 5), (-1.35, cy + 5)]) - 0.1)
    relief.raised(np.abs(hole - 0.9) - 0.45, 0.35, 0.4)
    for s in (-1, 1):
        for f in (-1, 1):
            curl = [(s * (a * 0.42 + (1.9 - t * 0.30) * np.cos(t)), cy + f * (b * 0.60 + (1.9 - t * 0.30) * np.sin(t - 0.6))) for t in np.linspace(0, 5.4, 26)]
            relief.raised(c.path(curl) - 0.22, 0.22, 0.24)
    for y in (top + 2.7, h - 2.7):
        relief.sink(c.disc(0, y, 1.25), 0.35, 0.5).pierce(c.disc(0, y, 0.75))
    relief.pierce(hole)
    bail(relief, c, top + 0.9).paint("brass", patina=1.6, seed=110)


def spoon(c, w, h):
    # The flared end of a handle, hung by where it was sawn off.
    top = 2.8
    t = np.clip((c.y - top) / (h - top), 0, 1)
    half = w / 2 * (0.30 - 0.08 * step(t, 0, 0.30) + 0.78 * step(t, 0.22, 0.82) ** 1.15) * np.sqrt(np.clip(1 - np.clip((t - 0.70) / 0.30, 0, 1) ** 2.4, 0, 1))
    d = c.blur(np.maximum((np.abs(c.x) - half) * 0.9, np.maximum(top - c.y, c.y - h)), 0.12)
    relief = Relief(c).plate(d, 1.4, 0.8)
    relief.z += np.where(d < 0, 0.8 * np.cos(np.clip(c.x / (w / 2), -1, 1) * 1.4) * (1 - 0.5 * t), 0)
    relief.groove(d + 1.15, 0.35, 0.16)
    cy = top + (h - top) * 0.70
    for i in range(7):
        s = (i - 3) * 0.40
        relief.raised(c.line(0, cy + 6, 5.2 * np.sin(s), cy + 5.2 - 7.6 * np.cos(s) + 0.9 * abs(i - 3), 0.62), 0.42, 0.6)
    relief.raised(c.disc(0, cy + 6.1, 1.3), 0.6, 1.0)
    for y in np.linspace(top + 3.2, top + 15, 7):
        relief.raised(c.oval(0, y, 0.62, 0.72), 0.4, 0.5)
    bail(relief, c, top + 1.2).paint("silver", patina=1.1, seed=111)


RECIPES = {
    "found-gear": gear, "found-button": button, "found-brooch": brooch, "found-token": token, "found-plate": plate,
    "found-spoon": spoon,
}
