"""Whether a smoke alarm stands far enough from a bathroom door and from cooking."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Answer
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.building.asking import feet
from witnessmark.gauges.building.checks import Check, held_against
from witnessmark.gauges.building.editions import Built, Edition, held_to, irc
from witnessmark.gauges.building.messages import NEEDED_HERE
from witnessmark.gauges.gauge import gauge
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["smoke_alarm_distance"]

_SINCE = 2015
_BATH = Decimal(3)
_COOKING = {"ionization": Decimal(20), "ionization with silence button": Decimal(10), "photoelectric": Decimal(6)}


@gauge(
    name="smoke-alarm-distance",
    family="building",
    title="Smoke alarm: distance from bathroom and cooking",
    unit="[ft_i]",
    gives="shorter of the distances given",
    sources=(
        irc("R314.3 (3 ft from a bathroom)", "seen in a copy", "2015 and later"),
        irc("R314.3.3 (cooking)", "seen in a copy"),
    ),
    error="an inch or two, measured level",
    never="that the alarm will not sound for nothing, or will sound for a fire",
    cautions=("An alarm that a required place forces nearer is not held to these distances.",),
    example={"sensor": "ionization", "to_cooking": "12 ft", "to_bathroom_door": "4 ft", "edition": "2018"},
)
def smoke_alarm_distance(
    sensor: Annotated[
        Literal["ionization", "ionization with silence button", "photoelectric"],
        Asked("how it senses", how="from the label on its back", example="ionization"),
    ],
    to_bathroom_door: Annotated[
        Quantity | None, feet("level distance to the door of a bathroom with a tub or shower", example="4 ft")
    ] = None,
    to_cooking: Annotated[Quantity | None, feet("level distance to a fixed cooking appliance", example="12 ft")] = None,
    edition: Edition = None,
    built: Built = None,
) -> Answer:
    """Whether a smoke alarm keeps its distance from steam and cooking by an edition.

    Rule:
        from IRC 2015: at least 3 ft from the door of a bathroom with a tub or shower; from a fixed cooking appliance at
        least 20 ft for ionization, 10 ft with a silence button, 6 ft for photoelectric

    >>> from witnessmark.units import parse_quantity as q
    >>> smoke_alarm_distance("ionization", to_cooking=q("12 ft"), edition=2018)["cooking_within"]
    False
    """
    given = [one.value for one in (to_bathroom_door, to_cooking) if one is not None]
    if not given:
        raise Refusal(NEEDED_HERE.at("smoke-alarm-distance", "to_bathroom_door or to_cooking"))

    def checks(edition: int) -> tuple[Check, ...]:
        if edition < _SINCE:
            return ()
        found = []
        if to_bathroom_door is not None:
            found.append(
                Check(
                    "bathroom",
                    "to the bathroom door",
                    to_bathroom_door.value,
                    "[ft_i]",
                    "R314.3",
                    lowest=_BATH,
                    since=_SINCE,
                )
            )
        if to_cooking is not None:
            least = _COOKING[sensor]
            found.append(
                Check(
                    "cooking",
                    f"{sensor}, to cooking",
                    to_cooking.value,
                    "[ft_i]",
                    "R314.3.3",
                    lowest=least,
                    since=_SINCE,
                )
            )
        return tuple(found)

    return held_against(held_to(edition, built), checks, basis="seen in a copy", value=min(given))
