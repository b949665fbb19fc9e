"""How large a room fuel-burning appliances need to draw their air from indoors."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Limit, Step, Uncertainty
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.fuel.cautions import GAS, LICENSED, LOCAL, MONOXIDE, RELIGHT
from witnessmark.gauges.fuel.messages import NEITHER_GIVEN, NO_INFILTRATION, STANDARD_METHOD_BARRED
from witnessmark.gauges.fuel.sources import VOLUME
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.messages import MISSING_INPUT
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["Burner", "combustion_air_indoors", "infiltration_volume", "standard_volume"]

#: Above this rate the equations take this rate; below the other, known, the standard method is barred.
MOST_AIR_CHANGES = Decimal("0.60")
LEAST_FOR_STANDARD = Decimal("0.40")


@dataclass(frozen=True, slots=True)
class Burner:
    """One fuel-burning appliance in the room or the rooms open to it."""

    input: Annotated[
        Quantity,
        Asked(
            "input rating", "[Btu_IT]/h", lowest="0", highest="400000", least="0",
            how="from the rating plate: input, not output", example="40000 Btu/h",
        ),
    ]  # fmt: skip
    kind: Annotated[
        Literal["draft hood", "other", "fan-assisted", "direct vent"],
        Asked("how it takes air and vents", how="from the plate and the vent; a direct-vent appliance has its own air"),
    ]
    name: Annotated[str | None, Asked("what it is called")] = None


def standard_volume(btu_per_hour: Decimal) -> Decimal:
    """Room volume in cubic feet for an input in Btu/h by the standard method: 50 cubic feet per 1000 Btu/h.

    International Fuel Gas Code 304.5.1; NFPA 54 9.3.2.1.

    >>> standard_volume(Decimal(50000))
    Decimal('2500')
    """
    return 50 * btu_per_hour / 1000


def infiltration_volume(other: Decimal, fan_assisted: Decimal, air_changes: Decimal) -> Decimal:
    """Room volume in cubic feet by the known-air-infiltration-rate method; inputs in Btu/h, air changes per hour > 0.

    International Fuel Gas Code 304.5.2; NFPA 54 9.3.2.2: a rate above 0.60 is not used, 0.60 stands in for it.

    >>> infiltration_volume(Decimal(40000), Decimal(0), Decimal("0.40"))
    Decimal('2100')
    """
    used = min(air_changes, MOST_AIR_CHANGES)
    return Decimal(format((21 * other / 1000 + 15 * fan_assisted / 1000) / used, "f"))


def _sum(appliances: tuple[Burner, ...], *kinds: str) -> Decimal:
    return sum((one.input.value for one in appliances if one.kind in kinds), Decimal(0))


@gauge(
    name="combustion-air-indoors",
    family="fuel",
    title="Room volume that appliances need to take their air from indoors",
    unit="[cft_i]",
    gives="least volume of the room and the rooms that stand open to it",
    sources=(VOLUME,),
    error="none in the rule; the air changes of a house are seldom known better than to a third",
    never="that an appliance burns or vents well: only a combustion test shows that",
    cautions=(GAS, MONOXIDE, RELIGHT, LOCAL, LICENSED),
    example={"appliances": "40000 Btu/h, draft hood; 80000 Btu/h, fan-assisted", "volume": "6400 cu ft"},
)
def combustion_air_indoors(
    appliances: Annotated[
        tuple[Burner, ...],
        Asked("appliances that take air from this room", how="all of them, those in rooms open to it as well"),
    ],
    volume: Annotated[
        Quantity | None,
        Asked(
            "volume of the room and the rooms open to it",
            "[cft_i]",
            lowest="0",
            highest="100000",
            least="0",
            how="length by width by height; rooms behind doors count only through openings of the proper size",
            example="960 cu ft",
        ),
    ] = None,
    air_changes: Annotated[
        Quantity | None,
        Asked(
            "air changes of the house an hour by leakage, where known",
            "/h",
            lowest="0.10",
            highest="5",
            least="0",
            how="from a blower door report, as a natural rate (not the rate at 50 Pa)",
            example="0.35 ach",
        ),
    ] = None,
    method: Annotated[
        Literal["standard", "known infiltration"] | None,
        Asked("method of the fuel gas code; left out: known infiltration where air changes are given"),
    ] = None,
) -> Answer:
    """Least room volume for air from indoors, by either method of the fuel gas code.

    Rule:
        standard: 50 ft3 per 1000 Btu/h; not where the air changes are known to be below 0.40 an hour
        known infiltration: 21/ACH x (other input/1000) + 15/ACH x (fan-assisted input/1000), ACH at most 0.60
        direct-vent appliances are not counted

    Traps: the constant 15 is for fan-assisted appliances alone; a rate above 0.60 enters as 0.60.

    >>> from witnessmark.units import parse_quantity as q
    >>> combustion_air_indoors((Burner(q("50000 Btu/h"), "draft hood"),)).value
    Decimal('2500')
    """  # fmt: skip
    if not appliances:
        raise Refusal(MISSING_INPUT.at("appliances", "one appliance at least, such as: 40000 Btu/h, draft hood"))
    used = method or ("standard" if air_changes is None else "known infiltration")
    other, fan = _sum(appliances, "draft hood", "other"), _sum(appliances, "fan-assisted")
    steps = [
        Step("input of appliances other than fan-assisted", other, "[Btu_IT]/h"),
        Step("input of fan-assisted appliances", fan, "[Btu_IT]/h"),
    ]
    notes = []
    if used == "standard":
        if air_changes is not None and air_changes.value < LEAST_FOR_STANDARD:
            raise Refusal(STANDARD_METHOD_BARRED.at("method", f"{air_changes.value} air changes an hour"))
        needed = standard_volume(other + fan)
        steps.append(Step("50 cubic feet for each 1000 Btu/h", needed, "[cft_i]"))
        if air_changes is None:
            notes.append("The standard method holds only where the house is not known to be below 0.40 air changes.")
    else:
        if air_changes is None:
            raise Refusal(NEITHER_GIVEN.at("air_changes", "the known infiltration method needs it"))
        if air_changes.value == 0:
            raise Refusal(NO_INFILTRATION.at("air_changes"))
        rate = min(air_changes.value, MOST_AIR_CHANGES)
        if rate < air_changes.value:
            notes.append("The method takes no more than 0.60 air changes an hour; 0.60 was used.")
        needed = infiltration_volume(other, fan, air_changes.value)
        steps += [
            Step("air changes used", rate, "/h"),
            Step(
                "21/ACH for each 1000 Btu/h not fan-assisted", infiltration_volume(other, Decimal(0), rate), "[cft_i]"
            ),
            Step("15/ACH for each 1000 Btu/h fan-assisted", infiltration_volume(Decimal(0), fan, rate), "[cft_i]"),
        ]
    direct = _sum(appliances, "direct vent")
    if direct:
        notes.append("Direct-vent appliances have air of their own and were not counted.")
    also = [Also("counted", "input counted", other + fan, "[Btu_IT]/h"), Also("method", "method used", used)]
    words = f"By the {used} method this room needs {needed:,.0f} cubic feet."
    answer = Answer(
        value=needed,
        unit="[cft_i]",
        words=words,
        uncertainty=Uncertainty("the rule is exact; a room is measured to about 2 %"),
        cautions=tuple(notes),
        steps=tuple(steps),
        also=tuple(also),
    )
    if volume is None:
        return answer
    return _held(answer, needed, volume.value)


def _held(answer: Answer, needed: Decimal, volume: Decimal) -> Answer:
    short = needed - volume
    told = (
        f" It has {volume:,.0f}: {short:,.0f} short. Air must come from further rooms or from outdoors."
        if short > 0
        else f" It has {volume:,.0f}."
    )
    room = Answer(value=volume, unit="[cft_i]").against(
        Limit(VOLUME, lowest=Quantity(needed, "[cft_i]"), words="Room volume against the method's least volume")
    )
    return Answer(
        value=needed,
        unit="[cft_i]",
        words=answer.words + told,
        uncertainty=answer.uncertainty,
        verdict=room.verdict,
        cautions=answer.cautions,
        steps=answer.steps,
        also=(*answer.also, Also("margin", "room volume beyond the need (negative: short)", -short, "[cft_i]")),
    )
