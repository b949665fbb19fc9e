"""How far apart the fasteners of a deck ledger may be, and what load each one then carries."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Literal, get_args

from witnessmark.gauges.answer import Also, Answer, Source, Step, Table
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.building.asking import inches
from witnessmark.gauges.building.checks import Check, held_against, plain, said
from witnessmark.gauges.building.editions import Built, Edition, held_to, irc
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["COLUMNS", "SPACINGS", "deck_ledger", "fastener_load", "ledger_spacing"]

#: Joist spans in feet that head the columns of the table.
COLUMNS = (6, 8, 10, 12, 14, 16, 18)
Fastener = Literal[
    "1/2 in lag screw",
    "1/2 in bolt",
    "1/2 in bolt with 1/2 in stacked washers",
    "1/2 in lag screw, 1 in engineered rim",
]
#: Greatest spacing in inches on centre, by fastener and column.
SPACINGS: dict[str, tuple[int, ...]] = {
    "1/2 in lag screw": (30, 23, 18, 15, 13, 11, 10),
    "1/2 in bolt": (36, 36, 34, 29, 24, 21, 19),
    "1/2 in bolt with 1/2 in stacked washers": (36, 36, 29, 24, 21, 18, 16),
    "1/2 in lag screw, 1 in engineered rim": (24, 18, 14, 12, 10, 9, 8),
}
_SINCE = 2009
_LOAD = Decimal(50)
_IN, _PSF = "[in_i]", "[lbf_av]/[sft_i]"
_REGISTER = Source(
    "Wisconsin Administrative Register 714A1", "2015", "Table 6, as IRC Table R507.9.1.3(1)", "seen in a copy"
)


def ledger_spacing(fastener: str, span_feet: Decimal) -> int | None:
    """Greatest spacing in inches by the next larger span column (never interpolated); None beyond 18 ft.

    >>> ledger_spacing("1/2 in lag screw", Decimal(13)), ledger_spacing("1/2 in bolt", Decimal("18.1"))
    (13, None)
    """
    for column, spacing in zip(COLUMNS, SPACINGS[fastener], strict=True):
        if span_feet <= column:
            return spacing
    return None


def fastener_load(span_feet: Decimal, spacing_inches: Decimal, pounds_per_square_foot: Decimal = _LOAD) -> Decimal:
    """Load in lb on one fastener: half the joist span (ft) times the load (psf) times the spacing (in).

    Fasteners are taken as sharing alike. Source: tributary area, by statics.

    >>> fastener_load(Decimal(12), Decimal(15))
    Decimal('375')
    """
    return span_feet / 2 * pounds_per_square_foot * spacing_inches / 12


@gauge(
    name="deck-ledger-fasteners",
    family="building",
    title="Spacing of the fasteners of a deck ledger",
    unit="[in_i]",
    gives="greatest spacing on centre by the table",
    sources=(
        _REGISTER,
        irc(
            "R502.2.2.1 (2009), R507.2 (2012, 2015), Table R507.9.1.3(1) (2018 and later)",
            "seen in a copy",
            "2009 and later",
        ),
    ),
    error="none in the table; it holds for 40 psf live and 10 psf dead load and a 2 in nominal band joist",
    never="that the ledger holds: rot, missing flashing, a hollow band or short screws undo any spacing",
    cautions=(
        "Nails alone do not hold a ledger; a ledger on brick or stone veneer is outside the table altogether.",
        "Half-inch bolts and lags only: the table says nothing of other screws, which have listings of their own.",
        "Do not load or shake a deck to test it.",
    ),
    example={"fastener": "1/2 in bolt", "joist_span": "12 ft", "spacing": "24 in", "edition": "2018"},
)
def deck_ledger(
    fastener: Annotated[Fastener, Asked("what fastens the ledger", example="1/2 in bolt")],
    joist_span: Annotated[
        Quantity,
        Asked(
            "span of the joists from the ledger to the beam",
            "[ft_i]",
            lowest="0",
            highest="18",
            least="0",
            how="from the face of the ledger to the middle of the beam, without the overhang",
            example="12 ft",
        ),
    ],
    spacing: Annotated[
        tuple[Quantity, ...],
        inches("spacings between neighbouring fasteners, on centre", how="tape along the ledger", example="24 in"),
    ] = (),
    load: Annotated[
        Quantity | None,
        Asked(
            "live and dead load together; 50 psf unless told",
            _PSF,
            lowest="10",
            highest="50",
            least="0",
            how="from the place's snow and live load; the table holds for 50 psf",
            example="50 psf",
        ),
    ] = None,
    *,
    edition: Edition = None,
    built: Built = None,
) -> Answer:
    """The greatest spacing of ledger fasteners by the table, and whether the spacing found keeps it.

    Rule:
        Table R507.9.1.3(1): the column of the next larger joist span, never interpolated; first in IRC 2009.
    Formula:
        load per fastener [lb] = span/2 [ft] * load [psf] * spacing [in] / 12

    >>> from witnessmark.units import parse_quantity as q
    >>> answer = deck_ledger("1/2 in lag screw", q("14 ft"), (q("16 in"),), edition=2018)
    >>> answer.value, answer["spacing_within"]
    (Decimal('13'), False)
    """
    held = held_to(edition, built)
    span = joist_span.value
    psf = _LOAD if load is None else load.value
    allowed = ledger_spacing(fastener, span)
    widest = max((one.value for one in spacing), default=None)
    if allowed is None:
        words = f"Joists of {said(span, '[ft_i]')} are longer than the table goes (18 ft): the ledger needs a design."
        answer = Answer(words=words, sources=(_REGISTER,), cautions=held.cautions)
    elif widest is None:
        words = f"{fastener}, joists {said(span, '[ft_i]')}: at most {said(Decimal(allowed), _IN)} apart."
        answer = Answer(value=Decimal(allowed), words=words, sources=(_REGISTER,), cautions=held.cautions)
    else:
        answer = held_against(
            held,
            lambda one: (
                ()
                if one < _SINCE
                else (
                    Check(
                        "spacing",
                        "widest spacing",
                        widest,
                        _IN,
                        "Table R507.9.1.3(1)",
                        highest=Decimal(allowed),
                        since=_SINCE,
                    ),
                )
            ),
            basis="seen in a copy",
            value=Decimal(allowed),
            lead=f"{fastener}, joists {said(span, '[ft_i]')}: at most {said(Decimal(allowed), _IN)} apart. ",
        )
    apart = widest if widest is not None else None if allowed is None else Decimal(allowed)
    steps = [Step("load on the ledger: half the span times the load", span / 2 * psf, "[lbf_av]/[ft_i]")]
    extra: tuple[Also, ...] = ()
    if apart is not None:
        each = fastener_load(span, apart, psf)
        steps.append(Step(f"on each fastener at {said(apart, _IN)}", plain(each), "[lbf_av]"))
        extra = (Also("load_per_fastener", f"load on each fastener at {said(apart, _IN)}", plain(each), "[lbf_av]"),)
    cautions = answer.cautions
    if psf > _LOAD:
        cautions = (*cautions, "The load is more than the table's 50 psf: its spacing does not hold here.")
    return Answer(
        value=answer.value,
        unit=_IN if answer.value is not None else "",
        words=answer.words,
        verdict=answer.verdict,
        sources=(_REGISTER, *(one for one in answer.sources if one != _REGISTER)),
        cautions=cautions,
        also=(
            *(answer.also or (Also("required_when", "table stands since", "IRC 2009 and later"),)),
            Also("first_table", "first edition with the table", "IRC 2009"),
            *extra,
        ),
        steps=tuple(steps),
        table=Table(
            (("fastener", ""), *((f"to {one} ft", _IN) for one in COLUMNS)),
            tuple((one, *(Decimal(cell) for cell in SPACINGS[one])) for one in get_args(Fastener)),
        ),
    )
