"""Whether a dishwasher's drain is guarded against waste coming back, by the code in force."""

from __future__ import annotations

from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Verdict
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.water.cautions import LOCAL
from witnessmark.gauges.water.editions import EDITIONS, against_built, checked
from witnessmark.gauges.water.sources import code, of_edition

__all__ = ["dishwasher_drain"]

#: First edition of the UPC with the rule in 807.3; before it stood in 807.4.
_RENUMBERED = 2012


#: Editions whose text was read.
_READ: dict[str, tuple[int, ...]] = {"UPC": (2009,), "IRC": (2015,)}


def _place(law: str, edition: int) -> str:
    if law == "UPC":
        return "807.3" if edition >= _RENUMBERED else "807.4"
    return "P2717"


def _verdict(law: str, seen: str, at_rim: bool | None) -> tuple[Literal["within", "beyond", "undecided"], str]:
    if seen == "could not be seen":
        return "undecided", "it could not be seen"
    if seen == "neither":
        return "beyond", "neither an air gap nor a high loop was seen"
    if law != "UPC":
        return "within", "either is what it asks"
    if seen == "high loop":
        return "beyond", "a high loop is not the air gap fitting that it asks for"
    if at_rim is None:
        return "undecided", "whether the air gap's mark stands at or above the flood rim was not given"
    return ("within", "what it asks") if at_rim else ("beyond", "the air gap stands below the flood rim")


@gauge(
    name="dishwasher-drain",
    family="water",
    title="Air gap or high loop on a dishwasher's drain, by code",
    gives="what the code asks, and whether what was seen is that",
    sources=(
        code("UPC", "2000 to 2024", "807.3 (807.4 in earlier editions)", "seen in a copy"),
        code("IRC", "2000 to 2024", "P2717", "seen in a copy"),
    ),
    error="none in the rule; a loop behind a cabinet is seldom seen whole",
    never="that waste cannot come back",
    cautions=(
        "Which code a state adopted, and how it changed it, decides; several states changed this very rule.",
        "The machine's own instructions may ask for one or the other besides. Its supply side is guarded inside it.",
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
    at_flood_rim: Annotated[
        bool | None, Asked("UPC: whether the air gap's mark stands at or above the flood rim of sink or drainboard")
    ] = None,
    edition: Annotated[int | None, Asked("edition of the code, a year", choices=EDITIONS)] = None,
    built: Annotated[int | None, Asked("year the dishwasher was set", lowest="1800", highest="2100")] = None,
) -> Answer:
    """Whether the drain of a dishwasher has the guard that the code asks.

    Rule:
        UPC 807: an air gap fitting, its mark at or above the flood rim. IRC P2717: the hose rises to the underside of the
        counter and is fastened there, or an air gap. What was not given stays undecided.

    >>> from witnessmark.gauges import evaluate
    >>> evaluate("dishwasher-drain", {"seen": "high loop", "law": "UPC"}).verdict.outcome
    'beyond'
    """
    short = "UPC" if law == "UPC" else "IRC"
    year = checked(short, edition)
    source = of_edition(short, year, _place(law, year), *_READ[short])
    asked = "an air gap fitting at or above the flood rim" if law == "UPC" else "a high loop or an air gap"
    outcome, told = _verdict(law, seen, at_flood_rim)
    era, since = against_built(built, year)
    found = "It could not be seen" if seen == "could not be seen" else f"Seen: {seen}"
    return Answer(
        words=f"The {law} asks for {asked}. {found}.",
        verdict=Verdict(outcome, told, source),
        sources=(source,),
        cautions=since,
        also=(
            Also("asked", "asked for", asked),
            Also("enough", "seen is what it asks", {"within": True, "beyond": False}.get(outcome, "not known")),
            *era,
        ),
    )
