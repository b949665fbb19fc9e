"""How much vent area a crawl space needs, how many vents that is, and whether each corner has one near."""

from __future__ import annotations

import math
from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Step
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.building.asking import area as asked_area
from witnessmark.gauges.building.asking import feet
from witnessmark.gauges.building.attic import vent_area
from witnessmark.gauges.building.checks import Check, held_against, plain, said
from witnessmark.gauges.building.editions import Built, Edition, held_to, irc
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["crawl_space_vents", "vents_needed"]

_OPEN, _COVERED = 150, 1500
_CORNER = Decimal(3)
_SQUARE_INCH = "[sin_i]"


def vents_needed(needed: Decimal, each: Decimal) -> int:
    """How many vents of *each* net area make up *needed*, both in one unit, *each* above 0.

    >>> vents_needed(Decimal(960), Decimal(64)), vents_needed(Decimal(96), Decimal(64))
    (15, 2)
    """
    return math.ceil(needed / each)


@gauge(
    name="crawl-space-vents",
    family="building",
    title="Net free vent area of a crawl space",
    unit="[sin_i]",
    gives="net free vent area needed",
    sources=(irc("R408.1, R408.2", "seen in a copy"),),
    error="vent areas by label are within a tenth; screens and paint take more",
    never="that the crawl space stays dry: outdoor air in summer can wet it",
    cautions=(
        "A crawl space made unvented (R408.3: sealed cover, heated or exhausted air, insulated walls) is another case.",
        "Do not enter a crawl space that is wet, too low, or has exposed wiring.",
    ),
    example={
        "area": "1000 sq ft",
        "ground_cover": "no",
        "vent_area_each": "64 sq in",
        "vents": "12",
        "edition": "2018",
    },
)
def crawl_space_vents(
    area: Annotated[Quantity, asked_area("floor area of the crawl space", example="1000 sq ft")],
    ground_cover: Annotated[
        bool,
        Asked(
            "whether a Class I vapor retarder covers all of the ground",
            how="look under its edges and at the walls",
            example="no",
        ),
    ],
    vent_area_each: Annotated[
        Quantity | None,
        Asked(
            "NET free area of one vent",
            _SQUARE_INCH,
            lowest="1",
            highest="1000",
            least="0.1",
            how="from its stamp; a louvred 8 by 16 in vent has about 64 sq in",
            example="64 sq in",
        ),
    ] = None,
    vents: Annotated[
        int | None, Asked("number of vents found open", lowest="0", highest="100", least="0", example="12")
    ] = None,
    corner_distances: Annotated[
        tuple[Quantity, ...],
        feet("from each corner of the building to the vent nearest to it", example="2 ft, 2 1/2 ft"),
    ] = (),
    *,
    edition: Edition = None,
    built: Built = None,
) -> Answer:
    """The net vent area a vented crawl space needs by an edition, the number of vents, and the corners.

    Rule:
        1/150 of the floor area; 1/1500 where a Class I vapor retarder covers the ground; one vent within 3 ft of each
        corner of the building

    Trap: gross vent area is not net; a louvre passes about half.

    >>> from witnessmark.units import parse_quantity as q
    >>> answer = crawl_space_vents(q("1500 sq ft"), ground_cover=True, vent_area_each=q("64 sq in"), edition=2018)
    >>> answer.value, answer["vents_needed"]
    (Decimal('144'), Decimal('3'))
    """
    ratio = _COVERED if ground_cover else _OPEN
    need = vent_area(area.value, ratio)
    each = None if vent_area_each is None else vent_area_each.value
    count = None if each is None else vents_needed(need, each)
    have = None if each is None or vents is None else each * vents
    far = max((one.value for one in corner_distances), default=None)
    held = held_to(edition, built)

    def checks(_: int) -> tuple[Check, ...]:
        found = []
        if have is not None:
            found.append(Check("net_free_area", "net free area found", have, _SQUARE_INCH, "R408.1", lowest=need))
        if far is not None:
            found.append(Check("corners", "farthest corner from a vent", far, "[ft_i]", "R408.2", highest=_CORNER))
        return tuple(found)

    lead = f"1/{ratio} of {said(area.value, '[sft_i]')} is {said(plain(need), _SQUARE_INCH)}"
    lead += f": {count} vents of {said(each, _SQUARE_INCH)}. " if each is not None else ". "
    also = (
        Also("ratio", "share of the floor area", f"1/{ratio}"),
        *(() if count is None else (Also("vents_needed", "number of vents of this area", Decimal(count), "1"),)),
    )
    steps = (Step(f"floor area at 1/{ratio}", plain(need), _SQUARE_INCH),)
    if have is None and far is None:
        answer = Answer(
            words=lead.strip(),
            cautions=held.cautions,
            also=(*also, Also("required_when", "required when", "IRC 2000 and later; earlier codes asked the like")),
        )
    else:
        answer = held_against(held, checks, basis="seen in a copy", lead=lead, also=also)
    return Answer(
        value=plain(need),
        words=answer.words,
        verdict=answer.verdict,
        cautions=answer.cautions,
        also=answer.also,
        steps=steps,
        table=answer.table,
    )
