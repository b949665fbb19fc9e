"""Whether the ground, or paving, falls away from the house fast enough."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.building.checks import Check, held_against, plain, said
from witnessmark.gauges.building.editions import Built, Edition, held_to, irc
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["fall_percent", "grading"]

_LEAST = {"ground": Decimal(5), "paving": Decimal(2)}
_PAVING_SINCE = 2006
_PLACE = "R401.3"
_IN = "[in_i]"


def fall_percent(fall_inches: Decimal, run_feet: Decimal) -> Decimal:
    """Fall in % of the run: *fall_inches* away from the house (below 0: towards it) over *run_feet* (above 0).

    >>> fall_percent(Decimal("3.6"), Decimal(6))
    Decimal('5.0')
    """
    return 100 * fall_inches / (run_feet * 12)


@gauge(
    name="grading",
    family="building",
    title="Fall of the ground away from the house",
    unit="%",
    gives="fall away from the house in % of the run",
    sources=(irc("R401.3", "memory"),),
    error="a 4 ft level and a tape: about half an inch in 10 ft, which is 0.4 %",
    never="that the basement or crawl space stays dry",
    cautions=(
        "Mulch and plantings hide the ground: measure on the soil.",
        "Where lot lines or slopes leave no room, drains or swales can stand in for the fall.",
    ),
    example={"fall": "6 in", "run": "10 ft", "edition": "2018"},
)
def grading(
    fall: Annotated[
        Quantity,
        Asked(
            "how much lower the ground is at the end of the run; below nought where it falls towards the house",
            _IN,
            lowest="-120",
            highest="240",
            how="level or string line from the wall, tape down at the end of the run",
            example="6 in",
        ),
    ],
    run: Annotated[
        Quantity,
        Asked(
            "length of the run, level, out from the wall",
            "[ft_i]",
            lowest="1",
            highest="10",
            least="0.5",
            most="200",
            example="10 ft",
        ),
    ],
    surface: Annotated[Literal["ground", "paving"], Asked("soil, or an impervious surface such as paving")] = "ground",
    edition: Edition = None,
    built: Built = None,
) -> Answer:
    """Whether the ground falls 6 in in the first 10 ft, or paving 2 %, by an edition.

    Rule:
        ground at least 6 in within the first 10 ft (5 %); impervious surfaces within 10 ft of the foundation at least
        2 % away from it (from IRC 2006). On a shorter run the same slope is asked in proportion.
    Formula:
        fall [%] = 100 * fall / run, both in one unit

    >>> from witnessmark.units import parse_quantity as q
    >>> grading(q("5 in"), q("10 ft"), edition=2018)["fall_within"]
    False
    """
    value = fall_percent(fall.value, run.value)
    least = _LEAST[surface]

    def checks(one: int) -> tuple[Check, ...]:
        if surface == "paving" and one < _PAVING_SINCE:
            return ()
        since = _PAVING_SINCE if surface == "paving" else 2000
        return (Check("fall", f"fall of the {surface}", value, "%", _PLACE, lowest=least, since=since),)

    towards = "It falls towards the house. " if value < 0 else ""
    need = least * run.value * 12 / 100
    return held_against(
        held_to(edition, built),
        checks,
        value=plain(value),
        unit="%",
        lead=f"{said(fall.value, _IN)} in {said(run.value, '[ft_i]')}: {value:.1f} %. {towards}",
        also=(Also("needed", f"fall needed over this run for {least} %", plain(need), _IN),),
    )
