"""Makes every picture of the demo catalogue and of the kiosk: python3 assets/art/make.py [NAME ...]

Requirements: Python 3.11 or later, numpy>=2, scipy>=1.14, Pillow>=11 (all from PyPI).

Sizes are read from catalog/trays/*.ron: a picture's canvas is its drop's body as it hangs, 10 pixels to the millimetre
where that gives a long side of 160 to 420 pixels. With names, only those are made.
"""
import pathlib
import re
import sys
from multiprocessing import Pool

import numpy as np

import charms
import clear
import found
import keys
import kiosk
import lockets
import tassels
from canvas import Canvas
from fit import shrink

ROOT = pathlib.Path(__file__).resolve().parents[2]
PX_PER_MM, LONGEST, SHORTEST, FINER = 10.0, 420, 160, 2.5
RECIPES = {**keys.RECIPES, **lockets.RECIPES, **charms.RECIPES, **clear.RECIPES, **tassels.RECIPES, **found.RECIPES}
DROP = re.compile(r'id: "([^"]+)".*?\bwidth: "([\d.]+)mm", height: "([\d.]+)mm", ring', re.S)


def drops():
    for tray in sorted((ROOT / "catalog/trays").glob("*.ron")):
        for name, w, h in DROP.findall(tray.read_text()):
            yield name, float(w), float(h)


def picture(job):
    name, w, h = job
    k = PX_PER_MM * min(1, LONGEST / (PX_PER_MM * max(w, h)))
    k = max(k, SHORTEST / max(w, h))
    c = Canvas(w, h, k * FINER)
    RECIPES[name](c, w, h)
    rows, cols = np.where(c.a > 0.5)
    # The ring holds the drop at x = 0, so the canvas reaches equally far to both sides.
    half = max(-c.x[0, cols.min()], c.x[0, cols.max()]) + 0.5 / c.k
    mid = (w / 2 + c.MARGIN) * c.k
    box = (max(0, mid - half * c.k), rows.min(), min(c.cols, mid + half * c.k), rows.max() + 1)
    odd = (box[2] - box[0]) / (box[3] - box[1]) / (w / h)
    image = shrink(c.rgb, c.a, (round(w * k), round(h * k)), box)
    path = ROOT / "catalog/pictures" / f"{name}.png"
    image.save(path, optimize=True)
    return f"{name:16} {image.width}x{image.height} {path.stat().st_size // 1024} kB, drawn {2 * half:.1f}x{(box[3] - box[1]) / c.k:.1f} mm, stretched {odd:.3f}"


def main(names):
    jobs = [job for job in drops() if not names or job[0] in names]
    jobs.sort(key=lambda job: -job[1] * job[2])
    with Pool(2) as pool:
        for line in pool.imap(picture, jobs, chunksize=1):
            print(line, flush=True)
    for name, image in kiosk.pictures():
        if not names or name in names:
            (ROOT / "assets/kiosk").mkdir(exist_ok=True)
            image.save(ROOT / "assets/kiosk" / f"{name}.png", optimize=True)


if __name__ == "__main__":
    main(set(sys.argv[1:]))
