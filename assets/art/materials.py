"""What drops are made of, as shader nodes. A material is a dictionary: "kind" names the function here, the rest are its values."""
import bpy

# Colour of the bare metal, of the tarnish in its recesses (linear light), and how far it has tarnished, by finish. Under this
# room's light they come out near the shade, body and shine of the program's `Finish::tones`; change both together.
METALS = {
    "brass": ((0.70, 0.45, 0.165), (0.040, 0.022, 0.008), 1.35),
    "silver": ((0.70, 0.69, 0.66), (0.018, 0.017, 0.017), 1.55),
    "copper": ((0.82, 0.36, 0.20), (0.060, 0.017, 0.009), 1.15),
    "gold": ((0.98, 0.63, 0.20), (0.150, 0.065, 0.012), 0.8),
    "gunmetal": ((0.27, 0.285, 0.32), (0.010, 0.011, 0.014), 1.0),
    "grey": ((1.0, 1.0, 1.0), (0.25, 0.25, 0.25), 0.5),
}

_frame = (1.0, 1.0)
_made = {}


def begin(frame):
    """Forgets the materials of the picture before; `frame` is the new one's size in mm."""
    global _frame
    _frame = frame
    _made.clear()


class Nodes:
    """A material's nodes, wired from Python."""

    def __init__(self, name):
        self.material = bpy.data.materials.new(name)
        self.material.use_nodes = True
        self.tree = self.material.node_tree
        self.tree.nodes.clear()
        self.output = self.add("ShaderNodeOutputMaterial")

    def add(self, kind, inputs=None, **settings):
        node = self.tree.nodes.new(kind)
        for name, value in settings.items():
            setattr(node, name, value)
        for name, value in (inputs or {}).items():
            self.put(node.inputs[name], value)
        return node

    def put(self, socket, value):
        if hasattr(value, "is_output"):
            self.tree.links.new(value, socket)
        elif hasattr(value, "outputs"):
            self.tree.links.new(value.outputs[0], socket)
        else:
            socket.default_value = (*value, 1.0) if socket.type == "RGBA" and len(value) == 3 else value

    def math(self, operation, a, b=0.0, c=0.0, clamp=False):
        return self.add("ShaderNodeMath", {0: a, 1: b, 2: c}, operation=operation, use_clamp=clamp).outputs[0]

    def mix(self, share, a, b):
        """Between two colours."""
        node = self.add("ShaderNodeMixRGB", {"Fac": share})
        for name, value in (("Color1", a), ("Color2", b)):
            self.put(node.inputs[name], value)
        return node.outputs[0]

    def between(self, share, a, b):
        return self.math("MULTIPLY_ADD", share, b - a, a)

    def place(self):
        return self.add("ShaderNodeNewGeometry").outputs["Position"]

    def noise(self, scale, detail=3.0, stretch=None, seed=0.0):
        place = self.place()
        place = self.add("ShaderNodeVectorMath", {0: place, 1: (seed * 3.7, seed * 1.3, seed * 7.1)}, operation="ADD").outputs[0]
        if stretch:
            place = self.add("ShaderNodeVectorMath", {0: place, 1: stretch}, operation="MULTIPLY").outputs[0]
        return self.add("ShaderNodeTexNoise", {"Vector": place, "Scale": scale, "Detail": detail}).outputs["Fac"]

    def value(self, name, field="Fac"):
        return self.add("ShaderNodeAttribute", attribute_name=name).outputs[field]

    def bump(self, height, distance, normal=None):
        node = self.add("ShaderNodeBump", {"Height": height, "Distance": distance, "Strength": 1.0})
        if normal:
            self.put(node.inputs["Normal"], normal)
        return node.outputs[0]

    def tilt(self, normal, much):
        """The eye is near: even a flat sheet shows a bit of the room from edge to edge."""
        w, h = _frame
        part = self.add("ShaderNodeSeparateXYZ", {0: self.place()})
        x = self.math("MULTIPLY", part.outputs[0], much / w)
        y = self.math("MULTIPLY_ADD", part.outputs[1], much / h, much / 2)
        lean = self.add("ShaderNodeCombineXYZ", {0: x, 1: y})
        return self.add("ShaderNodeVectorMath", {0: self.add("ShaderNodeVectorMath", {0: normal, 1: lean}, operation="ADD")}, operation="NORMALIZE").outputs[0]

    def principled(self, **inputs):
        node = self.add("ShaderNodeBsdfPrincipled")
        for name, value in inputs.items():
            self.put(node.inputs[name.replace("_", " ")], value)
        return node

    def done(self, shader):
        self.tree.links.new(shader.outputs[0] if hasattr(shader, "outputs") else shader, self.output.inputs["Surface"])
        return self.material


def metal(finish, rough, patina, grain, seed):
    """Metal worn bright on its edges and dark in its recesses."""
    n = Nodes(finish)
    bright, dark, age = METALS[finish]
    shade = n.add("ShaderNodeAmbientOcclusion", {"Distance": 1.6}, samples=6).outputs["AO"]
    cave = n.math("MULTIPLY_ADD", shade, -1.15, 0.98, clamp=True)
    cloud = n.noise(0.55, 5.0, seed=seed)
    fine = n.noise(3.0, 4.0, seed=seed + 5)
    old = n.math("ADD", n.math("MULTIPLY", n.value("hollow"), 1.0), n.math("MULTIPLY", cave, 0.80))
    old = n.math("ADD", old, n.math("MULTIPLY_ADD", cloud, 0.55, -0.235))
    old = n.math("ADD", old, n.math("MULTIPLY_ADD", fine, 0.22, -0.11))
    old = n.math("MULTIPLY", n.math("SUBTRACT", old, n.math("MULTIPLY", n.value("worn"), 0.5)), patina * age, clamp=True)
    colour = n.mix(old, bright, dark)
    normal = n.bump(n.noise(1.6, 3.0, seed=seed + 1), 0.035 * grain)
    normal = n.bump(n.noise(9.0, 2.0, seed=seed + 2), 0.006 * grain, normal)
    rough = n.math("ADD", n.between(old, rough, 0.55), n.math("MULTIPLY_ADD", fine, 0.12, -0.06))
    return n.done(n.principled(Base_Color=colour, Metallic=n.between(old, 1.0, 0.75), Roughness=rough, Specular=0.3, Normal=n.tilt(normal, 0.34)))


def body(gloss, rough, glow):
    """A coloured body under a polish; its colour comes with the mesh. `glow` is the light that has found its way through it."""
    n = Nodes("body")
    colour = n.value("tint", "Color")
    normal = n.bump(n.noise(2.2, 2.0), 0.004)
    return n.done(n.principled(Base_Color=colour, Roughness=rough, Specular=0.5 * min(1.0, gloss), Clearcoat=max(0.0, min(1.0, gloss - 0.2)),
                               Clearcoat_Roughness=0.03, Emission=colour, Emission_Strength=glow, Normal=normal))


def pearl():
    """Nacre: a soft body with a thin play of rose and green."""
    n = Nodes("pearl")
    facing = n.add("ShaderNodeLayerWeight", {"Blend": 0.42}).outputs["Facing"]
    ramp = n.add("ShaderNodeValToRGB", {"Fac": facing})
    stops = ramp.color_ramp.elements
    tones = ((0.0, (0.86, 0.76, 0.68)), (0.80, (0.72, 0.58, 0.70)), (0.30, (0.85, 0.66, 0.65)), (0.55, (0.64, 0.76, 0.68)))
    for i, (at, colour) in enumerate(tones):
        # A ramp begins with two stops.
        stop = stops[i] if i < 2 else stops.new(at)
        stop.position, stop.color = at, (*colour, 1.0)
    normal = n.bump(n.noise(0.5, 1.0), 0.10)
    return n.done(n.principled(Base_Color=ramp.outputs[0], Metallic=0.35, Roughness=0.26, Clearcoat=0.8, Clearcoat_Roughness=0.06, Normal=normal))


def glass(colour, dense, ior=1.5, rough=0.0, cloud=0.0, milk=0.0, cap=0.0):
    """Clear: light bends in it and takes its colour on the way. What lies in it or behind it is lit through it.

    `milk` is how much of its surface shines white by what has grown into the stone: in clouds, the more the nearer to its root
    (all of it at the top, none from `cap` mm down). So light that would go round and round within comes out."""
    n = Nodes("glass")
    bend = n.add("ShaderNodeBsdfGlass", {"Color": (1, 1, 1), "IOR": ior, "Roughness": rough})
    through = n.add("ShaderNodeBsdfTransparent", {"Color": tuple(0.25 + 0.7 * v for v in colour)})
    way = n.add("ShaderNodeLightPath")
    soft = n.math("MAXIMUM", way.outputs["Is Shadow Ray"], way.outputs["Is Diffuse Ray"])
    surface = n.add("ShaderNodeMixShader", {0: soft, 1: bend, 2: through})
    if milk > 0:
        height = n.add("ShaderNodeSeparateXYZ", {0: n.place()}).outputs[1]
        root = n.math("MULTIPLY_ADD", height, 1.0 / cap, 1.0, clamp=True)
        cloudy = n.math("MULTIPLY", n.noise(0.22, 4.0, seed=3), n.math("MULTIPLY_ADD", root, 3.0, 0.9))
        white = n.add("ShaderNodeBsdfPrincipled", {"Base Color": (0.92, 0.94, 0.98), "Roughness": 0.35, "Emission": (0.9, 0.95, 1.0), "Emission Strength": 0.06})
        surface = n.add("ShaderNodeMixShader", {0: n.math("MULTIPLY", cloudy, milk, clamp=True), 1: surface, 2: white})
    if dense > 0:
        soak = n.add("ShaderNodeVolumeAbsorption", {"Color": colour, "Density": dense})
        volume = soak
        if cloud > 0:
            haze = n.add("ShaderNodeVolumeScatter", {"Color": tuple(min(1.0, 0.4 + v) for v in colour), "Density": cloud})
            volume = n.add("ShaderNodeAddShader", {0: soak, 1: haze})
        n.tree.links.new(volume.outputs[0], n.output.inputs["Volume"])
    return n.done(surface)


def silk(colour, sheen):
    """Threads: bright along a band across them, as silk is; each thread has its own tone."""
    n = Nodes("silk")
    tone = n.value("tone")
    deep = n.mix(tone, tuple(v * 0.45 for v in colour), tuple(min(1.0, v * 1.25 + 0.02) for v in colour))
    base = n.add("ShaderNodeBsdfDiffuse", {"Color": deep})
    pale = tuple(min(1.0, 0.05 + 1.1 * v**0.5) for v in colour)
    gleam = n.add("ShaderNodeBsdfAnisotropic", {"Color": pale, "Roughness": 0.30}, distribution="GGX")
    return n.done(n.add("ShaderNodeMixShader", {0: sheen, 1: base, 2: gleam}))


def foil(rough):
    """Flakes of coloured foil; the colour comes with the mesh."""
    n = Nodes("foil")
    return n.done(n.principled(Base_Color=n.value("tint", "Color"), Metallic=0.85, Roughness=rough))


def lamp(strength):
    """Shines by itself in the mesh's colour."""
    n = Nodes("lamp")
    return n.done(n.add("ShaderNodeEmission", {"Color": n.value("tint", "Color"), "Strength": strength}))


def make(values):
    """The material for a part's description; equal ones are made once a picture."""
    key = repr(sorted(values.items()))
    if key not in _made:
        inputs = {name: tuple(v) if isinstance(v, list) else v for name, v in values.items() if name != "kind"}
        _made[key] = {"metal": metal, "body": body, "pearl": pearl, "glass": glass, "silk": silk, "foil": foil, "lamp": lamp}[values["kind"]](**inputs)
    return _made[key]


def facing():
    """Shines with the direction of the surface: x right, y up, z to the eye, each half of itself plus a half."""
    n = Nodes("facing")
    normal = n.add("ShaderNodeNewGeometry").outputs["Normal"]
    half = n.add("ShaderNodeVectorMath", {0: normal, 1: (0.5, 0.5, 0.5), 2: (0.5, 0.5, 0.5)}, operation="MULTIPLY_ADD")
    return n.done(n.add("ShaderNodeEmission", {"Color": half, "Strength": 1.0}))
