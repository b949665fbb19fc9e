"""Whether a stair needs a handrail, and whether the one there can be grasped where the hand looks for it."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Answer
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.building.asking import inches
from witnessmark.gauges.building.checks import Check, Rule, by_rule, held_against
from witnessmark.gauges.building.editions import IRC, Built, Edition, held_to, irc
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["handrail", "handrail_from"]

_FOUR_SINCE = 2003
_FOUR, _TWO = 4, 2
_LOW, _HIGH = Decimal(34), Decimal(38)
_ROUND_LEAST, _ROUND_MOST = Decimal("1.25"), Decimal(2)
_AROUND_LEAST, _AROUND_MOST, _ACROSS = Decimal(4), Decimal("6.25"), Decimal("2.25")
_CLEAR, _OUT = Decimal("1.5"), Decimal("4.5")
_IN = "[in_i]"


def handrail_from(edition: int) -> int:
    """From how many risers an IRC edition asks for a handrail: two in 2000, four from 2003 on.

    >>> handrail_from(2000), handrail_from(2018)
    (2, 4)
    """
    return _FOUR if edition >= _FOUR_SINCE else _TWO


@gauge(
    name="handrail",
    family="building",
    title="Handrail: needed, height, grip and clearance",
    unit="[in_i]",
    gives="lowest height measured, where one was; else nothing",
    sources=(
        irc("R311.7.8 (34 to 38 in)", "seen in a copy"),
        irc("R315.1 (two or more risers)", "seen in a copy", "2000"),
        irc("R311.7.8 (four or more risers, grip, clearance)", "memory"),
    ),
    error="a tape reads to 1/16 in; the nosing line is laid by eye",
    never="that the rail is fastened well enough to catch a fall",
    cautions=("Pull on the rail only by hand and with care; a loose rail is a finding by itself.",),
    example={"risers": "8", "heights": "34 1/2 in, 35 in", "grip": "round", "across": "1 1/2 in", "edition": "2018"},
)
def handrail(
    risers: Annotated[int, Asked("number of risers of the flight", lowest="1", highest="30", least="1", example="8")],
    heights: Annotated[
        tuple[Quantity, ...],
        inches("height of the rail above the nosing line, at the bottom, middle and top", example="34 1/2 in, 35 in"),
    ] = (),
    grip: Annotated[
        Literal["round", "other shape", "none"], Asked("shape of the rail; none: there is no rail", example="round")
    ] = "round",
    across: Annotated[
        Quantity | None,
        inches("diameter of a round rail, or widest measure across another", most="24", example="1 1/2 in"),
    ] = None,
    around: Annotated[
        Quantity | None,
        inches("perimeter of a rail that is not round", most="60", how="a paper strip once around", example="5 in"),
    ] = None,
    *,
    clearance: Annotated[Quantity | None, inches("space between rail and wall", most="24", example="1 1/2 in")] = None,
    projection: Annotated[
        Quantity | None, inches("how far the rail stands out into the stair", most="24", example="3 1/2 in")
    ] = None,
    edition: Edition = None,
    built: Built = None,
) -> Answer:
    """Whether a handrail is needed by an edition, and whether its height, grip, clearance and projection keep the limits.

    Rule:
        needed from four risers (IRC 2000: from two); 34 to 38 in above the nosing line; round grip 1 1/4 to 2 in across,
        other shapes 4 to 6 1/4 in around and at most 2 1/4 in across; at least 1 1/2 in from the wall; at most 4 1/2 in
        into the stair

    >>> from witnessmark.units import parse_quantity as q
    >>> handrail(4, grip="none", edition=2018)["required"], handrail(3, grip="none", edition=2018)["required"]
    (True, False)
    """
    held = held_to(edition, built)
    needed = by_rule(
        held,
        Rule("a handrail", "R311.7.8", lambda one: risers >= handrail_from(one), "memory", f"{risers} riser{'s' * (risers > 1)}"),
    )  # fmt: skip
    rail = grip != "none"
    measured = [one.value for one in heights] if rail else []

    def checks(_: int) -> tuple[Check, ...]:
        found = []
        if measured:
            height = "R311.7.8.1"
            found.append(
                Check(
                    "lowest",
                    "lowest height of the rail",
                    min(measured),
                    _IN,
                    height,
                    lowest=_LOW,
                    basis="seen in a copy",
                )
            )
            found.append(
                Check(
                    "highest",
                    "highest height of the rail",
                    max(measured),
                    _IN,
                    height,
                    highest=_HIGH,
                    basis="seen in a copy",
                )
            )
        if across is not None and rail:
            least, most = (_ROUND_LEAST, _ROUND_MOST) if grip == "round" else (None, _ACROSS)
            found.append(Check("across", "rail across", across.value, _IN, "R311.7.8.5", lowest=least, highest=most))
        if around is not None and grip == "other shape":
            found.append(
                Check(
                    "around", "rail around", around.value, _IN, "R311.7.8.5", lowest=_AROUND_LEAST, highest=_AROUND_MOST
                )
            )
        if clearance is not None and rail:
            found.append(Check("clearance", "rail to wall", clearance.value, _IN, "R311.7.8.2", lowest=_CLEAR))
        if projection is not None and rail:
            found.append(
                Check(
                    "projection",
                    "rail into the stair",
                    projection.value,
                    _IN,
                    "R311.7.1",
                    highest=_OUT,
                    basis="seen in a copy",
                )
            )
        return tuple(found)

    if not checks(IRC[-1]):
        missing = " There is none." if not rail else ""
        return Answer(words=needed.words + missing, sources=needed.sources, cautions=needed.cautions, also=needed.also)
    answer = held_against(held, checks, value=min(measured) if measured else None)
    told = {one.name for one in needed.also}
    return Answer(
        value=answer.value,
        words=f"{needed.words} {answer.words}",
        verdict=answer.verdict,
        sources=(*needed.sources, *answer.sources),
        cautions=answer.cautions,
        also=(*needed.also, *(one for one in answer.also if one.name not in told)),
        table=answer.table,
    )
