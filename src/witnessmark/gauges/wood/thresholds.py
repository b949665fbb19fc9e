"""What a moisture content of wood means for mould, decay and use, threshold by threshold."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Source, Table, Uncertainty
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["THRESHOLDS", "Threshold", "decay_temperature", "wood_moisture"]

DECAY = Source("Wood Handbook", "chapter 14 (biodeterioration)", "moisture and temperature of decay", "seen in a copy")
SATURATION = Source("Wood Handbook", "2021", "chapter 4, fibre saturation", "seen in a copy")
SERVICE = Source("Wood Handbook", "2021", "chapter 14, wood in service at 20 % or less", "memory")
LUMBER = Source("American Softwood Lumber Standard PS 20", "", "dry lumber, 19 % at most", "memory")
INDOORS = Source(
    "moisture content of interior wood over a year", "", "6 to 16 % over most of the USA", "seen in a copy"
)
SPORES = Source("wood decay by spores and by mycelium", "", "29 % and 20 %", "seen in a copy")


@dataclass(frozen=True, slots=True)
class Threshold:
    """One published threshold: a range of moisture content in %, what it is about, what being at or above it means."""

    name: str
    low: str
    high: str
    what: str
    above: str
    below: str
    source: Source


THRESHOLDS = (
    Threshold("indoor_range", "6", "16", "usual indoors over a year", "wetter than wood usually is indoors",
              "as wood usually is indoors, or drier", INDOORS),
    Threshold("dry_lumber", "19", "19", "limit of lumber sold as dry", "wetter than lumber sold as dry",
              "as dry as lumber sold as dry", LUMBER),
    Threshold("service", "20", "20", "line for wood in service; established fungus may spread from here on",
              "above the line for wood in service", "below the line for wood in service", SERVICE),
    Threshold("spores", "29", "29", "spores can begin to grow", "wet enough for spores to begin",
              "too dry for decay to begin from spores", SPORES),
    Threshold("fibre_saturation", "26", "32", "fibre saturation (30 % on average); serious decay needs more",
              "above fibre saturation: wet enough for serious decay", "below fibre saturation", SATURATION),
)  # fmt: skip


def decay_temperature(celsius: float) -> str:
    """What a temperature in °C means for decay: stopped, slow, or within the window where it goes on.

    >>> decay_temperature(20), decay_temperature(5), decay_temperature(1)
    ('goes on', 'slow', 'stopped')
    """
    if celsius <= 2 or celsius >= 38:  # noqa: PLR2004 - the handbook's own limits
        return "stopped"
    return "slow" if celsius < 10 or celsius > 35 else "goes on"  # noqa: PLR2004 - the handbook's own limits


def _held(value: Decimal, one: Threshold) -> str:
    low, high = Decimal(one.low), Decimal(one.high)
    if one.name == "indoor_range":
        return (
            one.above if value > high else "drier than usual indoors" if value < low else "as wood usually is indoors"
        )
    if low < value <= high:
        return "within the range in which species differ: undecided"
    return one.above if value > high else one.below


@gauge(
    name="wood-moisture",
    family="wood",
    title="What a moisture content of wood means for mould, decay and use",
    gives="each published threshold in words, and what the temperature means for decay",
    sources=(DECAY, SATURATION, SERVICE, SPORES, LUMBER, INDOORS),
    error="thresholds are ranges: species, fungus and time differ",
    never="that wood is sound or decayed: probe it, and look for the source of the water",
    cautions=(
        "A meter reads one spot on one day. Look for the source of water and for decay already there.",
        "Readings above 25 to 30 % tell wet from wetter, not how wet.",
    ),
    example={"moisture": "22%", "wood_temperature": "60F"},
)
def wood_moisture(
    moisture: Annotated[
        Quantity,
        Asked(
            "moisture content of the wood, corrected for species and temperature",
            "%",
            lowest="6",
            highest="30",
            least="0",
            most="300",
            how="see wood-meter-correction",
            example="22%",
        ),
    ],
    wood_temperature: Annotated[
        Quantity | None,
        Asked(
            "temperature of the wood",
            "Cel",
            lowest="-40",
            highest="60",
            least="-60",
            most="90",
            how="with a contact probe on the wood",
            example="60F",
        ),
    ] = None,
) -> Answer:
    """A moisture content held against each published threshold, in words.

    Rule:
        6 to 16 % usual indoors; 19 % lumber sold as dry; 20 % line for wood in service, from which established fungus may
        spread; 29 % spores can begin; 26 to 32 % (30 on average) fibre saturation, above which decay is serious;
        decay is slow below 10 °C and above 35 °C and stops at 2 °C and 38 °C

    >>> from witnessmark.units import parse_quantity as q
    >>> wood_moisture(q("22%"))["service"]
    'above the line for wood in service'
    """  # fmt: skip
    value = moisture.value
    also = [Also(one.name, one.what, _held(value, one)) for one in THRESHOLDS]
    high = next((one for one in reversed(THRESHOLDS) if value > Decimal(one.high)), None)
    if value > Decimal(32):
        words = f"At {value:.1f} % this wood is above fibre saturation: wet enough for serious decay, if it stays so."
    elif value > Decimal(20):
        words = (
            f"At {value:.1f} % this wood is above the 20 % line for wood in service: fungus that is already there may "
            f"spread{', and spores can begin to grow' if value >= Decimal(29) else ''}."
        )
    elif high is not None and high.name == "dry_lumber":
        words = (
            f"At {value:.1f} % this wood is wetter than lumber sold as dry, close to the 20 % line for wood in service."
        )
    elif high is not None:
        words = f"At {value:.1f} % this wood is wetter than usual indoors (6 to 16 %), below the 20 % line for wood in service."
    else:
        words = f"At {value:.1f} % this wood is within what wood usually holds indoors (6 to 16 %), or drier."
    if wood_temperature is not None:
        state = decay_temperature(float(wood_temperature.value))
        also.append(Also("decay_at_this_temperature", "decay at the wood's temperature now", state))
        told = {"stopped": "does not go on", "slow": "goes on slowly", "goes on": "could go on"}[state]
        words += f" At the temperature it has now, decay {told}; that changes with the season."
    rows = tuple(
        (
            one.what,
            f"{one.low} %" if one.low == one.high else f"{one.low} to {one.high} %",
            _held(value, one),
            str(one.source),
        )
        for one in THRESHOLDS
    )
    return Answer(
        words=words,
        uncertainty=Uncertainty("thresholds are ranges; a corrected pin reading is good to 1 to 2 %"),
        also=tuple(also),
        table=Table((("threshold", ""), ("moisture content", ""), ("this reading", ""), ("source", "")), rows),
    )
