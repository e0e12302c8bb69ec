"""Cast and stamped charms."""
import numpy as np

from canvas import both, cut, heart, join, star, step
from relief import Relief

TURN = 2 * np.pi


def moon(c, w, h):
    r = w / 2
    cy = h - r
    d = cut(c.disc(0, cy, r), c.disc(r * 0.46, cy - r * 0.10, r * 0.80))
    relief = Relief(c).puff(d, 1.9)
    # Stars punched in, and a row of dots along the outer edge.
    for x, y, size in ((-0.62, -0.30, 1.25), (-0.70, 0.16, 0.75), (-0.46, 0.50, 1.15), (-0.10, 0.74, 0.8), (-0.30, -0.66, 0.7), (0.28, 0.80, 0.5)):
        relief.sink(c.shape(star(x * r, cy + y * r, size, size, 5, 0.42)), 0.35, 0.2)
    for t in np.linspace(-0.35, -2.75, 20):
        relief.sink(c.disc(0.93 * r * np.sin(t), cy - 0.93 * r * np.cos(t), 0.17), 0.18, 0.15)
    relief.wire(c.line(0, 2.4, -r * 0.12, 3.6), 0.6).eye().paint("silver", seed=3)


def five_star(c, w, h):
    r = w / 2 / np.sin(TURN / 5)
    cy = 2.2 + r
    d = c.shape(star(0, cy, r, r, 5, 0.44))
    # Two facets to each arm: the height falls from the arm's ridge to its edges.
    z = np.clip(-d, 0, None) * 0.95
    relief = Relief(c).add(d, 0.35 + z)
    relief.wire(c.line(0, 2.2, 0, 3.4), 0.55).eye().paint("gold", rough=0.16, seed=4)


def sun(c, w, h):
    r = w / 2
    cy = h - r
    relief = Relief(c)
    for turn, long in ((0.5, 0.88), (0.0, 1.0)):
        for t in (np.arange(8) + turn) * TURN / 8:
            wide = 0.15 if turn else 0.18
            side = lambda q, b: (q * np.sin(t + b), cy - q * np.cos(t + b))
            bend = 0.10 if turn else 0.0
            ray = c.shape([side(r * 0.5, -wide * 1.5), side(r * 0.72, -wide * 0.75 + bend), side(r * long, 0), side(r * 0.72, wide * 0.75 + bend), side(r * 0.5, wide * 1.5)])
            relief.add(ray, 0.3 + np.clip(-ray, 0, 1.2) * 0.9)
    relief.plate(c.disc(0, cy, r * 0.60), 1.1, 0.5)
    relief.ball(0, cy, r * 0.5, depth=1.9)
    for s in (-1, 1):
        # Closed eyes under round brows.
        for up, size, deep in ((0.19, 0.12, 0.4), (0.09, 0.20, 0.22)):
            bow = np.linspace(-0.95, 0.95, 12)
            turn = 1 if up > 0.1 else -1
            relief.groove(c.path([(r * (s * 0.20 + size * np.sin(b)), cy + r * (turn * size * np.cos(b) - up - 0.03)) for b in bow]), deep, 0.16)
        relief.raised(c.disc(s * r * 0.27, cy + r * 0.09, 0.75), 0.25, 0.7)
    relief.raised(c.line(0, cy - r * 0.12, 0, cy + r * 0.08, 0.34), 0.45, 0.34)
    smile = both(np.abs(c.disc(0, cy - r * 0.02, r * 0.27)), (cy + r * 0.10) - c.y)
    relief.groove(np.maximum(smile, 0), 0.4, 0.17).groove(c.disc(0, cy, r * 0.5), 0.5, 0.16)
    relief.eye().paint("brass", seed=5)


def lens(c, top, low, half):
    """A pointed oval between two heights."""
    mid, tall = (top + low) / 2, (low - top) / 2
    r = (half * half + tall * tall) / (2 * half)
    return both(c.disc(r - half, mid, r), c.disc(half - r, mid, r))


def leaf(c, w, h):
    d = lens(c, 3.0, h, w / 2) + 0.14 * np.abs(np.sin(c.y * 2.4))
    relief = Relief(c).plate(d, 0.9, 0.5)
    relief.z += np.where(d < 0, 0.6 * (1 - np.abs(c.x) / (w / 2)) * np.cos(c.x * 0.22), 0)
    for i, y in enumerate(np.arange(6.5, h + 4, 2.15)):
        for s in (-1, 1):
            relief.groove(c.path([(0, y), (s * w * 0.25, y - 2.1), (s * w * 0.52, y - 5.0)]), 0.34, 0.17)
    relief.z -= np.where(d < 0, 0.10 * (np.sin((c.y + np.abs(c.x) * 1.1) * 2.92) * 0.5 + 0.5), 0)
    relief.wire(c.path([(0, 2.6), (0.15, h * 0.4), (-0.1, h * 0.8), (0, h - 1)]), 0.42, 1.05).eye().paint("copper", seed=6)


def feather(c, w, h):
    bend = 0.55 * np.sin(c.y / h * np.pi)
    x = c.x - bend
    t = np.clip((c.y - 7) / (h - 7), 0, 1)
    half = (w / 2 - 0.5) * np.clip(np.sin(np.pi * t**0.62), 0, 1) ** 0.62
    # Barbs part here and there.
    half = half - 0.9 * np.exp(-(((c.y - h * 0.46 - np.abs(x) * -0.9) / 0.28) ** 2)) * (x > 0) - 0.8 * np.exp(-(((c.y - h * 0.70 + np.abs(x) * 0.9) / 0.25) ** 2)) * (x < 0)
    d = np.maximum(np.abs(x) - half, np.maximum(7 - c.y, c.y - h))
    relief = Relief(c).plate(d * 0.9, 0.7, 0.4)
    relief.z += np.where(d < 0, 0.55 * np.cos(np.clip(x / (w / 2), -1, 1) * 1.5), 0)
    barb = c.y + np.abs(x) * 1.15
    relief.z += np.where(d < 0, 0.13 * np.sin(barb * 8.6) + 0.10 * np.sin(barb * 2.1 + 1), 0)
    quill = [(b, y) for y in np.linspace(2.6, h - 1.6, 12) for b in [0.55 * np.sin(y / h * np.pi)]]
    relief.wire(c.path(quill), 0.40, 0.85).eye().paint("silver", seed=7)


def fish(c, w, h):
    body = c.curve(lambda t: (w * 0.47 * np.sin(t) * (1 - 0.22 * np.cos(t - np.pi)), 2.4 + (h * 0.72 - 2.4) / 2 - (h * 0.72 - 2.4) / 2 * np.cos(t)))
    tail = c.shape([(-0.9, h * 0.66), (-w * 0.34, h * 0.85), (-w / 2, h), (-w * 0.14, h * 0.955), (0, h * 0.93), (w * 0.14, h * 0.955), (w / 2, h), (w * 0.34, h * 0.85), (0.9, h * 0.66)])
    fins = join(c.oval(-w * 0.40, h * 0.40, 1.5, 3.3), c.oval(w * 0.40, h * 0.40, 1.5, 3.3))
    relief = Relief(c).plate(tail, 0.8, 0.5).plate(fins, 0.7, 0.5)
    relief.z -= np.where((relief.d < 0), 0.12 * (1 + np.sin(np.where(c.y > h * 0.7, c.x * 7.5, c.y * 7))), 0)
    relief.puff(body, 2.1)
    scaly = step(c.y, h * 0.27, h * 0.29) * step(h * 0.70 - c.y, 0, 1.0)
    for row in range(14):
        y = h * 0.255 + row * 0.98
        u = (c.x + (row % 2) * 0.85) % 1.7 - 0.85
        arc = np.hypot(u, (c.y - y) * 1.0) - 0.92
        relief.z -= 0.22 * np.exp(-((arc / 0.15) ** 2)) * (c.y > y) * scaly * (body < -0.2)
    gill = both(np.abs(c.disc(0, h * 0.12, h * 0.155)), h * 0.12 - c.y)
    relief.groove(np.maximum(gill, 0), 0.35, 0.2)
    for s in (-1, 1):
        relief.raised(c.disc(s * w * 0.2, h * 0.165, 0.8), 0.3, 0.5).groove(c.disc(s * w * 0.2, h * 0.165, 0.8), 0.3, 0.12).sink(c.disc(s * w * 0.2, h * 0.165, 0.32), 0.35, 0.2)
    relief.eye().paint("silver", seed=8)


def anchor(c, w, h):
    r = w / 2 - 0.9
    cy = h - 1.0 - r
    arms = both(np.abs(c.disc(0, cy, r)), cy + r * 0.28 - c.y)
    relief = Relief(c)
    relief.wire(c.line(0, 6.2, 0, h - 1.2), 0.95).wire(np.maximum(arms, 0), 0.95)
    relief.wire(c.line(-w * 0.31, 8.3, w * 0.31, 8.3), 0.8)
    for s in (-1, 1):
        relief.ball(s * w * 0.31, 8.3, 1.15)
        x, y = s * r, cy + r * 0.26
        relief.plate(c.shape([(x + s * 0.9, y - 2.9), (x + s * 0.85, y + 1.4), (x - s * 2.9, y + 0.9)]) - 0.15, 1.2, 0.6)
    relief.wire(np.abs(c.disc(0, 4.4, 1.75)), 0.62, 0.2)
    rope = c.path([(1.75 * np.sin((y - 10) * 1.05), y) for y in np.linspace(10, 22, 40)])
    relief.wire(rope, 0.42, 0.75)
    relief.z += np.where(rope < 0.42, 0.10 * np.sin((c.x + c.y) * 9), 0)
    relief.ball(0, h - 1.15, 1.15).eye().paint("gunmetal", seed=9)


def puffed_heart(c, w, h):
    cy = (h + 2.6) / 2
    d = c.curve(heart(0, cy, w / 2, (h - 2.6) / 2))
    relief = Relief(c).puff(d, 3.4)
    relief.groove(c.curve(heart(0, cy - 0.2, w * 0.31, (h - 2.6) * 0.30)), 0.16, 0.16)
    relief.wire(c.line(0, 2.3, 0, 5.8), 0.7).eye().paint("copper", rough=0.16, seed=10)


def acorn(c, w, h):
    relief = Relief(c)
    relief.turned(h * 0.36, h, lambda t: w * 0.41 * np.sqrt(np.clip(1 - t**2.6, 0, 1)) + 0.28 * (t > 0.94) * (1 - t))
    relief.groove(c.x - 1.3, 0.05, 0.10).groove(c.x + 2.0, 0.05, 0.10).groove(c.x + 0.2, 0.05, 0.08)
    relief.ball(0, h - 0.5, 0.5, 0.5)
    cap = both(c.oval(0, h * 0.43, w / 2, h * 0.27), c.y - h * 0.475)
    q = (c.x / (w / 2)) ** 2
    relief.add(cap - 0.1, 5.6 * np.sqrt(np.clip(1 - q - np.clip((h * 0.43 - c.y) / (h * 0.27), 0, 1) ** 2, 0.04, 1)))
    u, v = np.arcsin(np.clip(c.x / (w / 2), -1, 1)) * 4.2, c.y * 1.15
    scales = np.abs(np.sin(u + v) * np.sin(u - v)) ** 0.6
    relief.z += np.where(cap < 0.05, 0.42 * scales, 0)
    relief.wire(c.path([(0, 2.5), (0.15, 4.6)]), 0.75).eye().paint("brass", seed=11)


def shell(c, w, h):
    hinge, wide, ribs = 4.4, 1.02, 11
    r = h - hinge
    q, a = c.polar(0, hinge)
    a = np.abs(np.pi - np.abs(a)) * np.sign(c.x)
    turn = np.clip(a / wide, -1, 1) * (ribs - 1) / 2
    rib = np.cos(turn * 2 * np.pi)
    between = (0.5 - np.abs(turn - np.round(turn))) * 2 * wide / (ribs - 1) * q
    # A fan run into an oval, its rim with a scallop to each rib.
    mid, tall, half = hinge + 0.55 * r, 0.45 * r, w / 2 - 0.2
    fan = c.shape([(0, hinge - 1), (half * 0.92, mid - tall * 0.36), (-half * 0.92, mid - tall * 0.36)])
    d = c.blur(join(c.oval(0, mid, half, tall), fan), 0.3) - 0.36 * rib * step(q, 8, 13)
    ears = c.shape([(-4.4, 3.0), (4.4, 3.0), (3.4, 7.2), (-3.4, 7.2)]) - 0.3
    relief = Relief(c).plate(ears, 0.9, 0.5)
    for s in (-1, 1):
        for x in (2.0, 2.8, 3.6):
            relief.groove(c.line(s * x, 3.4, s * (x - 0.5), 6.5), 0.25, 0.15)
    relief.puff(d, 3.0)
    lines = np.exp(-(((np.mod(q, 2.3) - 1.1) / 0.2) ** 2)) * step(q, 5, 9)
    relief.z += np.where(d < 0, (0.22 * rib - 0.55 * np.exp(-((between / 0.32) ** 2))) * step(q, 2, 7) - 0.09 * lines, 0)
    relief.eye().paint("silver", seed=12)


def flower(c, w, h):
    r = (h - 2.2) / 2
    cy = h - r
    q, a = c.polar(0, cy)
    petals = join(*[c.oval(r * 0.55 * np.sin(t), cy - r * 0.55 * np.cos(t), r * 0.45, r * 0.45) for t in np.arange(6) * TURN / 6])
    relief = Relief(c)
    for t in np.arange(6) * TURN / 6:
        x, y = r * 0.56 * np.sin(t), cy - r * 0.56 * np.cos(t)
        petal = c.disc(x, y, r * 0.44)
        relief.plate(petal, 1.1, 0.8)
        relief.sink(c.disc(x * 1.05, cy + (y - cy) * 1.05, r * 0.30), 0.55, 1.9)
    fold = np.abs((a + TURN / 12) % (TURN / 6) - TURN / 12)
    relief.groove(q * np.sin(fold), 0.28, 0.16)
    relief.z -= np.where(petals < 0, 0.10 * (0.5 + 0.5 * np.cos(fold * 34)) * step(q, r * 0.32, r * 0.5) * step(r * 0.85 - q, 0, 1.5), 0)
    relief.ball(0, cy, r * 0.25, depth=1.7)
    for i in range(24):
        g = np.sqrt((i + 0.5) / 24) * r * 0.22
        relief.raised(c.disc(g * np.sin(i * 2.4), cy - g * np.cos(i * 2.4), 0.3), 0.28, 0.3)
    relief.eye().paint("gold", rough=0.16, seed=13)


def bell(c, w, h):
    top, low = 3.4, h - 2.2
    relief = Relief(c)
    relief.ball(0, h - 1.6, 1.6)
    relief.turned(top, low, lambda t: (w / 2) * (0.40 + 0.16 * np.sqrt(t) + 0.44 * t**4.2) * np.sqrt(np.clip(t * 9, 0, 1)))
    for y in (0.30, 0.36, 0.74):
        relief.groove(c.y - (top + (low - top) * y), 0.28, 0.16)
    for x in np.linspace(-1.2, 1.2, 7):
        px = w * 0.235 * np.sin(x)
        relief.raised(c.oval(px, top + (low - top) * 0.56, 0.66 * np.cos(x), 0.66), 0.4, 0.5)
    relief.turned(low - 0.9, low + 0.1, lambda t: w / 2 - 0.15 * (2 * t - 1) ** 2)
    relief.wire(np.abs(c.disc(0, 3.1, 0.9)), 0.5).eye().paint("brass", seed=14)


def mushroom(c, w, h):
    relief = Relief(c)
    relief.turned(h * 0.5, h, lambda t: w * (0.15 + 0.06 * t**2) * np.sqrt(np.clip((1 - t) * 12, 0, 1)))
    relief.z += np.where(c.y > h * 0.6, 0.06 * np.sin(c.x * 9 + 0.4 * np.sin(c.y)), 0) * (relief.d < 0)
    relief.turned(h * 0.60, h * 0.66, lambda t: w * (0.20 + 0.06 * t), 0.8)
    cap = both(c.oval(0, h * 0.50, w / 2 - 0.3, h * 0.37), c.y - h * 0.535) - 0.3
    q = (c.x / (w / 2)) ** 2 + (np.clip(h * 0.50 - c.y, 0, 99) / (h * 0.37 + 0.3)) ** 2
    relief.add(cap, 5.2 * np.sqrt(np.clip(1 - q, 0.0, 1)) + 0.6 * np.sqrt(np.clip(-cap / 0.6, 0, 1)))
    relief.groove(c.y - h * 0.54, 0.5, 0.22)
    for x, y, r in ((-0.27, 0.34, 1.15), (0.06, 0.26, 0.95), (0.27, 0.38, 1.25), (-0.02, 0.435, 1.1), (-0.40, 0.47, 0.75), (0.42, 0.48, 0.6), (0.17, 0.19, 0.5)):
        relief.raised(c.oval(x * w, y * h, r, r * 0.85), 0.55, 0.6)
    relief.eye().paint("copper", seed=15)


def padlock(c, w, h):
    top = h * 0.40
    cy, half = (top + h) / 2 + 0.2, (h - top) / 2 - 0.2
    relief = Relief(c)
    arch = both(np.abs(c.oval(0, top, w * 0.29, h * 0.27)), c.y - top)
    relief.wire(np.maximum(arch, 0), 1.2)
    relief.wire(join(c.line(-w * 0.29, top, -w * 0.29, top + 2), c.line(w * 0.29, top, w * 0.29, top + 2)), 1.2)
    for s in (-1, 1):
        # Turned collars where the shackle goes in.
        for y, wide, tall in ((top - 1.3, 1.6, 0.38), (top - 0.55, 1.95, 0.5)):
            x = (c.x - s * w * 0.29) / wide
            relief.add(c.box(s * w * 0.29, y, wide, tall, 0.3), 0.3 + wide * np.sqrt(np.clip(1 - x * x, 0, 1)) - 0.4 * ((c.y - y) / tall) ** 2)
    # A case with filed edges, a frame, and a front plate that swells towards the middle.
    body = c.box(0, cy, w / 2, half, 2.0)
    relief.bevelled(body, 3.0, 0.95)
    field = body + 1.75
    swell = 1.5 * np.clip(1 - (c.x / (w / 2)) ** 2, 0, 1) * np.clip(1 - ((c.y - cy) / half) ** 2, 0, 1)
    relief.z += np.where(field < 0, swell - 0.35, 0)
    relief.groove(field, 0.55, 0.16)
    rope = np.sin((c.x * np.sign(c.y - cy) - c.y * np.sign(c.x)) * 6.5)
    relief.z += np.where(np.abs(body + 1.32) < 0.3, 0.11 * rope + 0.1, 0)
    for x in (-1, 1):
        for y in (-1, 1):
            # Scrolls cut into the corners of the plate, a slotted rivet in each.
            u, v = x * (w / 2 - 2.75), cy + y * (half - 2.75)
            curl = [(u - x * (1.2 - t * 0.20) * np.cos(t), v - y * (1.2 - t * 0.20) * np.sin(t) + y * 0.2) for t in np.linspace(0.2, 4.6, 24)]
            relief.groove(np.where(field < -0.15, c.path([*curl[::-1], (u - x * 2.0, v + y * 0.5)]), 9), 0.36, 0.15)
            relief.raised(c.disc(u, v, 0.55), 0.5, 0.5)
    # The escutcheon: a scalloped plate with a raised lip round the keyhole.
    q, a = c.polar(0, cy)
    shield = np.hypot(c.x / 2.7, (c.y - cy) / 3.7)
    plate = (shield - 1 - 0.05 * np.cos(a * 12)) * 2.7
    relief.raised(plate, 0.7, 0.45).groove(plate + 0.75, 0.3, 0.12)
    hole = join(c.disc(0, cy - 0.9, 0.85), c.shape([(-0.3, cy - 0.4), (0.3, cy - 0.4), (0.75, cy + 1.9), (-0.75, cy + 1.9)]))
    relief.raised(hole - 0.42, 0.35, 0.3).sink(hole, 3.6, 0.2)
    relief.eye().paint("gunmetal", grain=0.35, rough=0.2, seed=16)


def snowflake(c, w, h):
    r = (h - 2.2) / 2
    cy = h - r
    q, a = c.polar(0, cy)
    fold = np.abs((a + TURN / 12) % (TURN / 6) - TURN / 12)
    x, y = q * np.sin(fold), q * np.cos(fold)

    def spar(y0, y1, x1):
        t = np.clip(((x * x1) + (y - y0) * (y1 - y0)) / (x1 * x1 + (y1 - y0) ** 2), 0, 1)
        return np.hypot(x - t * x1, y - y0 - t * (y1 - y0))

    relief = Relief(c)
    relief.wire(spar(0, r - 0.55, 0.001), 0.62).wire(spar(r * 0.44, r * 0.70, r * 0.22), 0.5).wire(spar(r * 0.68, r * 0.88, r * 0.15), 0.42)
    relief.wire(np.abs(y * np.cos(TURN / 12 - 0) + x * 0.5 - r * 0.30), 0.42)
    relief.ball(0, cy, 1.5, depth=1.5)
    relief.add(np.hypot(x, y - r + 0.75) - 0.75, 0.75 * np.sqrt(np.clip(1 - (np.hypot(x, y - r + 0.75) / 0.75) ** 2, 0, 1)))
    relief.eye().paint("silver", rough=0.16, seed=17)


RECIPES = {
    "charm-moon": moon, "charm-star": five_star, "charm-sun": sun, "charm-leaf": leaf, "charm-feather": feather,
    "charm-fish": fish, "charm-anchor": anchor, "charm-heart": puffed_heart, "charm-acorn": acorn, "charm-shell": shell,
    "charm-flower": flower, "charm-bell": bell, "charm-mushroom": mushroom, "charm-padlock": padlock,
    "charm-snowflake": snowflake,
}
