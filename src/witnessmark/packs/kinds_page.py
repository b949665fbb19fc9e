"""What the packs know of each kind, as a table for people: nothing about a kind is missing without being seen."""

from __future__ import annotations

from collections import Counter

from witnessmark.packs.model import Packs
from witnessmark.packs.terms import SYSTEMS

__all__ = ["counts_by_kind", "kinds_page"]

_HEAD = """# What is known of each kind

Made from the packs. Each number counts rows: ways to operate it, adverse conditions, limits for readings, rows of service
lives, and duties that name it, by law.
"""


def counts_by_kind(packs: Packs) -> dict[str, dict[str, int]]:
    """For each kind, how many procedures, conditions, criteria, lives and (by rulebook) duties name it."""
    found: dict[str, Counter[str]] = {kind: Counter() for kind in packs.kinds}
    for procedure in packs.procedures.values():
        found[procedure.kind]["procedures"] += 1
    named: dict[str, list[tuple[str, ...]]] = {
        "conditions": [row.kinds for row in packs.conditions.values()],
        "criteria": [row.kinds for row in packs.criteria.values()],
        "lives": [row.kinds for row in packs.lives.values()],
    }
    for name, rows in named.items():
        for kinds in rows:
            for kind_id in kinds:
                found[kind_id][name] += 1
    for kind in packs.kinds.values():
        found[kind.id]["criteria"] += sum(
            1 for c in packs.criteria.values() if not c.kinds and c.measure in kind.measures
        )
    for book in packs.rulebooks.values():
        for duty in book.duties:
            for kind_id in {k for subject in duty.subjects for k in subject.kinds}:
                found[kind_id][book.id] += 1
    return {kind: dict(counts) for kind, counts in found.items()}


def kinds_page(packs: Packs) -> str:
    """The Markdown page; the same packs give the same page."""
    counts = counts_by_kind(packs)
    columns = ["procedures", "conditions", "criteria", "lives", *packs.rulebooks]
    lines = [_HEAD]
    for system, words in SYSTEMS.items():
        kinds = [kind for kind in packs.kinds.values() if kind.system == system]
        if not kinds:
            continue
        lines += [f"## {words}", "", f"| kind | {' | '.join(columns)} |", f"|---|{'---|' * len(columns)}"]
        for kind in kinds:
            row = counts[kind.id]
            lines.append(f"| {kind.name} | {' | '.join(str(row.get(c) or '') for c in columns)} |")
        lines.append("")
    return "\n".join(lines)
