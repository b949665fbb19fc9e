"""Where is the speaker, and where is the thing that is spoken of?"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from witnessmark.listening.lexicon import Lexicon
from witnessmark.listening.numerals import numeral
from witnessmark.listening.terms import cues, members
from witnessmark.listening.words import phrase, stem

__all__ = ["HOUSE", "Place", "entered", "named_place", "place_of", "places_in"]


@dataclass(frozen=True, slots=True)
class Place:
    """A place: ``key`` a slug stable across one narration, ``name`` as spoken, ``sort`` a place sort of the packs."""

    key: str
    name: str
    sort: str


#: Where things belong as long as no place was named.
HOUSE = Place("house", "house", "house")

_BETWEEN = 4
#: What opens the last word on a place: "that's the kitchen".
_LEAVING = frozenset({("that", "is"), ("so", "that"), ("done", "with"), ("that", "was")})


def _made(words: Sequence[str], start: int, end: int, sort: str, lexicon: Lexicon) -> tuple[Place, int, int]:
    """The place named from *start* to *end*, its qualifiers (``upper``, ``two``) taken in."""
    qualifiers = members("places", "qualifiers")
    while start and words[start - 1] in qualifiers:
        start -= 1
    number = numeral(words, end) if end < len(words) else None
    said = list(words[start:end])
    if number and number.form in {"cardinal", "digits"} and number.value < 10 and words[end] not in {"a", "half"}:  # noqa: PLR2004 - bedroom two
        following = words[number.end] if number.end < len(words) else ""
        if following not in members("places", "not_numbered"):
            said.append(str(number.value))
            end = number.end
    # The last word by itself may be a longer or shorter name of the same sort: "bathroom", "bath".
    row = lexicon.packs.sorts.get(sort)
    short = {t for text in (row.name, *row.spoken) if len(t := phrase(text)) == 1} if row else set()
    tail = next((i for i, word in enumerate(said) if (stem(word),) in short or (word,) in short), None)
    slug = list(said)
    if tail is not None:
        slug[tail] = min((t[0] for t in short if t[0].startswith(said[tail][:4]) or said[tail].startswith(t[0])), key=len,
                         default=said[tail])  # fmt: skip
    key = "-".join(word for word in slug if word not in {"the", "of", "a"})
    return Place(key, " ".join(said), sort), start, end


def places_in(words: Sequence[str], stems: Sequence[str], lexicon: Lexicon) -> list[tuple[int, int, Place]]:
    """Every place named in the words, with its positions."""
    found = []
    for start, end, sorts in lexicon.sorts.find(stems):
        place, a, b = _made(words, start, end, sorts[0], lexicon)
        found.append((a, b, place))
    return found


def entered(words: Sequence[str], stems: Sequence[str], lexicon: Lexicon) -> Place | None:
    """The place that a statement says the speaker is in or goes to, or None.

    Either words of going or being stand before it ("we're down in the basement", "back to the hall bath"), or the
    statement holds nothing but the place and small words ("kitchen again", "garage next").
    """
    small = members("places", "small")
    moving = cues("places", "moving")
    found = places_in(words, stems, lexicon)
    found = [row for row in found if row[2].sort not in {HOUSE.sort, "room"}]
    for start, end, place in found:
        rest = [w for i, w in enumerate(words) if not start <= i < end]
        said_of = (
            end < len(words)
            and words[end] in {"is", "are", "was", "were", "'s"}
            and words[end + 1 : end + 2] != ["next"]
        )
        if all(w in small for w in rest) and not said_of:
            return None if tuple(words[:2]) in _LEAVING else place
    for start, end, place in reversed(found):
        for a, b, _ in moving.find(words, max(0, start - _BETWEEN - 4), start):
            between = words[b:start]
            if b <= start and len(between) <= _BETWEEN and all(w in small for w in between) and (
                a < 3 or words[a] in {"in", "on", "to", "back", "into", "we"}  # noqa: PLR2004 - the cue opens the statement
            ):  # fmt: skip
                following = words[end] if end < len(words) else ""
                if following not in members("places", "of_things"):
                    return place
    return None


def named_place(
    words: Sequence[str],
    stems: Sequence[str],
    lexicon: Lexicon,
    start: int,
    end: int,
    *,
    sorts: frozenset[str] = frozenset(),
    masked: frozenset[int] = frozenset(),
) -> Place | None:
    """The place that belongs to a component named from *start* to *end*: right before it, inside its name, or after it.

    "kitchen sink", "tub in the hall bath". A place inside its name counts only when it is one of *sorts*, where such
    things stand; one after it only when its words (positions in *masked*) name no component. None when none stands
    with it.
    """
    for a, b, place in places_in(words, stems, lexicon):
        if place.sort in {HOUSE.sort, "room"}:
            continue
        row = lexicon.packs.sorts.get(place.sort)
        if b == start and row is not None and row.outside and b - a == 1:
            continue  # "it vents outside | sink"
        inside = a == start and b < end and place.sort in sorts and not (row is not None and row.outside)
        if b == start or inside:
            return place
        if not masked.isdisjoint(range(a, b)):
            continue
        gap = words[end:a]
        if end <= a and len(gap) <= 3 and gap and gap[0] in {"in", "at", "inside"} and all(  # noqa: PLR2004 - "in the old"
            w in members("places", "small") for w in gap
        ):  # fmt: skip
            return place
    return None


def place_of(text: str, lexicon: Lexicon) -> Place:
    """The place that a caller names, such as ``hall bath``; of sort ``room`` when the packs do not know it."""
    words = [word for word in phrase(text) if word not in {"the", "a"}]
    stems = [stem(word) for word in words]
    for _, _, place in places_in(words, stems, lexicon):
        key = "-".join(words) if len(place.name.split()) < len(words) else place.key
        return Place(key, " ".join(words), place.sort)
    return Place("-".join(words) or HOUSE.key, " ".join(words) or HOUSE.name, "room" if words else HOUSE.sort)
