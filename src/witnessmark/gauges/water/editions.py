"""Which editions of the model codes exist, and what an edition says of a house built before it."""

from __future__ import annotations

from witnessmark.gauges.answer import Also
from witnessmark.gauges.water.messages import NO_SUCH_EDITION
from witnessmark.problems import Refusal

__all__ = ["EDITIONS", "against_built", "checked"]

#: Editions of the International Residential and Plumbing Codes and of the Uniform Plumbing Code since 2000; all three
#: come out every third year in step. Recalled.
EDITIONS = (2000, 2003, 2006, 2009, 2012, 2015, 2018, 2021, 2024)


def checked(code: str, edition: int | None, exist: tuple[int, ...] = EDITIONS) -> int:
    """The edition asked for, the newest one when none was; refuses a year that is no edition (WM030).

    >>> checked("IRC", None)
    2024
    """
    if edition is None:
        return exist[-1]
    if edition not in exist:
        raise Refusal(NO_SUCH_EDITION.at(f"edition={edition}", f"{code}: {', '.join(map(str, exist))}"))
    return edition


def against_built(built: int | None, edition: int) -> tuple[tuple[Also, ...], tuple[str, ...]]:
    """What the year of building adds to an answer held against an edition: a row for programs and words.

    >>> against_built(1978, 2018)[0][0].value
    False
    """
    if built is None:
        return (), ()
    later = built < edition
    words = (
        f"Built or altered in {built}, before this edition ({edition}): the edition adopted there then says what was a must; "
        "what this one asks is recommended today."
        if later
        else f"Built or altered in {built}: this edition ({edition}) can have been in force, if the place had adopted it."
    )
    return (Also("edition_before_building", "the edition is no later than the house", not later),), (words,)
