"""How high a chimney must stand above the roof around it, and whether it needs a cricket."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Step
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.building.asking import feet, inches
from witnessmark.gauges.building.checks import Check, Rule, by_rule, held_against, plain, said
from witnessmark.gauges.building.editions import Built, Edition, held_to, irc
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["chimney_cricket", "chimney_height", "chimney_needs", "cricket_height"]

_THREE, _TWO, _REACH = Decimal(36), Decimal(24), Decimal(10)
_CRICKET = Decimal(30)
_TABLE_LEAST, _TABLE_MOST = "3", "12"
_IN, _FT, _SLOPE = "[in_i]", "[ft_i]", "[in_i]/[ft_i]"


def chimney_needs(pitch: Decimal, to_ridge: Decimal, obstacle: Decimal | None = None) -> Decimal:
    """Height in inches a chimney needs above the highest point where it passes through the roof.

    *pitch* in inches to 12, *to_ridge* in feet, level, from its uphill face to the ridge; *obstacle* in inches: anything
    else within 10 ft, level, above that point. The greater of 36 in and 24 in above the highest thing within 10 ft.

    >>> chimney_needs(Decimal(6), Decimal(6)), chimney_needs(Decimal(1), Decimal(20))
    (Decimal('60'), Decimal('36'))
    """
    around = pitch * min(to_ridge, _REACH)
    if obstacle is not None:
        around = max(around, obstacle)
    return max(_THREE, around + _TWO)


@gauge(
    name="chimney-height",
    family="building",
    title="Height of a chimney above the roof",
    unit="[ft_i]",
    gives="least height above the highest point where the chimney passes through the roof",
    sources=(irc("R1003.9 (R1001.6 in 2000)", "seen in a copy"),),
    error="from the ground by angle or by counting bricks: half a foot",
    never="that the chimney draws, or that its flue is sound",
    cautions=(
        "The 10 ft are measured level, not along the slope.",
        "Masonry and factory-built fireplace chimneys; vents of gas appliances have rules of their own.",
        "From the ground with a zoom or a drone; not by climbing to a doubtful chimney.",
    ),
    example={"slope": "6:12", "to_ridge": "6 ft", "height": "4 ft", "edition": "2018"},
)
def chimney_height(
    slope: Annotated[
        Quantity,
        Asked(
            "slope of the roof as a pitch or in %",
            _SLOPE,
            lowest="0",
            highest="48",
            least="0",
            how="12 in on a level, tape down",
            example="6:12",
        ),
    ],
    to_ridge: Annotated[Quantity, feet("from the uphill face of the chimney to the ridge, level", example="6 ft")],
    obstacle: Annotated[
        Quantity | None,
        feet(
            "highest other thing within 10 ft, level (dormer, wall, higher roof), above the same point", example="4 ft"
        ),
    ] = None,
    height: Annotated[
        Quantity | None,
        feet("chimney above the highest point where it passes through the roof", most="60", example="4 ft"),
    ] = None,
    *,
    edition: Edition = None,
    built: Built = None,
) -> Answer:
    """The height a chimney needs: 3 ft above the roof AND 2 ft above anything within 10 ft.

    Formula:
        h = max(3, s * min(d, 10) + 2) ft, s slope as rise over run, d level ft from the uphill face to the ridge;
        another thing within 10 ft takes the place of s * min(d, 10) where it is higher

    Traps: 3 ft alone is not the rule; the 10 ft are level, not along the slope.

    >>> from witnessmark.units import parse_quantity as q
    >>> chimney_height(q("6:12"), q("12 ft"), edition=2018).value
    Decimal('7')
    """
    other = None if obstacle is None else obstacle.value * 12
    need = chimney_needs(slope.value, to_ridge.value, other)
    value = plain(need / 12)
    reach = min(to_ridge.value, _REACH)
    roof = slope.value * reach
    steps = [
        Step("level reach that counts: distance to the ridge, at most 10 ft", reach, _FT),
        Step("roof there above the chimney's highest edge", plain(roof / 12), _FT),
        Step("2 ft above the highest thing within 10 ft", plain((max(roof, other or roof) + _TWO) / 12), _FT),
        Step("3 ft above where it passes through the roof", Decimal(3), _FT),
    ]
    rules = "3 ft above the roof" if need == _THREE else "2 ft above what is within 10 ft"
    lead = f"It needs {value} ft ({rules} governs). "
    also = (Also("governs", "which rule governs", rules),)
    held = held_to(edition, built)
    if height is None:
        when = Also("required_when", "required when", "IRC 2000 and later; earlier codes asked the like")
        return Answer(value=value, words=lead.strip(), cautions=held.cautions, also=(*also, when), steps=tuple(steps))
    answer = held_against(
        held,
        lambda _: (Check("height", "height of the chimney", height.value, _FT, "R1003.9", lowest=need / 12),),
        basis="seen in a copy",
        value=value,
        unit=_FT,
        lead=lead,
        also=also,
    )
    return Answer(
        value=answer.value,
        words=answer.words,
        verdict=answer.verdict,
        cautions=answer.cautions,
        also=answer.also,
        steps=tuple(steps),
        table=answer.table,
    )


def cricket_height(width: Decimal, pitch: Decimal) -> Decimal:
    """Height of a cricket for a chimney *width* parallel to the ridge (any unit) at a *pitch* in inches to 12.

    Half the width times the slope: the rows of Table R1003.20 (12:12 a half, 8:12 a third, 6:12 a quarter, 4:12 a sixth,
    3:12 an eighth of the width) all follow it.

    >>> cricket_height(Decimal(48), Decimal(8)), cricket_height(Decimal(48), Decimal(3))
    (Decimal('16'), Decimal('6'))
    """
    return width * pitch / 24


@gauge(
    name="chimney-cricket",
    family="building",
    title="Cricket behind a chimney",
    unit="[in_i]",
    gives="height of the cricket by the table, where the slope is given",
    sources=(
        irc("R905.2.8.3, R1003.20 (more than 30 in)", "seen in a copy"),
        irc("Table R1003.20", "memory"),
    ),
    error="an inch in the width, taken from the ground",
    never="that the flashing is tight",
    example={"width": "36 in", "slope": "6:12", "edition": "2018"},
)
def chimney_cricket(
    width: Annotated[Quantity, inches("width of the chimney parallel to the ridge", example="36 in")],
    slope: Annotated[
        Quantity | None,
        Asked(
            "slope of the roof",
            _SLOPE,
            lowest=_TABLE_LEAST,
            highest=_TABLE_MOST,
            least="0",
            most="48",
            how="12 in on a level, tape down",
            example="6:12",
        ),
    ] = None,
    meets_ridge: Annotated[bool, Asked("whether the chimney stands in the ridge", example="no")] = False,
    edition: Edition = None,
    built: Built = None,
) -> Answer:
    """Whether a chimney needs a cricket on its uphill side, and how high.

    Rule:
        a chimney more than 30 in wide parallel to the ridge that does not meet the ridge has a cricket
    Formula:
        height = width * slope / 2, slope as rise over run (Table R1003.20)

    >>> from witnessmark.units import parse_quantity as q
    >>> chimney_cricket(q("30 in"), edition=2018)["required"], chimney_cricket(q("31 in"), edition=2018)["required"]
    (False, True)
    """
    wide = width.value > _CRICKET and not meets_ridge
    why = "it stands in the ridge" if meets_ridge else f"{said(width.value, _IN)} wide, more than 30 in is the mark"
    high = None if slope is None or not wide else plain(cricket_height(width.value, slope.value))
    answer = by_rule(
        held_to(edition, built),
        Rule(
            "a cricket",
            "R1003.20",
            lambda _: wide,
            "seen in a copy",
            why,
        ),
        before="" if high is None else f"By the table it is {said(high, _IN)} high.",
    )
    return Answer(
        value=high,
        words=answer.words,
        sources=answer.sources,
        cautions=answer.cautions,
        also=answer.also,
    )
