"""Bodies as height fields: what an eye straight in front can see of a cast, stamped or engraved piece."""
import numpy as np
from scipy import ndimage as nd
from scipy.sparse import diags
from scipy.sparse.linalg import spsolve

from canvas import step
from mesh import Mesh, linear


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

    def bevelled(self, d, thick, edge, crown=0.0):
        """Filed: straight bevels as wide as `edge`, the face between them raised to `crown` more where it is widest."""
        inner = np.clip(-d - edge, 0, None)
        rise = crown * (1 - np.exp(-inner))
        return self.add(d, thick - np.clip(edge + d, 0, edge) * 0.85 + rise)

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

    def mesh(self, lift=0.0, smooth=0.035, values=None):
        """The field as triangles: its rim lies on the outline itself, walls go down from it."""
        c, k = self.c, self.c.k
        inside = self.d < 0
        near = nd.distance_transform_edt(~inside, return_distances=False, return_indices=True)
        fill = lambda field: field[near[0], near[1]]
        z = c.blur(fill(self.z), smooth)
        wide, close = c.blur(z, 1.1), c.blur(z, 0.3)
        hollow = np.clip((close - z) * 2.6, 0, 1) + 0.6 * np.clip((wide - z) * 0.9, 0, 1)
        worn = np.clip((z - close) * 2.0, 0, 0.4)
        # Points just outside move onto the outline, down the slope of the distance.
        d = nd.gaussian_filter(self.d, 0.6)
        gy, gx = np.gradient(d, 1 / k)
        far = np.clip(d, 0, 1.6 / k) / np.maximum(gx * gx + gy * gy, 0.3)
        x, y = np.where(inside, c.x, c.x - gx * far), np.where(inside, c.y, c.y - gy * far)
        cells = inside[:-1, :-1] | inside[1:, :-1] | inside[:-1, 1:] | inside[1:, 1:]
        index = np.arange(z.size).reshape(z.shape)
        a, b, e, f = (q[cells] for q in (index[:-1, :-1], index[:-1, 1:], index[1:, 1:], index[1:, :-1]))
        faces = np.concatenate([np.stack([a, e, b], -1), np.stack([a, f, e], -1)])
        named = {"hollow": np.clip(hollow, 0, 1), "worn": worn, **{name: fill(v) for name, v in (values or {}).items()}}
        flat = {name: v.reshape(z.size, *v.shape[2:]) for name, v in named.items()}
        return Mesh(np.stack([x, y, z + lift], -1).reshape(-1, 3), faces, flat).walled(1.2).trimmed()

    def paint(self, finish, rough=0.24, patina=1.0, grain=1.0, seed=1, lift=0.0):
        """Metal, tarnished in the recesses, bright on the high places."""
        self.c.part(self.mesh(lift), kind="metal", finish=finish, rough=rough, patina=patina, grain=grain, seed=seed)

    def stone(self, rgb, gloss=1.0, rough=0.12, glow=0.0, lift=0.0):
        """A coloured body (0..255) under a polish; `glow` lets light into it."""
        rgb = np.broadcast_to(np.asarray(rgb, np.float32), (*self.z.shape, 3))
        self.c.part(self.mesh(lift, values={"tint": linear(rgb)}), kind="body", gloss=gloss, rough=rough, glow=glow)

    def shine(self, rgb, strength, lift=0.0):
        """A body that shines by itself."""
        self.c.part(self.mesh(lift, values={"tint": linear(rgb)}), kind="lamp", strength=strength)
