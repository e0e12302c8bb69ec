"""From traced light to the stored picture."""
import numpy as np
from PIL import Image
from PIL.PngImagePlugin import PngInfo
from scipy import ndimage as nd

EXPOSURE = 1.0
# Up to here light is shown straight, above it softly towards white.
KNEE = 0.55


def raw(path, size):
    """Rows from the top of a file that scene.py wrote: red, green, blue times cover, and cover."""
    return np.fromfile(path, np.float32).reshape(size[1], size[0], 4)[::-1]


def on_screen(light):
    """Light as a screen gives it back, 0..1: straight up to a knee, then softly towards white."""
    v = np.clip(light * EXPOSURE, 0, None)
    return np.where(v < KNEE, v, KNEE + (1 - KNEE) * (1 - np.exp(-(v - KNEE) / (1 - KNEE))))


def coded(v):
    """What a screen is told so that it gives back `v`: sRGB, 0..1."""
    return np.where(v <= 0.0031308, v * 12.92, 1.055 * np.maximum(v, 0.0031308) ** (1 / 2.4) - 0.055)


def decoded(screen):
    """What `coded` undoes."""
    return np.where(screen <= 0.04045, screen / 12.92, ((screen + 0.055) / 1.055) ** 2.4)


def shown(light):
    """Light as it is stored."""
    return coded(on_screen(light))


def light_of(screen):
    """The light that a screen shows as `screen`, 0..1 and below 1: what `shown` undoes."""
    v = decoded(screen)
    above = np.maximum(v - KNEE, 0) / (1 - KNEE)
    return np.where(v < KNEE, v, KNEE - (1 - KNEE) * np.log(1 - above)) / EXPOSURE


def picture(light, grey=False):
    """Straight alpha. What a clear body mirrors hides what is behind it as much as it is bright. `grey` takes the colour out."""
    if grey:
        light = np.dstack([*[light[..., :3] @ (0.25, 0.6, 0.15)] * 3, light[..., 3]])
    cover = np.clip(light[..., 3], 0, 1)
    a = np.where(cover > 0, np.clip(np.maximum(cover, light[..., :3].max(-1)), 0, 1), 0)
    rgb = shown(light[..., :3] / np.maximum(a, 1e-3)[..., None])
    return straight(rgb, a)


def straight(rgb, a):
    """A picture of straight alpha, without what is too faint to be seen."""
    a = np.where(a < 0.012, 0, a)
    rgb = np.where((a > 0)[..., None], np.clip(rgb, 0, 1), 0)
    return Image.fromarray((np.dstack([rgb, a]) * 255 + 0.5).astype(np.uint8), "RGBA")


def seen_through(light, mirrored, share, ground):
    """Straight alpha of a stone in the room's own light, of which up to `share` gives way to whatever is behind the picture.

    `mirrored` is the same stone where nothing is behind it: how much of what is behind it hides. Over the ground that the room
    has, sRGB 0..255, it looks as it was traced, in its own colour; over something darker it is darker."""
    cover = np.clip(light[..., 3], 0, 1)
    whole = np.maximum(cover, 1e-3)[..., None]
    seen, behind = on_screen(light[..., :3] / whole), decoded(ground / 255)
    through = share * np.clip(1 - mirrored[..., 3:] / whole, 0, 1)
    # No more of the ground than there is of it in any colour.
    through = np.minimum(through, 0.95 * (seen / behind).min(-1, keepdims=True))
    rgb = coded(np.clip((seen - through * behind) / (1 - through), 0, 1))
    return straight(rgb, cover * (1 - through[..., 0]))


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
