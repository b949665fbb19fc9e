"""Which editions of the dwelling codes there are, which one stood in the year a house was built, and how they are named.

A house is judged by the edition adopted where and when it was built or altered. Adoption lags the date of an edition by
nothing to ten years, so an edition found from a year is the newest that can have applied, never proof that it did.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from witnessmark.gauges.answer import Basis, Source
from witnessmark.gauges.asked import Asked

__all__ = ["BUILT", "EDITION", "IRC", "TODAY", "Built", "Edition", "Held", "held_to", "irc", "named"]

#: Editions of the International Residential Code (IRC).
IRC = (2000, 2003, 2006, 2009, 2012, 2015, 2018, 2021, 2024)
#: The newest edition: what "today" means.
TODAY = IRC[-1]
_LAST_CABO, _FIRST_INTERNATIONAL = 1995, 1998
#: The oldest house and the latest year that are taken for a year.
EARLIEST_YEAR, LATEST_YEAR = "1600", "2100"


def named(edition: int) -> str:
    """How the model code of a year is called; CABO and its successor before 2000 (names recalled).

    >>> named(2018), named(1992)
    ('IRC 2018', 'CABO One and Two Family Dwelling Code 1992')
    """
    if edition <= _LAST_CABO:
        return f"CABO One and Two Family Dwelling Code {edition}"
    if edition == _FIRST_INTERNATIONAL:
        return "International One and Two Family Dwelling Code 1998"
    return f"IRC {edition}"


def irc(place: str, basis: Basis, edition: int | str = "2000 to 2024") -> Source:
    """A section of the IRC as a source.

    >>> str(irc("R311.7.5", "seen", 2018))
    'IRC, 2018, R311.7.5'
    """
    return Source("IRC", str(edition), place, basis)


EDITION = Asked(
    "edition of the IRC to hold it against",
    choices=IRC,
    how="the edition adopted by the place when the work was done; ask the building department",
    example="2018",
)
BUILT = Asked(
    "year the house, or this part of it, was built or last altered",
    lowest=EARLIEST_YEAR,
    highest=LATEST_YEAR,
    least=EARLIEST_YEAR,
    most=LATEST_YEAR,
    how="from the permit, the tax record or a plate",
    example="2004",
)
Edition = Annotated[int | None, EDITION]
Built = Annotated[int | None, BUILT]


@dataclass(frozen=True, slots=True)
class Held:
    """The edition something is held against: None where the house is older than the editions known here."""

    edition: int | None
    how: str
    cautions: tuple[str, ...] = ()

    @property
    def name(self) -> str:
        """Name of the edition, or that there is none."""
        return "no edition known here" if self.edition is None else named(self.edition)


def held_to(edition: int | None, built: int | None, editions: tuple[int, ...] = IRC) -> Held:
    """The edition to judge by: the one named, else the newest of *editions* not later than the year *built*, else today's.

    >>> held_to(None, 2005).edition, held_to(2009, 2005).edition, held_to(None, None).edition, held_to(None, 1950).edition
    (2003, 2009, 2024, None)
    """
    if edition is not None:
        return Held(edition, "as asked")
    if built is None:
        return Held(
            editions[-1],
            "today's model code",
            (f"No edition or year was given: held against {named(editions[-1])}, which the house need not have met.",),
        )
    before = [one for one in editions if one <= built]
    if not before:
        return Held(
            None,
            f"built {built}, before {named(editions[0])}",
            (f"Built {built}, before the earliest edition known here: the code of its day is not held.",),
        )
    return Held(
        before[-1],
        f"newest edition by {built}",
        (
            f"{named(before[-1])} is the newest edition by {built}; adoption lags by up to ten years, and places change it.",
        ),
    )
