"""What live load a floor, deck, balcony, stair or guard is designed for by an edition."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Literal, get_args

from witnessmark.gauges.answer import Also, Answer, Table
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.building.checks import said, when_rows
from witnessmark.gauges.building.editions import IRC, Built, Edition, held_to, irc, named
from witnessmark.gauges.gauge import gauge

__all__ = ["LOADS", "Use", "live_load", "load_for"]

_PSF, _LBF = "[lbf_av]/[sft_i]", "[lbf_av]"
Use = Literal[
    "deck", "exterior balcony", "room other than sleeping", "sleeping room", "stair", "attic without storage",
    "attic with limited storage", "habitable attic", "passenger vehicle garage", "guard or handrail", "guard infill",
]  # fmt: skip
#: Use: load, unit, first edition from which it stands so, and what goes with it; newest first.
LOADS: dict[str, tuple[tuple[int, int, str, str], ...]] = {
    "deck": ((2000, 40, _PSF, ""),),
    "exterior balcony": ((2009, 40, _PSF, "the same as a deck"), (2000, 60, _PSF, "")),
    "room other than sleeping": ((2000, 40, _PSF, ""),),
    "sleeping room": ((2000, 30, _PSF, ""),),
    "stair": ((2000, 40, _PSF, "or 300 lb on 4 sq in of one tread, whichever is worse"),),
    "attic without storage": ((2000, 10, _PSF, ""),),
    "attic with limited storage": ((2000, 20, _PSF, ""),),
    "habitable attic": (
        (2009, 30, _PSF, "also attics served by a fixed stair"),
        (2000, 30, _PSF, "as a sleeping room"),
    ),
    "passenger vehicle garage": ((2000, 50, _PSF, "or 2000 lb on 20 sq in, whichever is worse"),),
    "guard or handrail": ((2000, 200, _LBF, "at any point along the top, in any direction"),),
    "guard infill": ((2000, 50, _LBF, "on one square foot, square to it"),),
}


def load_for(use: str, edition: int) -> tuple[int, str, str]:
    """Load, its unit and what goes with it for a use by an IRC edition: psf over an area, or pounds at a point.

    >>> load_for("exterior balcony", 2006)[0], load_for("exterior balcony", 2009)[0]
    (60, 40)
    """
    load, unit, words = next(row[1:] for row in LOADS[use] if edition >= row[0])
    return load, unit, words


@gauge(
    name="live-load",
    family="building",
    title="Design live load by use",
    gives="least uniformly spread live load, or the load at a point for guards",
    sources=(
        irc("Table R301.5 (R301.4 in 2000)", "seen in a copy"),
        irc("Table R301.5 (habitable attic, vehicle garage)", "memory"),
    ),
    error="none: a table value; the state may have changed it, and some ask more of decks",
    never="that this floor, deck or guard carries it: that takes a design or a test by an engineer",
    cautions=("Never load or push a deck or guard to test it.",),
    example={"use": "deck", "edition": "2018"},
)
def live_load(
    use: Annotated[Use, Asked("what is loaded", example="deck")],
    edition: Edition = None,
    built: Built = None,
) -> Answer:
    """The live load that an edition asks a floor, deck, balcony, stair or guard to be designed for.

    Rule:
        psf: decks 40, balconies 60 through IRC 2006 then as decks, rooms 40, sleeping rooms 30, stairs 40 or 300 lb on a
        tread, attics 10 without and 20 with limited storage, 30 habitable, garages 50; guards and handrails 200 lb at any
        point of the top, infill 50 lb on 1 sq ft

    >>> live_load("sleeping room", edition=2018).value
    Decimal('30')
    """
    held = held_to(edition, built)
    judged = IRC[-1] if held.edition is None else held.edition
    load, unit, more = load_for(use, judged)
    first = next(one for one in IRC if load_for(use, one) == load_for(use, judged))
    tail = f", {more}" if more else ""
    begin = "its own code is not held here; today's " if held.edition is None else ""
    rows = tuple((one, Decimal(load_for(one, judged)[0]), load_for(one, judged)[2]) for one in get_args(Use))
    return Answer(
        value=Decimal(load),
        unit=unit,
        words=f"{use[:1].upper()}{use[1:]}: {begin}{named(judged)} asks a design load of {said(Decimal(load), unit)}{tail}.",
        cautions=held.cautions,
        also=(
            Also("today", f"by {named(IRC[-1])}", Decimal(load_for(use, IRC[-1])[0]), load_for(use, IRC[-1])[1]),
            *when_rows(held, first),
        ),
        table=Table((("use", ""), ("load (psf; pounds for guards)", ""), ("with it", "")), rows),
    )
