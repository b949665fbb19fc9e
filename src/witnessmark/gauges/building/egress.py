"""Whether a window opening is large enough, and low enough, to escape by."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Step
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.building.asking import area as asked_area
from witnessmark.gauges.building.asking import inches
from witnessmark.gauges.building.checks import Check, held_against, plain, said
from witnessmark.gauges.building.editions import Built, Edition, held_to, irc
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["clear_area", "egress_opening"]

_AREA, _GRADE_AREA = Decimal("5.7"), Decimal("5.0")
_HEIGHT, _WIDTH, _SILL = Decimal(24), Decimal(20), Decimal(44)
_PER_FOOT = Decimal(144)
_OLDER_UNTIL = 1985
_IN, _SQUARE = "[in_i]", "[sft_i]"


def clear_area(width: Decimal, height: Decimal) -> Decimal:
    """Area in square feet of an opening whose *width* and *height* are in inches, exactly.

    >>> clear_area(Decimal(20), Decimal("41.04"))
    Decimal('5.70')
    """
    return width * height / _PER_FOOT


@gauge(
    name="egress-opening",
    family="building",
    title="Emergency escape and rescue opening",
    unit="[sft_i]",
    gives="net clear area of the opening",
    sources=(irc("R310.1, R310.2.1, R310.2.2", "seen in a copy"),),
    error="1/16 in each way is about 0.03 sq ft; a sash that does not stay up has no clear height",
    never="that a person can get out, or that the room may be called a bedroom",
    cautions=(
        "Measure the hole that is left when the sash stands open by its own hardware, not the glass or the frame.",
        "The opening must work from inside without keys, tools or special knowledge; look at bars and locks.",
    ),
    example={"width": "34.2 in", "height": "24 in", "sill": "40 in", "edition": "2018"},
)
def egress_opening(
    width: Annotated[Quantity, inches("net clear width when opened the usual way", most="300", example="34 1/4 in")],
    height: Annotated[Quantity, inches("net clear height when opened the usual way", most="300", example="24 in")],
    sill: Annotated[
        Quantity | None, inches("bottom of the clear opening above the floor", most="300", example="40 in")
    ] = None,
    area: Annotated[
        Quantity | None,
        asked_area(
            "net clear area, where the opening is not a rectangle", most="100", how="from a sketch", example="5.8 sq ft"
        ),
    ] = None,
    *,
    grade_floor: Annotated[
        bool,
        Asked(
            "yes where the sill is within 44 in above or below the grade outside (a grade-floor opening)", example="no"
        ),
    ] = False,
    edition: Edition = None,
    built: Built = None,
) -> Answer:
    """Whether an opening keeps area and height and width and sill, all four, by an edition.

    Rule:
        area at least 5.7 sq ft (5.0 at a grade floor) AND height at least 24 in AND width at least 20 in AND sill at most
        44 in (IRC 2000 and later)

    Trap: 20 in by 24 in keeps both least measures and has only 3.33 sq ft.

    >>> from witnessmark.units import parse_quantity as q
    >>> answer = egress_opening(q("20 in"), q("24 in"), edition=2018)
    >>> answer["width_within"], answer["height_within"], answer["area_within"]
    (True, True, False)
    """
    size = clear_area(width.value, height.value) if area is None else area.value
    least = _GRADE_AREA if grade_floor else _AREA
    cautions: tuple[str, ...] = ()
    if sill is None:
        cautions = ("The sill was not given: a sill over 44 in fails an opening of any size.",)
    if built is not None and built < _OLDER_UNTIL and edition is None:
        cautions = (
            *cautions,
            "As recalled, codes from about 1964 to 1984 asked less (5.0 sq ft, least measure 22 in, sill at most 48 in): look up the local code of that year.",
        )

    def checks(_: int) -> tuple[Check, ...]:
        found = [
            Check("area", "net clear area", size, _SQUARE, "R310.2.1", lowest=least),
            Check("height", "net clear height", height.value, _IN, "R310.2.1", lowest=_HEIGHT),
            Check("width", "net clear width", width.value, _IN, "R310.2.1", lowest=_WIDTH),
        ]
        if sill is not None:
            found.append(Check("sill", "sill above the floor", sill.value, _IN, "R310.2.2", highest=_SILL))
        return tuple(found)

    needed = least * _PER_FOOT
    answer = held_against(
        held_to(edition, built),
        checks,
        basis="seen in a copy",
        value=plain(size),
        lead=f"Clear {said(width.value, _IN)} by {said(height.value, _IN)}: {size:.2f} sq ft. ",
        cautions=cautions,
        also=(
            Also(
                "earlier_limits", "limits recalled for about 1964 to 1984", "5.0 sq ft, least measure 22 in, sill 48 in"
            ),
        ),
    )
    steps = [Step("width times height, over 144", size, _SQUARE)]
    if height.value:
        steps.append(Step(f"width needed at this height for {least} sq ft", max(_WIDTH, needed / height.value), _IN))
    if width.value:
        steps.append(Step(f"height needed at this width for {least} sq ft", max(_HEIGHT, needed / width.value), _IN))
    return Answer(
        value=answer.value,
        words=answer.words,
        verdict=answer.verdict,
        sources=answer.sources,
        cautions=answer.cautions,
        also=answer.also,
        steps=tuple(steps),
        table=answer.table,
    )
