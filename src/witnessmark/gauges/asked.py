"""What a gauge asks for: each input with its unit, its valid range, and how an inspector measures it."""

from __future__ import annotations

from dataclasses import dataclass

__all__ = ["Asked"]


@dataclass(frozen=True, slots=True)
class Asked:
    """One input of a gauge, written beside its parameter as ``Annotated[Quantity, Asked(...)]``.

    Attributes:
        what: the input in plain words ("temperature of the air").
        unit: UCUM code that the formula works in; any unit of the same dimension is accepted and converted before
            the gauge sees it. ``"1"`` for a plain number; empty for words, dates and counts.
        lowest, highest: the valid range in ``unit`` as the source states it (None: no limit). Beyond it the gauge
            still answers where its formula gives a number, and the answer says so in ``outside_range``.
        least, most: what can exist at all, in ``unit``; beyond it the gauge refuses (WM006).
        how: how the reading is taken on site, and what spoils it.
        example: a value as it would be typed ("70F").
        choices: the words or years allowed, for a ``str`` or ``int`` whose choices are data; a ``Literal`` needs none.
    """

    what: str
    unit: str = ""
    lowest: str | None = None
    highest: str | None = None
    least: str | None = None
    most: str | None = None
    how: str = ""
    example: str = ""
    choices: tuple[str | int, ...] = ()
