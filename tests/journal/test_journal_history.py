"""Random histories of several devices: the order of delivery never matters, and nothing is ever lost."""

from __future__ import annotations

import random
from datetime import UTC, datetime, timedelta

from hypothesis import given, settings
from hypothesis import strategies as st

from witnessmark.journal.acts import Accepted, Amended, Body, Dropped, Saw
from witnessmark.journal.chain import check_chains
from witnessmark.journal.entry import Entry, Source
from witnessmark.journal.fold import Fact, Record, fold, problems_of
from witnessmark.journal.identity import Ids, new_id
from witnessmark.journal.lines import read_lines, write_lines
from witnessmark.journal.merge import merge
from witnessmark.journal.pen import Pen

JOB = new_id()
STEPS = st.lists(
    st.tuples(
        st.sampled_from(["saw", "draft", "accepted", "accepted", "dropped", "amended", "amended", "draft amended"]),
        st.sampled_from("abc"),
        st.integers(0, 30),
        st.integers(0, 30),
        st.integers(-20, 40),
    ),
    min_size=1,
    max_size=25,
)
Steps = list[tuple[str, str, int, int, int]]


def play(steps: Steps, *, steady: bool) -> list[Entry]:
    """A history: each step writes on one of three devices an act upon earlier entries. Steady clocks only go on."""
    now = datetime(2026, 3, 14, 9, tzinfo=UTC)
    ids = Ids(random.Random(len(steps)).getrandbits)  # noqa: S311 - any bits will do
    clock = [now]
    pens = {device: Pen(JOB, "I. Example", device, now=lambda: clock[0], ids=ids) for device in "abc"}
    entries: list[Entry] = []
    for act, device, first, second, seconds in steps:
        clock[0] += timedelta(seconds=abs(seconds) + 1 if steady else seconds)
        names = [entries[k % len(entries)].id for k in (first, second)] if entries else [new_id(), new_id()]
        body: Body
        if act in {"saw", "draft"} or not entries:
            body = Saw(f"thing {len(entries)}")
        elif act == "accepted":
            body = Accepted(tuple(names))
        elif act == "dropped":
            body = Dropped(names[0], "a mistake")
        else:
            body = Amended(names[0], "misread", "saw", 1, Saw(f"thing {len(entries)}"))
        source = Source("program") if seconds % 7 == 0 else Source()
        entries.append(pens[device].write(body, draft=act.startswith("draft"), source=source))
    return entries


@given(STEPS, st.randoms(use_true_random=False))
@settings(max_examples=200)
def test_any_order_of_delivery_gives_the_same_record_and_merge(steps: Steps, chance: random.Random) -> None:
    entries = play(steps, steady=False)
    shuffled = chance.sample(entries, len(entries)) + chance.choices(entries, k=3)
    record = fold(entries)
    assert fold(shuffled) == record
    assert list(fold(shuffled).entries) == list(record.entries)
    assert problems_of(fold(shuffled)) == problems_of(record)
    cut = chance.randrange(len(entries) + 1)
    assert merge(shuffled[:cut], shuffled[cut:]) == merge(entries)
    assert check_chains(shuffled) == []
    assert read_lines(write_lines(entries), "j") == (entries, [])


@given(STEPS, st.randoms(use_true_random=False))
@settings(max_examples=100)
def test_merge_is_a_union(steps: Steps, chance: random.Random) -> None:
    entries = play(steps, steady=False)
    a, b, c = (chance.sample(entries, chance.randrange(len(entries) + 1)) for _ in range(3))
    ab, problems = merge(a, b)
    assert problems == []
    assert set(ab) == set(a) | set(b)
    assert merge(ab, ab) == merge(ab) == (ab, [])
    assert merge(b, a) == (ab, [])
    assert merge(merge(a, b)[0], c) == merge(a, merge(b, c)[0])


def reachable(record: Record) -> set[str]:
    """Every entry that the record still leads to."""
    facts = [*record.facts, *record.drafts, *(dismissal.fact for dismissal in record.dismissed)]
    return {id_ for fact in facts for id_ in (fact.id, fact.entry.id, *fact.amended_by)} | set(record.entries)


@given(STEPS)
@settings(max_examples=200)
def test_nothing_is_lost(steps: Steps) -> None:
    entries = play(steps, steady=False)
    record = fold(entries)
    assert reachable(record) == {entry.id for entry in entries}
    assert all(record.entries[entry.id] == entry for entry in entries)
    shown = [fact.id for fact in (*record.facts, *record.drafts, *(gone.fact for gone in record.dismissed))]
    assert len(shown) == len(set(shown))
    assert set(shown) >= {entry.id for entry in entries if isinstance(entry.body, Saw)}
    for fact in record.facts:
        for id_ in fact.amended_by:
            assert isinstance(record.entries[id_].body, Amended)


class Oracle:
    """The rules once more, read straight from their words, one entry at a time and without regard to speed.

    Holds for histories in which every entry names earlier ones and clocks only go on.
    """

    def __init__(self, entries: list[Entry]) -> None:
        self.entries = entries
        self.by_id = {entry.id: entry for entry in entries}

    def dropped(self, id_: str) -> bool:
        return any(isinstance(e.body, Dropped) and e.body.of == id_ and self.counts(e) for e in self.entries)

    def accepted(self, id_: str) -> bool:
        return any(
            isinstance(e.body, Accepted) and id_ in e.body.of and e.source.sort != "program" and self.counts(e)
            for e in self.entries
        )

    def counts(self, entry: Entry) -> bool:
        return not self.dropped(entry.id) and (not entry.draft or self.accepted(entry.id))

    def root(self, id_: str) -> str:
        body = self.by_id[id_].body
        return self.root(body.of) if isinstance(body, Amended) else id_

    def holds(self, id_: str) -> str:
        """What the entry says now."""
        body = self.by_id[id_].body
        assert isinstance(body, Saw)
        what = body.what
        for entry in self.entries:
            body = entry.body
            if isinstance(body, Amended) and self.root(entry.id) == id_ and self.counts(entry):
                assert isinstance(body.body, Saw)
                what = body.body.what
        return what


@given(STEPS)
@settings(max_examples=200)
def test_the_same_as_the_rules_read_word_for_word(steps: Steps) -> None:
    entries = play(steps, steady=True)
    oracle = Oracle(entries)
    record = fold(entries)

    def said(facts: list[Fact]) -> dict[str, str]:
        return {fact.id: fact.body.what for fact in facts if isinstance(fact.body, Saw)}

    saw = [entry for entry in entries if isinstance(entry.body, Saw)]
    assert said(list(record.facts)) == {e.id: oracle.holds(e.id) for e in saw if oracle.counts(e)}
    assert said([gone.fact for gone in record.dismissed]) == {
        e.id: oracle.holds(e.id) for e in saw if oracle.dropped(e.id)
    }
    assert said(list(record.drafts)) == {
        e.id: oracle.holds(e.id) for e in saw if not oracle.counts(e) and not oracle.dropped(e.id)
    }
