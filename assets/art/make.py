"""Makes every picture of the demo catalogue and of the kiosk: python3 assets/art/make.py [NAME ...]

Requirements: Python 3.11 or later, numpy>=2, scipy>=1.14, Pillow>=11 (all from PyPI); the program `blender` 3.4 or later
of the 3.x line with Cycles (Debian: apt-get install blender) on the PATH.

Sizes are read from catalog/trays/*.ron: a picture's canvas is its drop's body as it hangs, 10 pixels to the millimetre
where that gives a long side of 160 to 420 pixels. With names, only those are made; the contact sheet shows all there are.
"""
import json
import pathlib
import re
import subprocess
import sys
import tempfile

import numpy as np

import beads
import birthstones
import charms
import crystals
import fancies
import film
import found
import initials
import keys
import kiosk
import lockets
import room
import sheet
import tassels
import vials
from canvas import Canvas

HERE = pathlib.Path(__file__).resolve().parent
ROOT = HERE.parents[1]
PX_PER_MM, LONGEST, SHORTEST, FINER = 10.0, 420, 160, 2.4
RECIPES = {}
for drawer in (keys, lockets, charms, fancies, beads, crystals, vials, tassels, found, birthstones, initials):
    RECIPES |= drawer.RECIPES
DROP = re.compile(r'id: "([^"]+)".*?\bwidth: "([\d.]+)mm", height: "([\d.]+)mm", ring', re.S)
SAMPLES = {"glass": 192, "body": 160, "pearl": 160}


def drops():
    """Name, width and height in mm of every drop in the catalogue."""
    for tray in sorted((ROOT / "catalog/trays").glob("*.ron")):
        for name, w, h in DROP.findall(tray.read_text()):
            yield name, float(w), float(h)


def scale(w, h):
    """Pixels to the millimetre."""
    k = PX_PER_MM * min(1, LONGEST / (PX_PER_MM * max(w, h)))
    return max(k, SHORTEST / max(w, h))


def fitted(parts, w, h):
    """Moves and stretches the parts so that they fill the frame, the ring's place staying in the middle; also says by how much."""
    points = np.concatenate([mesh.points for mesh, _ in parts])
    half, top, low = np.abs(points[:, 0]).max(), points[:, 1].min(), points[:, 1].max()
    across, down = w / 2 / half, h / (low - top)
    for mesh, _ in parts:
        mesh.points = (mesh.points - (0, top, 0)) * (across, down, (across + down) / 2)
    return across, down


def stored(parts, path):
    """Writes the parts' arrays into one file; returns where they are in it."""
    told = []
    with open(path, "wb") as file:

        def put(array, kind):
            at = file.tell()
            file.write(np.ascontiguousarray(array, kind).tobytes())
            return at

        for i, (mesh, material) in enumerate(parts):
            # y points up from here on, which turns every triangle round.
            part = {"name": f"part-{i}", "vertices": len(mesh.points), "faces": len(mesh.faces), "smooth": int(mesh.smooth), "material": material}
            part["co"] = put(mesh.points * (1, -1, 1), np.float32)
            part["corners"] = put(mesh.faces, np.int32)
            part["values"] = []
            for name, v in mesh.values.items():
                if v.ndim == 2:
                    v = np.column_stack([v[:, :3], np.ones(len(v))])
                part["values"].append((name, "FLOAT_COLOR" if v.ndim == 2 else "FLOAT", put(v, np.float32)))
            told.append(part)
    return told


def job(name, recipe, w, h, k, folder, fit=True):
    """All that scene.py needs for one picture; the arrays go to a file in `folder`."""
    size = (round(w * k), round(h * k))
    c = Canvas(w, h, k * FINER)
    recipe(c, w, h)
    # The frame is whole pixels, less than half a pixel from the size in the catalogue.
    frame = (size[0] / k, size[1] / k)
    stretch = fitted(c.parts, *frame) if fit else (1.0, 1.0)
    kinds = {material["kind"] for _, material in c.parts}
    print(f"{name:16} {size[0]}x{size[1]}, stretched {stretch[0]:.3f} x {stretch[1]:.3f}", flush=True)
    return {
        "name": name, "frame": frame, "size": size, "out": str(folder / name), "arrays": str(folder / f"{name}.arrays"),
        "parts": stored(c.parts, folder / f"{name}.arrays"), "clear": c.clear, "lets_through": c.lets_through,
        "samples": max(SAMPLES.get(kind, 96) for kind in kinds),
    }


def render(jobs, folder):
    """Hands the jobs to one run of the 3D program and passes on what it says of each."""
    (folder / "jobs.json").write_text(json.dumps({"room": str(folder / "room.hdr"), "pictures": jobs}))
    command = ["nice", "-n", "19", "blender", "-b", "--factory-startup", "-P", str(HERE / "scene.py"), "--", str(folder / "jobs.json")]
    said = []
    with subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True) as program:
        for line in program.stdout:
            said.append(line)
            if line.startswith("DONE"):
                yield line.split()[1], float(line.split()[2])
    if program.returncode or any("Traceback" in line for line in said):
        sys.exit("the 3D program failed:\n" + "".join(said[-30:]))


def main(names):
    known = [(name, RECIPES[name], w, h, scale(w, h), True, ROOT / "catalog/pictures") for name, w, h in drops()]
    known += [(name, recipe, w, h, k, fit, ROOT / "assets/kiosk") for name, recipe, w, h, k, fit in kiosk.PICTURES]
    strange = names - {row[0] for row in known} - {"linen"}
    if strange:
        sys.exit(f"no such picture: {', '.join(sorted(strange))}")
    wanted = {row[0]: row for row in known if not names or row[0] in names}
    with tempfile.TemporaryDirectory() as folder:
        folder = pathlib.Path(folder)
        room.write(folder / "room.hdr")
        jobs = {name: job(name, recipe, w, h, k, folder, fit) for name, recipe, w, h, k, fit, _ in wanted.values()}
        for name, seconds in render(list(jobs.values()), folder):
            *_, k, _, home = wanted[name]
            path = home / f"{name}.png"
            light = film.raw(folder / f"{name}.light", jobs[name]["size"])
            if share := jobs[name]["lets_through"]:
                mirrored = film.raw(folder / f"{name}.mirrored", jobs[name]["size"])
                film.save(film.seen_through(light, mirrored, share, room.LINEN), path, k)
                (folder / f"{name}.mirrored").unlink()
            else:
                film.save(film.picture(light, home.name == "kiosk"), path, k)
            film.save(film.normals(film.raw(folder / f"{name}.facing", jobs[name]["size"])), home / f"{name}.normal.png", k)
            print(f"{name:16} {seconds:5.1f} s, {path.stat().st_size // 1024} kB", flush=True)
            for kind in ("light", "facing"):
                (folder / f"{name}.{kind}").unlink()
    if not names or "linen" in names:
        kiosk.linen().save(ROOT / "assets/kiosk/linen.png", optimize=True)
    sheet.write(ROOT, [name for name, _, _ in drops()])


if __name__ == "__main__":
    main(set(sys.argv[1:]))
