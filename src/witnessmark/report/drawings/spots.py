"""Where a reading was taken, when its spot says it in two distances: "12 ft, 3.5 ft"."""

from __future__ import annotations

from fractions import Fraction

from witnessmark.problems import Refusal
from witnessmark.units import exact, parse_quantity

__all__ = ["spot_of"]


def spot_of(words: str | None) -> tuple[Fraction, Fraction] | None:
    """Feet to the right and feet away (or up) from one corner; None for a spot in other words.

    >>> spot_of("12 ft, 42 in")
    (Fraction(12, 1), Fraction(7, 2))
    >>> spot_of("left of the window") is None
    True
    """
    parts = (words or "").split(",")
    if len(parts) != 2:  # noqa: PLR2004 - two distances
        return None
    try:
        right, away = (exact(parse_quantity(part.strip()), "[ft_i]") for part in parts)
    except Refusal:
        return None
    return right, away
