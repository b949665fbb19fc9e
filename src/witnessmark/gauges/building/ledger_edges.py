"""Whether the fasteners of a deck ledger keep their distances from edges, ends and each other's row."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Answer
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.building.asking import inches
from witnessmark.gauges.building.checks import Check, held_against
from witnessmark.gauges.building.editions import Built, Edition, held_to, irc
from witnessmark.gauges.building.messages import NEEDED_HERE
from witnessmark.gauges.gauge import gauge
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["deck_ledger_edges"]

_SINCE = 2012
_PLACE = "Table R507.9.1.3(2)"
_IN = "[in_i]"
#: Top and bottom edge distance in inches.
_EDGES = {"ledger": (Decimal(2), Decimal("0.75")), "band joist": (Decimal("0.75"), Decimal(2))}
_END_LEAST, _END_MOST = Decimal(2), Decimal(5)
_ROW_LEAST, _ROW_MOST = Decimal("1.625"), Decimal(5)


@gauge(
    name="deck-ledger-edges",
    family="building",
    title="Edge distances of the fasteners of a deck ledger",
    unit="[in_i]",
    gives="smallest of the distances given",
    sources=(
        irc("Table R507.2.1 (2012, 2015), Table R507.9.1.3(2) (2018 and later)", "seen in a copy", "2012 and later"),
    ),
    error="a tape reads to 1/16 in; measure from the middle of the bolt",
    never="that the ledger holds",
    example={"top": "2 in", "bottom": "1 in", "end": "2 1/2 in", "rows": "3 in", "edition": "2018"},
)
def deck_ledger_edges(
    top: Annotated[Quantity | None, inches("middle of the fastener to the top edge", most="24", example="2 in")] = None,
    bottom: Annotated[
        Quantity | None, inches("middle of the fastener to the bottom edge", most="24", example="1 in")
    ] = None,
    end: Annotated[
        Quantity | None, inches("middle of the last fastener to the end of the board", most="120", example="2 1/2 in")
    ] = None,
    rows: Annotated[Quantity | None, inches("between the two staggered rows", most="24", example="3 in")] = None,
    *,
    member: Annotated[Literal["ledger", "band joist"], Asked("which board was measured")] = "ledger",
    edition: Edition = None,
    built: Built = None,
) -> Answer:
    """Whether ledger fasteners keep edge, end and row distances by an edition.

    Rule:
        ledger: top at least 2 in, bottom at least 3/4 in; band joist: top 3/4 in, bottom 2 in; ends 2 to 5 in; rows
        1 5/8 to 5 in apart and staggered; from IRC 2012

    >>> from witnessmark.units import parse_quantity as q
    >>> deck_ledger_edges(top=q("1 1/2 in"), edition=2018)["top_within"]
    False
    """
    given = [one.value for one in (top, bottom, end, rows) if one is not None]
    if not given:
        raise Refusal(NEEDED_HERE.at("deck-ledger-edges", "top, bottom, end or rows"))
    high, low = _EDGES[member]

    def checks(edition: int) -> tuple[Check, ...]:
        if edition < _SINCE:
            return ()
        limits = (
            ("top", "to the top edge", top, high, None),
            ("bottom", "to the bottom edge", bottom, low, None),
            ("end", "to the end", end, _END_LEAST, _END_MOST),
            ("rows", "between rows", rows, _ROW_LEAST, _ROW_MOST),
        )
        return tuple(
            Check(name, what, each.value, _IN, _PLACE, lowest=least, highest=most, since=_SINCE)
            for name, what, each, least, most in limits
            if each is not None
        )

    return held_against(held_to(edition, built), checks, basis="seen in a copy", value=min(given))
