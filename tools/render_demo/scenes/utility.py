"""Utility room: the furnace's data plate, the water heater's relief pipe, the service panel with its cover off."""

from __future__ import annotations

from render_demo.drawings import board, write
from render_demo.engine import np
from render_demo.solids import box, card, cylinder, many, mesh, pipe, turned
from render_demo.studio import aim, panel_light, torch, world
from render_demo.surfaces import Look, metal, paint, picture, rough, wood
from render_demo.untyped import Untyped

__all__ = ["p30", "p31", "p32"]


def _dim(strength: float = 0.2) -> None:
    world((0.55, 0.54, 0.52), (0.5, 0.49, 0.47), (0.25, 0.23, 0.2), strength)


def p30() -> None:
    """The furnace's data plate, inside the burner compartment; the maker is invented."""
    plate, pen = board(1500, 1050, (206, 206, 200, 255))
    pen.rectangle((18, 18, 1482, 1032), outline=(25, 25, 25), width=6)
    pen.rectangle((18, 18, 1482, 150), fill=(28, 30, 34, 255))
    write(pen, (60, 84), "NORTHMOOR", 104, ink=(226, 226, 220), heavy=3)
    write(pen, (1440, 84), "FORCED AIR FURNACE", 50, ink=(226, 226, 220), anchor="rm", heavy=1)
    rows = (
        ("MODEL", "NM-80-075"), ("SERIAL", "0412 77 3391"), ("FUEL", "NATURAL GAS"), ("INPUT  BTU/h", "75 000"), ("OUTPUT  BTU/h", "60 000"),
        ("TEMP. RISE  °F", "35 - 65"), ("MAX. OUTLET AIR  °F", "165"), ("VOLTS / Hz / PH", "120 / 60 / 1"), ("MAX. AMPS", "9.6"),
    )  # fmt: skip
    for i, (name, value) in enumerate(rows):
        y = 212 + i * 82
        write(pen, (60, y), name, 50, ink=(25, 25, 25), heavy=1)
        write(pen, (640, y), value, 62, ink=(15, 15, 15), heavy=2)
        pen.line((40, y + 41, 1460, y + 41), fill=(90, 90, 90), width=3)
    write(
        pen,
        (60, 978),
        "MANIFOLD 3.5 IN W.C.     MADE 2004     CLEARANCE FRONT 24 IN  SIDES 1 IN",
        33,
        ink=(25, 25, 25),
        heavy=1,
    )
    sheet = metal((0.42, 0.44, 0.47), 0.5, rust=0.22, dents=0.0015)
    box((0.7, 0.004, 0.6), (0, 0.003, 0), sheet, bevel=0)
    label = Look("plate")
    laid = label.image(plate)
    grime = label.level(label.noise(16.0, harsh=0.8), 0.50, 0.85)
    scratch = label.level(label.noise(1.0, at=label.where((14.0, 14.0, 320.0)), detail=2), 0.70, 0.72)
    shade = label.blend(label.math("MULTIPLY", grime, 0.30), laid.outputs["Color"], (0.30, 0.25, 0.18))
    shade = label.blend(label.math("MULTIPLY", scratch, 0.3), shade, (0.72, 0.72, 0.70))
    foil = label.done(
        shade,
        label.ramp(label.noise(9.0), (0.3, (0.28,) * 3), (0.7, (0.48,) * 3)),
        Metallic=0.35,
        Normal=label.bump(label.noise(14.0, detail=2), 0.0008),
    )
    box((0.152, 0.001, 0.108), (0, 0.0002, 0), paint((0.6, 0.6, 0.58), 0.4), bevel=0)
    card(0.150, 0.105, foil, (0, -0.0006, 0))
    for x in (-0.071, 0.071):
        for z in (-0.049, 0.049):
            cylinder(0.0022, 0.0016, (x, -0.0008, z), metal((0.7, 0.7, 0.7), 0.3), turn=(90, 0, 0))
    edge = paint((0.33, 0.36, 0.40), 0.4, dirt=0.4)
    box((0.7, 0.05, 0.02), (0, -0.02, 0.105), edge, bevel=0.003)
    box((0.02, 0.05, 0.6), (-0.118, -0.02, 0), edge, bevel=0.003)
    cylinder(0.0055, 0.005, (-0.112, -0.047, 0.105), metal(), turn=(90, 0, 0))
    for colour, dz in (((0.55, 0.03, 0.02), 0.0), ((0.02, 0.02, 0.02), 0.006), ((0.70, 0.60, 0.08), 0.012)):
        pipe(
            [
                (0.14, -0.02, -0.2),
                (0.11, -0.024, -0.085 + dz),
                (0.0, -0.02, -0.078 + dz),
                (-0.10, -0.022, -0.086 + dz),
                (-0.2, -0.02, -0.08),
            ],
            0.0019,
            paint(colour, 0.4),
        )
    _dim(0.12)
    torch((0.10, -0.36, 0.14), (0.0, 0, 0.0), 4.0, spread=75, radius=0.012)
    panel_light((-0.5, -0.8, 0.7), (0, 0, 0), 0.35, 5)
    aim((0.030, -0.205, 0.010), (0.001, 0, -0.001), lens=29, roll=-1.6, fstop=8)


def p31() -> None:
    """The water heater: one strap at the top only, and a relief pipe that ends high above the floor."""
    concrete = rough((0.36, 0.35, 0.33), (0.24, 0.23, 0.22), scale=3, grain=120, relief=0.001, roughness=0.5)
    box((4, 4, 0.05), (0, -1, -0.025), concrete, bevel=0)
    wall = rough((0.60, 0.58, 0.52), (0.52, 0.50, 0.45), scale=2, grain=120, relief=0.0006)
    box((4, 0.1, 3), (0, 0.45, 1.5), wall, bevel=0)
    box((0.1, 4, 3), (-0.75, 0, 1.5), wall, bevel=0)
    coat = paint((0.62, 0.63, 0.60), 0.3, dirt=0.2)
    turned(
        [(1e-4, 0.06), (0.246, 0.06), (0.255, 0.07), (0.255, 1.44), (0.25, 1.455), (0.24, 1.46), (1e-4, 1.475)],
        coat,
        (0, 0, 0),
        steps=96,
    )
    turned([(0.24, 0.0), (0.24, 0.06)], paint((0.12, 0.12, 0.12)), (0, 0, 0))
    steel, copper = metal((0.58, 0.59, 0.60), 0.38), metal((0.72, 0.37, 0.22), 0.3)
    turned([(0.258, 1.22), (0.259, 1.222), (0.259, 1.258), (0.258, 1.26)], steel, (0, 0, 0), steps=96)
    for side in (-1, 1):
        box((0.20, 0.003, 0.036), (side * 0.29, 0.31, 1.24), steel, turn=(0, 0, side * -58), bevel=0)
    cylinder(0.012, 0.03, (0, -0.262, 1.24), steel, turn=(90, 0, 0))
    turned([(0.038, 0.0), (0.038, 1.5)], metal((0.56, 0.57, 0.58), 0.42, rust=0.15), (0, 0, 1.54))
    turned(
        [(0.105, 0.0), (0.10, 0.02), (0.045, 0.075), (0.038, 0.08)],
        metal((0.56, 0.57, 0.58), 0.42, rust=0.15),
        (0, 0, 1.49),
    )
    for a in (0.6, 2.2, 3.8, 5.4):
        box((0.012, 0.002, 0.05), (0.095 * float(np.cos(a)), 0.095 * float(np.sin(a)), 1.475), steel)
    for x, colour in ((-0.14, (0.05, 0.12, 0.45)), (0.14, (0.5, 0.05, 0.04))):
        cylinder(0.016, 0.06, (x, 0.04, 1.49), metal((0.6, 0.5, 0.3), 0.4))
        pipe([(x, 0.04, 1.50), (x, 0.04, 1.62), (x, 0.10, 1.72), (x, 0.36, 1.78), (x, 0.36, 2.6)], 0.010, copper)
        cylinder(0.011, 0.01, (x, 0.04, 1.525), paint(colour))
    brass = metal((0.74, 0.52, 0.20), 0.35)
    x = 0.262
    cylinder(0.014, 0.06, (x, -0.05, 1.33), brass, turn=(0, 90, 0))
    cylinder(0.019, 0.07, (x + 0.035, -0.05, 1.335), brass, edge=0.004)
    box((0.055, 0.010, 0.004), (x + 0.03, -0.05, 1.375), metal((0.7, 0.7, 0.7)), turn=(0, -12, 0))
    ending = 14 * 0.0254
    pipe(
        [(x + 0.045, -0.05, 1.32), (x + 0.075, -0.05, 1.31), (x + 0.078, -0.05, 1.26), (x + 0.078, -0.05, ending)],
        0.0105,
        copper,
    )
    cylinder(0.0125, 0.03, (x + 0.078, -0.05, 1.25), copper)
    gas = metal((0.10, 0.10, 0.10), 0.5)
    box((0.10, 0.08, 0.10), (0.02, -0.285, 0.28), paint((0.05, 0.05, 0.055), 0.4), bevel=0.008)
    cylinder(0.026, 0.02, (0.02, -0.332, 0.29), paint((0.5, 0.04, 0.03), 0.35), turn=(90, 0, 0))
    pipe(
        [(-0.02, -0.29, 0.27), (-0.20, -0.29, 0.27), (-0.34, -0.25, 0.28), (-0.36, 0.1, 0.6), (-0.36, 0.38, 1.2)],
        0.010,
        paint((0.72, 0.62, 0.12), 0.4),
    )
    cylinder(0.014, 0.25, (-0.36, 0.38, 1.3), gas)
    box((0.17, 0.01, 0.10), (0, -0.253, 0.15), paint((0.1, 0.1, 0.1)), bevel=0.01)
    tag, pen = board(700, 900, (238, 238, 230, 255))
    pen.rectangle((0, 0, 700, 150), fill=(20, 60, 110, 255))
    write(pen, (350, 76), "HALDEN", 110, ink="white", anchor="mm", heavy=3)
    for i, words in enumerate(("50 US GAL  NATURAL GAS", "INPUT 40 000 BTU/h", "MADE 2009", "MAX. PRESSURE 150 psi")):
        write(pen, (40, 230 + i * 80), words, 48, ink=(20, 20, 20), heavy=1)
    pen.rectangle((30, 560, 670, 870), outline=(160, 20, 20), width=10)
    write(pen, (350, 630), "CAUTION", 76, ink=(160, 20, 20), anchor="mm", heavy=2)
    write(pen, (350, 720), "HOT WATER CAN SCALD", 46, ink=(20, 20, 20), anchor="mm", heavy=1)
    write(pen, (350, 800), "KEEP AREA CLEAR", 46, ink=(20, 20, 20), anchor="mm", heavy=1)
    # The label is bent round the tank.
    angles = np.linspace(-0.36, 0.36, 16) - np.pi / 2 - 0.25
    points = [(0.2565 * np.cos(a), 0.2565 * np.sin(a), z) for z in (0.72, 0.96) for a in angles]
    faces = [(i, i + 1, i + 17, i + 16) for i in range(15)]
    u = np.linspace(0, 1, 16)
    mesh(
        points,
        faces,
        picture(tag, 0.4),
        uv=[c for i in range(15) for c in ((u[i], 0), (u[i + 1], 0), (u[i + 1], 1), (u[i], 1))],
        smooth=True,
    )
    box((0.5, 0.6, 1.5), (1.0, 0.1, 0.75), paint((0.33, 0.36, 0.40), 0.35), bevel=0.006)
    _dim(0.2)
    panel_light((0.2, -1.5, 2.5), (0, 0, 0.8), 0.8, 40)
    torch((0.25, -1.8, 1.2), (0.1, 0, 0.7), 16, spread=75)
    aim((0.42, -1.62, 1.12), (0.08, 0, 0.78), lens=24, roll=1)


def _breaker(
    at: tuple[float, float], side: int, amps: str, looks: tuple[Untyped, Untyped], *, double: bool = False
) -> None:
    (x, z), (body, handle) = at, looks
    high = 0.050 if double else 0.0245
    box((0.076, 0.055, high), (x, -0.045, z), body, bevel=0.0025)
    box((0.030, 0.006, high - 0.008), (x - side * 0.008, -0.074, z), body, bevel=0.002)
    rows = (-0.0125, 0.0125) if double else (0.0,)
    for dz in rows:
        box((0.016, 0.016, 0.0085), (x - side * 0.016, -0.082, z + dz), handle, bevel=0.002, turn=(0, 0, side * 18.0))
        cylinder(0.0036, 0.004, (x + side * 0.031, -0.0722, z + dz), metal((0.6, 0.55, 0.4), 0.4), turn=(90, 0, 0))
        mark, pen = board(120, 80)
        write(pen, (60, 40), amps, 60, ink=(240, 240, 240), anchor="mm", heavy=2)
        card(0.010, 0.0066, picture(mark), (x - side * 0.0285, -0.0728, z + dz))


def p32() -> None:
    """The service panel with its cover off: two wires under one breaker's screw."""
    grey = paint((0.30, 0.31, 0.32), 0.45, dirt=0.3)
    box((0.40, 0.004, 0.8), (0, 0.0, 0), metal((0.45, 0.46, 0.47), 0.45), bevel=0)
    for x in (-0.19, 0.19):
        box((0.004, 0.10, 0.8), (x, -0.05, 0), grey, bevel=0)
    alu = metal((0.72, 0.72, 0.73), 0.3)
    for x in (-0.014, 0.014):
        box((0.016, 0.02, 0.62), (x, -0.03, 0.03), alu, bevel=0.002)
    body, handle = paint((0.022, 0.022, 0.024), 0.42, dirt=0.3), paint((0.03, 0.03, 0.032), 0.35)
    black, red, white, bare = (
        paint(c, 0.4) for c in ((0.02, 0.02, 0.02), (0.45, 0.03, 0.02), (0.72, 0.71, 0.67), (0.5, 0.25, 0.12))
    )
    copper = metal((0.76, 0.40, 0.24), 0.3)
    rng = np.random.default_rng(8)
    left = ["20", "15", "20", "15", "15", "20", "15", "20"]
    right = ["15", "20", "30", "15", "20", "15", "15", "20"]
    for side, names in ((-1, left), (1, right)):
        for i, amps in enumerate(names):
            z = 0.105 - i * 0.0262
            x = side * 0.058
            _breaker((x, z), side, amps, (body, handle))
            doubled = side == 1 and i == 3
            for k in range(2 if doubled else 1):
                off = 0.0032 * (2 * k - 1) if doubled else 0.0
                start = (x + side * 0.030, -0.0705 + 0.0, z + off)
                colour = red if (doubled and k) or (side == -1 and i == 2) else black
                reach = 0.150 + rng.normal(0, 0.007)
                down = 0.05 if (i + k) % 2 else -0.02
                pipe([start, (x + side * 0.041, -0.070, z + off)], 0.0013, copper, soft=False)
                path = [(x + side * 0.040, -0.070, z + off), (x + side * 0.062, -0.072 - 0.012 * k, z + off * 2.5), (side * reach, -0.055 - 0.014 * k, z - 0.02),
                        (side * (reach + 0.012), -0.04, z - 0.09 + down), (side * (reach + 0.005), -0.03, -0.42)]  # fmt: skip
                pipe(path, 0.0021, colour)
    _breaker((-0.058, 0.162), -1, "150", (body, handle), double=True)
    for z in (0.150, 0.175):
        pipe([(-0.09, -0.06, z), (-0.125, -0.06, z + 0.01), (-0.15, -0.05, 0.24), (-0.12, -0.05, 0.45)], 0.0062, black)
    for side in (-1, 1):
        x = side * 0.112
        box((0.012, 0.018, 0.24), (x, -0.018, -0.24), alu, bevel=0.002)
        for i in range(11):
            z = -0.135 - i * 0.02
            cylinder(0.0034, 0.004, (x, -0.028, z), metal(), turn=(90, 0, 0))
            look = white if i % 3 else bare
            pipe(
                [
                    (x + side * 0.004, -0.018, z),
                    (x + side * 0.03, -0.025, z - 0.01),
                    (side * 0.165, -0.03, z - 0.04),
                    (side * 0.17, -0.02, -0.5),
                ],
                0.0019 if i % 3 else 0.0014,
                look,
            )
    for i in range(7):
        x0 = -0.165 + 0.006 * i
        pipe(
            [(x0, -0.02, 0.45), (x0 - 0.004, -0.02, 0.2), (x0 + 0.004, -0.018, -0.05), (x0, -0.02, -0.45)],
            0.0020,
            white if i % 2 else bare,
        )
        pipe(
            [(-x0, -0.02, 0.45), (-x0 + 0.004, -0.02, 0.2), (-x0 - 0.004, -0.018, -0.05), (-x0, -0.02, -0.45)],
            0.0020,
            bare if i % 2 else white,
        )
    box((3, 0.1, 3), (0, 0.06, 0), rough((0.5, 0.48, 0.44), (0.4, 0.38, 0.35)), bevel=0)
    box((3, 0.02, 0.09), (0, 0.02, 0.5), wood(), bevel=0)
    many(
        [(rng.uniform(-0.18, 0.18), -0.003, rng.uniform(-0.3, 0.3)) for _ in range(60)],
        (0.003, 0.002, 0.002),
        paint((0.3, 0.28, 0.25), 0.9),
    )
    _dim(0.12)
    torch((0.10, -0.55, 0.16), (0.04, 0, 0.03), 9, spread=70, radius=0.02)
    panel_light((-0.6, -0.9, 0.7), (0, 0, 0), 0.5, 6)
    aim((0.165, -0.310, 0.085), (0.068, -0.04, 0.026), lens=30, roll=2, fstop=6, focus=(0.09, -0.07, 0.03))
