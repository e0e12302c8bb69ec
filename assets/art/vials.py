"""Glass vials with a cork, and what is kept in them."""
import numpy as np
from scipy import ndimage as nd

from canvas import step
from mesh import Mesh, linear, together
from solids import ball, grid, lathe, loop, tube

TURN = 2 * np.pi
NECK, BODY, WALL = 6.4, 10.4, 0.55  # mm below the upper edge; the glass's thickness


def outside(w, h, foot):
    """Radius of the glass at each height, as rows (radius, y) from the lip down."""
    r = w / 2
    y = np.concatenate([np.linspace(NECK, BODY + 1.5, 40), np.linspace(BODY + 2, h - foot, 8), h - foot + foot * np.sin(np.linspace(0, TURN / 4, 18)[1:])])
    half = r * (0.60 + 0.40 * step(y, NECK + 1.6, BODY + 0.4)) + r * 0.10 * np.exp(-(((y - NECK - 0.35) / 0.5) ** 2))
    fall = np.clip((y - (h - foot)) / foot, 0, 1)
    return np.stack([np.maximum(half - foot * (1 - np.sqrt(np.clip(1 - fall**2, 0, 1))), 0), y], -1)


def inside(w, h, foot):
    """The hollow's rows: the outside less the wall, with a thick sole."""
    rows = outside(w, h, foot)
    half = np.maximum(rows[:, 0] - WALL, 0)
    return np.stack([half, NECK + (rows[:, 1] - NECK) * (h - NECK - 1.3) / (h - NECK)], -1)


def room_at(rows, y):
    """How wide the hollow is at a height."""
    return np.interp(y, rows[:, 1], rows[:, 0])


def turn(rs):
    """A rotation at random."""
    q, r = np.linalg.qr(rs.normal(size=(3, 3)))
    return q * np.sign(np.diag(r))


def heap(c, w, h, hollow, n, seed, colours, size, shape, top, ground, strays=0, lying=0.35, **surface):
    """Many small things heaped at the bottom of a vial up to about `top`, higher in the middle and to the left; `strays` more
    cling to the wall above. `shape(radius, rs)` makes one about the origin; `lying` is how far one tips from the wall or
    the heap's surface it lies against. `ground` is the colour of what lies deeper."""
    rs = np.random.RandomState(seed)
    low = h - 1.45
    wide = room_at(hollow, top)

    def crest(x, q):
        return top + 0.16 * x + 1.5 * (q / wide) ** 2 - 0.6

    # The heap's body, just under what is seen of it.
    y = np.linspace(0, 1, 40)
    rows = [(0.0, crest(0, 0) + 1.0)]
    rows += [(q, crest(0, q) + 1.0) for q in np.linspace(0.2, 0.9, 8) * wide]
    rows += [(max(room_at(hollow, v) - 2.2 * np.mean(size), 0.05), v) for v in crest(0, wide) + 1.0 + (low - 0.3 - crest(0, wide) - 1.0) * y]
    core = lathe([*rows, (0, low - 0.3)], 64)
    core.points[:, 1] += 0.16 * core.points[:, 0] * step(-core.points[:, 1], -low, -top)
    c.part(core.valued(tint=linear(ground)), kind="body", gloss=0.0, rough=0.9, glow=0.0)
    many = []
    for i in range(n + strays):
        r = rs.uniform(*size)
        a = rs.uniform(0, TURN)
        tip = turn(rs) if rs.uniform() < lying else np.eye(3)
        lean = rs.normal(0, 0.3)
        tip = np.array([[1, 0, 0], [0, np.cos(lean), -np.sin(lean)], [0, np.sin(lean), np.cos(lean)]]) @ tip
        about = rs.uniform(0, TURN)
        tip = tip @ np.array([[np.cos(about), -np.sin(about), 0], [np.sin(about), np.cos(about), 0], [0, 0, 1]])
        outward = np.stack([[-np.sin(a), 0, np.cos(a)], [0, 1, 0], [np.cos(a), 0, np.sin(a)]], -1)
        if i >= n:
            # Alone on the glass, most of them not far above the heap.
            y = top - 0.6 - (top - BODY - 1.5) * rs.uniform(0, 1) ** 2.2
            q = room_at(hollow, y) - 0.16 * r - 0.05
        elif i % 4 == 0:
            # On the surface.
            q = (wide - r * 0.6) * np.sqrt(rs.uniform(0, 1))
            y = crest(q * np.cos(a), q) + rs.uniform(-0.2, 0.7) * r
            outward = np.array([[1, 0, 0], [0, 0, -1], [0, 1, 0]])
        else:
            y = crest(wide * np.cos(a), wide) + (low - r * 0.4 - crest(wide * np.cos(a), wide)) * rs.uniform(0, 1) ** 0.95
            q = max(room_at(hollow, y + r * 0.3) - r * rs.uniform(0.8, 1.6), 0.05) * (np.sqrt(rs.uniform(0, 1)) if y > low - 0.7 else 1)
        colour = linear(np.array(colours[rs.randint(len(colours))])) * rs.uniform(0.8, 1.12)
        many.append(shape(r, rs).turned(outward @ tip).moved(q * np.cos(a), y, q * np.sin(a)).valued(tint=np.clip(colour, 0, 1)))
    c.part(together(many), **surface)


def flake(r, rs):
    t = np.arange(6) * TURN / 6
    ring = np.stack([r * np.cos(t), r * np.sin(t), 0 * t], -1)
    return Mesh(np.concatenate([[(0, 0, 0)], ring]), [(0, i + 1, (i + 1) % 6 + 1) for i in range(6)], smooth=False)


def seed_grain(r, rs):
    m = ball(0, 0, 0, r, r * 0.5, r * 0.42, 20)
    # Pointed at one end.
    m.points[:, 1:] *= (1 - 0.45 * np.clip(m.points[:, :1] / r, 0, 1) ** 2)
    return m


def paper_star(r, rs):
    t = np.arange(10) * TURN / 10
    q = np.where(np.arange(10) % 2, 0.62, 1.0) * r
    ring = np.stack([q * np.sin(t), -q * np.cos(t), 0 * t], -1)
    points = np.concatenate([[(0, 0, 0.45 * r), (0, 0, -0.45 * r)], ring])
    faces = [(0, i + 2, (i + 1) % 10 + 2) for i in range(10)] + [(1, (i + 1) % 10 + 2, i + 2) for i in range(10)]
    m = Mesh(points, faces)
    return Mesh(m.points[m.faces].reshape(-1, 3), np.arange(m.faces.size), smooth=False)


def vial(fill, foot=1.6, tint=(0.95, 0.97, 0.96)):
    def recipe(c, w, h):
        c.clear = True
        outer, inner = outside(w, h, foot), inside(w, h, foot)
        wall = np.concatenate([outer, inner[::-1]])
        c.part(lathe(wall, 160, closed=True).outward(), kind="glass", colour=tint, dense=0.0, ior=1.45)
        fill(c, w, h, inner)
        cork(c, w, inner)

    return recipe


def cork(c, w, hollow):
    """A cork with its pores, a screw eye in it."""
    r = room_at(hollow, NECK + 0.5) * 1.0
    low = NECK + 3.0
    y = np.linspace(3.7, low, 60)
    rows = [(0, 3.55), (r * 0.9, 3.55), *[(r * (1.10 - 0.13 * t) if q < NECK else r * 0.985, q) for q, t in zip(y, np.linspace(0, 1, 60))], (r * 0.9, low + 0.1), (0, low + 0.1)]
    m = lathe(rows, 200)
    rs = np.random.RandomState(81)
    j = np.clip(((m.points[:, 0] + c.w / 2 + c.MARGIN) * c.k).astype(int), 0, c.cols - 1)
    i = np.clip(((m.points[:, 1] + c.MARGIN) * c.k).astype(int), 0, c.rows - 1)
    pores = np.clip(c.noise(0.16, 82) - 1.0, 0, 1)[i, j] * (m.points[:, 2] > 0)
    m.points[:, 2] -= 0.25 * pores
    shade = 1 + 0.07 * c.noise(0.35, 81)[i, j] - 0.42 * pores + rs.uniform(-0.03, 0.03, len(i))
    m.values["tint"] = linear(np.array((206, 158, 106)) * np.clip(shade, 0, 1.2)[:, None])
    c.part(m, kind="body", gloss=0.1, rough=0.7, glow=0.0)
    metal = {"kind": "metal", "finish": "brass", "rough": 0.2, "patina": 0.9, "grain": 0.6, "seed": 84}
    c.part(lathe([(0, 3.1), (1.3, 3.1), (1.55, 3.3), (1.3, 3.56), (0, 3.56)]), **metal)
    c.part(tube([(0, 2.3, 0), (0, 3.3, 0)], 0.46), **metal)
    c.part(loop(0, 1.5, 1.08, 0.42), **metal)


def glitter(c, w, h, hollow):
    colours = [(236, 90, 190), (250, 150, 206), (150, 96, 230), (90, 150, 244), (255, 214, 120)]
    heap(c, w, h, hollow, 2600, 85, colours, (0.22, 0.42), flake, h * 0.58, (120, 50, 130), 34, 0.45, kind="foil", rough=0.22)


def message(c, w, h, hollow):
    """A rolled letter tied with thread, leaning in its vial so that one looks a little into its upper end."""
    r, top, low = w * 0.23, BODY + 3.6, h - 2.2
    n, rows = 420, 200
    t = np.linspace(-3.3 * TURN, 0.95, n)
    along = (t - t[0]) / (t[-1] - t[0])
    # Its outer edge stands off.
    spiral = r * (0.42 + 0.58 * along**0.8) + 0.30 * np.clip((t - t[-1] + 0.9) / 0.9, 0, 1) ** 2
    y = np.linspace(top, low, rows)
    tall = y - (top + low) / 2
    # The layers have slipped along each other, and the ends open a little.
    slip = 0.55 * (1 - along) - 0.25 + 0.07 * np.sin(t * 1.7)
    open_ = 1 + 0.10 * (np.abs(tall) / tall[-1])[:, None] ** 6
    x, z = spiral * np.sin(t) * open_, spiral * np.cos(t) * open_
    up = np.broadcast_to(tall[:, None], x.shape) + slip + 0.07 * np.sin(t * 3)
    side, back = np.sin(0.05), np.sin(0.23)
    points = np.stack([x + side * up, (top + low) / 2 + up * np.cos(0.23) + back * z, z * np.cos(0.23) - back * up], -1)
    m = grid(points, around=False)
    rs = np.random.RandomState(86)
    edge = np.exp(-(((t - t[-1]) / 0.05) ** 2)) + np.exp(-(((np.abs(tall) - tall[-1]) / 0.25) ** 2))[:, None]
    stain = nd.gaussian_filter(rs.normal(size=x.shape), (9, 9)) * 16
    tone = (1 + 0.02 * rs.normal(size=x.shape) + 0.05 * stain) * (1 - 0.22 * np.clip(edge, 0, 1))
    rgb = np.array((240, 214, 166)) * tone[..., None]
    m.values["tint"] = linear(np.clip(rgb, 0, 255)).reshape(-1, 3)
    c.part(m, kind="body", gloss=0.05, rough=0.7, glow=0.0)
    red = linear((150, 24, 50))
    thread = {"kind": "body", "gloss": 0.2, "rough": 0.5, "glow": 0.0}
    mid = (top + low) / 2 + 0.6

    def tie(path, wire):
        c.part(tube(path, wire, 12).valued(tint=red), **thread)

    t = np.linspace(0, 3 * TURN, 160)
    tie(np.stack([(r + 0.04) * np.sin(t) + side * 0.6, mid - 0.5 + 1.0 * t / t[-1] + back * r * np.cos(t), (r + 0.04) * np.cos(t)], -1), 0.22)
    front = mid + back * r
    a = np.linspace(0.4, TURN - 0.4, 40)
    for s in (-1, 1):
        tie(np.stack([s * (1.0 - 1.0 * np.cos(a)), front + 0.6 * np.sin(a) + 0.25 * (1 - np.cos(a)), r + 0.5 + 0.12 * np.sin(a / 2)], -1), 0.18)
        q = np.linspace(0, 1, 16)
        tie(np.stack([s * (0.2 + 1.1 * q + 0.25 * np.sin(q * 5)), front + (2.4 + 0.5 * s) * q**1.2, r + 0.5 - 0.45 * q], -1), 0.17)
    c.part(ball(0, front, r + 0.55, 0.36, n=32).valued(tint=red), **thread)


def sand(c, w, h, hollow):
    top = BODY + 3.0
    bands = np.array([(216, 180, 118), (74, 138, 160), (240, 220, 180), (48, 86, 128), (228, 190, 128)])
    rows = hollow[hollow[:, 1] > top]
    y = np.linspace(top, rows[-1, 1], 260)
    fill = np.stack([np.maximum(room_at(hollow, y) - 0.02, 0), y], -1)
    m = lathe([(0, top - 0.2), (fill[0, 0] * 0.6, top - 0.12), *fill, (0, y[-1])], 420)
    x, yy, z = m.points.T
    rs = np.random.RandomState(90)
    a = np.arctan2(z, x)
    t = (yy - top) / (y[-1] - top) + 0.02 * np.sin(a + 1)
    which = np.zeros(len(x), int)
    for i in range(1, 5):
        which += t > 0.2 * i + 0.035 * np.sin(a * (2 + i % 2) + i * 1.9) + 0.014 * np.sin(a * 5 + i) + rs.normal(0, 0.006, len(x))
    grain = rs.normal(1, 0.16, len(x))
    m.values["tint"] = linear(np.clip(bands[which] * grain[:, None], 0, 255))
    out = np.stack([x, 0 * x, z], -1)
    m.points -= out / np.maximum(np.linalg.norm(out, axis=1, keepdims=True), 1e-6) * rs.uniform(0, 0.07, len(x))[:, None]
    c.part(m, kind="body", gloss=0.2, rough=0.6, glow=0.0)


def seeds(c, w, h, hollow):
    colours = [(132, 88, 44), (172, 124, 66), (88, 60, 38), (202, 170, 112), (72, 58, 48)]
    heap(c, w, h, hollow, 1500, 92, colours, (0.6, 1.0), seed_grain, h * 0.55, (58, 40, 24), 0, 0.3, kind="body", gloss=0.6, rough=0.35, glow=0.0)


def stars(c, w, h, hollow):
    colours = [(250, 200, 80), (255, 234, 170), (246, 246, 240), (240, 180, 88), (252, 222, 124)]
    heap(c, w, h, hollow, 760, 93, colours, (0.85, 1.25), paper_star, h * 0.53, (150, 112, 50), 0, 0.6, kind="body", gloss=0.4, rough=0.4, glow=0.0)


RECIPES = {
    "vial-glitter": vial(glitter), "vial-message": vial(message, 2.4, (0.94, 0.97, 0.95)), "vial-sand": vial(sand, 1.0),
    "vial-seeds": vial(seeds, 2.0), "vial-stars": vial(stars, 3.4, (0.94, 0.96, 0.98)),
}
