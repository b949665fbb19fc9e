"""What does a thermal frame say in one plain sentence? Numbers and where they lie; never what they mean."""

from __future__ import annotations

from decimal import Decimal

from witnessmark.imaging.frame import Frame, Spot
from witnessmark.units import Quantity, convert

__all__ = ["describe", "said", "where"]

_THIRDS = 3
_DOWN = ("upper", "middle", "lower")
_ACROSS = ("left", "middle", "right")


def said(celsius: float) -> str:
    """A temperature in °F and °C, to a tenth.

    >>> said(20.0)
    '68.0 °F (20.0 °C)'
    """
    fahrenheit = convert(Quantity(Decimal(str(round(celsius, 2))), "Cel"), "[degF]").value
    return f"{fahrenheit:.1f} °F ({celsius:.1f} °C)"


def where(spot: Spot, frame: Frame) -> str:
    """In which ninth of the frame the spot lies, in words: ``upper left``, ``middle``.

    >>> from array import array
    >>> where(Spot(2, 0, 0.0), Frame("f", 3, 3, array("H", [29315] * 9)))
    'upper right'
    """
    down = _DOWN[min(_THIRDS - 1, spot.y * _THIRDS // frame.height)]
    across = _ACROSS[min(_THIRDS - 1, spot.x * _THIRDS // frame.width)]
    return down if down == across else f"{down} {across}"


def describe(frame: Frame) -> str:
    """The frame in words: range, median, where the extremes lie, what the camera was set to."""
    coldest, warmest = frame.coldest, frame.warmest
    text = (
        f"Apparent temperatures from {said(coldest.celsius)}, {where(coldest, frame)}, to {said(warmest.celsius)},"
        f" {where(warmest, frame)}; half of the frame lies below {said(frame.median)}."
    )
    if frame.emissivity is not None:
        text += f" The camera was set to an emissivity of {frame.emissivity:g}."
    return text + (" The frame is invented." if frame.invented else "")
