"""Kitchen: the range and its back, the trap under the sink, the receptacle beside it."""

from __future__ import annotations

from render_demo.drawings import board, write
from render_demo.engine import np
from render_demo.parts import BALL, clumps, receptacle
from render_demo.solids import box, card, cylinder, many, mesh, pipe, turned
from render_demo.studio import aim, panel_light, torch, world
from render_demo.surfaces import Look, clear_glass, glow, metal, paint, picture, rough, tinted, water, wood

__all__ = ["p02", "p15", "p16", "p17"]


def _indoors(strength: float = 0.25) -> None:
    world((0.55, 0.53, 0.50), (0.5, 0.48, 0.45), (0.25, 0.22, 0.18), strength)


def p02() -> None:
    """The electric range, oven set to bake at 350."""
    white, black = paint((0.78, 0.78, 0.75), 0.25), paint((0.012, 0.012, 0.013), 0.12)
    steel = metal((0.62, 0.62, 0.63), 0.3)
    oak, oak_up = wood((0.50, 0.31, 0.15), (0.31, 0.17, 0.075)), wood((0.50, 0.31, 0.15), (0.31, 0.17, 0.075), along=2)
    top = rough((0.30, 0.27, 0.24), (0.20, 0.18, 0.16), scale=60, grain=300, relief=0.0002, roughness=0.3)
    wall = rough((0.62, 0.59, 0.52), (0.58, 0.55, 0.49), scale=2, grain=140, relief=0.0006)
    box((4, 0.1, 3), (0, 0.39, 1.5), wall, bevel=0)
    tile = paint((0.66, 0.64, 0.58), 0.2)
    many(
        [(-2 + 0.108 * i, 0.335, 0.97 + 0.108 * j) for i in range(38) for j in range(5)],
        (0.104, 0.012, 0.104),
        tile,
        bevel=0.002,
    )
    box((4, 0.01, 0.6), (0, 0.336, 1.18), rough((0.5, 0.48, 0.44), (0.42, 0.4, 0.37)), bevel=0)
    w = 0.756
    box((w, 0.62, 0.88), (0, 0.02, 0.46), white, bevel=0.005)
    box((w + 0.008, 0.66, 0.022), (0, 0.01, 0.914), white, bevel=0.006)
    box((w - 0.05, 0.56, 0.004), (0, -0.01, 0.926), black, bevel=0.001)
    for x, y, r in ((-0.18, -0.15, 0.115), (0.18, -0.15, 0.09), (-0.18, 0.13, 0.09), (0.18, 0.13, 0.115)):
        turned([(r - 0.003, 0.9285), (r, 0.9287), (r, 0.928)], paint((0.42, 0.42, 0.42), 0.4), (x, y, 0))
        turned([(r * 0.6 - 0.002, 0.9285), (r * 0.6, 0.9287), (r * 0.6, 0.928)], paint((0.3, 0.3, 0.3), 0.4), (x, y, 0))
    box((w, 0.07, 0.20), (0, 0.29, 1.02), white, turn=(-8, 0, 0), bevel=0.008)
    box((w - 0.06, 0.006, 0.135), (0, 0.2525, 1.025), black, turn=(-8, 0, 0), bevel=0.002)
    shown, pen = board(520, 200, (6, 8, 8, 255))
    write(pen, (250, 116), "350", 150, ink=(90, 235, 190), anchor="mm", heavy=3)
    write(pen, (24, 34), "BAKE", 40, ink=(90, 235, 190), heavy=1)
    write(pen, (430, 60), "°F", 50, ink=(90, 235, 190), heavy=1)
    card(0.155, 0.060, picture(shown, 0.2, glow_by=2.2), (0, 0.2475, 1.04), turn=(-8, 0, 0))
    for i in range(6):
        mark, ink = board(160, 50)
        write(
            ink,
            (80, 25),
            ("BAKE", "BROIL", "TIMER", "CLOCK", "OFF", "START")[i],
            38,
            ink=(205, 205, 205),
            anchor="mm",
            heavy=1,
        )
        card(0.042, 0.013, picture(mark), (-0.0875 + 0.035 * i, 0.2525, 0.985), turn=(-8, 0, 0))
    for x in (-0.30, -0.20, 0.20, 0.30):
        cylinder(0.021, 0.024, (x, 0.242, 1.03), white, turn=(82, 0, 0), edge=0.004)
        box((0.006, 0.012, 0.036), (x, 0.228, 1.032), white, turn=(-8, 25, 0))
    box((w - 0.006, 0.035, 0.50), (0, -0.305, 0.60), white, bevel=0.008)
    box((w - 0.17, 0.006, 0.27), (0, -0.3225, 0.60), black, bevel=0.015)
    box((w - 0.08, 0.022, 0.024), (0, -0.365, 0.80), white, bevel=0.009)
    for x in (-0.31, 0.31):
        box((0.024, 0.05, 0.022), (x, -0.343, 0.80), white, bevel=0.006)
    box((w - 0.006, 0.035, 0.17), (0, -0.305, 0.245), white, bevel=0.008)
    box((0.26, 0.02, 0.018), (0, -0.328, 0.30), white, bevel=0.006)
    for side in (-1, 1):
        cx = side * (w / 2 + 0.46)
        box((0.90, 0.60, 0.78), (cx, 0.05, 0.48), oak, bevel=0.003)
        for k in (-1, 1):
            dx = cx + k * 0.225
            box((0.425, 0.02, 0.54), (dx, -0.258, 0.41), oak_up, bevel=0.004)
            box((0.30, 0.012, 0.40), (dx, -0.266, 0.41), oak_up, bevel=0.010)
            box((0.425, 0.02, 0.15), (dx, -0.258, 0.775), oak, bevel=0.004)
            cylinder(0.014, 0.024, (dx, -0.28, 0.775), steel, turn=(90, 0, 0), edge=0.005)
            cylinder(0.014, 0.024, (dx - k * 0.17, -0.28, 0.62), steel, turn=(90, 0, 0), edge=0.005)
        box((0.92, 0.65, 0.038), (cx, 0.025, 0.895), top, bevel=0.006)
    cylinder(0.075, 0.16, (0.62, 0.16, 0.99), paint((0.25, 0.33, 0.36), 0.3), edge=0.012)
    rng = np.random.default_rng(2)
    for i in range(5):
        a = rng.uniform(0, 6.28)
        pipe(
            [(0.62, 0.16, 1.0), (0.62 + 0.05 * np.cos(a), 0.16 + 0.05 * np.sin(a), 1.24 + 0.03 * i)],
            0.006,
            wood(along=2),
            soft=False,
        )
    box(
        (4, 3, 0.02),
        (0, -0.9, -0.01),
        rough((0.50, 0.44, 0.35), (0.42, 0.37, 0.30), scale=4, grain=60, relief=0.0003, roughness=0.35),
        bevel=0,
    )
    box((0.7, 0.5, 0.3), (0, 0.2, 1.78), steel, bevel=0.01)
    _indoors()
    panel_light((0.3, -1.4, 2.5), (0, 0, 0.6), 1.2, 60)
    panel_light((-2.3, -1.2, 1.6), (0, 0, 0.8), 1.2, 40, (0.85, 0.93, 1.0))
    aim((-0.34, -1.28, 1.58), (0.03, 0, 0.80), lens=27, roll=1)


def p15() -> None:
    """Behind the range, pulled forward: bare floor and wall, no bracket to hold its back legs."""
    wall = rough((0.60, 0.57, 0.50), (0.52, 0.49, 0.42), scale=3, grain=140, relief=0.0008)
    box((3, 0.1, 2), (0, 0.05, 1.0), wall, bevel=0)
    floor = Look("floor")
    dust = floor.level(floor.noise(7.0, harsh=0.75), 0.42, 0.72)
    sheet = floor.done(
        floor.blend(floor.math("MULTIPLY", dust, 0.8), (0.42, 0.35, 0.26), (0.20, 0.18, 0.155)),
        0.6,
        Normal=floor.bump(floor.noise(220.0), 0.0006),
    )
    box((3, 2.4, 0.02), (0, -1.2, -0.01), sheet, bevel=0)
    box((3, 0.012, 0.085), (0, -0.006, 0.043), paint((0.66, 0.64, 0.58), 0.4, dirt=0.5), bevel=0.004)
    galv = metal((0.55, 0.56, 0.57), 0.45, dents=0.002)
    black = paint((0.015, 0.015, 0.016), 0.4)
    # The range stands to the right, turned a little; its back is towards the wall and its foot is in the picture.
    box((0.62, 0.76, 0.85), (0.70, -0.60, 0.47), paint((0.74, 0.74, 0.71), 0.3, dirt=0.4), bevel=0.005, turn=(0, 0, 5))
    box((0.012, 0.66, 0.62), (0.385, -0.60, 0.46), galv, bevel=0.003, turn=(0, 0, 5))
    for y in (-0.92, -0.30):
        cylinder(0.018, 0.03, (0.42 - (y + 0.6) * 0.087, y, 0.015), black)
        cylinder(0.008, 0.06, (0.42 - (y + 0.6) * 0.087, y, 0.05), metal())
    box((0.115, 0.055, 0.115), (-0.06, -0.028, 0.11), black, bevel=0.008)
    cylinder(0.030, 0.05, (-0.06, -0.075, 0.115), black, turn=(90, 0, 0), edge=0.008)
    pipe(
        [
            (-0.06, -0.10, 0.115),
            (-0.06, -0.20, 0.10),
            (-0.12, -0.33, 0.02),
            (0.02, -0.48, 0.014),
            (0.22, -0.40, 0.014),
            (0.34, -0.52, 0.10),
            (0.375, -0.55, 0.22),
        ],
        0.011,
        black,
    )
    oak = wood((0.46, 0.28, 0.14), (0.29, 0.16, 0.07), along=2)
    box((0.02, 0.62, 0.9), (-0.56, -0.31, 0.45), oak, bevel=0.002)
    rng = np.random.default_rng(11)
    fluff = tinted((0, (0.10, 0.09, 0.085)), (1, (0.28, 0.26, 0.24)), roughness=1)
    n = 2600
    x, y = rng.uniform(-0.5, 0.4, n), -np.abs(rng.normal(0, 0.28, n)) - 0.02
    clumps(np.stack([x, y, np.full(n, 0.001)], -1), fluff, size=0.0030, vary=0.5, flat=0.3)
    many(np.stack([rng.uniform(-0.45, 0.3, 40), rng.uniform(-0.6, -0.05, 40), np.full(40, 0.003)], -1), (0.012, 0.008, 0.004),
         tinted((0, (0.25, 0.13, 0.04)), (1, (0.5, 0.35, 0.15))), turns=rng.normal(0, 1, (40, 3)), bevel=0.001)  # fmt: skip
    cylinder(0.009, 0.0015, (-0.30, -0.25, 0.001), metal((0.5, 0.35, 0.2), 0.35))
    _indoors(0.22)
    panel_light((-0.6, -1.6, 2.2), (0, -0.2, 0), 0.8, 16)
    torch((-0.05, -1.0, 0.95), (0.0, -0.15, 0.08), 22, spread=80)
    aim((-0.10, -0.98, 0.86), (0.03, -0.16, 0.10), lens=26, roll=-2)


def p16() -> None:
    """Under the kitchen sink: a drop hangs from the slip nut of the left trap."""
    inside = wood((0.55, 0.42, 0.28), (0.42, 0.30, 0.19), roughness=0.7)
    box((1.4, 0.02, 0.9), (0, 0.27, 0.4), inside, bevel=0)
    box((0.02, 0.8, 0.9), (-0.52, -0.1, 0.4), inside, bevel=0)
    box((0.02, 0.8, 0.9), (0.52, -0.1, 0.4), inside, bevel=0)
    base = Look("base")
    grain = base.noise(5.0, at=base.where((0.7, 14, 14)), detail=4)
    middle = base.add("VectorMath", i0=base.add("TexCoord").outputs["Object"], i1=(-0.10, -0.06, 0.0))
    middle.operation = "DISTANCE"
    wet = base.level(
        base.math("ADD", middle.outputs["Value"], base.math("MULTIPLY", base.noise(12.0), 0.12)), 0.23, 0.19
    )
    dry = base.ramp(grain, (0.3, (0.40, 0.29, 0.18)), (0.7, (0.55, 0.42, 0.28)))
    box(
        (1.4, 0.8, 0.02),
        (0, -0.1, -0.01),
        base.done(base.blend(wet, dry, (0.15, 0.09, 0.045)), base.blend(wet, (0.6,) * 3, (0.12,) * 3)),
        bevel=0,
    )
    steel = metal((0.60, 0.61, 0.62), 0.33)
    for x in (-0.20, 0.24):
        box((0.38, 0.42, 0.02), (x, 0.0, 0.475), steel, bevel=0.008)
        turned([(1e-4, 0.40), (0.020, 0.40), (0.020, 0.43), (0.045, 0.455), (0.055, 0.47)], steel, (x, 0, 0))
        cylinder(0.034, 0.022, (x, 0, 0.415), steel, edge=0.004)
    white = paint((0.76, 0.76, 0.73), 0.28, dirt=0.3)
    ribs = [(np.cos(a), np.sin(a)) for a in np.linspace(0, 6.283, 16, endpoint=False)]

    def nut(x: float, y: float, z: float, r: float = 0.028) -> None:
        cylinder(r, 0.022, (x, y, z), white, edge=0.003)
        many([(x + r * c, y + r * s, z) for c, s in ribs], (0.006, 0.006, 0.020), white, bevel=0.001)

    x = -0.20
    pipe([(x, 0, 0.40), (x, 0, 0.225)], 0.0205, white, soft=False)
    nut(x, 0, 0.385)
    nut(x, 0, 0.225)
    arc = [(x + 0.055 - 0.055 * np.cos(t), 0, 0.205 - 0.062 * np.sin(t)) for t in np.linspace(0, np.pi, 14)]
    pipe([(x, 0, 0.235), *arc, (x + 0.11, 0, 0.235)], 0.0225, white)
    nut(x + 0.11, 0, 0.232)
    pipe([(x + 0.11, 0, 0.235), (x + 0.11, 0.0, 0.285), (x + 0.11, 0.03, 0.30), (x + 0.11, 0.28, 0.302)], 0.0205, white)
    cylinder(0.05, 0.006, (x + 0.11, 0.255, 0.302), metal((0.7, 0.7, 0.7), 0.2), turn=(90, 0, 0))
    pipe([(0.24, 0, 0.40), (0.24, 0, 0.30), (0.22, 0, 0.275), (0.10, 0, 0.27), (x + 0.13, 0, 0.268)], 0.0205, white)
    nut(0.24, 0, 0.385)
    for sx, colour in ((0.34, (0.62, 0.63, 0.64)), (0.41, (0.62, 0.63, 0.64))):
        cylinder(0.011, 0.05, (sx, 0.23, 0.24), metal(colour, 0.25), turn=(90, 0, 0))
        cylinder(0.013, 0.02, (sx, 0.195, 0.24), metal(colour, 0.25), turn=(90, 0, 0))
        ball_y = 0.185
        box((0.03, 0.012, 0.016), (sx, ball_y, 0.24), metal(colour, 0.25), bevel=0.005)
        pipe(
            [(sx, 0.20, 0.25), (sx, 0.18, 0.33), (sx - 0.09, 0.12, 0.42), (sx - 0.2, 0.15, 0.48)],
            0.006,
            metal((0.6, 0.6, 0.62), 0.4),
        )
    drop = clear_glass((0.80, 0.86, 0.90))
    turned(
        [(1e-4, -0.012), (0.0035, -0.0105), (0.0050, -0.0065), (0.0042, -0.002), (0.0018, 0.004), (0.0008, 0.008)],
        drop,
        (x - 0.012, -0.022, 0.208),
    )
    turned(
        [(1e-4, -0.009), (0.0030, -0.008), (0.0040, -0.005), (0.0030, 0.0), (0.001, 0.005)],
        drop,
        (x + 0.012, -0.025, 0.210),
    )
    many(
        [(x - 0.01, -0.028, 0.217), (x + 0.005, -0.029, 0.216), (x + 0.018, -0.023, 0.214), (x - 0.02, -0.02, 0.15)],
        (0.007, 0.004, 0.006),
        drop,
        base=BALL,
        smooth=True,
    )
    rng = np.random.default_rng(3)
    pool = [
        (
            (0.12 + 0.02 * np.sin(3 * a) + 0.012 * np.sin(7 * a)) * np.cos(a),
            (0.085 + 0.015 * np.cos(4 * a)) * np.sin(a),
            0,
        )
        for a in np.linspace(0, 6.283, 90)
    ]
    mesh(pool, [tuple(range(90))], water((0.16, 0.105, 0.06), 0.0002), at=(-0.18, -0.05, 0.0015))
    many(
        np.stack([rng.normal(-0.18, 0.13, 60), rng.normal(-0.05, 0.08, 60), np.full(60, 0.002)], -1),
        (0.006, 0.006, 0.003),
        drop,
        base=BALL,
        smooth=True,
    )
    cylinder(0.04, 0.20, (-0.40, 0.15, 0.10), paint((0.08, 0.20, 0.45), 0.3), edge=0.01)
    cylinder(0.014, 0.06, (-0.40, 0.15, 0.23), paint((0.8, 0.8, 0.8), 0.3))
    box((0.10, 0.06, 0.17), (0.40, 0.02, 0.085), paint((0.65, 0.45, 0.06), 0.4), bevel=0.004)
    cylinder(0.035, 0.23, (0.28, 0.14, 0.115), paint((0.70, 0.70, 0.68), 0.3), edge=0.012)
    _indoors(0.06)
    torch((0.02, -0.62, 0.42), (-0.12, 0, 0.18), 13, spread=85)
    panel_light((0.4, -1.4, 1.0), (0, 0, 0.2), 0.5, 5)
    aim((-0.03, -0.58, 0.30), (-0.10, 0, 0.185), lens=27, roll=-2, fstop=5)


def p17() -> None:
    """The counter receptacle right of the sink, a plug-in tester in its lower half."""
    tile = paint((0.70, 0.68, 0.62), 0.15)
    size = 0.106
    many(
        [(-1.0 + (size + 0.003) * i, 0.004, -0.30 + (size + 0.003) * j) for i in range(20) for j in range(9)],
        (size, 0.010, size),
        tile,
        bevel=0.002,
    )
    box((3, 0.01, 2), (0, 0.006, 0), rough((0.52, 0.50, 0.46), (0.42, 0.40, 0.37)), bevel=0)
    receptacle((0, -0.001, 0))
    top = rough((0.26, 0.235, 0.21), (0.17, 0.15, 0.135), scale=60, grain=300, relief=0.0002, roughness=0.22)
    box((3, 0.62, 0.038), (0, -0.31, -0.175), top, bevel=0.006)
    body, trim = paint((0.80, 0.53, 0.03), 0.35), paint((0.03, 0.03, 0.03), 0.4)
    z = -0.0195
    box((0.036, 0.046, 0.036), (0, -0.033, z), body, bevel=0.005)
    box((0.030, 0.010, 0.030), (0, -0.059, z), trim, bevel=0.004)
    for i, (x, colour, power) in enumerate(
        ((-0.0085, (1.0, 0.55, 0.05), 7.0), (0.0, (1.0, 0.55, 0.05), 7.0), (0.0085, (0.25, 0.05, 0.03), 0.0))
    ):
        ringed = glow(colour, power) if power else paint((0.22, 0.03, 0.02), 0.2)
        cylinder(0.0029, 0.005, (x, -0.0645, z + 0.005), ringed, turn=(90, 0, 0), edge=0.0015)
        _ = i
    mark, pen = board(400, 130)
    write(pen, (200, 40), "OPEN · REVERSED · OK", 34, ink=(230, 230, 230), anchor="mm", heavy=1)
    write(pen, (200, 96), "120 V ~", 34, ink=(230, 230, 230), anchor="mm", heavy=1)
    card(0.026, 0.0085, picture(mark), (0, -0.0642, z - 0.0075))
    box((0.012, 0.008, 0.010), (0, -0.03, z + 0.0205), trim, bevel=0.003)
    steel = metal((0.60, 0.61, 0.62), 0.22)
    box((0.5, 0.40, 0.01), (-0.56, -0.31, -0.152), steel, bevel=0.004)
    pipe(
        [(-0.50, -0.08, -0.15), (-0.50, -0.08, 0.04), (-0.50, -0.10, 0.12), (-0.50, -0.22, 0.13), (-0.50, -0.26, 0.06)],
        0.011,
        steel,
    )
    cylinder(0.022, 0.05, (-0.50, -0.08, -0.13), steel, edge=0.006)
    cylinder(0.033, 0.16, (0.22, -0.10, -0.075), paint((0.16, 0.30, 0.16), 0.25), edge=0.01)
    cylinder(0.012, 0.05, (0.22, -0.10, 0.02), paint((0.8, 0.8, 0.78), 0.3))
    box(
        (0.18, 0.012, 0.24),
        (0.40, -0.03, -0.04),
        wood((0.5, 0.34, 0.19), (0.33, 0.2, 0.1), along=2),
        bevel=0.004,
        turn=(-8, 0, 0),
    )
    _indoors()
    panel_light((0.3, -1.0, 1.3), (0, 0, 0), 0.5, 10)
    panel_light((-1.5, -0.8, 0.5), (0, 0, 0), 0.8, 10, (0.85, 0.93, 1.0))
    aim((0.075, -0.36, 0.055), (-0.005, 0, -0.022), lens=28, roll=1.2, fstop=5, focus=(0, -0.04, 0))
