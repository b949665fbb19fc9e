"""Whether each length of gas pipe carries what hangs on it."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Annotated, Literal, NamedTuple

from witnessmark.gauges.answer import Also, Answer, Limit, Outside, Source, Step, Table, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.fuel.cautions import GAS, LICENSED, LOCAL, RELIGHT
from witnessmark.gauges.fuel.gas_flow import (
    INSIDE_DIAMETERS,
    NATURAL_GAS,
    PROPANE,
    Gas,
    high_pressure_cfh,
    low_pressure_cfh,
    spitzglass_cfh,
)  # fmt: skip
from witnessmark.gauges.fuel.gas_tables import TABLES, looked_up
from witnessmark.gauges.fuel.messages import DROP_ABOVE_SUPPLY, NEITHER_GIVEN
from witnessmark.gauges.fuel.sources import PIPE_EQUATIONS, PIPE_TABLES, SPITZGLASS
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.messages import MISSING_INPUT
from witnessmark.problems import Refusal
from witnessmark.units import Quantity, convert

__all__ = ["Segment", "gas_pipe_capacity"]

#: Supply in psi from which the equation for high pressure holds.
_HIGH = Decimal("1.5")
_LONGEST_SPITZGLASS = Decimal(1)
_SHARE = Decimal("0.015")
_GASES = {"natural gas": NATURAL_GAS, "propane": PROPANE}


@dataclass(frozen=True, slots=True)
class Segment:
    """One length of pipe between two branches, or from the last branch to an outlet."""

    demand: Annotated[
        Quantity,
        Asked(
            "gas that passes through it: all appliances beyond it together", "[cft_i]/h", lowest="0", highest="5000",
            least="0", how="from the rating plates by gas-demand", example="138 cfh",
        ),
    ]  # fmt: skip
    length: Annotated[
        Quantity,
        Asked(
            "pipe from the meter or regulator through it to the farthest outlet beyond it", "[ft_i]", lowest="1",
            highest="1000", least="0.1", most="10000",
            how="measured along the pipe; the longest of all rows is used for every row", example="60ft",
        ),
    ]  # fmt: skip
    size: Annotated[
        str | None,
        Asked(
            "nominal size, Schedule 40 metallic pipe", choices=tuple(INSIDE_DIAMETERS),
            how="from the marking, or by calliper: 1/2 in pipe is 0.84 in outside, 3/4 in 1.05, 1 in 1.315",
        ),
    ] = None  # fmt: skip
    inside_diameter: Annotated[
        Quantity | None,
        Asked(
            "inside diameter, for pipe or tube of another kind", "[in_i]", lowest="0.2", highest="6", least="0.05",
            most="30", how="from the maker's data; never the nominal size", example="0.824in",
        ),
    ] = None  # fmt: skip
    name: Annotated[str | None, Asked("what it is called")] = None


class _Way(NamedTuple):
    """How capacities are found for this supply and drop: by which rule, from which source."""

    rule: str
    source: Source
    gas: Gas
    supply_psi: Decimal
    drop_psi: Decimal
    drop_water: Decimal
    table: tuple[int, str] | None


def _psi(water: Decimal) -> Decimal:
    """Inches of water in psi, to a millionth, so that pounds as typed come back as they were."""
    return convert(Quantity(water, "[in_i'H2O]"), "[psi]").value.quantize(Decimal("0.000001"))


def _usual_drop(supply: Decimal) -> Decimal:
    """The pressure drop that goes with a supply, both in inches of water: as in the tables, else 0.5 in w.c."""
    psi = next((Decimal(drop) for pounds, drop in TABLES if _psi(supply) == pounds), None)
    return Decimal("0.5") if psi is None else convert(Quantity(psi, "[psi]"), "[in_i'H2O]").value


def _way(gas: Gas, supply: Decimal, drop: Decimal, method: str) -> _Way:
    at = _psi(supply), _psi(drop)
    table = next((key for key in TABLES if at == (Decimal(key[0]), Decimal(key[1]))), None)
    if method == "Spitzglass":
        return _Way("Spitzglass formula", SPITZGLASS, gas, *at, drop, None)
    if at[0] < _HIGH:
        return _Way("low-pressure equation", PIPE_EQUATIONS, gas, *at, drop, None)
    if table is not None and gas is NATURAL_GAS and method != "equation":
        return _Way("table", PIPE_TABLES, gas, *at, drop, table)
    return _Way("high-pressure equation", PIPE_EQUATIONS, gas, *at, drop, None)


class _Carried(NamedTuple):
    """What one segment carries: flows in cubic feet an hour, inside diameter in inches."""

    name: str
    size: str
    inside: Decimal
    capacity: Decimal
    demand: Decimal
    remark: str

    @property
    def margin(self) -> Decimal:
        """Capacity less demand."""
        return self.capacity - self.demand


def _carried(way: _Way, one: Segment, length: Decimal, at: int) -> _Carried:
    capacity, inside, remark = _capacity(way, one, length, f"segments[{at}]")
    return _Carried(one.name or f"segment {at}", one.size or "", inside, capacity, one.demand.value, remark)


def _capacity(way: _Way, one: Segment, length: Decimal, where: str) -> tuple[Decimal, Decimal, str]:
    """Capacity in cubic feet an hour, inside diameter in inches, and a remark."""
    if one.inside_diameter is None and one.size is None:
        raise Refusal(NEITHER_GIVEN.at(f"{where}.size", "the nominal size or the inside diameter"))
    inside = one.inside_diameter.value if one.inside_diameter is not None else Decimal(INSIDE_DIAMETERS[one.size or ""])
    if way.table is not None and one.inside_diameter is None:
        looked = looked_up(way.table, one.size or "", length)
        if looked is not None:
            return looked.capacity, inside, "table, carried on by square root" if looked.extended else "table"
    d, run = float(inside), float(length)
    if way.rule == "Spitzglass formula":
        return rounded(spitzglass_cfh(d, run, float(way.drop_water), way.gas)), inside, "Spitzglass"
    if way.rule == "low-pressure equation":
        return rounded(low_pressure_cfh(d, run, float(way.drop_water), way.gas)), inside, "equation"
    found = high_pressure_cfh(d, run, float(way.supply_psi), float(way.drop_psi), way.gas)
    return rounded(found), inside, "equation"


@gauge(
    name="gas-pipe-capacity",
    family="fuel",
    title="Whether gas pipe carries what hangs on it",
    unit="[cft_i]/h",
    gives="capacity less demand of the segment with the least to spare (negative: short)",
    sources=(PIPE_EQUATIONS, PIPE_TABLES),
    error="the equation lies within 1 % of the 2018 tables and 1.5 % of older ones; fittings are not counted one by one",
    never="that piping is tight, properly supported or bonded, or that an appliance burns as it should",
    cautions=(
        GAS, RELIGHT, LOCAL, LICENSED,
        "Longest-length method: the length to the farthest outlet is used for every segment, also for the near ones.",
        "Corrugated tubing has tables of its own by its maker; do not reckon it here.",
    ),
    example={
        "segments": "138 cfh, 60ft, 1, , trunk; 38 cfh, 60ft, 1/2, , water heater; 100 cfh, 30ft, 3/4, , furnace",
        "supply_pressure": "7 inwc",
    },
)  # fmt: skip
def gas_pipe_capacity(
    segments: Annotated[tuple[Segment, ...], Asked("the lengths of pipe", how="from the meter outward")],
    supply_pressure: Annotated[
        Quantity,
        Asked(
            "pressure supplied to the piping, above the atmosphere", "[in_i'H2O]", lowest="4", highest="140",
            least="0.5", most="2000",
            how="marked on the regulator or told by the supplier; an inspector does not open piping to measure it",
            example="7 inwc",
        ),
    ],
    pressure_drop: Annotated[
        Quantity | None,
        Asked(
            "pressure that the pipe may lose to the farthest outlet; left out: 0.5 in w.c., 1 psi of 2, 3.5 of 5",
            "[in_i'H2O]",
            lowest="0.1", highest="100", least="0.01", most="2000",
            how="0.5 in w.c. is usual at 7 in w.c. supplied, and 3 in at 8 in or more only where appliances allow it",
            example="0.5 inwc",
        ),
    ] = None,
    gas: Annotated[Literal["natural gas", "propane"], Asked("gas in the pipe")] = "natural gas",
    method: Annotated[
        Literal["code", "equation", "Spitzglass"],
        Asked("how capacity is found: the code's table where its equation departs from it, else its equation"),
    ] = "code",
) -> Answer:  # fmt: skip
    """Margin of each segment of gas pipe between what it carries and what hangs on it, by the longest-length method.

    Formula:
        below 1.5 psi:    D = Q^0.381 / (19.17 (dH/(Cr L))^0.206)                dH in w.c.
        1.5 psi and over: D = Q^0.381 / (18.93 [(P1^2 - P2^2) Y/(Cr L)]^0.206)   P in psia
        Q ft3/h, D inside diameter in, L ft; Cr 0.6094, Y 0.9992 natural gas; 1.2462, 0.9910 propane
        2 psi with 1 psi drop and 5 psi with 3.5 psi drop, natural gas: the printed tables, which run by the square
        root of length; the equation reads up to 13 % above them at 10 ft and below them beyond about 50 ft
        Spitzglass (below 1 psi): Q = 3550 [h d^5 / (S L (1 + 3.6/d + 0.03 d))]^0.5, 24 to 31 % below the equation

    Traps: nominal size is not inside diameter; one length for all segments; supply pressure is not pressure drop.

    >>> from witnessmark.units import parse_quantity as q
    >>> one = Segment(q("150 cfh"), q("20ft"), "1/2")
    >>> round(gas_pipe_capacity((one,), q("7 inwc")).value)
    -31
    """  # fmt: skip
    if not segments:
        raise Refusal(MISSING_INPUT.at("segments", "one segment at least, such as: 40 cfh, 60ft, 1/2"))
    drop = pressure_drop.value if pressure_drop is not None else _usual_drop(supply_pressure.value)
    if drop >= supply_pressure.value:
        detail = f"drop {drop:.2f} in w.c., supply {supply_pressure.value:.2f} in w.c."
        raise Refusal(DROP_ABOVE_SUPPLY.at("pressure_drop", detail))
    way = _way(_GASES[gas], supply_pressure.value, drop, method)
    longest = max(one.length.value for one in segments)
    found = [_carried(way, one, longest, at) for at, one in enumerate(segments, 1)]
    closest = min(found, key=lambda each: each.margin)
    off = rounded(float(closest.capacity * _SHARE))
    least = closest.margin
    remarks = {each.remark for each in found}
    short = [each for each in found if each.margin < 0]
    words = f"By the {way.rule}, {longest:,.0f} ft of pipe and {drop:,.2f} in w.c. of drop: "
    words += (
        f"{'; '.join(f'{each.name} carries {each.capacity:,.0f} of {each.demand:,.0f} cfh' for each in short)}."
        if short
        else f"every segment carries its demand; closest is {closest.name}, with {least:,.0f} cfh to spare."
    )
    if short and least > -off:
        words += " That is nearer than the equation is sure."
    held = Answer(value=least, unit="[cft_i]/h", uncertainty=Uncertainty("", off)).against(
        Limit(way.source, lowest=Quantity(Decimal(0), "[cft_i]/h"), words="Capacity against demand, closest segment")
    )
    return Answer(
        value=least,
        unit="[cft_i]/h",
        words=words,
        uncertainty=Uncertainty("1.5 % of capacity, the spread between printed tables and the equation", off),
        outside_range=_beyond(way, remarks, longest),
        verdict=held.verdict,
        sources=(way.source,),
        cautions=_notes(way, remarks),
        also=(
            Also("rule", "how capacity was found", way.rule),
            Also("longest", "length used for every segment", longest, "[ft_i]"),
            Also("closest", "segment with the least to spare", closest.name),
            Also("capacity", "capacity of that segment", closest.capacity, "[cft_i]/h"),
            Also("short", "how many segments are too small", Decimal(len(short)), "1"),
        ),
        steps=(
            Step("pressure supplied", rounded(float(supply_pressure.value)), "[in_i'H2O]"),
            Step("pressure the pipe may lose", rounded(float(drop)), "[in_i'H2O]"),
            Step("length to the farthest outlet", longest, "[ft_i]"),
        ),
        table=Table(
            (("segment", ""), ("size", ""), ("inside", "[in_i]"), ("carries", "[cft_i]/h"), ("demand", "[cft_i]/h"),
             ("margin", "[cft_i]/h"), ("found by", "")),
            tuple(
                (each.name, each.size, each.inside, each.capacity, each.demand, each.margin, each.remark) for each in found
            ),
        ),
    )  # fmt: skip


def _notes(way: _Way, remarks: set[str]) -> tuple[str, ...]:
    notes = []
    if way.rule == "Spitzglass formula":
        notes.append("Spitzglass is not the code's table: it reads 24 to 31 % low on small pipe.")
    if way.rule == "high-pressure equation":
        notes.append("Where the code prints a table for this supply and drop, the table counts.")
    if way.table is not None and "equation" in remarks:
        notes.append(
            "The printed table lacks a size given here; the equation, up to 13 % higher on short pipe, stood in."
        )
    if way.gas is PROPANE:
        notes.append("Propane capacities are often printed in thousands of Btu/h; these are cubic feet of gas.")
    return tuple(notes)


def _beyond(way: _Way, remarks: set[str], longest: Decimal) -> tuple[Outside, ...]:
    found = []
    if "table, carried on by square root" in remarks:
        found.append(Outside("length", Quantity(longest, "[ft_i]"), Decimal(10), Decimal(90), "rows read end at 90 ft"))
    if way.rule == "Spitzglass formula" and way.supply_psi >= _LONGEST_SPITZGLASS:
        found.append(
            Outside(
                "supply_pressure", Quantity(way.supply_psi, "[psi]"), None, Decimal(1), "the formula is for < 1 psi"
            )
        )
    return tuple(found)
