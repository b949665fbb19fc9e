"""What a report says, as plain data: every part of the letter before it becomes a page.

Statements point at journal entries by id (``rests_on``); each id that is cited, and whatever else was recorded on
site, stands once in ``Letter.evidence`` with its number, time and device. Times are given twice: ``at`` as recorded (RFC 3339) and ``clock`` as printed.

Long because every part of the letter stands here once, as rows of fields, so that a reader of ``report.json`` finds them
in one place.
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from witnessmark.problems import Problem

__all__ = [
    "Answered", "Description", "Drawing", "DutyLine", "Edition", "Evidence", "FiledMedium", "Finding", "FormLine", "Glance", "ItemWord", "LawSummary",
    "LawText", "LeftOut", "Letter", "NotAsked", "OpenEnd", "Opening", "Operation", "Outlook", "Picture", "PlaceFindings", "PrescribedForm",
    "ReadingLine", "Seal", "StakeGroup", "Statement", "Step", "SubjectLine", "SystemDuties", "SystemGlance", "Term",
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class Statement:
    """A sentence or short paragraph and the entries it rests on; none when it rests on the facts of the job."""

    text: str
    rests_on: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Opening:
    """Who, where, when, for whom, under which law, in what weather; ``paragraphs`` say it in sentences."""

    address: str
    town: str
    client: str
    inspector: str
    licence: str
    firm: str
    visited: str
    visited_on: str
    issued: str
    issued_at: str
    law: str
    paragraphs: tuple[Statement, ...]


@dataclass(frozen=True, slots=True)
class OpenEnd:
    """Something still open: what, what closes it, and how sure the duty behind it is."""

    sort: str
    words: str
    next: str
    rests_on: tuple[str, ...]
    note: str = ""


@dataclass(frozen=True, slots=True)
class Evidence:
    """One journal entry: the letter cites it, or it was recorded on site and no part of the letter needed it.

    Attributes:
        entry: id of the entry.
        number: its number in this letter, by time.
        act: the act recorded.
        words: what it says, as a sentence.
        place, component: names, empty when it has none.
        at, clock: when it happened, as recorded and as printed.
        device, by: on which device and by whom it was recorded.
        how: how it came about (tapped in, said aloud, from a photo …).
        quoted: the words it rests on, as recognised.
        changes: what was amended later, when and why.
        standing: empty when the entry counts; else why it does not.
        pictures: numbers of the pictures that belong to it.
        limits: for a reading, the limits it was held against.
    """

    entry: str
    number: int
    act: str
    words: str
    place: str
    component: str
    at: str
    clock: str
    device: str
    by: str
    how: str
    quoted: str = ""
    changes: tuple[str, ...] = ()
    standing: str = ""
    pictures: tuple[int, ...] = ()
    limits: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Finding:
    """What the client must know, in four parts, with stake and urgency also as one sentence."""

    entry: str
    number: int
    title: str
    seen: str
    why: str
    if_left: str
    do: str
    by: str
    direct: str
    stake: str
    urgency: str
    sentence: str
    place: str
    component: str
    recorded: str
    rests_on: tuple[str, ...]
    pictures: tuple[int, ...] = ()
    pictures_elsewhere: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class StakeGroup:
    """Findings that put the same thing at stake, most urgent first."""

    stake: str
    heading: str
    findings: tuple[Finding, ...]


@dataclass(frozen=True, slots=True)
class PlaceFindings:
    """The numbers of the findings of one place, or of one system (``place`` is then its heading), in the letter's order."""

    place: str
    findings: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Description:
    """What is said of one component: ``says`` pairs an attribute with its value."""

    component: str
    place: str
    says: tuple[str, ...]
    rests_on: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class SystemGlance:
    """The descriptions of one system of the house."""

    system: str
    heading: str
    descriptions: tuple[Description, ...]


@dataclass(frozen=True, slots=True)
class Glance:
    """The house at a glance: facts of the job, where to turn things off, and the systems described."""

    facts: tuple[tuple[str, str], ...]
    shutoffs: tuple[Description, ...]
    shutoff_pictures: tuple[int, ...]
    systems: tuple[SystemGlance, ...]


@dataclass(frozen=True, slots=True)
class SubjectLine:
    """One subject of a duty: how it stands, in which ways it was looked at, and by which entries."""

    words: str
    status: str
    how: str
    rests_on: tuple[str, ...]
    why: str = ""


@dataclass(frozen=True, slots=True)
class DutyLine:
    """One duty of the law: section, words, how it stands, by what, and how sure its text is."""

    duty: str
    section: str
    words: str
    status: str
    says: str
    subjects: tuple[SubjectLine, ...]
    note: str = ""


@dataclass(frozen=True, slots=True)
class NotAsked:
    """What the law asks only of some houses and not of this one, by the reason why not."""

    why: str
    words: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class SystemDuties:
    """Duties of one system, in the law's own order."""

    system: str
    heading: str
    duties: tuple[DutyLine, ...]


@dataclass(frozen=True, slots=True)
class LawText:
    """A text that the law wants in this report, because of ``why``: word for word (``verbatim``) or in substance.

    ``min_pt`` is the least size of type in points, 0 where the law names none; ``note`` how sure its words are.
    """

    section: str
    text: str
    verbatim: bool
    min_pt: int
    why: str
    note: str = ""


@dataclass(frozen=True, slots=True)
class LawSummary:
    """The summary a law asks for: ``statement`` opens it, ``findings`` are the numbers of those that belong in it."""

    required: bool
    statement: str
    words: str
    findings: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class FormLine:
    """One item of a prescribed form: its group, number and heading there, the law's marks, what is told, and its findings.

    ``marks`` and ``codes`` belong together; none where the record says nothing of the item. ``findings`` are numbers.
    """

    group: str
    number: str
    item: str
    marks: tuple[str, ...]
    codes: tuple[str, ...]
    says: tuple[Statement, ...]
    findings: tuple[int, ...]
    rests_on: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class PrescribedForm:
    """The account in the order of the form that a law prescribes: its name, where the law says so, what is left open.

    ``note`` says how sure we are of its order; ``columns`` are the law's marks, each with its code.
    """

    name: str
    section: str
    words: str
    note: str
    columns: tuple[tuple[str, str], ...]
    lines: tuple[FormLine, ...]

    @property
    def groups(self) -> dict[str, tuple[FormLine, ...]]:
        """The lines of each group, in the order of the form."""
        names = dict.fromkeys(line.group for line in self.lines)
        return {name: tuple(line for line in self.lines if line.group == name) for name in names}


@dataclass(frozen=True, slots=True)
class ItemWord:
    """One component under the law's own word for its state, with the law's code where it has one."""

    system: str
    heading: str
    item: str
    place: str
    word: str
    code: str
    rests_on: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class LeftOut:
    """Something left out, held against the law: the reason, whether the law knows it, and the notice still owed."""

    what: str
    reason: str
    listed: bool
    owed: str
    rests_on: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Outlook:
    """How long a part may go on, by one source: its age, and the years the source gives, never one year.

    ``low`` and ``high`` are ages in years; ``high`` None where the source names no end.
    """

    component: str
    place: str
    age: int
    low: int
    high: int | None
    says: str
    source: str
    rests_on: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Answered:
    """A finding that was looked at again: repaired, not repaired or cannot verify, by what evidence, pictures of both."""

    finding: int
    title: str
    place: str
    answer: str
    says: str
    clock: str
    rests_on: tuple[str, ...]
    before: tuple[int, ...] = ()
    after: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class Edition:
    """What a later edition of an issued report changes against the one before, and why."""

    number: int
    issued: str
    why: str
    changes: tuple[Statement, ...]


@dataclass(frozen=True, slots=True)
class Step:
    """One moment in the story of something that was run."""

    clock: str
    words: str
    entry: str


@dataclass(frozen=True, slots=True)
class Operation:
    """Something that was run: what, where, and each later moment until it was as found again."""

    what: str
    place: str
    steps: tuple[Step, ...]
    outcome: str
    open: bool = False


@dataclass(frozen=True, slots=True)
class ReadingLine:
    """One measurement: what was read, where, with what, and the limits it was held against."""

    entry: str
    clock: str
    place: str
    subject: str
    measure: str
    value: str
    spot: str
    instrument: str
    limits: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Picture:
    """A picture that can be shown. ``path`` is where the displayable file lies; it is never printed."""

    number: int
    sha256: str
    name: str
    sort: str
    caption: str
    alt: str
    place: str
    at: str
    clock: str
    device: str
    entry: str
    path: Path


@dataclass(frozen=True, slots=True)
class FiledMedium:
    """A file of the record that cannot be shown on a page, and why."""

    name: str
    sort: str
    words: str
    sha256: str
    clock: str
    device: str
    entry: str
    why: str


@dataclass(frozen=True, slots=True)
class Drawing:
    """A drawing made from rows of the letter: SVG, what it says in words, and where it stands.

    ``part`` is an anchor of the letter (``started``, ``outlook``, ``readings``), or the entry of the reading it is beside.
    """

    name: str
    part: str
    svg: str
    width: int
    height: int
    says: str
    caption: str = ""


@dataclass(frozen=True, slots=True)
class Term:
    """A word as the law means it."""

    term: str
    words: str
    section: str
    note: str = ""


@dataclass(frozen=True, slots=True)
class Seal:
    """How the record was closed, and how to check it. ``root`` empty: not sealed; ``replaces`` for a later edition."""

    edition: int
    replaces: str
    root: str
    key: str
    signature: str
    facts: str
    report: str
    heads: tuple[tuple[str, int, str], ...]
    packs: tuple[tuple[str, str, str], ...]
    checked: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Letter:
    """The whole report.

    ``draft`` says that the report is not issued (empty once it is sealed and nothing blocks it); ``invented`` that
    house, people and pictures are made up. ``seal``, ``drawings`` and ``problems`` stay out of ``report.json``, so that its hash can be sealed.
    """

    job: str
    title: str
    language: str
    invented: str
    draft: str
    opening: Opening
    open_ends: tuple[OpenEnd, ...]
    editions: tuple[Edition, ...]
    law_texts: tuple[LawText, ...]
    law_summary: LawSummary | None
    answered: tuple[Answered, ...]
    summary: str
    stakes: tuple[StakeGroup, ...]
    glance: Glance
    places: tuple[PlaceFindings, ...]
    systems: tuple[PlaceFindings, ...]
    law: tuple[str, ...]
    form: PrescribedForm | None
    items: tuple[ItemWord, ...]
    observed: tuple[Statement, ...]
    duties: tuple[SystemDuties, ...]
    not_asked: tuple[NotAsked, ...]
    beyond_visit: tuple[DutyLine, ...]
    not_inspected: tuple[Statement, ...]
    left_out: tuple[LeftOut, ...]
    not_required: tuple[DutyLine, ...]
    doubts: tuple[Statement, ...]
    operations: tuple[Operation, ...]
    as_found: tuple[Statement, ...]
    readings: tuple[ReadingLine, ...]
    pictures: tuple[Picture, ...]
    filed: tuple[FiledMedium, ...]
    outlook: tuple[Outlook, ...]
    scope: tuple[str, ...]
    cautions: tuple[str, ...]
    terms: tuple[Term, ...]
    evidence: tuple[Evidence, ...]
    deliveries: tuple[Statement, ...]
    seal: Seal
    drawings: tuple[Drawing, ...] = ()
    problems: tuple[Problem, ...] = ()

    @property
    def findings(self) -> tuple[Finding, ...]:
        """Every finding, in the order of the letter."""
        return tuple(finding for group in self.stakes for finding in group.findings)

    @property
    def numbers(self) -> dict[str, int]:
        """The number of each cited entry, by entry id."""
        return {row.entry: row.number for row in self.evidence}
