"""Living room and entry stair: firebox, window pane, risers."""

from __future__ import annotations

from render_demo.engine import INCH, np
from render_demo.parts import bricks, clumps, conifer, steel_tape
from render_demo.solids import box, fractal, many, mesh, pipe
from render_demo.studio import aim, overcast, panel_light, torch, world
from render_demo.surfaces import Look, clear_glass, metal, paint, rough, tinted, wood

__all__ = ["p18", "p19", "p20"]


def p18() -> None:
    """The back of the firebox: a crack steps down through the fire brick, sooty above."""
    look = Look("firebrick")
    grain = look.noise(120.0, harsh=0.75)
    base = look.ramp(look.tint(), (0, (0.34, 0.25, 0.16)), (1, (0.48, 0.38, 0.26)))
    split = look.add("SeparateXYZ", i0=look.add("TexCoord").outputs["Object"])
    height = look.math(
        "ADD", split.outputs[2], look.math("MULTIPLY", look.math("SUBTRACT", look.noise(5.0, harsh=0.7), 0.5), 0.55)
    )
    soot = look.level(height, 0.12, 0.50)
    shade = look.blend(
        soot,
        look.blend(0.5, base, look.ramp(grain, (0.3, (0.25,) * 3), (0.7, (0.75,) * 3)), "OVERLAY"),
        (0.012, 0.011, 0.010),
    )
    brick = look.done(shade, 0.95, Normal=look.bump(grain, 0.002))
    joint = Look("joint")
    split = joint.add("SeparateXYZ", i0=joint.add("TexCoord").outputs["Object"])
    soot = joint.level(
        joint.math("ADD", split.outputs[2], joint.math("MULTIPLY", joint.math("SUBTRACT", joint.noise(5.0), 0.5), 0.5)),
        0.12,
        0.5,
    )
    mortar = joint.done(
        joint.blend(soot, (0.36, 0.32, 0.27), (0.02, 0.019, 0.018)), 0.95, Normal=joint.bump(joint.noise(200.0), 0.002)
    )
    bricks(1.1, 0.95, brick, mortar, at=(0, 0.0, 0), joint=0.006, brick=(0.228, 0.064), seed=7)
    bricks(0.7, 0.95, brick, mortar, at=(-0.52, -0.34, 0), turn=(0, 0, 62), joint=0.006, brick=(0.228, 0.064), seed=8)
    bricks(0.7, 0.95, brick, mortar, at=(0.52, -0.34, 0), turn=(0, 0, -62), joint=0.006, brick=(0.228, 0.064), seed=9)
    # The crack: a jagged dark slit in front of the brick faces, wider in the middle, with chipped edges.
    rng = np.random.default_rng(15)
    steps = 90
    z = np.linspace(0.64, 0.06, steps)
    x = 0.10 + np.cumsum(rng.normal(-0.0012, 0.0042, steps)) + 0.05 * np.sin(np.linspace(0, 7, steps))
    gap = 0.0018 + 0.0034 * np.sin(np.linspace(0.15, np.pi, steps)) * (1 + 0.5 * rng.normal(0, 0.4, steps)).clip(0.3)
    y = -0.0482
    points = [(a + s * g, y, c) for a, c, g in zip(x, z, gap, strict=True) for s in (-1, 1)]
    black = paint((0.004, 0.004, 0.004), 1.0)
    mesh(points, [(2 * k, 2 * k + 1, 2 * k + 3, 2 * k + 2) for k in range(steps - 1)], black)
    pale = tinted((0, (0.42, 0.33, 0.22)), (1, (0.56, 0.46, 0.33)), roughness=1.0, grain=400)
    pick = rng.integers(52, steps - 2, 90)
    side = rng.choice([-1, 1], 90)
    clumps(
        np.stack([x[pick] + side * (gap[pick] + 0.002), np.full(90, -0.046), z[pick] + rng.normal(0, 0.003, 90)], -1),
        pale,
        size=0.0062,
        flat=1.0,
    )
    ash = rough((0.34, 0.33, 0.32), (0.16, 0.155, 0.15), scale=12, grain=160, relief=0.006)
    from render_demo.solids import relief

    relief(1.8, 1.2, 0.012 + 0.010 * fractal(120, 160, 4, 1.5, low=2), ash, at=(0, -0.6, -0.005))
    iron = paint((0.02, 0.02, 0.02), 0.55)
    for gx in (-0.27, -0.18, -0.09, 0.0, 0.09, 0.18):
        pipe([(gx, -0.52, 0.16), (gx, -0.50, 0.09), (gx, -0.20, 0.09), (gx, -0.16, 0.10)], 0.009, iron)
    pipe([(-0.33, -0.46, 0.09), (0.24, -0.46, 0.09)], 0.009, iron, soft=False)
    pipe([(-0.33, -0.24, 0.09), (0.24, -0.24, 0.09)], 0.009, iron, soft=False)
    char = tinted((0, (0.008, 0.008, 0.008)), (1, (0.045, 0.042, 0.04)), roughness=1)
    many([(rng.normal(-0.1, 0.16), rng.normal(-0.32, 0.10), 0.02 + 0.01 * rng.random()) for _ in range(60)], (0.05, 0.03, 0.025), char,
         turns=rng.normal(0, 1, (60, 3)), bevel=0.006)  # fmt: skip
    world((0.4, 0.4, 0.4), (0.3, 0.3, 0.3), (0.1, 0.1, 0.1), 0.03)
    torch((0.12, -0.85, 0.62), (0.06, 0, 0.34), 16, spread=72)
    panel_light((-0.3, -2.0, 1.2), (0, 0, 0.3), 1.0, 6)
    aim((-0.05, -0.80, 0.50), (0.05, 0, 0.335), lens=28, roll=1.5)


def p19() -> None:
    """Two panes of the living room window: the right one is fogged between its sheets."""
    white = paint((0.74, 0.74, 0.70), 0.35)
    wall = rough((0.62, 0.59, 0.52), (0.57, 0.54, 0.48), scale=2, grain=140, relief=0.0007)
    w, h = 0.62, 0.92
    for x, z, sx, sz in ((0, 1.09, 8, 1.2), (0, -1.09, 8, 1.2), (-2.66, 0, 4.0, 0.98), (2.66, 0, 4.0, 0.98)):
        box((sx, 0.12, sz), (x, 0.06, z), wall, bevel=0)
    for x in (-0.675, 0.675):
        box((0.075, 0.028, 1.095), (x, -0.01, 0), white, bevel=0.004)
    for z in (-0.51, 0.51):
        box(
            (1.45, 0.03 if z > 0 else 0.10, 0.075 if z > 0 else 0.03),
            (0, -0.01 if z > 0 else -0.04, z),
            white,
            bevel=0.004,
        )
    for x in (-0.33, 0.33):
        for dx in (-w / 2, w / 2):
            box((0.042, 0.045, h + 0.05), (x + dx, 0.06, 0), white, bevel=0.004)
        for dz in (-h / 2, h / 2):
            box((w - 0.03, 0.040, 0.05), (x, 0.06, dz), white, bevel=0.004)
    box((w, 0.003, h), (-0.33, 0.05, 0), clear_glass(), bevel=0)
    haze = Look("haze")
    place = haze.where((1.0, 1.0, 0.55))
    cloud = haze.noise(3.2, at=place, harsh=0.7, bent=0.3)
    runs = haze.noise(9.0, at=haze.where((4.0, 1.0, 0.25)), detail=3)
    spots = haze.add("TexVoronoi", Vector=haze.where(), Scale=130.0).outputs[0]
    beads = haze.level(spots, 0.34, 0.20)
    amount = haze.math(
        "ADD", haze.math("MULTIPLY", haze.level(cloud, 0.24, 0.50), 0.74), haze.math("MULTIPLY", beads, 0.16)
    )
    amount = haze.math("SUBTRACT", amount, haze.math("MULTIPLY", haze.level(runs, 0.60, 0.66), 0.4))
    amount = haze.math("MINIMUM", haze.math("MAXIMUM", amount, 0.02), 0.92)
    clear, milk = haze.add("BsdfTransparent"), haze.add("BsdfTranslucent", i0=(0.86, 0.89, 0.90))
    both = haze.add("MixShader", i0=amount, i1=clear.outputs[0], i2=milk.outputs[0])
    haze.tree.links.new(both.outputs[0], haze.tree.nodes["Material Output"].inputs["Surface"])
    mesh(
        [(-w / 2, 0, -h / 2), (w / 2, 0, -h / 2), (w / 2, 0, h / 2), (-w / 2, 0, h / 2)],
        [(0, 1, 2, 3)],
        haze.material,
        at=(0.33, 0.055, 0),
    )
    box((w, 0.003, h), (0.33, 0.05, 0), clear_glass(), bevel=0)
    box((0.05, 0.02, 0.018), (-0.02, 0.03, -0.10), metal((0.6, 0.58, 0.5), 0.3), bevel=0.005)
    lawn = rough((0.10, 0.14, 0.035), (0.05, 0.075, 0.02), scale=2.0, grain=20.0, relief=0.02)
    box((60, 40, 0.1), (0, 22, -1.5), lawn, bevel=0)
    for i, (x, y, z) in enumerate(
        ((-5, 13, 11), (-1.8, 16, 13), (1.5, 12, 10), (4.6, 15, 12), (-8.5, 16, 13), (8, 14, 12))
    ):
        conifer((x, y, -1.5), z, seed=i + 20)
    box((9, 0.1, 1.6), (2, 9, -0.75), wood((0.32, 0.27, 0.22), (0.2, 0.17, 0.14)), bevel=0)
    overcast(1.0)
    panel_light((-0.8, -2.2, 2.6), (0, 0, 0), 1.0, 80)
    aim((-0.20, -1.22, 0.14), (0.06, 0, 0.0), lens=27, roll=-1.0)


def p20() -> None:
    """Entry stair: a tape stands against one riser."""
    tread = wood((0.44, 0.27, 0.14), (0.27, 0.15, 0.07), roughness=0.3)
    white = paint((0.72, 0.71, 0.67), 0.4, dirt=0.4)
    wall = rough((0.60, 0.57, 0.50), (0.55, 0.52, 0.46), scale=2, grain=140, relief=0.0007)
    rises = [7.75, 7.75, 8.25, 7.75, 7.75]
    z = 0.0
    for i, rise in enumerate(rises):
        y = i * 0.262
        box((1.15, 0.018, rise * INCH - 0.006), (0, y, z + rise * INCH / 2 - 0.003), white, bevel=0.001)
        z += rise * INCH
        box((1.15, 0.292, 0.028), (0, y + 0.118, z - 0.014), tread, bevel=0.009)
    box((0.1, 4, 4), (0.63, 1, 1.2), wall, bevel=0)
    box((0.022, 3.6, 0.24), (0.572, 0.9, 0.70), white, turn=(37.2, 0, 0), bevel=0.004)
    box((3, 0.1, 3), (0, 1.7, 1.8), wall, bevel=0)
    floor = wood((0.42, 0.26, 0.14), (0.26, 0.15, 0.07), roughness=0.3)
    for i in range(14):
        box((2.6, 0.082, 0.02), (0, -0.06 - i * 0.0835, -0.01), floor, bevel=0.001)
    third = (rises[0] + rises[1]) * INCH
    y = 2 * 0.262 - 0.034
    steel_tape(9.5, (0.06, y, third), turn=(0, -90, 0), upright=True)
    box((0.030, 0.014, 0.012), (0.055, y - 0.004, third + 0.004), metal(), bevel=0.001)
    box(
        (0.065, 0.038, 0.072),
        (0.058, y - 0.012, third + 9.5 * INCH + 0.030),
        paint((0.05, 0.05, 0.05), 0.4),
        bevel=0.012,
    )
    box(
        (0.036, 0.040, 0.04),
        (0.058, y - 0.012, third + 9.5 * INCH + 0.030),
        paint((0.72, 0.50, 0.03), 0.4),
        bevel=0.008,
    )
    cedar = wood((0.45, 0.28, 0.15), (0.28, 0.16, 0.08), along=2)
    for i in range(5):
        for k in (0.06, 0.19):
            box((0.03, 0.03, 0.85), (-0.53, i * 0.262 + k, (i + 1) * 0.2 + 0.42), cedar, bevel=0.003)
    world((0.55, 0.53, 0.50), (0.5, 0.48, 0.45), (0.25, 0.22, 0.18), 0.28)
    panel_light((-0.9, -1.5, 2.3), (0, 0.4, 0.4), 1.0, 34)
    panel_light((0.4, -0.5, 1.9), (0, 0.6, 0.4), 0.4, 8)
    aim((-0.24, -0.36, 0.98), (0.05, 0.5, 0.50), lens=28, roll=-1.5)
