"""What the lamps of a three-lamp receptacle tester say, and every wiring fault that lights the same lamps."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Source, Table
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.electrical.messages import READING_INCOMPLETE
from witnessmark.gauges.electrical.protection.wiring_states import (
    DARK_BELOW,
    LIT_ABOVE,
    PRINTED,
    Pattern,
    WiringState,
    states_for,
)
from witnessmark.gauges.gauge import gauge
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["receptacle_tester"]

CHART = Source("chart printed on three-lamp receptacle testers", "", "lamp patterns", "seen in a copy")
MODEL = Source("three voltage comparisons between the slots", "", "model of the tester", "calculated")
#: Wirings to be suspected before others that light the same lamps.
_FIRST = ("neutral open, with", "neutral of a multiwire")
_HOW = (
    "named by the two slots that it compares; on most testers this order is not the order of the lamps: see the chart"
)


def _volts(what: str) -> Asked:
    return Asked(f"voltage from {what}", "V", lowest="0", highest="260", least="0", most="1000",
                 how="with a meter, probes in the slots; high-impedance meters show ghost voltages on an open wire",
                 example="120V")  # fmt: skip


@gauge(
    name="receptacle-tester",
    family="electrical",
    title="Lamps of a receptacle tester, and all that they can mean",
    gives="what the tester's chart prints, and every wiring state that gives the same lamps",
    sources=(CHART, MODEL),
    error="a lamp lights above 40 to 90 V, by tester; a load plugged in on the same circuit can change the pattern",
    never="that a receptacle is grounded or rightly wired: 'correct' means no fault that this method can see",
    cautions=(
        "Take every slot as energised, whatever the lamps show.",
        "Do not open the box: a licensed electrician tells these apart, by loop impedance or neutral to ground under load.",
    ),
    example={"neutral_ground": "no", "hot_neutral": "yes", "hot_ground": "yes"},
)
def receptacle_tester(
    *,
    neutral_ground: Annotated[bool | None, Asked("whether the lamp from neutral to ground is lit", how=_HOW)] = None,
    hot_neutral: Annotated[bool | None, Asked("whether the lamp from hot to neutral is lit", how=_HOW)] = None,
    hot_ground: Annotated[bool | None, Asked("whether the lamp from hot to ground is lit", how=_HOW)] = None,
    volts_neutral_ground: Annotated[Quantity | None, _volts("the neutral to the ground slot")] = None,
    volts_hot_neutral: Annotated[Quantity | None, _volts("the hot to the neutral slot")] = None,
    volts_hot_ground: Annotated[Quantity | None, _volts("the hot to the ground slot")] = None,
) -> Answer:
    """What a three-lamp tester's pattern means by its chart, and all wiring states that light the same lamps.

    Rule:
        Each lamp compares two slots and lights above some 40 to 90 V between them: neutral to ground, hot to neutral,
        hot to ground. A slot that floats lights none of its lamps. Every known wiring state is put through this, and
        those that give the pattern are named.

    Traps: a false ground, swapped neutral and ground, and reversed polarity with a false ground all print "correct";
    "hot and ground reversed" is nearly always an open neutral with a load on.

    >>> answer = receptacle_tester(neutral_ground=True, hot_neutral=False, hot_ground=True)
    >>> answer["printed"], answer["first_suspect"]
    ('hot and ground reversed', 'neutral open, with a load on further along')
    """
    lamps = (neutral_ground, hot_neutral, hot_ground)
    volts = tuple(
        None if one is None else float(one.value) for one in (volts_neutral_ground, volts_hot_neutral, volts_hot_ground)
    )
    measured = [one for one in volts if one is not None]
    seen = [one for one in lamps if one is not None]
    if len(measured) == len(volts):
        patterns, cautions = _patterns(measured), _doubts(measured)
    elif len(seen) == len(lamps):
        patterns, cautions = [(seen[0], seen[1], seen[2])], []
    else:
        raise Refusal(READING_INCOMPLETE.at("receptacle-tester", f"{len(seen)} lamps and {len(measured)} voltages"))
    cautions += _disagreements(lamps, volts)
    states = list(dict.fromkeys(one for pattern in patterns for one in states_for(pattern)))
    fitting = [one for one in states if one.fits(*volts)]
    return _told(patterns, fitting or states, cautions)


def _disagreements(lamps: tuple[bool | None, ...], volts: tuple[float | None, ...]) -> list[str]:
    """Lamps that show another thing than the voltage between the same two slots."""
    found = []
    for name, lit, measured in zip(("neutral to ground", "hot to neutral", "hot to ground"), lamps, volts, strict=True):
        if lit is not None and measured is not None and measured < DARK_BELOW and lit:
            found.append(f"The lamp {name} is lit at {measured:g} V: lamp and meter disagree, look again.")
        if lit is not None and measured is not None and measured > LIT_ABOVE and not lit:
            found.append(f"The lamp {name} is dark at {measured:g} V: lamp and meter disagree, look again.")
    return found


def _patterns(volts: list[float]) -> list[Pattern]:
    """The patterns that testers of low and of high threshold would show at these voltages."""
    low: Pattern = (volts[0] > DARK_BELOW, volts[1] > DARK_BELOW, volts[2] > DARK_BELOW)
    high: Pattern = (volts[0] > LIT_ABOVE, volts[1] > LIT_ABOVE, volts[2] > LIT_ABOVE)
    return [low] if low == high else [high, low]


def _doubts(volts: list[float]) -> list[str]:
    """What the three voltages say of themselves: the largest cannot exceed the other two together."""
    small, middle, large = sorted(volts)
    if large > (small + middle) * 1.05 + 5:
        return ["These voltages do not add up between three slots: one slot floats, or a reading is a ghost voltage."]
    return []


def _told(patterns: list[Pattern], states: list[WiringState], cautions: list[str]) -> Answer:
    # A reversed hot and ground is all but unknown in the field; an open neutral with a load on lights the same lamps.
    first = next((one for one in states if one.words.startswith(_FIRST)), states[0])
    states.sort(key=lambda one: one is not first)
    printed = " or ".join(PRINTED[one] for one in patterns)
    grounded = {one.real_ground for one in states}
    words = [f"The chart prints: {printed}."]
    sound = patterns[0] == (False, True, True)
    if sound:
        words.append("That is only: no fault that this method can see. These light the same lamps:")
        words.append("; ".join(one.words for one in states if one is not first) + ".")
    elif patterns[0] == (True, True, True):
        words.append(
            "Suspect an open or loose neutral, or voltage fed back through electronics: "
            + "; ".join(one.words for one in states)
            + "."
        )
    elif len(states) == 1:
        words.append(f"The wiring state that lights these lamps is: {first.words}.")
    else:
        words.append("It can be any of: " + "; ".join(one.words for one in states) + ".")
    cautions = [*cautions, *dict.fromkeys(f"It may be that {one.energised}." for one in states if one.energised)]
    if len(patterns) > 1:
        cautions.insert(0, "A voltage between 40 and 90 V lights the lamp of one tester and not of another.")
    return Answer(
        words=" ".join(words),
        cautions=tuple(cautions),
        also=(
            Also("printed", "what the tester's chart prints", printed),
            Also(
                "first_suspect", "what to suspect first", "no fault that this method can see" if sound else first.words
            ),
            Also("can_be", "how many wiring states light these lamps", Decimal(len(states))),
            Also("shows_ground", "whether the lamps can prove an equipment ground", value=False),
            Also("ground_possible", "whether a real equipment ground may be there", value=True in grounded),
        ),
        table=Table(
            (("wiring", ""), ("hot", "V"), ("neutral", "V"), ("ground", "V"), ("real ground", "")),
            tuple(
                (
                    one.words,
                    *("open" if volts is None else Decimal(int(volts)) for volts in (one.hot, one.neutral, one.ground)),
                    "yes" if one.real_ground else "no",
                )
                for one in states
            ),
        ),
    )
