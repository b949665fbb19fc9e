"""Roof: the mossy north slope, the flashing at the chimney, the gutter."""

from __future__ import annotations

from render_demo.engine import np
from render_demo.parts import LEAF, blades, bricks, clumps, conifer, fibres, shingles
from render_demo.solids import box, fractal, many, mesh, pipe
from render_demo.studio import aim, overcast
from render_demo.surfaces import Look, metal, paint, rough, tinted
from render_demo.untyped import Untyped

__all__ = ["p12", "p13", "p14"]

MOSS = ((0.0, (0.020, 0.036, 0.008)), (0.6, (0.055, 0.085, 0.016)), (1.0, (0.12, 0.145, 0.035)))
NEEDLES = ((0.0, (0.05, 0.025, 0.012)), (0.7, (0.16, 0.08, 0.03)), (1.0, (0.27, 0.17, 0.07)))


def _asphalt(wet: float = 0.0) -> Untyped:
    look = Look("asphalt")
    base = look.ramp(look.tint(), (0, (0.050, 0.047, 0.045)), (0.6, (0.085, 0.078, 0.070)), (1, (0.125, 0.110, 0.095)))
    grit = look.noise(520.0, detail=2, harsh=0.8)
    shade = look.blend(
        1.0,
        base,
        look.ramp(grit, (0.38, (0.35, 0.35, 0.36)), (0.5, (0.95, 0.93, 0.9)), (0.62, (2.0, 1.9, 1.8))),
        "MULTIPLY",
    )
    shade = look.blend(
        look.math("MULTIPLY", look.level(look.noise(3.0, harsh=0.7), 0.5, 0.8), 0.4), shade, (0.03, 0.035, 0.03)
    )
    gloss: Untyped = 0.92
    if wet:
        gloss = look.ramp(look.noise(3.0), (0.4, (0.92,) * 3), (0.6, (0.92 * (1 - wet),) * 3))
    return look.done(shade, gloss, Normal=look.bump(grit, 0.0016))


def _on_slope(x: Untyped, u: Untyped, up: Untyped, at: tuple[float, float, float], pitch: float) -> Untyped:
    a = np.radians(pitch)
    return np.stack([at[0] + x, at[1] + u * np.cos(a) - up * np.sin(a), at[2] + u * np.sin(a) + up * np.cos(a)], -1)


def p12() -> None:
    """The north slope from the ladder at the eave: wet shingles, moss in every joint."""
    pitch, at = 26.57, (0.0, 0.0, 0.0)
    shingles(7.2, 4.6, _asphalt(0.75), at=at, turn=(pitch, 0, 0))
    rng = np.random.default_rng(6)
    green = tinted(*MOSS, roughness=1.0, grain=500.0, relief=0.003)
    field = fractal(300, 400, 11, 1.5)
    n = 150000
    x, u = rng.uniform(-3.5, 3.5, n), rng.uniform(0.05, 4.5, n)
    thick = field[(u / 4.6 * 299).astype(int), ((x / 7.2 + 0.5) * 399).astype(int)]
    joint = np.exp(-(((u / 0.14 + 0.05) % 1.0 - 0.02) ** 2) / 0.02) + np.exp(
        -(((u / 0.14 + 0.05) % 1.0 - 1.0) ** 2) / 0.02
    )
    keep = thick + 1.2 * joint + rng.normal(0, 0.35, n) > 1.55
    x, u, thick = x[keep], u[keep], thick[keep]
    clumps(_on_slope(x, u, 0.008 + 0.006 * np.clip(thick, 0, 2), at, pitch), green, size=0.015, flat=0.8, vary=0.3)
    x, u = rng.uniform(-3.5, 3.5, 4000), rng.uniform(0, 4.5, 4000)
    fibres(_on_slope(x, u, np.full(4000, 0.016), at, pitch), tinted(*NEEDLES), long=0.045, thick=0.0012, flat=0.15)
    white = paint((0.62, 0.62, 0.58), 0.45, dirt=0.6)
    box((7.4, 0.12, 0.012), (0, -0.075, -0.05), white)
    box((7.4, 0.012, 0.10), (0, -0.14, -0.005), white, bevel=0.004)
    box((7.4, 0.012, 0.2), (0, -0.01, -0.11), white)
    rail = metal((0.70, 0.71, 0.72), 0.4)
    for x in (-0.78,):
        box((0.07, 0.03, 1.6), (x, -0.22, 0.1), rail, bevel=0.004, turn=(-14, 0, 0))
    box((1.2, 1.2, 1.4), (1.35, 3.4, 2.0), paint((0.2, 0.08, 0.06)))
    bricks(
        1.2,
        1.3,
        tinted((0, (0.18, 0.07, 0.05)), (1, (0.30, 0.13, 0.09)), grain=90.0),
        rough((0.4, 0.38, 0.35), (0.3, 0.29, 0.27)),
        at=(1.35, 2.76, 1.45),
    )
    pipe([(-1.1, 2.6, 1.2), (-1.1, 2.6, 1.75)], 0.045, metal((0.4, 0.4, 0.4), 0.6), soft=False)
    for i, (tx, ty) in enumerate(((-7, 14), (-3, 17), (2, 15), (6, 16), (9, 13), (-10, 13))):
        conifer((tx, ty, -4), 15, seed=i + 3)
    overcast(1.0)
    aim((-0.3, -0.85, 0.78), (0.12, 1.7, 0.78), lens=26, roll=-2)


def p13() -> None:
    """Step flashing lifted away from the chimney's side."""
    pitch = 22.0
    a = np.radians(pitch)
    shingles(3.0, 3.0, _asphalt(0.4), at=(0, -1.3, 0), turn=(pitch, 0, 0), seed=5)

    def height(y: float) -> float:
        return float(np.tan(a) * (y + 1.3))

    brick = tinted(
        (0, (0.10, 0.035, 0.025)),
        (0.5, (0.20, 0.075, 0.045)),
        (1, (0.27, 0.125, 0.08)),
        roughness=0.9,
        grain=160.0,
        relief=0.0025,
    )
    mortar = rough((0.40, 0.38, 0.34), (0.27, 0.26, 0.23), grain=300.0, relief=0.002)
    # The chimney's side faces −x; its front faces −y.
    bricks(1.05, 2.2, brick, mortar, at=(0.16, 0.32, -0.19), turn=(0, 0, -90), seed=9)
    bricks(0.9, 2.2, brick, mortar, at=(0.62, -0.17, -0.19), seed=12)
    box((0.88, 0.96, 2.2), (0.62, 0.34, 1.1), mortar)
    lead = metal((0.50, 0.51, 0.52), 0.42, rust=0.25, dents=0.0015)
    for i in range(7):
        y = -0.16 + i * 0.14
        z = height(y) + 0.012 + i * 0.0004
        lifted = {2: 1.0, 3: 0.55}.get(i, 0.06)
        bend = 0.075 * lifted
        rows = []
        for s in np.linspace(0, 1, 9):
            off = bend * (s**1.4)
            rows.append((0.113 - off, 0.115 * s * (1 - 0.15 * lifted) + 0.004))
        points = [
            (x + (0.012 * lifted * e), y + e * 0.18 - 0.02, z + up + np.tan(a) * e * 0.18)
            for x, up in rows
            for e in (0.0, 1.0)
        ]
        faces = [(2 * k, 2 * k + 1, 2 * k + 3, 2 * k + 2) for k in range(8)]
        mesh(points, faces, lead, smooth=True)
        flat = [
            (0.113, y - 0.02, z),
            (0.113, y + 0.16, z + np.tan(a) * 0.18),
            (0.0, y + 0.16, z + np.tan(a) * 0.18 - 0.004),
            (0.0, y - 0.02, z - 0.004),
        ]
        mesh(flat, [(0, 1, 2, 3)], lead) if i in (2, 3) else None
    tar = paint((0.02, 0.02, 0.02), 0.35)
    rng = np.random.default_rng(4)
    ys = rng.uniform(-0.15, 0.75, 260)
    keep = (ys < 0.08) | (ys > 0.42)
    clumps(
        np.stack(
            [0.106 + rng.normal(0, 0.004, 260), ys, np.tan(a) * (ys + 1.3) + 0.012 + np.abs(rng.normal(0, 0.02, 260))],
            -1,
        )[keep],
        tar,
        size=0.010,
        flat=0.4,
    )
    n = 1500
    ys = rng.uniform(-0.9, 0.9, n)
    xs = 0.08 - np.abs(rng.normal(0, 0.25, n))
    fibres(np.stack([xs, ys, np.tan(a) * (ys + 1.3) + 0.014], -1), tinted(*NEEDLES), long=0.05, thick=0.0012, flat=0.15)
    clumps(np.stack([xs[:500], np.round((ys[:500]) / 0.13) * 0.13, np.tan(a) * (np.round(ys[:500] / 0.13) * 0.13 + 1.3) + 0.008], -1),
           tinted(*MOSS, roughness=1.0), size=0.010)  # fmt: skip
    for i, (tx, ty) in enumerate(((-4, 13), (0, 15), (4, 13))):
        conifer((tx, ty, -4), 16, seed=i + 9)
    overcast(1.0)
    aim((-0.62, -0.42, 0.98), (0.10, 0.20, 0.62), lens=27, roll=2)


def p14() -> None:
    """A gutter full of needles, from above."""
    shingles(3.2, 1.2, _asphalt(0.5), at=(0, 0.03, 0.03), turn=(22, 0, 0), seed=8)
    white = paint((0.60, 0.60, 0.56), 0.4, dirt=0.7)
    box((3.2, 0.006, 0.12), (0, -0.125, -0.045), white)
    box((3.2, 0.018, 0.014), (0, -0.128, 0.012), white, bevel=0.004)
    box((3.2, 0.12, 0.006), (0, -0.07, -0.10), white)
    box((3.2, 0.02, 0.2), (0, 0.02, -0.08), white)
    for x in (-0.62, 0.05, 0.7):
        box((0.022, 0.14, 0.004), (x, -0.06, 0.016), metal((0.6, 0.6, 0.6), 0.4), bevel=0)
    rng = np.random.default_rng(9)
    bed = rough((0.07, 0.042, 0.022), (0.03, 0.018, 0.01), scale=30, grain=200, relief=0.006)
    box((3.2, 0.125, 0.05), (0, -0.06, -0.052), bed)
    n = 26000
    x, y = rng.uniform(-1.1, 1.1, n), rng.uniform(-0.118, 0.012, n)
    heap = 0.010 * fractal(2, 400, 3, 1.4)[0][((x / 2.2 + 0.5) * 399).astype(int).clip(0, 399)]
    fibres(
        np.stack([x, y, -0.018 + heap + rng.uniform(-0.010, 0.012, n)], -1),
        tinted(*NEEDLES, roughness=0.7),
        long=0.055,
        thick=0.0011,
        flat=0.3,
    )
    n = 900
    x, u = rng.uniform(-1.1, 1.1, n), np.abs(rng.normal(0, 0.25, n))
    fibres(_on_slope(x, u, np.full(n, 0.02), (0, 0.03, 0.03), 22), tinted(*NEEDLES), long=0.05, thick=0.0012, flat=0.15)
    leaf = tinted((0, (0.20, 0.085, 0.018)), (1, (0.36, 0.22, 0.05)), roughness=0.5)
    n = 16
    many(np.stack([rng.uniform(-0.8, 0.8, n), rng.uniform(-0.10, -0.03, n), np.full(n, 0.0)], -1), (0.05, 0.065, 0.05), leaf,
         turns=rng.normal(0, 1, (n, 3)) * np.array([0.3, 0.3, 3]), base=LEAF)  # fmt: skip
    n = 260
    blades(np.stack([rng.normal(0.25, 0.10, n), rng.uniform(-0.1, -0.02, n), np.full(n, -0.02)], -1), tinted((0, (0.06, 0.12, 0.02)), (1, (0.16, 0.25, 0.06))),
           high=0.035, wide=0.004)  # fmt: skip
    clumps(
        np.stack([rng.uniform(-1, 1, 900), 0.035 + np.abs(rng.normal(0, 0.025, 900)), 0.04 + 0 * rng.random(900)], -1),
        tinted(*MOSS, roughness=1.0),
        size=0.013,
    )
    box(
        (40, 40, 0.02),
        (0, -3, -4.5),
        rough((0.10, 0.14, 0.035), (0.05, 0.075, 0.02), scale=2.0, grain=20.0, relief=0.02),
    )
    overcast(1.0)
    aim((-0.34, -0.42, 0.44), (0.02, -0.03, 0.0), lens=27, roll=3, fstop=6)
