"""Renders the jobs that make.py wrote: blender -b -P scene.py -- JOBS.json

One job is one picture: parts (triangles, with values at their corners, and what they are made of), the frame in mm and
the size in pixels. Each is path-traced twice from straight in front: as it looks, and the direction of its surface.
Blender's y is up; 1 unit is 1 mm. Written for Blender 3.4 (Cycles, no denoiser needed).
"""
import array
import json
import pathlib
import sys
import time

import bpy

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent))
import materials  # noqa: E402 (needs the path above)

WIDTHS = {"FLOAT": ("value", 1), "FLOAT_COLOR": ("color", 4)}


def load(path, kind, start, count):
    values = array.array(kind)
    with open(path, "rb") as file:
        file.seek(start)
        values.fromfile(file, count)
    return values


def build(scene, part, path):
    """A mesh from its arrays."""
    vertices, faces = part["vertices"], part["faces"]
    mesh = bpy.data.meshes.new(part["name"])
    mesh.vertices.add(vertices)
    mesh.vertices.foreach_set("co", load(path, "f", part["co"], vertices * 3))
    mesh.loops.add(faces * 3)
    mesh.loops.foreach_set("vertex_index", load(path, "i", part["corners"], faces * 3))
    mesh.polygons.add(faces)
    mesh.polygons.foreach_set("loop_start", array.array("i", range(0, faces * 3, 3)))
    mesh.polygons.foreach_set("loop_total", array.array("i", [3]) * faces)
    mesh.polygons.foreach_set("use_smooth", array.array("b", [part["smooth"]]) * faces)
    for name, kind, start in part["values"]:
        field, width = WIDTHS[kind]
        layer = mesh.attributes.new(name, kind, "POINT")
        layer.data.foreach_set(field, load(path, "f", start, vertices * width))
    mesh.update(calc_edges=True)
    mesh.materials.append(materials.make(part["material"]))
    scene.collection.objects.link(bpy.data.objects.new(part["name"], mesh))


def camera(scene, w, h):
    """Straight in front; the frame's middle is the middle of the drop."""
    lens = bpy.data.cameras.new("camera")
    lens.type, lens.ortho_scale, lens.clip_end = "ORTHO", max(w, h), 500
    eye = bpy.data.objects.new("camera", lens)
    eye.location = (0, -h / 2, 100)
    scene.collection.objects.link(eye)
    scene.camera = eye


def room(scene, picture):
    """Light from all round, by direction only: the same for every drop."""
    world = bpy.data.worlds.new("room")
    world.use_nodes = True
    scene.world = world
    tree = world.node_tree
    light = tree.nodes.new("ShaderNodeTexEnvironment")
    light.image = bpy.data.images.load(picture)
    place = tree.nodes.new("ShaderNodeTexCoord")
    tree.links.new(place.outputs["Generated"], light.inputs["Vector"])
    tree.links.new(light.outputs["Color"], tree.nodes["Background"].inputs["Color"])
    world.cycles.sampling_method = "MANUAL"
    world.cycles.sample_map_resolution = 512


def settings(scene, job):
    cycles, render = scene.cycles, scene.render
    render.engine = "CYCLES"
    cycles.device, cycles.use_denoising, cycles.seed = "CPU", False, 7
    cycles.samples, cycles.use_adaptive_sampling, cycles.adaptive_threshold = job["samples"], True, 0.012
    cycles.max_bounces, cycles.transmission_bounces, cycles.transparent_max_bounces = 24, 24, 24
    cycles.sample_clamp_indirect, cycles.blur_glossy = 6.0, 0.3
    cycles.film_transparent_glass = job["clear"]
    cycles.pixel_filter_type, cycles.filter_width = "BLACKMAN_HARRIS", 1.3
    render.film_transparent = True
    render.resolution_x, render.resolution_y, render.resolution_percentage = *job["size"], 100
    render.threads_mode, render.threads = "FIXED", 2
    render.image_settings.file_format, render.image_settings.color_depth = "OPEN_EXR", "32"
    render.image_settings.color_mode, render.image_settings.exr_codec = "RGBA", "ZIP"


def shoot(scene, path):
    """Renders to raw 32-bit rows from the bottom up, light premultiplied with cover."""
    scene.render.filepath = f"{path}.exr"
    bpy.ops.render.render(write_still=True)
    image = bpy.data.images.load(f"{path}.exr")
    image.colorspace_settings.name = "Non-Color"
    values = array.array("f", bytes(4 * len(image.pixels)))
    image.pixels.foreach_get(values)
    with open(path, "wb") as file:
        values.tofile(file)
    bpy.data.images.remove(image)


def picture(job, light):
    start = time.time()
    bpy.ops.wm.read_factory_settings(use_empty=True)
    scene = bpy.context.scene
    materials.begin(job["frame"])
    for part in job["parts"]:
        build(scene, part, job["arrays"])
    camera(scene, *job["frame"])
    room(scene, light)
    settings(scene, job)
    shoot(scene, job["out"] + ".light")
    if job.get("lets_through"):
        # The same without the light that came through the stone from behind.
        scene.cycles.film_transparent_glass = True
        shoot(scene, job["out"] + ".mirrored")
    if not job.get("facing", True):
        print(f"DONE {job['name']} {time.time() - start:.1f}", flush=True)
        return
    scene.view_layers[0].material_override = materials.facing()
    scene.cycles.samples, scene.cycles.use_adaptive_sampling = 16, False
    scene.cycles.pixel_filter_type, scene.cycles.film_transparent_glass = "BOX", False
    scene.cycles.max_bounces = 0
    shoot(scene, job["out"] + ".facing")
    print(f"DONE {job['name']} {time.time() - start:.1f}", flush=True)


def main(path):
    jobs = json.loads(pathlib.Path(path).read_text())
    for job in jobs["pictures"]:
        picture(job, jobs["room"])


if __name__ == "__main__":
    main(sys.argv[sys.argv.index("--") + 1])
