"""Lockets: two lids, a hinge on the left, a catch on the right, an engraved front."""
import numpy as np

from canvas import heart, star, step
from relief import Relief

TURN = 2 * np.pi


def case(c, w, d, cy, top, thick=2.4):
    """The lids with their seam, hinge and catch; the front is left to be engraved."""
    relief = Relief(c)
    for y in (-1.25, 0.0, 1.25):
        relief.add(c.box(-w / 2 + 0.75, cy + y, 0.75, 0.55, 0.2), 0.9 * np.sqrt(np.clip(1 - ((c.x + w / 2 - 0.75) / 0.75) ** 2, 0, 1)))
    relief.ball(w / 2 - 0.8, cy, 0.8, depth=1.1)
    relief.plate(d, 1.3, 0.5)
    lid = d + 0.45
    relief.add(lid, 1.3 + np.clip(thick - 1.3, 0, 9) * step(-lid, 0, 1.1))
    relief.wire(c.line(0, 2.2, 0, top + 0.8), 0.65)
    return relief


def round_locket(c, w, h):
    r = w / 2 - 0.7
    cy = h - r
    q, a = c.polar(0, cy)
    relief = case(c, w, c.disc(0, cy, r), cy, cy - r)
    relief.z += np.where(q < r, 0.8 * (1 - (q / r) ** 2), 0)
    relief.groove(q - r * 0.80, 0.3, 0.15).groove(q - r * 0.86, 0.2, 0.1)
    for t in np.arange(12) * TURN / 12:
        x, y = 0.46 * r * np.sin(t), cy - 0.46 * r * np.cos(t)
        u, v = (c.x - x) * np.cos(t) + (c.y - y) * np.sin(t), -(c.x - x) * np.sin(t) + (c.y - y) * np.cos(t)
        petal = (np.hypot(u / (r * 0.105), v / (r * 0.26)) - 1) * r * 0.105
        relief.raised(petal, 0.5, 0.7).groove(np.where(petal < 0, u, 9), 0.16, 0.1)
    relief.raised(c.disc(0, cy, r * 0.19), 0.9, r * 0.19)
    for i in range(20):
        g = np.sqrt((i + 0.5) / 20) * r * 0.16
        relief.raised(c.disc(g * np.sin(i * 2.4), cy - g * np.cos(i * 2.4), 0.26), 0.16, 0.26)
    relief.eye().paint("silver", seed=41)


def vine_locket(c, w, h):
    a, b = w / 2 - 0.7, (h - 2.6) / 2
    cy = h - b
    d = c.oval(0, cy, a, b)
    relief = case(c, w, d, cy, cy - b)
    relief.z += np.where(d < 0, 0.9 * np.clip(1 - (c.x / a) ** 2 - ((c.y - cy) / b) ** 2, 0, 1), 0)
    relief.groove(d + 1.7, 0.3, 0.15)
    ground = d + 2.2
    relief.z -= np.where(ground < 0, 0.30 + 0.035 * c.noise(0.10, 47), 0)
    ys = np.linspace(cy - b + 3.4, cy + b - 3.0, 22)
    wave = lambda y: 2.1 * np.sin((y - cy) * 0.62)
    vine = c.path([(wave(y), y) for y in ys])
    relief.raised(vine - 0.38, 0.55, 0.38)
    for i, y in enumerate(np.arange(cy - b + 4.5, cy + b - 4, 2.5)):
        for s in (-1, 1):
            x0, t = wave(y), 0.8 * s
            x, yy = x0 + s * 1.75, y - 0.7
            u, v = (c.x - x) * np.cos(t) + (c.y - yy) * np.sin(t), -(c.x - x) * np.sin(t) + (c.y - yy) * np.cos(t)
            leaf = np.maximum((np.hypot(u / 0.85, v / 1.6) - 1) * 0.85, d + 2.4)
            relief.raised(leaf, 0.65, 0.7).groove(np.where(leaf < 0, u, 9), 0.2, 0.09)
    relief.eye().paint("brass", seed=42)


def heart_locket(c, w, h):
    b = (h - 3.0) / 2
    cy = h - b
    d = c.curve(heart(0, cy, w / 2 - 0.6, b))
    relief = case(c, w, d, cy - 0.45 * b, cy - b + 4.4)
    relief.z += np.where(d < 0, 0.09 * np.clip(-d, 0, 7) ** 1.1, 0)
    relief.groove(d + 1.5, 0.26, 0.14)
    for s in (-1, 1):
        for k, (x0, y0, r0) in enumerate(((3.0, -3.0, 2.3), (4.9, 0.6, 1.5), (2.1, 2.7, 1.6))):
            ts = np.linspace(0, 4.6, 26)
            curl = [(s * (x0 + (r0 * (1 - t / 5.6)) * np.cos(t + k)), cy + y0 + (r0 * (1 - t / 5.6)) * np.sin(t + k)) for t in ts]
            relief.raised(c.path(curl) - 0.24, 0.3, 0.26)
        relief.raised(c.path([(0, cy + b * 0.72), (s * 0.9, cy + 4.0), (s * 2.0, cy + 1.0), (s * 0.7, cy - 2.0), (s * 0.5, cy - 4.0)]) - 0.24, 0.3, 0.26)
    relief.raised(c.disc(0, cy - 4.6, 0.55), 0.4, 0.5).eye().paint("copper", seed=43)


def book_locket(c, w, h):
    a, b = w / 2 - 0.6, (h - 2.6) / 2
    cy = h - b
    relief = Relief(c)
    # The back cover, the leaves' edges to the right and below falling away from it, the front cover, the spine.
    relief.bevelled(c.box(0.05, cy, a + 0.2, b, 0.7), 0.8, 0.3)
    pages = c.box(0.1, cy - 0.1, a - 0.05, b - 0.55, 0.25)
    relief.plate(pages, 2.7, 0.3)
    leaves = np.where(c.x > a - 1.4, np.sin(c.x * 21 + 0.5 * c.noise(1.2, 49, 6)), np.sin(c.y * 21))
    relief.z -= np.where(pages < -0.1, 0.10 + 0.10 * leaves, 0)
    cover = c.box(-1.0, cy - 0.25, a - 1.0, b - 0.25, 0.8)
    relief.bevelled(cover, 3.5, 0.5)
    relief.groove(c.box(-1.0, cy - 0.25, a - 0.9, b - 0.15, 0.8), 0.4, 0.14)
    left = -a + 0.95
    spine = c.box(left, cy - 0.05, 1.25, b - 0.05, 0.5)
    barrel = np.sqrt(np.clip(1 - ((c.x - left) / 1.35) ** 2, 0, 1))
    relief.add(spine, 2.0 + 2.1 * barrel)
    for y in (-0.80, -0.40, 0.0, 0.40, 0.80):
        band = c.box(left, cy + y * b, 1.3, 0.42, 0.3)
        relief.raised(band, 0.55, 0.42)
        for s in (-1, 1):
            relief.groove(np.where(spine < 0, c.y - cy - y * b - s * 0.62, 9), 0.22, 0.1)
    relief.groove(c.line(left + 1.75, cy - b, left + 1.75, cy + b), 0.75, 0.22)
    # The front: a frame of dots between two lines, a swelling panel, leaves in its corners, a boss in the middle.
    mid, wide, tall = 0.25, a - 2.65, b - 1.35
    frame = c.box(mid, cy - 0.2, wide, tall, 0.5)
    relief.groove(frame, 0.42, 0.14).groove(frame + 0.95, 0.42, 0.14)
    for i in range(-14, 15):
        for x, y in ((mid + i * 0.78, cy - 0.2 - tall + 0.48), (mid + i * 0.78, cy - 0.2 + tall - 0.48), (mid - wide + 0.48, cy - 0.2 + i * 0.78), (mid + wide - 0.48, cy - 0.2 + i * 0.78)):
            if abs(x - mid) <= wide - 0.4 and abs(y - cy + 0.2) <= tall - 0.4:
                relief.raised(c.disc(x, y, 0.24), 0.24, 0.24)
    panel = frame + 1.15
    relief.z += np.where(panel < 0, 1.0 * np.clip(1 - ((c.x - mid) / wide) ** 2, 0, 1) * np.clip(1 - ((c.y - cy + 0.2) / tall) ** 2, 0, 1) - 0.25, 0)
    relief.z -= np.where(panel < -0.1, 0.10 + 0.008 * c.noise(0.12, 48), 0)
    for x in (-1, 1):
        for y in (-1, 1):
            u, v = mid + x * (wide - 1.45), cy - 0.2 + y * (tall - 1.45)
            for turn, long in ((0.25, 3.1), (0.79, 2.1), (1.32, 3.1)):
                dx, dy = -x * np.sin(turn) * long, -y * np.cos(turn) * long
                du, dv = (c.x - u - dx / 2), (c.y - v - dy / 2)
                along, across = (du * dx + dv * dy) / long, (dv * dx - du * dy) / long
                leaf = (np.hypot(along / (long / 2), across / 0.46) - 1) * 0.46
                relief.raised(leaf, 0.6, 0.5).groove(np.where(leaf < 0, across, 9), 0.2, 0.08)
            relief.raised(c.disc(u, v, 0.42), 0.5, 0.42)
    q, t = c.polar(mid, cy - 0.2)
    rosette = q - 2.15 - 0.32 * np.cos(t * 8)
    relief.raised(rosette, 0.75, 0.5).groove(np.where(q > 1.1, np.where(rosette < -0.1, q * np.sin((t + np.pi / 8) % (np.pi / 4) - np.pi / 8), 9), 9), 0.16, 0.09)
    relief.raised(q - 0.95, 0.75, 0.95).groove(q - 1.1, 0.35, 0.13)
    # A strap from cover to cover over the leaves, with a stud.
    strap = c.box(a - 1.35, cy - 0.2, 1.95, 0.95, 0.3)
    relief.bevelled(strap, 3.9 - 0.30 * np.clip(c.x - a + 2, 0, 3) ** 1.5, 0.3).groove(strap + 0.55, 0.22, 0.1)
    relief.ball(a - 2.3, cy - 0.2, 0.62, depth=1.0, lift=3.5)
    relief.ball(w / 2 - 0.45, cy - 0.2, 0.45, 0.8, depth=1.6)
    relief.wire(c.line(0, 2.2, 0, cy - b + 0.6), 0.65).eye().paint("brass", grain=0.35, patina=0.85, seed=44)


def star_locket(c, w, h):
    r = w / 2 - 0.7
    cy = h - r
    q, a = c.polar(0, cy)
    d = q - r * (0.90 + 0.10 * np.cos(a * 8))
    relief = case(c, w, d, cy, cy - r)
    relief.groove(d + 1.3, 0.3, 0.15)
    for tips, size, waist, turn in ((8, 0.70, 0.40, 0.0),):
        shape = c.shape(star(0, cy, r * size, r * size, tips, waist))
        fold = np.abs((a + np.pi / tips) % (TURN / tips) - np.pi / tips)
        relief.z += np.where(shape < 0, 0.3 + np.clip(-shape, 0, 9) * 0.55, 0)
        relief.groove(np.where(shape < 0, q * np.sin(fold), 9), 0.1, 0.09)
    for t in (np.arange(8) + 0.5) * TURN / 8:
        relief.raised(c.disc(r * 0.62 * np.sin(t), cy - r * 0.62 * np.cos(t), 0.55), 0.45, 0.5)
    relief.raised(c.disc(0, cy, 1.2), 0.6, 1.2).eye().paint("gold", rough=0.16, seed=45)


def sun_locket(c, w, h):
    r = w / 2 - 0.7
    cy = h - r
    q, a = c.polar(0, cy)
    relief = case(c, w, c.disc(0, cy, r), cy, cy - r)
    relief.z += np.where(q < r * 0.86, 0.42 * np.sqrt(np.abs(np.cos(a * 9))) * step(r * 0.84 - q, 0, 0.5) * step(q, r * 0.3, r * 0.36), 0)
    relief.groove(q - r * 0.87, 0.3, 0.15).groove(q - r * 0.33, 0.25, 0.15)
    for i in range(44):
        t = i * TURN / 44
        relief.raised(c.disc(r * 0.93 * np.sin(t), cy - r * 0.93 * np.cos(t), 0.30), 0.25, 0.3)
    relief.raised(c.disc(0, cy, r * 0.29), 1.0, r * 0.29).eye().paint("silver", seed=46)


RECIPES = {
    "locket-round": round_locket, "locket-oval": vine_locket, "locket-heart": heart_locket, "locket-book": book_locket,
    "locket-star": star_locket, "locket-sun": sun_locket,
}
