"""Bedrooms and baths: the toilet's base, the stained ceiling, the lower bedroom's window."""

from __future__ import annotations

from render_demo.engine import INCH, np
from render_demo.parts import clumps, conifer, steel_tape
from render_demo.solids import box, cylinder, loft, many, pipe, turned
from render_demo.studio import Vec, aim, overcast, panel_light, torch, world
from render_demo.surfaces import Look, clear_glass, metal, paint, rough, tinted, wood

__all__ = ["p22", "p23", "p28"]


def _egg(x: float, y: float, z: float, *, half: float, front: float, back: float) -> list[Vec]:
    """A ring shaped like a toilet seen from above: rounder behind (+y), longer in front."""
    ring = []
    for a in np.linspace(0, 2 * np.pi, 72, endpoint=False):
        reach = front if np.sin(a) < 0 else back
        ring.append((x + half * float(np.cos(a)), y + reach * float(np.sin(a)), z))
    return ring


def p22() -> None:
    """The toilet's base on sheet vinyl: the sealant has let go and there is a stain round the front."""
    china = paint((0.83, 0.83, 0.81), 0.10, orange_peel=0.00003, dirt=0.05)
    floor = Look("vinyl")
    tile = floor.add("TexBrick", Vector=floor.add("TexCoord").outputs["Object"], Scale=1.0)
    for name, value in (
        ("Color1", (0.50, 0.46, 0.40, 1)),
        ("Color2", (0.46, 0.42, 0.365, 1)),
        ("Mortar", (0.30, 0.27, 0.23, 1)),
    ):
        tile.inputs[name].default_value = value
    tile.offset = 0.0
    for name, size in (("Brick Width", 0.152), ("Row Height", 0.152), ("Mortar Size", 0.003)):
        tile.inputs[name].default_value = size
    middle = floor.add("VectorMath", i0=floor.add("TexCoord").outputs["Object"], i1=(0.0, 0.02, 0.0))
    middle.operation = "DISTANCE"
    ragged = floor.math(
        "ADD",
        middle.outputs["Value"],
        floor.math("MULTIPLY", floor.math("SUBTRACT", floor.noise(9.0, harsh=0.7), 0.5), 0.20),
    )
    stain = floor.level(ragged, 0.30, 0.17)
    shade = floor.blend(floor.math("MULTIPLY", stain, 0.75), tile.outputs[0], (0.22, 0.13, 0.05))
    sheet = floor.done(shade, 0.28, Normal=floor.bump(floor.noise(90.0), 0.0003))
    box((4, 4, 0.02), (0, 0, -0.011), sheet, bevel=0)
    rings = [
        _egg(0, 0.09, 0.0045, half=0.100, front=0.235, back=0.20), _egg(0, 0.09, 0.012, half=0.106, front=0.242, back=0.205), _egg(0, 0.09, 0.030, half=0.105, front=0.238, back=0.20),
        _egg(0, 0.09, 0.055, half=0.096, front=0.215, back=0.19), _egg(0, 0.08, 0.12, half=0.088, front=0.185, back=0.18), _egg(0, 0.07, 0.19, half=0.098, front=0.200, back=0.19),
        _egg(0, 0.05, 0.26, half=0.140, front=0.265, back=0.21), _egg(0, 0.04, 0.33, half=0.176, front=0.325, back=0.23), _egg(0, 0.04, 0.37, half=0.185, front=0.340, back=0.235),
        _egg(0, 0.04, 0.385, half=0.184, front=0.338, back=0.235),
    ]  # fmt: skip
    loft(rings, china, turn=(0, 0.9, 0))
    loft(
        [
            _egg(0, 0.03, 0.388, half=0.183, front=0.335, back=0.20),
            _egg(0, 0.03, 0.405, half=0.186, front=0.340, back=0.20),
            _egg(0, 0.03, 0.415, half=0.180, front=0.33, back=0.20),
        ],
        china,
        turn=(0, 0.9, 0),
    )
    loft(
        [
            _egg(0, 0.03, 0.417, half=0.181, front=0.333, back=0.20),
            _egg(0, 0.03, 0.430, half=0.183, front=0.335, back=0.20),
            _egg(0, 0.03, 0.440, half=0.17, front=0.32, back=0.19),
        ],
        china,
        turn=(0, 0.9, 0),
    )
    box((0.44, 0.19, 0.36), (0, 0.38, 0.58), china, bevel=0.03)
    for x in (-0.085, 0.085):
        turned([(0.017, 0.0), (0.017, 0.012), (0.012, 0.022), (1e-4, 0.026)], china, (x * 1.02, 0.10, 0.042))
    gone = paint((0.012, 0.010, 0.008), 0.9)
    loft(
        [
            _egg(0, 0.09, 0.0002, half=0.099, front=0.233, back=0.198),
            _egg(0, 0.09, 0.0046, half=0.099, front=0.233, back=0.198),
        ],
        gone,
    )
    seal = tinted((0, (0.36, 0.29, 0.19)), (1, (0.55, 0.48, 0.37)), roughness=0.6, grain=200.0)
    rng = np.random.default_rng(5)
    a = np.concatenate([rng.uniform(3.2, 4.05, 420), rng.uniform(5.0, 6.2, 600), rng.uniform(0.2, 2.9, 700)])
    reach = np.where(np.sin(a) < 0, 0.240, 0.203)
    clumps(
        np.stack([0.106 * np.cos(a), 0.09 + reach * np.sin(a), np.full(len(a), 0.003)], -1),
        seal,
        size=0.0075,
        vary=0.3,
        flat=0.9,
    )
    a = rng.uniform(4.15, 4.9, 26)
    clumps(
        np.stack([0.118 * np.cos(a), 0.09 + 0.258 * np.sin(a) - 0.01 * rng.random(26), np.full(26, 0.002)], -1),
        seal,
        size=0.009,
    )
    white = paint((0.74, 0.73, 0.70), 0.35)
    box(
        (4, 0.1, 2.5),
        (0, 0.56, 1.2),
        rough((0.50, 0.56, 0.56), (0.46, 0.52, 0.52), scale=2, grain=140, relief=0.0005),
        bevel=0,
    )
    box((4, 0.014, 0.09), (0, 0.503, 0.045), white, bevel=0.004)
    steel = metal((0.65, 0.65, 0.66), 0.2)
    pipe(
        [(-0.26, 0.5, 0.16), (-0.26, 0.43, 0.16), (-0.26, 0.42, 0.22), (-0.20, 0.40, 0.34), (-0.17, 0.38, 0.40)],
        0.006,
        steel,
    )
    cylinder(0.012, 0.04, (-0.26, 0.45, 0.16), steel, turn=(90, 0, 0))
    cylinder(0.028, 0.004, (-0.26, 0.505, 0.16), steel, turn=(90, 0, 0))
    world((0.55, 0.53, 0.50), (0.5, 0.48, 0.45), (0.25, 0.22, 0.18), 0.22)
    panel_light((0.6, -0.8, 2.2), (0, 0, 0.1), 0.7, 26)
    torch((-0.5, -0.85, 0.8), (0, -0.05, 0.05), 8, spread=70)
    aim((-0.40, -0.62, 0.52), (0.0, 0.03, 0.10), lens=28, roll=1.5)


def p23() -> None:
    """The bedroom ceiling: a brown-edged stain near the outside wall."""
    look = Look("ceiling")
    pebble = look.add("TexVoronoi", Vector=look.where(), Scale=150.0).outputs[0]
    fine = look.noise(420.0, detail=3)
    spot = look.add("VectorMath", i0=look.add("TexCoord").outputs["Object"], i1=(0.05, -0.05, 0.0))
    spot.operation = "DISTANCE"
    wander = look.math("MULTIPLY", look.math("SUBTRACT", look.noise(4.0, harsh=0.55, detail=5), 0.5), 0.55)
    away = look.math("ADD", spot.outputs["Value"], wander)
    rings = look.ramp(look.level(away, 0.0, 0.5), (0.0, (0.60, 0.50, 0.36)), (0.30, (0.66, 0.57, 0.44)), (0.47, (0.58, 0.46, 0.30)), (0.525, (0.34, 0.20, 0.08)),
                      (0.545, (0.66, 0.60, 0.50)), (0.70, (0.68, 0.63, 0.54)), (0.76, (0.55, 0.44, 0.30)), (0.78, (0.72, 0.71, 0.67)), (1.0, (0.73, 0.72, 0.69)))  # fmt: skip
    skin = look.bump(pebble, 0.003, after=look.bump(fine, 0.001))
    box((5, 5, 0.1), (0, 0, 0.05), look.done(rings, 0.9, Normal=skin), bevel=0)
    wall = rough((0.50, 0.52, 0.55), (0.47, 0.49, 0.52), scale=2, grain=140, relief=0.0006)
    box((5, 0.1, 3), (0, 0.62, -1.5), wall, bevel=0)
    box((0.1, 5, 3), (1.35, 0, -1.5), wall, bevel=0)
    white = paint((0.74, 0.73, 0.70), 0.4)
    box((5, 0.03, 0.07), (0, 0.555, -0.035), white, bevel=0.012)
    box((0.03, 5, 0.07), (1.285, 0, -0.035), white, bevel=0.012)
    box((1.7, 0.03, 0.09), (-0.75, 0.555, -0.52), white, bevel=0.004)
    box((1.9, 0.02, 0.025), (-0.75, 0.50, -0.40), metal((0.5, 0.47, 0.42), 0.3), bevel=0.008)
    curtain = wood((0.40, 0.36, 0.33), (0.33, 0.30, 0.27), along=2, roughness=0.95)
    many(
        [(-1.6 + 0.045 * i, 0.50 + 0.018 * np.sin(i * 1.9), -1.0) for i in range(12)],
        (0.042, 0.03, 1.2),
        curtain,
        bevel=0.012,
    )
    world((0.5, 0.5, 0.5), (0.5, 0.5, 0.5), (0.4, 0.38, 0.35), 0.30)
    panel_light((-1.5, -0.2, -1.3), (0.1, 0.2, 0), 1.0, 26, (0.9, 0.95, 1.0))
    torch((0.1, -0.9, -1.3), (0.05, 0.1, 0), 14, spread=90)
    aim((-0.05, -0.98, -0.98), (0.10, 0.10, -0.05), lens=26, roll=-2)


def p28() -> None:
    """The lower bedroom's sliding window, open, a tape held across the opening."""
    wall = rough((0.58, 0.55, 0.48), (0.54, 0.51, 0.44), scale=2, grain=140, relief=0.0007)
    white, sash = paint((0.74, 0.73, 0.70), 0.35), metal((0.60, 0.60, 0.60), 0.45)
    half, high = 0.53, 0.80
    for x, z, sx, sz in (
        (0, high / 2 + 0.75, 8, 1.5),
        (0, -high / 2 - 0.75, 8, 1.5),
        (-half - 2, 0, 4, high),
        (half + 2, 0, 4, high),
    ):
        box((sx, 0.16, sz), (x, 0.08, z), wall, bevel=0)
    for x in (-half, half):
        box((0.02, 0.15, high), (x, 0.08, 0), white, bevel=0.002)
        box((0.06, 0.018, high + 0.1), (x * 1.055, -0.008, 0), white, bevel=0.004)
    box((2 * half + 0.24, 0.02, 0.06), (0, -0.008, high / 2 + 0.03), white, bevel=0.004)
    box((2 * half + 0.26, 0.24, 0.025), (0, 0.03, -high / 2 - 0.004), white, bevel=0.008)
    box((2 * half + 0.16, 0.016, 0.06), (0, -0.008, -high / 2 - 0.05), white, bevel=0.004)

    def leaf(x0: float, x1: float, y: float) -> None:
        for x in (x0 + 0.016, x1 - 0.016):
            box((0.032, 0.026, high - 0.04), (x, y, 0), sash, bevel=0.003)
        for z in (-high / 2 + 0.036, high / 2 - 0.036):
            box((x1 - x0 - 0.05, 0.024, 0.032), ((x0 + x1) / 2, y, z), sash, bevel=0.003)
        box((x1 - x0 - 0.05, 0.003, high - 0.1), ((x0 + x1) / 2, y, 0), clear_glass(), bevel=0)

    for y in (0.070, 0.110):
        for z in (-high / 2 + 0.014, high / 2 - 0.008):
            box((2 * half, 0.012, 0.02), (0, y + 0.02, z), sash, bevel=0.002)
    wide = 19.5 * INCH
    leaf(-half, -half + 0.56, 0.075)
    leaf(-half + 0.035, -half + 0.59, 0.115)
    start = half - wide - 0.008
    steel_tape(19.5, (start, 0.058, -0.02), turn=(0, 0.0, 0))
    box((0.075, 0.042, 0.068), (half - 0.05, 0.030, -0.015), paint((0.05, 0.05, 0.05), 0.4), bevel=0.012)
    box((0.045, 0.044, 0.036), (half - 0.05, 0.030, -0.015), paint((0.72, 0.50, 0.03), 0.4), bevel=0.008)
    box((0.012, 0.03, 0.05), (-half + 0.60, 0.06, -0.12), paint((0.1, 0.1, 0.1)), bevel=0.004)
    box((2.2, 0.06, 1.0), (0, 0.98, -0.45), metal((0.45, 0.46, 0.47), 0.5, rust=0.1, dents=0.01), bevel=0)
    gravel = tinted((0, (0.16, 0.15, 0.14)), (1, (0.42, 0.40, 0.37)))
    rng = np.random.default_rng(4)
    clumps(
        np.stack([rng.uniform(-1, 1, 1500), rng.uniform(0.2, 0.95, 1500), np.full(1500, -0.6)], -1), gravel, size=0.045
    )
    box(
        (30, 20, 0.1),
        (0, 11.02, 0.0),
        rough((0.10, 0.14, 0.035), (0.05, 0.075, 0.02), scale=2.0, grain=20.0, relief=0.02),
        bevel=0,
    )
    for i, (x, y, z) in enumerate(((-3, 9, 9), (0.4, 12, 11), (3.2, 9, 9), (6, 12, 10), (-6, 12, 10))):
        conifer((x, y, 0), z, seed=i + 30)
    overcast(1.0)
    panel_light((-0.5, -1.8, 1.7), (0, 0, 0), 1.0, 40)
    aim((-0.12, -1.08, 0.18), (0.05, 0.02, -0.02), lens=27, roll=1.2)
