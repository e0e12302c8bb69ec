"""The room the drops are seen in: a big window up on the left, a slim one on the right, linen below and behind."""
import functools

import numpy as np
from scipy import ndimage as nd

from canvas import step

WINDOW = np.array((-0.48, -0.66, 0.58)) / np.linalg.norm((-0.48, -0.66, 0.58))
SIDE = np.array((0.88, -0.16, 0.44)) / np.linalg.norm((0.88, -0.16, 0.44))


def sky(dx, dy, dz, window=1.0):
    """How bright the room is in a direction (x right, y down, z to the eye); `window` scales its brightest part."""
    up = -dy
    seen = 0.40 + 0.24 * step(up, -0.05, 0.95) - 0.26 * np.exp(-(((up + 0.42) / 0.2) ** 2)) + 0.16 * step(-up, 0.6, 1.0)
    seen = seen - 0.20 * np.exp(-(((up - 0.30) / 0.13) ** 2)) * step(dx, -0.5, 0.5)
    # Seen in clear polish the window has an edge; in metal it is soft.
    low, high = (0.74, 0.93) if window <= 1 else (0.80, 0.86)
    seen = seen + window * 0.95 * step(dx * WINDOW[0] + dy * WINDOW[1] + dz * WINDOW[2], low, high)
    seen = seen + (0.6 + 0.4 * window) * 0.36 * step(dx * SIDE[0] + dy * SIDE[1] + dz * SIDE[2], 0.86, 0.97)
    return seen + 0.42 * step(-dz, 0.0, 0.7)


@functools.lru_cache(maxsize=None)
def mirror(rough, window=1.0, n=320):
    """What a polished ball shows of the room, by the slope of its surface."""
    ny, nx = np.mgrid[-1 : 1 : n * 1j, -1 : 1 : n * 1j]
    q = np.maximum(np.hypot(nx, ny) / 0.995, 1.0)
    nx, ny = nx / q, ny / q
    nz = np.sqrt(np.maximum(1 - nx * nx - ny * ny, 0))
    ball = sky(2 * nz * nx, 2 * nz * ny, 2 * nz * nz - 1, window)
    return nd.gaussian_filter(ball, rough * n / 2, mode="nearest").astype(np.float32)


def reflect(nx, ny, rough, window=1.0):
    """The room in a surface of that slope."""
    ball = mirror(rough, window)
    n = ball.shape[0] - 1
    return nd.map_coordinates(ball, [(ny + 1) / 2 * n, (nx + 1) / 2 * n], order=1, mode="nearest")


def slopes(c, z):
    """Unit normals of a height field in mm."""
    gy, gx = np.gradient(z, 1 / c.k)
    nz = 1 / np.sqrt(1 + gx * gx + gy * gy)
    return -gx * nz, -gy * nz, nz


def shadow(c, z):
    """Where a relief keeps the window's light from itself, 0..1, soft."""
    dark = np.zeros_like(z)
    for far in (0.2, 0.4, 0.7, 1.1, 1.7, 2.5):
        across, down = int(round(far * 0.59 * c.k)), int(round(far * 0.81 * c.k))
        there = np.zeros_like(z)
        there[down:, across:] = z[: z.shape[0] - down, : z.shape[1] - across]
        dark = np.maximum(dark, np.clip((there - z - far * 0.62) / (0.16 + 0.2 * far), 0, 1))
    return c.blur(dark, 0.09)


def lambert(nx, ny, nz):
    """Soft daylight on a dull surface, about 0.25..1.1."""
    return 0.34 + 0.22 * (0.5 - 0.5 * ny) + 0.58 * np.clip(nx * WINDOW[0] + ny * WINDOW[1] + nz * WINDOW[2], 0, 1)
