"""What a pin meter's reading is once the wood's own temperature and its species are counted in."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Outside, Source, Step, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.wood.messages import ALREADY_CORRECTED, SPECIES_INCOMPLETE
from witnessmark.gauges.wood.meter import (
    CORRECTION,
    corrected_for_temperature,
    species_corrected,
    steep_rule,
    step_rule,
    table_rule,
)
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["meter_correction"]

#: What resistance meters can tell at all: below and above this they do not measure, whatever the display says.
LOWEST, HIGHEST = Decimal(6), Decimal(25)


def _species(a: Decimal | None, b: Decimal | None, source: str | None) -> tuple[float, float]:
    given = (a is not None, b is not None, bool(source and source.strip()))
    if not any(given):
        return 1.0, 0.0
    if a is None or b is None or not given[2]:
        names = ("species_a", "species_b", "species_source")
        missing = " and ".join(name for name, there in zip(names, given, strict=True) if not there)
        raise Refusal(SPECIES_INCOMPLETE.at("species", f"missing: {missing}"))
    return float(a), float(b)


@gauge(
    name="wood-meter-correction",
    family="wood",
    title="A resistance meter's reading, corrected for the wood's temperature and species",
    unit="%",
    gives="moisture content of the wood at the pins, in % of its oven-dry mass",
    sources=(CORRECTION,),
    error="1 to 2 % moisture content; published rules differ by as much",
    never="moisture in anything but wood, or in wood treated with salts, without saying so",
    cautions=(
        "Take the temperature of the wood, not of the air.",
        "Preservative-treated wood reads 1 to 2 % high, salts and fire retardants much more.",
    ),
    example={"reading": "15%", "wood_temperature": "40F"},
)
def meter_correction(
    reading: Annotated[
        Quantity,
        Asked(
            "reading of the meter on its wood scale, as displayed",
            "%",
            lowest="6",
            highest="25",
            least="0",
            most="100",
            how="pins pushed in along the grain; insulated pins for a depth; away from nails and glue",
            example="15%",
        ),
    ],
    wood_temperature: Annotated[
        Quantity,
        Asked(
            "temperature of the wood itself, not of the air",
            "Cel",
            lowest="-20",
            highest="60",
            least="-60",
            most="90",
            how="with a contact probe on the wood, or an infrared thermometer close to it",
            example="40F",
        ),
    ],
    meter_corrects_temperature: Annotated[
        bool, Asked("whether the meter was set to the wood's temperature, or compensates by itself", example="no")
    ] = False,
    *,
    species_a: Annotated[
        Decimal | None,
        Asked(
            "first coefficient of the species, from the meter's own table",
            "1",
            lowest="0.5",
            highest="1.5",
            least="0.1",
            most="10",
            example="0.9",
        ),
    ] = None,
    species_b: Annotated[
        Decimal | None,
        Asked(
            "second coefficient of the species, from the same table, in %",
            "1",
            lowest="-5",
            highest="5",
            least="-20",
            most="20",
            example="0.4",
        ),
    ] = None,
    species_source: Annotated[str | None, Asked("where the coefficients are printed: table, edition, page")] = None,
) -> Answer:
    """Moisture content from a resistance meter's reading, wood temperature and (optional) species coefficients.

    Formula:
        MC = { [R + 0.567 - 0.0260 x + 0.000051 x^2] / [0.881 * 1.0056^x] - b } / a
        R meter reading in %, x temperature of the WOOD in °C, a and b of the species (1 and 0: Douglas-fir, the scale)

    Cold wood conducts less and reads low: the correction adds in the cold. It comes first and the species second; some
    printed tables do it the other way round, and their rules stand in ``also``. A reading that the meter has already
    corrected is refused (WM010).

    >>> from witnessmark.units import parse_quantity as q
    >>> round(meter_correction(q("15%"), q("0 Cel")).value, 2)
    Decimal('17.67')
    """  # fmt: skip
    if meter_corrects_temperature:
        raise Refusal(ALREADY_CORRECTED.at("meter_corrects_temperature", "the reading is corrected as it stands"))
    a, b = _species(species_a, species_b, species_source)
    shown, celsius = float(reading.value), float(wood_temperature.value)
    scale = corrected_for_temperature(shown, celsius)
    value = rounded(species_corrected(scale, a, b))
    outside: list[Outside] = []
    if not LOWEST <= value <= HIGHEST:
        why = "resistance meters do not measure below about 6 %, and above 25 to 30 % they only tell wet from wetter"
        outside.append(Outside("moisture content", Quantity(value, "%"), LOWEST, HIGHEST, why))
    by_table = table_rule(species_corrected(shown, a, b), celsius)
    others = {
        "rule_half_a_percent_per_5_kelvin": (
            "by a printed rule: set at 20 °C (68 °F), 0.5 % for every 5 K beyond 5 K; then the species",
            species_corrected(step_rule(shown, celsius), a, b),
        ),
        "rule_1_5_percent_per_10_kelvin": (
            "by another printed remark: set at 20 °C, about 1.5 % for 10 K; then the species",
            species_corrected(steep_rule(shown, celsius), a, b),
        ),
    }
    if by_table is not None:
        told = "by a printed table of another meter, which corrects the species first and the temperature second"
        others["rule_printed_table"] = (told, by_table)
    also = (
        Also("douglas_fir", "on the Douglas-fir scale, before the species", rounded(scale), "%"),
        Also("change", "what the correction adds to the reading", rounded(float(value) - shown), "%"),
        *(Also(name, what, rounded(number), "%") for name, (what, number) in others.items()),
    )
    spread = max(abs(number - float(value)) for _, number in others.values())
    way = "more" if value > reading.value else "less"
    words = (
        f"The wood is at about {value:.1f} % moisture content, {abs(float(value) - shown):.1f} % {way} than displayed."
    )
    if outside:
        words += " That is beyond what a resistance meter can measure; it tells wet from dry, not how wet."
    sources = [CORRECTION]
    if species_source is not None and species_a is not None:
        sources.append(Source(species_source.strip(), "", "species coefficients, given by the user", "memory"))
    return Answer(
        value=value,
        words=words,
        uncertainty=Uncertainty(
            f"about {max(1.5, spread):.1f} %: published rules of temperature differ by {spread:.1f} % here",
            rounded(max(1.5, spread)),
        ),
        outside_range=tuple(outside),
        sources=tuple(sources),
        also=also,
        steps=(
            Step("reading", reading.value, "%"),
            Step("corrected for the wood's temperature", rounded(scale), "%"),
            Step("corrected for the species", value, "%"),
        ),
    )
