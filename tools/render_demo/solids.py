"""Shapes: boxes, pipes, turned parts, sheets with relief, and many of one shape at once."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence

from render_demo.engine import bpy, np
from render_demo.studio import Vec
from render_demo.untyped import Untyped

__all__ = ["ball", "box", "card", "cylinder", "drape", "fractal", "loft", "many", "mesh", "pipe", "relief", "turned"]

_BOX = np.array([(x, y, z) for x in (-0.5, 0.5) for y in (-0.5, 0.5) for z in (-0.5, 0.5)])
_BOX_FACES = np.array([(0, 1, 3, 2), (4, 6, 7, 5), (0, 4, 5, 1), (2, 3, 7, 6), (0, 2, 6, 4), (1, 5, 7, 3)])


def mesh(
    points: Untyped,
    faces: Untyped,
    look: Untyped,
    *,
    at: Vec = (0, 0, 0),
    turn: Vec = (0, 0, 0),
    smooth: bool = False,
    bevel: float = 0.0,
    uv: Untyped = None,
    tint: Untyped = None,
) -> Untyped:
    """A thing of points (n×3, metres) and faces; *turn* in degrees, *uv* per corner, *tint* 0…1 per face."""
    data = bpy.data.meshes.new("mesh")
    data.from_pydata(np.asarray(points, float).tolist(), [], [list(map(int, f)) for f in faces])
    if uv is not None:
        data.uv_layers.new(name="uv").data.foreach_set("uv", np.asarray(uv, np.float32).ravel())
    if tint is not None:
        data.attributes.new("tint", "FLOAT", "FACE").data.foreach_set("value", np.asarray(tint, np.float32))
    if smooth:
        data.polygons.foreach_set("use_smooth", [True] * len(data.polygons))
    data.materials.append(look)
    thing = bpy.data.objects.new("thing", data)
    thing.location = at
    thing.rotation_euler = [math.radians(t) for t in turn]
    bpy.context.scene.collection.objects.link(thing)
    if bevel:
        edge = thing.modifiers.new("bevel", "BEVEL")
        edge.width, edge.segments, edge.limit_method = bevel, 3, "ANGLE"
        edge.harden_normals = False
    return thing


def box(size: Vec, at: Vec, look: Untyped, *, turn: Vec = (0, 0, 0), bevel: float = 0.0015) -> Untyped:
    """A box of *size* about *at*."""
    return mesh(_BOX * np.array(size), _BOX_FACES, look, at=at, turn=turn, bevel=min(bevel, min(size) * 0.3))


def many(
    places: Untyped,
    sizes: Untyped,
    look: Untyped,
    *,
    turns: Untyped = None,
    seed: int = 0,
    bevel: float = 0.0,
    base: tuple[Untyped, Untyped] | None = None,
    at: Vec = (0, 0, 0),
    turn: Vec = (0, 0, 0),
    smooth: bool = False,
) -> Untyped:
    """Copies of a unit box (or of *base*: points and faces) in one mesh, each with its own tint.

    *places* and *sizes* n×3 in metres, *turns* n×3 in radians (about x, then y, then z).
    """
    points, faces = base or (_BOX, _BOX_FACES)
    places = np.asarray(places, float)
    count = len(places)
    scaled = points[None] * np.broadcast_to(np.asarray(sizes, float), (count, 3))[:, None, :]
    if turns is not None:
        scaled = np.einsum("nij,nkj->nki", _turns(np.broadcast_to(np.asarray(turns, float), (count, 3))), scaled)
    verts = (scaled + places[:, None, :]).reshape(-1, 3)
    indices = (np.asarray(faces)[None] + (np.arange(count) * len(points))[:, None, None]).reshape(-1, len(faces[0]))
    tint = np.repeat(np.random.default_rng(seed).random(count), len(faces))
    return mesh(verts, indices, look, tint=tint, bevel=bevel, at=at, turn=turn, smooth=smooth)


def _turns(angles: Untyped) -> Untyped:
    (cx, cy, cz), (sx, sy, sz) = np.cos(angles).T, np.sin(angles).T
    rows = [
        [cz * cy, cz * sy * sx - sz * cx, cz * sy * cx + sz * sx],
        [sz * cy, sz * sy * sx + cz * cx, sz * sy * cx - cz * sx],
        [-sy, cy * sx, cy * cx],
    ]
    return np.array(rows).transpose(2, 0, 1)


def turned(
    profile: Sequence[tuple[float, float]], look: Untyped, at: Vec, *, turn: Vec = (0, 0, 0), steps: int = 64
) -> Untyped:
    """A part turned on a lathe about its z axis; *profile* is radius and height from bottom to top."""
    angles = np.linspace(0, 2 * np.pi, steps, endpoint=False)
    points = np.array([(r * np.cos(a), r * np.sin(a), z) for r, z in profile for a in angles])
    return mesh(points, _strip(len(profile), steps, closed=True), look, at=at, turn=turn, smooth=True)


def _strip(rows: int, cols: int, *, closed: bool) -> list[tuple[int, int, int, int]]:
    wide = cols if closed else cols - 1
    return [
        (r * cols + c, r * cols + (c + 1) % cols, (r + 1) * cols + (c + 1) % cols, (r + 1) * cols + c)
        for r in range(rows - 1)
        for c in range(wide)
    ]


def cylinder(
    radius: float, height: float, at: Vec, look: Untyped, *, turn: Vec = (0, 0, 0), edge: float = 0.001
) -> Untyped:
    """A closed cylinder about *at*, its axis along z before *turn*, with a soft *edge*."""
    h, e = height / 2, min(edge, radius * 0.4, height * 0.3)
    rim = [(radius - e, -h), (radius - e * 0.3, -h + e * 0.3), (radius, -h + e)]
    profile = [
        (1e-5, -h),
        (radius - e * 1.01, -h),
        *rim,
        (radius, h - e),
        (radius - e * 0.3, h - e * 0.3),
        (radius - e, h),
    ]
    profile += [(radius - e * 1.01, h), (1e-5, h)]
    return turned(profile, look, at, turn=turn)


def ball(radius: float, at: Vec, look: Untyped, *, squash: float = 1.0) -> Untyped:
    """A ball, flattened along z by *squash*."""
    angles = np.linspace(-np.pi / 2, np.pi / 2, 24)
    return turned([(max(1e-5, radius * np.cos(a)), radius * squash * np.sin(a)) for a in angles], look, at, steps=40)


def pipe(path: Sequence[Vec], radius: float, look: Untyped, *, soft: bool = True) -> Untyped:
    """A round pipe, wire or hose along *path*; *soft* bends it smoothly."""
    data = bpy.data.curves.new("pipe", "CURVE")
    data.dimensions, data.bevel_depth, data.bevel_resolution, data.use_fill_caps = "3D", radius, 6, True
    line = data.splines.new("NURBS" if soft else "POLY")
    line.points.add(len(path) - 1)
    for point, (x, y, z) in zip(line.points, path, strict=True):
        point.co = (x, y, z, 1)
    if soft:
        line.use_endpoint_u, line.order_u, line.resolution_u = True, 3, 10
    data.materials.append(look)
    thing = bpy.data.objects.new("pipe", data)
    bpy.context.scene.collection.objects.link(thing)
    return thing


def loft(rings: Sequence[Untyped], look: Untyped, *, at: Vec = (0, 0, 0), turn: Vec = (0, 0, 0)) -> Untyped:
    """A skin over rings of equally many points, closed at both ends: a bowl, a pedestal, a bag."""
    steps = len(rings[0])
    faces: list[Untyped] = [*_strip(len(rings), steps, closed=True)]
    faces += [tuple(range(steps))[::-1], tuple(range((len(rings) - 1) * steps, len(rings) * steps))]
    return mesh(np.concatenate([np.asarray(r, float) for r in rings]), faces, look, at=at, turn=turn, smooth=True)


def relief(
    wide: float,
    deep: float,
    height: Untyped,
    look: Untyped,
    *,
    at: Vec = (0, 0, 0),
    turn: Vec = (0, 0, 0),
    tint: Untyped = None,
) -> Untyped:
    """A sheet in x and y lifted to *height* (rows along y, columns along x, metres). *tint*: one value a point."""
    rows, cols = height.shape
    xs, ys = np.meshgrid(np.linspace(-wide / 2, wide / 2, cols), np.linspace(-deep / 2, deep / 2, rows))
    points = np.stack([xs, ys, height], axis=-1).reshape(-1, 3)
    cells = None if tint is None else np.asarray(tint)[:-1, :-1].ravel()
    return mesh(points, _strip(rows, cols, closed=False), look, at=at, turn=turn, smooth=True, tint=cells)


def drape(height: Untyped, wide: float, deep: float) -> Callable[[Untyped, Untyped], Untyped]:
    """The height of a relief at any x, y, to set other things upon it."""
    rows, cols = height.shape

    def at(x: Untyped, y: Untyped) -> Untyped:
        c = np.clip(((np.asarray(x) / wide + 0.5) * (cols - 1)).astype(int), 0, cols - 1)
        r = np.clip(((np.asarray(y) / deep + 0.5) * (rows - 1)).astype(int), 0, rows - 1)
        return height[r, c]

    return at


def fractal(rows: int, cols: int, seed: int, roughness: float = 2.0, low: int = 1) -> Untyped:
    """Random relief of unit spread whose power falls with frequency to the power *roughness*; *low* drops broad swells."""
    spectrum = np.fft.rfft2(np.random.default_rng(seed).standard_normal((rows, cols)))
    fy, fx = np.fft.fftfreq(rows)[:, None] * rows, np.fft.rfftfreq(cols)[None] * cols
    f = np.hypot(fx * max(rows, cols) / cols, fy * max(rows, cols) / rows)
    with np.errstate(divide="ignore"):
        gain = np.where(f >= low, f**-roughness, 0.0)
    field = np.fft.irfft2(spectrum * gain, (rows, cols))
    return field / field.std()


def card(wide: float, high: float, look: Untyped, at: Vec, turn: Vec = (0, 0, 0)) -> Untyped:
    """A flat picture facing −y, *wide* along x and *high* along z before *turn*."""
    x, z = wide / 2, high / 2
    return mesh(
        [(-x, 0, -z), (x, 0, -z), (x, 0, z), (-x, 0, z)],
        [(0, 1, 2, 3)],
        look,
        at=at,
        turn=turn,
        uv=[(0, 0), (1, 0), (1, 1), (0, 1)],
    )
