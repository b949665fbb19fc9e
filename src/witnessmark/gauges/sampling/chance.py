"""How likely it is that a random draw meets a bad one: exact with whole numbers, and for a large number."""

from __future__ import annotations

import math
from fractions import Fraction

__all__ = [
    "bound_among_many", "bound_among_so_many", "chance_among_many", "chance_of_none", "smallest_among_many",
    "smallest_number",
]  # fmt: skip


def chance_of_none(there: int, bad: int, tested: int) -> Fraction:
    """The chance that *tested* drawn at random from *there* hold none of the *bad*: C(N - k, n) / C(N, n), exact.

    Whole numbers, 0 <= bad, tested <= there.

    >>> chance_of_none(20, 1, 5)
    Fraction(3, 4)
    """
    # The same quotient with the roles of bad and tested changed: the smaller one keeps the whole numbers short.
    few, many = min(bad, tested), max(bad, tested)
    return Fraction(math.comb(there - many, few), math.comb(there, few))


def smallest_number(there: int, bad: int, wanted: Fraction) -> int:
    """The smallest draw that meets at least one of *bad* (1 or more) among *there* with the chance *wanted* (0 to 1).

    >>> smallest_number(20, 1, Fraction(9, 10)), smallest_number(60, 6, Fraction(95, 100))
    (18, 23)
    """
    low, high = 0, there - bad + 1
    while low < high:
        middle = (low + high) // 2
        if 1 - chance_of_none(there, bad, middle) >= wanted:
            high = middle
        else:
            low = middle + 1
    return low


def bound_among_so_many(there: int, tested: int, confidence: Fraction) -> int:
    """The most bad ones among *there* that a draw of *tested* without one leaves plausible: chance > 1 - confidence.

    >>> bound_among_so_many(40, 8, Fraction(95, 100)), bound_among_so_many(40, 35, Fraction(95, 100))
    (11, 1)
    """
    low, high = 0, there - tested
    while low < high:
        middle = (low + high + 1) // 2
        if chance_of_none(there, middle, tested) > 1 - confidence:
            low = middle
        else:
            high = middle - 1
    return low


def chance_among_many(share: float, tested: int) -> float:
    """The chance that *tested* from a very large number hold at least one bad, *share* 0 to 1 of them bad: 1 - (1-p)^n.

    >>> round(chance_among_many(0.05, 59), 5)
    0.95151
    """
    return 1.0 if share >= 1 and tested else -math.expm1(tested * math.log1p(-share)) if share < 1 else 0.0


def smallest_among_many(share: float, wanted: float) -> int:
    """The smallest draw from a very large number that meets a bad one with the chance *wanted*, both above 0, below 1.

    >>> smallest_among_many(0.05, 0.95), smallest_among_many(0.1, 0.9)
    (59, 22)
    """
    number = max(1, math.ceil(math.log1p(-wanted) / math.log1p(-share)) - 1)
    while chance_among_many(share, number) < wanted:
        number += 1
    return number


def bound_among_many(tested: int, confidence: float) -> float:
    """The largest share bad that *tested* without one leave plausible: 1 - (1 - confidence)^(1/n); tested 1 or more.

    >>> round(bound_among_many(30, 0.95), 4)
    0.095
    """
    return -math.expm1(math.log1p(-confidence) / tested)
