"""How fast a Class A ground-fault circuit interrupter must open at a given current, and what a test shows."""

from __future__ import annotations

import math
from dataclasses import dataclass
from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Source, Step, Verdict, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.electrical.messages import FACTS_CONTRADICT
from witnessmark.gauges.gauge import gauge
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["gfci_trip", "longest_trip_seconds"]

UL943 = Source("UL 943, ground-fault circuit interrupters", "2006", "Class A trip limits", "seen in a copy")
MUST_NOT, MUST = Decimal(4), Decimal(6)
FORMULA_ENDS = Decimal(264)
FLOOR = Decimal("0.025")


def longest_trip_seconds(milliamperes: float) -> float:
    """The longest time in s in which a Class A device may open at a ground fault of 6 mA and more.

    T = (20 / I)^1.43 for 6 to 264 mA, and 25 ms above. Below 6 mA there is no time limit (ValueError).

    >>> longest_trip_seconds(20), round(longest_trip_seconds(6), 3)
    (1.0, 5.594)
    """
    if milliamperes < MUST:
        raise ValueError(milliamperes)
    return max(math.pow(20 / milliamperes, 1.43), float(FLOOR))


@gauge(
    name="gfci-trip",
    family="electrical",
    title="Trip time of a Class A GFCI, and what a test shows",
    unit="s",
    gives="the longest time in which the device may open at this current; no number below 6 mA",
    sources=(UL943,),
    error="test currents of plug-in testers follow the line voltage and are often off by 10 % or more",
    never="that a device will protect someone, or that it has failed on a current below 6 mA",
    cautions=(
        "Tripping a device cuts off all that hangs on it: ask first, and put back what was on.",
        "Never make a test with a bare conductor or with a load to ground of your own making.",
    ),
    example={"current": "6.5mA", "time": "40ms", "tripped": "yes", "equipment_ground": "yes"},
)
def gfci_trip(
    current: Annotated[
        Quantity,
        Asked(
            "current to ground in the test, or at which a rising test opened the device",
            "mA",
            least="0",
            most="200000",
            how="as the instrument shows it; a plug-in tester draws its marked current only at its marked voltage",
            example="6.5mA",
        ),
    ],
    *,
    tripped: Annotated[bool | None, Asked("whether the device opened", example="yes")] = None,
    time: Annotated[
        Quantity | None,
        Asked(
            "time until it opened, or for which the current stood without opening it",
            "s",
            least="0",
            most="3600",
            how="as the instrument shows it",
            example="40ms",
        ),
    ] = None,
    rising: Annotated[bool, Asked("whether the current was raised slowly until the device opened")] = False,
    by: Annotated[
        Literal["instrument", "plug-in tester", "own test button"], Asked("what the test was made with")
    ] = "instrument",
    equipment_ground: Annotated[
        Literal["yes", "no", "not known"],
        Asked(
            "whether the receptacle has an equipment ground",
            how="two-wire cable, or a tester that shows open ground: no",
        ),
    ] = "not known",
) -> Answer:
    """How long a Class A device may take at a current, and what a test at that current shows.

    Formula:
        must not trip below 4 mA; may or may not from 4 to 6 mA; from 6 mA on it must, within
        T = (20 / I)^1.43        with T in seconds and I in mA, for 6 to 264 mA; 25 ms above 264 mA

    Traps: 25 ms holds only from 264 mA on, at 6 mA the limit is 5.6 s; a device that does not trip at 5 mA has not
    failed; a plug-in tester drives its current into the equipment ground, and without one it proves nothing.

    >>> from witnessmark.units import parse_quantity as q
    >>> gfci_trip(q("20mA")).value
    Decimal('1')
    """
    if tripped is None and rising:
        raise Refusal(FACTS_CONTRADICT.at("rising", "a rising test ends when the device opens: give tripped"))
    amount = current.value
    limit = rounded(longest_trip_seconds(float(amount))) if amount >= MUST else None
    if limit is not None:
        must, rule = "must trip", f"must open within {_spoken(limit)}; sooner is as good."
    elif amount < MUST_NOT:
        must, rule = "must not trip", "must not trip: its band begins at 4 mA."
    else:
        must, rule = "may or may not", "may trip or not: it must from 6 mA on."
    words = f"At {amount.normalize():f} mA a Class A device {rule}"
    seconds = None if time is None else time.value
    verdict = None if tripped is None else _shown(_Test(amount, limit, tripped, seconds, rising, by, equipment_ground))
    formula = limit is not None and amount <= FORMULA_ENDS
    return Answer(
        value=limit,
        unit="" if limit is None else "s",
        words=words if verdict is None else f"{words} {verdict.words}",
        also=(Also("must", "what the device does at this current", must),),
        verdict=verdict,
        cautions=_cautions(amount, by, equipment_ground),
        steps=(Step(f"(20 / {amount.normalize():f})^1.43", limit, "s"),) if formula and limit is not None else (),
    )


@dataclass(frozen=True, slots=True)
class _Test:
    """One test as it was made."""

    amount: Decimal
    limit: Decimal | None
    tripped: bool
    seconds: Decimal | None
    rising: bool
    by: str
    ground: str


def _cautions(amount: Decimal, by: str, ground: str) -> tuple[str, ...]:
    said = []
    if by == "plug-in tester" and ground != "yes":
        said.append(
            "A plug-in tester needs an equipment ground to trip a GFCI. Without one only the device's own test button "
            "is evidence."
        )
    if by == "own test button":
        said.append("The test button shows that the device opens, not the current or the time in which it does.")
    if amount > FORMULA_ENDS:
        said.append("Above 264 mA the formula ends; the limit stays at 25 ms.")
    return tuple(said)


def _spoken(seconds: Decimal) -> str:
    return f"{seconds:.2f} s" if seconds >= 1 else f"{seconds * 1000:.0f} ms"


def _shown(test: _Test) -> Verdict:
    """What the outcome of a test shows, and what it does not."""
    outcome, words = _outcome(test)
    return Verdict(outcome, words, UL943)


def _outcome(test: _Test) -> tuple[Literal["within", "beyond", "undecided"], str]:
    if test.by == "own test button":
        if test.tripped:
            return "undecided", "It opened at its own button; current and time were not measured."
        return "beyond", "It did not open at its own test button."
    if not test.tripped and test.by == "plug-in tester" and test.ground != "yes":
        return "undecided", "That it stayed closed proves nothing here: the tester needs an equipment ground."
    if test.amount < MUST_NOT:
        return (
            ("beyond", "It tripped where it must not.") if test.tripped else ("within", "It stayed closed, as it must.")
        )
    if test.rising and test.tripped:
        if test.amount <= MUST:
            return "within", "It opened inside the band of 4 to 6 mA."
        return "beyond", "It should have opened by 6 mA."
    if test.limit is None:
        return "undecided", "Either outcome is allowed at this current; it says nothing against the device."
    if test.tripped and test.seconds is None:
        return "undecided", "It opened; the time was not measured."
    if test.seconds is None or (not test.tripped and test.seconds < test.limit):
        return (
            "undecided",
            f"It stayed closed; only a current that stands {_spoken(test.limit)} or longer shows a failure.",
        )
    if not test.tripped:
        return "beyond", "It did not open within that time."
    if test.seconds <= test.limit:
        return "within", "It opened in that time."
    return "beyond", "It opened after that time."
