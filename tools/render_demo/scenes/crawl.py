"""Crawl space by torchlight: standing water, the soft rim joist, a duct off its boot, a gap in the insulation."""

from __future__ import annotations

from render_demo.engine import np
from render_demo.parts import clumps, fibres
from render_demo.scenes.attic import ribbed_hose
from render_demo.solids import box, cylinder, drape, fractal, many, mesh, pipe, relief, turned
from render_demo.studio import Vec, aim, torch, world
from render_demo.surfaces import Look, metal, paint, rough, tinted, water, wood
from render_demo.untyped import Untyped

__all__ = ["p33", "p34", "p35", "p36"]


def _dark() -> None:
    world((0.1, 0.1, 0.1), (0.1, 0.1, 0.1), (0.05, 0.05, 0.05), 0.015)


def _timber(along: int = 0, worn: float = 0.3) -> Untyped:
    return wood((0.50, 0.35, 0.20), (0.30, 0.19, 0.10), along=along, worn=worn, roughness=0.75)


def _batt(wide: float, long: float, at: Vec, *, seed: int, thick: float = 0.05) -> None:
    """A glass-fibre batt seen from below: a lumpy face with fibres standing out of it."""
    rows, cols = int(long * 110), int(wide * 110)
    height = (
        -thick * (1 - 0.25 * np.abs(np.linspace(-1, 1, cols))[None] ** 3)
        - 0.010 * np.abs(fractal(rows, cols, seed, 1.3, low=2))
        - 0.003 * fractal(rows, cols, seed + 1, 0.7)
    )
    face = rough((0.62, 0.33, 0.30), (0.46, 0.22, 0.20), scale=9, grain=150, relief=0.010, roughness=1.0)
    relief(wide, long, height, face, at=at)
    rng = np.random.default_rng(seed)
    n = int(9000 * wide * long / 0.5)
    x, y = rng.uniform(-wide / 2, wide / 2, n), rng.uniform(-long / 2, long / 2, n)
    strands = tinted((0, (0.50, 0.26, 0.24)), (1, (0.72, 0.45, 0.41)), roughness=1.0)
    fibres(
        np.stack([x + at[0], y + at[1], drape(height, wide, long)(x, y) + at[2] - 0.003], -1),
        strands,
        long=0.030,
        thick=0.0011,
        flat=0.7,
    )


def p33() -> None:
    """Standing water in the corner of the crawl space, the ground cover drawn back."""
    rows, cols = 220, 260
    wide, deep = 6.0, 5.0
    xs, ys = np.meshgrid(np.linspace(-wide / 2, wide / 2, cols), np.linspace(0, deep, rows))
    height = 0.02 + 0.016 * fractal(rows, cols, 5, 1.9, low=2) + 0.005 * fractal(rows, cols, 6, 1.0)
    height -= 0.24 * np.exp(-(((xs - 0.75) / 1.25) ** 2 + ((ys - 1.95) / 0.95) ** 4))
    soil = rough((0.16, 0.115, 0.075), (0.075, 0.052, 0.034), scale=6, grain=80, relief=0.006)
    relief(wide, deep, height, soil, at=(0, deep / 2, 0))
    mesh(
        [(-3, 0, -0.065), (3, 0, -0.065), (3, 5, -0.065), (-3, 5, -0.065)],
        [(0, 1, 2, 3)],
        water((0.035, 0.028, 0.018), 0.0006),
    )
    concrete = rough((0.34, 0.33, 0.31), (0.20, 0.19, 0.175), scale=3, grain=90, relief=0.003)
    box((8, 0.2, 1.4), (0, 3.4, 0.35), concrete, bevel=0)
    box((0.2, 8, 1.4), (2.35, 2, 0.35), concrete, bevel=0)
    for i in range(-6, 7):
        box((0.038, 6, 0.235), (i * 0.406 + 0.1, 2, 0.78), _timber(1), bevel=0.002)
    box((9, 6, 0.02), (0, 2, 0.91), wood((0.42, 0.29, 0.17), (0.28, 0.18, 0.10), roughness=0.8), bevel=0)
    box((6, 0.14, 0.235), (-0.4, 1.75, 0.55), _timber(0), bevel=0.003)
    for x in (-0.75, 1.15):
        box((0.14, 0.14, 0.55), (x, 1.75, 0.18), _timber(2), bevel=0.003)
        box((0.40, 0.40, 0.22), (x, 1.75, -0.08), concrete, bevel=0.006)
    sheet = 0.012 * fractal(160, 160, 9, 1.7, low=2) + 0.006 * np.abs(fractal(160, 160, 10, 1.2))
    black = paint((0.012, 0.012, 0.013), 0.25, orange_peel=0.001, dirt=0.5)
    relief(2.4, 2.0, sheet + 0.055, black, at=(-1.55, 1.25, 0.0), turn=(0, 0, 14))
    ridge = 0.05 * np.exp(
        -((np.linspace(-1, 1, 60)[None] + 0.1 * fractal(1, 80, 3, 1.4)[0][:, None]) ** 2) / 0.12
    ) + 0.008 * fractal(80, 60, 4, 1.4)
    relief(0.35, 1.9, ridge + 0.045, black, at=(-0.42, 1.45, 0.0), turn=(0, 0, 10))
    rng = np.random.default_rng(4)
    n = 1600
    x, y = rng.uniform(-2.4, 2.2, n), rng.uniform(0.1, 3.2, n)
    z = drape(height, wide, deep)(x, y - deep / 2)
    keep = z > -0.07
    clumps(np.stack([x, y, z], -1)[keep], tinted((0, (0.09, 0.07, 0.05)), (1, (0.27, 0.23, 0.18))), size=0.02, vary=0.7)
    pipe([(-3, 2.6, 0.60), (3, 2.6, 0.63)], 0.03, paint((0.02, 0.02, 0.02), 0.35), soft=False)
    pipe([(-3, 1.2, 0.62), (0.3, 1.25, 0.63), (0.35, 3.2, 0.63)], 0.010, metal((0.65, 0.35, 0.22), 0.4), soft=False)
    _dark()
    torch((0.35, 0.30, 0.62), (0.55, 2.1, 0.10), 55, spread=80)
    aim((0.05, 0.10, 0.56), (0.42, 1.9, 0.10), lens=25, roll=-3)


def p34() -> None:
    """The rim joist by the deck: an awl stands in soft, darkened wood."""
    look = Look("rotten")
    grain = look.noise(2.4, at=look.where((0.8, 15.0, 15.0)), detail=5, bent=0.8)
    fresh = look.ramp(grain, (0.3, (0.22, 0.14, 0.08)), (0.5, (0.40, 0.27, 0.155)), (0.7, (0.47, 0.33, 0.20)))
    spot = look.add("VectorMath", i0=look.add("TexCoord").outputs["Object"], i1=(0.0, 0.0, -0.03))
    spot.operation = "DISTANCE"
    ragged = look.math(
        "ADD",
        spot.outputs["Value"],
        look.math("MULTIPLY", look.math("SUBTRACT", look.noise(7.0, harsh=0.75), 0.5), 0.26),
    )
    decay = look.level(ragged, 0.27, 0.08)
    brown = look.ramp(look.noise(60.0, harsh=0.8), (0.3, (0.028, 0.014, 0.007)), (0.7, (0.14, 0.068, 0.032)))
    bent = look.add(
        "VectorMath",
        i0=look.where((13.0, 16.0, 40.0)),
        i1=look.add("TexNoise", Vector=look.where(), Scale=22.0).outputs[1],
    )
    split = look.add("TexVoronoi", Vector=bent.outputs[0], Scale=2.4)
    split.feature = "DISTANCE_TO_EDGE"
    crack = look.math("MULTIPLY", look.level(split.outputs[0], 0.028, 0.0), look.level(decay, 0.55, 0.95))
    shade = look.blend(crack, look.blend(decay, fresh, brown), (0.006, 0.004, 0.003))
    skin = look.bump(
        look.math("SUBTRACT", grain, look.math("MULTIPLY", crack, 1.5)),
        0.0035,
        after=look.bump(look.math("MULTIPLY", decay, look.noise(45.0, harsh=0.8)), 0.010),
    )
    rotten = look.done(shade, 0.9, Normal=skin)
    box((2.4, 0.038, 0.235), (0, 0.02, 0), rotten, bevel=0.003)
    for x in (-0.52, 0.50):
        box((0.038, 1.6, 0.235), (x, -0.80, 0.0), _timber(1), bevel=0.002)
    box((2.4, 1.6, 0.02), (0, -0.75, 0.13), wood((0.42, 0.29, 0.17), (0.28, 0.18, 0.10), roughness=0.8), bevel=0)
    box((2.4, 0.14, 0.038), (0, -0.03, -0.138), _timber(0), bevel=0.002)
    box(
        (3, 0.2, 0.8),
        (0, 0.02, -0.56),
        rough((0.34, 0.33, 0.31), (0.20, 0.19, 0.175), scale=5, grain=120, relief=0.002),
        bevel=0,
    )
    handle = Look("handle")
    red = handle.done(handle.ramp(handle.noise(40.0), (0.3, (0.42, 0.04, 0.02)), (0.7, (0.50, 0.06, 0.03))), 0.25)
    steel = metal((0.70, 0.70, 0.71), 0.22)
    tip, back = np.array([0.005, 0.0, -0.03]), np.array([-0.045, -0.155, 0.020])
    way = (back - tip) / np.linalg.norm(back - tip)
    pipe([tuple(tip), tuple(tip + way * 0.085)], 0.0019, steel, soft=False)
    pitch = float(np.degrees(np.arccos(way[2])))
    yaw = float(np.degrees(np.arctan2(way[1], way[0])))
    profile = [
        (1e-4, 0.0),
        (0.006, 0.0),
        (0.0065, 0.008),
        (0.0065, 0.014),
        (0.010, 0.018),
        (0.0135, 0.040),
        (0.0125, 0.065),
        (0.0145, 0.085),
        (0.0115, 0.100),
        (1e-4, 0.106),
    ]
    turned(profile, red, tuple(tip + way * 0.082), turn=(0, pitch, yaw))
    turned(
        [(0.0068, 0.0), (0.0072, 0.002), (0.0072, 0.012), (0.0068, 0.014)],
        steel,
        tuple(tip + way * 0.080),
        turn=(0, pitch, yaw),
    )
    hole = [
        (0.016 * np.cos(a) * (1 + 0.3 * np.sin(3 * a)), 0.0, 0.009 * np.sin(a))
        for a in np.linspace(0, 2 * np.pi, 24, endpoint=False)
    ]
    mesh(hole, [tuple(range(24))], paint((0.004, 0.003, 0.002), 1.0), at=(0.008, -0.0005, -0.032))
    rng = np.random.default_rng(6)
    crumbs = tinted((0, (0.10, 0.05, 0.025)), (1, (0.30, 0.17, 0.08)), roughness=1)
    n = 260
    many(np.stack([rng.normal(0.01, 0.06, n), -0.02 - np.abs(rng.normal(0, 0.025, n)), np.full(n, -0.116)], -1), (0.008, 0.003, 0.003), crumbs,
         turns=rng.normal(0, 1, (n, 3)), bevel=0.0005)  # fmt: skip
    n = 50
    many(np.stack([rng.normal(0.012, 0.016, n), np.full(n, -0.002), rng.normal(-0.036, 0.012, n)], -1), (0.016, 0.0016, 0.0022), crumbs,
         turns=rng.normal(0, 0.5, (n, 3)))  # fmt: skip
    rust = metal((0.25, 0.17, 0.12), 0.7, rust=0.9)
    for x in (-0.28, 0.27):
        for z in (-0.06, 0.06):
            pipe([(x, -0.001, z), (x + 0.002, -0.035, z - 0.002)], 0.0035, rust, soft=False)
    _dark()
    torch((0.16, -0.62, -0.02), (0.0, 0, -0.01), 8.5, spread=72)
    aim((0.13, -0.44, 0.0), (-0.008, 0, -0.012), lens=29, roll=2, fstop=6, focus=(0, 0, -0.02))


def p35() -> None:
    """A flexible duct fallen from its boot under the floor."""
    for i in range(-4, 5):
        box((0.038, 4, 0.235), (i * 0.406 + 0.2, 0.8, 0.0), _timber(1), bevel=0.002)
    box((5, 4, 0.02), (0, 0.8, 0.128), wood((0.42, 0.29, 0.17), (0.28, 0.18, 0.10), roughness=0.8), bevel=0)
    galv = metal((0.60, 0.61, 0.62), 0.35, rust=0.08, dents=0.001)
    box((0.28, 0.12, 0.10), (0.0, 0.35, 0.07), galv, bevel=0.003)
    turned(
        [(0.125, 0.0), (0.095, -0.07), (0.078, -0.09), (0.076, -0.19), (0.074, -0.19), (0.074, 0.0)],
        galv,
        (0.0, 0.35, 0.06),
    )
    turned([(0.0775, -0.15), (0.079, -0.147), (0.0775, -0.144)], galv, (0, 0.35, 0.06))
    turned([(1e-4, -0.06), (0.073, -0.06)], paint((0.01, 0.01, 0.01), 0.95), (0.0, 0.35, 0.06))
    silver = paint((0.42, 0.43, 0.44), 0.25, orange_peel=0.002, dirt=0.5)
    path = [
        (0.10, 0.20, -0.33),
        (0.20, 0.26, -0.43),
        (0.38, 0.36, -0.53),
        (0.75, 0.52, -0.57),
        (1.3, 0.75, -0.56),
        (2.2, 1.1, -0.52),
    ]
    t = np.linspace(0, len(path) - 1, 160)
    line = np.stack([np.interp(t, range(len(path)), [p[k] for p in path]) for k in range(3)], -1)
    ribbed_hose(line, 0.125, silver, pitch=0.045, depth=0.010)
    way = np.array([-0.11, -0.07, 0.11])
    way /= np.linalg.norm(way)
    pitch, yaw = float(np.degrees(np.arccos(way[2]))), float(np.degrees(np.arctan2(way[1], way[0])))
    start: Vec = (0.102, 0.202, -0.332)
    turned([(0.122, -0.05), (0.124, 0.0), (0.118, 0.016), (0.095, 0.010), (0.082, 0.004), (0.078, -0.02), (0.078, -0.3)], paint((0.60, 0.33, 0.31), 1.0, orange_peel=0.004), start,
           turn=(0, pitch, yaw))  # fmt: skip
    turned(
        [(0.079, -0.02), (0.080, 0.035), (0.0785, 0.04), (0.0770, 0.03), (0.0770, -0.25), (1e-4, -0.25)],
        paint((0.02, 0.02, 0.022), 0.5),
        start,
        turn=(0, pitch, yaw),
    )
    rng = np.random.default_rng(5)
    a = rng.uniform(0, 6.283, 1600)
    r = rng.uniform(0.082, 0.122, 1600)
    side = np.cross(way, [0, 0, 1.0])
    side /= np.linalg.norm(side)
    other = np.cross(way, side)
    ring = np.array(start) + r[:, None] * (np.cos(a)[:, None] * side + np.sin(a)[:, None] * other) + way * 0.018
    fibres(
        ring, tinted((0, (0.55, 0.30, 0.28)), (1, (0.74, 0.48, 0.44)), roughness=1), long=0.022, thick=0.0012, flat=1.5
    )
    strap = metal((0.60, 0.61, 0.62), 0.4)
    pipe([(0.19, 0.62, 0.05), (0.185, 0.60, -0.20), (0.19, 0.58, -0.30)], 0.006, strap)
    rows = cols = 160
    black = paint((0.014, 0.014, 0.015), 0.28, orange_peel=0.001, dirt=0.5)
    relief(
        5,
        4,
        0.02 * fractal(rows, cols, 9, 1.8, low=2) + 0.006 * np.abs(fractal(rows, cols, 10, 1.2)) - 0.70,
        black,
        at=(0, 1.0, 0),
    )
    box(
        (6, 0.2, 1.2),
        (0, 2.8, -0.3),
        rough((0.34, 0.33, 0.31), (0.20, 0.19, 0.175), scale=3, grain=90, relief=0.003),
        bevel=0,
    )
    for i in (-2, -1, 1, 2, 3):
        _batt(0.36, 1.9, (i * 0.406 - 0.003, 1.3, 0.07), seed=30 + i)
    pipe([(-2, 1.4, -0.17), (2, 1.45, -0.16)], 0.010, metal((0.65, 0.35, 0.22), 0.4), soft=False)
    _dark()
    torch((-0.25, -0.85, -0.22), (0.15, 0.35, -0.25), 34, spread=88)
    aim((-0.30, -0.74, -0.26), (0.20, 0.35, -0.22), lens=25, roll=-2)


def p36() -> None:
    """From below: batts between the joists, one bay bare."""
    spacing = 0.406
    for i in range(-4, 5):
        box((0.038, 5, 0.235), (i * spacing + spacing / 2, 0.8, 0.0), _timber(1, worn=0.2), bevel=0.002)
    box((5, 5, 0.02), (0, 0.8, 0.128), wood((0.46, 0.32, 0.19), (0.30, 0.19, 0.11), roughness=0.8, worn=0.2), bevel=0)
    for i in (-3, -2, -1, 1, 2, 3):
        _batt(0.366, 4.2, (i * spacing, 0.9, -0.015), seed=40 + i)
    _batt(0.366, 1.2, (0, 2.3, -0.01), seed=50)
    # In the bare bay the batt's torn end hangs down at the far side.
    height = -0.02 * np.abs(fractal(90, 50, 61, 1.2)) + 0.02 * np.linspace(0, 1, 90)[:, None]
    face = rough((0.62, 0.33, 0.30), (0.46, 0.22, 0.20), scale=9, grain=150, relief=0.010, roughness=1.0)
    relief(0.34, 0.42, height, face, at=(0, 1.60, -0.17), turn=(-58, 0, 4))
    relief(0.34, 0.42, height - 0.05, face, at=(0, 1.62, -0.17), turn=(-58, 0, 4))
    wire = metal((0.5, 0.5, 0.5), 0.4, rust=0.4)
    for i in (-2, -1, 1, 2):
        for y in (-0.1, 0.45, 1.0, 1.6):
            bow = [(i * spacing - 0.185, y, -0.10), (i * spacing, y + 0.01, -0.075), (i * spacing + 0.185, y, -0.10)]
            pipe(bow, 0.0014, wire)
    pipe(
        [(0.06, 2.6, 0.02), (0.05, 1.0, 0.03), (0.09, 0.2, 0.02), (0.04, -1.0, 0.03)],
        0.0045,
        paint((0.66, 0.62, 0.5), 0.4),
    )
    rust = metal((0.25, 0.17, 0.12), 0.7, rust=0.9)
    rng = np.random.default_rng(6)
    many([(rng.uniform(-0.17, 0.17), rng.uniform(-0.5, 1.6), 0.108) for _ in range(14)], (0.003, 0.003, 0.022), rust)
    cylinder(0.02, 0.12, (-0.02, 0.75, 0.10), paint((0.03, 0.03, 0.03)))
    _dark()
    torch((0.12, -0.6, -0.62), (0, 0.5, 0), 26, spread=88)
    aim((0.10, -0.62, -0.58), (0.01, 0.45, -0.04), lens=25, roll=3)
