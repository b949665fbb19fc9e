"""What a house draws, load by load: the rows that the dwelling calculations take, and the lighting that they share."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.asked import Asked
from witnessmark.gauges.electrical.calculating.messages import LOAD_WITHOUT_RATING
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = [
    "AREA", "COOKING", "FASTENED", "HEATING", "LAUNDRY", "LINE_TO_LINE", "LOADS", "MOTORS", "SERVICE", "SMALL_APPLIANCE",
    "Load", "demand_of_lighting", "lighting", "of_kind", "stands_between_lines", "volt_amperes", "volts",
]  # fmt: skip

Kind = Literal[
    "range", "oven", "cooktop", "dryer", "water heater", "appliance", "motor appliance", "motor", "cooling", "heat pump",
    "backup heat", "central heat", "room heat", "storage heat", "vehicle charger", "other",
]  # fmt: skip
COOKING = frozenset({"range", "oven", "cooktop"})
#: Fastened in place, counted for the 75 % of four or more (220.53).
FASTENED = frozenset({"water heater", "appliance", "motor appliance"})
HEATING = frozenset({"heat pump", "backup heat", "central heat", "room heat", "storage heat"})
MOTORS = frozenset({"motor", "motor appliance", "cooling", "heat pump"})
_AT_120 = frozenset({"appliance", "motor appliance", "other"})
LINE_TO_LINE = Decimal(240)
_HIGH_VOLTAGE = 200


@dataclass(frozen=True, slots=True)
class Load:
    """One load: what it is, its power or its current with voltage, how many alike, which leg, whether it is to come."""

    name: Annotated[str, Asked("what it is, in your words", example="range")]
    kind: Annotated[Kind, Asked("how the calculation treats it; cooling and heat are held against each other")]
    power: Annotated[
        Quantity | None,
        Asked(
            "rated power",
            "V.A",
            lowest="0",
            highest="50000",
            least="0",
            most="1000000",
            how="from its plate (W and VA are taken as equal, as the code's examples do)",
            example="12kW",
        ),
    ] = None
    current: Annotated[
        Quantity | None,
        Asked(
            "rated current",
            "A",
            lowest="0",
            highest="200",
            least="0",
            most="2000",
            how="from its plate; where power is given as well, the larger result counts",
            example="12A",
        ),
    ] = None
    voltage: Annotated[
        Quantity | None,
        Asked(
            "rated voltage; without it 240 V, or 120 V for appliance, motor appliance and other",
            "V",
            lowest="100",
            highest="250",
            least="1",
            most="1000",
            how="from its plate",
            example="240V",
        ),
    ] = None
    count: Annotated[int, Asked("how many alike", lowest="1", highest="6", least="1", most="100", example="1")] = 1
    leg: Annotated[
        Literal["A", "B", "both"] | None,
        Asked("line on which it stands; left out, it is taken as spread evenly over both"),
    ] = None
    new: Annotated[bool, Asked("whether it is to be added to the house", example="no")] = False


AREA = Asked(
    "floor area from outside dimensions, without open porches, garage and unfinished space not adaptable for use",
    "[sft_i]",
    lowest="100",
    highest="10000",
    least="0",
    most="200000",
    how="from a plan or measured outside",
    example="1500sq ft",
)
SMALL_APPLIANCE = Asked(
    "number of small-appliance circuits, two at least", lowest="2", highest="8", least="2", most="40"
)
LAUNDRY = Asked("number of laundry circuits", lowest="0", highest="4", least="0", most="20")
LOADS = Asked("the loads of the house, one a row: name, kind, power or current, voltage, count, leg, new")
SERVICE = Asked(
    "rating of the service, to hold the calculated load against",
    "A",
    lowest="30",
    highest="400",
    least="1",
    most="4000",
    how="the lowest of the main breaker's handle, the service equipment's label and the conductors",
    example="100A",
)


def volts(load: Load) -> Decimal:
    """Voltage in V of a load as its plate gives it, or the usual one of its kind.

    >>> volts(Load("disposer", "motor appliance"))
    Decimal('120')
    """
    return load.voltage.value if load.voltage is not None else Decimal(120 if load.kind in _AT_120 else 240)


def volt_amperes(load: Load) -> Decimal:
    """Load in VA of all of them together: the larger of its power and its current times its voltage.

    Refuses (WM058) a load with neither.

    >>> volt_amperes(Load("cooler", "cooling", current=Quantity(Decimal(7), "A"), count=6))
    Decimal('10080')
    """
    if load.power is None and load.current is None:
        raise Refusal(LOAD_WITHOUT_RATING.at(repr(load.name), load.kind))
    power = Decimal(0) if load.power is None else load.power.value
    drawn = Decimal(0) if load.current is None else load.current.value * volts(load)
    return max(power, drawn) * load.count


def of_kind(loads: Iterable[Load], kinds: Iterable[str], measure: Callable[[Load], Decimal] = volt_amperes) -> Decimal:
    """Sum in VA of the loads of some kinds; *measure* says what each counts with.

    >>> of_kind((Load("dryer", "dryer", power=Quantity(Decimal(5500), "V.A")),), ("dryer",))
    Decimal('5500')
    """
    wanted = frozenset(kinds)
    return sum((measure(load) for load in loads if load.kind in wanted), Decimal(0))


def lighting(area: Decimal, small_appliance: int, laundry: int) -> Decimal:
    """General lighting with small-appliance and laundry circuits in VA: 3 VA per square foot and 1500 VA a circuit.

    *area* in square feet. NEC 220.12 and 220.52; in 2023 220.41.

    >>> lighting(Decimal(1500), 2, 1)
    Decimal('9000')
    """
    return 3 * area + 1500 * (Decimal(small_appliance) + laundry)


def demand_of_lighting(total: Decimal) -> Decimal:
    """What of the lighting load counts, in VA: 3000 in full, 35 % to 120,000, 25 % beyond. NEC Table 220.42 (2023: .45).

    >>> demand_of_lighting(Decimal(9000))
    Decimal('5100.00')
    """
    middle = min(max(total - 3000, Decimal(0)), Decimal(117_000))
    rest = max(total - 120_000, Decimal(0))
    return min(total, Decimal(3000)) + middle * Decimal("0.35") + rest * Decimal("0.25")


def stands_between_lines(load: Load) -> bool:
    """Whether a load stands between the two lines and not between line and neutral.

    >>> stands_between_lines(Load("dryer", "dryer"))
    True
    """
    return volts(load) >= _HIGH_VOLTAGE
