"""Round bodies, wire and cut stones."""
import numpy as np
from scipy.spatial import ConvexHull, HalfspaceIntersection

from mesh import Mesh

TURN = 2 * np.pi


def grid(points, around=True, along=False):
    """Faces over rows and columns of points; `around` joins the columns' ends, `along` the rows'."""
    rows, cols = points.shape[:2]
    i, j = np.meshgrid(np.arange(rows if along else rows - 1), np.arange(cols if around else cols - 1), indexing="ij")
    a, b = i * cols + j, i * cols + (j + 1) % cols
    c, d = (i + 1) % rows * cols + (j + 1) % cols, (i + 1) % rows * cols + j
    return Mesh(points, np.concatenate([np.stack([a, b, c], -1).reshape(-1, 3), np.stack([a, c, d], -1).reshape(-1, 3)]))


def tube(path, r, sides=20, closed=False, caps=True):
    """Round wire along a path; `r` is one radius or one for each point. Open ends are rounded."""
    path = np.asarray(path, float)
    if path.shape[1] == 2:
        path = np.column_stack([path, np.zeros(len(path))])
    r = np.broadcast_to(np.asarray(r, float), len(path)).copy()
    way = np.roll(path, -1, 0) - np.roll(path, 1, 0) if closed else np.gradient(path, axis=0)
    way /= np.maximum(np.linalg.norm(way, axis=1, keepdims=True), 1e-9)
    if caps and not closed:
        a = np.linspace(TURN / 4, 0, 6)[:-1]
        head = path[0] - way[0] * (r[0] * np.sin(a))[:, None], r[0] * np.cos(a)
        tail = path[-1] + way[-1] * (r[-1] * np.sin(a[::-1]))[:, None], r[-1] * np.cos(a[::-1])
        path, r = np.concatenate([head[0], path, tail[0]]), np.concatenate([head[1], r, tail[1]])
        way = np.concatenate([np.repeat(way[:1], 5, 0), way, np.repeat(way[-1:], 5, 0)])
    # Frames carried along the path without twisting.
    side = np.cross(way[0], (0.0, 0.0, 1.0) if abs(way[0][2]) < 0.9 else (1.0, 0.0, 0.0))
    sides_at = []
    for t in way:
        side = side - t * (side @ t)
        side = side / np.linalg.norm(side)
        sides_at.append(side)
    u = np.array(sides_at)
    v = np.cross(way, u)
    t = np.arange(sides) * TURN / sides
    ring = u[:, None] * np.cos(t)[None, :, None] + v[:, None] * np.sin(t)[None, :, None]
    return grid(path[:, None] + ring * r[:, None, None], True, closed)


def lathe(profile, sides=128, flute=None, closed=False, depth=1.0):
    """Turns a profile of (radius, y) about the middle line; `flute(angle, row)` scales the radius; `closed` for a hollow wall."""
    profile = np.asarray(profile, float)
    t = np.arange(sides) * TURN / sides
    r = np.maximum(profile[:, :1], 1e-4) * (flute(t[None], np.arange(len(profile))[:, None]) if flute else np.ones((1, sides)))
    return grid(np.stack([r * np.cos(t), np.broadcast_to(profile[:, 1:], r.shape), depth * r * np.sin(t)], -1), True, closed)


def ball(x, y, z, a, b=None, c=None, n=96):
    """A ball, or an egg of three half axes."""
    t = np.linspace(0, np.pi, n // 2)
    m = lathe(np.stack([np.sin(t), -np.cos(t)], -1), n)
    return Mesh(m.points * np.array([a, b or a, c or a], np.float32), m.faces).moved(x, y, z)


def loop(x, y, r, wire, z=0.0, lean=0.0, n=96):
    """A closed ring facing the eye, leaning `lean` about its upright axis."""
    t = np.arange(n) * TURN / n
    return tube(np.stack([x + r * np.sin(t) * np.cos(lean), y - r * np.cos(t), z + r * np.sin(t) * np.sin(lean)], -1), wire, 20, True)


def cut_stone(planes, inside):
    """What planes (nx, ny, nz, off) leave: points with n·p <= off. Flat faces; `inside` is a point within."""
    planes = np.array(planes, float)
    corners = HalfspaceIntersection(np.column_stack([planes[:, :3], -planes[:, 3]]), np.array(inside, float)).intersections
    corners = corners[np.all(np.isfinite(corners), axis=1)]
    hull = ConvexHull(corners)
    tri = hull.simplices.copy()
    middle = corners.mean(0)
    out = np.einsum("ij,ij->i", np.cross(corners[tri[:, 1]] - corners[tri[:, 0]], corners[tri[:, 2]] - corners[tri[:, 0]]), corners[tri[:, 0]] - middle) < 0
    tri[out] = tri[out][:, ::-1]
    return Mesh(corners[tri].reshape(-1, 3), np.arange(tri.size), smooth=False)
