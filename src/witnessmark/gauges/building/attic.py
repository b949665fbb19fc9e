"""How much net vent area an attic needs, and whether what it has is enough and well shared between high and low."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Step
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.building.asking import area as asked_area
from witnessmark.gauges.building.asking import feet
from witnessmark.gauges.building.checks import Check, held_against, plain, said
from witnessmark.gauges.building.editions import IRC, Built, Edition, held_to, irc, named
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["attic_ratio", "attic_ventilation", "vent_area"]

_FULL, _REDUCED = 150, 300
_PER_FOOT = 144
#: Edition since which both conditions must hold, and the edition whose text is recalled both ways.
_BOTH_SINCE, _DOUBTFUL = 2012, 2012
_OLD_SHARE, _NEW_SHARE = (Decimal("0.5"), Decimal("0.8")), (Decimal("0.4"), Decimal("0.5"))
_THREE_FEET = Decimal(3)
_COLD = 6
_SQUARE_INCH = "[sin_i]"


def vent_area(square_feet: Decimal, ratio: int) -> Decimal:
    """Net free area in square inches for a floor area in square feet at 1/*ratio*.

    >>> vent_area(Decimal(1200), 150), vent_area(Decimal(1200), 300)
    (Decimal('1152'), Decimal('576'))
    """
    return square_feet * _PER_FOOT / ratio


def attic_ratio(edition: int, *, shared: bool, retarder: bool, cold: bool) -> int:
    """150 or 300 by an IRC edition: *shared* if the high vents meet its share and place, *cold* in climate zones 6 to 8.

    Through 2009 either the share or a warm-side vapor retarder brings 1/300; from 2012 the share, and in zones 6 to 8
    the retarder as well.

    >>> attic_ratio(2006, shared=False, retarder=True, cold=False), attic_ratio(2018, shared=False, retarder=True, cold=True)
    (300, 150)
    """
    reduced = (shared and (retarder or not cold)) if edition >= _BOTH_SINCE else (shared or retarder)
    return _REDUCED if reduced else _FULL


def _shared(
    edition: int, floor: Decimal, vents: tuple[Decimal, Decimal], above: Decimal | None, below: Decimal | None
) -> bool:
    """Whether the high vents give the share of the 1/300 area that an edition names, from where it names, the rest low."""
    high, low = vents
    need = vent_area(floor, _REDUCED)
    least, most = _NEW_SHARE if edition >= _BOTH_SINCE else _OLD_SHARE
    if edition >= _BOTH_SINCE:
        placed = below is not None and below <= _THREE_FEET
    else:
        placed = above is not None and above >= _THREE_FEET
    return placed and need * least <= high <= need * most and high + low >= need


@gauge(
    name="attic-ventilation",
    family="building",
    title="Net free vent area of an attic",
    unit="[sin_i]",
    gives="net free vent area needed, by the edition and what was found",
    sources=(
        irc("R806.2 (1/150; 1/300 with 50 to 80 % high)", "seen in a copy", "2000 to 2009"),
        irc("R806.2 (40 to 50 % within 3 ft of the ridge)", "seen in a copy", "2012, 2015"),
        irc("R806.2 (zones 6 to 8, both conditions)", "memory", "2012 and later"),
    ),
    error="vent areas by label are within a tenth; paint, screens and insulation in the eaves take more",
    never="that the attic stays dry or that there will be no ice dams: air leaks from the house matter more",
    cautions=(
        "Net free area is stamped on the vent or given by its maker; the gross opening is about twice as large.",
        "Look from inside whether insulation blocks the eaves: a blocked vent has no area.",
    ),
    example={
        "area": "1200 sq ft",
        "high": "280 sq in",
        "low": "320 sq in",
        "below_ridge": "1 ft",
        "climate_zone": "4",
        "edition": "2018",
    },
)
def attic_ventilation(
    area: Annotated[Quantity, asked_area("floor of the attic that is vented", example="1200 sq ft")],
    high: Annotated[
        Quantity | None,
        asked_area(
            "NET free area of all high vents",
            unit=_SQUARE_INCH,
            most="100000",
            how="from their stamps",
            example="280 sq in",
        ),
    ] = None,
    low: Annotated[
        Quantity | None,
        asked_area(
            "NET free area of all eave or cornice vents",
            unit=_SQUARE_INCH,
            most="100000",
            how="from their stamps",
            example="320 sq in",
        ),
    ] = None,
    above_eaves: Annotated[
        Quantity | None,
        feet("high vents above the eave vents, plumb (counts through IRC 2009)", most="60", example="6 ft"),
    ] = None,
    below_ridge: Annotated[
        Quantity | None, feet("high vents below the ridge, plumb (counts from IRC 2012)", most="60", example="1 ft")
    ] = None,
    *,
    vapor_retarder: Annotated[
        bool, Asked("a vapor retarder of 1 perm or less on the warm side of the ceiling", example="no")
    ] = False,
    climate_zone: Annotated[
        int | None,
        Asked(
            "climate zone of the energy code",
            lowest="1",
            highest="8",
            least="1",
            most="8",
            how="from the map, by county",
            example="4",
        ),
    ] = None,
    edition: Edition = None,
    built: Built = None,
) -> Answer:
    """The net vent area an attic needs by an edition, whether 1/300 is earned, and whether the vents found give it.

    Rule:
        1/150 of the floor area. 1/300 through IRC 2009 if 50 to 80 % of it is high, at least 3 ft above the eave vents, OR
        a 1-perm retarder is on the warm side; from IRC 2012 if 40 to 50 % of it is high, within 3 ft of the ridge, AND, in
        climate zones 6 to 8, the retarder is there.

    Traps: one condition alone does not earn 1/300 in later editions; gross vent area is not net.

    >>> from witnessmark.units import parse_quantity as q
    >>> attic_ventilation(q("1200 sq ft"), edition=2018).value
    Decimal('1152')
    """
    held = held_to(edition, built)
    floor = area.value
    up, down = (Decimal(0) if one is None else one.value for one in (high, low))
    above = None if above_eaves is None else above_eaves.value
    below = None if below_ridge is None else below_ridge.value
    cold = climate_zone is None or climate_zone >= _COLD
    zone_matters = climate_zone is None and not vapor_retarder

    def ratio(one: int) -> int:
        return attic_ratio(
            one, shared=_shared(one, floor, (up, down), above, below), retarder=vapor_retarder, cold=cold
        )

    judged = IRC[-1] if held.edition is None else held.edition
    need = vent_area(floor, ratio(judged))
    reduced = vent_area(floor, _REDUCED)
    least, most = _NEW_SHARE if judged >= _BOTH_SINCE else _OLD_SHARE
    cautions: tuple[str, ...] = ()
    if zone_matters and judged >= _BOTH_SINCE:
        cautions = ("The climate zone was not given: taken for 6 to 8, where 1/300 needs a vapor retarder too.",)
    if held.edition == _DOUBTFUL:
        cautions = (
            *cautions,
            "Whether IRC 2012 asks for both conditions or for one or more is recalled both ways: both are asked here.",
        )
    share = f", {100 * up / (up + down):.0f} % of it high" if up + down > 0 else ""
    lead = (
        f"{named(judged)}: 1/{ratio(judged)} of {said(floor, '[sft_i]')} is {said(plain(need), _SQUARE_INCH)}{share}. "
    )
    also = (
        Also("ratio", "share of the floor area", f"1/{ratio(judged)}"),
        Also("full", "at 1/150", plain(vent_area(floor, _FULL)), _SQUARE_INCH),
        Also("reduced", "at 1/300", plain(reduced), _SQUARE_INCH),
        Also("high_least", "least of it high, for 1/300", plain(reduced * least), _SQUARE_INCH),
        Also("high_most", "most of it high, for 1/300", plain(reduced * most), _SQUARE_INCH),
        Also("shared", "high and low vents share as 1/300 asks", _shared(judged, floor, (up, down), above, below)),
    )
    steps = (
        Step("floor area at 1/150", plain(vent_area(floor, _FULL)), _SQUARE_INCH),
        Step("floor area at 1/300", plain(reduced), _SQUARE_INCH),
        Step("high and low vents together", up + down, _SQUARE_INCH),
    )
    if high is None and low is None:
        return Answer(
            value=plain(need),
            words=lead.strip() + " No vents were given to hold against it.",
            cautions=(*held.cautions, *cautions),
            also=(*also, Also("required_when", "required when", "IRC 2000 and later; earlier codes asked the like")),
            steps=steps,
        )
    answer = held_against(
        held,
        lambda one: (
            Check(
                "net_free_area",
                "net free area found",
                up + down,
                _SQUARE_INCH,
                "R806.2",
                lowest=vent_area(floor, ratio(one)),
            ),
        ),
        value=plain(need),
        lead=lead,
        also=also,
        cautions=cautions,
    )
    return Answer(
        value=answer.value,
        words=answer.words,
        verdict=answer.verdict,
        cautions=answer.cautions,
        also=answer.also,
        steps=steps,
        table=answer.table,
    )
