"""The kiosk's own pictures: linen, chain links, a ring, a clasp and a bangle in grey, to be tinted by a finish."""
import numpy as np
from PIL import Image
from scipy import ndimage as nd

from canvas import cut, join
from relief import Relief
from room import LINEN
from solids import ball, tube

GREY = {"kind": "metal", "finish": "grey", "rough": 0.2, "patina": 0.6, "grain": 0.4, "seed": 120}


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


def loop_path(long, wide, gauge, n=60):
    """The middle of a link's wire: straight sides and half circles. Outside `long` by `wide`, upright in its frame."""
    r = (wide - gauge) / 2
    straight = (long - gauge) / 2 - r
    bend = np.linspace(-np.pi / 2, np.pi / 2, n)
    half = np.stack([straight + r * np.cos(bend), r * np.sin(bend), 0 * bend], -1)
    if straight < 0.05:
        return np.concatenate([half[:-1], half[:-1] * (-1, -1, 1)]) + (0, wide / 2, 0)
    # The straight sides need points of their own, so that the wire keeps its roundness there.
    flat = np.stack([np.linspace(straight * 0.9, -straight * 0.9, 20), np.full(20, r), np.zeros(20)], -1)
    return np.concatenate([half, flat, half * (-1, -1, 1), flat * (-1, -1, 1)]) + (0, wide / 2, 0)


def edge_on(c, w, h):
    """A link of round wire from its edge."""
    wire(c, [(h / 2 - w / 2, h / 2, 0), (0, h / 2, 0), (w / 2 - h / 2, h / 2, 0)], h / 2)


def link_face(c, w, h):
    # Cable: an oval of round wire, a quarter of the link's width thick, as the catalogue's pitch has it.
    wire(c, loop_path(w, h, h / 4), h / 8, True)


def flat_face(c, w, h):
    # Cable of wire hammered flat, its edges filed, dented a little.
    gauge = h / 4
    relief = Relief(c)
    line = np.abs(c.box(0, h / 2, (w - gauge) / 2, (h - gauge) / 2, (h - gauge) / 2)) - gauge / 2
    relief.bevelled(line, 0.55, gauge * 0.3)
    relief.z -= np.where(line < 0, 0.05 * np.clip(c.noise(0.28, 121), -1, 1), 0)
    relief.paint("grey", rough=0.2, patina=0.6, grain=0.3, seed=120)


def flat_side(c, w, h):
    relief = Relief(c).bevelled(c.box(0, h / 2, w / 2, h / 2, h * 0.42), 0.5, h * 0.28)
    relief.z -= np.where(relief.d < 0, 0.04 * np.clip(c.noise(0.28, 122), -1, 1), 0)
    relief.paint("grey", rough=0.2, patina=0.6, grain=0.3, seed=120)


def curb_path(w, h):
    """Curb: a link twisted by a quarter turn, so that all lie flat; seen from the front it leans."""
    gauge = h / 4
    # Begins and ends where the next link lies over it.
    t = np.linspace(0, 2 * np.pi, 160, endpoint=False) - 0.8
    # An oval with fuller ends than an ellipse; one long side leans to the left, the other to the right.
    x, y = np.sign(np.cos(t)) * np.abs(np.cos(t)) ** 0.86, np.sign(np.sin(t)) * np.abs(np.sin(t)) ** 0.86
    slant = x + 0.16 * y
    x = slant / np.abs(slant).max() * (w - gauge) / 2
    return np.stack([x, h / 2 + y * (h - gauge) / 2, 0.55 * gauge * np.sin(2 * t)], -1), gauge


def curb_face(c, w, h):
    path, gauge = curb_path(w, h)
    wire(c, path, gauge / 2, True)


def curb_over(c, w, h):
    # Only the run that lies over the next link: the lower half of the right end.
    path, gauge = curb_path(w, h)
    c.part(tube(path[28:66], gauge / 2, 24, caps=False), **GREY)


def ring(c, w, h):
    # 10 mm outside, 18 AWG, with the cut where it is opened.
    t = np.linspace(0.075, 2 * np.pi + 0.045, 200)
    wire(c, np.stack([4.49 * np.sin(t), 5 - 4.49 * np.cos(t), 0 * t], -1), 0.51)


def clasp(c, w, h):
    # 12 x 6 mm: the eye on the left, the lever above, the claw closing on the right.
    relief = Relief(c)
    relief.wire(np.abs(c.disc(-4.97, 3.25, 0.72)), 0.30, 0.1)
    body = c.blur(c.curve(lambda t: (0.80 - 5.08 * np.cos(t) * (1 - 0.02 * np.cos(t)), 3.25 + (2.97 - 1.03 * np.cos(t)) * np.sin(t) * (0.80 - 0.20 * np.cos(t)))), 0.08)
    mouth = c.blur(c.curve(lambda t: (2.20 + 2.45 * np.cos(t), 3.15 + (1.58 + 0.32 * np.cos(t)) * np.sin(t))), 0.05)
    relief.plate(cut(body, mouth), 1.15, 0.85)
    lever = join(c.path([(-1.1, 1.10), (1.4, 1.30), (4.0, 2.0)], 0.40), c.path([(-1.1, 1.10), (-2.5, 0.47)], 0.46))
    relief.add(lever, 1.0 + 0.45 * np.sqrt(np.clip(-lever / 0.40, 0, 1)))
    relief.groove(np.where(lever < 0.1, lever - 0.04, 9), 0.4, 0.10)
    relief.raised(c.disc(-1.6, 2.75, 0.75), 0.30, 0.5).groove(c.line(-2.0, 2.75, -1.2, 2.75), 0.2, 0.09)
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
# is not: the ring's middle stays the picture's middle, its outside touches the edges. Nor is the curb's upper run: it lies
# where it lies in the whole link.
PICTURES = [
    ("link-face", link_face, 4.2, 3.1, 24, True),
    ("link-side", edge_on, 4.2, 0.775, 24, True),
    ("link-flat-face", flat_face, 4.6, 3.4, 22, True),
    ("link-flat-side", flat_side, 4.6, 0.85, 22, True),
    ("link-rolo-face", link_face, 4.2, 4.0, 24, True),
    ("link-rolo-side", edge_on, 4.2, 1.0, 24, True),
    ("link-curb-face", curb_face, 6, 4.2, 18, True),
    ("link-curb-over", curb_over, 6, 4.2, 18, False),
    ("ring", ring, 10, 10, 12.8, True),
    ("clasp", clasp, 12, 6, 200 / 12, True),
    ("bangle", bangle, 69.8, 69.8, 1024 / 69.8, False),
]
