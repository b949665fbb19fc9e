"""Surfaces: what things are made of, drawn by noise rather than by photographs."""

from __future__ import annotations

from render_demo.engine import bpy, np
from render_demo.studio import Vec
from render_demo.untyped import Untyped

__all__ = ["Look", "clear_glass", "glow", "metal", "paint", "picture", "rough", "tinted", "water", "wood"]


class Look:
    """A material under construction: each method adds a node and gives the socket that comes out of it."""

    def __init__(self, name: str) -> None:
        self.material = bpy.data.materials.new(name)
        self.material.use_nodes = True
        self.tree = self.material.node_tree
        self.shader = self.tree.nodes["Principled BSDF"]

    def add(self, kind: str, **inputs: Untyped) -> Untyped:
        """A node of Blender's *kind* with its inputs set or linked by position (``i0``) or name."""
        node = self.tree.nodes.new(f"ShaderNode{kind}")
        for key, value in inputs.items():
            name = key.replace("_", " ")
            self.put(node.inputs[int(key[1:])] if key[1:].isdigit() else node.inputs[name], value)
        return node

    def put(self, socket: Untyped, value: Untyped) -> None:
        """Set *socket* to a value, or link it when the value is a socket."""
        if hasattr(value, "is_output"):
            self.tree.links.new(value, socket)
        elif isinstance(value, tuple) and len(value) == 3 and socket.type == "RGBA":
            socket.default_value = (*value, 1)
        else:
            socket.default_value = value

    def where(self, scale: Vec = (1, 1, 1)) -> Untyped:
        """The point on the thing in its own metres, stretched by *scale* and moved by chance from thing to thing."""
        chance = self.add("ObjectInfo").outputs["Random"]
        moved = self.add("VectorMath", i0=self.add("TexCoord").outputs["Object"], i1=scale)
        moved.operation = "MULTIPLY"
        shift = self.add("VectorMath", i0=moved.outputs[0])
        self.put(shift.inputs[1], self.math("MULTIPLY", chance, 31.0))
        return shift.outputs[0]

    def noise(
        self, scale: float, *, at: Untyped = None, detail: float = 6.0, harsh: float = 0.6, bent: float = 0.0
    ) -> Untyped:
        """Fractal noise 0…1 with *scale* swells a metre."""
        node = self.add(
            "TexNoise", Vector=at or self.where(), Scale=scale, Detail=detail, Roughness=harsh, Distortion=bent
        )
        return node.outputs[0]

    def ramp(self, value: Untyped, *stops: tuple[float, Vec]) -> Untyped:
        """Colours along a value."""
        node = self.add("ValToRGB", i0=value)
        marks = node.color_ramp.elements
        for position, _ in stops[1:-1]:
            marks.new(position)
        # Blender keeps the marks in order of position, so they are set from the left once all are there.
        for index, (position, colour) in enumerate(sorted(stops, key=lambda stop: stop[0])):
            marks[index].position, marks[index].color = position, (*colour, 1)
        return node.outputs[0]

    def level(self, value: Untyped, low: float, high: float) -> Untyped:
        """A value stretched so that *low* is 0 and *high* is 1, cut off beyond."""
        node = self.add("MapRange", i0=value)
        node.inputs["From Min"].default_value, node.inputs["From Max"].default_value = low, high
        return node.outputs[0]

    def blend(self, share: Untyped, a: Untyped, b: Untyped, how: str = "MIX") -> Untyped:
        """Colour *a* turning to *b* by *share*."""
        node = self.tree.nodes.new("ShaderNodeMix")
        node.data_type, node.blend_type = "RGBA", how
        for index, value in ((0, share), (6, a), (7, b)):
            self.put(node.inputs[index], value)
        return node.outputs[2]

    def math(self, how: str, a: Untyped, b: Untyped = 0.0) -> Untyped:
        """Arithmetic on two values."""
        node = self.add("Math", i0=a, i1=b)
        node.operation = how
        return node.outputs[0]

    def tint(self) -> Untyped:
        """The chance value of one copy among many."""
        node = self.add("Attribute")
        node.attribute_name = "tint"
        return node.outputs["Fac"]

    def image(self, drawing: Untyped) -> Untyped:
        """A Pillow drawing laid on by its UV corners; gives the node (colour, alpha)."""
        pixels = np.asarray(drawing.convert("RGBA"), np.float32)[::-1] / 255
        store = bpy.data.images.new("drawing", drawing.width, drawing.height, alpha=True)
        store.pixels.foreach_set(pixels.ravel())
        store.pack()
        node = self.add("TexImage")
        node.image = store
        node.extension = "EXTEND"
        return node

    def bump(self, height: Untyped, metres: float, *, after: Untyped = None) -> Untyped:
        """Small relief of *metres* from a height 0…1."""
        node = self.add("Bump", Height=height, Strength=1.0, Distance=metres)
        if after is not None:
            self.put(node.inputs["Normal"], after)
        return node.outputs[0]

    def done(self, colour: Untyped, roughness: Untyped = 0.6, **more: Untyped) -> Untyped:
        """Close the material; *more* are inputs of the shader by name."""
        self.put(self.shader.inputs["Base Color"], colour)
        self.put(self.shader.inputs["Roughness"], roughness)
        for key, value in more.items():
            self.put(self.shader.inputs[key.replace("_", " ")], value)
        return self.material


def paint(colour: Vec, roughness: float = 0.45, *, orange_peel: float = 0.00015, dirt: float = 0.12) -> Untyped:
    """Painted or moulded stuff: an even colour, faintly dirty, with a fine skin."""
    look = Look("paint")
    soil = look.level(look.noise(5.0, harsh=0.7), 0.45, 0.85)
    dark = tuple(c * 0.55 for c in colour)
    shade = look.blend(look.math("MULTIPLY", soil, dirt * 2), colour, (dark[0], dark[1] * 0.95, dark[2] * 0.85))
    return look.done(shade, roughness, Normal=look.bump(look.noise(260.0, detail=2), orange_peel))


def rough(
    light: Vec, dark: Vec, *, scale: float = 8.0, grain: float = 180.0, relief: float = 0.002, roughness: float = 0.85
) -> Untyped:
    """Stone, soil, plaster, concrete: two colours in cloudy patches, with a grain of its own relief (metres)."""
    look = Look("rough")
    cloud = look.noise(scale, harsh=0.65)
    fine = look.noise(grain, detail=4, harsh=0.7)
    shade = look.ramp(cloud, (0.32, dark), (0.68, light))
    shade = look.blend(0.55, shade, look.ramp(fine, (0.3, (0.25, 0.25, 0.25)), (0.7, (0.78, 0.78, 0.78))), "OVERLAY")
    return look.done(shade, roughness, Normal=look.bump(fine, relief, after=look.bump(cloud, relief * 2)))


def wood(
    light: Vec = (0.62, 0.42, 0.24),
    dark: Vec = (0.36, 0.21, 0.10),
    *,
    roughness: float = 0.6,
    along: int = 0,
    worn: float = 0.0,
) -> Untyped:
    """Sawn timber with its grain along axis *along*; *worn* 0…1 greys it in patches."""
    look = Look("wood")
    stretch = [14.0, 14.0, 14.0]
    stretch[along] = 0.7
    place = look.where((stretch[0], stretch[1], stretch[2]))
    rings = look.noise(2.2, at=place, detail=3, harsh=0.5, bent=0.6)
    fibre = look.noise(26.0, at=place, detail=3, harsh=0.6)
    between = ((light[0] * 2 + dark[0]) / 3, (light[1] * 2 + dark[1]) / 3, (light[2] * 2 + dark[2]) / 3)
    bands = look.math("FRACT", look.math("MULTIPLY", rings, 6.0))
    shade = look.ramp(bands, (0.0, light), (0.55, between), (1.0, dark))
    shade = look.blend(0.35, shade, look.ramp(fibre, (0.3, dark), (0.7, light)))
    if worn:
        patch = look.level(look.noise(4.0, harsh=0.7), 0.62 - 0.3 * worn, 0.75 - 0.2 * worn)
        shade = look.blend(look.math("MULTIPLY", patch, 0.9), shade, (0.27, 0.25, 0.22))
    tone = look.ramp(look.add("ObjectInfo").outputs["Random"], (0.0, (0.72, 0.70, 0.68)), (1.0, (1.1, 1.08, 1.05)))
    return look.done(look.blend(1.0, shade, tone, "MULTIPLY"), roughness, Normal=look.bump(fibre, 0.0006))


def tinted(
    *stops: tuple[float, Vec], roughness: float = 0.8, grain: float = 120.0, relief: float = 0.001, wet: float = 0.0
) -> Untyped:
    """For many copies: each takes its colour along *stops*; *wet* 0…1 makes glossy patches."""
    look = Look("tinted")
    fine = look.noise(grain, detail=5, harsh=0.75)
    shade = look.ramp(look.tint(), *stops)
    shade = look.blend(0.5, shade, look.ramp(fine, (0.3, (0.28, 0.28, 0.28)), (0.7, (0.75, 0.75, 0.75))), "OVERLAY")
    gloss: Untyped = roughness
    if wet:
        gloss = look.ramp(look.noise(3.0), (0.4, (roughness,) * 3), (0.6, (roughness * (1 - wet),) * 3))
    return look.done(shade, gloss, Normal=look.bump(fine, relief))


def metal(
    colour: Vec = (0.72, 0.73, 0.74), roughness: float = 0.32, *, rust: float = 0.0, dents: float = 0.0
) -> Untyped:
    """Bare or plated metal, smeared by handling; *rust* 0…1; *dents* metres."""
    look = Look("metal")
    smear = look.noise(14.0, harsh=0.7)
    gloss = look.ramp(smear, (0.3, (roughness * 0.7,) * 3), (0.7, (min(1.0, roughness * 1.5),) * 3))
    bump = look.bump(look.noise(3.0, detail=2), dents) if dents else look.bump(look.noise(300.0, detail=2), 0.00008)
    if not rust:
        return look.done(colour, gloss, Metallic=1.0, Normal=bump)
    spots = look.level(look.noise(22.0, harsh=0.8), 0.72 - 0.35 * rust, 0.78 - 0.3 * rust)
    brown = look.ramp(look.noise(90.0), (0.3, (0.10, 0.035, 0.012)), (0.7, (0.30, 0.11, 0.035)))
    return look.done(
        look.blend(spots, colour, brown),
        look.blend(spots, gloss, (0.9, 0.9, 0.9)),
        Metallic=look.math("SUBTRACT", 1.0, spots),
        Normal=look.bump(spots, 0.0006, after=bump),
    )


def picture(drawing: Untyped, roughness: float = 0.4, *, metallic: float = 0.0, glow_by: float = 0.0) -> Untyped:
    """A drawn label, dial or scale; transparent where the drawing is."""
    look = Look("picture")
    laid = look.image(drawing)
    more: dict[str, Untyped] = {"Alpha": laid.outputs["Alpha"], "Metallic": metallic}
    if glow_by:
        more |= {"Emission_Color": laid.outputs["Color"], "Emission_Strength": glow_by}
    skin = look.bump(look.noise(40.0, detail=3), 0.00025)
    return look.done(
        laid.outputs["Color"],
        look.ramp(look.noise(20.0), (0.3, (roughness * 0.7,) * 3), (0.7, (roughness * 1.3,) * 3)),
        Normal=skin,
        **more,
    )


def clear_glass(tint: Vec = (0.96, 0.98, 0.97), roughness: float = 0.0) -> Untyped:
    """Window glass that lets light and shadow rays through."""
    look = Look("glass")
    through = look.add("BsdfTransparent", i0=tint)
    shine = look.add("BsdfGlossy", Roughness=roughness)
    edge = look.add("Fresnel", IOR=1.45)
    both = look.add("MixShader", i0=edge.outputs[0], i1=through.outputs[0], i2=shine.outputs[0])
    look.tree.links.new(both.outputs[0], look.tree.nodes["Material Output"].inputs["Surface"])
    return look.material


def water(colour: Vec = (0.05, 0.045, 0.03), ripple: float = 0.0004) -> Untyped:
    """Standing water: dark, mirror-like, hardly moving."""
    look = Look("water")
    return look.done(colour, 0.03, Normal=look.bump(look.noise(9.0, detail=2), ripple), Specular_IOR_Level=0.8)


def glow(colour: Vec, strength: float) -> Untyped:
    """Something that shines by itself."""
    look = Look("glow")
    return look.done((0.02, 0.02, 0.02), 0.4, Emission_Color=(*colour, 1.0), Emission_Strength=strength)
