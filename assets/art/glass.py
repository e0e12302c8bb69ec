"""Clear bodies, by following light through them."""
import numpy as np

from light import sky

IOR = 1.54


class Cut:
    """A convex cut stone: the points p with n·p <= d for every face."""

    def __init__(self, faces):
        faces = np.array(faces, np.float32)
        size = np.linalg.norm(faces[:, :3], axis=1)
        self.n, self.d = faces[:, :3] / size[:, None], faces[:, 3] / size

    def enter(self, x, y):
        """Front point and normal of each line of sight, and the faces' signed distance as seen from the front."""
        top, low, side = np.full(x.shape, 1e9, np.float32), np.full(x.shape, -1e9, np.float32), np.full(x.shape, -1e9, np.float32)
        face = np.zeros(x.shape, int)
        for i, ((a, b, c), d) in enumerate(zip(self.n, self.d)):
            if abs(c) < 1e-4:
                side = np.maximum(side, a * x + b * y - d)
                continue
            z = (d - a * x - b * y) / c
            if c > 0:
                face = np.where(z < top, i, face)
                top = np.minimum(top, z)
            else:
                low = np.maximum(low, z)
        return top, self.n[face], np.maximum(side, (low - top) * 0.5)

    def leave(self, p, v):
        """Way to the far wall and its normal."""
        way, face = np.full(len(p), 1e9, np.float32), np.zeros(len(p), int)
        for i, (n, d) in enumerate(zip(self.n, self.d)):
            along = v @ n
            t = np.where(along > 1e-5, (d - p @ n) / np.maximum(along, 1e-5), 1e9)
            t = np.maximum(t, 1e-4)
            face, way = np.where(t < way, i, face), np.minimum(t, way)
        return way, self.n[face]


class Pebble:
    """An ellipsoid with half axes a, b, c about (0, y)."""

    def __init__(self, y, a, b, c):
        self.mid, self.axes = np.array((0, y, 0), np.float32), np.array((a, b, c), np.float32)

    def enter(self, x, y):
        u, v = x / self.axes[0], (y - self.mid[1]) / self.axes[1]
        q = np.hypot(u, v)
        z = np.sqrt(np.clip(1 - q * q, 0, None)) * self.axes[2]
        n = np.stack([x, y - self.mid[1], z], -1) / self.axes**2
        return z, n / np.maximum(np.linalg.norm(n, axis=-1, keepdims=True), 1e-6), (q - 1) * self.axes[:2].min()

    def leave(self, p, v):
        o, w = (p - self.mid) / self.axes, v / self.axes
        way = np.maximum(-2 * (o * w).sum(-1) / (w * w).sum(-1), 1e-4)
        n = (p + v * way[:, None] - self.mid) / self.axes**2
        return way, n / np.linalg.norm(n, axis=-1, keepdims=True)


def refract(v, n, eta):
    """Direction after a boundary whose normal points against v, the share mirrored, and where all of it is."""
    cos = np.clip(-(v * n).sum(-1), 0, 1)
    k = 1 - eta * eta * (1 - cos * cos)
    whole = k < 0
    out = np.sqrt(np.maximum(k, 0))
    r0 = ((1 - eta) / (1 + eta)) ** 2
    share = r0 + (1 - r0) * (1 - np.minimum(cos, out)) ** 5
    return eta * v + (eta * cos - out)[:, None] * n, np.where(whole, 1, share), whole


def draw(c, body, colour, dense=0.12, clear=0.9, cloud=None, bounces=5):
    """Paints a clear body of a colour (0..255 after about 1/dense mm); `cloud` (0..1) is what floats in it."""
    top, normal, d = body.enter(c.x, c.y)
    seen = d < 0.5 / c.k
    p = np.stack([c.x[seen], c.y[seen], top[seen]], -1)
    n = normal[seen]
    v = np.tile(np.array((0, 0, -1), np.float32), (len(p), 1))
    inner, share, _ = refract(v, n, 1 / IOR)
    mirrored = v - 2 * (v * n).sum(-1, keepdims=True) * n
    shine = share * (sky(*mirrored.T, 7.0) - 0.15)
    eats = dense * -np.log(np.clip(np.array(colour, np.float32) / 255, 0.02, 0.995))
    light, left, way, v = np.zeros((len(p), 3)), (1 - share)[:, None], np.zeros(len(p)), inner
    for _ in range(bounces):
        far, wall = body.leave(p, v)
        p, way = p + v * far[:, None], way + far
        out, share, whole = refract(v, -wall, IOR)
        gone = left * np.where(whole, 0, 1 - share)[:, None]
        light = light + gone * sky(*out.T, 2.6)[:, None] * np.exp(-eats * way[:, None])
        left, v = left - gone, v - 2 * (v * wall).sum(-1, keepdims=True) * wall
    light = light + left * 0.35 * np.exp(-eats * way[:, None])
    rgb = 255 * (1 - np.exp(-1.75 * light))
    if cloud is not None:
        rgb = rgb + (np.array(colour) * 0.9 + 25 - rgb) * cloud[seen][:, None]
    shine = np.clip(shine, 0, 1)[:, None]
    rgb = rgb + (255 - rgb) * shine
    whole = np.zeros((c.rows, c.cols, 3), np.float32)
    whole[seen] = np.clip(rgb, 0, 255)
    alpha = np.zeros((c.rows, c.cols), np.float32)
    alpha[seen] = np.clip(clear + shine[:, 0], 0, 1)
    c.over(whole, alpha * c.cover(d))
