"""The libraries of the engines: brought in only when asked for, and told what to install when they are not there."""

from __future__ import annotations

import importlib
import importlib.metadata
import os
from types import ModuleType

from witnessmark.problems import Refusal
from witnessmark.speech.messages import ENGINE_MISSING

__all__ = ["library", "release"]


def library(module: str, package: str, engine: str) -> ModuleType:
    """Import the library of an engine.

    Libraries that could fetch a model are told not to before they are imported; the adapters give them local files.

    Raises:
        Refusal: WM650 with the package to install.
    """
    os.environ.setdefault("HF_HUB_OFFLINE", "1")
    os.environ.setdefault("HF_HUB_DISABLE_TELEMETRY", "1")
    try:
        return importlib.import_module(module)
    except ImportError as error:
        raise Refusal(ENGINE_MISSING.at(engine, f"{error}; pip install {package}")) from error


def release(package: str) -> str:
    """The release of an installed package, or ``unknown``."""
    try:
        return importlib.metadata.version(package)
    except importlib.metadata.PackageNotFoundError:
        return "unknown"
