"""Triangles with values at their corners, in the canvas's directions: x right, y down, z to the eye, all in mm."""
import numpy as np


def linear(rgb):
    """Colours of 0..255 as screens have them, as shares of light."""
    v = np.clip(np.asarray(rgb, np.float32) / 255, 0, 1)
    return np.where(v <= 0.04045, v / 12.92, ((v + 0.055) / 1.055) ** 2.4)


class Mesh:
    def __init__(self, points, faces, values=None, smooth=True):
        self.points = np.asarray(points, np.float32).reshape(-1, 3)
        self.faces = np.asarray(faces, np.int32).reshape(-1, 3)
        self.values, self.smooth = values or {}, smooth

    def trimmed(self):
        """Without the points that no triangle uses."""
        used, faces = np.unique(self.faces, return_inverse=True)
        return Mesh(self.points[used], faces, {name: v[used] for name, v in self.values.items()}, self.smooth)

    def walled(self, deep):
        """With walls straight down from its open edges to `deep` below the middle plane; they keep their own points."""
        f = self.faces
        edges = np.concatenate([f[:, [0, 1]], f[:, [1, 2]], f[:, [2, 0]]]).astype(np.int64)
        key = np.sort(edges, axis=1) @ np.array([1 << 32, 1])
        _, first, count = np.unique(key, return_index=True, return_counts=True)
        rim = edges[first[count == 1]]
        top = self.points[rim].reshape(-1, 3)
        low = np.column_stack([top[:, :2], np.minimum(top[:, 2], 0) - deep])
        at, n = len(self.points), len(top)
        a = at + np.arange(0, n, 2)
        walls = np.concatenate([np.stack([a, a + n, a + 1], -1), np.stack([a + 1, a + n, a + n + 1], -1)])
        values = {name: np.concatenate([v, v[rim].reshape(n, *v.shape[1:]), v[rim].reshape(n, *v.shape[1:])]) for name, v in self.values.items()}
        return Mesh(np.concatenate([self.points, top, low]), np.concatenate([f, walls]), values, self.smooth)

    def moved(self, x=0.0, y=0.0, z=0.0):
        return Mesh(self.points + np.array([x, y, z], np.float32), self.faces, self.values, self.smooth)

    def turned(self, matrix):
        return Mesh(self.points @ np.asarray(matrix, np.float32).T, self.faces, self.values, self.smooth)

    def valued(self, **values):
        """With a value for the whole mesh, or one for each point."""
        n = len(self.points)
        full = {name: np.broadcast_to(np.asarray(v, np.float32), (n, *np.shape(v)[-1:])) if np.ndim(v) else np.full(n, v, np.float32) for name, v in values.items() if np.ndim(v) < 2 and np.size(v) != n}
        full |= {name: np.asarray(v, np.float32) for name, v in values.items() if name not in full}
        return Mesh(self.points, self.faces, {**self.values, **full}, self.smooth)

    def outward(self):
        """A closed mesh with its triangles turned outwards once y points up, as clear bodies need."""
        a, b, c = (self.points[self.faces[:, i]].astype(float) for i in range(3))
        # In the canvas's directions (left-handed) an outward mesh has a negative volume.
        if np.einsum("ij,ij->", a, np.cross(b, c)) > 0:
            self.faces = self.faces[:, ::-1]
        return self


def together(meshes):
    """Many meshes as one; all carry the same values."""
    starts = np.cumsum([0] + [len(m.points) for m in meshes[:-1]])
    values = {name: np.concatenate([m.values[name] for m in meshes]) for name in meshes[0].values}
    return Mesh(np.concatenate([m.points for m in meshes]), np.concatenate([m.faces + s for m, s in zip(meshes, starts)]), values, meshes[0].smooth)
