"""What carbon monoxide in an appliance's flue gas means, limit by limit."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Source, Table
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.fuel.cautions import GAS, LICENSED, MONOXIDE, RELIGHT
from witnessmark.gauges.fuel.sources import (
    FIELD_BANDS,
    FURNACE_PRACTICE,
    FURNACE_STANDARD,
    HEATER_STANDARD,
    RANGE_STANDARD,
    TRADE_SCALE,
)  # fmt: skip
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["FLUE_LIMITS", "carbon_monoxide_in_flue"]

#: Name, appliances, whether the limit is for an air-free figure, most ppm, what is said beyond it, source.
FLUE_LIMITS: tuple[tuple[str, tuple[str, ...], bool, int, str, Source], ...] = (
    ("furnace_standard", ("furnace",), True, 400, "beyond the product standard", FURNACE_STANDARD),
    ("furnace_practice", ("furnace", "boiler"), True, 100, "more than a well-adjusted burner makes", FURNACE_PRACTICE),
    ("field_water_heater", ("water heater",), True, 200, "beyond the field limit", FIELD_BANDS),
    ("field_furnace", ("furnace", "boiler"), True, 400, "beyond the field limit", FIELD_BANDS),
    ("field_vented_heater", ("room heater vented",), True, 200, "beyond the field limit", FIELD_BANDS),
    ("field_unvented_heater", ("room heater unvented",), True, 200, "beyond the field limit", FIELD_BANDS),
    ("field_oven", ("oven",), False, 225, "beyond the field limit for a steady oven", FIELD_BANDS),
    ("heater_standard", ("room heater unvented",), True, 200, "beyond the product standard", HEATER_STANDARD),
    ("oven_standard", ("oven",), True, 800, "beyond the product standard", RANGE_STANDARD),
    ("trade_service", ("furnace", "boiler", "water heater", "room heater vented"), False, 99,
     "not steady below 100: to be repaired, left running only with no spillage", TRADE_SCALE),
    ("trade_shut_down", ("furnace", "boiler", "water heater", "room heater vented"), False, 399,
     "400 or more: shut down until repaired", TRADE_SCALE),
    ("trade_unvented", ("room heater unvented", "oven"), False, 50, "more than 30 to 50 when warm", TRADE_SCALE),
)  # fmt: skip


@gauge(
    name="carbon-monoxide-in-flue",
    family="fuel",
    title="Carbon monoxide in flue gas against the limits for the appliance",
    gives="each source's limit for this appliance, and whether the reading lies beyond it",
    sources=(FURNACE_STANDARD, FURNACE_PRACTICE, FIELD_BANDS, RANGE_STANDARD, HEATER_STANDARD, TRADE_SCALE),
    error="an analyser is within about 5 % or 10 ppm when it is in calibration",
    never="that an appliance may be used: draft, spillage and the heat exchanger are questions of their own",
    cautions=(
        MONOXIDE, GAS, RELIGHT, LICENSED,
        "A limit for an air-free figure is never held against a figure as measured, nor the other way round.",
    ),
    example={"appliance": "furnace", "air_free": "140ppm"},
)  # fmt: skip
def carbon_monoxide_in_flue(
    appliance: Annotated[
        Literal["furnace", "boiler", "water heater", "room heater vented", "room heater unvented", "oven"],
        Asked("kind of appliance"),
    ],
    air_free: Annotated[
        Quantity | None,
        Asked(
            "carbon monoxide, air-free", "[ppm]", lowest="0", highest="10000", least="0", most="1000000",
            how="reckoned by the analyser or by carbon-monoxide-air-free", example="140ppm",
        ),
    ] = None,
    measured: Annotated[
        Quantity | None,
        Asked(
            "carbon monoxide as measured", "[ppm]", lowest="0", highest="10000", least="0", most="1000000",
            how="in the undiluted flue gas, steady, after five minutes (an oven after 20)", example="60ppm",
        ),
    ] = None,
) -> Answer:  # fmt: skip
    """Limits of carbon monoxide in flue gas for a kind of appliance, source by source.

    Rule:
        furnace: 400 ppm air-free (product standard, field), below 100 ppm air-free (good practice)
        water heater, room heater: 200 ppm air-free; oven: 225 ppm as measured (field), 800 ppm air-free (standard)
        heating trade: below 100 ppm and steady as measured; from 400 ppm shut down

    The field limits are recalled.

    >>> from witnessmark.units import parse_quantity as q
    >>> answer = carbon_monoxide_in_flue("furnace", air_free=q("140ppm"))
    >>> answer["furnace_standard"], answer["furnace_practice"]
    ('within', 'beyond')
    """
    also: list[Also] = []
    rows: list[tuple[Decimal | str, ...]] = []
    beyond: list[str] = []
    for name, kinds, free, most, told, source in FLUE_LIMITS:
        if appliance not in kinds:
            continue
        reading = air_free if free else measured
        outcome = "not given" if reading is None else "beyond" if reading.value > most else "within"
        basis = "air-free" if free else "as measured"
        rows.append((str(source), Decimal(most), basis, told if outcome == "beyond" else outcome))
        also.append(Also(name, f"at most {most} ppm {basis}", outcome))
        if outcome == "beyond":
            beyond.append(f"{told} ({source.document}: {most} ppm {basis})")
    given = [f"{one.value} ppm {what}" for one, what in ((air_free, "air-free"), (measured, "as measured")) if one]
    words = f"{' and '.join(given)} from this {appliance}: " if given else f"Limits for this {appliance} by source. "
    if given:
        words += "; ".join(beyond) + "." if beyond else "beyond none of the limits it can be held against."
    return Answer(
        words=words,
        cautions=("Have the appliance looked at before it is used again.",) if beyond else (),
        also=tuple(also),
        table=Table((("published in", ""), ("at most", "[ppm]"), ("figure", ""), ("outcome", "")), tuple(rows)),
    )
