"""West face: the deck's ledger and guard, and the dryer outlet beside it."""

from __future__ import annotations

from render_demo.drawings import board
from render_demo.engine import INCH, np
from render_demo.parts import blades, boards, conifer, fibres, siding, steel_tape
from render_demo.scenes.outside import GRASS, painted_boards
from render_demo.solids import box, card, cylinder, fractal, relief, turned
from render_demo.studio import aim, overcast, torch
from render_demo.surfaces import metal, paint, picture, rough, tinted, wood

__all__ = ["p09", "p10", "p11"]


def p09() -> None:
    """Under the deck: the ledger is held to the wall by nails alone."""
    old = wood((0.36, 0.27, 0.18), (0.19, 0.13, 0.085), worn=0.35, roughness=0.8)
    cross = wood((0.34, 0.25, 0.17), (0.17, 0.12, 0.08), along=1, worn=0.35, roughness=0.8)
    siding(4, 1.4, (0, 0.05, -1.22), painted_boards())
    box((4, 0.02, 0.5), (0, 0.06, 0.2), wood((0.3, 0.22, 0.15), (0.16, 0.11, 0.07), roughness=0.9))
    box((4, 0.038, 0.184), (0, 0.02, 0.0), old, bevel=0.003)
    steel = metal((0.45, 0.45, 0.46), 0.45, rust=0.5)
    for x in (-0.61, -0.2, 0.21, 0.62):
        box((0.038, 1.6, 0.184), (x, -0.80, 0.002), cross, bevel=0.003)
        for side in (-1, 1):
            box((0.0015, 0.085, 0.12), (x + side * 0.0205, -0.045, -0.025), steel, bevel=0)
            box((0.034, 0.0015, 0.12), (x + side * 0.0375, -0.0005, -0.025), steel, bevel=0)
        box((0.042, 0.085, 0.0015), (x, -0.045, -0.0935), steel, bevel=0)
        for dx in (-0.038, 0.038):
            for z in (-0.07, -0.02):
                cylinder(0.005, 0.003, (x + dx, -0.002, z), steel, turn=(90, 0, 0))
    rust = metal((0.30, 0.20, 0.15), 0.7, rust=0.95)
    rng = np.random.default_rng(2)
    stain, pen = board(60, 300)
    for i in range(300):
        pen.line((30 - 14 + i * 0.02, i, 30 + 14 - i * 0.02, i), fill=(70, 32, 14, max(0, 150 - i // 2)))
    for x in (-0.46, -0.36, -0.07, 0.05, 0.34, 0.45, 0.78):
        for z in (0.055, -0.05):
            px, pz = x + rng.normal(0, 0.012), z + rng.normal(0, 0.008)
            cylinder(0.0052, 0.004, (px, -0.0005, pz), rust, turn=(90 + rng.normal(0, 6), 0, 0))
            card(0.012, 0.05, picture(stain, 0.9), (px, -0.0005, pz - 0.027))
    boards(4, 2.4, (0, -1.1, 0.106), old, along="x")
    rows = cols = 100
    relief(
        8,
        6,
        0.02 * fractal(rows, cols, 4, 1.8),
        rough((0.16, 0.12, 0.08), (0.08, 0.06, 0.04), relief=0.01),
        at=(0, -2, -1.25),
    )
    overcast(0.9)
    torch((0.0, -0.75, -0.45), (0.05, 0, 0), 12, spread=95)
    aim((-0.20, -0.72, -0.30), (0.04, 0, 0.0), lens=27, roll=1.5)


def p10() -> None:
    """Deck guard with wide gaps between its balusters, a tape held across one."""
    cedar = wood((0.45, 0.30, 0.19), (0.25, 0.16, 0.10), along=2, worn=0.3)
    rail = wood((0.43, 0.29, 0.18), (0.24, 0.15, 0.09), worn=0.3)
    floor = wood((0.36, 0.28, 0.21), (0.20, 0.15, 0.11), along=1, worn=0.5, roughness=0.5)
    gap, thick = 5.25 * INCH, 1.5 * INCH
    for i in range(-6, 7):
        box((thick, thick, 0.95), (i * (gap + thick), 0, 0.52), cedar, bevel=0.003, turn=(0, 0, float(i % 3)))
    for x in (-0.85, 0.98):
        box((0.089, 0.089, 1.15), (x, 0.07, 0.52), cedar, bevel=0.004)
    box((3, 0.038, 0.089), (0, 0.032, 0.92), rail, bevel=0.003)
    box((3, 0.038, 0.089), (0, 0.032, 0.14), rail, bevel=0.003)
    box((3, 0.14, 0.038), (0, 0.01, 1.005), rail, bevel=0.005)
    boards(4, 2.4, (0, -1.15, 0.0), floor, along="y")
    left = thick / 2
    steel_tape(7.5, (left, -0.026, 0.60), turn=(0, 0, 0))
    box((0.022, 0.014, 0.034), (left + 0.006, -0.018, 0.598), metal(), bevel=0.001)
    box((0.07, 0.035, 0.065), (left + 7.5 * INCH + 0.032, -0.022, 0.607), paint((0.05, 0.05, 0.05), 0.4), bevel=0.012)
    box((0.04, 0.037, 0.035), (left + 7.5 * INCH + 0.032, -0.022, 0.607), paint((0.72, 0.50, 0.03), 0.4), bevel=0.008)
    rows = cols = 120
    relief(
        50,
        40,
        0.15 * fractal(rows, cols, 4, 2.2),
        rough((0.10, 0.14, 0.035), (0.05, 0.075, 0.02), scale=2.0, grain=20.0, relief=0.02),
        at=(0, 21, -1.05),
    )
    rng = np.random.default_rng(3)
    blades(
        np.stack([rng.uniform(-4, 4, 16000), rng.uniform(1, 9, 16000), np.full(16000, -1.1)], -1),
        tinted(*GRASS),
        high=0.13,
        wide=0.012,
    )
    for i in range(16):
        box(
            (1.2, 0.03, 1.7),
            (-9 + i * 1.21, 11, -0.25),
            wood((0.30, 0.26, 0.22), (0.2, 0.17, 0.14), along=2),
            bevel=0.004,
        )
    for i, x in enumerate((-7, -3.5, 0.5, 4, 8)):
        conifer((x, 15 + i % 2 * 3, -1), 13, seed=i)
    overcast(1.0)
    aim((-0.12, -0.62, 0.82), (0.09, 0, 0.58), lens=28, roll=-1.5, fstop=4)


def p11() -> None:
    """The dryer's outlet in the wall: its cap is missing, lint hangs out."""
    siding(2.4, 1.6, (0, 0.05, -0.81), painted_boards())
    flange = paint((0.55, 0.54, 0.50), 0.5, dirt=0.6)
    ring = [
        (0.0508, -0.012),
        (0.062, -0.012),
        (0.062, 0.0),
        (0.054, 0.002),
        (0.054, 0.022),
        (0.0505, 0.022),
        (0.0500, -0.30),
    ]
    box((0.19, 0.010, 0.19), (0, 0.028, 0), wood((0.5, 0.5, 0.46), (0.42, 0.42, 0.38)), bevel=0.003)
    turned([*ring], flange, (0, 0.015, 0), turn=(90, 0, 0))
    turned([(0.0504, 0.021), (0.0500, -0.4)], metal((0.5, 0.5, 0.5), 0.5), (0, 0.015, 0), turn=(90, 0, 0))
    turned([(1e-4, -0.16), (0.0502, -0.15)], paint((0.03, 0.03, 0.035), 0.95), (0, 0.015, 0), turn=(90, 0, 0))
    lint = tinted((0, (0.20, 0.20, 0.22)), (0.6, (0.34, 0.33, 0.35)), (1, (0.45, 0.43, 0.43)), roughness=1.0)
    rng = np.random.default_rng(8)
    n = 9000
    a, deep = rng.uniform(0, 6.283, n), rng.uniform(-0.028, 0.11, n)
    r = 0.049 - np.abs(rng.normal(0, 0.011, n)) * (0.6 + 0.8 * (np.sin(a) < 0.2)) - 0.006 * np.sin(5 * a + 40 * deep)
    fibres(np.stack([r * np.cos(a), 0.01 + deep, r * np.sin(a)], -1), lint, long=0.016, thick=0.0006)
    n = 5000
    hang = rng.random(n) ** 1.6
    fibres(
        np.stack(
            [rng.normal(0.01, 0.020 + 0.012 * hang, n), -0.012 + rng.normal(0, 0.007, n), -0.044 - 0.075 * hang], -1
        ),
        lint,
        long=0.018,
        thick=0.0006,
    )
    n = 1800
    fibres(
        np.stack([rng.normal(0, 0.09, n), 0.028 + 0 * rng.random(n), -0.05 - np.abs(rng.normal(0, 0.13, n))], -1),
        lint,
        long=0.010,
        thick=0.0005,
        flat=0.2,
    )
    for x in (-0.082, 0.082):
        for z in (-0.082, 0.082):
            cylinder(0.0045, 0.004, (x, 0.022, z), metal(rust=0.5), turn=(90, 0, 0))
    overcast(1.0)
    aim((0.13, -0.40, 0.07), (0.0, 0.03, -0.018), lens=28, roll=2, fstop=5)
