"""Garage and laundry: the door's photo-eye, the hollow door to the house, the white vinyl dryer duct."""

from __future__ import annotations

import itertools

from render_demo.engine import np
from render_demo.parts import clumps, steel_tape
from render_demo.scenes.attic import ribbed_hose
from render_demo.solids import box, cylinder, mesh, pipe, turned
from render_demo.studio import aim, panel_light, torch, world
from render_demo.surfaces import Look, glow, metal, paint, rough, tinted, wood

__all__ = ["p26", "p27", "p29"]


def _dim(strength: float = 0.25) -> None:
    world((0.55, 0.54, 0.52), (0.5, 0.49, 0.47), (0.25, 0.23, 0.2), strength)


def p26() -> None:
    """The photo-eye beside the door track, a tape from the floor to it."""
    concrete = rough((0.36, 0.35, 0.33), (0.22, 0.21, 0.20), scale=3, grain=220, relief=0.0008, roughness=0.6)
    box((4, 4, 0.05), (0, -1, -0.025), concrete, bevel=0)
    gypsum = rough((0.60, 0.59, 0.56), (0.50, 0.49, 0.46), scale=2, grain=120, relief=0.0006)
    box((4, 0.1, 3), (0, 0.05, 1.5), gypsum, bevel=0)
    fir = wood((0.56, 0.40, 0.24), (0.36, 0.23, 0.12), along=2, worn=0.2)
    box((0.14, 0.04, 3), (0.05, -0.02, 1.5), fir, bevel=0.003)
    galv = metal((0.58, 0.59, 0.60), 0.38, rust=0.12, dents=0.001)
    box((0.002, 0.055, 3), (0.055, -0.085, 1.52), galv, bevel=0)
    box((0.05, 0.002, 3), (0.030, -0.112, 1.52), galv, bevel=0)
    box((0.018, 0.012, 3), (0.008, -0.060, 1.52), galv, bevel=0.003)
    for z in (0.12, 0.62):
        box((0.10, 0.002, 0.045), (0.05, -0.0415, z), galv, bevel=0)
        box((0.002, 0.05, 0.045), (0.058, -0.065, z), galv, bevel=0)
        cylinder(0.007, 0.008, (0.02, -0.045, z), metal(), turn=(90, 0, 0))
    box((0.13, 0.0025, 0.035), (-0.02, -0.117, 0.235), galv, bevel=0)
    box((0.0025, 0.07, 0.035), (-0.084, -0.085, 0.235), galv, bevel=0)
    black = paint((0.025, 0.025, 0.027), 0.4, dirt=0.6)
    box((0.038, 0.052, 0.062), (-0.107, -0.080, 0.235), black, bevel=0.006)
    cylinder(0.014, 0.012, (-0.130, -0.080, 0.243), paint((0.16, 0.02, 0.02), 0.1), turn=(0, 90, 0), edge=0.003)
    cylinder(0.0032, 0.004, (-0.107, -0.1075, 0.250), glow((0.1, 1.0, 0.2), 9.0), turn=(90, 0, 0))
    white = paint((0.70, 0.70, 0.66), 0.4)
    pipe(
        [
            (-0.10, -0.055, 0.265),
            (-0.09, -0.02, 0.32),
            (-0.075, -0.012, 0.5),
            (-0.08, -0.008, 0.9),
            (-0.07, -0.008, 2.0),
        ],
        0.003,
        white,
    )
    for z in (0.45, 0.8):
        box((0.014, 0.006, 0.008), (-0.076, -0.010, z), white)
    steel_tape(10.5, (-0.175, -0.085, 0.0), turn=(0, -90, 0), upright=True)
    box((0.068, 0.040, 0.072), (-0.175, -0.075, 10.5 * 0.0254 + 0.03), paint((0.05, 0.05, 0.05), 0.4), bevel=0.012)
    box((0.038, 0.042, 0.04), (-0.175, -0.075, 10.5 * 0.0254 + 0.03), paint((0.72, 0.50, 0.03), 0.4), bevel=0.008)
    door = paint((0.66, 0.66, 0.62), 0.5, dirt=0.4)
    for i in range(4):
        box((2.0, 0.045, 0.52), (1.15, -0.10, 0.27 + i * 0.53), door, bevel=0.008)
    box((2.0, 0.03, 0.03), (1.15, -0.10, 0.012), paint((0.02, 0.02, 0.02), 0.8), bevel=0.008)
    cylinder(0.022, 0.012, (0.10, -0.088, 0.46), paint((0.7, 0.7, 0.68)), turn=(90, 0, 0))
    rng = np.random.default_rng(3)
    clumps(np.stack([rng.uniform(-0.7, 0.7, 420), -np.abs(rng.normal(0, 0.16, 420)), np.full(420, 0.001)], -1),
           tinted((0, (0.10, 0.09, 0.08)), (1, (0.26, 0.22, 0.16))), size=0.0035, vary=0.6, flat=0.4)  # fmt: skip
    _dim()
    panel_light((-1.2, -1.6, 2.2), (0, 0, 0.2), 0.9, 40)
    torch((-0.35, -0.8, 0.6), (-0.05, 0, 0.2), 5, spread=80)
    aim((-0.26, -0.68, 0.42), (-0.055, 0, 0.205), lens=27, roll=1.5)


def p27() -> None:
    """The door from the garage to the house: thin flush veneer, broken at the bottom, nothing to close it."""
    gypsum = rough((0.60, 0.59, 0.56), (0.48, 0.47, 0.44), scale=2, grain=120, relief=0.0006)
    box((3.0, 0.1, 3), (-1.96, 0.05, 1.7), gypsum, bevel=0)
    box((3.0, 0.1, 3), (1.96, 0.05, 1.7), gypsum, bevel=0)
    box((0.92, 0.1, 1), (0, 0.05, 2.80), gypsum, bevel=0)
    white = paint((0.68, 0.67, 0.62), 0.45, dirt=0.5)
    for x in (-0.455, 0.455):
        box((0.07, 0.018, 2.12), (x, -0.009, 1.26), white, bevel=0.004)
    box((0.98, 0.018, 0.07), (0, -0.009, 2.30), white, bevel=0.004)
    veneer = wood((0.50, 0.31, 0.17), (0.34, 0.19, 0.095), along=2, roughness=0.4)
    box((0.82, 0.035, 2.03), (0, 0.022, 1.225), veneer, bevel=0.002)
    # The broken corner: a dark hollow with torn veneer round it and the paper lattice inside.
    outline = [
        (-0.33, 0.215),
        (-0.30, 0.34),
        (-0.25, 0.40),
        (-0.19, 0.375),
        (-0.16, 0.43),
        (-0.11, 0.37),
        (-0.065, 0.33),
        (-0.05, 0.215),
    ]
    mesh([(x, 0.0035, z + 0.02) for x, z in outline], [tuple(range(len(outline)))], paint((0.035, 0.025, 0.018), 1.0))
    card_brown = paint((0.42, 0.30, 0.18), 0.9)
    for k in range(5):
        for j in range(3):
            x, z = -0.29 + k * 0.052 + 0.026 * (j % 2), 0.26 + j * 0.042
            if z < 0.36 - abs(x + 0.19) * 0.35:
                ring = [(x + 0.026 * np.cos(a), 0.0025, z + 0.024 * np.sin(a)) for a in np.linspace(0, 2 * np.pi, 7)]
                pipe(ring, 0.0022, card_brown, soft=False)
    splinter = wood((0.62, 0.46, 0.28), (0.46, 0.30, 0.17), along=2, roughness=0.9)
    for i, ((x0, z0), (x1, z1)) in enumerate(itertools.pairwise(outline)):
        long = float(np.hypot(x1 - x0, z1 - z0))
        box(
            (long, 0.004, 0.012),
            ((x0 + x1) / 2, 0.001, (z0 + z1) / 2 + 0.024),
            splinter,
            turn=(14, -float(np.degrees(np.arctan2(z1 - z0, x1 - x0))), float(i % 3) * 3),
            bevel=0.001,
        )
    brass = metal((0.72, 0.52, 0.22), 0.28)
    cylinder(0.032, 0.006, (0.345, 0.002, 1.15), brass, turn=(90, 0, 0))
    turned(
        [(0.010, 0.0), (0.010, 0.025), (0.022, 0.038), (0.027, 0.052), (0.022, 0.064), (1e-4, 0.068)],
        brass,
        (0.345, 0.0, 1.15),
        turn=(90, 0, 0),
    )
    for z in (0.50, 1.25, 2.0):
        box((0.012, 0.012, 0.09), (-0.415, -0.003, z), brass, bevel=0.004)
        box((0.030, 0.002, 0.09), (-0.40, 0.0035, z), brass, bevel=0)
    concrete = rough((0.36, 0.35, 0.33), (0.22, 0.21, 0.20), scale=2, grain=120, relief=0.001, roughness=0.6)
    box((5, 5, 0.05), (0, -2, -0.025), concrete, bevel=0)
    box((1.2, 0.6, 0.19), (0, -0.3, 0.095), wood((0.5, 0.36, 0.22), (0.34, 0.22, 0.12), worn=0.4), bevel=0.004)
    box((0.07, 0.004, 0.115), (0.62, -0.002, 1.25), paint((0.74, 0.73, 0.68)), bevel=0.003)
    box((0.010, 0.012, 0.022), (0.62, -0.006, 1.25), paint((0.74, 0.73, 0.68)), bevel=0.002)
    carton = paint((0.40, 0.28, 0.16), 0.8)
    for x, y, z, sx, sy, sz in (
        (1.05, -0.30, 0.2, 0.5, 0.4, 0.4),
        (1.0, -0.3, 0.56, 0.42, 0.36, 0.3),
        (-1.1, -0.25, 0.25, 0.55, 0.4, 0.5),
    ):
        box((sx, sy, sz), (x, y, z), carton, bevel=0.004)
        box((0.06, sy + 0.002, sz + 0.002), (x, y, z), paint((0.52, 0.42, 0.27), 0.3), bevel=0.004)
    cylinder(0.014, 1.3, (-0.78, -0.12, 0.68), wood(along=2), turn=(-6, 3, 0))
    _dim()
    panel_light((0.3, -2.0, 2.6), (0, 0, 1), 0.8, 70)
    torch((-0.3, -1.9, 1.5), (0, 0, 0.9), 20, spread=80)
    aim((-0.42, -2.05, 1.40), (0.04, 0, 1.06), lens=24, roll=-1)


def p29() -> None:
    """Behind the dryer: ribbed white vinyl duct from the machine to the wall."""
    wall = rough((0.60, 0.57, 0.50), (0.54, 0.51, 0.44), scale=2, grain=140, relief=0.0007)
    box((4, 0.1, 3), (0, 0.05, 1.5), wall, bevel=0)
    floor = rough((0.42, 0.38, 0.32), (0.30, 0.27, 0.23), scale=6, grain=80, relief=0.0004, roughness=0.4)
    box((4, 3, 0.04), (0, -1, -0.02), floor, bevel=0)
    box((4, 0.012, 0.085), (0, -0.006, 0.043), paint((0.68, 0.67, 0.62), 0.4, dirt=0.5), bevel=0.004)
    shell = paint((0.74, 0.74, 0.72), 0.25, dirt=0.3)
    box((0.69, 0.64, 0.92), (0.52, -0.72, 0.48), shell, bevel=0.008, turn=(0, 0, -24))
    galv = metal((0.56, 0.57, 0.58), 0.4)
    turned([(0.052, -0.06), (0.052, 0.02), (0.060, 0.025), (0.060, 0.03)], galv, (-0.30, -0.015, 0.30), turn=(90, 0, 0))
    cylinder(0.075, 0.006, (-0.30, -0.004, 0.30), paint((0.7, 0.7, 0.68)), turn=(90, 0, 0))
    vinyl = Look("vinyl")
    soil = vinyl.level(vinyl.noise(9.0), 0.45, 0.8)
    white = vinyl.done(
        vinyl.blend(soil, (0.78, 0.77, 0.73), (0.60, 0.57, 0.50)),
        0.38,
        Subsurface_Weight=0.25,
        Subsurface_Radius=(0.02, 0.02, 0.02),
    )
    path = [
        (-0.30, -0.03, 0.30),
        (-0.30, -0.12, 0.295),
        (-0.25, -0.25, 0.20),
        (-0.12, -0.36, 0.085),
        (0.06, -0.40, 0.075),
        (0.17, -0.40, 0.10),
        (0.25, -0.42, 0.16),
        (0.30, -0.49, 0.17),
    ]
    t = np.linspace(0, len(path) - 1, 140)
    ribbed_hose(
        np.stack([np.interp(t, range(len(path)), [p[k] for p in path]) for k in range(3)], -1),
        0.058,
        white,
        pitch=0.020,
        depth=0.008,
    )
    steel = metal((0.62, 0.62, 0.63), 0.25)
    ring = [(-0.30 + 0.057 * np.cos(a), -0.075, 0.30 + 0.057 * np.sin(a)) for a in np.linspace(0, 2 * np.pi, 40)]
    pipe(ring, 0.003, steel)
    box((0.012, 0.014, 0.010), (-0.30, -0.075, 0.36), steel, bevel=0.002)
    black = paint((0.02, 0.02, 0.02), 0.4)
    box((0.115, 0.055, 0.115), (0.02, -0.028, 0.42), black, bevel=0.008)
    cylinder(0.030, 0.05, (0.02, -0.075, 0.42), black, turn=(90, 0, 0), edge=0.008)
    pipe(
        [(0.02, -0.10, 0.42), (0.03, -0.18, 0.38), (0.08, -0.24, 0.16), (0.18, -0.28, 0.22), (0.30, -0.42, 0.46)],
        0.011,
        black,
    )
    rng = np.random.default_rng(7)
    n = 900
    clumps(np.stack([rng.normal(-0.12, 0.22, n), -0.02 - np.abs(rng.normal(0.2, 0.15, n)), np.full(n, 0.001)], -1),
           tinted((0, (0.24, 0.24, 0.26)), (1, (0.46, 0.45, 0.46)), roughness=1), size=0.005, flat=0.4)  # fmt: skip
    box((0.03, 0.6, 1.0), (-0.72, -0.35, 0.5), wood((0.46, 0.28, 0.14), (0.29, 0.16, 0.07), along=2), bevel=0.002)
    _dim()
    panel_light((-0.3, -1.6, 2.3), (0, -0.2, 0.2), 0.8, 30)
    torch((-0.2, -1.0, 1.0), (-0.05, -0.2, 0.2), 9, spread=85)
    aim((-0.34, -0.98, 0.80), (-0.05, -0.22, 0.20), lens=25, roll=2)
