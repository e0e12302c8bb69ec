"""From the fine canvas to the picture as it is stored."""
import numpy as np
from PIL import Image


def shrink(rgb, a, size, box=None):
    """A smaller picture of a part of a canvas, straight alpha; colours count by their cover."""
    planes = [Image.fromarray(np.ascontiguousarray(p, np.float32)) for p in (*np.moveaxis(rgb * a[..., None], -1, 0), a)]
    *rgb, a = (np.asarray(p.resize(size, Image.Resampling.BOX, box)) for p in planes)
    rgb = np.stack(rgb, -1) / np.maximum(a, 1e-4)[..., None]
    return Image.fromarray((np.clip(np.dstack([rgb, a * 255]), 0, 255) + 0.5).astype(np.uint8), "RGBA")
