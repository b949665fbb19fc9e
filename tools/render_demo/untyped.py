"""A name for objects of packages that come without types: Blender's things and NumPy's arrays."""

from __future__ import annotations

from typing import Any, TypeAlias

__all__ = ["Untyped"]

Untyped: TypeAlias = Any
