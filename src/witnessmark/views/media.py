"""Which pictures, recordings and documents there are, and which entries speak of each.

An entry speaks of a file when it names the file's hash in its ``media``, when the ``took`` says it is evidence for
it (``speaks_of``), when it is a ``found`` that rests on the ``took``, or when it is a ``settled`` or ``doubted``
about the ``took``. An entry drawn from a recording or picture (its ``source`` names the file as the ``took`` does)
speaks of it too.
"""

from __future__ import annotations

from dataclasses import dataclass

from witnessmark.journal.acts import Doubted, Found, Settled, Took
from witnessmark.journal.fold import Fact, Record

__all__ = ["Medium", "media"]


@dataclass(frozen=True, slots=True)
class Medium:
    """One file.

    Attributes:
        sha256: its hash; empty for a ``took`` that came without its file.
        took: the ``took`` that brought it; None when an entry names a file that no ``took`` brought.
        body: the body of that ``took``.
        spoken_of_by: ids of the entries that speak of it, in order.
    """

    sha256: str
    took: Fact | None
    body: Took | None
    spoken_of_by: tuple[str, ...]

    @property
    def unnamed(self) -> bool:
        """No entry speaks of it."""
        return not self.spoken_of_by


def media(record: Record) -> tuple[Medium, ...]:
    """Every file of *record*: first those taken, in order, then those only named. Linear in the facts."""
    naming: dict[str, list[str]] = {}
    about: dict[str, list[str]] = {}
    drawn: dict[str, list[str]] = {}
    taken: list[tuple[Fact, Took]] = []
    counts: set[str] = set()
    for fact in record.facts:
        body = fact.body
        counts.add(fact.id)
        if isinstance(body, Took):
            taken.append((fact, body))
            continue
        if fact.source.file:
            drawn.setdefault(fact.source.file, []).append(fact.id)
        for sha256 in fact.media:
            naming.setdefault(sha256, []).append(fact.id)
        if isinstance(body, Found):
            names = body.rests_on
        elif isinstance(body, Settled):
            names = body.of
        elif isinstance(body, Doubted) and body.of:
            names = (body.of,)
        else:
            continue
        for name in names:
            about.setdefault(name, []).append(fact.id)
    files: list[Medium] = []
    seen: set[str] = set()
    for fact, body in taken:
        said = [name for name in body.speaks_of if name in counts and name != fact.id] + about.get(fact.id, [])
        said += drawn.get(body.name, []) if body.name else []
        for sha256 in fact.media or ("",):
            seen.add(sha256)
            files.append(Medium(sha256, fact, body, tuple(dict.fromkeys(said + naming.get(sha256, [])))))
    files += [
        Medium(sha256, None, None, tuple(dict.fromkeys(names)))
        for sha256, names in naming.items()
        if sha256 not in seen
    ]
    return tuple(files)
