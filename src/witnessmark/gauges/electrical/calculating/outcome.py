"""How the result of a dwelling calculation is told: amperes, service size, and the service found against it."""

from __future__ import annotations

from decimal import ROUND_HALF_UP, Decimal

from witnessmark.gauges.answer import Source, Verdict
from witnessmark.gauges.electrical.calculating.ampacity_tables import next_standard
from witnessmark.units import Quantity

__all__ = ["LEAST_SERVICE", "against_service", "service_for", "whole_amperes"]

#: Least rating in A of a service for one dwelling, NEC 230.79(C).
LEAST_SERVICE = 100


def whole_amperes(amperes: Decimal) -> Decimal:
    """Amperes to the nearest whole one; less than half is dropped. NEC 220.5(B).

    >>> whole_amperes(Decimal("77.5")), whole_amperes(Decimal("60.6"))
    (Decimal('78'), Decimal('61'))
    """
    return amperes.quantize(Decimal(1), ROUND_HALF_UP)


def service_for(amperes: Decimal, least: int = LEAST_SERVICE) -> int | None:
    """The smallest standard service in A for a calculated load; None beyond 800 A. NEC 230.79(C), 240.6(A).

    >>> service_for(Decimal("77.5")), service_for(Decimal("103.5"))
    (100, 110)
    """
    return next_standard(max(whole_amperes(amperes), Decimal(least)))


def against_service(amperes: Decimal, service: Quantity | None, source: Source) -> Verdict | None:
    """The calculated load held against the rating of the service found; None where none was given.

    >>> against_service(Decimal(120), Quantity(Decimal(100), "A"), Source("x", "", "", "memory")).outcome
    'beyond'
    """
    if service is None:
        return None
    load = whole_amperes(amperes)
    over = load > service.value
    words = (
        f"The calculated load of {load} A is {'more' if over else 'not more'} than the service of {service.value:f} A "
        "(informational)."
    )
    return Verdict("beyond" if over else "within", words, source)
