"""How far deck joists of a species, size and spacing may span, and how far they may hang over."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Source, Table
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.building.asking import feet, inches
from witnessmark.gauges.building.checks import Check, held_against, plain
from witnessmark.gauges.building.editions import Built, Edition, held_to
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["SPANS", "deck_joist_span", "feet_and_inches", "joist_span"]

_SPACINGS = (12, 16, 24)
Species = Literal["southern pine", "Douglas fir-larch, hem-fir or spruce-pine-fir", "cedar or redwood"]
Size = Literal["2x6", "2x8", "2x10", "2x12"]
#: Spans in inches at 12, 16 and 24 in on centre: No. 2, wet service, 40 + 10 psf, L/360.
SPANS: dict[tuple[str, str], tuple[int, int, int]] = {
    ("southern pine", "2x6"): (119, 108, 91),
    ("southern pine", "2x8"): (157, 142, 116),
    ("southern pine", "2x10"): (194, 168, 137),
    ("southern pine", "2x12"): (216, 198, 162),
    ("Douglas fir-larch, hem-fir or spruce-pine-fir", "2x6"): (114, 104, 86),
    ("Douglas fir-larch, hem-fir or spruce-pine-fir", "2x8"): (150, 133, 109),
    ("Douglas fir-larch, hem-fir or spruce-pine-fir", "2x10"): (188, 163, 133),
    ("Douglas fir-larch, hem-fir or spruce-pine-fir", "2x12"): (216, 189, 154),
    ("cedar or redwood", "2x6"): (106, 96, 84),
    ("cedar or redwood", "2x8"): (140, 127, 104),
    ("cedar or redwood", "2x10"): (179, 156, 127),
    ("cedar or redwood", "2x12"): (209, 181, 148),
}
#: Rows and cells that were only recalled; the others were read in a copy.
_RECALLED = frozenset({
    ("southern pine", "2x10"), ("Douglas fir-larch, hem-fir or spruce-pine-fir", "2x6"),
    ("Douglas fir-larch, hem-fir or spruce-pine-fir", "2x12"), ("cedar or redwood", "2x6"),
    ("cedar or redwood", "2x10"), ("cedar or redwood", "2x12"),
})  # fmt: skip
_SINCE = 2015
_READ = Source(
    "City deck guide on the 2015 IRC (Everett WA)",
    "2015",
    "joist spans, No. 2, wet service, 40 + 10 psf",
    "seen in a copy",
)
_MEMORY = Source("IRC", "2015", "Table R507.5 (R507.6 from 2018)", "memory")
_IN = "[in_i]"


def feet_and_inches(value: Decimal | int) -> str:
    """A length in inches as feet and inches, in words.

    >>> feet_and_inches(142)
    '11 ft 10 in'
    """
    whole, rest = divmod(Decimal(value), 12)
    return f"{whole.normalize():f} ft {rest.normalize():f} in" if whole else f"{rest.normalize():f} in"


def joist_span(species: str, size: str, spacing: Decimal) -> int | None:
    """Greatest span in inches by the next larger spacing column (in on centre), never interpolated; None beyond 24 in.

    >>> joist_span("southern pine", "2x8", Decimal(16)), joist_span("southern pine", "2x8", Decimal(25))
    (142, None)
    """
    for column, span in zip(_SPACINGS, SPANS[species, size], strict=True):
        if spacing <= column:
            return span
    return None


@gauge(
    name="deck-joist-span",
    family="building",
    title="Span and overhang of deck joists",
    unit="[ft_i]",
    gives="greatest span by the table",
    sources=(_READ, _MEMORY),
    error="none in the table; it holds for No. 2 grade, wet service, 40 psf live and 10 psf dead load, L/360",
    never="that the deck carries its load: rot, notches and splits undo any span",
    cautions=(
        "The grade stamp decides the species; without one the weakest group is the careful choice.",
        "Snow over 40 psf, a hot tub or heavy planters are outside the table.",
    ),
    example={"species": "southern pine", "size": "2x8", "spacing": "16 in", "span": "11 ft 6 in", "edition": "2018"},
)
def deck_joist_span(
    species: Annotated[Species, Asked("species group, from the grade stamp", example="southern pine")],
    size: Annotated[Size, Asked("nominal size", example="2x8")],
    spacing: Annotated[
        Quantity,
        Asked(
            "spacing of the joists on centre",
            _IN,
            lowest="8",
            highest="24",
            least="1",
            most="120",
            how="tape over several joists",
            example="16 in",
        ),
    ],
    span: Annotated[Quantity | None, inches("span from ledger to beam, or between beams", example="11 ft 6 in")] = None,
    overhang: Annotated[Quantity | None, feet("joists beyond the beam", most="20", example="2 ft")] = None,
    *,
    edition: Edition = None,
    built: Built = None,
) -> Answer:
    """The greatest span of deck joists by the table, and whether span and overhang found keep it.

    Rule:
        table by species, size and spacing, the next larger spacing column; overhang at most a quarter of the span;
        in the model code from IRC 2015

    >>> from witnessmark.units import parse_quantity as q
    >>> deck_joist_span("southern pine", "2x8", q("16 in"), q("12 ft"), edition=2018)["span_within"]
    False
    """
    held = held_to(edition, built)
    source = _MEMORY if (species, size) in _RECALLED else _READ
    most = joist_span(species, size, spacing.value)
    table = Table(
        (("species", ""), ("size", ""), *((f"{one} in on centre", "[ft_i]") for one in _SPACINGS)),
        tuple((*key, *(plain(Decimal(cell) / 12) for cell in cells)) for key, cells in SPANS.items()),
    )
    if most is None:
        words = f"Joists {spacing.value} in apart are wider than the table goes (24 in): it gives no span."
        return Answer(words=words, sources=(source,), cautions=held.cautions, table=table)
    lead = f"{species}, {size}: at most {feet_and_inches(most)}. "
    value = plain(Decimal(most) / 12)
    first = Also("first_table", "first edition with the table", "IRC 2015")
    if span is None:
        return Answer(
            value=value,
            words=lead.strip(),
            sources=(source,),
            cautions=held.cautions,
            also=(first, Also("required_when", "table stands since", "IRC 2015 and later")),
            table=table,
        )

    def checks(edition: int) -> tuple[Check, ...]:
        if edition < _SINCE:
            return ()
        found = [Check("span", "span", span.value, _IN, "Table R507.6", highest=Decimal(most), since=_SINCE)]
        if overhang is not None:
            over = overhang.value * 12
            found.append(Check("overhang", "overhang", over, _IN, "Table R507.6", highest=span.value / 4, since=_SINCE))
        return tuple(found)

    answer = held_against(held, checks, basis=source.basis, value=value, unit="[ft_i]", lead=lead, also=(first,))
    return Answer(
        value=answer.value,
        words=answer.words,
        verdict=answer.verdict,
        sources=(source, *answer.sources),
        cautions=answer.cautions,
        also=answer.also,
        table=table,
    )
