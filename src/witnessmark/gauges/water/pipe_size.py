"""What a water pipe measures inside, from what is printed on it."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Literal, get_args

from witnessmark.gauges.answer import Also, Answer
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.water.pipes import SIZES, Kind, standard

__all__ = ["pipe_inside_diameter"]

Nominal = Literal["1/2", "3/4", "1", "1-1/4"]
_SIZES = dict(zip(get_args(Nominal), (Decimal("0.5"), Decimal("0.75"), Decimal(1), Decimal("1.25")), strict=True))


@gauge(
    name="pipe-inside-diameter",
    family="water",
    title="Inside diameter of a water pipe by its name",
    unit="[in_i]",
    gives="inside diameter of new pipe",
    sources=tuple(standard(kind) for kind in SIZES),
    error="plastics: the mean of the wall's limits, about 0.01 in either way; copper and steel less",
    never="the bore of an old galvanised pipe, which rust narrows from within",
    cautions=("Fittings pushed inside the tube are narrower than the tube.",),
    example={"kind": "copper L", "size": "3/4"},
)
def pipe_inside_diameter(
    kind: Annotated[Kind, Asked("kind of pipe, as printed on it")],
    size: Annotated[Nominal, Asked("nominal size in inches, as printed on it")],
) -> Answer:
    """Inside diameter of new pipe from its kind and nominal size.

    Formula:
        inside = outside - 2 * wall, both from the pipe's standard

    The nominal size is a name, not a measure: 1/2 in PEX is 0.475 in inside, 1/2 in steel 0.622 in.

    >>> from witnessmark.gauges import evaluate
    >>> evaluate("pipe-inside-diameter", {"kind": "PEX", "size": "1/2"}).value
    Decimal('0.475')
    """
    pipe = SIZES[kind][_SIZES[size]]
    return Answer(
        value=pipe.inside,
        words=f"New {size} in {kind} measures {pipe.inside} in inside.",
        sources=(standard(kind),),
        also=(
            Also("outside", "outside diameter", pipe.outside, "[in_i]"),
            Also("wall", "wall", pipe.wall, "[in_i]"),
        ),
    )
