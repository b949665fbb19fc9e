"""The stage: an empty scene, its light, a hand-held camera, and the exposure of the finished frame."""

from __future__ import annotations

import math
from pathlib import Path

from render_demo.engine import bpy, mathutils, np
from render_demo.untyped import Untyped

__all__ = ["Vec", "aim", "clear", "lamp", "overcast", "panel_light", "shoot", "sun", "torch", "world"]

Vec = tuple[float, float, float]


def clear() -> None:
    """Start from nothing, with Cycles on the processor and its denoiser."""
    bpy.ops.wm.read_factory_settings(use_empty=True)
    scene = bpy.context.scene
    scene.render.engine = "CYCLES"
    scene.cycles.device = "CPU"
    scene.cycles.use_denoising = True
    scene.cycles.denoiser = "OPENIMAGEDENOISE"
    scene.cycles.use_adaptive_sampling = True
    scene.cycles.adaptive_threshold = 0.06
    scene.cycles.max_bounces = 5
    scene.cycles.diffuse_bounces = 2
    scene.cycles.transparent_max_bounces = 12
    scene.cycles.caustics_reflective = False
    scene.cycles.caustics_refractive = False
    scene.cycles.sample_clamp_indirect = 4.0
    scene.view_settings.view_transform = "AgX"
    scene.view_settings.look = "AgX - High Contrast"


def _link(name: str, data: Untyped, at: Vec) -> Untyped:
    thing = bpy.data.objects.new(name, data)
    thing.location = at
    bpy.context.scene.collection.objects.link(thing)
    return thing


def _point(thing: Untyped, target: Vec, roll: float = 0.0) -> None:
    way = mathutils.Vector(target) - thing.location
    turn = way.to_track_quat("-Z", "Y").to_matrix() @ mathutils.Matrix.Rotation(math.radians(roll), 3, "Z")
    thing.rotation_euler = turn.to_euler()


def aim(
    at: Vec, target: Vec, *, lens: float = 27.0, roll: float = 0.6, fstop: float = 0.0, focus: Vec | None = None
) -> None:
    """A camera held at *at* and pointed at *target*; *lens* in mm for a 36 mm frame, *fstop* 0 is all sharp."""
    data = bpy.data.cameras.new("camera")
    data.lens = lens
    data.clip_start = 0.005
    camera = _link("camera", data, at)
    _point(camera, target, roll)
    if fstop:
        data.dof.use_dof = True
        data.dof.aperture_fstop = fstop
        data.dof.focus_distance = math.dist(at, focus or target)
    bpy.context.scene.camera = camera


def world(zenith: Vec, horizon: Vec, ground: Vec, strength: float) -> None:
    """Light from all round: three colours from straight up to straight down."""
    sky = bpy.data.worlds.new("world")
    bpy.context.scene.world = sky
    sky.use_nodes = True
    tree = sky.node_tree
    back = tree.nodes["Background"]
    where = tree.nodes.new("ShaderNodeTexCoord")
    split = tree.nodes.new("ShaderNodeSeparateXYZ")
    scale = tree.nodes.new("ShaderNodeMapRange")
    ramp = tree.nodes.new("ShaderNodeValToRGB")
    tree.links.new(where.outputs["Generated"], split.inputs[0])
    scale.inputs["From Min"].default_value = -1.0
    tree.links.new(split.outputs[2], scale.inputs["Value"])
    tree.links.new(scale.outputs[0], ramp.inputs[0])
    stops = ramp.color_ramp.elements
    stops[0].position, stops[0].color = 0.47, (*ground, 1)
    stops[1].position, stops[1].color = 0.95, (*zenith, 1)
    middle = stops.new(0.52)
    middle.color = (*horizon, 1)
    tree.links.new(ramp.outputs[0], back.inputs[0])
    back.inputs[1].default_value = strength


def overcast(strength: float = 1.0) -> None:
    """A grey October sky with the sun only guessed behind the cloud."""
    world((0.93, 0.97, 1.04), (0.72, 0.77, 0.83), (0.10, 0.10, 0.09), strength)
    sun((-0.5, 0.6, -1.0), 0.9 * strength, angle=40.0)


def sun(way: Vec, strength: float, *, angle: float = 3.0, colour: Vec = (1.0, 0.97, 0.92)) -> None:
    """Sunlight travelling along *way*; *angle* in degrees makes its shadows soft."""
    data = bpy.data.lights.new("sun", "SUN")
    data.energy, data.angle, data.color = strength, math.radians(angle), colour
    thing = _link("sun", data, (0, 0, 10))
    _point(thing, (way[0], way[1], 10 + way[2]))


def panel_light(at: Vec, target: Vec, size: float, watts: float, colour: Vec = (1.0, 0.93, 0.84)) -> None:
    """A soft square light of *size* metres: a window, a ceiling light."""
    data = bpy.data.lights.new("panel", "AREA")
    data.energy, data.size, data.color = watts, size, colour
    _point(_link("panel", data, at), target)


def lamp(at: Vec, watts: float, radius: float = 0.04, colour: Vec = (1.0, 0.9, 0.75)) -> None:
    """A bulb."""
    data = bpy.data.lights.new("lamp", "POINT")
    data.energy, data.shadow_soft_size, data.color = watts, radius, colour
    _link("lamp", data, at)


def torch(at: Vec, target: Vec, watts: float, *, spread: float = 75.0, radius: float = 0.025) -> None:
    """A hand torch or the light of the phone: a cone of *spread* degrees with a soft edge, in near darkness."""
    data = bpy.data.lights.new("torch", "SPOT")
    data.energy, data.spot_size, data.spot_blend = watts, math.radians(spread), 0.85
    data.shadow_soft_size, data.color = radius, (1.0, 0.97, 0.93)
    _point(_link("torch", data, at), target)


def shoot(path: Path, *, samples: int, size: tuple[int, int], key: float = 0.30) -> None:
    """Render, expose so that the middle tones lie at *key* of white, write an 8-bit PNG to *path*."""
    scene = bpy.context.scene
    scene.cycles.samples = samples
    scene.render.resolution_x, scene.render.resolution_y = size
    scene.render.resolution_percentage = 100
    scene.render.threads_mode = "FIXED"
    scene.render.threads = 2
    raw = path.with_suffix(".exr")
    scene.render.image_settings.file_format = "OPEN_EXR"
    scene.render.filepath = str(raw)
    bpy.ops.render.render(write_still=True)
    frame = bpy.data.images.load(str(raw))
    values = np.array(frame.pixels[:], dtype=np.float32).reshape(size[1], size[0], 4)[..., :3]
    light = np.clip(values @ np.array([0.2126, 0.7152, 0.0722]), 1e-5, None)
    # The meter looks mostly at the middle of the frame, as a phone's does.
    rows, cols = np.mgrid[-1 : 1 : size[1] * 1j, -1 : 1 : size[0] * 1j]
    weight = np.exp(-1.2 * (rows**2 + cols**2))
    mean = float(np.exp((np.log(light) * weight).sum() / weight.sum()))
    bright = float(np.percentile(light, 97.0))
    scene.view_settings.exposure = float(min(np.log2(key / mean), np.log2(3.2 / bright)))

    scene.render.image_settings.file_format = "PNG"
    scene.render.image_settings.color_depth = "8"
    scene.render.image_settings.color_mode = "RGB"
    frame.save_render(str(path), scene=scene)
    raw.unlink()
