"""Where the mould index of a surface stands after a logger's series of temperature and humidity."""

from __future__ import annotations

import datetime as dt
import itertools
from dataclasses import dataclass
from decimal import Decimal
from typing import Annotated, Literal, TypeAlias

from witnessmark.gauges.air.messages import OUT_OF_ORDER
from witnessmark.gauges.air.mould import CLASSES, FALLS_FOR, Growth, Sensitivity, grows
from witnessmark.gauges.air.sources import ADDENDUM_E, HUKKA, OJANEN
from witnessmark.gauges.answer import Also, Answer, Outside, Table, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["ClimateRow", "SensitivityName", "mould_index"]

SensitivityName: TypeAlias = Literal["very sensitive", "sensitive", "medium resistant", "resistant"]
#: What each whole step of the index looks like; Hukka and Viitanen (1999).
LOOKS = (
    "no growth", "first growth, seen only under a microscope", "several patches, seen only under a microscope",
    "growth that the eye can see, under a tenth of the surface", "growth on a tenth to half of the surface",
    "growth on more than half of the surface", "the surface is covered",
)  # fmt: skip
VISIBLE = 3
_DAY = 24


@dataclass(frozen=True, slots=True)
class ClimateRow:
    """One row of a logger: temperature and relative humidity at the surface, and when, where rows are not an hour apart."""

    temperature: Annotated[
        Quantity,
        Asked("temperature at the surface", "Cel", lowest="-30", highest="50", least="-60", most="80",
              how="with a logger whose sensor touches the surface, or computed from the air and the surface temperature",
              example="20 Cel"),
    ]  # fmt: skip
    humidity: Annotated[
        Quantity,
        Asked("relative humidity at the surface, not in the middle of the room", "%", lowest="0", highest="100",
              least="0", most="100", example="90%"),
    ]  # fmt: skip
    at: Annotated[dt.datetime | None, Asked("when, as 2026-01-31T14:00; leave out for one row an hour")] = None


def _spans(series: tuple[ClimateRow, ...]) -> list[float]:
    """Hours that each row stands for: until the next one, an hour where no times are given."""
    times = [row.at for row in series]
    if all(time is None for time in times):
        return [1.0] * len(series)
    known = [time for time in times if time is not None]
    if len(known) < len(times):
        at = times.index(None) + 1
        raise Refusal(OUT_OF_ORDER.at(f"series[{at}]", "it has no time while other rows have one"))
    if len({time.tzinfo is None for time in known}) > 1:
        raise Refusal(OUT_OF_ORDER.at("series", "some times have an offset from UTC and some do not"))
    spans = []
    for at, (one, following) in enumerate(itertools.pairwise(known), 2):
        hours = (following - one).total_seconds() / 3600
        if hours <= 0:
            raise Refusal(OUT_OF_ORDER.at(f"series[{at}]", f"{following} is not after {one}"))
        spans.append(hours)
    return [*spans, min(spans[-1], FALLS_FOR) if spans else 1.0]


@dataclass(slots=True)
class _Tally:
    """The index with each decline, and hours of growth and of gaps, as the series goes by."""

    index: Growth
    slowest: Growth
    highest: float = 0.0
    hours: float = 0.0
    growing: float = 0.0
    gaps: float = 0.0

    def pass_row(self, hours: float, celsius: float, humidity: float, of: Sensitivity, decline: float) -> None:
        self.hours += hours
        if hours > FALLS_FOR:
            self.gaps += hours
            return
        self.growing += hours if grows(celsius, humidity, of) else 0.0
        whole = int(hours) if hours == int(hours) else int(hours) + 1
        steps = max(whole, 1)
        for _ in range(steps):
            self.index = self.index.after(hours / steps, celsius, humidity, of, decline)
            self.slowest = self.slowest.after(hours / steps, celsius, humidity, of, 0.1)
            self.highest = max(self.highest, self.index.index)


def _words(index: float, tally: _Tally) -> str:
    words = (
        f"After {tally.hours / _DAY:.1f} days of this climate the model puts the mould index at {index:.2f} of 6: "
        f"{LOOKS[min(int(index), 6)]}."
    )
    if tally.highest > index + 0.01:
        words += f" Its highest on the way was {tally.highest:.2f}."
    if tally.gaps:
        words += f" {tally.gaps / _DAY:.1f} days of it are gaps in the series, counted as neither growth nor decline."
    return words


@gauge(
    name="mould-index",
    family="air",
    title="Mould index of a surface after a series of temperature and humidity",
    unit="1",
    gives="mould index at the end of the series, from 0 (nothing) over 3 (visible) to 6 (covered)",
    sources=(HUKKA, OJANEN, ADDENDUM_E),
    error="a class either way changes the index several times over; the model was fitted to wood in climate chambers",
    never="that mould is there or not there: look, and have a sample taken where it matters",
    cautions=(
        "The series must be that of the surface; room air is usually drier and warmer.",
        "Dirt, earlier growth and wetting by water are not in the model.",
        "Suspected growth is not to be disturbed; sampling and removal follow local rules.",
    ),
    example={"series": "20 Cel,90%;20 Cel,92%;19 Cel,93%", "sensitivity": "very sensitive"},
)
def mould_index(
    series: Annotated[tuple[ClimateRow, ...], Asked("rows of temperature, humidity and (optional) time")],
    sensitivity: Annotated[
        SensitivityName,
        Asked("class of the material: " + "; ".join(f"{name}: {of.such}" for name, of in CLASSES.items())),
    ],
    decline: Annotated[
        Decimal,
        Asked(
            "factor of the material on the decline in dry times: 1 as on sawn pine, down to 0.1 (hardly any decline)",
            "1",
            lowest="0.1",
            highest="1",
            least="0",
            most="1",
            example="1",
        ),
    ] = Decimal(1),
) -> Answer:
    """Mould index after a series, hour by hour.

    Formula:
        grows where 0 < T < 50 and RH >= RHcrit:  dM/dt = k1 k2 / (168 h exp(-0.68 ln T - 13.9 ln RH + 66.02)),
        k2 = max(1 - exp(2.3 (M - Mmax)), 0),  Mmax = A + B x - C x^2,  x = (RHcrit - RH)/(RHcrit - 100),
        RHcrit = max(-0.00267 T^3 + 0.160 T^2 - 3.13 T + 100, RHmin) up to 20 °C, RHmin above;
        else falls by 0.032 a day for 6 h, rests until 24 h, then falls by 0.016 a day, times the decline factor

    k1 changes at M = 1; the factor never touches growth; any hour of growth starts the count of dry hours again. A row
    stands until the next; rows further apart than 6 h are gaps, in which the index is kept as it was.

    >>> from witnessmark.gauges import evaluate
    >>> round(evaluate("mould-index", {"series": "20 Cel,90%", "sensitivity": "very sensitive"}).value, 7)
    Decimal('0.0014164')
    """  # fmt: skip
    if not series:
        raise Refusal(OUT_OF_ORDER.at("series", "it has no rows"))
    of = CLASSES[sensitivity]
    tally, table = _Tally(Growth(), Growth()), []
    day = 0
    for hours, row in zip(_spans(series), series, strict=True):
        tally.pass_row(hours, float(row.temperature.value), float(row.humidity.value), of, float(decline))
        if tally.hours >= (day + 1) * _DAY:
            day = int(tally.hours // _DAY)
            table.append((rounded(tally.hours / _DAY), rounded(tally.index.index)))
    index, slowest = tally.index.index, tally.slowest.index
    outside: tuple[Outside, ...] = ()
    if tally.gaps:
        why = "rows lie more than 6 h apart: nothing is known of the time between"
        outside = (Outside("gaps", Quantity(rounded(tally.gaps), "h"), None, Decimal(0), why),)
    return Answer(
        value=rounded(index),
        words=_words(index, tally),
        uncertainty=Uncertainty(
            f"up to {slowest:.2f} with the slowest published decline; the class of the material counts for more"
        ),
        outside_range=outside,
        also=(
            Also("highest", "highest index on the way", rounded(tally.highest), "1"),
            Also("looks", "what that index looks like", LOOKS[min(int(index), 6)]),
            Also("visible", "the index reached 3, growth that the eye can see", tally.highest >= VISIBLE),
            Also("with_slowest_decline", "with the slowest published decline (0.1)", rounded(slowest), "1"),
            Also("hours", "hours in the series", rounded(tally.hours), "h"),
            Also("growing_hours", "hours in which mould grows", rounded(tally.growing), "h"),
            Also("gap_hours", "hours of gaps", rounded(tally.gaps), "h"),
        ),
        table=Table((("day", "d"), ("mould index", "1")), tuple(table)) if table else None,
    )
