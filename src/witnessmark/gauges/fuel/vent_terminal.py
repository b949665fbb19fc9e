"""How far a gas vent must end above a roof of a given slope."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Limit, Outside, Uncertainty
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.fuel.cautions import LICENSED, LOCAL, MONOXIDE
from witnessmark.gauges.fuel.sources import VENT_HEIGHT
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["gas_vent_height", "height_above_roof"]

#: Roof slope up to and including (inches in twelve), and the least height in feet.
_TABLE: tuple[tuple[int, str], ...] = (
    (6, "1.0"), (7, "1.25"), (8, "1.5"), (9, "2.0"), (10, "2.5"), (11, "3.25"), (12, "4.0"), (14, "5.0"),
    (16, "6.0"), (18, "7.0"), (20, "7.5"), (21, "8.0"),
)  # fmt: skip
_LARGEST_VENT, _WALL = Decimal(12), Decimal(8)
_ELSEWHERE = Decimal(2)
_OLD_FLAT = 7


def height_above_roof(slope: Decimal) -> Decimal | None:
    """Least height in feet of a listed gas vent above a roof of *slope* inches in twelve; None beyond 21 in 12.

    International Residential Code 2018, Figure G2427.6.4; each row reaches up to and including its slope.

    >>> height_above_roof(Decimal(8)), height_above_roof(Decimal("8.1"))
    (Decimal('1.5'), Decimal('2.0'))
    """
    return next((Decimal(height) for most, height in _TABLE if slope <= most), None)


@gauge(
    name="gas-vent-height",
    family="fuel",
    title="Height of a gas vent above the roof",
    unit="[ft_i]",
    gives="least height of the terminal above the roof surface",
    sources=(VENT_HEIGHT,),
    error="none in the table; a height seen from the ground is off by half a foot",
    never="that a vent draws, or anything about masonry chimneys and direct-vent terminals",
    cautions=(
        MONOXIDE, LOCAL, LICENSED,
        "For a listed gas vent with a listed cap; measured from the roof's higher side to the lowest opening.",
        "Do not climb a roof to measure it: read it from the eave or with a pole.",
    ),
    example={"slope": "8 in 12", "height": "18in"},
)  # fmt: skip
def gas_vent_height(
    slope: Annotated[
        Quantity,
        Asked(
            "slope of the roof", "[in_i]/[ft_i]", lowest="0", highest="21", least="0",
            how="with a slope gauge from the rake, or rise over a level foot", example="8 in 12",
        ),
    ],
    height: Annotated[
        Quantity | None,
        Asked(
            "height of the terminal above the roof", "[ft_i]", lowest="0", highest="20", least="0",
            how="on the uphill side, to the lowest opening of the cap", example="18in",
        ),
    ] = None,
    wall_distance: Annotated[
        Quantity | None,
        Asked(
            "distance to the nearest vertical wall that rises above the terminal", "[ft_i]", lowest="0", highest="100",
            least="0", how="level, from the vent to the wall, dormer or parapet", example="10ft",
        ),
    ] = None,
    vent_size: Annotated[
        Quantity | None,
        Asked(
            "diameter of the vent", "[in_i]", lowest="3", highest="24", least="0", how="from the pipe's marking",
            example="4in",
        ),
    ] = None,
) -> Answer:  # fmt: skip
    """Least height of a listed gas vent above the roof by its slope, for vents up to 12 in and 8 ft from any wall.

    Rule:
        up to 6 in 12: 1.0 ft; 7: 1.25; 8: 1.5; 9: 2.0; 10: 2.5; 11: 3.25; 12: 4.0; 14: 5.0; 16: 6.0; 18: 7.0;
        20: 7.5; 21: 8.0
        larger than 12 in, or nearer than 8 ft to a vertical wall: at least 2 ft above the highest point where it
        passes through the roof and at least 2 ft above any part of the building within 10 ft (recalled)

    Trap: older copies of the table print 1.0 ft up to 7 in 12.

    >>> from witnessmark.units import parse_quantity as q
    >>> gas_vent_height(q("12 in 12")).value
    Decimal('4.0')
    """  # fmt: skip
    table = height_above_roof(slope.value)
    apart = (vent_size is not None and vent_size.value > _LARGEST_VENT) or (
        wall_distance is not None and wall_distance.value < _WALL
    )
    also: list[Also] = [Also("by_table", "whether the table of slopes applies", not apart)]
    notes: list[str] = []
    if table is not None and _TABLE[0][0] < slope.value <= _OLD_FLAT:
        also.append(Also("older_copies", "what older copies of the table print here", Decimal("1.0"), "[ft_i]"))
        notes.append("Older copies of this table print 1.0 ft up to 7 in 12.")
    if wall_distance is None and not apart:
        notes.append("The table holds only 8 ft or more from a vertical wall; that distance was not given.")
    needed = _ELSEWHERE if apart else table
    if needed is None:
        return Answer(
            words="The table ends at 21 in 12; no height is published for a steeper roof.",
            outside_range=(Outside("height", slope, Decimal(0), Decimal(21), "the table ends here"),),
            also=tuple(also),
        )
    words = (
        "The vent is larger than 12 in or within 8 ft of a wall, so the table does not apply: at least 2 ft above "
        "where it leaves the roof and 2 ft above any part of the building within 10 ft."
        if apart
        else f"On this slope a listed gas vent ends at least {needed} ft above the roof."
    )
    answer = Answer(
        value=needed,
        unit="[ft_i]",
        words=words,
        cautions=tuple(notes),
        also=tuple(also),
        uncertainty=Uncertainty("none in the table; a height read from the ground is off by about half a foot"),
    )
    if height is None:
        return answer
    held = Answer(value=height.value, unit="[ft_i]").against(
        Limit(VENT_HEIGHT, lowest=Quantity(needed, "[ft_i]"), words="Height above the roof")
    )
    margin = Also("margin", "height beyond the need (negative: short)", height.value - needed, "[ft_i]")
    return Answer(
        value=needed, unit="[ft_i]", words=f"{words} It ends {height.value:.2f} ft above.", verdict=held.verdict,
        cautions=answer.cautions, also=(*also, margin), uncertainty=answer.uncertainty,
    )  # fmt: skip
