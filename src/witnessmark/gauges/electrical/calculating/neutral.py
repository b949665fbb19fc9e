"""What the two lines and the neutral of a dwelling's service carry by the standard method."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from decimal import Decimal
from itertools import zip_longest

from witnessmark.gauges.electrical.calculating.loads import (
    LINE_TO_LINE,
    MOTORS,
    Load,
    stands_between_lines,
    volts,
)

__all__ = ["legs", "neutral_amperes", "neutral_volt_amperes", "paired"]

Share = Callable[[Load], Decimal]
_SEVENTY = Decimal("0.7")
_FULL_TO = Decimal(200)


def drawn(load: Load, share: Share) -> Decimal:
    """Amperes that one row draws at its own voltage, after its *share*.

    >>> drawn(Load("dryer", "dryer", power=None), lambda load: Decimal(2400))
    Decimal('10')
    """
    return share(load) / volts(load)


def paired(first: Sequence[Decimal], second: Sequence[Decimal]) -> Decimal:
    """Amperes on the neutral of line-to-neutral loads on two legs, paired largest with largest.

    Each pair counts with its larger load, as the code's example D1(b) does; the true imbalance is smaller.

    >>> paired([Decimal(12)], [Decimal(8), Decimal(10)])
    Decimal('20')
    """
    both = zip_longest(sorted(first, reverse=True), sorted(second, reverse=True), fillvalue=Decimal(0))
    return sum((max(pair) for pair in both), Decimal(0))


def legs(loads: Sequence[Load], share: Share) -> tuple[Decimal, Decimal]:
    """Amperes on line A and line B of the rows that name a leg, with 25 % of the largest motor on each.

    Rows without a leg are balanced and counted elsewhere; their largest motor counts here where it is the larger.

    >>> legs((Load("cooler", "cooling", leg="both"),), lambda load: Decimal(1440))
    (Decimal('7.5'), Decimal('7.5'))
    """
    sums = []
    for leg in ("A", "B"):
        here = [load for load in loads if load.leg in {leg, "both"}]
        motors = [drawn(load, share) / load.count for load in here if load.kind in MOTORS]
        motors += [
            share(load) / load.count / LINE_TO_LINE for load in loads if load.leg is None and load.kind in MOTORS
        ]
        sums.append(sum((drawn(load, share) for load in here), Decimal(0)) + max(motors, default=Decimal(0)) / 4)
    return sums[0], sums[1]


def neutral_volt_amperes(loads: Sequence[Load], share: Share, lighting: Decimal, cooking: Decimal) -> Decimal:
    """Balanced load of the neutral in VA: lighting, 70 % of cooking and dryer, line-to-neutral loads without a leg.

    NEC 220.61. *lighting* and *cooking* are the demand in VA.

    >>> neutral_volt_amperes((), lambda load: Decimal(0), Decimal(5100), Decimal(8000))
    Decimal('10700.0')
    """
    dryer = sum((share(load) for load in loads if load.kind == "dryer"), Decimal(0))
    rest = [load for load in loads if load.leg is None and load.kind != "dryer" and not stands_between_lines(load)]
    return lighting + _SEVENTY * (cooking + dryer) + sum(map(share, rest), Decimal(0))


def neutral_amperes(loads: Sequence[Load], share: Share, balanced: Decimal) -> Decimal:
    """Amperes of the neutral: *balanced* VA over 240 V, paired loads of the legs, 25 % of the largest motor on it.

    What goes beyond 200 A counts with 70 % (NEC 220.61(B)).

    >>> neutral_amperes((), lambda load: Decimal(0), Decimal(14550))
    Decimal('60.625')
    """
    on_neutral = [load for load in loads if not stands_between_lines(load) and load.kind != "dryer"]
    by_leg = {leg: [drawn(load, share) for load in on_neutral if load.leg == leg] for leg in ("A", "B")}
    by_leg["A"] += [drawn(load, share) for load in on_neutral if load.leg == "both"]
    motors = [
        (drawn(load, share) if load.leg else share(load) / LINE_TO_LINE) / load.count
        for load in on_neutral
        if load.kind in MOTORS
    ]
    amperes = balanced / LINE_TO_LINE + paired(by_leg["A"], by_leg["B"]) + max(motors, default=Decimal(0)) / 4
    return min(amperes, _FULL_TO) + max(amperes - _FULL_TO, Decimal(0)) * _SEVENTY
