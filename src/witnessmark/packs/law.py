"""What a law asks, as frozen rows: duties with their subjects, words the law fixes, delivery, summary, departures."""

from __future__ import annotations

from dataclasses import dataclass

from witnessmark.packs.provenance_row import Provenance

__all__ = [
    "ANCHORS", "DAYS", "EXTENTS", "MEANINGS", "NEAR", "VERBS", "ConditionWord", "Definition", "Delivery", "Departure",
    "Duty", "FormItem", "LawForm", "Numeric", "Rulebook", "Subject", "Summary",
]  # fmt: skip

VERBS = (
    "inspect", "describe", "report", "report_def", "operate", "test", "enter", "probe", "verify", "advise",
    "state_method", "notreq", "define", "contract", "content", "deliver", "retain", "ethics",
)  # fmt: skip
#: How many of what a duty is about: every one, a sample, one in each room, on each side, in each habitable room, in
#: each place of the subject's sorts.
EXTENTS = ("all", "representative", "one_per_room", "one_per_side", "one_per_habitable_room", "one_per_place", "none")
#: What a subject can be limited to lie near to.
NEAR = ("plumbing",)
DAYS = ("calendar", "business")
#: From what a time of delivery is counted; ``agreed date`` is the date in the agreement, where it names one.
ANCHORS = ("completion", "payment", "later of payment and completion", "agreed date")
#: What a law's own word for the state of an item means to the record.
MEANINGS = ("inspected", "not inspected", "not present", "deficient", "seems deficient", "end of life")


@dataclass(frozen=True, slots=True)
class Definition:
    """A term as a law defines it, paraphrased."""

    term: str
    words: str
    section: str
    tag: str


@dataclass(frozen=True, slots=True)
class Numeric:
    """A number inside a duty (``18 in`` of headroom)."""

    quantity: str
    op: str
    value: str
    unit: str


@dataclass(frozen=True, slots=True)
class Subject:
    """One thing a duty is about; the duty is met when every subject is.

    A subject is met by an effective entry that the duty's verb accepts, on a component of one of ``kinds`` (and
    ``part``), stating one of ``attributes``, reading one of ``measures``, or in a place of one of ``sorts``. Empty
    fields do not restrict. ``optional``: asked only if such a component was listed in the house. ``near``: only those
    that lie near to it, one of ``NEAR``; a component for which nothing says that it lies farther counts as near.
    ``within``: how near, in feet, where the law gives a number; what was measured farther off does not count.
    ``but``: words for what is left out ("behind a door"). ``when``: a condition of its own, as a duty has one.
    """

    words: str
    kinds: tuple[str, ...] = ()
    part: str | None = None
    attributes: tuple[str, ...] = ()
    measures: tuple[str, ...] = ()
    sorts: tuple[str, ...] = ()
    optional: bool = False
    near: str = ""
    within: str = ""
    but: str = ""
    when: str = ""


@dataclass(frozen=True, slots=True)
class Duty:
    """One thing a law says the inspector shall do (or expressly need not).

    ``modality`` is ``shall``, ``may``, ``not_required`` or ``shall_not``. ``when`` names a condition on the job or
    house (``fuel or attached garage``, ``outdoor >= 60 degF``), empty means always. ``tracked``: coverage is computed
    from the visit's record; other duties (agreement, delivery, ethics) are listed for the reader. ``default_method``
    is how the law wants it done ("walked on the roof"); where ``method_reasons`` are listed another way counts only
    with one of them, and the way used has to be stated. ``mandatory_text`` is what the report must say, in substance or, with ``verbatim``, word for word, in
    type of at least ``min_pt`` points, where ``text_when`` holds (empty: always). ``by_agreement``: only where the
    client agreed to it.
    """

    id: str
    section: str
    system: str
    verb: str
    modality: str
    words: str
    provenance: Provenance
    subjects: tuple[Subject, ...] = ()
    extent: str = "none"
    numeric: tuple[Numeric, ...] = ()
    when: str = ""
    reasons: tuple[str, ...] = ()
    mandatory_text: str = ""
    refer_to: str = ""
    absence_stated: bool = False
    default_method: str = ""
    tracked: bool = False
    method_reasons: tuple[str, ...] = ()
    verbatim: bool = False
    min_pt: int | None = None
    text_when: str = ""
    by_agreement: bool = False


@dataclass(frozen=True, slots=True)
class ConditionWord:
    """A word that a law fixes for the state of an item, what it ``means`` (one of ``MEANINGS``), and what it needs.

    ``code`` is the law's own short form where a promulgated form has one; ``needs`` is ``reason``, ``finding`` or empty.
    """

    words: str
    means: str
    section: str
    tag: str
    code: str = ""
    needs: str = ""


@dataclass(frozen=True, slots=True)
class Delivery:
    """By when a report is due: ``count`` ``days`` after the ``anchor``; waivable where the client agrees in writing.

    Rows stand in the order in which they are tried: the first whose anchor is known holds.
    """

    count: int
    days: str
    anchor: str
    section: str
    tag: str
    words: str
    waivable: bool = False


@dataclass(frozen=True, slots=True)
class Summary:
    """A summary a law asks for or allows: when it must be there, what goes into it, what it must say.

    ``from_systems``: required from that many systems inspected on. ``means``: which states of an item go into it (of
    ``MEANINGS``); nothing else may.
    """

    words: str
    section: str
    tag: str
    means: tuple[str, ...] = ()
    from_systems: int | None = None
    statement: str = ""
    verbatim: bool = False


@dataclass(frozen=True, slots=True)
class Departure:
    """Leaving out what a law asks: the closed list of reasons, and the notice that is owed.

    ``reasons`` are reason ids. ``notice`` says when the client is to be told; ``before_visit`` what has to be told
    before the visit begins.
    """

    words: str
    section: str
    tag: str
    reasons: tuple[str, ...] = ()
    notice: str = ""
    before_visit: str = ""


@dataclass(frozen=True, slots=True)
class LawForm:
    """A form that a law prescribes for its reports: its name, where the law says so, and what this program leaves open."""

    words: str
    section: str
    tag: str
    note: str = ""


@dataclass(frozen=True, slots=True)
class FormItem:
    """One item of such a form, in its order: ``number`` within its ``group``, and the heading it bears there.

    It takes every component of one of ``kinds``; with ``systems``, every one of those systems that no other item takes.
    ``optional``: left out where the record says nothing of it.
    """

    group: str
    number: str
    words: str
    tag: str
    kinds: tuple[str, ...] = ()
    systems: tuple[str, ...] = ()
    optional: bool = False


@dataclass(frozen=True, slots=True)
class Rulebook:
    """One law's duties for a period.

    ``deliver`` says the time of delivery in words; ``deliveries`` count it. ``observed_listed``: the report names
    what was observed, not only what was not. ``code_claims``: what a finding that cites a code must state (empty where
    the law says nothing). ``new_construction``: whether a house never lived in is within the law. ``specific_first``:
    a particular provision goes before a general one. ``baseline``: no law, but what the laws have in common, for
    places without one.
    """

    id: str
    name: str
    jurisdiction: str
    citation: str
    effective_from: str
    verified: str
    duties: tuple[Duty, ...]
    provenance: Provenance
    effective_to: str | None = None
    max_units: int | None = None
    definitions: tuple[Definition, ...] = ()
    reasons: tuple[str, ...] = ()
    deliver: str = ""
    retain_years: int | None = None
    note: str = ""
    condition_words: tuple[ConditionWord, ...] = ()
    deliveries: tuple[Delivery, ...] = ()
    summary: Summary | None = None
    departure: Departure | None = None
    form: LawForm | None = None
    form_items: tuple[FormItem, ...] = ()
    observed_listed: bool = False
    code_claims: str = ""
    new_construction: bool = True
    specific_first: bool = False
    baseline: bool = False
