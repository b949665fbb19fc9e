"""Attic: a bath fan's duct that ends in the insulation, and dark roof sheathing; both by torchlight."""

from __future__ import annotations

from render_demo.engine import np
from render_demo.parts import clumps, fibres
from render_demo.solids import box, drape, fractal, many, mesh, pipe, relief, turned
from render_demo.studio import aim, torch, world
from render_demo.surfaces import Look, metal, paint, rough, tinted, wood
from render_demo.untyped import Untyped

__all__ = ["fluff", "p24", "p25", "ribbed_hose"]


def fluff(
    wide: float, deep: float, at: tuple[float, float, float], *, seed: int, rise: float = 0.03, count: int = 60000
) -> Untyped:
    """Loose-fill insulation: a lumpy bed under tufts and stray fibres; gives the height at any x, y."""
    rows, cols = 260, int(260 * wide / deep)
    height = rise * fractal(rows, cols, seed, 1.5, low=3) + 0.35 * rise * fractal(rows, cols, seed + 1, 0.8)
    bed = rough((0.46, 0.44, 0.41), (0.27, 0.255, 0.235), scale=18, grain=130, relief=0.012, roughness=1.0)
    relief(wide, deep, height, bed, at=at)
    on = drape(height, wide, deep)
    rng = np.random.default_rng(seed)
    x, y = rng.uniform(-wide / 2, wide / 2, count), rng.uniform(-deep / 2, deep / 2, count)
    tufts = tinted(
        (0, (0.25, 0.235, 0.21)),
        (0.5, (0.44, 0.42, 0.39)),
        (1, (0.58, 0.56, 0.52)),
        roughness=1.0,
        grain=300,
        relief=0.003,
    )
    clumps(np.stack([x + at[0], y + at[1], on(x, y) + at[2]], -1), tufts, size=0.0045, vary=0.6, flat=0.8)
    x, y = rng.uniform(-wide / 2, wide / 2, count * 2), rng.uniform(-deep / 2, deep / 2, count * 2)
    fibres(np.stack([x + at[0], y + at[1], on(x, y) + at[2] + 0.006], -1), tufts, long=0.030, thick=0.0016, flat=0.9)
    return on


def ribbed_hose(
    path: Untyped, radius: float, look: Untyped, *, pitch: float = 0.022, depth: float = 0.006, steps: int = 48
) -> Untyped:
    """Flexible duct along *path* (n×3, closely spaced): a skin drawn in between its wire turns."""
    path = np.asarray(path, float)
    along = np.concatenate([[0], np.cumsum(np.linalg.norm(np.diff(path, axis=0), axis=1))])
    fine = np.arange(0, along[-1], pitch / 8)
    centre = np.stack([np.interp(fine, along, path[:, k]) for k in range(3)], -1)
    for _ in range(40):
        centre[1:-1] = (centre[:-2] + centre[2:]) / 2
    way = np.gradient(centre, axis=0)
    way /= np.linalg.norm(way, axis=1, keepdims=True)
    side = np.cross(way, np.array([0.13, 0.21, 0.97]))
    side /= np.linalg.norm(side, axis=1, keepdims=True)
    other = np.cross(way, side)
    ribs = np.abs(np.sin(np.pi * fine / pitch)) ** 0.7
    r = radius - depth * ribs
    angle = np.linspace(0, 2 * np.pi, steps, endpoint=False)
    dent = 1 + 0.03 * np.sin(2 * angle[None] + fine[:, None] * 9)
    ring = (
        r[:, None, None]
        * dent[..., None]
        * (np.cos(angle)[None, :, None] * side[:, None] + np.sin(angle)[None, :, None] * other[:, None])
    )
    points = (centre[:, None] + ring).reshape(-1, 3)
    faces = [
        (i * steps + c, i * steps + (c + 1) % steps, (i + 1) * steps + (c + 1) % steps, (i + 1) * steps + c)
        for i in range(len(fine) - 1)
        for c in range(steps)
    ]
    return mesh(points, faces, look, smooth=True)


def p24() -> None:
    """The bath fan's flexible duct lies on the insulation and ends there."""
    fluff(4.4, 3.6, (0, 0.5, 0), seed=4, rise=0.028)
    silver = paint((0.50, 0.51, 0.52), 0.32, dirt=0.4)
    path = [
        (-1.0, 1.15, 0.02),
        (-0.85, 1.05, 0.12),
        (-0.6, 0.85, 0.14),
        (-0.35, 0.55, 0.10),
        (-0.10, 0.30, 0.075),
        (0.12, 0.12, 0.072),
        (0.26, 0.02, 0.068),
    ]
    t = np.linspace(0, len(path) - 1, 120)
    smooth = np.stack([np.interp(t, range(len(path)), [p[k] for p in path]) for k in range(3)], -1)
    ribbed_hose(smooth, 0.058, silver, pitch=0.018, depth=0.005)
    way = np.array([0.14, -0.10, -0.004])
    way /= np.linalg.norm(way)
    turn = float(np.degrees(np.arctan2(way[1], way[0])))
    turned(
        [(0.0585, -0.02), (0.0595, 0.0), (0.0585, 0.012), (0.0545, 0.012), (0.0535, -0.05), (0.0535, -0.3)],
        silver,
        (0.255, 0.022, 0.068),
        turn=(0, 90, turn),
    )
    turned([(1e-4, -0.16), (0.0530, -0.15)], paint((0.01, 0.01, 0.01), 0.9), (0.255, 0.022, 0.068), turn=(0, 90, turn))
    box((0.24, 0.24, 0.20), (-1.08, 1.22, 0.0), metal((0.55, 0.56, 0.57), 0.45), bevel=0.004, turn=(0, 0, 12))
    timber = wood((0.56, 0.40, 0.24), (0.36, 0.23, 0.12), along=1, worn=0.15)
    for x in (-1.22, -0.61, 0.0, 0.61, 1.22, 1.83):
        box((0.038, 4.0, 0.089), (x + 0.08, 0.8, -0.015), timber, bevel=0.002)
        box((0.038, 5.0, 0.12), (x + 0.08, 1.9, 0.95), timber, turn=(-24, 0, 0), bevel=0.002)
    for x in (-0.61, 0.61):
        box(
            (0.038, 0.089, 1.4),
            (x + 0.12, 1.35, 0.55),
            wood((0.54, 0.38, 0.23), (0.34, 0.22, 0.12), along=2),
            turn=(18, 0, 0),
            bevel=0.002,
        )
    ply = wood((0.50, 0.35, 0.21), (0.36, 0.24, 0.14), along=0, worn=0.3)
    for j in range(5):
        box((4.8, 1.2, 0.012), (0, 0.25 + j * 1.1, 1.74 - j * 0.49), ply, turn=(-24, 0, 0), bevel=0)
    wire = paint((0.62, 0.60, 0.52), 0.4)
    pipe([(0.72, 2.2, 0.15), (0.71, 1.2, 0.08), (0.73, 0.4, 0.09), (0.70, -0.6, 0.07)], 0.0045, wire)
    world((0.1, 0.1, 0.1), (0.1, 0.1, 0.1), (0.05, 0.05, 0.05), 0.02)
    torch((0.55, -0.85, 0.72), (0.05, 0.35, 0.05), 34, spread=85)
    aim((0.52, -0.62, 0.55), (0.0, 0.33, 0.07), lens=26, roll=-2.5)


def p25() -> None:
    """Roof sheathing on the north side: dark blotches round the nails, grey between the rafters."""
    tilt = 24.0
    look = Look("sheathing")
    place = look.where((0.8, 9.0, 9.0))
    grain = look.noise(3.0, at=place, detail=4, bent=0.8)
    fir = look.ramp(grain, (0.3, (0.30, 0.19, 0.10)), (0.5, (0.50, 0.35, 0.20)), (0.7, (0.58, 0.43, 0.27)))
    big, small = look.noise(1.7, harsh=0.62), look.noise(34.0, harsh=0.8)
    blot = look.level(look.math("ADD", big, look.math("MULTIPLY", look.math("SUBTRACT", small, 0.5), 0.55)), 0.44, 0.60)
    dots = look.add("TexVoronoi", Vector=look.where(), Scale=26.0).outputs[0]
    specks = look.math("MULTIPLY", look.level(dots, 0.30, 0.10), look.level(big, 0.35, 0.5))
    dark = look.math("MAXIMUM", look.math("MULTIPLY", blot, 0.93), look.math("MULTIPLY", specks, 0.8))
    shade = look.blend(dark, fir, (0.022, 0.021, 0.019))
    ply = look.done(shade, look.blend(blot, (0.75,) * 3, (0.45,) * 3), Normal=look.bump(grain, 0.0006))
    a = np.radians(tilt)
    for j, (off, wide) in enumerate(((-0.61, 1.216), (0.61, 1.216), (1.83, 1.216))):
        box((5, wide, 0.012), (0.4 * (j % 2), off * np.cos(a), -off * np.sin(a)), ply, turn=(-tilt, 0, 0), bevel=0.001)
    timber = wood((0.54, 0.38, 0.23), (0.34, 0.22, 0.12), along=1, worn=0.45)
    for i in range(-2, 3):
        box((0.038, 5.0, 0.14), (i * 0.61 + 0.14, -0.03, -0.083), timber, turn=(-tilt, 0, 0), bevel=0.002)
    rust = metal((0.22, 0.15, 0.11), 0.7, rust=0.9)
    rng = np.random.default_rng(4)
    places, turns = [], []
    for i in range(24):
        for k in (-0.1, 0.02):
            u = -1.2 + i * 0.14
            for x in np.arange(-1.3, 1.6, 0.31):
                places.append((x + rng.normal(0, 0.02) + k * 0.5, u * np.cos(a), -u * np.sin(a) - 0.013))
                turns.append((np.radians(-tilt) + rng.normal(0, 0.1), rng.normal(0, 0.1), 0))
    many(places, (0.003, 0.003, 0.016), rust, turns=turns)
    clip = metal((0.6, 0.6, 0.6), 0.4)
    box((0.04, 0.03, 0.018), (-0.18, 0, -0.008), clip, turn=(-tilt, 0, 0))
    world((0.1, 0.1, 0.1), (0.1, 0.1, 0.1), (0.05, 0.05, 0.05), 0.02)
    torch((-0.15, -0.9, -1.0), (0.05, 0.1, 0), 40, spread=82)
    aim((-0.10, -0.62, -0.98), (0.06, 0.08, -0.02), lens=26, roll=3)
