"""From traced light to the stored picture."""
import numpy as np
from PIL import Image
from PIL.PngImagePlugin import PngInfo
from scipy import ndimage as nd

EXPOSURE = 1.0


def raw(path, size):
    """Rows from the top of a file that scene.py wrote: red, green, blue times cover, and cover."""
    return np.fromfile(path, np.float32).reshape(size[1], size[0], 4)[::-1]


def shown(light):
    """Light as a screen shows it, 0..1: straight up to a knee, then softly towards white."""
    v = np.clip(light * EXPOSURE, 0, None)
    knee = 0.55
    v = np.where(v < knee, v, knee + (1 - knee) * (1 - np.exp(-(v - knee) / (1 - knee))))
    return np.where(v <= 0.0031308, v * 12.92, 1.055 * v ** (1 / 2.4) - 0.055)


def picture(light, grey=False):
    """Straight alpha. What a clear body mirrors hides what is behind it as much as it is bright. `grey` takes the colour out."""
    if grey:
        light = np.dstack([*[light[..., :3] @ (0.25, 0.6, 0.15)] * 3, light[..., 3]])
    cover = np.clip(light[..., 3], 0, 1)
    a = np.where(cover > 0, np.clip(np.maximum(cover, light[..., :3].max(-1)), 0, 1), 0)
    rgb = shown(light[..., :3] / np.maximum(a, 1e-3)[..., None])
    a = np.where(a < 0.012, 0, a)
    rgb = np.where((a > 0)[..., None], np.clip(rgb, 0, 1), 0)
    return Image.fromarray((np.dstack([rgb, a]) * 255 + 0.5).astype(np.uint8), "RGBA")


def let_through(light, mirrored, share):
    """A stone in the room's own light, of which `share` of what came through it gives way to whatever is behind the picture.

    `mirrored` is the same stone where nothing is behind it: what it mirrors, and how much it covers."""
    light, mirrored = light.astype(np.float64), np.minimum(mirrored, light)
    return (light + share * (mirrored - light)).astype(np.float32)


def normals(facing, levels=128):
    """Unit directions as bytes, in fewer steps than 256 so that the file packs well; straight ahead where nothing is."""
    a = np.clip(facing[..., 3], 0, 1)
    n = facing[..., :3] / np.maximum(a, 1e-4)[..., None] * 2 - 1
    there = a > 0.3
    near = nd.distance_transform_edt(~there, return_distances=False, return_indices=True)
    n = n[near[0], near[1]]
    n = n / np.maximum(np.linalg.norm(n, axis=-1, keepdims=True), 1e-6)
    n[..., 2] = np.maximum(n[..., 2], 0)
    n = np.where((nd.binary_dilation(a > 0.01, iterations=2))[..., None], n, (0, 0, 1))
    step = 256 / levels
    rgb = np.clip(np.round((n * 0.5 + 0.5) * 255 / step) * step, 0, 255)
    return Image.fromarray(np.dstack([rgb, a * 255]).round().astype(np.uint8), "RGBA")


def save(image, path, px_per_mm):
    """With how many pixels a millimetre has, as text in the file."""
    note = PngInfo()
    note.add_text("px_per_mm", f"{px_per_mm:g}")
    image.save(path, optimize=True, pnginfo=note)
