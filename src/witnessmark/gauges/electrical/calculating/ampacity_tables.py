"""What current the code's tables allow a conductor, edition by edition, with their factors and standard ratings."""

from __future__ import annotations

import math
from decimal import Decimal
from typing import Literal

from witnessmark.gauges.electrical.calculating.messages import NOT_CARRIED, NOT_IN_TABLE
from witnessmark.gauges.electrical.calculating.sizes import printed_size
from witnessmark.problems import Refusal

__all__ = [
    "COLUMNS", "FIRST_CARRIED", "LAST_CARRIED", "STANDARD_RATINGS", "Material", "ambient_factor", "bundling_factor", "next_standard",
    "small_conductor_cap", "standard_at_most", "table_ampacity",
]  # fmt: skip

Material = Literal["copper", "aluminum", "copper-clad aluminum"]
#: Temperature columns of the table, in degrees Celsius.
COLUMNS = (60, 75, 90)
#: The older table is carried from this edition on (memory); tables before it had other numbers.
FIRST_CARRIED, LAST_CARRIED = 1984, 2023
_NEW_TABLE = 2011

#: Copper 60/75/90, aluminum or copper-clad 60/75/90. NEC 2023 Table 310.16, read in two copies that agree.
_FROM_2011 = {
    "14": (15, 20, 25, 0, 0, 0), "12": (20, 25, 30, 15, 20, 25), "10": (30, 35, 40, 25, 30, 35),
    "8": (40, 50, 55, 35, 40, 45), "6": (55, 65, 75, 40, 50, 55), "4": (70, 85, 95, 55, 65, 75),
    "3": (85, 100, 115, 65, 75, 85), "2": (95, 115, 130, 75, 90, 100), "1": (110, 130, 145, 85, 100, 115),
    "1/0": (125, 150, 170, 100, 120, 135), "2/0": (145, 175, 195, 115, 135, 150), "3/0": (165, 200, 225, 130, 155, 175),
    "4/0": (195, 230, 260, 150, 180, 205), "250": (215, 255, 290, 170, 205, 230), "300": (240, 285, 320, 195, 230, 260),
    "350": (260, 310, 350, 210, 250, 280), "400": (280, 335, 380, 225, 270, 305), "500": (320, 380, 430, 260, 310, 350),
    "600": (350, 420, 475, 285, 340, 385),
}  # fmt: skip
#: Where the table up to 2008 reads otherwise (read in a copy of Table 310-16 of that time).
_TO_2008 = _FROM_2011 | {
    "14": (20, 20, 25, 0, 0, 0), "12": (25, 25, 30, 20, 20, 25), "8": (40, 50, 55, 30, 40, 45),
    "6": (55, 65, 75, 40, 50, 60), "3": (85, 100, 110, 65, 75, 85), "1": (110, 130, 150, 85, 100, 115),
    "300": (240, 285, 320, 190, 230, 255), "600": (355, 420, 475, 285, 340, 385),
}  # fmt: skip
#: Highest ambient temperature of a band in degrees Celsius: factors for the 60, 75 and 90 columns.
_AMBIENT: tuple[tuple[int, tuple[str, str, str]], ...] = (
    (10, ("1.29", "1.20", "1.15")), (15, ("1.22", "1.15", "1.12")), (20, ("1.15", "1.11", "1.08")),
    (25, ("1.08", "1.05", "1.04")), (30, ("1", "1", "1")), (35, (".91", ".94", ".96")), (40, (".82", ".88", ".91")),
    (45, (".71", ".82", ".87")), (50, (".58", ".75", ".82")), (55, (".41", ".67", ".76")), (60, ("0", ".58", ".71")),
    (65, ("0", ".47", ".65")), (70, ("0", ".33", ".58")),
)  # fmt: skip
_BUNDLES = ((3, "1"), (6, ".80"), (9, ".70"), (20, ".50"), (30, ".45"), (40, ".40"))
STANDARD_RATINGS = (
    15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200, 225, 250, 300, 350, 400, 450, 500, 600,
    700, 800,
)  # fmt: skip
_CAPS = {("copper", "14"): 15, ("copper", "12"): 20, ("copper", "10"): 30, ("other", "12"): 15, ("other", "10"): 25}


def table_ampacity(size: str, material: str, column: int, edition: int) -> int:
    """Ampacity in A at 30 °C with up to three current-carrying conductors, from the table of the *edition* (a year).

    *size* as in the tables ("12", "2/0", "250"), *column* 60, 75 or 90 °C. Refuses editions outside 1984 to 2023 (WM056) and
    what the table leaves out (WM057). Source: NEC Table 310.16, to 2008 and from 2011 (two tables, never mixed).

    >>> table_ampacity("12", "copper", 60, 2008), table_ampacity("12", "copper", 60, 2011)
    (25, 20)
    """
    if not FIRST_CARRIED <= edition <= LAST_CARRIED:
        raise Refusal(NOT_CARRIED.at(f"edition={edition}", f"carried are {FIRST_CARRIED} to {LAST_CARRIED}"))
    table = _FROM_2011 if edition >= _NEW_TABLE else _TO_2008
    value = table[size][COLUMNS.index(column) + (0 if material == "copper" else 3)]
    if not value:
        raise Refusal(NOT_IN_TABLE.at(f"{printed_size(size)} {material}", "there is no such row in Table 310.16"))
    return value


def ambient_factor(celsius: float, column: int, edition: int = 2023) -> Decimal:
    """Factor for the temperature around the conductor, in °C from -40 to 70, for a 60, 75 or 90 °C column.

    Up to 2008 the table began at 21 °C; colder air then counts as 21 to 25. Refuses (WM057) air in which the
    insulation may not be used at all. Source: NEC Table 310.15(B)(1), formerly below Table 310.16.

    >>> ambient_factor(40, 75), ambient_factor(30, 60)
    (Decimal('0.88'), Decimal('1'))
    """
    whole = max(math.ceil(celsius), 21 if edition < _NEW_TABLE else -273)
    for most, factors in _AMBIENT:
        if whole <= most:
            factor = Decimal(factors[COLUMNS.index(column)])
            if factor:
                return factor
            break
    raise Refusal(NOT_IN_TABLE.at(f"ambient {celsius:g} °C", f"{column} °C insulation has no factor there"))


def bundling_factor(conductors: int) -> Decimal:
    """Factor for the number of current-carrying conductors together (1 or more). NEC Table 310.15(C)(1), from 1993.

    >>> bundling_factor(3), bundling_factor(9)
    (Decimal('1'), Decimal('0.70'))
    """
    return next((Decimal(factor) for most, factor in _BUNDLES if conductors <= most), Decimal("0.35"))


def next_standard(amperes: Decimal) -> int | None:
    """The smallest standard rating in A that is not less than *amperes*; None above 800 A. NEC 240.6(A).

    >>> next_standard(Decimal(55)), next_standard(Decimal("103.5"))
    (60, 110)
    """
    return next((rating for rating in STANDARD_RATINGS if rating >= amperes), None)


def standard_at_most(amperes: Decimal) -> int:
    """The largest standard rating in A that is not more than *amperes*; 0 below 15 A. NEC 240.6(A).

    >>> standard_at_most(Decimal(55)), standard_at_most(Decimal(12))
    (50, 0)
    """
    return max((rating for rating in STANDARD_RATINGS if rating <= amperes), default=0)


def small_conductor_cap(size: str, material: str) -> int | None:
    """The largest device in A for small conductors unless an article allows more; None for sizes without a cap.

    NEC 240.4(D), earlier the note marked by an obelisk below the ampacity table.

    >>> small_conductor_cap("12", "copper"), small_conductor_cap("12", "aluminum"), small_conductor_cap("8", "copper")
    (20, 15, None)
    """
    return _CAPS.get(("copper" if material == "copper" else "other", size))
