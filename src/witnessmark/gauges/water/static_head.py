"""How pressure changes with height in standing water."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Source
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity, convert, say

__all__ = ["head_psi", "static_head"]


def head_psi(height: Decimal) -> Decimal:
    """Pressure in psi of a standing column of water *height* ft high (conventional water, 1000 kg/m3).

    >>> round(head_psi(Decimal(10)), 3)
    Decimal('4.335')
    """
    metres = convert(Quantity(height, "[ft_i]"), "m").value
    return convert(Quantity(metres, "m[H2O]"), "[psi]").value


@gauge(
    name="static-head",
    family="water",
    title="Static pressure at another height",
    unit="[psi]",
    gives="pressure at rest at the other height; below nought: the water does not stand so high",
    sources=(Source("conventional water column", "NIST SP 811, 2008", "Appendix B", "calculated"),),
    error="under half a percent: hot water is up to 4 % lighter, which changes the column's part of the pressure only",
    never="how much flows there, or that fixtures on that floor will serve",
    example={"pressure": "60psi", "rise": "20ft"},
)
def static_head(
    pressure: Annotated[
        Quantity,
        Asked(
            "static pressure where it was read",
            "[psi]",
            lowest="0",
            highest="200",
            least="0",
            most="1000",
            how="with all water off, and note the height of the gauge itself",
            example="60psi",
        ),
    ],
    rise: Annotated[
        Quantity,
        Asked(
            "height of the other place above the gauge; below it: a negative height",
            "[ft_i]",
            lowest="-500",
            highest="500",
            least="-3000",
            most="3000",
            how="count about 9 or 10 ft a storey, or measure",
            example="20ft",
        ),
    ],
) -> Answer:
    """Static pressure at another height, from the pressure read and the rise to that place.

    Formula:
        p2 = p1 - 0.4335 psi/ft * rise

    Only for water at rest: running water loses more on the way.

    >>> from witnessmark.gauges import evaluate
    >>> round(evaluate("static-head", {"pressure": "60psi", "rise": "10ft"}).value, 3)
    Decimal('55.665')
    """
    change = head_psi(rise.value)
    value = pressure.value - change
    if value < 0:
        words = f"Water at {say(pressure)} does not stand {say(rise)} higher."
    else:
        words = f"At rest {value:.1f} psi stands there: the height makes {-change:+.1f} psi."
    return Answer(
        value=round(value, 6),
        words=words,
        also=(
            Also("change", "change of pressure by height", round(-change, 6), "[psi]"),
            Also("highest", "height above the gauge at which the pressure is nought",
                 round(pressure.value / head_psi(Decimal(1)), 4), "[ft_i]"),
        ),
    )  # fmt: skip
