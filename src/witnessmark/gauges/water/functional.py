"""What was seen of flow and drainage with fixtures running, in the law's own terms: an observation with its count."""

from __future__ import annotations

from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Source, Table, Verdict
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.water.cautions import FLOOD, FRAGILE
from witnessmark.gauges.water.sources import NC_DEFINITIONS, NC_PLUMBING, TEXAS_2022, WISCONSIN
from witnessmark.units import Quantity, say

__all__ = ["functional_drainage", "functional_flow"]

Law = Literal["Texas", "North Carolina", "Wisconsin", "no law named"]
#: How many fixtures a law has running at once; the others give no number.
NEEDED = {"Texas": 2}
_SOURCES: dict[str, Source] = {"Texas": TEXAS_2022, "North Carolina": NC_PLUMBING, "Wisconsin": WISCONSIN}
_ALL = (TEXAS_2022, NC_PLUMBING, NC_DEFINITIONS, WISCONSIN)
_WHAT = {
    "Texas": "views the flow with two fixtures open at the same time",
    "North Carolina": "inspects functional flow and drainage, and operates every fixture but those that feed an appliance",
    "Wisconsin": "lists functional flow and functional drainage",
    "no law named": "says nothing here",
}


@gauge(
    name="functional-flow",
    family="water",
    title="Functional flow: what was seen with fixtures running",
    gives="the observation, with how many fixtures ran and what the law asks",
    sources=_ALL,
    error="an observation: what seems enough to one person may not to another",
    never="a flow in gallons that a law asks for: none found gives one",
    cautions=("Flow falls when a neighbour, an irrigation valve or a softener runs.", FRAGILE, FLOOD),
    example={"running": "2", "seen": "falls slightly", "law": "Texas"},
)
def functional_flow(
    running: Annotated[
        int,
        Asked(
            "fixtures running at once",
            lowest="1",
            highest="12",
            least="0",
            most="60",
            how="the farthest and the highest two say most, such as an upstairs shower and its sink",
            example="2",
        ),
    ],
    seen: Annotated[
        Literal["steady", "falls slightly", "falls so far that use is hindered", "stops"],
        Asked("what the first fixture's flow did when the others were opened"),
    ],
    law: Annotated[Law, Asked("the law to speak in the terms of")] = "no law named",
    flow: Annotated[
        Quantity | None,
        Asked(
            "flow measured at the first fixture, as supporting data",
            "[gal_us]/min",
            lowest="0",
            highest="30",
            least="0",
            most="300",
            how="with a bucket and a watch, see flow-by-bucket",
            example="1.8gpm",
        ),
    ] = None,
) -> Answer:
    """What was seen of the supply with fixtures running, and whether enough of them ran for the law named.

    Rule:
        no law found gives gallons or seconds for "functional"; Texas (22 TAC 535.231) has two fixtures open, North
        Carolina and Wisconsin name the words. The count of fixtures and what was seen are the record; gal/min only
        supports it.

    >>> from witnessmark.gauges import evaluate
    >>> evaluate("functional-flow", {"running": "1", "seen": "steady", "law": "Texas"})["enough_running"]
    False
    """  # fmt: skip
    needed = NEEDED.get(law)
    enough = needed is None or running >= needed
    hindered = seen in {"falls so far that use is hindered", "stops"}
    words = f"With {running} fixture{'s' if running != 1 else ''} running the flow {_seen(seen)}."
    if flow is not None:
        words += f" Measured: {say(flow)}; no law found asks for a figure."
    if not enough:
        words += f" {law} {_WHAT[law]}: run {needed} together."
    verdict = None
    if law != "no law named":
        outcome: Literal["within", "beyond", "undecided"] = (
            "undecided" if not enough else "beyond" if hindered else "within"
        )
        told = {"undecided": "too few fixtures ran", "beyond": "to report", "within": "nothing to report of the flow"}
        verdict = Verdict(outcome, told[outcome], _SOURCES[law])
    return Answer(
        words=words,
        verdict=verdict,
        also=(
            Also("enough_running", "as many fixtures as the law names", enough),
            Also("hindered", "use is hindered", hindered),
            Also("asks", "what the law does", _WHAT[law]),
        ),
        table=Table(
            (("law", ""), ("what it does", "")), tuple((k, v) for k, v in _WHAT.items() if k != "no law named")
        ),
    )


def _seen(seen: str) -> str:
    return "stays steady" if seen == "steady" else seen


@gauge(
    name="functional-drainage",
    family="water",
    title="Functional drainage: what was seen when fixtures drained together",
    gives="the observation, with how many drained together and how long it took",
    sources=_ALL,
    error="an observation: no law found gives seconds",
    never="that a drain is clear along its length: a camera is another service",
    cautions=("Fill and release rather than trickle: a slow leak and a slow drain show only then.", FLOOD),
    example={"together": "2", "emptied": "yes", "overflowed": "no", "law": "North Carolina"},
)
def functional_drainage(
    together: Annotated[
        int,
        Asked(
            "fixtures draining at once",
            lowest="1",
            highest="12",
            least="0",
            most="60",
            how="one filled and released while another beside it drains",
            example="2",
        ),
    ],
    emptied: Annotated[bool, Asked("whether each emptied without standing", example="yes")],
    overflowed: Annotated[bool, Asked("whether any rose or overflowed while another drained", example="no")],
    law: Annotated[Law, Asked("the law to speak in the terms of")] = "no law named",
    time: Annotated[
        Quantity | None,
        Asked(
            "time one vessel took to empty, as supporting data",
            "s",
            lowest="0",
            highest="3600",
            least="0",
            most="86400",
            how="from opening the stopper until the outlet is bare",
            example="75s",
        ),
    ] = None,
) -> Answer:
    """What was seen of the drains when fixtures were emptied together.

    Rule:
        North Carolina, 11 NCAC 08 .1101(10): a drain is functional when it empties in a reasonable time and does not
        overflow when another fixture drains at the same time. One fixture alone does not show that.

    >>> from witnessmark.gauges import evaluate
    >>> evaluate("functional-drainage", {"together": "1", "emptied": "yes", "overflowed": "no", "law": "North Carolina"}).verdict.outcome
    'undecided'
    """  # fmt: skip
    bad = overflowed or not emptied
    words = f"{together} drained at once: {'all emptied' if emptied else 'not all emptied'}, "
    words += "and one rose or overflowed." if overflowed else "none overflowed."
    if time is not None:
        words += f" One took {say(time)}; no law found gives a time."
    verdict = None
    if law != "no law named":
        alone = together < NEEDED["Texas"] and not bad
        outcome: Literal["within", "beyond", "undecided"] = "beyond" if bad else "undecided" if alone else "within"
        told = {"undecided": "only one drained: another has to drain with it", "beyond": "to report",
                "within": "nothing to report of the drainage"}  # fmt: skip
        verdict = Verdict(outcome, told[outcome], NC_DEFINITIONS if law == "North Carolina" else _SOURCES[law])
    return Answer(
        words=words,
        verdict=verdict,
        also=(
            Also("functional", "emptied, and none overflowed", not bad),
            Also("asks", "what the law does", _WHAT[law]),
        ),
    )
