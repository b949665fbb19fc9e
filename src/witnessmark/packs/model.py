"""What a pack can hold: frozen rows, each with its id, source, in-force date and how sure we are of it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from witnessmark.packs.law import (
    EXTENTS,
    VERBS,
    ConditionWord,
    Definition,
    Delivery,
    Departure,
    Duty,
    FormItem,
    LawForm,
    Numeric,
    Rulebook,
    Subject,
    Summary,
)
from witnessmark.packs.provenance_row import TAGS, Provenance

__all__ = [
    "DIRECTIONS", "EXTENTS", "LANGUAGES", "LIMITS", "STAKES", "TAGS", "URGENCIES", "VERBS", "Attribute", "AttributeValue",
    "Caution", "Condition", "ConditionWord", "Criterion", "Definition", "Delivery", "Departure", "Duty", "Era", "FormItem", "Frame",
    "Kind", "LawForm", "Life", "LookAgain", "Measure", "Numeric", "Override", "PackFile", "Packs", "Part", "Procedure",
    "Provenance", "Reason", "Rulebook", "Sort", "Subject", "Summary", "Trade", "Translation",
]  # fmt: skip

STAKES = ("people", "building", "function", "upkeep")
URGENCIES = ("now", "before use", "soon", "plan", "watch")
#: What a breaker or fuse can be rated too high for: its wire, or what a unit's plate allows.
LIMITS = ("wire", "plate")
DIRECTIONS = ("repair", "monitor", "further evaluation", "specialist")
LANGUAGES = ("en", "es")


@dataclass(frozen=True, slots=True)
class Part:
    """A part of a kind. ``expected``: worth saying when it is not there.

    ``within``: words for it that say nothing of its kind; they mean it only once its kind is spoken of ("fan", "door").
    """

    id: str
    name: str
    spoken: tuple[str, ...] = ()
    expected: bool = False
    within: tuple[str, ...] = ()


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
        water: water is drawn or let go at it, so that laws speak of what lies near to it.
        found_on: ids of the kinds it is on or belongs to; it is called by the one of them spoken of ("column paint").
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
    water: bool = False
    found_on: tuple[str, ...] = ()


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
    the kind (or part) not being there. ``because`` gives the reason for the stake and urgency, ``evidence`` what
    typically shows it ("a photo of the stain with a moisture reading"). ``rating_over``, one of ``LIMITS``: it is the
    condition of a breaker or fuse that is rated higher than that allows, so that numbers told can show it.
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
    because: str = ""
    evidence: str = ""
    rating_over: str = ""


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
    built or altered from that year. ``first_edition`` is the edition of the model document that first asks for it, where
    known; ``adopted`` from when it is in force in ``jurisdiction``, where known. ``where``: only for readings in places
    of these sorts.
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
    first_edition: str = ""
    adopted: str = ""
    where: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Sort:
    """A sort of place (room, outside face, roof, attic, crawl space …). ``water``: it has plumbing fixtures as a rule."""

    id: str
    name: str
    spoken: tuple[str, ...]
    provenance: Provenance
    habitable: bool = False
    outside: bool = False
    water: bool = False


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
    """What to look for by the year a house, or the part in question, was built or altered; never a finding.

    ``why`` is the published fact behind the years. ``do`` is what to do on seeing one ("treat as suspect, do not
    disturb"). ``share`` what share of houses of the time a survey found, in words, where one did.
    """

    id: str
    name: str
    words: str
    kinds: tuple[str, ...]
    provenance: Provenance
    built_from: int | None = None
    built_to: int | None = None
    why: str = ""
    do: str = ""
    share: str = ""
    cautions: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Life:
    """How long parts of a kind last, as one source gives it; another source is another row, and they are never mixed.

    ``low`` and ``high`` are years as published (equal where one number is); ``climate`` and ``quality`` say what the
    source splits by. ``name`` is the source's own name for the part.
    """

    id: str
    kinds: tuple[str, ...]
    name: str
    low: str
    high: str
    document: str
    edition: str
    provenance: Provenance
    place: str = ""
    part: str | None = None
    material: str = ""
    climate: str = ""
    quality: str = ""


@dataclass(frozen=True, slots=True)
class Frame:
    """A sentence of a report with gaps, in one language: ``text`` with gaps such as ``{what}``.

    ``use`` names what it is for; the frames of one use, one a language, have the same gaps.
    """

    id: str
    use: str
    language: str
    text: str
    provenance: Provenance


@dataclass(frozen=True, slots=True)
class Translation:
    """A row of another table in another language: ``table`` and ``of`` say which, the texts stand for its texts.

    For a condition all of ``name``, ``observation``, ``implication``, ``if_left`` and ``do``; for other tables ``name``
    or ``words``, whichever the row has.
    """

    id: str
    language: str
    table: str
    of: str
    provenance: Provenance
    name: str = ""
    plural: str = ""
    words: str = ""
    observation: str = ""
    implication: str = ""
    if_left: str = ""
    do: str = ""


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
    lives: Mapping[str, Life] = field(default_factory=dict)
    frames: Mapping[str, Frame] = field(default_factory=dict)
    translations: Mapping[str, Translation] = field(default_factory=dict)
    rulebooks: Mapping[str, Rulebook] = field(default_factory=dict)
    files: tuple[PackFile, ...] = ()
    overrides: tuple[Override, ...] = ()
