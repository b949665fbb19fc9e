"""Whether a deck has the tension devices that hold it to the house sideways."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.building.checks import Check, held_against
from witnessmark.gauges.building.editions import Built, Edition, held_to, irc
from witnessmark.gauges.gauge import gauge

__all__ = ["deck_lateral"]

_NEEDED = {"1500 lb": (2, 2009), "750 lb": (4, 2015)}


@gauge(
    name="deck-lateral-devices",
    family="building",
    title="Devices that hold a deck to the house sideways",
    unit="1",
    gives="number of devices found",
    sources=(irc("R502.2.2.3 (2009), R507.2.4 (2015), R507.9.2 (2018 and later)", "memory"),),
    error="a device hidden by finishes is not counted",
    never="that the deck cannot pull away",
    cautions=("The code offers these devices as one way; a design by an engineer is another.",),
    example={"devices": "2", "rating": "1500 lb", "edition": "2018"},
)
def deck_lateral(
    devices: Annotated[
        int,
        Asked("number of tension devices from deck to house framing", lowest="0", highest="50", least="0", example="2"),
    ],
    rating: Annotated[Literal["1500 lb", "750 lb"], Asked("allowable load of each device")] = "1500 lb",
    edition: Edition = None,
    built: Built = None,
) -> Answer:
    """Whether a deck on a ledger has two devices of 1500 lb or four of 750 lb.

    Rule:
        where devices are used: at least two of 1500 lb each within 24 in of the ends (from IRC 2009), or four of 750 lb
        (from IRC 2015)

    >>> deck_lateral(1, edition=2018)["devices_within"], deck_lateral(4, "750 lb", edition=2018)["devices_within"]
    (False, True)
    """
    need, since = _NEEDED[rating]

    def checks(one: int) -> tuple[Check, ...]:
        if one < since:
            return ()
        found = Decimal(devices)
        return (Check("devices", f"devices of {rating}", found, "1", "R507.9.2", lowest=Decimal(need), since=since),)

    return held_against(
        held_to(edition, built),
        checks,
        value=Decimal(devices),
        unit="1",
        also=(Also("needed", f"devices of {rating} asked", Decimal(need), "1"),),
    )
