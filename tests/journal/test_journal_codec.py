"""One entry, one line: round trip, strictness, and what happens to lines that are damaged, foreign or from the future."""

from __future__ import annotations

import dataclasses
import json
from hashlib import sha256
from typing import Any

import pytest
import rfc8785
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st

import entry_strategies
from visit_builder import build_visit
from witnessmark.journal.acts import Amended, Count, Read, Saw
from witnessmark.journal.codec import from_line, from_plain, hash_of, problems_of_unread, to_line, to_plain, with_hash
from witnessmark.journal.entry import Entry, Source, Unread
from witnessmark.journal.lines import read_lines, write_lines
from witnessmark.problems import Problem, Refusal

VISIT = build_visit(40, seed=3)
ENTRY = next(entry for entry in VISIT if isinstance(entry.body, Saw))


def rehashed(plain: dict[str, Any]) -> bytes:
    """The line of plain data, its hash made to fit; by the library, not by the code under test."""
    bare = {name: value for name, value in plain.items() if name != "hash"}
    return rfc8785.dumps({**bare, "hash": sha256(rfc8785.dumps(bare)).hexdigest()})


@given(entry_strategies.entries())
@settings(max_examples=200, suppress_health_check=[HealthCheck.too_slow])
def test_round_trip(entry: Entry) -> None:
    line = to_line(entry)
    assert b"\n" not in line
    assert from_line(line, "here") == entry
    assert from_plain(to_plain(entry), "here") == entry
    assert from_plain(json.loads(line), "here") == entry
    assert line == rehashed(to_plain(entry))
    assert entry.hash == hash_of(entry) == to_plain(entry)["hash"]


@given(entry_strategies.entries(), entry_strategies.unread_bodies, st.sampled_from([("saw", 2), ("heard", 1)]))
@settings(max_examples=100, suppress_health_check=[HealthCheck.too_slow])
@example(ENTRY, {"large": 1e300, "whole": 2.0**60, "é": [], "\U00010000": 1, "\ue000": 2}, ("heard", 1))
def test_acts_to_come_are_kept_to_the_byte(entry: Entry, body: dict[str, Any], act: tuple[str, int]) -> None:
    kept = entry_strategies.as_unread(entry, *act, rfc8785.dumps(body).decode())
    line = to_line(kept)
    assert line == rehashed({**to_plain(entry), "act": act[0], "v": act[1], "body": body})
    assert from_line(line, "here") == kept
    assert to_line(from_plain(json.loads(line), "here")) == line
    (problem,) = problems_of_unread([entry, kept])
    assert problem.number == "WM207"
    assert problem.entries == (kept.id,)
    damaged = line.replace(b'"v":', b'"v":1', 1)
    assert isinstance(from_line(damaged, "here"), Problem)


def test_an_amendment_to_an_act_to_come_is_kept_too() -> None:
    plain = to_plain(with_hash(dataclasses.replace(ENTRY, act="amended", body=Amended(ENTRY.id, "", "saw", 1, Saw()))))
    plain["body"] = {**plain["body"], "v": 7, "body": {"new": 1.5}}
    line = rehashed(plain)
    entry = from_line(line, "here")
    assert isinstance(entry, Entry)
    assert isinstance(entry.body, Unread)
    assert to_line(entry) == line


@given(
    st.binary(max_size=200) | st.text(max_size=200).map(str.encode) | entry_strategies.unread_bodies.map(rfc8785.dumps)
)
@settings(max_examples=300)
@example(b"")
@example(b"null")
@example(b"[" * 100_000)
@example(b'{"a":' * 100_000)
@example(b'"' + b"\\" * 1001)
@example(b"9" * 10_000)
@example(b"NaN")
@example(b'{"id":NaN}')
@example("\ufeff{}".encode())
@example(json.dumps({**to_plain(ENTRY), "by": "\ud800"}).encode())
@example(json.dumps({**to_plain(ENTRY), "\ud800": 1}).encode())
def test_any_bytes_give_a_problem_and_never_an_error(data: bytes) -> None:
    found = from_line(data, "journal.jsonl line 7")
    assert isinstance(found, Problem)
    assert found.where == "journal.jsonl line 7"
    assert str(found).encode()


@pytest.mark.parametrize("text", ["[" * 101, '{"a":' * 101, '{"a":' * 200 + "1" + "}" * 200])
def test_deep_lines_are_refused_before_they_are_parsed(text: str) -> None:
    found = from_line(text.encode(), "line 1")
    assert isinstance(found, Problem)
    assert found.detail == "nested deeper than 100"


def test_brackets_within_text_are_not_depth() -> None:
    said = '[[[{"' * 200
    entry = with_hash(dataclasses.replace(ENTRY, body=Saw(said)))
    assert from_line(to_line(entry), "line 1") == entry


SCRAPS: st.SearchStrategy[Any] = (
    st.none() | st.booleans() | st.integers() | st.text(max_size=3) | st.just([]) | st.just({}) | st.just(["a"])
)


@given(st.sampled_from(VISIT), st.data())
@settings(max_examples=200)
def test_any_field_replaced_gives_an_entry_or_a_problem(entry: Entry, data: st.DataObject) -> None:
    plain = to_plain(entry)
    inner = data.draw(st.sampled_from([plain, plain["body"], plain["source"]]))
    name = data.draw(st.sampled_from([*inner, "extra"]))
    inner[name] = data.draw(SCRAPS)
    try:
        line = rehashed(plain)
    except rfc8785.CanonicalizationError:
        line = json.dumps(plain).encode()
    found = from_line(line, "here")
    assert isinstance(found, Problem) or to_line(found) == line


WRONG: list[tuple[str, dict[str, Any], str, str]] = [
    ("WM202", {"colour": "red"}, "colour", "allowed are act, at"),
    ("WM202", {"body": {"sure": True, "colour": "red"}}, "body.colour", "allowed are what, state"),
    ("WM202", {"source": {"sort": "tap", "pen": "x"}}, "source.pen", "allowed are sort, file"),
    ("WM203", {"by": ...}, "by", "who records"),
    ("WM203", {"body": {"what": "x"}}, "body.sure", "true or false"),
    ("WM203", {"body": {"sure": True, "count": {"checked": 1}}}, "body.count.adverse", "whole number"),
    ("WM204", {"id": "7"}, "id", "UUID version 7"),
    ("WM204", {"id": "a8098c1a-f86e-41da-bd1a-00112444be1e"}, "id", "UUID version 7"),
    ("WM204", {"job": 3}, "job", "UUID"),
    ("WM204", {"at": "2026-03-14T09:26:53"}, "at", "offset"),
    ("WM204", {"logged": "yesterday"}, "logged", "offset"),
    ("WM204", {"n": 0}, "n", "from 1"),
    ("WM204", {"n": True}, "n", "from 1"),
    ("WM204", {"v": 1.5}, "v", "from 1"),
    ("WM204", {"prev": "0"}, "prev", "64 hex digits"),
    ("WM204", {"media": []}, "media", "left out"),
    ("WM204", {"media": ["AB" * 32]}, "media", "lower-case hex"),
    ("WM204", {"draft": False}, "draft", "left out"),
    ("WM204", {"place": ""}, "place", "left out"),
    ("WM204", {"place": None}, "place", "left out"),
    ("WM204", {"by": ""}, "by", "who records"),
    ("WM204", {"body": []}, "body", "an object"),
    ("WM204", {"body": {"sure": "yes"}}, "body.sure", "true or false"),
    ("WM204", {"body": {"sure": True, "what": ""}}, "body.what", "left out"),
    ("WM204", {"body": {"sure": True, "part": None}}, "body.part", "text"),
    ("WM204", {"body": {"sure": True, "count": 3}}, "body.count", "an object"),
    ("WM204", {"body": {"sure": True, "count": {"checked": -1, "adverse": 0}}}, "body.count.checked", "from 0"),
    ("WM204", {"source": {"sort": "rumour"}}, "source", "tap, speech"),
    ("WM204", {"act": "took", "body": {"sort": "photo", "speaks_of": "x"}}, "body.speaks_of", "a list"),
    ("WM204", {"act": "took", "body": {"sort": "photo", "damage": False}}, "body.damage", "left out"),
    ("WM204", {"act": "amended", "body": {"v": 1, "act": "amended", "body": {"v": 1}}}, "body.act", "not an amendment"),
    ("WM204", {"act": "amended", "body": {"v": 1, "body": {"sure": True}}}, "body.act", "now holds"),
    ("WM204", {"act": "amended", "body": {"v": 1, "act": "saw", "body": 3}}, "body.body", "an object"),
    ("WM204", {"act": "amended", "body": {"v": 1, "at": "noon"}}, "body.at", "offset"),
    ("WM204", {"act": "amended", "body": {"v": 0}}, "body.v", "from 1"),
]  # fmt: skip


@pytest.mark.parametrize(("number", "change", "field", "allowed"), WRONG, ids=lambda value: str(value)[:40])
def test_what_does_not_belong_is_named(number: str, change: dict[str, Any], field: str, allowed: str) -> None:
    plain = {name: value for name, value in {**to_plain(ENTRY), **change}.items() if value is not ...}
    found = from_line(rehashed(plain), "journal.jsonl line 12")
    assert isinstance(found, Problem)
    assert (found.number, found.where) == (number, "journal.jsonl line 12")
    assert found.detail.startswith(field + " ")
    assert allowed in found.detail
    assert found.entries == ((plain["id"],) if change.get("id") != "7" and "a8098" not in str(change) else ())
    with pytest.raises(Refusal):
        from_plain(plain, "here")


def test_a_wrong_hash_is_named_with_the_entry() -> None:
    line = to_line(ENTRY)
    found = from_line(line.replace(b"A. Example", b"B. Example").replace(b"B. Example", b"C. Example"), "line 3")
    assert isinstance(found, Problem)
    assert (found.number, found.where, found.entries) == ("WM205", "line 3", (ENTRY.id,))
    with pytest.raises(Refusal) as caught:
        to_line(dataclasses.replace(ENTRY, by="C. Example"))
    assert caught.value.problems[0].number == "WM205"


@pytest.mark.parametrize(
    "respell",
    [
        lambda line: json.dumps(json.loads(line)).encode(),
        lambda line: line + b" ",
        lambda line: line + b"\r",
        lambda line: line.replace(b'"n":', b'"n":1,"n":', 1),
        lambda line: line.replace(b"Example", b"\\u0045xample", 1),
        lambda line: b"{" + b",".join(reversed(line[1:-1].split(b',"prev"'))) + b"}",
    ],
)
def test_another_spelling_of_the_same_entry_is_refused(respell: Any) -> None:
    found = from_line(respell(to_line(ENTRY)), "line 3")
    assert isinstance(found, Problem)
    assert found.number in {"WM206", "WM201"}
    assert found.entries in {(ENTRY.id,), ()}


def test_what_could_not_be_read_back_is_not_written() -> None:
    wrong: list[tuple[dict[str, Any], str]] = [
        ({"body": Saw(what=3)}, "body.what"),  # type: ignore[arg-type] # what a caller may get wrong
        ({"body": Saw(count=Count(2**53))}, "body.count.checked"),
        ({"body": Read()}, "body"),
        ({"act": "seen"}, "body"),
        ({"body": Saw("\ud800")}, ""),
        ({"at": "now"}, "at"),
        ({"id": "1"}, "id"),
        ({"media": ("x",)}, "media"),
        ({"media": ["0" * 64]}, "media"),
        ({"source": Source("dream")}, "source"),
        ({"draft": 1}, "draft"),
        ({"place": ""}, "place"),
        ({"n": -1}, "n"),
        ({"body": Unread("{]"), "v": 2}, "body"),
        ({"body": Unread("[]"), "v": 2}, "body"),
    ]
    for change, field in wrong:
        with pytest.raises(Refusal) as caught:
            to_line(dataclasses.replace(ENTRY, hash="", **change))
        problem = caught.value.problems[0]
        assert problem.number in {"WM210", "WM208"}
        assert field in problem.detail


@given(st.data())
@settings(max_examples=300)
def test_one_flipped_byte_is_found_and_the_entry_named(data: st.DataObject) -> None:
    stored = write_lines(VISIT)
    at = data.draw(st.integers(0, len(stored) - 1))
    changed = bytearray(stored)
    changed[at] ^= data.draw(st.integers(1, 255))
    entries, problems = read_lines(bytes(changed), "journal.jsonl")
    hit = stored[:at].count(b"\n")
    assert problems
    assert f"line {hit + 1}" in problems[0].where
    assert set(entries) >= {entry for n, entry in enumerate(VISIT) if n not in {hit, hit + 1}}
    assert set(entries) < set(VISIT)


def test_a_journal_file_and_back() -> None:
    stored = write_lines(VISIT)
    assert read_lines(stored, "j") == (VISIT, [])
    assert read_lines(stored[:-1], "j") == (VISIT, [])  # the last newline may be missing
    assert read_lines(b"", "j") == ([], [])
    cut, problems = read_lines(stored[:-30], "j")
    assert cut == VISIT[:-1]
    assert [problem.where for problem in problems] == [f"j line {len(VISIT)}"]
