"""The renderer as an untyped module: Blender's Python package, installed by hand for this work only."""

from __future__ import annotations

import importlib

from render_demo.untyped import Untyped

__all__ = ["INCH", "bpy", "mathutils", "np"]

bpy: Untyped = importlib.import_module("bpy")
mathutils: Untyped = importlib.import_module("mathutils")
np: Untyped = importlib.import_module("numpy")

#: Scenes are built in metres, measured in inches.
INCH = 0.0254
