"""Write the four thermal frames of the demo visit: ``python -m render_demo.thermal [FOLDER]``.

The physics is solved (``heat``, ``plane``), then seen by a camera: a little perspective, blur of the optics, noise of
50 mK (NETD), a slow drift across the detector. Seeds are fixed, so the same files come out again.
"""

from __future__ import annotations

import json
import sys
from pathlib import Path

from PIL import Image
from PIL.TiffImagePlugin import ImageFileDirectory_v2

from render_demo.arrays import np, smooth
from render_demo.heat import section, surface
from render_demo.plane import sheet
from render_demo.untyped import Untyped

__all__ = ["FRAMES", "main", "stud_wall", "write"]

WIDE, HIGH = 160, 120
NETD = 0.05  # kelvin
INCH = 0.0254
GYPSUM, TIMBER, GLASS_WOOL, SHEATHING, STILL_AIR = 0.25, 0.12, 0.040, 0.13, 0.55
"""Design conductivities in W/(m·K): ISO 10456:2007, table 3 (gypsum board 0.25, softwood 0.12 to 0.13, plywood 0.13);
mineral wool 0.040 is common practice, no source. A 89 mm cavity without insulation has the resistance of an unventilated
air layer, 0.18 m²·K/W rounded down to 0.16 for its air wash (ISO 6946:2017, table 8: 0.18), so 0.089/0.16 = 0.55."""


def stud_wall(
    missing: tuple[float, float] | None,
    wide: float,
    *,
    cell: float = 0.004,
    inside: float = 20.6,
    outside: float = 11.1,
) -> Untyped:
    """Surface temperature along a 2×4 wall with studs at 16 in; *missing* is the stretch of wall without insulation, metres."""
    cols = round(wide / cell)
    x = (np.arange(cols) + 0.5) * cell
    stud = np.abs((x + 8 * INCH) % (16 * INCH) - 8 * INCH) < 0.75 * INCH
    cavity = np.where(stud, TIMBER, GLASS_WOOL)
    if missing:
        cavity = np.where((x > missing[0]) & (x < missing[1]) & ~stud, STILL_AIR, cavity)
    layers = [
        (0.012, np.full(cols, GYPSUM)),
        (0.088, cavity),
        (0.012, np.full(cols, SHEATHING)),
        (0.012, np.full(cols, TIMBER)),
    ]
    conductivity = np.concatenate([np.repeat(k[None], round(thick / cell), axis=0) for thick, k in layers])
    return surface(section(conductivity, cell, inside, outside), conductivity, cell, inside)


def _wall_picture(missing: tuple[float, float] | None) -> Untyped:
    """The wall as seen: 2.4 m of it, warm air above, a plate top and bottom, batts slightly uneven."""
    line, plain = stud_wall(missing, 2.44), stud_wall(None, 2.44)
    xs = np.linspace(0.02, 2.42, WIDE)
    columns = np.interp(xs, (np.arange(len(line)) + 0.5) * 0.004, line)
    whole = np.interp(xs, (np.arange(len(plain)) + 0.5) * 0.004, plain)
    rows = np.linspace(0, 1, HIGH)[:, None]
    # The gap in the batt ends above mid-height of the frame with a slumped, uneven edge.
    edge = 0.62 + 0.05 * np.sin(np.linspace(0, 9, WIDE)) + 0.02 * np.sin(np.linspace(0, 31, WIDE))
    share = 1 / (1 + np.exp((rows - edge[None]) / 0.02))
    picture = whole[None] + (columns - whole)[None] * share
    plate = (rows < 0.035) | (rows > 0.965)
    return np.where(plate, stud_wall(None, 0.4).min() - 0.05, picture) + 0.5 * (0.5 - rows)


def t01() -> Untyped:
    """Family room, north wall: one bay between studs has no insulation."""
    return _wall_picture((1.22 + 0.02, 1.22 + 0.388))


def t02() -> Untyped:
    """Family room, foot of the north wall: gypsum wet from below cools by evaporation."""
    base = _wall_picture(None)
    rng = np.random.default_rng(22)
    rows, cols = np.mgrid[0:HIGH, 0:WIDE]
    rough = smooth(rng.standard_normal((HIGH, WIDE)), 6.0)
    rough = rough / rough.std()
    height = 34 * np.exp(-(((cols - 88) / 42.0) ** 2)) + 10 * np.exp(-(((cols - 38) / 12.0) ** 2)) + 5.0 * rough
    wet = 1 / (1 + np.exp(-(height - (HIGH - 6 - rows)) / 2.0))
    # 0.6 litres a day from a square metre of damp gypsum is 2450 kJ/kg × 0.6 kg / 86 400 s = 17 W/m².
    spread = np.where(wet > 0.5, 0.60, GYPSUM) * 0.012
    change = sheet(spread, 0.010, 0.0, -17.0 * wet, film=1 / 0.13)
    skirting = np.where(rows > HIGH - 9, 0.35, 0.0)
    return base + change * np.where(rows > HIGH - 9, 0.55, 1.0) - skirting


def t03() -> Untyped:
    """Primary bedroom, ceiling at the stain: dry now, so next to nothing shows."""
    rows = np.linspace(0, 1, HIGH)[:, None]
    line = np.interp(
        np.linspace(0, 2.0, WIDE), (np.arange(500) + 0.5) * 0.004, stud_wall(None, 2.0, inside=20.8, outside=15.5)
    )
    rng = np.random.default_rng(33)
    uneven = smooth(rng.standard_normal((HIGH, WIDE)), 22.0)
    return line[None] * np.ones((HIGH, 1)) + 0.15 * rows + 0.06 * uneven / uneven.std()


def t04() -> Untyped:
    """Service panel with its cover off: one breaker is warm."""
    rows, cols = np.mgrid[0:HIGH, 0:WIDE]
    source = np.zeros((HIGH, WIDE))
    spread = np.full((HIGH, WIDE), 0.0009)
    for side, left in ((-1, 42), (1, 84)):
        for i in range(8):
            top = 14 + i * 12
            body = (rows >= top) & (rows < top + 10) & (cols >= left) & (cols < left + 34)
            spread[body] = 0.0030
            source[body] = 6.0 + 5.0 * ((i * 5 + side) % 3)
            lug = (
                (rows >= top + 3)
                & (rows < top + 7)
                & ((cols >= left + 28) & (cols < left + 33) if side > 0 else (cols >= left + 1) & (cols < left + 6))
            )
            if side > 0 and i == 3:
                source[body] += 60.0
                source[lug] += 900.0
    for side, start in ((1, 118), (-1, 41)):
        for i in range(8):
            wire = (np.abs(rows - (19 + i * 12)) < 1.2) & (
                (cols >= start) & (cols < 146) if side > 0 else (cols > 14) & (cols <= start)
            )
            spread[wire] = 0.0120
            source[wire] = 8.0 + (45.0 if side > 0 and i == 3 else 0.0)
    frame = (rows < 5) | (rows > 114) | (cols < 7) | (cols > 152)
    picture = sheet(spread, 0.0025, 22.4, source, film=9.0)
    return np.where(frame, 21.2, picture)


FRAMES = {
    "t01": (t01, "10:42:44", 20.4, 2.6, 0.95),
    "t02": (t02, "10:43:24", 20.4, 1.2, 0.95),
    "t03": (t03, "10:16:32", 20.6, 2.1, 0.95),
    "t04": (t04, "11:01:22", 21.5, 0.6, 0.95),
}
"""Scene, clock time, reflected temperature (°C), distance (m), emissivity."""


def seen(temperatures: Untyped, seed: int) -> Untyped:
    """What a camera gives: kelvin × 100 as 16-bit whole numbers, blurred, noisy, drifting a little."""
    rng = np.random.default_rng(seed)
    rows, cols = np.mgrid[-1 : 1 : HIGH * 1j, -1 : 1 : WIDE * 1j]
    drift = -0.06 * (rows**2 + cols**2) + 0.03 * cols
    noisy = smooth(temperatures, 0.8) + drift + rng.normal(0, NETD, (HIGH, WIDE)) + rng.normal(0, 0.015, (1, WIDE))
    return np.round((noisy + 273.15) * 100).astype("<u2")


def write(folder: Path, name: str) -> Path:
    """Write one frame with its description."""
    scene, clock, reflected, distance, emissivity = FRAMES[name]
    stated = {
        "emissivity": emissivity,
        "reflected_c": reflected,
        "distance_m": distance,
        "taken_at": f"2026-10-14T{clock}-07:00",
        "invented": True,
        "scale": "kelvin x 100",
    }
    tags = ImageFileDirectory_v2()
    tags[270], tags[305], tags[306] = json.dumps(stated), "Witnessmark demo renderer", f"2026:10:14 {clock}"
    folder.mkdir(parents=True, exist_ok=True)
    target = folder / f"{name}.tif"
    values = seen(scene(), int(name[1:]) * 7)
    Image.frombytes("I;16", (WIDE, HIGH), values.tobytes()).save(
        target, "TIFF", tiffinfo=tags, compression="tiff_adobe_deflate"
    )
    return target


def main() -> None:
    """Write all four frames."""
    folder = (
        Path(sys.argv[1]) if len(sys.argv) > 1 else Path(__file__).parents[2] / "src/witnessmark/demo/visit/thermal"
    )
    for name in FRAMES:
        print(write(folder, name))


if __name__ == "__main__":
    main()
