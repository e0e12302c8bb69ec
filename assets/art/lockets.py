"""Lockets: two lids, a hinge on the left, a catch on the right, an engraved front."""
import numpy as np

from canvas import both, heart, star, step
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
    relief.z -= np.where(ground < 0, 0.22 + 0.05 * np.sign(np.sin(c.x * 9) * np.sin(c.y * 9)), 0)
    ys = np.linspace(cy - b + 3.4, cy + b - 3.0, 22)
    wave = lambda y: 2.1 * np.sin((y - cy) * 0.62)
    vine = c.path([(wave(y), y) for y in ys])
    relief.raised(vine - 0.35, 0.45, 0.35)
    for i, y in enumerate(np.arange(cy - b + 4.5, cy + b - 4, 2.5)):
        for s in (-1, 1):
            x0, t = wave(y), 0.8 * s
            x, yy = x0 + s * 1.75, y - 0.7
            u, v = (c.x - x) * np.cos(t) + (c.y - yy) * np.sin(t), -(c.x - x) * np.sin(t) + (c.y - yy) * np.cos(t)
            leaf = np.maximum((np.hypot(u / 0.85, v / 1.6) - 1) * 0.85, d + 2.4)
            relief.raised(leaf, 0.45, 0.6).groove(np.where(leaf < 0, u, 9), 0.2, 0.09)
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
    # Page edges to the right and below, then the cover with its raised spine.
    pages = c.box(0.25, cy, a, b - 0.5, 0.3)
    relief.plate(pages, 1.2, 0.15)
    relief.z -= np.where(pages < 0, 0.16 * (np.sin(c.x * 16) > 0), 0)
    cover = c.box(-0.5, cy, a - 0.45, b, 0.9)
    relief.plate(cover, 2.3, 0.5)
    spine = c.box(-a + 1.2, cy, 1.2, b, 0.6)
    relief.add(spine, 1.7 + 1.1 * np.sqrt(np.clip(1 - ((c.x + a - 1.2) / 1.3) ** 2, 0, 1)))
    for y in (-0.72, -0.36, 0.0, 0.36, 0.72):
        relief.raised(c.box(-a + 1.2, cy + y * b, 1.2, 0.45, 0.3), 0.4, 0.4)
    field = c.box(0.75, cy, a - 2.9, b - 1.6, 0.4)
    relief.groove(field, 0.35, 0.14).groove(field + 0.6, 0.2, 0.09)
    for x in (-1, 1):
        for y in (-1, 1):
            relief.raised(c.shape([(0.75 + x * (a - 3.2), cy + y * (b - 1.9)), (0.75 + x * (a - 5.4), cy + y * (b - 1.9)), (0.75 + x * (a - 3.2), cy + y * (b - 4.1))]), 0.35, 0.4)
    lozenge = np.abs(c.x - 0.75) / 2.6 + np.abs(c.y - cy) / 4.2 - 1
    relief.raised(lozenge * 2.2, 0.4, 0.4).groove(lozenge * 2.2 + 0.7, 0.25, 0.12)
    relief.raised(c.disc(0.75, cy, 0.8), 0.5, 0.8)
    relief.ball(w / 2 - 0.8, cy, 0.8, depth=2.4)
    relief.wire(c.line(0, 2.2, 0, cy - b + 0.6), 0.65).eye().paint("brass", seed=44)


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
