"""Which editions of the National Electrical Code exist, and which may have been in force when work was done."""

from __future__ import annotations

from dataclasses import dataclass

from witnessmark.gauges.answer import Basis, Source
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.electrical.messages import NO_SUCH_EDITION, NOT_AT_THAT_TIME
from witnessmark.problems import Refusal

__all__ = [
    "ADOPTED", "ANY_YEAR", "BEFORE", "BUILT", "EDITION", "EDITIONS", "LATEST", "NEC", "InForce", "in_force", "named",
    "nec",
]  # fmt: skip

NEC = "National Electrical Code (NFPA 70)"
#: Editions since 1947. Recalled; there is none of 1973, 1974 or 1977.
EDITIONS = (
    1947, 1951, 1953, 1956, 1959, 1962, 1965, 1968, 1971, 1975, 1978, 1981, 1984, 1987, 1990, 1993, 1996, 1999, 2002,
    2005, 2008, 2011, 2014, 2017, 2020, 2023, 2026,
)  # fmt: skip
LATEST = EDITIONS[-1]
#: Stands for every edition before the first of the list.
BEFORE = 0
#: A year after every date that an edition states inside: used to ask what an edition holds at all.
ANY_YEAR = 9999
#: Years by which places have lagged behind the date of an edition.
LAG = 10
#: Years that lists print beside a rule, though no edition bears them.
_DATES_INSIDE = {
    1973: "1 January 1973 is the date, inside the 1971 edition, from which outdoor receptacles needed a GFCI",
    1974: "1 January 1974 is the date, inside the 1971 edition, from which construction sites needed a GFCI",
    1977: "the editions around it are 1975 and 1978",
}

EDITION = Asked(
    "edition of the National Electrical Code in force there when it was built or altered",
    lowest="1947",
    highest="2026",
    how="from the building department, or from the permit; the editions are " + ", ".join(map(str, EDITIONS)) + "."
    " 1973, 1974 and 1977 are no editions: in lists they are dates inside one",
    example="1975",
)
BUILT = Asked(
    "year in which the house was built, or this part altered",
    lowest="1850",
    highest="2100",
    least="1600",
    most="2200",
    how="from the permit or the county record; work done later counts by its own year",
    example="1986",
)
ADOPTED = Asked(
    "year of the last adoption of the code by the place, before the work",
    lowest="1900",
    highest="2100",
    least="1880",
    most="2200",
    how="from the building department; narrows down which editions can have been in force",
    example="1985",
)


@dataclass(frozen=True, slots=True)
class InForce:
    """The editions that may have been in force, oldest first, the year of the work, and how that was told.

    ``possible`` is empty when neither edition nor year was given; `BEFORE` stands for editions before 1947.
    """

    possible: tuple[int, ...]
    year: int | None
    words: str
    cautions: tuple[str, ...]


def nec(edition: int | str, place: str, basis: Basis) -> Source:
    """A section of the National Electrical Code as a source.

    >>> str(nec(1975, "210-8", "memory"))
    'National Electrical Code (NFPA 70), 1975, 210-8 (recalled: check the text)'
    """
    return Source(NEC, str(edition), place, basis)


def named(edition: int) -> str:
    """An edition (a year of `EDITIONS`, or `BEFORE`) as the phrase that stands for it in a sentence.

    >>> named(1975), named(BEFORE)
    ('the 1975 edition', 'an edition before 1947')
    """
    return f"the {edition} edition" if edition else "an edition before 1947"


def _newest_by(year: int) -> int:
    return max((one for one in EDITIONS if one <= year), default=BEFORE)


def in_force(edition: int | None, built: int | None, adopted: int | None) -> InForce:
    """Which editions may have been in force: *edition* itself, or those that fit the years *built* and *adopted*.

    Rule: without the edition, every edition from the newest not after *built* back to the newest of ten years before
    is possible, since places adopt late; with the year of the last adoption, the two newest not after it are.

    Refuses a year that is no edition (WM050) and years that cannot stand together (WM051).

    >>> in_force(None, 1979, None).possible
    (1968, 1971, 1975, 1978)
    >>> in_force(None, 1979, 1976).possible
    (1971, 1975)
    """
    if edition is not None and edition not in EDITIONS:
        inside = _DATES_INSIDE.get(edition)
        told = f"{inside}; editions are" if inside else "editions are"
        raise Refusal(NO_SUCH_EDITION.at(f"edition={edition}", f"{told} {', '.join(map(str, EDITIONS))}"))
    if adopted is not None and built is not None and adopted > built:
        raise Refusal(NOT_AT_THAT_TIME.at(f"adopted={adopted}", f"built or altered {built}, before that adoption"))
    if edition is not None:
        for name, year in (("built", built), ("adopted", adopted)):
            if year is not None and year < edition - 1:
                raise Refusal(NOT_AT_THAT_TIME.at(f"edition={edition}", f"{name} {year}, before it was issued"))
        return InForce((edition,), built, named(edition), ())
    bound = built if adopted is None else adopted
    if bound is None:
        return InForce((), None, "", ("Which edition was in force there is not given: only first editions are.",))
    newest = _newest_by(bound)
    oldest = _newest_by(bound - LAG if adopted is None else newest - 1)
    possible = tuple(one for one in (BEFORE, *EDITIONS) if oldest <= one <= newest)
    words = named(newest) if len(possible) == 1 else f"the editions {oldest or 'before 1947'} to {newest}"
    lag = (
        f"Places adopt an edition up to {LAG} years after its date, with changes of their own: {words} may have been in "
        f"force in {built or bound}. Ask the building department which one was."
    )
    return InForce(possible, built, words, (lag,))
