"""Whether every id that a row names is there, and whether its own values agree with each other."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from decimal import Decimal

from witnessmark import units
from witnessmark.packs import messages
from witnessmark.packs.faults import Report
from witnessmark.packs.model import (
    Criterion,
    Duty,
    Frame,
    Kind,
    Life,
    Measure,
    Packs,
    Procedure,
    Rulebook,
    Subject,
    Translation,
)  # fmt: skip
from witnessmark.packs.terms import TABLES
from witnessmark.problems import Problem

__all__ = ["check_rows"]


def _gaps(text: str) -> frozenset[str]:
    """The gaps of a sentence: the names in braces."""
    return frozenset(re.findall(r"\{([a-z_]+)\}", text))


class _Checker:
    """Holds the packs and the problems while rows are looked over."""

    def __init__(self, packs: Packs) -> None:
        self.packs = packs
        self.report = Report()

    def named(self, ids: Iterable[str | None], table: Mapping[str, object], what: str, where: str) -> None:
        """Every id is one of *table*."""
        for given in ids:
            if given is not None and given not in table:
                near = self.report.nearest(given, table)
                self.report(messages.UNKNOWN_REFERENCE, where, f"no {what} {given!r}{near}")

    def part(self, part: str | None, kinds: Iterable[str], where: str) -> None:
        """The part is one of at least one of the kinds."""
        if part is None:
            return
        parts = {p.id for k in kinds if k in self.packs.kinds for p in self.packs.kinds[k].parts}
        if part not in parts:
            near = self.report.nearest(part, parts)
            self.report(messages.UNKNOWN_REFERENCE, where, f"no part {part!r} of {', '.join(kinds) or 'no kind'}{near}")

    def convertible(self, codes: Iterable[str], unit: str, where: str) -> None:
        """Every unit measures the same kind of quantity as *unit*; a slope may be told as an angle."""
        for code in codes:
            slope = units.dimension(code) == "plane angle" and units.dimension(unit) == "ratio"
            if units.dimension(code) != units.dimension(unit) and not slope:
                self.report(messages.WRONG_DIMENSION, where, f"{code} is {units.dimension(code)}, not {unit}")

    def ordered(self, low: str | None, high: str | None, where: str, words: str) -> None:
        """*low* is below *high* where both are given."""
        if low is not None and high is not None and Decimal(low) >= Decimal(high):
            self.report(messages.CONTRADICTS, where, f"{words}: {low} is not below {high}")

    def kind(self, row: Kind, where: str) -> None:
        packs = self.packs
        self.named(row.sorts, packs.sorts, "sort", where)
        self.named(row.expected, packs.sorts, "sort", where)
        self.named(row.describe, packs.attributes, "attribute", where)
        self.named(row.measures, packs.measures, "measure", where)
        self.named(row.cautions, packs.cautions, "caution", where)
        self.named(row.found_on, packs.kinds, "kind", where)
        ids = [p.id for p in row.parts]
        for twice in sorted({i for i in ids if ids.count(i) > 1}):
            self.report(messages.DUPLICATE_ID, f"{where}, part {twice}")

    def procedure(self, row: Procedure, where: str) -> None:
        self.named([row.kind], self.packs.kinds, "kind", where)
        self.part(row.part, [row.kind], where)
        self.named(row.cautions, self.packs.cautions, "caution", where)
        again = row.look_again
        if again is not None:
            self.named(again.kinds, self.packs.kinds, "kind", where)
            if not 0 <= again.earliest < again.latest:
                self.report(messages.CONTRADICTS, where, f"look_again: {again.earliest} is not before {again.latest}")
        if row.at_most is not None and row.at_most <= 0:
            self.report(messages.CONTRADICTS, where, f"at_most is {row.at_most} minutes")

    def measure(self, row: Measure, where: str) -> None:
        self.convertible(row.units, row.unit, where)
        self.ordered(row.low, row.high, where, "low and high")

    def criterion(self, row: Criterion, where: str) -> None:
        packs = self.packs
        self.named([row.measure], packs.measures, "measure", where)
        self.named(row.kinds, packs.kinds, "kind", where)
        self.part(row.part, row.kinds, where)
        self.named([row.condition], packs.conditions, "condition", where)
        self.named(row.where, packs.sorts, "sort", where)
        self.named(row.cautions, packs.cautions, "caution", where)
        if row.measure in packs.measures:
            self.convertible([row.unit], packs.measures[row.measure].unit, where)
        if (row.op == "between") != (row.high is not None):
            self.report(messages.CONTRADICTS, where, "high belongs to the op between, and to no other")
        self.ordered(row.value, row.high, where, "value and high")

    def subject(self, row: Subject, where: str) -> None:
        packs = self.packs
        self.named(row.kinds, packs.kinds, "kind", where)
        self.part(row.part, row.kinds, where)
        self.named(row.attributes, packs.attributes, "attribute", where)
        self.named(row.measures, packs.measures, "measure", where)
        self.named(row.sorts, packs.sorts, "sort", where)

    def life(self, row: Life, where: str) -> None:
        self.named(row.kinds, self.packs.kinds, "kind", where)
        self.part(row.part, row.kinds, where)
        if Decimal(row.low) > Decimal(row.high):
            self.report(messages.CONTRADICTS, where, f"low {row.low} is above high {row.high}")

    def translation(self, row: Translation, where: str) -> None:
        rows = getattr(self.packs, TABLES[row.table][1])
        self.named([row.of], rows, row.table, where)
        needed = ("name", "observation", "implication", "if_left", "do") if row.table == "condition" else ()
        empty = [field for field in needed if not getattr(row, field)]
        if empty or not (row.name or row.words):
            self.report(messages.EMPTY_TEXT, where, ", ".join(empty) or "name or words")

    def frames(self, frames: Iterable[Frame]) -> None:
        first: dict[str, Frame] = {}
        for row in frames:
            other = first.setdefault(row.use, row)
            if _gaps(row.text) != _gaps(other.text):
                told = (
                    f"{', '.join(sorted(_gaps(row.text)))} here; {', '.join(sorted(_gaps(other.text)))} in {other.id}"
                )
                self.report(messages.FRAMES_DIFFER, f"{row.provenance.file}: [[frame]] {row.id}", told)

    def duty(self, row: Duty, where: str) -> None:
        for number, subject in enumerate(row.subjects, 1):
            self.subject(subject, f"{where}, subject {number}")
        self.named((*row.reasons, *row.method_reasons), self.packs.reasons, "reason", where)
        self.named([row.refer_to or None], self.packs.trades, "trade", where)
        if row.tracked and not row.subjects:
            self.report(messages.CONTRADICTS, where, "tracked, but without subjects")

    def rulebook(self, row: Rulebook, where: str) -> None:
        self.named(row.reasons, self.packs.reasons, "reason", where)
        self.named(row.departure.reasons if row.departure else (), self.packs.reasons, "reason", where)
        if row.effective_to is not None and row.effective_to <= row.effective_from:
            self.report(messages.CONTRADICTS, where, "effective_to is not after effective_from")
        for item in row.form_items:
            at = f"{where}, [[form_item]] {item.group}, {item.number}"
            self.named(item.kinds, self.packs.kinds, "kind", at)
            if not item.kinds and not item.systems:
                self.report(messages.MISSING_KEY, at, "kinds and systems name nothing")
        if row.form_items and row.form is None:
            self.report(messages.MISSING_KEY, where, "[form] is missing beside [[form_item]]")
        for duty in row.duties:
            self.duty(duty, f"{duty.provenance.file}: [[duty]] {duty.id}")


def check_rows(packs: Packs) -> list[Problem]:
    """The references and contradictions in *packs*, in the order of its tables."""
    check = _Checker(packs)
    for kind in packs.kinds.values():
        check.kind(kind, f"{kind.provenance.file}: [[kind]] {kind.id}")
    for procedure in packs.procedures.values():
        check.procedure(procedure, f"{procedure.provenance.file}: [[procedure]] {procedure.id}")
    for row in packs.conditions.values():
        where = f"{row.provenance.file}: [[condition]] {row.id}"
        if not row.kinds:
            check.report(messages.MISSING_KEY, where, "kinds names no kind")
        check.named(row.kinds, packs.kinds, "kind", where)
        check.part(row.part, row.kinds, where)
        check.named([row.by], packs.trades, "trade", where)
        check.named(row.cautions, packs.cautions, "caution", where)
    for measure in packs.measures.values():
        check.measure(measure, f"{measure.provenance.file}: [[measure]] {measure.id}")
    for criterion in packs.criteria.values():
        check.criterion(criterion, f"{criterion.provenance.file}: [[criterion]] {criterion.id}")
    for era in packs.eras.values():
        where = f"{era.provenance.file}: [[era]] {era.id}"
        check.named(era.kinds, packs.kinds, "kind", where)
        check.named(era.cautions, packs.cautions, "caution", where)
        if era.built_from is not None and era.built_to is not None and era.built_from > era.built_to:
            check.report(messages.CONTRADICTS, where, f"built_from {era.built_from} is after built_to {era.built_to}")
    for life in packs.lives.values():
        check.life(life, f"{life.provenance.file}: [[life]] {life.id}")
    check.frames(packs.frames.values())
    for translation in packs.translations.values():
        check.translation(translation, f"{translation.provenance.file}: [[translation]] {translation.id}")
    for rulebook in packs.rulebooks.values():
        check.rulebook(rulebook, f"{rulebook.provenance.file}: [rulebook] {rulebook.id}")
    return check.report.problems
