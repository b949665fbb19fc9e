"""Which temperatures does a thermal frame hold?

A frame is a TIFF of one page, one channel, 16 bits without sign: the value of a pixel is its apparent temperature in
kelvin × 100 (29315 is 20.00 °C); 0 says that there is no reading. Its ImageDescription may hold a JSON object with
any of ``emissivity`` (above 0 to 1), ``reflected_c`` (°C), ``distance_m`` (metres), ``taken_at`` (RFC 3339 with offset)
and ``invented`` (true for a made-up frame). Temperatures are given as the camera wrote them: they are already for the
emissivity stated, and are corrected for nothing more here.
"""

from __future__ import annotations

import json
import sys
from array import array
from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from witnessmark.imaging import messages
from witnessmark.imaging.decoding import facts_of, head_of, opened
from witnessmark.imaging.formats import mime_of
from witnessmark.problems import Problem, Refusal

__all__ = ["MOST_FRAME_PIXELS", "Frame", "Spot", "celsius", "read_frame"]

#: Larger than any thermal sensor on a hand-held camera (1280 × 1024) by a good margin.
MOST_FRAME_PIXELS = 4_000_000
#: 0 °C in kelvin × 100 (ITS-90).
_ICE = 27_315
#: Colder than this (−100 °C) is no temperature of a building or of the sky over it: another scale.
_COLDEST_BELIEVED = 17_315
#: At most this share of a frame may be without a believable reading.
_MOST_MISSING = 0.1
_MOST_WORDS = 100_000
_DESCRIPTION = 270  # tag of TIFF 6.0


def celsius(value: int) -> float:
    """°C of a pixel value (kelvin × 100).

    >>> celsius(29315)
    20.0
    """
    return (value - _ICE) / 100


@dataclass(frozen=True, slots=True)
class Spot:
    """A pixel and its apparent temperature in °C; ``x`` counts columns from the left, ``y`` rows from the top, from 0."""

    x: int
    y: int
    celsius: float


@dataclass(frozen=True, slots=True)
class Frame:
    """One thermal frame.

    Attributes:
        name: name of the file.
        width: columns.
        height: rows.
        values: kelvin × 100, row by row from the top left; 0 where there is no reading.
        emissivity: what the camera was set to, 0 to 1, where stated.
        reflected: reflected apparent temperature the camera was set to, °C, where stated.
        distance: metres to the surface, where stated.
        taken_at: RFC 3339 with offset, where stated.
        invented: made up for demonstration or tests.
        problems: parts of the description that could not be used.
    """

    name: str
    width: int
    height: int
    values: array[int]
    emissivity: float | None = None
    reflected: float | None = None
    distance: float | None = None
    taken_at: str | None = None
    invented: bool = False
    problems: tuple[Problem, ...] = ()

    @property
    def coldest(self) -> Spot:
        """The coldest pixel that has a reading; the first of several."""
        return self._at(min(value for value in self.values if value))

    @property
    def warmest(self) -> Spot:
        """The warmest pixel; the first of several."""
        return self._at(max(self.values))

    @property
    def median(self) -> float:
        """Apparent temperature in °C that half of the readings stay below."""
        known = sorted(value for value in self.values if value)
        middle = len(known) // 2
        return celsius(known[middle]) if len(known) % 2 else (celsius(known[middle - 1]) + celsius(known[middle])) / 2

    def spot(self, x: int, y: int) -> float | None:
        """Apparent temperature in °C of one pixel, None where there is no reading. Refuses spots outside (WM715)."""
        if not (0 <= x < self.width and 0 <= y < self.height):
            raise Refusal(messages.OUTSIDE.at(self.name, f"({x}, {y}) in a frame of {self.width} × {self.height}"))
        value = self.values[y * self.width + x]
        return celsius(value) if value else None

    def _at(self, value: int) -> Spot:
        y, x = divmod(self.values.index(value), self.width)
        return Spot(x, y, celsius(value))


def read_frame(path: Path) -> Frame:
    """Read a 16-bit grey TIFF of kelvin × 100, as described at the head of this module.

    Raises:
        Refusal: WM701 to WM703, WM706 to WM708; WM712 for another kind of picture; WM713 when the values cannot be
            kelvin × 100. Nothing else is raised, whatever the file holds.
    """
    path = Path(path)
    if mime_of(head_of(path)) != "image/tiff":
        raise Refusal(messages.NOT_A_FRAME.at(str(path), "not a TIFF"))
    with opened(path, "image/tiff") as image:
        if image.mode not in {"I;16", "I;16L", "I;16B"}:
            raise Refusal(messages.NOT_A_FRAME.at(str(path), f"its pixels are {image.mode}, not 16-bit grey"))
        width, height = image.size
        if width * height > MOST_FRAME_PIXELS:
            raise Refusal(messages.TOO_MANY_PIXELS.at(str(path), f"{width:,} by {height:,} pixels"))
        described = facts_of(image).picture.get(_DESCRIPTION)
        values = array("H", image.tobytes())
        if (image.mode == "I;16B") != (sys.byteorder == "big"):
            values.byteswap()
    _believable(path, values)
    stated, problems = _description(path, described)

    def number(key: str) -> float | None:
        value = stated.get(key)
        return value if isinstance(value, (int, float)) else None

    taken_at = stated.get("taken_at")
    return Frame(
        name=path.name,
        width=width,
        height=height,
        values=values,
        emissivity=number("emissivity"),
        reflected=number("reflected_c"),
        distance=number("distance_m"),
        taken_at=taken_at if isinstance(taken_at, str) else None,
        invented=stated.get("invented") is True,
        problems=tuple(problems),
    )


def _believable(path: Path, values: array[int]) -> None:
    for index, value in enumerate(values):
        if value < _COLDEST_BELIEVED:
            values[index] = 0
    missing = values.count(0)
    if missing > _MOST_MISSING * len(values):
        facts = f"{missing:,} of {len(values):,} pixels lie below −100 °C"
        raise Refusal(messages.NOT_KELVIN.at(str(path), facts))


def _description(path: Path, text: object) -> tuple[dict[str, object], list[Problem]]:
    """The usable facts of the description and a problem for each part that is not; plain words are no problem."""
    if not isinstance(text, str) or not text.lstrip().startswith("{") or len(text) > _MOST_WORDS:
        return {}, []
    try:
        stated = json.loads(text)
    except (ValueError, RecursionError) as error:
        return {}, [messages.BAD_DESCRIPTION.at(str(path), f"not JSON: {error}"[:200])]
    kept: dict[str, object] = {}
    problems = []
    for key, usable in _USABLE.items():
        value = stated.get(key)
        if value is None:
            continue
        if usable(value):
            kept[key] = value
        else:
            problems.append(messages.BAD_DESCRIPTION.at(str(path), f"{key} is {str(value)[:80]!r}"))
    return kept, problems


def _between(low: float, high: float) -> Callable[[object], bool]:
    """A test for numbers above *low* up to *high*."""
    return lambda value: isinstance(value, (int, float)) and not isinstance(value, bool) and low < value <= high


def _moment(value: object) -> bool:
    try:
        return isinstance(value, str) and "T" in value and datetime.fromisoformat(value).tzinfo is not None
    except ValueError:
        return False


#: What each part of the description may be; the bounds of temperature and distance only catch slips.
_USABLE: dict[str, Callable[[object], bool]] = {
    "emissivity": _between(0, 1),
    "reflected_c": _between(-100, 1000),
    "distance_m": _between(0, 1000),
    "taken_at": _moment,
    "invented": lambda value: isinstance(value, bool),
}
