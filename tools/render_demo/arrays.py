"""NumPy and what is used of SciPy, installed by hand for this work only."""

from __future__ import annotations

import importlib

from render_demo.untyped import Untyped

__all__ = ["np", "smooth", "solve", "sparse"]

np: Untyped = importlib.import_module("numpy")
sparse: Untyped = importlib.import_module("scipy.sparse")


def solve(matrix: Untyped, right: Untyped) -> Untyped:
    """The solution of a sparse linear system."""
    return importlib.import_module("scipy.sparse.linalg").spsolve(matrix.tocsc(), right)


def smooth(field: Untyped, cells: float) -> Untyped:
    """Gaussian blur with a standard deviation of *cells*."""
    return importlib.import_module("scipy.ndimage").gaussian_filter(field, cells)
