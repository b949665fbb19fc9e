"""Outside faces of the house: front, driveway, soil, downspout, siding, hose bib."""

from __future__ import annotations

from render_demo.drawings import dial
from render_demo.engine import INCH, np
from render_demo.parts import BALL, LEAF, blades, bricks, clumps, conifer, shingles, siding, window
from render_demo.solids import box, card, cylinder, drape, fractal, many, mesh, pipe, relief, turned
from render_demo.studio import aim, overcast
from render_demo.surfaces import Look, clear_glass, metal, paint, picture, rough, tinted, water, wood
from render_demo.untyped import Untyped

__all__ = ["GRASS", "p01", "p04", "p05", "p06", "p07", "p08", "painted_boards"]

SAGE = ((0.0, (0.30, 0.34, 0.27)), (1.0, (0.36, 0.40, 0.32)))
GRASS = ((0.0, (0.05, 0.085, 0.018)), (0.7, (0.11, 0.17, 0.04)), (1.0, (0.27, 0.26, 0.10)))


def painted_boards() -> Untyped:
    """The green paint of the siding over its pressed grain, a little soiled."""
    look = Look("boards")
    grain = look.noise(1.0, at=look.where((5.0, 60.0, 75.0)), detail=4, harsh=0.65, bent=0.4)
    soil = look.level(look.noise(1.5, harsh=0.7), 0.4, 0.9)
    shade = look.blend(look.math("MULTIPLY", soil, 0.30), look.ramp(look.tint(), *SAGE), (0.20, 0.21, 0.16))
    shade = look.blend(0.12, shade, look.ramp(grain, (0.3, (0.1, 0.1, 0.1)), (0.7, (0.9, 0.9, 0.9))), "OVERLAY")
    return look.done(shade, 0.55, Normal=look.bump(grain, 0.0012))


def _concrete() -> Untyped:
    return rough((0.42, 0.41, 0.39), (0.29, 0.28, 0.26), scale=3.0, grain=240.0, relief=0.0009)


def _soil() -> Untyped:
    return rough((0.115, 0.075, 0.045), (0.05, 0.032, 0.02), scale=9.0, grain=90.0, relief=0.006)


def _roof(wide: float, run: float, at: tuple[float, float, float], look: Untyped, pitch: float = 24.0) -> None:
    long = run / np.cos(np.radians(pitch))
    shingles(wide, long, look, at=at, turn=(pitch, 0, 0), seed=int(wide * 7))
    box((wide, 0.12, 0.13), (at[0], at[1] - 0.02, at[2] - 0.07), paint((0.75, 0.75, 0.72)), bevel=0.01)


def p01() -> None:
    """Front of the house from the street."""
    boards, trim = painted_boards(), paint((0.74, 0.74, 0.70), 0.5)
    glass = Look("pane").done((0.035, 0.045, 0.055), 0.06, Specular_IOR_Level=0.9)
    roof = tinted((0, (0.055, 0.05, 0.047)), (1, (0.12, 0.105, 0.095)), roughness=0.9, grain=40.0, wet=0.3)
    concrete = rough((0.36, 0.35, 0.33), (0.26, 0.25, 0.24), scale=1.2, grain=60.0, relief=0.002, roughness=0.55)
    # The two-storey wing on the left, the main level in the middle, the garage in front on the right.
    siding(7.4, 5.2, (-4.9, 0, 0.35), boards)
    box((7.4, 6, 5.2), (-4.9, 3.02, 2.9), boards)
    box((7.5, 6, 0.5), (-4.9, 2.98, 0.15), concrete)
    siding(5.2, 3.6, (1.4, 0.8, 0.5), boards)
    box((5.2, 6, 3.6), (1.4, 3.83, 2.3), boards)
    siding(6.4, 2.75, (6.6, -1.6, 0.12), boards)
    box((6.4, 6, 2.75), (6.6, 1.43, 1.45), boards)
    siding(6.0, 3.0, (3.4, 1.4, 0.12), boards, turn=-90)
    _roof(8.2, 3.7, (-4.9, -0.55, 5.5), roof)
    _roof(5.6, 3.6, (1.3, 0.25, 4.0), roof)
    _roof(7.1, 3.8, (6.6, -2.1, 2.95), roof)
    for x in (-7.0, -4.9, -2.7):
        window(1.35, 1.15, (x, -0.02, 4.25), frame=trim, glass=glass)
    for x in (-6.6, -3.2):
        window(1.6, 0.75, (x, -0.02, 1.35), frame=trim, glass=glass)
    window(2.2, 1.3, (2.1, 0.78, 2.6), frame=trim, glass=glass, bars=(-0.25, 0.25))
    curtain = paint((0.50, 0.47, 0.42), 0.9)
    for x, z, w in ((-7.45, 4.25, 0.35), (-6.55, 4.25, 0.3), (-3.2, 4.25, 0.3), (1.2, 2.6, 0.35), (3.0, 2.6, 0.35)):
        box((w, 0.004, 1.05), (x, (-0.03 if z > 4 else 0.77), z), curtain, bevel=0)
    box((1.0, 0.06, 2.1), (-0.35, 0.76, 1.65), paint((0.20, 0.045, 0.035), 0.4), bevel=0.005)
    box((1.22, 0.04, 2.25), (-0.35, 0.785, 1.68), trim)
    for i in range(4):
        box((1.7, 0.32, 0.17), (-0.35, 0.6 - i * 0.3, 0.5 - i * 0.16), concrete, bevel=0.01)
    door = paint((0.70, 0.70, 0.66), 0.5)
    for row in range(4):
        box((4.9, 0.05, 0.53), (6.6, -1.63, 0.42 + row * 0.545), door, bevel=0.008)
        many(
            [(6.6 - 1.83 + 1.22 * c, -1.66, 0.42 + row * 0.545) for c in range(4)], (1.0, 0.02, 0.34), door, bevel=0.012
        )
    for dx, w, dz, h in ((-2.53, 0.12, 1.25, 2.3), (2.53, 0.12, 1.25, 2.3), (0, 5.2, 2.43, 0.14)):
        box((w, 0.08, h), (6.6 + dx, -1.65, dz), trim, bevel=0.005)
    brick = tinted((0, (0.20, 0.075, 0.05)), (1, (0.33, 0.14, 0.095)), grain=70.0, relief=0.002)
    bricks(1.3, 8.0, brick, rough((0.4, 0.38, 0.35), (0.3, 0.29, 0.27)), at=(-9.2, 1.6, 0))
    box((1.28, 0.9, 8.0), (-9.2, 2.1, 4.0), brick)
    box((1.5, 1.15, 0.1), (-9.2, 2.0, 7.9), concrete)
    for x in (-8.5, -1.28):
        pipe([(x, -0.08, 5.4), (x, -0.08, 0.4)], 0.04, trim, soft=False)
    height = 0.10 * fractal(120, 160, 3, 2.6)
    ys = np.linspace(-20, 26, 120)[:, None]
    height = np.where(ys > -5, height * 0.2, height * 0.35) - 0.01
    relief(
        60,
        46,
        height,
        rough((0.10, 0.14, 0.035), (0.05, 0.075, 0.02), scale=2.0, grain=30.0, relief=0.02),
        at=(0, 3, 0),
    )
    rng = np.random.default_rng(7)
    x, y = rng.uniform(-13, 9, 60000), -15 + 14.8 * rng.random(60000) ** 1.5
    keep = (
        ~(np.abs(x - 6.3) < 2.9)
        & ~((x > -1) & (x < 4.2) & (np.abs(y + 3.3 + (x - 1.6) * 0.2) < 0.75))
        & ~((np.abs(x + 0.35) < 0.75) & (y > -3.2))
    )
    blades(np.stack([x, y, np.full(len(x), -0.01)], -1)[keep], tinted(*GRASS), high=0.07, wide=0.012)
    mesh([(3.2, -15, 0.03), (9.2, -15, 0.03), (9.2, -1.6, 0.04), (4.0, -1.6, 0.04)], [(0, 1, 2, 3)], concrete)
    mesh(
        [
            (-1.0, -3.2, 0.07),
            (4.2, -4.2, 0.08),
            (4.2, -3.0, 0.09),
            (0.3, -1.9, 0.08),
            (0.3, -0.3, 0.09),
            (-1.0, -0.3, 0.09),
        ],
        [(0, 1, 2, 3, 4, 5)],
        concrete,
    )
    mesh([(-30, -30, 0.0), (30, -30, 0.0), (30, -13.5, 0.03), (-30, -13.5, 0.03)], [(0, 1, 2, 3)],
         rough((0.12, 0.12, 0.125), (0.08, 0.08, 0.083), grain=80.0, roughness=0.45))  # fmt: skip
    green = tinted((0, (0.02, 0.045, 0.015)), (0.8, (0.06, 0.11, 0.035)), (1, (0.16, 0.13, 0.05)))
    for i, (bx, by, size) in enumerate(
        ((-7.8, -0.8, 0.8), (-6.2, -0.9, 0.65), (-4.9, -0.8, 0.75), (-2.2, -0.7, 0.6), (1.6, 0.0, 0.7), (2.9, 0.0, 0.6))
    ):
        way = rng.normal(0, 1, (1500, 3))
        way /= np.linalg.norm(way, axis=1, keepdims=True)
        points = way * np.array([size, size * 0.7, size * 0.75]) * rng.uniform(0.8, 1.02, (1500, 1)) + np.array(
            [bx, by, size * 0.6]
        )
        many(points, (0.05, 0.09, 0.05), green, turns=rng.uniform(-3, 3, (1500, 3)), base=LEAF, seed=i)
    for i, (tx, ty, th) in enumerate(
        (
            (-13, 12, 17),
            (-6, 18, 20),
            (1, 16, 16),
            (7, 19, 21),
            (13, 13, 18),
            (-18, 18, 21),
            (18, 20, 20),
            (11, 10, 12),
            (-9, 22, 22),
            (-2, 24, 23),
            (4, 25, 22),
            (10, 24, 20),
            (-15, 24, 24),
            (15, 26, 24),
        )
    ):
        conifer((tx, ty, 0), th, seed=i)
    overcast(1.0)
    aim((-2.2, -17.2, 1.65), (-0.4, 0, 2.75), lens=27, roll=-0.8)


def p04() -> None:
    """A crack across the driveway, looked at from standing height."""
    rows = cols = 420
    rng = np.random.default_rng(12)
    size = 1.5
    height = 0.0016 * fractal(rows, cols, 5, 1.6) + 0.0007 * fractal(rows, cols, 6, 0.7)
    xs = np.linspace(-size / 2, size / 2, cols)
    path = np.cumsum(rng.normal(0, 0.0035, cols)) + 0.10 * np.sin(xs * 4.2) + 0.16 * xs
    path -= path.mean() + 0.02
    ys = np.linspace(-size / 2, size / 2, rows)[:, None]
    width = 0.0045 + 0.0025 * np.abs(fractal(1, cols, 9, 1.2)[0])
    far = np.abs(ys - path[None])
    height = height + np.where(ys > path[None], 0.006, 0.0)
    height -= 0.03 * np.exp(-((far / width[None]) ** 4)) + 0.002 * np.exp(-((far / 0.018) ** 2))
    branch = path + (xs - 0.12) * 1.3 + np.cumsum(rng.normal(0, 0.003, cols))
    near = np.abs(ys - branch[None]) / 0.0032
    height -= 0.015 * np.exp(-(near**4)) * ((xs > 0.12)[None] * (xs < 0.62)[None])
    concrete = rough((0.40, 0.39, 0.37), (0.28, 0.27, 0.25), scale=5.0, grain=420.0, relief=0.0007, roughness=0.6)
    relief(size, size, height, concrete)
    on = drape(height, size, size)
    pick = rng.integers(0, cols, 500)
    px, py = xs[pick], path[pick] + rng.normal(0, 0.003, 500)
    clumps(
        np.stack([px, py, np.full(500, -0.008)], -1)[(px < 0.0)],
        tinted((0, (0.04, 0.06, 0.012)), (1, (0.12, 0.16, 0.03))),
        size=0.009,
    )
    some = rng.integers(150, 200, 60)
    blades(np.stack([xs[some], path[some], np.full(60, -0.01)], -1), tinted(*GRASS), high=0.045, wide=0.0028, lean=0.5)
    gx, gy = rng.uniform(-0.7, 0.7, 500), rng.uniform(-0.7, 0.7, 500)
    clumps(np.stack([gx, gy, on(gx, gy)], -1), tinted((0, (0.1, 0.09, 0.08)), (1, (0.32, 0.30, 0.27))), size=0.0045)
    leaf = tinted((0, (0.20, 0.09, 0.02)), (1, (0.30, 0.19, 0.04)))
    lx, ly = np.array([-0.28, 0.31, 0.12]), np.array([0.22, -0.25, 0.33])
    many(
        np.stack([lx, ly, on(lx, ly) + 0.002], -1),
        (0.05, 0.065, 0.05),
        leaf,
        turns=[(0.1, 0.1, 1), (0, 0.2, 3), (0.1, 0, 5)],
        base=LEAF,
    )
    overcast(1.0)
    aim((0.06, -0.52, 0.72), (-0.01, 0.0, 0), lens=36, roll=2)


def p05() -> None:
    """Soil that falls toward the east wall, wet at the bottom of the slope."""
    rows, cols = 260, 320
    wide, deep = 6.0, 4.4
    ys = np.linspace(-deep / 2, deep / 2, rows)[:, None]
    height = (
        0.34 * np.clip((1.30 - ys) / 3.2, 0, 1)
        - 0.05
        + 0.012 * fractal(rows, cols, 4, 1.7, low=3)
        + 0.003 * fractal(rows, cols, 8, 0.9)
    )
    relief(wide, deep, height, _soil())
    on = drape(height, wide, deep)
    wall_y = 1.45
    siding(7, 2.6, (0, wall_y, 0.24), painted_boards())
    box((7, 0.2, 0.6), (0, wall_y + 0.10, 0.0), _concrete(), bevel=0.004)
    box((7, 0.02, 0.03), (0, wall_y - 0.02, 0.25), paint((0.6, 0.6, 0.56)))
    fence = wood((0.33, 0.29, 0.25), (0.20, 0.17, 0.14), along=2, worn=0.6)
    pool = [
        (0.62 * np.cos(a) * (1 + 0.15 * np.sin(3 * a)), 0.15 * np.sin(a) * (1 + 0.2 * np.cos(2 * a)), 0.0)
        for a in np.linspace(0, 6.28, 60)
    ]
    mesh(pool, [tuple(range(60))], water(), at=(0.35, wall_y - 0.22, -0.040))
    rng = np.random.default_rng(9)
    n = 26000
    x, y = rng.uniform(-3, 3, n), rng.uniform(-2.2, 1.3, n)
    dense = fractal(rows, cols, 21, 1.6)
    keep = (drape(dense, wide, deep)(x, y) + (-0.4 - y) * 1.1) > 0.15
    blades(np.stack([x, y, on(x, y)], -1)[keep], tinted(*GRASS), high=0.06, wide=0.004, lean=0.5)
    x, y = rng.uniform(-3, 3, 5200), rng.uniform(-1.6, 1.4, 5200)
    many(np.stack([x, y, on(x, y) + 0.004], -1), rng.uniform(0.4, 1.5, (5200, 1)) * np.array([0.012, 0.045, 0.006]),
         tinted((0, (0.05, 0.025, 0.012)), (1, (0.17, 0.09, 0.045))), turns=rng.normal(0, 1, (5200, 3)) * np.array([0.25, 0.25, 3]))  # fmt: skip
    leaf = tinted((0, (0.17, 0.07, 0.015)), (1, (0.33, 0.20, 0.05)))
    x, y = rng.uniform(-3, 3, 70), rng.uniform(-1.6, 1.3, 70)
    many(
        np.stack([x, y, on(x, y) + 0.012], -1),
        (0.055, 0.075, 0.06),
        leaf,
        turns=rng.normal(0, 1, (70, 3)) * np.array([0.3, 0.3, 3]),
        base=LEAF,
    )
    for i in range(26):
        box((0.02, 0.14, 1.7), (3.0, 1.3 - i * 0.15, 0.9), fence, bevel=0.002)
    level = paint((0.62, 0.07, 0.03), 0.35)
    box((0.05, 1.22, 0.06), (-0.3, 0.30, 0.125), level, bevel=0.004, turn=(0, 0, 5))
    box((0.052, 0.05, 0.034), (-0.3, 0.30, 0.14), paint((0.55, 0.75, 0.10), 0.15), turn=(0, 0, 5))
    overcast(1.0)
    aim((-2.5, 0.10, 0.95), (0.6, 0.62, 0.10), lens=26, roll=1)


def p06() -> None:
    """A downspout that ends at the foundation."""
    rows, cols = 240, 240
    height = 0.02 * fractal(rows, cols, 14, 1.8, low=2) + 0.003 * fractal(rows, cols, 15, 0.9)
    xs, ys = np.meshgrid(np.linspace(-1.2, 1.2, cols), np.linspace(-1.2, 1.2, rows))
    height -= 0.055 * np.exp(-(((xs - 0.12) / 0.20) ** 2 + ((ys - 0.16) / 0.28) ** 2))
    relief(2.4, 2.4, height, _soil())
    box((9, 9, 0.1), (0, 0, -0.13), _soil())
    on = drape(height, 2.4, 2.4)
    siding(8, 2.2, (0, 0.55, 0.34), painted_boards())
    box((8, 0.2, 0.9), (0, 0.65, 0.0), _concrete(), bevel=0.004)
    white = paint((0.72, 0.72, 0.68), 0.4, dirt=0.5)
    box((0.076, 0.052, 2.2), (0.12, 0.490, 1.33), white, bevel=0.006)
    for i in range(3):
        many([(0.12 - 0.026 + 0.026 * i, 0.463, 1.33)], (0.010, 0.008, 2.2), white, bevel=0.003)
    for i, (tilt, y, z) in enumerate(((20, 0.485, 0.225), (42, 0.452, 0.195), (62, 0.408, 0.168))):
        box((0.078, 0.054, 0.09), (0.12, y, z), white, turn=(-tilt, 0, 0), bevel=0.006)
        box(
            (0.084, 0.060, 0.012), (0.12, y + 0.008, z + 0.02), white, turn=(-tilt, 0, 0), bevel=0.004
        ) if i < 2 else None
    box((0.064, 0.01, 0.040), (0.12, 0.366, 0.146), paint((0.02, 0.02, 0.02), 0.8), turn=(-62 + 90, 0, 0), bevel=0)
    box((0.11, 0.004, 0.025), (0.12, 0.462, 1.0), white)
    rng = np.random.default_rng(3)
    x, y = rng.uniform(-1.1, 1.1, 260), rng.uniform(-1.0, 0.5, 260)
    clumps(np.stack([x, y, on(x, y)], -1), tinted((0, (0.10, 0.095, 0.09)), (1, (0.30, 0.28, 0.26))), size=0.013)
    x, y = rng.uniform(-1.1, 1.1, 9000), rng.uniform(-1.1, 0.45, 9000)
    keep = np.hypot(x - 0.12, (y - 0.2) * 0.9) > 0.35 + 0.25 * drape(fractal(rows, cols, 6, 1.5), 2.4, 2.4)(x, y)
    blades(np.stack([x, y, on(x, y)], -1)[keep], tinted(*GRASS), high=0.05, wide=0.004, lean=0.5)
    x, y = rng.uniform(-1, 1, 900), rng.uniform(-0.8, 0.5, 900)
    many(np.stack([x, y, on(x, y) + 0.004], -1), rng.uniform(0.4, 1.3, (900, 1)) * np.array([0.012, 0.04, 0.006]),
         tinted((0, (0.05, 0.025, 0.012)), (1, (0.17, 0.09, 0.045))), turns=rng.normal(0, 1, (900, 3)) * np.array([0.25, 0.25, 3]))  # fmt: skip
    overcast(1.0)
    aim((-0.24, -0.50, 0.74), (0.10, 0.36, 0.17), lens=29, roll=-1.5)


def p07() -> None:
    """Hardboard siding swollen and flaking along its bottom edge."""
    lap, wide = 8 * INCH, 1.3
    look = Look("boards")
    tone = look.ramp(look.noise(6.0), (0.3, (0.30, 0.34, 0.27)), (0.7, (0.36, 0.40, 0.32)))
    soaked = look.tint()
    fray = look.noise(40.0, harsh=0.8)
    bare = look.level(look.math("ADD", soaked, look.math("MULTIPLY", fray, 0.5)), 0.62, 0.70)
    fibre = look.ramp(look.noise(160.0, harsh=0.8), (0.3, (0.07, 0.04, 0.022)), (0.7, (0.20, 0.12, 0.065)))
    stain = look.blend(look.math("MULTIPLY", look.level(soaked, 0.2, 0.8), 0.5), tone, (0.13, 0.12, 0.085))
    skin = look.bump(fray, 0.003, after=look.bump(bare, 0.002))
    boards = look.done(look.blend(bare, stain, fibre), look.blend(bare, (0.5,) * 3, (0.95,) * 3), Normal=skin)
    for i in range(4):
        rows, cols = 70, 320
        v = np.linspace(0, 1, rows)[:, None]
        bulge = np.clip(0.55 * fractal(1, cols, 40 + i, 1.4)[0] + 0.5, 0, None)[None] * (1.0, 0.12, 0.03, 0.0)[i]
        edge = np.exp(-v * (6.0 if i == 0 else 12))
        height = (
            0.019 * bulge * edge
            + 0.0014 * bulge * edge * fractal(rows, cols, 60 + i, 0.9)
            + 0.011 * (1 - v)
            + 0.0003 * fractal(rows, cols, 70 + i, 1)
        )
        wet = np.clip(bulge * 0.62, 0, 1) * np.exp(-v * 7)
        # A relief lies in x and y; stood up by 90 degrees it faces −y with its first row at the bottom.
        relief(wide, lap + 0.015, height, boards, at=(0, 0, (i + 0.5) * lap), turn=(90, 0, 0), tint=wet)
        under = height[0] + 0.0
        xs = np.linspace(-wide / 2, wide / 2, cols)
        pts = np.concatenate(
            [
                np.stack([xs, -under, np.full(cols, 0.0)], -1),
                np.stack([xs, np.full(cols, 0.012), np.full(cols, 0.0)], -1),
            ]
        )
        mesh(
            pts,
            [(c, c + 1, cols + c + 1, cols + c) for c in range(cols - 1)],
            fibre_edge(),
            at=(0, 0, i * lap - 0.0075),
        )
    box((2, 0.2, 0.5), (0, 0.13, -0.27), _concrete(), bevel=0.004)
    rows, cols = 160, 260
    height = 0.012 * fractal(rows, cols, 33, 1.6, low=2)
    relief(2.0, 1.2, height, _soil(), at=(0, -0.5, -0.24))
    rng = np.random.default_rng(5)
    x, y = rng.uniform(-0.9, 0.9, 2600), rng.uniform(-1.0, 0.02, 2600)
    blades(np.stack([x, y, np.full(2600, -0.25)], -1), tinted(*GRASS), high=0.075, wide=0.004, lean=0.5)
    overcast(1.0)
    aim((-0.20, -0.40, 0.20), (0.0, 0, 0.055), lens=28, roll=1.5, fstop=5)


def fibre_edge() -> Untyped:
    """The torn brown edge of hardboard."""
    return rough((0.13, 0.08, 0.045), (0.05, 0.03, 0.018), scale=30.0, grain=200.0, relief=0.002)


def p08() -> None:
    """Pressure gauge on the hose bib, at 88."""
    siding(2, 1.2, (0, 0.03, -0.69), painted_boards())
    brass = metal((0.78, 0.52, 0.16), 0.3)
    worn = metal((0.60, 0.40, 0.15), 0.42, rust=0.25)
    cylinder(0.030, 0.006, (0, 0.008, 0.10), worn, turn=(90, 0, 0))
    pipe([(0, 0.02, 0.10), (0, -0.075, 0.10), (0, -0.105, 0.085), (0, -0.115, 0.045)], 0.0125, worn)
    cylinder(0.017, 0.030, (0, -0.078, 0.10), worn, turn=(90, 0, 0), edge=0.003)
    cylinder(0.010, 0.05, (0, -0.068, 0.125), worn, turn=(-25, 0, 0))
    wheel = paint((0.10, 0.22, 0.10), 0.4)
    ring = [
        (0.026 * np.cos(a), -0.058 + 0.011 * np.sin(a) * 1.0, 0.152 + 0.024 * np.sin(a))
        for a in np.linspace(0, 2 * np.pi, 30)
    ]
    pipe(ring, 0.0042, wheel)
    for a in (0.3, 2.4, 4.5):
        pipe(
            [(0, -0.058, 0.152), (0.025 * np.cos(a), -0.058 + 0.011 * np.sin(a), 0.152 + 0.024 * np.sin(a))],
            0.0035,
            wheel,
            soft=False,
        )
    cylinder(0.007, 0.012, (0, -0.062, 0.154), brass, turn=(-25, 0, 0))
    cylinder(0.0175, 0.026, (0, -0.116, 0.036), brass, edge=0.002)
    many([(0.0172 * np.cos(a), -0.116 + 0.0172 * np.sin(a), 0.036) for a in np.linspace(0, 6.283, 28, endpoint=False)], (0.0022, 0.0022, 0.024),
         brass, bevel=0.0006)  # fmt: skip
    cylinder(0.0075, 0.030, (0, -0.116, 0.012), brass)
    case = metal((0.30, 0.30, 0.31), 0.35)
    cylinder(0.041, 0.026, (0, -0.118, -0.042), paint((0.03, 0.03, 0.032), 0.3), turn=(90, 0, 0), edge=0.004)
    turned(
        [(0.0372, -0.004), (0.0405, -0.004), (0.0415, 0.0), (0.0405, 0.004), (0.0375, 0.004), (0.0372, -0.004)],
        case,
        (0, -0.130, -0.042),
        turn=(90, 0, 0),
    )
    face = picture(dial(88, 160, "psi", red_above=100), 0.5)
    card(0.0755, 0.0755, face, (0, -0.1318, -0.042))
    rng = np.random.default_rng(4)
    many([(0.006 * rng.normal(), -0.128 + 0.004 * rng.normal(), 0.022 - 0.01 * rng.random()) for _ in range(9)], (0.003, 0.003, 0.004),
         clear_glass(), base=BALL, smooth=True)  # fmt: skip
    overcast(1.0)
    aim((0.07, -0.43, 0.03), (0.004, -0.08, 0.022), lens=30, roll=-2, fstop=3.5, focus=(0, -0.13, -0.03))
