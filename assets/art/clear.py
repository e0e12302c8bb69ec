"""Beads on head pins, cut stones in their caps, and vials."""
import numpy as np

from canvas import step
from glass import Cut, Pebble, draw
from light import reflect, slopes
from relief import Relief

TURN = 2 * np.pi


def pin(c, top, low, finish, seed):
    """A head pin: a wrapped loop above the bead, a ball end below it; each wrap lies a little askew, as by hand."""
    relief = Relief(c)
    relief.wire(c.line(0, low - 0.6, 0, low + 0.3), 0.4).ball(0, low + 0.55, 0.68)
    relief.wire(c.line(0, 2.3, 0, top + 0.4), 0.38)
    for i, y in enumerate(np.linspace(3.1, top - 0.45, 3)):
        relief.wire(c.line(-0.62, y + 0.12, 0.62, y - 0.12), 0.36, 0.35)
    relief.eye().paint(finish, seed=seed)


def caps(c, top, low, r, finish, seed):
    """Fluted bead caps."""
    relief = Relief(c)
    for y0, y1, flip in ((top - 0.25, top + r * 0.34, False), (low - r * 0.34, low + 0.25, True)):
        relief.turned(y0, y1, lambda t, flip=flip: r * 0.60 * np.sqrt(np.clip(1 - (t if flip else 1 - t) ** 2, 0.02, 1)) + 0.12, 0.9)
    relief.z += np.where(relief.d < 0, 0.16 * np.sin(np.arcsin(np.clip(c.x / (r * 0.62), -1, 1)) * 11), 0)
    relief.paint(finish, seed=seed)


def bead(finish, seed, body, capped=True):
    """A bead between its pin's loop and ball; `body(c, cy, a, b)` paints the bead itself."""

    def recipe(c, w, h):
        low = h - 1.2
        top = 4.7
        a, b = w / 2, (low - top) / 2
        pin(c, top, low, finish, seed)
        body(c, (top + low) / 2, a, b)
        if capped:
            caps(c, top, low, min(a, b), finish, seed + 3)

    return recipe


def glass_ball(colour, dense, clear, seed=None):
    def body(c, cy, a, b):
        cloud = None
        if seed:
            cloud = np.clip(0.10 + 0.09 * c.noise(0.8, seed, 2) + 0.5 * np.clip(c.noise(0.22, seed + 1) - 2.1, 0, 1), 0, 0.6)
        draw(c, Pebble(cy, a, b, a), colour, dense, clear, cloud)

    return body


def veined(base, tint, seed, specks=None, veins=None, glow=0.15):
    def body(c, cy, a, b):
        mix = np.clip(0.5 + 0.30 * c.noise(1.5, seed) + 0.18 * c.noise(0.4, seed + 1), 0, 1)[..., None]
        rgb = np.array(base, np.float32) * (1 - mix) + np.array(tint, np.float32) * mix
        if veins:
            v = np.exp(-((c.noise(1.6, seed + 2) / 0.07) ** 2)) * 0.55 * np.clip(c.noise(2.0, seed + 4) + 0.4, 0, 1)
            rgb = rgb + (np.array(veins) - rgb) * v[..., None]
        if specks:
            s = np.clip((c.noise(0.10, seed + 5) - 2.0 + 0.4 * c.noise(1.5, seed + 6)) * 1.5, 0, 1)[..., None]
            rgb = rgb + (np.array(specks) - rgb) * s
        Relief(c).ball(0, cy, a, b, a).stone(rgb, 1.0, 0.025, glow)

    return body


def pearl(c, cy, a, b):
    relief = Relief(c).ball(0, cy, a, b, a)
    relief.z += 0.03 * c.noise(1.6, 61) * (relief.d < -0.3)
    nx, ny, nz = slopes(c, c.blur(relief.z, 0.05))
    sheen = np.stack([14 * np.sin(nz * 9 + 0.3), 5 * np.sin(nz * 9 + 2.2), 13 * np.sin(nz * 9 + 4.2)], -1)
    relief.stone(np.clip(np.array((246, 236, 226)) + sheen, 0, 255), 0.9, 0.05, 0.22)


def wood(c, cy, a, b):
    relief = Relief(c).ball(0, cy, a, b, a)
    r = np.hypot(c.x + 1.6 + 0.30 * c.noise(1.6, 62, 3), (c.y - cy) * 0.16 + 2.0)
    rings = 0.5 + 0.5 * np.sin(r * 7.5 + 0.8 * c.noise(1.0, 63, 4))
    pores = np.clip(c.noise(0.06, 64, 7) - 1.0, 0, 1) * 0.35
    rgb = np.array((196, 142, 84)) * (1 - rings[..., None] ** 2.2) + np.array((104, 62, 32)) * rings[..., None] ** 2.2
    relief.stone(rgb * (1 - pores[..., None]), 0.5, 0.12)


def cap(c, y, r, finish, seed, low=None):
    """A bell cap with claws over the top of a stone, and the eye."""
    low = low or y + 2.2
    relief = Relief(c)
    relief.turned(2.7, low, lambda t: 0.8 + (r - 0.8) * np.sqrt(np.clip(1 - (1 - t) ** 2, 0, 1)), 0.9)
    relief.groove(c.y - (low - 0.75), 0.22, 0.13)
    relief.turned(low - 0.35, low + 0.25, lambda t: r + 0.15 + 0 * t, 0.9)
    relief.eye().paint(finish, seed=seed)


def point(c, w, h):
    # A six-sided prism, turned a little about its axis, with a six-sided point.
    r = w / 2 * 0.93
    faces = [(0, -1, 0, -4.6)]
    for k in range(6):
        t = k * TURN / 6 + 0.30
        faces.append((np.cos(t), 0, np.sin(t), r * (1.0 if k % 2 else 0.93)))
        steep = 0.58 if k % 2 else 0.66
        faces.append((np.cos(t), steep, np.sin(t), steep * h))
        faces.append((np.cos(t), -0.9, np.sin(t), r * 0.52 - 0.9 * 5.0))
    cloud = np.clip(0.35 * np.exp(-(((c.y - 11 + 0.8 * c.x + 1.2 * c.noise(0.8, 71)) / 0.5) ** 2)) + 0.25 * np.clip(c.noise(0.9, 72, 3) - 0.6, 0, 1) * step(h * 0.6 - c.y, 0, 6), 0, 0.5)
    draw(c, Cut(faces), (236, 242, 250), 0.03, 0.56, cloud)
    cap(c, 5.0, w * 0.40, "silver", 73, 7.6)


def pear(c, w, h):
    # A faceted drop: planes touching a ball below and the cone from it to the tip, thinner from front to back.
    a, tip = w / 2, 3.6
    cy = h - a
    slim = 0.62
    dist = cy - tip
    lean = np.arcsin(a / dist)
    faces = [(0, -1, 0, -4.8)]
    rows = [(-lean, 8, 0.0), (-lean + 0.20, 8, 0.5), (0.10, 8, 0.0), (0.45, 8, 0.5), (0.85, 8, 0.0), (1.2, 8, 0.5)]
    for tilt, n, shift in rows:
        for k in range(n):
            t = (k + shift + 0.5) * TURN / n
            nx, ny, nz = np.cos(t) * np.cos(tilt), np.sin(tilt), np.sin(t) * np.cos(tilt)
            faces.append((nx, ny, nz / slim, (a * 0.985) + ny * cy))
    draw(c, Cut(faces), (150, 204, 240), 0.075, 0.86)
    cap(c, 4.0, 1.9, "silver", 74, 5.8)


def brilliant(cy, a, b, n, table, crown, depth):
    """Faces of an oval stone seen from the front: table, crown in two rows, girdle, pavilion in two rows."""
    faces = [(0, 0, 1, crown)]
    size = min(a, b)
    for k in range(n):
        for shift, rise, share in ((0.0, crown * 1.06, 1.0), (0.5, crown * 0.78, 0.97)):
            t = (k + shift) * TURN / n
            x, y = np.cos(t) / a, np.sin(t) / b
            fall = (1 - table if shift == 0 else (1 - table) * 0.62) / rise
            faces.append((x, y, fall, share + y * cy))
        for shift, deep in ((0.0, depth), (0.5, depth * 1.12)):
            t = (k + shift) * TURN / n
            x, y = np.cos(t) / a, np.sin(t) / b
            faces.append((x, y, -1.0 / deep, 1.0 + y * cy))
    for k in range(2 * n):
        t = (k + 0.5) * TURN / (2 * n)
        x, y = np.cos(t) / a, np.sin(t) / b
        faces.append((x, y, 0, 0.985 + y * cy))
    return faces


def claws(c, cy, a, b, finish, seed, corners):
    """A thin gallery with claws round a stone."""
    relief = Relief(c)
    relief.wire(np.abs(c.oval(0, cy, a - 0.35, b - 0.35)), 0.42)
    for t in corners:
        x, y = (a - 0.5) * np.sin(t), cy - (b - 0.5) * np.cos(t)
        relief.wire(c.line(x * 1.0, y, x * 0.86, cy + (y - cy) * 0.86), 0.50, 0.5)
        relief.ball(x * 0.86, cy + (y - cy) * 0.86, 0.58, lift=0.5)
    relief.wire(c.line(0, 2.2, 0, cy - b + 0.6), 0.62).eye().paint(finish, seed=seed)


def violet(c, w, h):
    a, b = w / 2, (h - 3.4) / 2
    cy = h - b
    draw(c, Cut(brilliant(cy, a - 0.45, b - 0.45, 8, 0.56, 1.7, 5.2)), (176, 104, 226), 0.10, 0.95)
    claws(c, cy, a, b, "brass", 75, (0.7, -0.7, 2.44, -2.44))


def square(c, w, h):
    a = w / 2
    cy = h - a
    s = a - 0.35
    faces = [(0, 0, 1, 1.6)]
    for x, y in ((1, 0), (-1, 0), (0, 1), (0, -1)):
        faces.append((x, y, 0, s + y * cy))
        faces.append((x, y, 0.95, s + 0.55 + y * cy))
        for i, (slope, out) in enumerate(((1.25, 0.15), (0.92, -0.55), (0.70, -1.15))):
            faces.append((x, y, -slope, s + out + 0.3 + y * cy))
    for x in (1, -1):
        for y in (1, -1):
            faces.append((x, y, 0, 2 * s - 1.1 + y * cy))
            faces.append((x, y, 0.9, 2 * s - 1.0 + y * cy))
            faces.append((x, y, -1.15, 2 * s - 1.4 + y * cy))
    draw(c, Cut(faces), (104, 214, 158), 0.09, 0.93)
    relief = Relief(c)
    relief.wire(np.abs(c.box(0, cy, s, s, 0.8)), 0.40)
    for x in (1, -1):
        for y in (1, -1):
            relief.wire(c.line(x * s * 0.98, cy + y * s * 0.98, x * s * 0.74, cy + y * s * 0.74), 0.5, 0.4).ball(x * s * 0.74, cy + y * s * 0.74, 0.55, lift=0.4)
    relief.wire(c.line(0, 2.2, 0, cy - s), 0.62).eye().paint("gold", rough=0.04, seed=76)


# Vials.

NECK, BODY = 6.4, 10.4


def bottle(c, w, h, foot):
    """Half width of the glass at each height, and its outline."""
    r = w / 2
    t = step(c.y, NECK + 1.6, BODY + 0.4)
    half = r * (0.60 + 0.40 * t) + r * 0.10 * np.exp(-(((c.y - NECK - 0.3) / 0.5) ** 2))
    fall = np.clip((c.y - (h - foot)) / foot, 0, 1)
    half = half - foot * (1 - np.sqrt(1 - fall**2))
    return half, np.maximum(np.abs(c.x) - half, np.maximum(NECK - c.y, c.y - h))


def scatter(c, inside, w, h, n, seed, colours, size, draw_one, low=1.35, high=2.2, reach=0.8):
    """Many small things lying and clinging in a bottle."""
    rs = np.random.RandomState(seed)
    for i in range(n):
        x, y = rs.uniform(-1, 1) * (w / 2 - 1.1), h - 1.1 - rs.beta(low, high) * (h - BODY - 1) * reach
        r = rs.uniform(*size)
        tone = rs.uniform(0.72, 1.12) * (0.70 + 0.30 * np.cos(x / (w / 2) * 1.3))
        j0, j1 = np.searchsorted(c.x[0], (x - 2 * r, x + 2 * r))
        i0, i1 = np.searchsorted(c.y[:, 0], (y - 2 * r, y + 2 * r))
        part = np.s_[i0:i1, j0:j1]
        d, shade = draw_one(c.x[part] - x, c.y[part] - y, r, rs)
        a = np.clip(0.5 - d * c.k, 0, 1) * inside[part]
        rgb = np.clip(np.array(colours[rs.randint(len(colours))]) * (tone * shade)[..., None], 0, 255)
        under = c.a[part] * (1 - a)
        whole = a + under
        c.rgb[part] = (rgb * a[..., None] + c.rgb[part] * under[..., None]) / np.maximum(whole, 1e-6)[..., None]
        c.a[part] = whole


def flake(x, y, r, rs):
    t, thin = rs.uniform(0, TURN), rs.uniform(0.45, 1)
    u, v = x * np.cos(t) + y * np.sin(t), -x * np.sin(t) + y * np.cos(t)
    u, v = np.abs(u), np.abs(v) / thin
    return np.maximum(u * 0.87 + v * 0.5, v) - r * 0.86, np.full_like(x, rs.choice((0.75, 1.0, 1.0, 1.55)))


def seed_grain(x, y, r, rs):
    t = rs.uniform(0, TURN)
    u, v = x * np.cos(t) + y * np.sin(t), -x * np.sin(t) + y * np.cos(t)
    q = np.hypot(u / r, v / (r * 0.52))
    return (q - 1) * r * 0.55, 1.25 - 0.45 * q - 0.35 * (y + x * 0.6) / r * 0.5 - 0.25 * np.exp(-((v / (r * 0.10)) ** 2))


def paper_star(x, y, r, rs):
    q, a = np.hypot(x, y), np.arctan2(x, -y) + rs.uniform(0, TURN)
    fold = np.abs((a + TURN / 10) % (TURN / 5) - TURN / 10)
    return (q * (np.cos(fold) + 0.72 * np.sin(fold)) - r) * 0.8, 1.12 - 0.34 * np.sin(a * 0.5 + 1) ** 2 * np.minimum(q / r, 1) - 0.2 * (np.sin((a + TURN / 10) * 5) > 0)


def vial(fill, foot=1.6, tint=(214, 228, 224)):
    def recipe(c, w, h):
        half, d = bottle(c, w, h, foot)
        u = np.clip(c.x / np.maximum(half, 0.1), -1, 1)
        # The far wall and the thick foot, seen through the near one.
        wall = step(np.abs(u), 0.62, 1.0)
        sole = step(c.y, h - 1.5, h - 0.4)
        back = np.array(tint) * (0.96 - 0.42 * wall**2 - 0.18 * sole)[..., None]
        c.over(back, c.cover(d) * np.clip(0.26 + 0.50 * wall**1.5 + 0.30 * sole, 0, 0.9))
        inner = np.maximum(d + 0.75, np.maximum(c.y - (h - 1.15), NECK + 3.2 - c.y))
        fill(c, w, h, c.cover(inner))
        # The near wall: what it mirrors, and the dark line where it is seen edge on.
        glassy = Relief(c)
        glassy.turned(NECK, h, lambda t: half)
        glassy.d = d
        nx, ny, nz = slopes(c, c.blur(glassy.z, 0.10))
        mirror = np.clip((reflect(nx, ny, 0.02, 5.0) - 0.42) * (0.10 + 0.75 * (1 - nz) ** 3), 0, 0.92) * step(-d, 0.0, 0.25)
        edge = np.exp(-(((d + 0.28) / 0.26) ** 2)) * 0.34
        c.over(np.full(c.rgb.shape, (96, 116, 112), np.float32), c.cover(d) * edge)
        c.over(np.full(c.rgb.shape, (255, 255, 255), np.float32), c.cover(d) * mirror)
        streak = np.exp(-(((u + 0.58) / 0.085) ** 2)) * step(c.y, BODY + 0.4, BODY + 2.4) * step(h - 2.2 - c.y, 0, 2.2) * 0.62
        thin = np.exp(-(((u - 0.74) / 0.04) ** 2)) * step(c.y, BODY + 1.2, BODY + 3.5) * step(h - 2.5 - c.y, 0, 5) * 0.45
        c.over(np.full(c.rgb.shape, (255, 255, 255), np.float32), c.cover(d) * np.maximum(streak, thin))
        cork(c, w)

    return recipe


def cork(c, w):
    r = w * 0.30
    grain = 1 + 0.06 * c.noise(0.35, 81) - 0.40 * np.clip(c.noise(0.16, 82) - 1.2, 0, 1)
    plug = Relief(c).turned(3.6, NECK + 3.0, lambda t: r * (1.06 - 0.14 * t))
    shape = plug.d
    plug.d = np.maximum(shape, c.y - NECK)
    plug.z += 0.12 * c.noise(0.22, 83)
    plug.stone(np.array((200, 154, 104)) * grain[..., None], 0.12, 0.3)
    # The part of the cork inside the neck, through the glass.
    low = np.maximum(shape, NECK - c.y)
    lit = 0.62 + 0.26 * np.sqrt(np.clip(1 - (c.x / r) ** 2, 0, 1))
    c.over(np.array((190, 146, 98)) * (grain * lit)[..., None], c.cover(low) * 0.62)
    Relief(c).turned(3.1, 3.8, lambda t: 1.7 + 0 * t, 0.8).wire(c.line(0, 2.3, 0, 3.4), 0.5).eye().paint("brass", seed=84)


def glitter(c, w, h, inside):
    colours = [(232, 120, 196), (246, 172, 214), (168, 126, 232), (120, 170, 240), (250, 222, 150)]
    c.over(np.full(c.rgb.shape, (214, 166, 214), np.float32), inside * step(c.y, h * 0.52, h * 0.95) * 0.75)
    scatter(c, inside, w, h, 1100, 85, colours, (0.16, 0.36), flake, 0.9, 2.3, 0.98)


def message(c, w, h, inside):
    r, top, low = w * 0.27, BODY + 1.6, h - 2.0
    lean = (c.y - (top + low) / 2) * 0.055
    x = c.x - lean
    paper = Relief(c)
    paper.add(np.maximum(np.abs(x) - r, np.maximum(top - c.y + 0.4 * np.sin(x), c.y - low)), np.sqrt(np.clip(r * r - x * x, 0, None)))
    fibre = 1 + 0.04 * c.noise(0.12, 86, 3) + 0.05 * c.noise(1.0, 87)
    lines = 1 - 0.30 * np.exp(-((((c.y + 0.1 * x) % 1.35 - 0.7) / 0.13) ** 2)) * (c.noise(0.5, 88, 0.3) > -0.4) * step(r * 0.75 - np.abs(x), 0, 0.3)
    edge = 1 - 0.35 * np.exp(-(((x - r * 0.55) / 0.13) ** 2))
    paper.stone(np.array((238, 220, 178)) * (fibre * lines * edge)[..., None], 0.05, 0.4, 0.2)
    band, mid = Relief(c), (top + low) / 2
    band.add(np.maximum(np.abs(x) - r - 0.15, np.abs(c.y - mid - 0.06 * x * x) - 0.55), np.sqrt(np.clip((r + 0.15) ** 2 - x * x, 0, None)))
    band.ball(0, mid + 0.5, 0.95, 0.85, 0.5, lift=r).stone((152, 34, 56), 0.5, 0.15)


def sand(c, w, h, inside):
    top = BODY + 3.0
    bands = [(214, 178, 118), (92, 150, 168), (236, 214, 172), (60, 96, 134), (226, 190, 130)]
    t = (c.y - top) / (h - 1.2 - top) + 0.035 * np.sin(c.x * 0.9 + 1) + 0.02 * c.noise(1.2, 89)
    rgb = np.zeros(c.rgb.shape, np.float32)
    for i, colour in enumerate(bands):
        edge = (0, 0.20, 0.40, 0.60, 0.80)[i] + (0.03 * np.sin(c.x * (0.7 + 0.35 * i) + i * 1.9) if i else 0)
        rgb = np.where((t > edge)[..., None], np.array(colour, np.float32), rgb)
    grain = 1 + 0.13 * c.noise(0.055, 90) + 0.05 * c.noise(0.3, 91)
    lit = 0.66 + 0.36 * np.sqrt(np.clip(1 - (c.x / (w / 2)) ** 2, 0, 1)) - 0.10 * c.x / w
    crest = 1 + 0.15 * np.exp(-(((t - 0.01) / 0.02) ** 2))
    c.over(np.clip(rgb * (grain * lit * crest)[..., None], 0, 255), inside * step(t, 0.0, 0.012))


def seeds(c, w, h, inside):
    scatter(c, inside, w, h, 150, 92, [(132, 88, 44), (168, 122, 66), (86, 60, 38), (196, 164, 108), (70, 58, 48)], (0.62, 1.05), seed_grain, 0.85, 2.6, 0.72)


def stars(c, w, h, inside):
    scatter(c, inside, w, h, 84, 93, [(250, 208, 92), (255, 236, 176), (246, 246, 240), (240, 186, 96), (252, 224, 130)], (0.75, 1.2), paper_star, 0.95, 1.9, 0.86)


RECIPES = {
    "bead-garnet": bead("brass", 50, glass_ball((172, 16, 40), 0.20, 0.96)),
    "bead-jade": bead("brass", 51, veined((70, 140, 98), (150, 200, 150), 51, glow=0.45)),
    "bead-amber": bead("copper", 52, glass_ball((240, 150, 30), 0.17, 0.94, 52), False),
    "bead-pearl": bead("silver", 53, pearl, False),
    "bead-lapis": bead("gold", 54, veined((26, 46, 128), (48, 82, 176), 54, specks=(232, 196, 104), veins=(196, 204, 222), glow=0.08)),
    "bead-wood": bead("copper", 55, wood),
    "bead-rose": bead("silver", 56, veined((238, 176, 184), (250, 214, 214), 56, veins=(255, 240, 238), glow=0.6)),
    "crystal-point": point, "crystal-drop": pear, "crystal-violet": violet, "crystal-cube": square,
    "vial-glitter": vial(glitter), "vial-message": vial(message, 2.4, (206, 230, 214)), "vial-sand": vial(sand, 1.0),
    "vial-seeds": vial(seeds, 2.0), "vial-stars": vial(stars, 3.4, (208, 222, 236)),
}
