"""A thin sheet that conducts along itself and loses heat to the air: ceilings, panel fronts, wetted gypsum.

Every cell gains ``source`` (W/m²), exchanges heat with the air by ``film`` (W/(m²·K)) and conducts to its neighbours
by conductivity times thickness (W/K). Solved directly, as the wall section is.
"""

from __future__ import annotations

from render_demo.arrays import np, solve, sparse
from render_demo.untyped import Untyped

__all__ = ["sheet"]


def sheet(spread: Untyped, cell: float, air: float, source: Untyped, *, film: float = 1 / 0.13) -> Untyped:
    """Temperatures (°C) of each cell.

    Args:
        spread: conductivity times thickness of each cell, W/K.
        cell: side of a cell, metres.
        air: temperature of the air, °C.
        source: heat brought in, W/m²; negative where water evaporates.
        film: heat transfer to the air, W/(m²·K); the default is ISO 6946:2017, table 7, horizontal flow.
    """
    spread, source = np.asarray(spread, float), np.asarray(source, float)
    rows, cols = spread.shape
    index = np.arange(rows * cols).reshape(rows, cols)
    down, along = 2 / (1 / spread[:-1] + 1 / spread[1:]), 2 / (1 / spread[:, :-1] + 1 / spread[:, 1:])
    diagonal = np.full((rows, cols), film * cell**2)
    diagonal[:-1] += down
    diagonal[1:] += down
    diagonal[:, :-1] += along
    diagonal[:, 1:] += along
    shape = (rows * cols, rows * cols)
    matrix = sparse.diags(diagonal.ravel())
    for a, b, value in ((index[:-1], index[1:], down), (index[:, :-1], index[:, 1:], along)):
        matrix = matrix - sparse.coo_matrix((value.ravel(), (a.ravel(), b.ravel())), shape)
        matrix = matrix - sparse.coo_matrix((value.ravel(), (b.ravel(), a.ravel())), shape)
    heat = (film * air + source) * cell**2
    return solve(matrix, heat.ravel()).reshape(rows, cols)
