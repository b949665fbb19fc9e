"""Arbitrary, well-typed records for property tests: few ids, so that they meet; any words, units and numbers."""

from __future__ import annotations

from dataclasses import fields
from datetime import datetime, timedelta
from types import UnionType
from typing import Union, get_args, get_origin, get_type_hints

from hypothesis import strategies as st

from record_builder import START, Visit
from witnessmark.journal import vocabulary
from witnessmark.journal.acts import BODIES, Accepted, Amended, Body, Count, Dropped, Head, PackUsed
from witnessmark.journal.entry import Entry

__all__ = ["bodies", "moments", "visits"]

IDS = [f"e{n:03}" for n in range(1, 16)]
PLACES = ["k", "a", "c", "r", None]
COMPONENTS = ["one", "two", "three", None]
_WORDS: dict[str, list[str | None]] = {
    "kind": ["range", "sink", "shower", "ceiling", "thermostat", "stair", "joist", "window", "ghost", ""],
    "part": ["oven", "burner", "tp-valve", None],
    "sort": ["kitchen", "bedroom", "attic", "crawl-space", "outside-face", "photo", "elsewhere"],
    "procedure": ["oven", "fill-sink", "run-shower", "nothing", None],
    "condition": ["rot", "scald", "no-handrail", "nothing", None],
    "measure": ["water-temperature", "handrail-height", "water-pressure", "temperature-split", "roof-pitch", "ghost"],
    "unit": ["[degF]", "Cel", "[in_i]", "mm", "[psi]", "deg", "", "cubit", "Cel{difference}"],
    "value": ["118", "36", "-4", "0.5", "hot", "", "NaN", "1e9", "9" * 60],
    "high": ["40", "122", "x", None],
    "state": ["sound", "adverse", "unclear", "off", "68 degF", "still open", None],
    "left": [*vocabulary.LEFT, "off", "ajar"],
    "reason": ["no-access", "unsafe", "other", "whim", ""],
    "attribute": ["material", "made", "fuel", "method", None, ""],
    "duty": ["T-1", "T-2", "nothing", None],
    "ends": [*vocabulary.ENDS],
    "outdoor": ["59", "61", "warm", None],
    "outdoor_unit": ["[degF]", "Cel", "", None],
}
_TEXT = st.sampled_from(["", "oven", "ran the faucet", "not put back", "made 2015", "\u202e \x00 ½″"]) | st.text(
    max_size=12
)


def _value(name: str, hint: object) -> st.SearchStrategy[object]:
    optional = type(None) in get_args(hint)
    if name in {"of", "again", "rests_on", "speaks_of"}:
        one: st.SearchStrategy[object] = st.sampled_from([*IDS, "nobody"])
    elif name in _WORDS:
        one = st.sampled_from([w for w in _WORDS[name] if w is not None or optional] or [""])
    elif hint is bool or bool in get_args(hint):
        one = st.booleans()
    elif hint is int or int in get_args(hint):
        one = st.integers(-3, 40)
    elif Count in get_args(hint):
        one = st.builds(Count, st.integers(0, 9), st.none() | st.integers(0, 9), st.integers(0, 9))
    else:
        one = _TEXT
    if get_origin(hint) is tuple:
        inner = get_args(hint)[0]
        if inner in {Head, PackUsed}:
            return st.just(())
        return st.lists(one, max_size=3).map(tuple)
    if optional and get_origin(hint) in {UnionType, Union}:
        return st.none() | one
    return one


def bodies() -> st.SearchStrategy[Body]:
    """Any body of any act, apart from those that act on entries."""
    plain = [cls for cls in BODIES.values() if cls not in {Amended, Dropped, Accepted}]
    return st.one_of(
        *(st.builds(cls, **{f.name: _value(f.name, get_type_hints(cls)[f.name]) for f in fields(cls)}) for cls in plain)
    )


_BODIES = bodies()
_ACTS_ON_ENTRIES = st.builds(Dropped, st.sampled_from(IDS), st.just("wrong")) | st.just(Accepted(tuple(IDS)))


@st.composite
def visits(draw: st.DrawFn, most: int = 14) -> list[Entry]:
    """The entries of an arbitrary visit."""
    visit = Visit()
    for _ in range(draw(st.integers(0, most))):
        minutes = draw(st.integers(0, 90))
        place, component = draw(st.sampled_from(PLACES)), draw(st.sampled_from(COMPONENTS))
        media = tuple(draw(st.lists(st.sampled_from(["a" * 64, "b" * 64]), max_size=1)))
        visit.add(
            draw(_BODIES), minutes, place=place, component=component, media=media, draft=draw(st.integers(0, 9)) == 0
        )
    for _ in range(draw(st.integers(0, 2))):
        visit.add(draw(_ACTS_ON_ENTRIES))
    return visit.entries


def moments() -> st.SearchStrategy[datetime]:
    """Any moment during or after the visit."""
    return st.integers(-60, 3000).map(lambda minutes: START + timedelta(minutes=minutes))
