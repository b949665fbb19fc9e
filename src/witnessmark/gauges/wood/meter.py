"""What a resistance meter's reading stands for once wood temperature and species are corrected, and what its ohms mean."""

from __future__ import annotations

import itertools
import math

from witnessmark.gauges.answer import Source

__all__ = [
    "CORRECTION", "FIT", "RESISTANCE_TABLE", "TABLE", "corrected_for_temperature", "moisture_by_fit", "moisture_by_table",
    "species_corrected", "steep_rule", "step_rule", "table_rule",
]  # fmt: skip

CORRECTION = Source(
    "Pfaff and Garrahan, Moisture meter correction factors, Forintek", "1984 and 1986", "temperature and species",
    "memory",
)  # fmt: skip
TABLE = Source("James, Electric moisture meters for wood, FPL-GTR-6", "1988", "Table 1, Douglas-fir at 80 °F", "memory")
FIT = Source(
    "Straube, Onysko and Schumacher, Methodology and design of field experiments for monitoring the hygrothermal "
    "performance of wood frame enclosures", "2002", "logarithmic fit, Douglas-fir", "memory",
)  # fmt: skip
#: Moisture content in % and resistance in megohms between two pairs of needle electrodes, Douglas-fir at 80 °F.
RESISTANCE_TABLE = (
    (7, 22_400.0), (8, 4_780.0), (9, 1_660.0), (10, 630.0), (11, 265.0), (12, 120.0), (13, 60.0), (14, 33.0),
    (15, 18.6), (16, 11.2), (17, 7.1), (18, 4.60), (19, 3.09), (20, 2.14), (21, 1.51), (22, 1.10), (23, 0.79),
    (24, 0.60), (25, 0.46),
)  # fmt: skip


def corrected_for_temperature(reading: float, celsius: float) -> float:
    """A meter's reading in % corrected for the temperature of the wood in °C; on the meter's Douglas-fir scale.

    Cold wood reads low, so the correction adds below about 23 °C (73 °F) and takes away above.

    >>> round(corrected_for_temperature(15, 0), 2), round(corrected_for_temperature(8, 50), 2)
    (17.67, 6.35)
    """
    return (reading + 0.567 - 0.0260 * celsius + 0.000051 * celsius**2) / (0.881 * math.pow(1.0056, celsius))


def species_corrected(douglas_fir: float, a: float, b: float) -> float:
    """Moisture content in % of a species, from the Douglas-fir scale and the species' two coefficients (a above 0).

    >>> species_corrected(15, 1, 0)
    15.0
    """
    return (douglas_fir - b) / a


def step_rule(reading: float, celsius: float) -> float:
    """The printed rule of a meter set at 20 °C: beyond 5 K of it, 0.5 % for every 5 K, added in the cold.

    >>> step_rule(15, 10), step_rule(15, 23)
    (16.0, 15)
    """
    off = 20 - celsius
    return reading if abs(off) <= 5 else reading + 0.1 * off  # noqa: PLR2004 - the rule's own band


def steep_rule(reading: float, celsius: float) -> float:
    """The printed remark of a third meter set at 20 °C: 30 °C warm wood reads about 1.5 % high, 0.15 % a kelvin.

    >>> steep_rule(15, 30)
    13.5
    """
    return reading - 0.15 * (celsius - 20)


def table_rule(reading: float, celsius: float) -> float | None:
    """The printed corrections of a meter with its own table, as far as they are known: 10, 40 and 50 °C, else None.

    +2 at 10 °C, -3 at 40 °C, -4 at 50 °C, after the species has been corrected.

    >>> table_rule(15, 10), table_rule(15, 50), table_rule(15, 20)
    (17, 11, None)
    """
    steps = {10.0: 2, 40.0: -3, 50.0: -4}
    return reading + steps[celsius] if celsius in steps else None


def moisture_by_fit(megohms: float) -> float:
    """Moisture content in % of Douglas-fir at 23 to 25 °C from the resistance in megohms (above 0.00001).

    >>> round(moisture_by_fit(120), 2)
    11.82
    """
    return 10 ** (2.99 - 2.113 * math.log10(math.log10(megohms * 1e6)))


def moisture_by_table(megohms: float) -> float | None:
    """Moisture content in % of Douglas-fir at 27 °C, between the table's rows on the logarithm; None beyond its ends.

    >>> moisture_by_table(120), moisture_by_table(0.1)
    (12.0, None)
    """
    for (low, more), (high, less) in itertools.pairwise(RESISTANCE_TABLE):
        if less <= megohms <= more:
            share = math.log(more / megohms) / math.log(more / less)
            return low + share * (high - low)
    return None
