"""Whether a dishwasher's drain is guarded against waste coming back, by the code in force."""

from __future__ import annotations

from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Verdict
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.water.cautions import LOCAL
from witnessmark.gauges.water.sources import code

__all__ = ["dishwasher_drain"]

_UPC = code("UPC", 2018, "807.3 (807.4 in earlier editions)", "seen in a copy")
_IRC = code("IRC", 2018, "P2717", "seen in a copy")


@gauge(
    name="dishwasher-drain",
    family="water",
    title="Air gap or high loop on a dishwasher's drain, by code",
    gives="what the code asks, and whether what was seen is that",
    sources=(_UPC, _IRC),
    error="none in the rule; a loop behind a cabinet is seldom seen whole",
    never="that waste cannot come back",
    cautions=(
        "Which code a state adopted, and how it changed it, decides; several states changed this very rule.",
        LOCAL,
    ),
    example={"seen": "high loop", "law": "UPC"},
)
def dishwasher_drain(
    seen: Annotated[
        Literal["air gap", "high loop", "neither", "could not be seen"],
        Asked(
            "what was seen on the drain hose",
            how="an air gap fitting stands on the counter or sink; a high loop is fastened under the counter",
        ),
    ],
    law: Annotated[Literal["UPC", "IRC or IPC"], Asked("the plumbing code in force at the place")] = "IRC or IPC",
) -> Answer:
    """Whether the drain of a dishwasher has the guard that the code asks.

    Rule:
        UPC 807: an air gap fitting at or above the flood rim. IRC P2717: a loop to the underside of the counter or an air
        gap. The supply side is guarded inside the machine.

    >>> from witnessmark.gauges import evaluate
    >>> evaluate("dishwasher-drain", {"seen": "high loop", "law": "UPC"}).verdict.outcome
    'beyond'
    """  # fmt: skip
    source = _UPC if law == "UPC" else _IRC
    asked = "an air gap fitting" if law == "UPC" else "a high loop or an air gap"
    enough = seen == "air gap" or (seen == "high loop" and law != "UPC")
    if seen == "could not be seen":
        return Answer(
            words=f"The {law} asks for {asked}; it could not be seen.",
            verdict=Verdict("undecided", "could not be seen", source),
            also=(Also("asked", "asked for", asked),),
        )
    told = "what it asks" if enough else f"not what it asks: {asked}"
    return Answer(
        words=f"The {law} asks for {asked}. Seen: {seen}.",
        verdict=Verdict("within" if enough else "beyond", told, source),
        also=(Also("asked", "asked for", asked), Also("enough", "seen is what it asks", enough)),
    )
