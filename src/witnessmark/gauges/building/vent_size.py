"""What net free area a vent has from its gross opening."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Source, Uncertainty
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.building.asking import inches
from witnessmark.gauges.building.checks import plain, said
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["vent_net_area"]

#: Net share of the gross opening: least, usual, most.
_SHARES = {
    "louvre with screen": (Decimal("0.4"), Decimal("0.5"), Decimal("0.6")),
    "screen only": (Decimal("0.6"), Decimal("0.7"), Decimal("0.8")),
    "open": (Decimal("0.9"), Decimal(1), Decimal(1)),
}
_SQUARE_INCH = "[sin_i]"


@gauge(
    name="vent-net-area",
    family="building",
    title="Net free area of a vent from its gross opening",
    unit="[sin_i]",
    gives="net free area by the usual share of the gross opening",
    sources=(Source("usual shares of net to gross vent area", "", "", "common practice, no source"),),
    error="the share of one vent can be a fifth off the usual one: its stamp or its maker decides",
    never="the free area of this vent where a stamp says otherwise",
    example={"width": "16 in", "height": "8 in", "covering": "louvre with screen", "count": "15"},
)
def vent_net_area(
    width: Annotated[Quantity, inches("width of the opening", example="16 in")],
    height: Annotated[Quantity, inches("height of the opening", example="8 in")],
    covering: Annotated[
        Literal["louvre with screen", "screen only", "open"], Asked("what covers it")
    ] = "louvre with screen",
    count: Annotated[int, Asked("number of such vents", lowest="1", highest="100", least="1", example="15")] = 1,
) -> Answer:
    """The net free area of vents from their gross openings, as a range.

    Formula:
        net = width * height * share * count; share 0.4 to 0.6 with louvre and screen (0.5 usual), 0.6 to 0.8 with a
        screen, 0.9 to 1 open

    >>> from witnessmark.units import parse_quantity as q
    >>> vent_net_area(q("16 in"), q("8 in")).value
    Decimal('64')
    """
    gross = width.value * height.value * count
    least, usual, most = (plain(gross * share) for share in _SHARES[covering])
    return Answer(
        value=usual,
        words=f"{said(gross, _SQUARE_INCH)} gross is about {said(usual, _SQUARE_INCH)} net "
        f"({said(least, _SQUARE_INCH)} to {said(most, _SQUARE_INCH)}); the stamp on the vent goes before it.",
        uncertainty=Uncertainty("the usual range of shares", max(usual - least, most - usual)),
        also=(
            Also("gross", "gross opening", plain(gross), _SQUARE_INCH),
            Also("least", "least usual", least, _SQUARE_INCH),
            Also("most", "most usual", most, _SQUARE_INCH),
        ),
    )
