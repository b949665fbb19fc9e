"""Hypothesis strategies for entries of any act, made from the annotations of the record classes."""

from __future__ import annotations

import dataclasses
import types
import typing
from datetime import UTC, datetime, timedelta, timezone

from hypothesis import strategies as st

from witnessmark.journal.acts import BODIES, Amended
from witnessmark.journal.canonical import LARGEST_WHOLE
from witnessmark.journal.codec import with_hash
from witnessmark.journal.entry import SOURCES, Entry, Source, Unread
from witnessmark.journal.identity import Ids
from witnessmark.journal.moment import text_of

__all__ = ["bodies", "entries", "hashes", "ids", "times", "unread_bodies"]

texts = st.text(max_size=12)
hashes = st.binary(min_size=32, max_size=32).map(bytes.hex)
ids = st.builds(
    lambda ms, seed: Ids(lambda bits: seed % 2**bits).new(ms), st.integers(0, 2**48 - 1), st.integers(0, 2**74)
)
_offsets = st.integers(-14 * 60, 14 * 60).map(lambda minutes: timezone(timedelta(minutes=minutes)))
times = st.builds(
    lambda moment, offset: text_of(moment.replace(tzinfo=UTC).astimezone(offset)),
    st.datetimes(datetime(1901, 1, 1), datetime(9997, 1, 1)),  # noqa: DTZ001 - the offset is added above
    _offsets,
)


def of_annotation(annotation: object) -> st.SearchStrategy[typing.Any]:
    if annotation is str:
        return texts
    if annotation is int:
        return st.integers(0, LARGEST_WHOLE)
    if annotation is bool:
        return st.booleans()
    parts = typing.get_args(annotation)
    if typing.get_origin(annotation) is tuple:
        return st.lists(of_annotation(parts[0]), max_size=3).map(tuple)
    if typing.get_origin(annotation) is types.UnionType:
        kept = [part for part in parts if part is not types.NoneType]
        assert len(kept) == 1
        return st.none() | of_annotation(kept[0])
    assert isinstance(annotation, type)
    return of_class(annotation)


def of_class(cls: type[typing.Any], **fixed: st.SearchStrategy[typing.Any]) -> st.SearchStrategy[typing.Any]:
    hints = typing.get_type_hints(cls)
    fields = {name: fixed[name] if name in fixed else of_annotation(hints[name]) for name in hints}
    return st.builds(cls, **fields)


_plain = {key: of_class(cls) for key, cls in BODIES.items() if cls is not Amended}
_empty_amendments = of_class(
    Amended, body=st.none(), at=st.none() | times, act=texts.filter(lambda act: act != "amended"), v=st.integers(1, 9)
)


@st.composite
def amendments(draw: st.DrawFn) -> Amended:
    act, v = draw(st.sampled_from(sorted(_plain)))
    amended: Amended = draw(of_class(Amended, body=_plain[act, v], at=st.none() | times))
    return dataclasses.replace(amended, act=act, v=v)


bodies: dict[tuple[str, int], st.SearchStrategy[typing.Any]] = {
    **_plain,
    ("amended", 1): amendments() | _empty_amendments,
}
_json = st.recursive(
    st.none()
    | st.booleans()
    | st.integers(-LARGEST_WHOLE, LARGEST_WHOLE)
    | st.floats(allow_nan=False, allow_infinity=False)
    | texts,
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(texts, inner, max_size=3),
    max_leaves=8,
)
#: Bodies of acts to come: any JSON object.
unread_bodies = st.dictionaries(texts, _json, max_size=3)


@st.composite
def entries(draw: st.DrawFn) -> Entry:
    act, v = draw(st.sampled_from(sorted(bodies)))
    return with_hash(
        Entry(
            id=draw(ids),
            job=draw(ids),
            by=draw(st.text(min_size=1, max_size=8)),
            device=draw(st.text(min_size=1, max_size=8)),
            n=draw(st.integers(1, LARGEST_WHOLE)),
            prev=draw(hashes),
            at=draw(times),
            logged=draw(times),
            act=act,
            v=v,
            body=draw(bodies[act, v]),
            place=draw(st.none() | st.text(min_size=1, max_size=8)),
            component=draw(st.none() | st.text(min_size=1, max_size=8)),
            media=tuple(draw(st.lists(hashes, max_size=2))),
            source=draw(of_class(Source, sort=st.sampled_from(SOURCES))),
            draft=draw(st.booleans()),
        )
    )


def as_unread(entry: Entry, act: str, v: int, json: str) -> Entry:
    """The entry as a newer release might have written it."""
    return with_hash(dataclasses.replace(entry, act=act, v=v, body=Unread(json)))
