"""Solid opaque bodies as one height field, and the surfaces they are given."""
import numpy as np
from scipy import ndimage as nd
from scipy.sparse import diags
from scipy.sparse.linalg import spsolve

from canvas import step
from light import lambert, reflect, shadow, slopes

# Shade, body, shine of each finish: the same tones as the program's `Finish::tones`.
TONES = {
    "brass": ((74, 52, 22), (166, 126, 62), (240, 214, 150)),
    "silver": ((58, 58, 62), (150, 150, 152), (238, 238, 236)),
    "copper": ((92, 40, 22), (184, 104, 68), (250, 196, 160)),
    "gold": ((122, 84, 12), (214, 170, 60), (255, 240, 172)),
    "gunmetal": ((26, 28, 32), (82, 86, 94), (176, 182, 190)),
    # For pictures that the program tints.
    "grey": ((96, 96, 96), (206, 206, 206), (255, 255, 255)),
}


class Relief:
    """Heights in mm in front of the middle plane, and the outline."""

    def __init__(self, c):
        self.c = c
        self.z = np.zeros((c.rows, c.cols), np.float32)
        self.d = np.full((c.rows, c.cols), 99, np.float32)

    def add(self, d, z):
        self.z = np.maximum(self.z, np.where(d < 0.5 / self.c.k, z, 0))
        self.d = np.minimum(self.d, d)
        return self

    def plate(self, d, thick, edge):
        """Flat, with a rounded edge."""
        t = 1 - np.clip(-d / edge, 0, 1)
        return self.add(d, thick - edge + edge * np.sqrt(np.clip(1 - t * t, 0, 1)))

    def wire(self, middle, r, lift=0.0):
        """Round wire along a line, given the distance to its middle."""
        return self.add(middle - r, lift + np.sqrt(np.clip(r * r - middle * middle, 0, None)))

    def ball(self, x, y, a, b=None, depth=None, lift=0.0):
        b, depth = b or a, depth or a
        q = ((self.c.x - x) / a) ** 2 + ((self.c.y - y) / b) ** 2
        return self.add(self.c.oval(x, y, a, b), lift + depth * np.sqrt(np.clip(1 - q, 0, None)))

    def turned(self, y0, y1, radius, depth=1.0):
        """A body turned on a lathe about the middle line, radius(t) with t from 0 at y0 to 1 at y1."""
        t = (self.c.y - y0) / (y1 - y0)
        r = radius(np.clip(t, 0, 1))
        d = np.maximum(np.abs(self.c.x) - r, np.maximum(y0 - self.c.y, self.c.y - y1))
        return self.add(d, depth * np.sqrt(np.clip(r * r - self.c.x**2, 0, None)))

    def puff(self, d, top):
        """Blown up like a cushion: the membrane over the outline, its square root for a round edge."""
        c, n = self.c, 90
        f = n / max(c.rows, c.cols)
        inside = nd.zoom(d, f, order=1) < 0
        rows, cols = inside.shape
        size = rows * cols
        flat = inside.ravel().astype(float)
        keep = lambda shift: flat[shift:] * 1.0
        lap = diags(
            [4 * flat + (1 - flat), -keep(1), -flat[:-1], -keep(cols), -flat[:-cols]], [0, -1, 1, -cols, cols], (size, size), "csc"
        )
        u = np.sqrt(np.clip(spsolve(lap, flat), 0, None)).reshape(rows, cols)
        z = nd.zoom(u, (c.rows / rows, c.cols / cols), order=3)[: c.rows, : c.cols]
        z = c.blur(z / z.max() * top, 0.25)
        edge = top * 0.9
        t = 1 - np.clip(-d / edge, 0, 1)
        return self.add(d, np.minimum(z, edge * np.sqrt(np.clip(1 - t * t, 0, 1)) * 1.15))

    def groove(self, d, depth, wide):
        """Cut along a line (distance to its middle), as a graver does."""
        self.z = self.z - depth * np.exp(-((d / wide) ** 2)) * (self.d < 0)
        return self

    def sink(self, d, depth, edge=0.25):
        """Presses a field down."""
        self.z = self.z - depth * step(-d, 0, edge)
        return self

    def raised(self, d, height, edge=0.35):
        """Raises a field with a rounded edge, inside the outline only."""
        t = 1 - np.clip(-d / edge, 0, 1)
        self.z = self.z + height * np.sqrt(np.clip(1 - t * t, 0, 1)) * (self.d < 0)
        return self

    def pierce(self, hole):
        """Cuts right through."""
        self.d = np.maximum(self.d, -hole)
        self.z = np.where(hole < 0, 0, self.z)
        return self

    def eye(self, y=1.45, r=1.05, wire=0.4):
        return self.wire(np.abs(self.c.disc(0, y, r)), wire, 0.1)

    def paint(self, finish, rough=0.05, patina=1.0, grain=0.0032, seed=1):
        """Metal: the room in it, darkened in the recesses, polished on the high places."""
        c = self.c
        shade, body, shine = (np.array(tone, np.float32) for tone in TONES[finish])
        z = self.z + grain * c.noise(0.11, seed) + grain * 1.6 * c.noise(0.5, seed + 1)
        z = c.blur(z, 0.035)
        nx, ny, nz = slopes(c, z)
        # The eye is near: even a flat sheet shows a bit of the room from edge to edge.
        t = reflect(np.clip(nx + 0.20 * c.x / c.w - 0.02, -1, 1), np.clip(ny + 0.26 * (c.y / c.h - 0.5), -1, 1), rough)
        near, wide = c.blur(z, 0.3), c.blur(z, 1.1)
        hollow = np.clip((near - z) * 2.6, 0, 1) + 0.6 * np.clip((wide - z) * 0.9, 0, 1)
        worn = np.clip((z - near) * 2.0, 0, 0.4)
        t = t * (1 - 0.5 * shadow(c, z)) * (1 - 0.35 * np.clip(hollow, 0, 1)) + 0.35 * worn
        t = t + 0.02 * patina * c.noise(0.8, seed + 2)
        stops = (0.0, 0.2, 0.50, 0.95, 1.45)
        tones = np.stack([shade * 0.42, shade, body, shine, shine * 0.4 + 153 * 1.0])
        rgb = np.stack([np.interp(t, stops, tones[:, i]) for i in range(3)], -1)
        dark = np.clip(hollow * 0.85 * patina, 0, 0.82)[..., None]
        self.lay(rgb * (1 - dark) + shade * 0.38 * dark)

    def stone(self, rgb, gloss=1.0, rough=0.03, glow=0.0):
        """An opaque or cloudy coloured body under a clear polish; `glow` lets light through it."""
        c = self.c
        nx, ny, nz = slopes(c, c.blur(self.z, 0.04))
        lit = lambert(nx, ny, nz) * (1 - 0.4 * shadow(c, self.z))
        lit = lit * (1 - glow) + glow * (0.72 + 0.30 * np.clip(0.6 * nx + 0.8 * ny, -1, 1) + 0.25 * nz)
        hollow = np.clip((c.blur(self.z, 0.3) - self.z) * 1.8, 0, 0.6)
        base = np.asarray(rgb, np.float32) * (lit * (1 - hollow))[..., None]
        fresnel = 0.045 + 0.55 * (1 - nz) ** 4
        shine = np.clip((reflect(nx, ny, rough, 9.0) - 0.3) * fresnel * gloss, 0, 1)[..., None]
        self.lay(base + (255 - base) * shine)

    def lay(self, rgb):
        self.c.over(np.clip(rgb, 0, 255), self.c.cover(self.d))
