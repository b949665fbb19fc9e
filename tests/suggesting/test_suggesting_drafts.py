"""Suggestions become drafts only when their words were said; whatever the server does, what listening heard stands."""

import functools
import itertools
import json
from typing import Any

import jsonschema  # type: ignore[import-untyped] # its stubs are a package of their own
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from suggesting.scripted_server import Reply, Server, completion, drafts, raw, send, serving, slow
from witnessmark import packs
from witnessmark.listening import Draft, Heard, Line, Narration, SetAside, listen
from witnessmark.packs.model import Packs
from witnessmark.suggesting import Suggested, ask_endpoint, at_address, together
from witnessmark.suggesting.asking import chunks, schema
from witnessmark.suggesting.checking import Checker, Unfit

SAID = (
    (0.0, "Okay we're in the kitchen."),
    (3.0, "The handrail is loose."),
    (6.0, "the dehumidifier over there wheezes like my uncle"),
    (10.0, "Normally you'd want a pan under the water heater."),
    (14.0, "pressure at the hose bib eighty eight psi."),
    (18.0, "I turned the oven on."),
    (22.0, "the old range hood sings like a kettle, it is the gas sort"),
    (27.0, "the dishwasher sings"),
)
NARRATION = Narration("talk", tuple(Line(t, t + 2.5, text) for t, text in SAID))


@functools.cache
def shipped() -> Packs:
    return packs.read()


@functools.cache
def heard() -> Heard:
    """What listening makes of three of the lines, and one that it set aside: the others are left to suggestions here."""
    told = listen(NARRATION, shipped())
    mine = tuple(draft for draft in told.drafts if draft.start in {3.0, 14.0, 18.0})
    assert {draft.start for draft in mine} == {3.0, 14.0, 18.0}
    aside = SetAside(10.0, 12.5, "you'd want a pan under the water heater", "teaching")
    still_on = tuple(one for one in told.still_on if one.draft in mine)
    return Heard("talk", mine, (aside,), still_on, ())


def nothing_heard(narration: Narration) -> Heard:
    return Heard(narration.name, (), (), (), ())


def row(**fields: object) -> dict[str, Any]:
    whole: dict[str, Any] = dict.fromkeys(
        ("kind", "label", "place", "condition", "attribute", "measure", "value", "unit", "left", "reason")
    )
    whole |= {"start": 6.0, "end": 8.5, "quote": "dehumidifier over there wheezes like my uncle", "act": "saw"}
    whole |= {"label": "dehumidifier", "condition": "adverse", "what": "wheezes like my uncle", "sure": True}
    return whole | fields


HOOD = {"start": 22.0, "end": 24.5, "label": None, "kind": "range-hood", "quote": "old range hood sings like a kettle",
        "what": "sings like a kettle"}  # fmt: skip


def ask(reply: Reply, *, timeout: float = 10, narration: Narration = NARRATION) -> tuple[Suggested, Server]:
    with serving(reply) as server:
        endpoint = at_address(server.url, "toy-1b", timeout=timeout)
        known = heard() if narration is NARRATION else nothing_heard(narration)
        return ask_endpoint(narration, shipped(), known, endpoint), server


def numbers(suggested: Suggested) -> list[str]:
    return [problem.number for problem in suggested.problems]


def test_a_good_suggestion_becomes_a_draft() -> None:
    suggested, server = ask(drafts(row(**HOOD)))
    (draft,) = suggested.drafts
    assert (draft.act, draft.kind, draft.condition, draft.label) == ("saw", "range-hood", "adverse", "range hood")
    assert (draft.start, draft.end, draft.text) == (22.0, 24.5, "old range hood sings like a kettle")
    assert draft.what == "sings like a kettle"
    assert draft.why.startswith("endpoint toy-1b: ")
    assert numbers(suggested) == []
    assert server.paths == ["/v1/chat/completions"]
    assert server.asked[0]["response_format"]["json_schema"]["strict"] is True
    assert "[3.0-5.5] The handrail is loose." in server.said[0]


def test_suggestions_lie_among_what_was_heard_and_close_nothing() -> None:
    off = row(**HOOD, act="stopped", left="off")
    suggested, _ = ask(drafts(off, row(act="doubted")))
    whole = together(heard(), suggested)
    assert set(heard().drafts) <= set(whole.drafts)
    assert len(whole.drafts) == len(heard().drafts) + 2
    assert [d.start for d in whole.drafts] == sorted(d.start for d in whole.drafts)
    assert [r.draft.kind for r in whole.still_on] == [r.draft.kind for r in heard().still_on] == ["range"]
    assert len(whole.make_sure) == len(heard().make_sure) + 1


def test_something_started_stays_in_mind() -> None:
    suggested, _ = ask(drafts(row(**HOOD, act="ran", left="on")))
    assert [r.draft.kind for r in together(heard(), suggested).still_on] == ["range", "range-hood"]


UNFIT = [
    (row(quote="the dehumidifier is cracked"), "words that were not said"),
    (row(start=22.0, end=24.5), "words said at another time"),
    (row(quote="over"), "a quote too short or too long"),
    (row(quote="like uncle my"), "words that were not said"),
    (row(start=10.0, end=12.5, quote="want a pan under the water heater"), "within what was set aside"),
    (row(start=3.0, end=5.5, quote="handrail is loose"), "drafted already"),
    (row(act="condemned"), "no such act"),
    (row(kind="flux-capacitor"), "no such kind"),
    (row(condition="terrible"), "no such condition"),
    (row(condition=None), "no condition"),
    (row(label="boiler"), "it names no component"),
    (row(label=None), "it names no component"),
    (row(act="identified", attribute="soul", value="old"), "no such attribute"),
    (row(**HOOD, act="identified", attribute="fuel", value="electric"), "a value that was not said"),
    (row(**HOOD, act="identified", attribute="fuel"), "no attribute or no value"),
    (row(**HOOD, act="read", measure=None), "a reading without its measure"),
    (
        row(**HOOD, act="read", measure="water-pressure", unit="furlong", value=3),
        "a unit that is not one of the measure",
    ),
    (row(**HOOD, act="read", measure="water-pressure", unit="[psi]", value="lots"), "a value that is no number"),
    (row(**HOOD, act="read", measure="water-pressure", unit="[psi]", value=31), "a value that was not said"),
    (row(**HOOD, act="skipped", reason="tired"), "no such reason"),
    (row(**HOOD, act="ran", left="upside down"), "no such left"),
    (row(start="soon"), "not in the form asked for"),
    (row(start=True), "not in the form asked for"),
    (row(quote=7), "not in the form asked for"),
    ({}, "not in the form asked for"),
    (None, "not in the form asked for"),
    ([row()], "not in the form asked for"),
]


@pytest.mark.parametrize(("wrong", "reason"), UNFIT, ids=[f"{n}-{why}" for n, (_, why) in enumerate(UNFIT)])
def test_what_does_not_rest_on_the_words_is_dropped_counted_and_told(wrong: Any, reason: str) -> None:
    good = row(start=27.0, end=29.5, quote="the dishwasher sings", kind="dishwasher", act="doubted")
    suggested, _ = ask(drafts(wrong, good))
    assert [d.act for d in suggested.drafts] == ["doubted"]
    assert suggested.dropped == {reason: 1}
    assert numbers(suggested) == ([] if reason == "drafted already" else ["WM665"])


def test_a_reading_and_a_fact_need_their_value_said() -> None:
    said = Narration("n", (Line(0, 3, "gauge at the bib wavers near sixty four psi"), Line(4, 6, "gas one, this hood")))
    rows = (
        row(start=0, end=3, quote="gauge at the bib wavers near sixty four psi", act="read", kind="hose-bib",
            measure="water-pressure", value=64, unit="[psi]"),
        row(start=4, end=6, quote="gas one this hood", act="identified", kind="range-hood", attribute="fuel", value="gas"),
    )  # fmt: skip
    checker = Checker(said, nothing_heard(said), shipped(), "m")
    reading, fact = (checker.draft(one) for one in rows)
    assert (str(reading.value), reading.unit, reading.measure, reading.quantity) == (
        "64",
        "[psi]",
        "water-pressure",
        "water pressure",
    )
    assert (fact.attribute, fact.value) == ("fuel", "gas")


def test_nothing_the_model_writes_gets_into_a_draft_unsaid() -> None:
    inventing = row(**{**HOOD, "what": "fire hazard, replace at once", "label": "bomb", "place": "master bedroom"})
    (draft,) = ask(drafts(inventing))[0].drafts
    assert draft.what == draft.text
    assert draft.place.sort == "house"
    assert "bomb" not in json.dumps(draft.as_json())


def test_the_same_words_are_drafted_once() -> None:
    suggested, _ = ask(drafts(row(**HOOD), row(**HOOD), row(**HOOD, condition="unclear")))
    assert len(suggested.drafts) == 1
    assert suggested.dropped == {"drafted already": 2}


GARBAGE = {
    "an error of the server": (raw(b'{"error": "out of memory"}', 500), "WM663"),
    "not found": (raw(b"", 404), "WM663"),
    "sent elsewhere": (raw(b"", 302), "WM663"),
    "an empty answer": (raw(b""), "WM664"),
    "no JSON": (raw(b"<html>welcome</html>"), "WM664"),
    "bytes": (raw(bytes(range(256))), "WM664"),
    "another form": (raw(b'{"result": "ok"}'), "WM664"),
    "no choices": (raw(b'{"choices": []}'), "WM664"),
    "a list": (raw(b"[1, 2]"), "WM664"),
    "null content": (raw(b'{"choices": [{"message": {"content": null}}]}'), "WM664"),
    "prose": (raw(completion("Sure! Here are the drafts you asked for.")), "WM664"),
    "half an answer": (raw(completion('{"drafts": [{"start": 3.0, "quote": "the hand')), "WM664"),
    "drafts that are no list": (raw(completion('{"drafts": {"a": 1}}')), "WM664"),
    "no drafts": (raw(completion('{"entries": []}')), "WM664"),
    "endless nesting": (raw(completion('{"drafts": ' + "[" * 100_000)), "WM664"),
    "an answer that breaks off": (raw(completion('{"drafts": []}'), promised=10_000), "WM662"),
    "a flood": (raw(b" " * 5_000_000), "WM662"),
    "too late": (slow(3), "WM662"),
    "byte by byte": (slow(0.3, trickle=True), "WM662"),
}
LATE = {"too late", "byte by byte"}


@pytest.mark.parametrize("name", GARBAGE)
def test_whatever_the_server_does_what_was_heard_stands(name: str) -> None:
    reply, number = GARBAGE[name]
    in_time = 0.6 if name in LATE else 30  # a busy machine may take a while to send even nothing
    suggested, _ = ask(reply, timeout=in_time)
    assert suggested.drafts == ()
    assert (suggested.asked, suggested.failed) == (1, 1)
    assert numbers(suggested) == [number]
    whole = together(heard(), suggested)
    assert (whole.drafts, whole.set_aside, whole.still_on) == (heard().drafts, heard().set_aside, heard().still_on)


def test_fences_around_the_json_are_taken_off() -> None:
    text = "```json\n" + json.dumps({"drafts": [row(**HOOD)]}) + "\n```"
    assert len(ask(raw(completion(text)))[0].drafts) == 1


def test_a_server_without_schemas_is_asked_once_more_without() -> None:
    def reply(_server: Server, handler: Any, asked: dict[str, Any]) -> None:
        if "response_format" in asked:
            send(handler, b'{"error": "response_format is not supported"}', 400)
        else:
            send(handler, completion(json.dumps({"drafts": [row(**HOOD)]})))

    suggested, server = ask(reply, narration=LONG)
    assert len(server.asked) == suggested.asked + 1
    assert "Answer with JSON alone" in server.asked[-1]["messages"][0]["content"]
    assert suggested.failed == 0


LONG = Narration(
    "long",
    tuple(Line(4.0 * n, 4.0 * n + 3, f"number {n} the range hood over there sings like a kettle") for n in range(200)),
)


def test_long_talk_is_sent_in_pieces_that_overlap() -> None:
    pieces = list(chunks(LONG.lines))
    assert len(pieces) > 3
    assert all(set(a) & set(b) for a, b in itertools.pairwise(pieces))
    assert dict.fromkeys(line for piece in pieces for line in piece) == dict.fromkeys(LONG.lines)
    one = Narration("one", (Line(0, 900, "word " * 5_000),))
    assert [len(piece) for piece in chunks(one.lines)] == [1]
    assert list(chunks(())) == []


def test_a_server_that_is_gone_is_not_asked_for_ever() -> None:
    with serving(raw(b"")) as server:
        url = server.url
    suggested = ask_endpoint(LONG, shipped(), nothing_heard(LONG), at_address(url, "m", timeout=1))
    assert (suggested.asked, suggested.failed) == (2, 2)
    assert numbers(suggested) == ["WM662", "WM662", "WM666"]


def test_one_bad_piece_does_not_spoil_the_others() -> None:
    count = itertools.count()

    def reply(_server: Server, handler: Any, asked: dict[str, Any]) -> None:
        if next(count) == 1:
            send(handler, b"", 500)
            return
        first = asked["messages"][-1]["content"].splitlines()[0]
        start = float(first[1:].partition("-")[0])
        quote = " ".join(first.partition("] ")[2].split()[2:7])
        send(
            handler,
            completion(json.dumps({"drafts": [row(start=start, end=start + 3, quote=quote, label="range hood")]})),
        )

    suggested, server = ask(reply, narration=LONG)
    assert suggested.failed == 1
    assert len(suggested.drafts) == len(server.asked) - 1
    assert numbers(suggested) == ["WM663"]


def test_an_answer_can_satisfy_the_schema_and_a_wrong_one_cannot() -> None:
    """jsonschema is the reference reader of the schema."""
    check = jsonschema.Draft202012Validator(schema(shipped()))
    check.check_schema(schema(shipped()))
    assert check.is_valid({"drafts": [row(**HOOD)]})
    assert check.is_valid({"drafts": []})
    assert not check.is_valid({"drafts": [row(kind="flux-capacitor")]})
    assert not check.is_valid({"drafts": [row() | {"advice": "rip it out"}]})


ANYTHING = st.recursive(
    st.none()
    | st.booleans()
    | st.floats()
    | st.text(max_size=12)
    | st.sampled_from(["range-hood", "adverse", "saw", "on"]),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=6), inner, max_size=3),
    max_leaves=6,
)
QUOTES = st.sampled_from([line.text for line in NARRATION.lines]) | st.text(max_size=40)


@given(
    st.lists(
        st.fixed_dictionaries(
            {}, optional={name: (QUOTES if name == "quote" else ANYTHING | st.just(row()[name])) for name in row()}
        )
        | ANYTHING,
        max_size=6,
    )
)
@settings(max_examples=120, deadline=None)
def test_no_row_whatever_raises_or_drafts_unsaid_words(rows: list[Any]) -> None:
    checker = Checker(NARRATION, heard(), shipped(), "m")
    made: list[Draft] = []
    for one in rows:
        try:
            made.append(checker.draft(one))
        except Unfit:
            continue
    everything = " ".join(line.text for line in NARRATION.lines)
    for draft in made:
        assert all(word in everything for word in draft.text.split())
        assert all(not (row_.start <= draft.start and draft.end <= row_.end) for row_ in heard().set_aside)
        json.dumps(draft.as_json())
