"""What a pack can hold: frozen rows, each with its id, source, in-force date and how sure we are of it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

__all__ = [
    "DIRECTIONS", "EXTENTS", "STAKES", "TAGS", "URGENCIES", "VERBS", "Attribute", "AttributeValue", "Caution",
    "Condition", "Criterion", "Definition", "Duty", "Era", "Kind", "LookAgain", "Measure", "Numeric", "Override",
    "PackFile", "Packs", "Part", "Procedure", "Provenance", "Reason", "Rulebook", "Sort", "Subject", "Trade",
]  # fmt: skip

STAKES = ("people", "building", "function", "upkeep")
URGENCIES = ("now", "before use", "soon", "plan", "watch")
DIRECTIONS = ("repair", "monitor", "further evaluation", "specialist")
#: How sure a row is: read in the law's own text, in an unofficial copy, recalled, recalled and doubtful, arithmetic.
TAGS = ("seen", "seen-copy", "memory", "memory?", "computed", "common practice, no source")
VERBS = (
    "inspect", "describe", "report", "report_def", "operate", "test", "enter", "probe", "verify", "advise",
    "state_method", "notreq", "define", "contract", "content", "deliver", "retain", "ethics",
)  # fmt: skip
EXTENTS = ("all", "representative", "one_per_room", "one_per_side", "none")


@dataclass(frozen=True, slots=True)
class Provenance:
    """Where a row comes from: document and section, from when it is in force, how sure, and which file holds it."""

    source: str
    in_force: str | None
    tag: str
    file: str
    until: str | None = None


@dataclass(frozen=True, slots=True)
class Part:
    """A part of a kind. ``expected``: worth saying when it is not there."""

    id: str
    name: str
    spoken: tuple[str, ...] = ()
    expected: bool = False


@dataclass(frozen=True, slots=True)
class Kind:
    """A kind of component.

    Attributes:
        id: stable id, lower case with hyphens (``water-heater``).
        system: system id (structure, site, exterior, roof, plumbing, electrical, heating, cooling, interior,
            insulation, fireplace, appliances, garage, alarms).
        name, plural: plain words, lower case.
        spoken: how it is said aloud, the name included by the reader.
        heard: what a recogniser makes of it; matched only as a suggestion.
        parts: its parts.
        sorts: place sorts where it is usually found; empty means anywhere.
        expected: place sorts where its absence is worth saying.
        describe: attribute ids that laws and good practice ask to describe.
        measures: measure ids that are read at it.
        operated: words for how it is operated by normal controls; empty when it is not operated.
        cautions: caution ids.
    """

    id: str
    system: str
    name: str
    plural: str
    spoken: tuple[str, ...]
    provenance: Provenance
    heard: tuple[str, ...] = ()
    parts: tuple[Part, ...] = ()
    sorts: tuple[str, ...] = ()
    expected: tuple[str, ...] = ()
    describe: tuple[str, ...] = ()
    measures: tuple[str, ...] = ()
    operated: str = ""
    cautions: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class LookAgain:
    """The second look a procedure asks for, in whole minutes after it was run.

    It is a look at the component that was run, or at any component of ``kinds``; ``words`` says where to look and
    ``why``. ``here``: only components in the same place count.
    """

    words: str
    why: str
    earliest: int
    latest: int
    kinds: tuple[str, ...] = ()
    here: bool = True


@dataclass(frozen=True, slots=True)
class Procedure:
    """How something is operated by normal controls, what that leaves, and what must follow.

    ``leaves`` is the state while it runs (``on``, ``open``, ``filled``, ``unlatched``, ``tripped``, ``changed``, or
    ``as found`` when nothing is left); ``put_back`` the words for putting it back, empty when nothing has to be;
    ``at_most`` minutes it may be left before it must be stopped, None when no limit. ``said`` are verb phrases by
    which it is spoken of ("fill the sink", "run the dishwasher").
    """

    id: str
    kind: str
    name: str
    how: str
    leaves: str
    provenance: Provenance
    part: str | None = None
    said: tuple[str, ...] = ()
    put_back: str = ""
    at_most: int | None = None
    look_again: LookAgain | None = None
    cautions: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Condition:
    """An adverse condition of one or more kinds, in plain words for a first-time buyer.

    ``observation`` what it is, ``implication`` why it matters, ``if_left`` what follows, ``do`` what to do, ``by`` a
    trade id, ``direct`` one of ``DIRECTIONS``. ``spoken`` how it is said aloud. ``absence``: it is the condition of
    the kind (or part) not being there.
    """

    id: str
    kinds: tuple[str, ...]
    name: str
    spoken: tuple[str, ...]
    observation: str
    implication: str
    if_left: str
    do: str
    by: str
    direct: str
    stake: str
    urgency: str
    provenance: Provenance
    part: str | None = None
    absence: bool = False
    cautions: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Measure:
    """Something that is measured. ``unit`` UCUM it is kept in, ``units`` others accepted, ``low``/``high`` plausible."""

    id: str
    name: str
    unit: str
    units: tuple[str, ...]
    spoken: tuple[str, ...]
    provenance: Provenance
    low: str | None = None
    high: str | None = None


@dataclass(frozen=True, slots=True)
class Criterion:
    """A limit that a reading is held against, dated and cited.

    ``op`` is one of ``<=`` ``<`` ``>=`` ``>`` ``between`` (with ``high``); the reading is within when it satisfies
    it. ``force`` is ``law`` (must be so by the law or code in force) or ``guide`` (recommended, or common practice).
    ``jurisdiction`` limits it to a state (``us.wa``) where set. ``built_from``: applies as a must only to what was
    built or altered from that year.
    """

    id: str
    measure: str
    op: str
    value: str
    unit: str
    words: str
    document: str
    edition: str
    section: str
    force: str
    provenance: Provenance
    kinds: tuple[str, ...] = ()
    part: str | None = None
    high: str | None = None
    jurisdiction: str | None = None
    built_from: int | None = None
    stake: str = "function"
    urgency: str = "plan"
    condition: str | None = None
    cautions: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Sort:
    """A sort of place (room, outside face, roof, attic, crawl space …)."""

    id: str
    name: str
    spoken: tuple[str, ...]
    provenance: Provenance
    habitable: bool = False
    outside: bool = False


@dataclass(frozen=True, slots=True)
class Reason:
    """A reason for not inspecting something, as spoken and as printed."""

    id: str
    words: str
    spoken: tuple[str, ...]
    provenance: Provenance


@dataclass(frozen=True, slots=True)
class Caution:
    """A caution shown before the act that needs it."""

    id: str
    words: str
    provenance: Provenance


@dataclass(frozen=True, slots=True)
class Trade:
    """Who should look at something."""

    id: str
    words: str
    provenance: Provenance


@dataclass(frozen=True, slots=True)
class AttributeValue:
    """One value an attribute can take, with the words by which it is spoken."""

    id: str
    spoken: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Attribute:
    """Something a description states (material, fuel, type, capacity …). Empty ``values`` means free words."""

    id: str
    name: str
    spoken: tuple[str, ...]
    values: tuple[AttributeValue, ...]
    provenance: Provenance


@dataclass(frozen=True, slots=True)
class Era:
    """What to look for by year built; never a finding."""

    id: str
    name: str
    words: str
    kinds: tuple[str, ...]
    provenance: Provenance
    built_from: int | None = None
    built_to: int | None = None


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
    fields do not restrict. ``optional``: asked only if such a component was listed in the house.
    """

    words: str
    kinds: tuple[str, ...] = ()
    part: str | None = None
    attributes: tuple[str, ...] = ()
    measures: tuple[str, ...] = ()
    sorts: tuple[str, ...] = ()
    optional: bool = False


@dataclass(frozen=True, slots=True)
class Duty:
    """One thing a law says the inspector shall do (or expressly need not).

    ``modality`` is ``shall``, ``may``, ``not_required`` or ``shall_not``. ``when`` names a condition on the job or
    house (``fuel or attached garage``, ``outdoor >= 60 degF``), empty means always. ``tracked``: coverage is computed
    from the visit's record; other duties (agreement, delivery, ethics) are listed for the reader.
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


@dataclass(frozen=True, slots=True)
class Rulebook:
    """One law's duties for a period."""

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


@dataclass(frozen=True, slots=True)
class PackFile:
    """A file that was read: its pack id, version, SHA-256 and whether it is the user's overlay."""

    id: str
    version: str
    hash: str
    path: str
    overlay: bool = False


@dataclass(frozen=True, slots=True)
class Override:
    """An overlay row that stands in for a shipped one; ``sort`` names the table, ``row`` is the row stood in for."""

    id: str
    shipped: Provenance
    overlay: Provenance
    sort: str = ""
    row: object = None


@dataclass(frozen=True, slots=True)
class Packs:
    """Everything read, by id."""

    kinds: Mapping[str, Kind] = field(default_factory=dict)
    procedures: Mapping[str, Procedure] = field(default_factory=dict)
    conditions: Mapping[str, Condition] = field(default_factory=dict)
    measures: Mapping[str, Measure] = field(default_factory=dict)
    criteria: Mapping[str, Criterion] = field(default_factory=dict)
    sorts: Mapping[str, Sort] = field(default_factory=dict)
    reasons: Mapping[str, Reason] = field(default_factory=dict)
    cautions: Mapping[str, Caution] = field(default_factory=dict)
    trades: Mapping[str, Trade] = field(default_factory=dict)
    attributes: Mapping[str, Attribute] = field(default_factory=dict)
    eras: Mapping[str, Era] = field(default_factory=dict)
    rulebooks: Mapping[str, Rulebook] = field(default_factory=dict)
    files: tuple[PackFile, ...] = ()
    overrides: tuple[Override, ...] = ()
