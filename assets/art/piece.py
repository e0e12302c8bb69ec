"""Path-traces a whole piece as the truth that the stage comes near: python3 assets/art/piece.py PLACES.json OUT.png

PLACES.json says where everything is, in pixels of the picture (y downwards): the test `truth` in tests/kiosk writes it for the
pieces that it shows itself. Chain links, threaded rings, drops from the same recipes, linen behind, the same room. Needs what
make.py needs; a picture of 220 x 220 pixels takes some minutes on two cores.
"""
import json
import pathlib
import sys
import tempfile

import numpy as np
from PIL import Image

import film
import kiosk
import make
import room
from canvas import Canvas
from mesh import Mesh
from solids import grid, tube

FINISHES = {
    "AntiqueBrass": "brass", "AntiqueSilver": "silver", "Copper": "copper", "Gold": "gold", "Gunmetal": "gunmetal",
    "Steel": "silver",
}
# How far the chain's middle hangs before the linen, and any body's back at least, in mm.
CHAIN_OVER, BODY_OVER = 4.2, 0.3
# By how much the middle of what hangs in front is nearer to the eye than the front of what it hides, at least, in mm.
NEARER = 0.3
# Light paths for each pixel, and pixels of the truth for each two of the stage: what is left of noise is less than FLIP sees.
SAMPLES = 256
SHARE = 0.5


def metal(finish):
    return {"kind": "metal", "finish": FINISHES[finish], "rough": 0.2, "patina": 0.6, "grain": 0.4, "seed": 120}


def turned(points, angle):
    """About the origin, clockwise as seen, y downwards."""
    c, s = np.cos(angle), np.sin(angle)
    x, y, z = points.T
    return np.stack([c * x - s * y, s * x + c * y, z], -1)


def wire(parts, path, thick, finish, closed=False):
    parts.append((tube(path, thick / 2, 24, closed), metal(finish)))


def links(parts, told, k):
    long, wide, share = told["long_mm"], told["wide_mm"], told["wire_share"]
    loop = kiosk.loop_path(long, wide, wide * share) - (0, wide / 2, 0)
    edge = np.stack([loop[:, 0], loop[:, 2], loop[:, 1]], -1)
    for number, (ax, ay, bx, by) in enumerate(told["ends"]):
        path = turned(loop if number % 2 == 0 else edge, np.arctan2(by - ay, bx - ax))
        wire(parts, path + ((ax + bx) / 2 / k, (ay + by) / 2 / k, 0), wide * share, told["finish"], True)


def ring(parts, drop, k):
    """A circle that is turned about the upright line through its middle; the half to the right or left is before the base."""
    t = np.linspace(0, 2 * np.pi, 160, endpoint=False)
    across, high = drop["half_width_mm"], drop["half_height_mm"]
    deep = np.sqrt(max(high * high - across * across, 0))
    path = np.stack([across * np.sin(t), high * np.cos(t) + drop["ring_middle_mm"], deep * np.sin(t)], -1)
    path = turned(path, -drop["lean_rad"]) + (drop["x"] / k, drop["y"] / k, 0)
    wire(parts, path, drop["wire_mm"], drop["finish"], True)


def body(parts, drop, before, k):
    """A drop's body under its ring, in front of those of the bodies `before` that it hides; what it covers, and its front."""
    w, h = drop["width_mm"], drop["height_mm"]
    c = Canvas(w, h, make.scale(w, h) * make.FINER)
    make.RECIPES[drop["picture"]](c, w, h)
    make.fitted(c.parts, w, h)
    for mesh, _ in c.parts:
        mesh.points = turned(mesh.points + (0, drop["hangs_mm"], 0), -drop["lean_rad"]) + (drop["x"] / k, drop["y"] / k, 0)
    points = np.concatenate([mesh.points for mesh, _ in c.parts])
    low, high = points.min(axis=0), points.max(axis=0)
    half = (high[2] - low[2]) / 2
    middle = max(0, half + BODY_OVER - CHAIN_OVER)
    for (other_low, other_high), other_front in before:
        if (low[:2] < other_high[:2]).all() and (high[:2] > other_low[:2]).all():
            middle = max(middle, other_front + NEARER)
    print(f"{drop['picture']} {middle + CHAIN_OVER:.1f} mm over the linen")
    for mesh, material in c.parts:
        mesh.points = mesh.points + (0, 0, middle + half - high[2])
        parts.append((mesh, material))
    return (low, high), middle + half


def linen(parts, w, h, behind, begins, k):
    """The stage's own linen, a thread for a thread: its picture is repeated, and the frame begins at `begins` of it.

    It reflects what it has to reflect to be that picture where nothing is in its light."""
    step = 2 / k
    x, y = np.meshgrid(np.arange(-w, 2 * w, step), np.arange(-h, 2 * h, step))
    points = np.stack([x, y, np.full_like(x, -behind)], -1).astype(np.float32)
    mesh = Mesh(points.reshape(-1, 3), grid(points, around=False).faces)
    woven = np.asarray(Image.open(make.ROOT / "assets/kiosk/linen.png").convert("RGB"), np.float32) / 255
    # Two of its pixels are one of the truth.
    woven = (woven[0::2, 0::2] + woven[1::2, 0::2] + woven[0::2, 1::2] + woven[1::2, 1::2]) / 4
    rows, columns = (np.floor((v * k + at) / 2).astype(int) % side for v, at, side in zip((y, x), begins[::-1], woven.shape))
    reflects = film.light_of(woven[rows, columns]) / room.on_the_ground()
    mesh.values["tint"] = reflects.reshape(-1, 3).astype(np.float32)
    parts.append((mesh, {"kind": "body", "gloss": 0.0, "rough": 0.95, "glow": 0.0}))


def main(places, out):
    told = json.loads(pathlib.Path(places).read_text())
    k, (wide, high) = told["px_per_mm"], told["size"]
    frame, size = (wide / k, high / k), (round(wide * SHARE), round(high * SHARE))
    parts = []
    if told["links"]:
        links(parts, told["links"], k)
    bodies = []
    for drop in sorted(told["drops"], key=lambda drop: drop["rank"]):
        ring(parts, drop, k)
        bodies.append(body(parts, drop, bodies, k))
    linen(parts, *frame, CHAIN_OVER, told["ground"], k)
    for mesh, _ in parts:
        # The frame's middle is where x begins.
        mesh.points = mesh.points - (frame[0] / 2, 0, 0)
    with tempfile.TemporaryDirectory() as folder:
        folder = pathlib.Path(folder)
        room.write(folder / "room.hdr")
        job = {
            "name": "piece", "frame": frame, "size": size, "out": str(folder / "piece"), "clear": False, "samples": SAMPLES,
            "arrays": str(folder / "piece.arrays"), "parts": make.stored(parts, folder / "piece.arrays"), "facing": False,
        }
        for name, seconds in make.render([job], folder):
            print(f"{name} {seconds:.0f} s", flush=True)
        light = film.raw(folder / "piece.light", size)
    rgb = film.shown(light[..., :3])
    Image.fromarray((np.clip(rgb, 0, 1) * 255 + 0.5).astype(np.uint8), "RGB").save(out, optimize=True)


if __name__ == "__main__":
    main(*sys.argv[1:])
