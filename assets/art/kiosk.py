"""The kiosk's own pictures: linen, chain links, a ring, a clasp and a bangle in grey, to be tinted by a finish."""
import numpy as np
from PIL import Image
from scipy import ndimage as nd

from canvas import cut, join
from relief import Relief
from solids import ball, tube

GREY = {"kind": "metal", "finish": "grey", "rough": 0.2, "patina": 0.6, "grain": 0.4, "seed": 120}
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


def wire(c, path, r, closed=False, sides=24):
    c.part(tube(path, r, sides, closed), **GREY)


def link_face(c, w, h):
    # An oval loop 6 x 4 mm of 0.9 mm wire.
    bend = np.linspace(-np.pi / 2, np.pi / 2, 60)
    half = np.stack([1.0 + 1.55 * np.cos(bend), 1.55 * np.sin(bend), 0 * bend], -1)
    # The straight sides need points of their own, so that the wire keeps its roundness there.
    flat = np.stack([np.linspace(0.9, -0.9, 20), np.full(20, 1.55), np.zeros(20)], -1)
    turned = np.array([-1, -1, 1])
    wire(c, np.concatenate([half, flat, half * turned, flat * turned]) + (0, 2, 0), 0.45, True)


def link_side(c, w, h):
    wire(c, [(-2.375, 0.625, 0), (0, 0.625, 0), (2.375, 0.625, 0)], 0.625)


def ring(c, w, h):
    # 10 mm outside, 18 AWG, with the cut where it is opened.
    t = np.linspace(0.075, 2 * np.pi + 0.045, 200)
    wire(c, np.stack([4.49 * np.sin(t), 5 - 4.49 * np.cos(t), 0 * t], -1), 0.51)


def clasp(c, w, h):
    # 12 x 6 mm: the eye on the left, the lever above, the claw closing on the right.
    relief = Relief(c)
    relief.wire(np.abs(c.disc(-5.0, 3.2, 0.72)), 0.30, 0.1)
    body = c.blur(c.curve(lambda t: (0.75 - 4.9 * np.cos(t) * (1 - 0.02 * np.cos(t)), 3.1 + (2.75 - 0.95 * np.cos(t)) * np.sin(t) * (0.80 - 0.20 * np.cos(t)))), 0.08)
    mouth = c.blur(c.curve(lambda t: (2.15 + 2.35 * np.cos(t), 3.0 + (1.45 + 0.30 * np.cos(t)) * np.sin(t))), 0.05)
    relief.plate(cut(body, mouth), 1.15, 0.85)
    lever = join(c.path([(-1.1, 1.15), (1.4, 1.35), (4.0, 2.0)], 0.40), c.path([(-1.1, 1.15), (-2.5, 0.62)], 0.46))
    relief.add(lever, 1.0 + 0.45 * np.sqrt(np.clip(-lever / 0.40, 0, 1)))
    relief.groove(np.where(lever < 0.1, lever - 0.04, 9), 0.4, 0.10)
    relief.raised(c.disc(-1.6, 2.7, 0.75), 0.30, 0.5).groove(c.line(-2.0, 2.7, -1.2, 2.7), 0.2, 0.09)
    relief.paint("grey", patina=0.7, grain=0.5)


def bangle(c, w, h):
    # 65 mm inside, 2.4 mm wire. The ends meet at the top: an eye on the right, a hook on the left that goes through it.
    r, mid = 33.7, 34.9
    a = np.linspace(0.16, 2 * np.pi - 0.15, 500)
    wire(c, np.stack([r * np.sin(a), mid - r * np.cos(a), 0 * a], -1), 1.2, sides=40)
    x, y = r * np.sin(0.115), mid - r * np.cos(0.115)
    t = np.linspace(0, 2 * np.pi, 90, endpoint=False)
    wire(c, np.stack([x - 1.2 + 1.75 * np.cos(t), y + 1.7 + 1.75 * np.sin(t), 0.25 * np.cos(t)], -1), 0.9, True)
    bend = np.linspace(-2.5, 0.9, 40)
    hook = np.stack([-0.3 + 2.94 * np.cos(bend), y + 1.5 + 1.75 * np.sin(bend), 1.3 * np.sin((bend + 2.5) / 3.4 * np.pi)], -1)
    start = np.array([(r * np.sin(-0.15), mid - r * np.cos(0.15), 0), (-x, y, 0)])
    wire(c, np.concatenate([start, hook]), 0.95)
    c.part(ball(*hook[-1], 1.25), **GREY)
    for s in (-1, 1):
        for turn in (0.165, 0.190, 0.215):
            # A turn of thin wire round the bangle.
            out, along = np.array((np.sin(s * turn), -np.cos(turn), 0)), np.array((0, 0, 1))
            q = np.array((r * np.sin(s * turn), mid - r * np.cos(turn), 0))
            wire(c, q + 1.32 * (np.cos(t)[:, None] * out + np.sin(t)[:, None] * along), 0.34, True)


# Name, recipe, width and height in mm, pixels to the millimetre, whether the picture is cut to what is drawn. The bangle's
# is not: the ring's middle stays the picture's middle, its outside touches the edges.
PICTURES = [
    ("link-face", link_face, 6, 4, 16, True),
    ("link-side", link_side, 6, 1.25, 16, True),
    ("ring", ring, 10, 10, 12.8, True),
    ("clasp", clasp, 12, 6, 200 / 12, True),
    ("bangle", bangle, 69.8, 69.8, 1024 / 69.8, False),
]
