"""The packs as the doors use them: shipped, and with the user's overlays."""

from __future__ import annotations

import os
from collections.abc import Sequence
from pathlib import Path

from witnessmark import packs as reading
from witnessmark.packs.model import Packs
from witnessmark.problems import Problem

__all__ = ["check_packs", "count_packs", "overlay_folders", "read_packs"]

_ROWS = (
    "kinds", "procedures", "conditions", "measures", "criteria", "sorts", "reasons", "cautions", "trades", "attributes",
    "eras", "lives", "frames", "translations", "rulebooks",
)  # fmt: skip


def overlay_folders() -> tuple[Path, ...]:
    """The folders named in ``WITNESSMARK_PACKS``."""
    named = os.environ.get("WITNESSMARK_PACKS", "")
    return tuple(Path(folder) for folder in named.split(os.pathsep) if folder)


def read_packs(overlays: Sequence[Path] = ()) -> Packs:
    """Shipped packs with the overlays of the environment, then those given here.

    Raises:
        Refusal: with every problem of the packs (WM4xx).
    """
    return reading.read((*overlay_folders(), *overlays))


def check_packs(overlays: Sequence[Path] = ()) -> list[Problem]:
    """Everything wrong with the packs and the overlays."""
    return reading.check((*overlay_folders(), *overlays))


def count_packs(packs: Packs) -> dict[str, int]:
    """How many rows of each sort there are."""
    return {name: len(getattr(packs, name)) for name in _ROWS} | {
        "duties": sum(len(book.duties) for book in packs.rulebooks.values())
    }
