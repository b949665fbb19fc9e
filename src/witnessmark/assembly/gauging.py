"""A criterion of the packs as the limit that a gauge's answer is held against."""

from __future__ import annotations

import difflib
from decimal import Decimal

from witnessmark.assembly.messages import NO_SUCH_PACK_ID
from witnessmark.assembly.packs import read_packs
from witnessmark.gauges import Limit, Source
from witnessmark.judging.limits import limit_of
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["limit_from_pack"]


def limit_from_pack(criterion: str) -> Limit:
    """The limit that a criterion of the packs states, with its document, edition and section.

    Refuses a criterion that no pack has (WM913).
    """
    criteria = read_packs().criteria
    if criterion not in criteria:
        near = difflib.get_close_matches(criterion, criteria, n=3)
        raise Refusal(NO_SUCH_PACK_ID.at(repr(criterion), f"did you mean {' or '.join(near)}?" if near else ""))
    row = criteria[criterion]
    first = Quantity(Decimal(row.value), row.unit)
    last = None if row.high is None else Quantity(Decimal(row.high), row.unit)
    tag = row.provenance.tag
    source = Source(row.document, row.edition, row.section, "seen" if tag == "seen" else "memory")
    return Limit(
        source,
        lowest=first if row.op in {">", ">=", "between"} else None,
        highest=first if row.op in {"<", "<="} else last,
        words=limit_of(row),
        strict=row.op in {"<", ">"},
    )
