"""The kiosk's own pictures: linen, chain links, a ring, a clasp and a bangle in grey, to be tinted by a finish."""
import numpy as np
from PIL import Image
from scipy import ndimage as nd

from canvas import Canvas, cut, join
from fit import shrink
from relief import Relief

LINEN = np.array((243, 235, 221), float)  # #F3EBDD


def linen(n=512, threads=128, seed=7):
    """Plain weave that repeats at every edge, its threads uneven in thickness and tone."""
    rs = np.random.RandomState(seed)
    up = 2
    y, x = np.mgrid[0 : n * up, 0 : n * up] / up

    def soft(sigma):
        field = nd.gaussian_filter(rs.randn(n * up, n * up), [s * up for s in sigma], mode="wrap")
        return field / field.std()

    pitch = n / threads
    u, v = x / pitch + 0.14 * soft((40, 5)), y / pitch + 0.14 * soft((5, 40))
    warp, weft = np.abs(np.sin(np.pi * u)), np.abs(np.sin(np.pi * v))
    over = (np.floor(u) + np.floor(v)) % 2
    hill = np.where(over > 0, warp * (0.62 + 0.38 * weft), weft * (0.62 + 0.38 * warp))
    # Slubs: some threads are thicker and paler for a stretch.
    slub = np.where(over > 0, soft((26, 1.3)), soft((1.3, 26)))
    gy, gx = np.gradient(nd.gaussian_filter(hill, 0.6 * up, mode="wrap"))
    tone = 0.030 * (hill - hill.mean()) - 0.035 * (gx + gy) * up + 0.010 * slub + 0.006 * soft((60, 60)) + 0.004 * soft((0.5, 0.5))
    tone = tone - tone.mean()
    rgb = LINEN * (1 + tone[..., None] * np.array((0.9, 1.0, 1.18)))
    rgb = rgb.reshape(n, up, n, up, 3).mean((1, 3))
    return Image.fromarray((np.clip(rgb, 0, 255) + 0.5).astype(np.uint8), "RGB")


def taken(draw, w, h, size, trim=True, finer=4):
    """Draws at `finer` times the size and takes it down; with `trim`, the picture is cut to what is drawn."""
    c = Canvas(w, h, finer * size[0] / w)
    relief = Relief(c)
    draw(c, relief)
    relief.paint("grey", rough=0.05, patina=0.7, grain=0.0006)
    left, top = c.MARGIN * c.k, c.MARGIN * c.k
    box = (left, top, left + w * c.k, top + h * c.k)
    if trim:
        rows, cols = np.where(c.a > 0.5)
        box = (cols.min(), rows.min(), cols.max() + 1, rows.max() + 1)
    return shrink(c.rgb, c.a, size, box)


def link_face(c, relief):
    # An oval loop 6 x 4 mm of 0.9 mm wire.
    relief.wire(np.abs(c.box(0, 2, 2.55, 1.55, 1.55)), 0.45)


def link_side(c, relief):
    relief.wire(c.line(-2.54, 0.625, 2.54, 0.625), 0.6)


def ring(c, relief):
    # 10 mm outside, 18 AWG, with the cut where it is opened.
    relief.wire(np.abs(c.disc(0, 5, 4.49)), 0.51)
    relief.groove(np.where(c.y < 5, c.x - 0.3, 9), 0.2, 0.05)


def clasp(c, relief):
    # 12 x 6 mm: the eye on the left, the lever above, the claw closing on the right.
    relief.wire(np.abs(c.disc(-5.0, 3.2, 0.72)), 0.30, 0.1)
    body = c.blur(c.curve(lambda t: (0.75 - 4.9 * np.cos(t) * (1 - 0.02 * np.cos(t)), 3.1 + (2.75 - 0.95 * np.cos(t)) * np.sin(t) * (0.80 - 0.20 * np.cos(t)))), 0.08)
    mouth = c.blur(c.curve(lambda t: (2.15 + 2.35 * np.cos(t), 3.0 + (1.45 + 0.30 * np.cos(t)) * np.sin(t))), 0.05)
    relief.plate(cut(body, mouth), 1.15, 0.85)
    lever = join(c.path([(-1.1, 1.15), (1.4, 1.35), (4.0, 2.0)], 0.40), c.path([(-1.1, 1.15), (-2.5, 0.62)], 0.46))
    relief.add(lever, 1.0 + 0.45 * np.sqrt(np.clip(-lever / 0.40, 0, 1)))
    relief.groove(np.where(lever < 0.1, lever - 0.04, 9), 0.4, 0.10)
    relief.raised(c.disc(-1.6, 2.7, 0.75), 0.30, 0.5).groove(c.line(-2.0, 2.7, -1.2, 2.7), 0.2, 0.09)


def bangle(c, relief):
    # 65 mm inside, 2.4 mm wire. The ends meet at the top: an eye on the right, a hook on the left that goes through it.
    r, wire, mid = 33.7, 1.2, 34.9
    q, a = c.polar(0, mid)
    relief.wire(np.maximum(np.abs(q - r), (0.155 - np.abs(a)) * r), wire)
    x, y = r * np.sin(0.115), mid - r * np.cos(0.115)
    relief.wire(np.abs(c.disc(x - 1.2, y + 1.7, 1.75)), 0.95, 0.2)
    hook = [(-x, y)] + [(-0.3 + 3.0 * np.cos(t) * 0.98, y + 1.5 + 1.75 * np.sin(t)) for t in np.linspace(-2.5, 0.9, 24)]
    relief.wire(c.path(hook), 0.98, 1.0).ball(*hook[-1], 1.25, lift=0.9)
    for s in (-1, 1):
        for turn in (0.135, 0.160, 0.185):
            px, py = r * np.sin(s * turn), mid - r * np.cos(turn)
            dx, dy = 1.15 * np.sin(s * turn), -1.15 * np.cos(turn)
            relief.wire(c.line(px - dx, py - dy, px + dx, py + dy), 0.36, 1.0)


def pictures():
    """Every picture with its name."""
    yield "linen", linen()
    yield "link-face", taken(link_face, 6, 4, (96, 64))
    yield "link-side", taken(link_side, 6.25, 1.25, (96, 20))
    yield "ring", taken(ring, 10, 10, (128, 128))
    yield "clasp", taken(clasp, 12, 6, (200, 100))
    # Not trimmed: the ring's middle stays the picture's middle, its outside touches the edges.
    yield "bangle", taken(bangle, 69.8, 69.8, (1024, 1024), trim=False, finer=2)
