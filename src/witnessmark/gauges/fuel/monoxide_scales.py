"""What each source says of carbon monoxide in the air of a room: its bands, kept apart from every other source's."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from witnessmark.gauges.answer import Source
from witnessmark.gauges.fuel.sources import (
    ALARM_STANDARD,
    AMBIENT_AIR,
    FIELD_BANDS,
    RANGE_ROOM,
    TRADE_SCALE,
    WORKPLACE_NIOSH,
    WORKPLACE_OSHA,
)  # fmt: skip

__all__ = ["SCALES", "Scale", "milligrams_per_cubic_metre"]

_MOLAR_MASS = 28.010
_GAS = 8.314462618


@dataclass(frozen=True, slots=True)
class Scale:
    """One source's bands: lower edge in ppm, whether the edge itself is left out, a short word, the sentence."""

    name: str
    who: str
    source: Source
    bands: tuple[tuple[Decimal, bool, str, str], ...]

    def band(self, ppm: Decimal) -> tuple[str, str]:
        """The band that *ppm* lies in: a short word for programs and the sentence for people.

        >>> SCALES[0].band(Decimal(10))[0]
        'above 8-hour'
        """
        above = (band for band in reversed(self.bands) if ppm > band[0] or (ppm == band[0] and not band[1]))
        found = next(above, self.bands[0])
        return found[2], found[3]


def _scale(name: str, who: str, source: Source, *bands: tuple[str, str, str]) -> Scale:
    edges = ((Decimal(low.removeprefix(">")), low.startswith(">"), word, told) for low, word, told in bands)
    return Scale(name, who, source, tuple(edges))


SCALES: tuple[Scale, ...] = (
    _scale(
        "outdoor_air", "outdoor air standard", AMBIENT_AIR,
        ("0", "at or below", "at or below 9 ppm, the 8-hour average of the outdoor standard"),
        (">9", "above 8-hour", "above 9 ppm, the 8-hour average; at or below 35 ppm, the 1-hour average"),
        (">35", "above 1-hour", "above 35 ppm, the 1-hour average of the outdoor standard"),
    ),
    _scale(
        "alarm", "household alarm standard", ALARM_STANDARD,
        ("0", "no alarm", "an alarm need not sound; at 30 ppm it must stay silent for 30 days"),
        ("70", "alarm 60-240 min", "an alarm sounds between 60 and 240 minutes at 70 ppm"),
        ("150", "alarm 10-50 min", "an alarm sounds between 10 and 50 minutes at 150 ppm"),
        ("400", "alarm 4-15 min", "an alarm sounds between 4 and 15 minutes at 400 ppm"),
    ),
    _scale(
        "niosh", "workplace recommendation", WORKPLACE_NIOSH,
        ("0", "at or below", "at or below 35 ppm, the recommended average over a working day of 8 hours"),
        (">35", "above", "above 35 ppm, the recommended average over a working day of 8 hours"),
    ),
    _scale(
        "osha", "workplace law", WORKPLACE_OSHA,
        ("0", "at or below", "at or below 50 ppm, the permitted average over a working day of 8 hours"),
        (">50", "above", "above 50 ppm, the permitted average over a working day of 8 hours"),
    ),
    _scale(
        "field", "field bands of a testing standard", FIELD_BANDS,
        ("0", "go on", "below 9 ppm: testing may go on"),
        ("9", "inform", "9 to 35 ppm: inform the occupants, look for the source"),
        (">35", "shut off", "36 to 69 ppm: shut off what makes it, ventilate, advise"),
        ("70", "evacuate", "70 ppm and above: stop and get everybody out"),
    ),
    _scale(
        "trade", "scale of the heating trade", TRADE_SCALE,
        ("0", "normal", "below 10 ppm: called normal for up to 8 hours; living space has 0 to 1 ppm"),
        (">9", "advise", "10 to 35 ppm: advise the occupants, ask after symptoms"),
        (">35", "ventilate", "36 to 99 ppm: fresh air, ask after symptoms"),
        ("100", "evacuate", "100 ppm and above: get everybody out and call 911"),
    ),
    _scale(
        "stove", "usual near a kitchen stove", RANGE_ROOM,
        ("0", "usual", "0.5 to 15 ppm is usual near a well-adjusted gas stove"),
        (">15", "between", "between what is usual near a well-adjusted (15) and a badly adjusted stove (30)"),
        ("30", "badly adjusted", "30 ppm and above is met near a badly adjusted stove"),
    ),
)  # fmt: skip


def milligrams_per_cubic_metre(ppm: float, celsius: float = 25.0) -> float:
    """Mass of carbon monoxide in mg/m3 of air for *ppm* by volume, at 101 325 Pa and *celsius* °C (above -273.15).

    Ideal gas, molar mass 28.010 g/mol.

    >>> round(milligrams_per_cubic_metre(9), 1)
    10.3
    """
    return ppm * 1e-6 * 101_325 / (_GAS * (celsius + 273.15)) * _MOLAR_MASS * 1000
