"""The acts: what an entry can record, one frozen body per act and version.

A body holds only what is particular to its act; who, when, where and on which component stand in the entry
itself. Every field has a default so that an inspector can record a bare act at once and add to it by an
amendment. Values that were measured are decimal strings as they were read ("118", "0.5"), never floats, so
that nothing is rounded and canonical JSON is exact.

The registry ``BODIES`` maps (act, version) to its class. A body class, once released, never changes: a new
version is a new class beside it.
"""

from __future__ import annotations

from dataclasses import dataclass

__all__ = [
    "ACTS", "BODIES", "Absent", "Accepted", "Amended", "Arrived", "Body", "Count", "Doubted", "Dropped", "Found",
    "Head", "Identified", "Left", "Listed", "PackUsed", "Placed", "Ran", "Read", "Saw", "Sealed", "Settled",
    "Skipped", "Stopped", "Took",
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class Count:
    """How many of a set were looked at and how many fell short: checked of `of`, `adverse` of the checked."""

    checked: int
    of: int | None = None
    adverse: int = 0


@dataclass(frozen=True, slots=True)
class Arrived:
    """The visit begins. ``outdoor`` is the outdoor temperature as read, ``outdoor_unit`` its UCUM unit."""

    present: tuple[str, ...] = ()
    weather: str | None = None
    ground: str | None = None
    outdoor: str | None = None
    outdoor_unit: str | None = None
    utilities_on: tuple[str, ...] = ()
    note: str | None = None


@dataclass(frozen=True, slots=True)
class Left:
    """The visit ends. ``open_ends`` counts the loose ends then open; ``why`` says why one left all the same."""

    open_ends: int = 0
    why: str | None = None


@dataclass(frozen=True, slots=True)
class Placed:
    """A place exists. The entry's ``place`` is its id; ``sort`` is a place sort of the packs (room, roof, …)."""

    name: str = ""
    sort: str = "room"
    within: str | None = None
    storey: str | None = None
    side: str | None = None
    habitable: bool | None = None


@dataclass(frozen=True, slots=True)
class Listed:
    """A component exists. The entry's ``component`` is its id, ``kind`` a kind of the packs."""

    kind: str = ""
    label: str = ""
    number: int | None = None
    note: str | None = None


@dataclass(frozen=True, slots=True)
class Absent:
    """A component of this kind was looked for and is not there. ``adverse``: it should have been."""

    kind: str = ""
    part: str | None = None
    what: str | None = None
    adverse: bool | None = None
    condition: str | None = None


@dataclass(frozen=True, slots=True)
class Saw:
    """Something was seen, heard, smelled or felt.

    ``state`` is ``sound``, ``adverse`` or ``unclear``; ``condition`` a condition id of the packs when known;
    ``again`` names the ``ran`` entry this is the second look of, when the inspector says so.
    """

    what: str = ""
    state: str | None = None
    part: str | None = None
    kind: str | None = None
    condition: str | None = None
    sure: bool = True
    count: Count | None = None
    again: str | None = None


@dataclass(frozen=True, slots=True)
class Ran:
    """Something was operated.

    ``left`` says how it was left: ``as found``, ``on``, ``open``, ``filled``, ``unlatched``, ``tripped``,
    ``changed``. ``found`` and ``setting`` give the state before and after in words ("off", "68 degF").
    ``procedure`` is a procedure id of the packs when one was followed.
    """

    what: str = ""
    part: str | None = None
    kind: str | None = None
    procedure: str | None = None
    left: str = "as found"
    found: str | None = None
    setting: str | None = None
    response: str | None = None


@dataclass(frozen=True, slots=True)
class Stopped:
    """Something operated was put back. ``of`` names the ``ran`` entry; without it, the newest of the component."""

    what: str = ""
    part: str | None = None
    kind: str | None = None
    of: str | None = None
    state: str | None = None


@dataclass(frozen=True, slots=True)
class Read:
    """A measurement. ``measure`` is a measure id of the packs, ``value`` a decimal string, ``unit`` UCUM.

    ``high`` is the upper end when the reading was spoken as a range. ``instrument`` and ``reference`` (what it
    was compared with) are free words; ``spot`` says where exactly.
    """

    measure: str = ""
    value: str = ""
    unit: str = ""
    high: str | None = None
    part: str | None = None
    kind: str | None = None
    spot: str | None = None
    instrument: str | None = None
    about: bool = False


@dataclass(frozen=True, slots=True)
class Took:
    """A picture, recording or document was taken or imported. The entry's ``media`` holds its hash.

    ``sort`` is ``photo``, ``thermal``, ``voice``, ``video`` or ``document``; ``shows`` plain words;
    ``speaks_of`` entry ids it is evidence for.
    """

    sort: str = "photo"
    name: str = ""
    mime: str = ""
    shows: str | None = None
    speaks_of: tuple[str, ...] = ()
    damage: bool = False


@dataclass(frozen=True, slots=True)
class Identified:
    """A description: ``attribute`` (make, model, serial, made, material, fuel, capacity, type …) and its value."""

    attribute: str = ""
    value: str = ""
    unit: str | None = None
    part: str | None = None
    kind: str | None = None
    note: str | None = None


@dataclass(frozen=True, slots=True)
class Skipped:
    """Something was not inspected. ``reason`` is a reason id of the packs, ``words`` says it in full."""

    what: str = ""
    reason: str = ""
    words: str | None = None
    part: str | None = None
    kind: str | None = None
    duty: str | None = None
    whole: bool = False


@dataclass(frozen=True, slots=True)
class Doubted:
    """The inspector is not sure. ``of`` names the entry in doubt, when there is one."""

    what: str = ""
    of: str | None = None
    attribute: str | None = None
    part: str | None = None
    kind: str | None = None


@dataclass(frozen=True, slots=True)
class Settled:
    """A loose end was closed by a decision.

    ``of`` holds the ids of the entries whose loose ends this closes; ``ends`` limits it to some sorts of loose
    end (``still on``, ``look again`` …; empty means all). ``with_whom`` is needed when something stays on.
    """

    of: tuple[str, ...] = ()
    ends: tuple[str, ...] = ()
    how: str = ""
    with_whom: str | None = None
    state: str | None = None
    duty: str | None = None


@dataclass(frozen=True, slots=True)
class Found:
    """A finding: what a client must know, in four parts, with stake and urgency.

    ``rests_on`` names the entries it is drawn from. ``stake`` is people, building, function or upkeep;
    ``urgency`` now, before use, soon, plan or watch; ``by`` who should look at it.
    """

    title: str = ""
    seen: str = ""
    why: str = ""
    if_left: str = ""
    do: str = ""
    by: str = ""
    direct: str = ""
    stake: str = ""
    urgency: str = ""
    kind: str | None = None
    condition: str | None = None
    rests_on: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Accepted:
    """Drafts now count. Only a person writes this."""

    of: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Dropped:
    """An entry no longer counts, for the reason given. It stays readable."""

    of: str = ""
    why: str = ""


@dataclass(frozen=True, slots=True)
class Amended:
    """An entry is replaced by what ``act``, ``v`` and ``body`` say; ``place``, ``component`` and ``at`` too.

    All of these state the whole of what now holds; nothing is inherited from the entry amended, except ``at``
    when it is None.
    """

    of: str = ""
    why: str = ""
    act: str = ""
    v: int = 1
    body: Body | None = None
    place: str | None = None
    component: str | None = None
    at: str | None = None


@dataclass(frozen=True, slots=True)
class Head:
    """The last entry of one device's chain: how many entries, and the hash of the last.

    ``first`` is the number of the entry that the unbroken run up to it begins with: 1 unless entries were missing.
    """

    device: str
    n: int
    hash: str
    first: int = 1


@dataclass(frozen=True, slots=True)
class PackUsed:
    """A pack as it stood when the report was issued."""

    id: str
    version: str
    hash: str


@dataclass(frozen=True, slots=True)
class Sealed:
    """The record was closed for a report: root over all chains, packs, Ed25519 signature.

    ``facts`` is the SHA-256 of ``job.toml`` and ``report`` that of the report's record, both hex; ``key`` and
    ``signature`` are hex. What is signed is defined in ``journal.seal``.
    """

    root: str = ""
    heads: tuple[Head, ...] = ()
    packs: tuple[PackUsed, ...] = ()
    facts: str = ""
    report: str | None = None
    key: str = ""
    signature: str = ""
    edition: int = 1
    why: str | None = None


Body = (
    Arrived | Left | Placed | Listed | Absent | Saw | Ran | Stopped | Read | Took | Identified | Skipped | Doubted
    | Settled | Found | Accepted | Dropped | Amended | Sealed
)  # fmt: skip

BODIES: dict[tuple[str, int], type[Body]] = {
    ("arrived", 1): Arrived,
    ("left", 1): Left,
    ("placed", 1): Placed,
    ("listed", 1): Listed,
    ("absent", 1): Absent,
    ("saw", 1): Saw,
    ("ran", 1): Ran,
    ("stopped", 1): Stopped,
    ("read", 1): Read,
    ("took", 1): Took,
    ("identified", 1): Identified,
    ("skipped", 1): Skipped,
    ("doubted", 1): Doubted,
    ("settled", 1): Settled,
    ("found", 1): Found,
    ("accepted", 1): Accepted,
    ("dropped", 1): Dropped,
    ("amended", 1): Amended,
    ("sealed", 1): Sealed,
}

ACTS: tuple[str, ...] = tuple(dict.fromkeys(act for act, _ in BODIES))
