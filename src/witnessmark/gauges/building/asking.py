"""How lengths and areas of a house are asked for: inches and feet with the range a house can have."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal

from witnessmark.gauges.asked import Asked
from witnessmark.gauges.messages import MISSING_INPUT
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["area", "feet", "inches", "numbers"]


def numbers(measured: Sequence[Quantity], name: str) -> list[Decimal]:
    """The plain numbers of a list that must hold at least one; refuses an empty one (WM003).

    >>> numbers((Quantity(Decimal(7), "[in_i]"),), "risers")
    [Decimal('7')]
    """
    if not measured:
        raise Refusal(MISSING_INPUT.at(name, "at least one measurement"))
    return [one.value for one in measured]


def inches(what: str, *, most: str = "600", least: str = "0", how: str = "", example: str) -> Asked:
    """A length in inches, nought to fifty feet unless told.

    >>> inches("height of the riser", example="7 1/2 in").unit
    '[in_i]'
    """
    return Asked(
        what, "[in_i]", lowest=least, highest=most, least=least, how=how or "with a tape, to 1/16 in", example=example
    )


def feet(what: str, *, most: str = "200", how: str = "", example: str) -> Asked:
    """What is asked for a length in feet: *what*, its range and how it is measured.

    >>> feet("distance to the ridge", example="12 ft").unit
    '[ft_i]'
    """
    return Asked(what, "[ft_i]", lowest="0", highest=most, least="0", how=how or "with a tape", example=example)


def area(what: str, *, unit: str = "[sft_i]", most: str = "20000", how: str = "", example: str) -> Asked:
    """An area, square feet unless told.

    >>> area("floor of the attic", example="1200 sq ft").unit
    '[sft_i]'
    """
    return Asked(what, unit, lowest="0", highest=most, least="0", how=how or "from a sketch", example=example)
