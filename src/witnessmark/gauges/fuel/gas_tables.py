"""Published capacities of gas pipe where the table departs from the code's own equation."""

from __future__ import annotations

from decimal import Decimal
from typing import NamedTuple

__all__ = ["TABLES", "Looked", "looked_up"]

_SIZES = ("1/2", "3/4", "1", "1 1/4", "1 1/2", "2", "2 1/2", "3", "4")

#: Supply and drop in psi to rows of length in ft and capacity in cubic feet an hour: International Fuel Gas Code 2018,
#: Tables 402.4(5) and 402.4(7), natural gas, specific gravity 0.60, rows of 10 to 90 ft as read in a copy.
TABLES: dict[tuple[int, str], dict[int, tuple[int, ...]]] = {
    (2, "1"): {
        10: (1510, 3040, 5560, 11400, 17100, 32900, 52500, 92800, 189000),
        20: (1070, 2150, 3930, 8070, 12100, 23300, 37100, 65600, 134000),
        30: (869, 1760, 3210, 6590, 9880, 19000, 30300, 53600, 109000),
        40: (753, 1520, 2780, 5710, 8550, 16500, 26300, 46400, 94700),
        50: (673, 1360, 2490, 5110, 7650, 14700, 23500, 41500, 84700),
        60: (615, 1240, 2270, 4660, 6980, 13500, 21400, 37900, 77300),
        70: (569, 1150, 2100, 4320, 6470, 12500, 19900, 35100, 71600),
        80: (532, 1080, 1970, 4040, 6050, 11700, 18600, 32800, 67000),
        90: (502, 1010, 1850, 3810, 5700, 11000, 17500, 30900, 63100),
    },
    (5, "3.5"): {
        10: (3190, 6430, 11800, 24200, 36200, 69700, 111000, 196000, 401000),
        20: (2250, 4550, 8320, 17100, 25600, 49300, 78600, 139000, 283000),
        30: (1840, 3720, 6790, 14000, 20900, 40300, 64200, 113000, 231000),
        40: (1590, 3220, 5880, 12100, 18100, 34900, 55600, 98200, 200000),
        50: (1430, 2880, 5260, 10800, 16200, 31200, 49700, 87900, 179000),
        60: (1300, 2630, 4800, 9860, 14800, 28500, 45400, 80200, 164000),
        70: (1200, 2430, 4450, 9130, 13700, 26400, 42000, 74300, 151000),
        80: (1150, 2330, 4260, 8540, 12800, 24700, 39300, 69500, 142000),
        90: (1060, 2150, 3920, 8050, 12100, 23200, 37000, 65500, 134000),
    },
}


class Looked(NamedTuple):
    """A capacity in cubic feet an hour, the length of the row it came from, and whether the table was extended."""

    capacity: Decimal
    row: int
    extended: bool


def looked_up(table: tuple[int, str], size: str, length: Decimal) -> Looked | None:
    """Capacity of a nominal *size* at *length* ft: the next longer row; None for a size that the table lacks.

    Beyond the 90 ft row the square root of the length carries it on, as the rows themselves run; that is reckoned,
    not printed.

    >>> looked_up((2, "1"), "1/2", Decimal(45))
    Looked(capacity=Decimal('673'), row=50, extended=False)
    """
    if size not in _SIZES:
        return None
    rows, at = TABLES[table], _SIZES.index(size)
    row = next((row for row in rows if length <= row), None)
    if row is not None:
        return Looked(Decimal(rows[row][at]), row, extended=False)
    last = max(rows)
    return Looked(rows[last][at] * (Decimal(last) / length).sqrt(), last, extended=True)
