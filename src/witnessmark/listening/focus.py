"""What does "it" mean? The things spoken of so far, in which place, and the likeliest meaning of a name."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from witnessmark.listening.drafts import Draft
from witnessmark.listening.lexicon import Lexicon, Meaning
from witnessmark.listening.places import HOUSE, Place
from witnessmark.packs.model import Kind

__all__ = ["Scene", "Thing", "part_of", "with_part"]

#: How many things spoken of are remembered.
_MEMORY = 16
#: Weights of what speaks for a meaning; larger is stronger. Our own, set on narrations of our own.
_PART_OF_FOCUS, _PART_OF_RECENT, _SAME_KIND, _KIND = 5.0, 3.0, 4.0, 1.5
_HERE, _NOT_HERE, _SAME_SYSTEM = 1.5, -1.0, 1.0
#: Systems that one speaks of outside, and in a room.
_OUTSIDE, _INSIDE = frozenset({"exterior", "site", "roof"}), frozenset({"interior"})
_FITS = 0.75
_BESIDE = 2.0
_AS_BEFORE = 2.0
_HEARD, _SHORT, _STRAY_PART, _FAR = -0.5, -0.5, -0.5, -0.75
_WITHIN_RECENT, _OF_OWNER, _ON_FOCUS = 1.5, 4.0, 1.0
#: Things spoken of so lately that a coat, a cover or a device may be theirs.
_HOSTS = 1


@dataclass(frozen=True, slots=True)
class Thing:
    """A component, or something the packs do not know (``kind`` None), in a place.

    ``label`` plain words for it; ``kind_key`` its kind, or a slug of its label; ``of`` the label of the whole, for a part
    of it that only the speaker has a word for. ``host``: what it is on, by the packs (the paint of a column).
    """

    kind: str | None
    part: str | None
    label: str
    place: Place
    kind_key: str
    of: str = ""
    host: Thing | None = None

    @property
    def key(self) -> str:
        """The key of the component: place and kind; parts belong to their component."""
        return f"{self.place.key}.{self.kind_key}"


def part_of(draft: Draft) -> Thing:
    """The thing that a draft is about."""
    return Thing(draft.kind, draft.part, draft.label, draft.place, draft.component.partition(".")[2])


def _extended(label: str, words: str) -> str:
    """A label with more words for what is meant; the name of the kind behind them stays where it is.

    >>> _extended("outlet (receptacle)", "cover plate"), _extended("deck", "baluster")
    ('outlet cover plate (receptacle)', 'deck baluster')
    """
    called, bracket, kind = label.partition(" (")
    new = [w for w in words.split() if w not in called.split()]
    return " ".join([called, *new]) + bracket + kind


def with_part(whole: Thing, words: Sequence[str]) -> Thing:
    """A thing with a part of it that the packs do not know, called by the words used."""
    said = " ".join(words)
    if said in whole.label:
        return whole
    return replace(whole, label=_extended(whole.label, said), of=whole.of or whole.label)


def _on(host: Thing | None, label: str) -> str:
    """A label led by what the thing is on ("column paint")."""
    return f"{host.label.partition(' (')[0]} {label}" if host is not None else label


@dataclass(slots=True)
class Scene:
    """The state of the discourse: the place the speaker is in, the focus, and what was spoken of before it.

    ``standing`` remembers which kind stands for a sort of place.
    ``called`` is the speaker's own word for a kind, where that is not the packs' name.
    """

    lexicon: Lexicon
    place: Place = HOUSE
    focus: Thing | None = None
    recent: list[Thing] = field(default_factory=list)
    chosen: dict[str, Meaning] = field(default_factory=dict)
    standing: dict[str, Kind | None] = field(default_factory=dict)
    called: dict[str, str] = field(default_factory=dict)

    def meaning(
        self,
        meanings: Sequence[Meaning],
        place: Place,
        said: str = "",
        beside: frozenset[str] = frozenset(),
        owners: frozenset[str] = frozenset(),
    ) -> tuple[Meaning, float]:
        """The likeliest of several meanings, by the focus, what was spoken of before it, and the place.

        *said* is the name as spoken: the same name in the same place most likely means the same again. *beside* are
        the kinds named next to it, *owners* those it is said to be of: "labels on the panel" are the panel's. The weight
        comes with it.
        """
        system = self._system(self.focus.kind if self.focus else None)
        earlier = self.chosen.get(f"{place.key} {said}")
        seen = {thing.kind: rank for rank, thing in enumerate(reversed(self.recent))}

        def weight(meaning: Meaning) -> float:
            kind = self.lexicon.packs.kinds[meaning.kind]
            total = (
                (_HEARD if meaning.heard else 0.0) + (_SHORT if meaning.short else 0.0) + (_FAR if meaning.far else 0.0)
            )
            in_focus = self.focus is not None and self.focus.kind == meaning.kind
            if meaning.part is None:
                total += _KIND + (_SAME_KIND if in_focus else _PART_OF_RECENT - 1.0 if meaning.kind in seen else 0.0)
            elif in_focus:
                total += _PART_OF_FOCUS
            elif meaning.kind in seen:
                total += (_WITHIN_RECENT if meaning.within else _PART_OF_RECENT) - 0.15 * seen[meaning.kind]
            else:
                total += _STRAY_PART
            if place.sort != HOUSE.sort:
                total += 0.5 * _HERE if not kind.sorts else _HERE if place.sort in kind.sorts else _NOT_HERE
                row = self.lexicon.packs.sorts.get(place.sort)
                if row is not None and kind.system in (_OUTSIDE if row.outside else _INSIDE):
                    total += _FITS
            if meaning.kind in beside:
                total += _BESIDE
            if meaning.part is not None and meaning.kind in owners:
                total += _OF_OWNER
            if meaning.part is None and self.focus is not None and self.focus.kind in kind.found_on:
                total += _ON_FOCUS
            if earlier == meaning:
                total += _AS_BEFORE
            if system and kind.system == system:
                total += _SAME_SYSTEM
            return total

        best = max(meanings, key=weight)
        if said:
            self.chosen[f"{place.key} {said}"] = best
        return best, weight(best)

    def _system(self, kind: str | None) -> str | None:
        row = self.lexicon.kind(kind)
        return row.system if row else None

    def thing(self, meaning: Meaning, place: Place, host: Thing | None = None) -> Thing:
        """The component that a meaning names, in a place; called as the speaker calls it, and by what it is on.

        *host* is that where the words name it; else it is looked for among what was spoken of.
        """
        row = self.lexicon.packs.kinds[meaning.kind]
        part = next((p for p in row.parts if p.id == meaning.part), None)
        label = self._kind_called(row)
        if part is not None:
            known = set(row.name.split()) & set(part.name.split()) and label == row.name
            label = part.name if known else _extended(label, part.name)
        on = host or self.host(row, place)
        return Thing(meaning.kind, meaning.part, _on(on, label), place, meaning.kind, host=on)

    def _kind_called(self, row: Kind) -> str:
        own = self.called.get(row.id)
        return f"{own} ({row.name})" if own else row.name

    def host(self, row: Kind, place: Place) -> Thing | None:
        """What a thing of this kind is on here: of what the packs say it is found on, the thing last spoken of."""
        if not row.found_on:
            return None
        for thing in (self.whole(), *reversed(self.recent[-_HOSTS:])):
            if thing is None:
                continue
            for one in (thing, thing.host):
                if one is not None and one.kind in row.found_on and place in {self.place, one.place}:
                    return self.bare(one)
        return None

    def bare(self, thing: Thing) -> Thing:
        """A thing without the part of it that was spoken of."""
        row = self.lexicon.kind(thing.kind)
        if not thing.part or row is None:
            return thing
        label = self._kind_called(row)
        return replace(thing, part=None, label=_on(thing.host, label))

    def of_place(self, place: Place) -> Thing | None:
        """The kind that stands for a place itself (attic, crawl space, the roof by its covering), where there is one."""
        if place.sort not in self.standing:
            rows = [k for k in self.lexicon.packs.kinds.values() if "method" in k.describe]
            row = next((k for k in rows if k.id == place.sort), None)
            self.standing[place.sort] = row or next((k for k in rows if place.sort in k.id.split("-")), None)
        row = self.standing[place.sort]
        return Thing(row.id, None, row.name, place, row.id) if row else None

    def unknown(self, words: Sequence[str]) -> Thing:
        """Something the packs have no name for, called by the words used."""
        return Thing(None, None, " ".join(words), self.place, "-".join(words))

    def attend(self, thing: Thing) -> None:
        """Make *thing* the focus. A part keeps its component in the focus."""
        if self.focus is not None and self.focus != thing:
            self.recent.append(self.focus)
            del self.recent[:-_MEMORY]
        self.focus = thing

    def whole(self) -> Thing | None:
        """The component in focus without its part."""
        return None if self.focus is None else self.whole_of(self.focus)

    def whole_of(self, thing: Thing) -> Thing:
        """A thing without its part, be it the packs' or only the speaker's."""
        return replace(thing, label=thing.of, of="") if thing.of else self.bare(thing)
