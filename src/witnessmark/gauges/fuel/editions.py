"""Which editions the model documents of this family have, and which was the first to ask for something."""

from __future__ import annotations

from decimal import Decimal

from witnessmark.gauges.answer import Also
from witnessmark.gauges.fuel.messages import NO_SUCH_EDITION
from witnessmark.problems import Refusal

__all__ = ["RESIDENTIAL", "VENTILATION", "checked_edition", "since", "standing"]

#: International Residential Code, and ASHRAE 62.2 (recalled).
RESIDENTIAL = (2000, 2003, 2006, 2009, 2012, 2015, 2018, 2021, 2024)
VENTILATION = (2003, 2004, 2007, 2010, 2013, 2016, 2019, 2022)


def checked_edition(edition: int, editions: tuple[int, ...], document: str) -> int:
    """The edition, refused (WM045) with the list of those that exist where there is none of that year.

    >>> checked_edition(2012, RESIDENTIAL, "International Residential Code")
    2012
    """
    if edition not in editions:
        listed = ", ".join(map(str, editions))
        raise Refusal(NO_SUCH_EDITION.at("edition", f"{edition}; {document} has {listed}"))
    return edition


def since(*, required: bool, first: int) -> tuple[Also, Also]:
    """The two further results of every requirement: whether this edition has it, and which was the first.

    >>> [row.value for row in since(required=True, first=2009)]
    [True, Decimal('2009')]
    """
    return (
        Also("required", "required by this edition", required),
        Also("first_edition", "first edition with it", Decimal(first), "1"),
    )


def standing(edition: int, built: int | None) -> str:
    """What is to be said where the house is older than the edition given; empty where it is not.

    >>> standing(2018, 1994)
    ' The house (1994) is older than the 2018 edition: not yet required when it was built, recommended today.'
    """
    if built is None or built >= edition:
        return ""
    return f" The house ({built}) is older than the {edition} edition: not yet required when it was built, recommended today."
