"""Steady heat conduction in a plane section, by finite volumes: the temperatures behind the invented thermal frames.

A section is a grid of square cells, each with its conductivity (W/(m·K)); two opposite sides exchange heat with air
through a surface resistance (m²·K/W), the other two are adiabatic. Between two cells the conductance is that of the
two half cells in series, as ISO 10211 asks of a numerical method; the linear system is solved directly.
"""

from __future__ import annotations

from render_demo.arrays import np, solve, sparse
from render_demo.untyped import Untyped

__all__ = ["INDOOR_WALL", "OUTDOOR", "section", "surface"]

#: Surface resistances in m²·K/W for horizontal heat flow: ISO 6946:2017, table 7.
INDOOR_WALL, OUTDOOR = 0.13, 0.04


def section(
    conductivity: Untyped,
    cell: float,
    inside: float,
    outside: float,
    *,
    inner: float = INDOOR_WALL,
    outer: float = OUTDOOR,
) -> Untyped:
    """Temperatures (°C) at the middle of each cell.

    Args:
        conductivity: rows from inside to outside, columns along the wall, W/(m·K).
        cell: side of a cell, metres.
        inside: air temperature on the side of the first row, °C.
        outside: air temperature on the side of the last row, °C.
        inner: surface resistance of the first row, m²·K/W; a number or one a column.
        outer: surface resistance of the last row.
    """
    k = np.asarray(conductivity, float)
    rows, cols = k.shape
    index = np.arange(rows * cols).reshape(rows, cols)
    # Conductance between neighbours a metre deep, W/K: area over the two half cells' resistance; the cell side cancels.
    down = 2 / (1 / k[:-1] + 1 / k[1:])
    along = 2 / (1 / k[:, :-1] + 1 / k[:, 1:])
    film_in = cell / (inner + cell / (2 * k[0]))
    film_out = cell / (outer + cell / (2 * k[-1]))
    diagonal = np.zeros((rows, cols))
    diagonal[:-1] += down
    diagonal[1:] += down
    diagonal[:, :-1] += along
    diagonal[:, 1:] += along
    diagonal[0] += film_in
    diagonal[-1] += film_out
    heat = np.zeros((rows, cols))
    heat[0] += film_in * inside
    heat[-1] += film_out * outside
    pairs = [(index[:-1], index[1:], down), (index[:, :-1], index[:, 1:], along)]
    from_, to, value = (np.concatenate([pair[i].ravel() for pair in pairs]) for i in range(3))
    shape = (rows * cols, rows * cols)
    matrix = sparse.coo_matrix((-value, (from_, to)), shape) + sparse.coo_matrix((-value, (to, from_)), shape)
    matrix = matrix + sparse.diags(diagonal.ravel())
    return solve(matrix, heat.ravel()).reshape(rows, cols)


def surface(
    temperatures: Untyped, conductivity: Untyped, cell: float, inside: float, *, inner: float = INDOOR_WALL
) -> Untyped:
    """Temperatures (°C) of the inner surface along the wall, from those of the first row of cells."""
    half = cell / (2 * conductivity[0])
    return (temperatures[0] * inner + inside * half) / (inner + half)
