"""A canvas measured in millimetres, and the shapes drawn on it.

x runs to the right from the middle, y downwards from the top of the drop. A shape is a field of signed distances in mm,
negative inside.
"""
import numpy as np
from scipy import ndimage as nd


class Canvas:
    """A grid of k points to the millimetre, with a margin wide enough that nothing is cut off, and the parts made on it."""

    MARGIN = 1.5

    def __init__(self, w, h, k):
        self.w, self.h, self.k = w, h, k
        self.cols, self.rows = (int(np.ceil((side + 2 * self.MARGIN) * k)) for side in (w, h))
        ys, xs = np.mgrid[0 : self.rows, 0 : self.cols].astype(np.float32)
        self.x = (xs + 0.5) / k - (w / 2 + self.MARGIN)
        self.y = (ys + 0.5) / k - self.MARGIN
        self.parts = []
        self.clear = False  # whether the ground is seen through its glass
        self.lets_through = 0.0  # of the room's light that comes through a stone, the share that gives way to what hangs behind

    def part(self, mesh, **material):
        """Adds a mesh made of a material (see materials.py)."""
        self.parts.append((mesh, material))

    def blur(self, field, mm):
        return nd.gaussian_filter(field, mm * self.k, truncate=3)

    def noise(self, mm, seed, stretch=1.0):
        """Smooth noise of spread 1; `stretch` draws it out downwards."""
        raw = np.random.RandomState(seed).randn(self.rows, self.cols).astype(np.float32)
        raw = nd.gaussian_filter(raw, (mm * self.k * stretch, mm * self.k), truncate=3)
        return raw / (raw.std() + 1e-9)

    def polar(self, x, y):
        """Distance from a point and the angle about it, clockwise from straight up."""
        return np.hypot(self.x - x, self.y - y), np.arctan2(self.x - x, y - self.y)

    def disc(self, x, y, r):
        return np.hypot(self.x - x, self.y - y) - r

    def oval(self, x, y, a, b):
        u, v = (self.x - x) / a, (self.y - y) / b
        q, slope = np.hypot(u, v), np.hypot(u / a, v / b)
        return q * (q - 1) / np.maximum(slope, 1e-4)

    def box(self, x, y, a, b, r=0.3, turn=0.0):
        """Half sides a and b, corners rounded by r."""
        c, s = np.cos(turn), np.sin(turn)
        u, v = c * (self.x - x) + s * (self.y - y), -s * (self.x - x) + c * (self.y - y)
        qx, qy = np.abs(u) - a + r, np.abs(v) - b + r
        return np.hypot(np.maximum(qx, 0), np.maximum(qy, 0)) + np.minimum(np.maximum(qx, qy), 0) - r

    def line(self, x0, y0, x1, y1, r=0.0):
        dx, dy = x1 - x0, y1 - y0
        t = np.clip(((self.x - x0) * dx + (self.y - y0) * dy) / (dx * dx + dy * dy + 1e-9), 0, 1)
        return np.hypot(self.x - x0 - t * dx, self.y - y0 - t * dy) - r

    def path(self, points, r=0.0):
        """A bent line through points."""
        return join(*[self.line(*p, *q, r) for p, q in zip(points, points[1:])])

    def shape(self, points):
        """A filled outline: how far to its nearest side, inside by the even-odd rule."""
        near = np.full(self.x.shape, 1e9, np.float32)
        inside = np.zeros(self.x.shape, bool)
        for (x0, y0), (x1, y1) in zip(points, [*points[1:], points[0]]):
            dx, dy = x1 - x0, y1 - y0
            ux, uy = self.x - np.float32(x0), self.y - np.float32(y0)
            t = np.clip((ux * np.float32(dx) + uy * np.float32(dy)) / np.float32(dx * dx + dy * dy + 1e-12), 0, 1)
            near = np.minimum(near, (ux - t * np.float32(dx)) ** 2 + (uy - t * np.float32(dy)) ** 2)
            if y0 != y1:
                inside ^= ((self.y >= y0) != (self.y >= y1)) & (ux < uy * np.float32(dx / dy))
        return np.sqrt(near) * np.where(inside, -1, 1)

    def curve(self, f, n=240):
        """A filled closed curve, f(angle) -> (x, y)."""
        return self.shape([f(t) for t in np.linspace(0, 2 * np.pi, n, endpoint=False)])


def join(*shapes):
    return np.minimum.reduce(shapes)


def cut(shape, *holes):
    return np.maximum.reduce([shape, *[-hole for hole in holes]])


def both(*shapes):
    return np.maximum.reduce(shapes)


def step(field, low, high):
    t = np.clip((field - low) / (high - low), 0, 1)
    return t * t * (3 - 2 * t)


def heart(cx, cy, a, b):
    """A heart's outline for `Canvas.curve`, 2a wide and 2b high about its middle."""
    return lambda t: (
        cx + a * np.sin(t) ** 3,
        cy + b * (-(13 * np.cos(t) - 5 * np.cos(2 * t) - 2 * np.cos(3 * t) - np.cos(4 * t)) - 2.53) / 14.47,
    )


def star(cx, cy, a, b, tips, waist):
    """A star's corners for `Canvas.shape`."""
    turns = np.arange(2 * tips) * np.pi / tips
    return [(cx + a * (waist if i % 2 else 1) * np.sin(t), cy - b * (waist if i % 2 else 1) * np.cos(t)) for i, t in enumerate(turns)]
