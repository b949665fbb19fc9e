"""Whether carbon monoxide alarms were asked for when a house was built, and where."""

from __future__ import annotations

from typing import Annotated

from witnessmark.gauges.answer import Also, Answer
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.building.checks import Rule, by_rule
from witnessmark.gauges.building.editions import Built, Edition, held_to, irc
from witnessmark.gauges.gauge import gauge

__all__ = ["co_alarms", "co_asked"]

_SINCE, _BEDROOM_SINCE, _WIRED_SINCE = 2009, 2012, 2015


def co_asked(edition: int, *, fuel: bool, garage: bool) -> bool:
    """Whether an IRC edition asks for CO alarms: from 2009, with fuel-fired appliances or an attached garage.

    >>> co_asked(2006, fuel=True, garage=True), co_asked(2009, fuel=False, garage=True)
    (False, True)
    """
    return edition >= _SINCE and (fuel or garage)


@gauge(
    name="co-alarms",
    family="building",
    title="Carbon monoxide alarms asked for",
    gives="whether alarms outside the sleeping areas were asked for, and what more",
    sources=(irc("R315", "memory"),),
    error="states and cities asked for CO alarms years before and after the model code",
    never="that there is or is not carbon monoxide in the house",
    cautions=(
        "State law decides, often for existing houses and at sale or new tenancy: look it up.",
        "If an alarm sounds or people feel ill: out of the house first, then call the fire department.",
    ),
    example={"fuel_burning": "yes", "attached_garage": "no", "edition": "2018"},
)
def co_alarms(
    fuel_burning: Annotated[bool, Asked("a fuel-fired appliance or fireplace in the dwelling", example="yes")],
    attached_garage: Annotated[bool, Asked("an attached garage", example="no")],
    fuel_in_bedroom: Annotated[
        bool, Asked("a fuel-burning appliance or fireplace in a bedroom or its bathroom", example="no")
    ] = False,
    edition: Edition = None,
    built: Built = None,
) -> Answer:
    """Whether CO alarms were asked for by an edition, and where.

    Rule:
        IRC 2009: outside each sleeping area where there is a fuel-fired appliance or an attached garage, also when an
        alteration needs a permit; IRC 2012 (some recall 2015): in a bedroom with a fuel-burning appliance too; IRC 2015:
        wired with battery

    >>> co_alarms(fuel_burning=True, attached_garage=False, edition=2006)["required"]
    False
    """
    held = held_to(edition, built)
    any_fuel = fuel_burning or fuel_in_bedroom
    on = held.edition or 0
    asked = co_asked(on, fuel=any_fuel, garage=attached_garage)
    bedroom, wired = asked and fuel_in_bedroom and on >= _BEDROOM_SINCE, asked and on >= _WIRED_SINCE
    more = [
        *(("one in the bedroom with the appliance",) if bedroom else ()),
        *(("wired to the house with a battery",) if wired else ()),
    ]
    return by_rule(
        held,
        Rule(
            "a CO alarm outside each sleeping area",
            "R315",
            lambda one: co_asked(one, fuel=any_fuel, garage=attached_garage),
            "memory",
            "" if any_fuel or attached_garage else "no fuel-fired appliance and no attached garage were told",
        ),
        also=(
            Also("in_bedroom_required", f"in the bedroom with a fuel-burning appliance, by {held.name}", bedroom),
            Also("wired_required", f"wired with battery, by {held.name}", wired),
        ),
        before=f"Also asked: {'; '.join(more)}." if more else "",
    )
