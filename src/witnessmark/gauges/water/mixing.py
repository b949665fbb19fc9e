"""How much of the mixed water comes from the hot side."""

from __future__ import annotations

from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Source, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.water.cautions import SCALD
from witnessmark.gauges.water.messages import TEMPERATURES_AT_ODDS
from witnessmark.problems import Refusal
from witnessmark.units import Quantity, say

__all__ = ["hot_share", "hot_water_share"]


def hot_share(hot: float, cold: float, mixed: float) -> float:
    """Share of hot water, 0 to 1, in water mixed from *hot* and *cold* (one scale; hot above cold, mixed between).

    >>> round(hot_share(120, 50, 105), 3)
    0.786
    """
    return (mixed - cold) / (hot - cold)


def _temperature(what: str, how: str, example: str) -> Asked:
    return Asked(what, "[degF]", lowest="32", highest="210", least="32", most="212", how=how, example=example)


@gauge(
    name="hot-water-share",
    family="water",
    title="Share of hot water in mixed water",
    unit="%",
    gives="share of the flow that comes from the hot side",
    sources=(Source("heat balance of two streams", "", "density and heat of water taken as one", "calculated"),),
    error="about one part in a hundred from density; a probe that is 1 °F off moves it by one or two in a hundred",
    never="how long a heater will keep up, or that its water does not scald",
    cautions=(SCALD,),
    example={"hot": "120F", "cold": "50F", "mixed": "105F", "flow": "2.5gpm"},
)
def hot_water_share(
    hot: Annotated[
        Quantity, _temperature("temperature of the hot water", "hot side alone, run until it is steady", "120F")
    ],
    cold: Annotated[
        Quantity, _temperature("temperature of the cold water", "cold side alone, run until steady", "50F")
    ],
    mixed: Annotated[Quantity, _temperature("temperature of the mixed water", "as it is used", "105F")],
    flow: Annotated[
        Quantity | None,
        Asked("flow of the mixed water", "[gal_us]/min", lowest="0", highest="20", least="0", example="2.5gpm"),
    ] = None,
) -> Answer:
    """What share of mixed water comes from the hot side, and how much hot water that draws.

    Formula:
        share = (mixed - cold) / (hot - cold)

    >>> from witnessmark.gauges import evaluate
    >>> round(evaluate("hot-water-share", {"hot": "140F", "cold": "50F", "mixed": "105F"}).value, 1)
    Decimal('61.1')
    """
    if hot.value <= cold.value or not cold.value <= mixed.value <= hot.value:
        given = f"hot {say(hot)}, cold {say(cold)}, mixed {say(mixed)}"
        raise Refusal(TEMPERATURES_AT_ODDS.at("hot-water-share", given))
    h, c, m = float(hot.value), float(cold.value), float(mixed.value)
    share = hot_share(h, c, m)
    words = f"{100 * share:.0f} % of this water comes from the hot side."
    also: tuple[Also, ...] = ()
    if flow is not None:
        drawn = rounded(share * float(flow.value))
        also = (Also("hot_flow", "flow drawn from the hot side", drawn, "[gal_us]/min"),)
        words += f" That draws {drawn:.2f} gal/min of hot water."
    off = rounded(100 * (1 + share) / (h - c))
    return Answer(
        value=rounded(100 * share),
        words=words,
        also=also,
        uncertainty=Uncertainty("for a probe 1 °F off on each side", off),
    )
