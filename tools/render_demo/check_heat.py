"""Hold the heat solvers against closed forms; ends with status 1 when one fails.

Sources: ISO 6946:2017, 6.7.1 (layers in series) and 6.7.2 (upper and lower limit of the resistance of a wall with
studs, between which the true two-dimensional value lies); the fin equation of Fourier for a thin sheet.
"""

from __future__ import annotations

import math
import sys

from render_demo.arrays import np
from render_demo.heat import INDOOR_WALL, OUTDOOR, section, surface
from render_demo.plane import sheet
from render_demo.thermal import GLASS_WOOL, GYPSUM, TIMBER

__all__ = ["main"]

CELL = 0.004


def layers() -> tuple[float, float]:
    """Inner surface temperature of a wall of two layers: solved, and by ISO 6946 (12 mm gypsum, 88 mm glass wool)."""
    conductivity = np.concatenate([np.full((3, 5), GYPSUM), np.full((22, 5), GLASS_WOOL)])
    solved = surface(section(conductivity, CELL, 20.0, 0.0), conductivity, CELL, 20.0)
    whole = INDOOR_WALL + 0.012 / GYPSUM + 0.088 / GLASS_WOOL + OUTDOOR
    return float(solved[2]), 20.0 - INDOOR_WALL / whole * 20.0


def studs() -> tuple[float, float, float]:
    """Resistance of a stud wall, m²·K/W: lower limit, solved, upper limit."""
    bay = np.full(102, GLASS_WOOL)
    bay[:5], bay[-5:] = TIMBER, TIMBER
    conductivity = np.concatenate([np.full((3, 102), GYPSUM), np.repeat(bay[None], 22, axis=0)])
    inner = surface(section(conductivity, CELL, 20.0, 0.0), conductivity, CELL, 20.0)
    solved = 20.0 / (float((20.0 - inner).mean()) / INDOOR_WALL)
    share = 10 / 102
    board, stud, wool = 0.012 / GYPSUM, 0.088 / TIMBER, 0.088 / GLASS_WOOL
    films = INDOOR_WALL + OUTDOOR
    upper = 1 / (share / (films + board + stud) + (1 - share) / (films + board + wool))
    lower = films + board + 1 / (share / stud + (1 - share) / wool)
    return lower, solved, upper


def fin() -> tuple[float, float]:
    """Length over which warmth fades along a thin sheet, metres: solved, and the square root of spread over film."""
    spread, film = 0.003, 7.7
    source = np.zeros((3, 400))
    source[:, 0] = 1000.0
    line = sheet(np.full((3, 400), spread), 0.001, 0.0, source, film=film)[1]
    return 0.05 / math.log(float(line[50] / line[100])), math.sqrt(spread / film)


def main() -> None:
    """Print each pair; exit 1 when one is further off than its tolerance."""
    solved, expected = layers()
    lower, between, upper = studs()
    faded, length = fin()
    print(f"layers: {solved:.4f} °C, ISO 6946 {expected:.4f} °C")
    print(f"studs: {lower:.4f} <= {between:.4f} <= {upper:.4f} m²·K/W")
    print(f"fin: {faded * 1000:.3f} mm, closed form {length * 1000:.3f} mm")
    holds = abs(solved - expected) < 1e-6 and lower < between < upper and abs(faded / length - 1) < 0.002
    sys.exit(0 if holds else 1)


if __name__ == "__main__":
    main()
