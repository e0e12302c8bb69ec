"""Cut stones and what holds them."""
import numpy as np

from mesh import together
from relief import Relief
from solids import ball, cut_stone, lathe, loop, tube

TURN = 2 * np.pi


def bell_cap(c, low, r, finish, seed):
    """A bell over the top of a stone, with a ring to hang it by."""
    t = np.linspace(0, 1, 24)
    dome = [(0.75 + (r - 0.75) * np.sqrt(1 - (1 - a) ** 2.2), 2.5 + (low - 2.9) * a) for a in t]
    edge = [(r + 0.22 * np.sin(a), low - 0.4 + 0.28 * (1 - np.cos(a))) for a in np.linspace(0.3, np.pi, 10)]
    metal = {"kind": "metal", "finish": finish, "rough": 0.2, "patina": 0.9, "grain": 0.6, "seed": seed}
    c.part(lathe([(0, 2.5), *dome, *edge, (r - 0.2, low)]), **metal)
    # A pale lining: the stone shows the inside of its cap, which no window lights.
    lining = lathe([(0.0, 2.9), *((p * 0.94, y + 0.12) for p, y in dome)]).valued(tint=(0.62, 0.60, 0.56))
    c.part(lining, kind="lamp", strength=0.8)
    c.part(loop(0, 1.5, 1.08, 0.42), **metal)


# Half and a little more of what is seen through a stone is what hangs behind it; the rest is its own play of light.
LETS_THROUGH = 0.6


def stone(c, mesh, colour, dense, ior=1.6):
    c.lets_through = LETS_THROUGH
    c.part(mesh.outward(), kind="glass", colour=colour, dense=dense, ior=ior)


def point(c, w, h):
    """A six-sided prism turned a little about its axis, with a six-sided point whose faces differ in size, as quartz grows."""
    r = w / 2 * 0.897
    faces = [(0, -1, 0, -4.6)]
    for k, (wide, steep, high) in enumerate(((1.0, 0.50, 0.0), (0.92, 0.56, 0.5), (1.0, 0.46, 0.25), (0.94, 0.58, 0.0), (1.0, 0.50, 0.5), (0.93, 0.54, 0.1))):
        t = k * TURN / 6 + 0.30
        faces.append((np.cos(t), 0, np.sin(t), r * wide))
        faces.append((np.cos(t), steep, np.sin(t), steep * (h + high)))
        # Narrower where it goes into the cap.
        faces.append((np.cos(t), -0.6, np.sin(t), r * wide - 0.6 * 8.8))
    c.lets_through = LETS_THROUGH
    body = cut_stone(faces, (0, h / 2, 0)).outward()
    c.part(body, kind="glass", colour=(0.93, 0.96, 1.0), dense=0.02, ior=1.54, milk=0.14, cap=h * 0.62)
    # Its edges are worn, and catch the light.
    edges = [tube(np.array(pair), 0.055, 6) for pair in ridges(body)]
    c.part(together([edge.valued(tint=(0.96, 0.97, 1.0)) for edge in edges]), kind="body", gloss=1.0, rough=0.2, glow=0.1)
    # Veils: specks along old cracks that have grown shut.
    rs = np.random.RandomState(71)
    specks = []
    for y, n, lean in ((13.5, 90, -0.9), (19.5, 60, 0.6)):
        for _ in range(n):
            u, v = rs.normal(0, 1.3), rs.normal(0, 0.7)
            size = rs.uniform(0.03, 0.11)
            specks.append(ball(u, y + v + lean * u, 0.5 * u + 1.4 * v + rs.normal(0, 0.1), size, size * 0.7, size * 0.3, 12).valued(tint=(0.97, 0.97, 0.97)))
    c.part(together(specks), kind="body", gloss=0.5, rough=0.3, glow=0.3)
    bell_cap(c, 7.6, w * 0.43, "silver", 73)


def ridges(mesh):
    """The edges between faces of a cut stone that do not lie in one plane, as pairs of points."""
    points = np.round(mesh.points[mesh.faces].astype(float), 3)
    across = np.cross(points[:, 1] - points[:, 0], points[:, 2] - points[:, 0])
    across /= np.maximum(np.linalg.norm(across, axis=1, keepdims=True), 1e-9)
    seen = {}
    for triangle, direction in zip(points, across):
        for i in range(3):
            ends = sorted((tuple(triangle[i]), tuple(triangle[(i + 1) % 3])))
            seen.setdefault(tuple(ends), []).append(direction)
    return [ends for ends, sides in seen.items() if len(sides) == 2 and sides[0] @ sides[1] < 0.995 and ends[0] != ends[1]]


def pear(c, w, h):
    # A faceted drop: planes touching a ball below and the cone from it to the tip, thinner from front to back.
    a, tip = w / 2, 3.6
    cy = h - a
    slim = 0.62
    lean = np.arcsin(a / (cy - tip))
    faces = [(0, -1, 0, -4.8)]
    for tilt, n, shift in [(-lean, 8, 0.0), (-lean + 0.20, 8, 0.5), (0.10, 8, 0.0), (0.45, 8, 0.5), (0.85, 8, 0.0), (1.2, 8, 0.5)]:
        for k in range(n):
            t = (k + shift + 0.5) * TURN / n
            nx, ny, nz = np.cos(t) * np.cos(tilt), np.sin(tilt), np.sin(t) * np.cos(tilt)
            faces.append((nx, ny, nz / slim, (a * 0.985) + ny * cy))
    stone(c, cut_stone(faces, (0, cy, 0)), (0.34, 0.70, 0.96), 0.11)
    bell_cap(c, 5.8, 1.9, "silver", 74)


def brilliant(cy, a, b, n, table, crown, depth):
    """Faces of an oval stone seen from the front: table, crown in two rows, girdle, pavilion in two rows."""
    faces = [(0, 0, 1, crown)]
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


def violet(c, w, h):
    a, b = w / 2, (h - 3.4) / 2
    cy = h - b
    stone(c, cut_stone(brilliant(cy, a - 0.45, b - 0.45, 8, 0.56, 1.7, 5.2), (0, cy, 0)), (0.44, 0.12, 0.84), 0.19)
    # A thin gallery with claws round the stone.
    relief = Relief(c)
    relief.wire(np.abs(c.oval(0, cy, a - 0.42, b - 0.42)), 0.42, 0.35)
    for t in (0.7, -0.7, 2.44, -2.44):
        x, y = (a - 0.5) * np.sin(t), cy - (b - 0.5) * np.cos(t)
        relief.wire(c.line(x, y, x * 0.86, cy + (y - cy) * 0.86), 0.50, 0.9)
        relief.ball(x * 0.86, cy + (y - cy) * 0.86, 0.58, lift=1.0)
    relief.wire(c.line(0, 2.2, 0, cy - b + 0.6), 0.62).eye().paint("brass", seed=75)


def square(c, w, h):
    a = w / 2
    cy = h - a
    s = a - 0.35
    faces = [(0, 0, 1, 1.6)]
    for x, y in ((1, 0), (-1, 0), (0, 1), (0, -1)):
        faces.append((x, y, 0, s + y * cy))
        faces.append((x, y, 0.95, s + 0.55 + y * cy))
        for slope, out in ((1.25, 0.15), (0.92, -0.55), (0.70, -1.15)):
            faces.append((x, y, -slope, s + out + 0.3 + y * cy))
    for x in (1, -1):
        for y in (1, -1):
            faces.append((x, y, 0, 2 * s - 1.1 + y * cy))
            faces.append((x, y, 0.9, 2 * s - 1.0 + y * cy))
            faces.append((x, y, -1.15, 2 * s - 1.4 + y * cy))
    stone(c, cut_stone(faces, (0, cy, 0)), (0.06, 0.72, 0.34), 0.22)
    relief = Relief(c)
    relief.wire(np.abs(c.box(0, cy, s, s, 0.8)), 0.40, 0.35)
    for x in (1, -1):
        for y in (1, -1):
            relief.wire(c.line(x * s * 0.98, cy + y * s * 0.98, x * s * 0.74, cy + y * s * 0.74), 0.5, 0.8)
            relief.ball(x * s * 0.74, cy + y * s * 0.74, 0.55, lift=0.95)
    relief.wire(c.line(0, 2.2, 0, cy - s), 0.62).eye().paint("gold", rough=0.16, seed=76)


RECIPES = {"crystal-point": point, "crystal-drop": pear, "crystal-violet": violet, "crystal-cube": square}
