"""What holds after drafts, acceptances, amendments and removals: each rule by an example."""

from __future__ import annotations

import dataclasses
from collections.abc import Callable
from datetime import UTC, datetime, timedelta

import pytest

from entry_strategies import as_unread
from witnessmark.journal.acts import Accepted, Amended, Body, Dropped, Read, Saw, Sealed
from witnessmark.journal.entry import Entry, Source
from witnessmark.journal.fold import Record, fold, problems_of
from witnessmark.journal.identity import Ids, new_id
from witnessmark.journal.pen import Pen

JOB = new_id()


class Desk:
    """Two devices that write into one record; time goes on by a second an entry, or where it is put."""

    def __init__(self) -> None:
        self.now = datetime(2026, 3, 14, 9, tzinfo=UTC)
        ids = Ids()
        self.pens = {name: Pen(JOB, "I. Example", name, now=self.tick, ids=ids) for name in "ab"}
        self.entries: list[Entry] = []

    def tick(self) -> datetime:
        self.now += timedelta(seconds=1)
        return self.now

    def write(self, body: Body, device: str = "a", **more: object) -> str:
        self.entries.append(self.pens[device].write(body, **more))  # type: ignore[arg-type] # passed on as given
        return self.entries[-1].id

    def saw(self, what: str = "crack", device: str = "a", **more: object) -> str:
        return self.write(Saw(what), device, **more)

    def amend(self, of: str, what: str, device: str = "a", **more: object) -> str:
        return self.write(Amended(of, "misread", "saw", 1, Saw(what)), device, **more)

    def drop(self, of: str, device: str = "a", **more: object) -> str:
        return self.write(Dropped(of, "a mistake"), device, **more)

    def accept(self, *of: str, device: str = "a", **more: object) -> str:
        return self.write(Accepted(of), device, **more)

    @property
    def record(self) -> Record:
        return fold(self.entries)

    @property
    def says(self) -> list[str]:
        return [fact.body.what for fact in self.record.facts if isinstance(fact.body, Saw)]


@pytest.fixture
def desk() -> Desk:
    return Desk()


def test_an_entry_is_a_fact_as_recorded(desk: Desk) -> None:
    id_ = desk.saw(place="hall", component="stair", media=("ab" * 32,), source=Source("speech", words="a crack"))
    (fact,) = desk.record.facts
    entry = desk.entries[0]
    assert (fact.id, fact.act, fact.v, fact.body, fact.at) == (id_, "saw", 1, Saw("crack"), entry.at)
    assert (fact.place, fact.component, fact.media) == ("hall", "stair", ("ab" * 32,))
    assert (fact.entry, fact.source.words, fact.amended_by, fact.accepted_by) == (entry, "a crack", (), None)
    assert desk.record.entries == {id_: entry}


def test_facts_are_ordered_by_the_instant_they_happened(desk: Desk) -> None:
    later = desk.saw(at="2026-03-14T09:00:00-05:00")
    earlier = desk.saw(at="2026-03-14T13:00:00Z")
    assert [fact.id for fact in desk.record.facts] == [earlier, later]


def test_a_draft_counts_once_a_person_accepts_it(desk: Desk) -> None:
    draft = desk.saw(draft=True)
    assert desk.says == []
    assert [fact.id for fact in desk.record.drafts] == [draft]
    acceptance = desk.accept(draft)
    (fact,) = desk.record.facts
    assert (fact.id, fact.accepted_by) == (draft, acceptance)
    assert desk.record.drafts == ()


def test_the_first_acceptance_is_the_one_named(desk: Desk) -> None:
    draft = desk.saw(draft=True)
    first = desk.accept(draft)
    desk.accept(draft, device="b")
    assert desk.record.facts[0].accepted_by == first


def test_a_program_cannot_accept(desk: Desk) -> None:
    draft = desk.saw(draft=True)
    acceptance = desk.accept(draft, source=Source("program", rule="all"))
    assert desk.says == []
    assert [entry.id for entry in desk.record.waiting] == [acceptance]
    assert [problem.number for problem in problems_of(desk.record)] == ["WM235"]


def test_a_dropped_acceptance_no_longer_counts(desk: Desk) -> None:
    draft = desk.saw(draft=True)
    acceptance = desk.accept(draft)
    removal = desk.drop(acceptance)
    assert desk.says == []
    assert [fact.id for fact in desk.record.drafts] == [draft]
    desk.drop(removal)
    assert desk.says == ["crack"]


def test_an_acceptance_may_be_a_draft_itself(desk: Desk) -> None:
    draft = desk.saw(draft=True)
    acceptance = desk.accept(draft, draft=True)
    assert desk.says == []
    assert [fact.id for fact in desk.record.drafts] == [draft, acceptance]
    desk.accept(acceptance)
    assert desk.says == ["crack"]


def test_accepting_what_has_not_arrived_waits_and_takes_effect_later(desk: Desk) -> None:
    here, missing = desk.saw("here", draft=True), desk.saw("missing", draft=True)
    acceptance = desk.accept(here, missing)
    without = [entry for entry in desk.entries if entry.id != missing]
    record = fold(without)
    assert [fact.id for fact in record.facts] == [here]
    assert [entry.id for entry in record.waiting] == [acceptance]
    assert [problem.number for problem in problems_of(record)] == ["WM231"]
    assert desk.says == ["here", "missing"]
    assert desk.record.waiting == ()


def test_an_amendment_replaces_as_a_whole(desk: Desk) -> None:
    id_ = desk.saw("crack", place="hall", component="stair", media=("ab" * 32,))
    amendment = desk.write(Amended(id_, "measured it", "read", 1, Read("width", "3", "mm"), "cellar"))
    (fact,) = desk.record.facts
    assert (fact.id, fact.act, fact.body, fact.place) == (id_, "read", Read("width", "3", "mm"), "cellar")
    assert (fact.component, fact.media, fact.amended_by) == (None, (), (amendment,))
    assert fact.at == fact.entry.at == desk.entries[0].at
    assert fact.entry.body == Saw("crack")


def test_an_amendment_may_state_the_time_and_later_ones_keep_it(desk: Desk) -> None:
    id_ = desk.saw()
    moved = desk.write(Amended(id_, "earlier", "saw", 1, Saw("crack"), at="2026-03-14T08:00:00Z"))
    assert desk.record.facts[0].at == "2026-03-14T08:00:00Z"
    worded = desk.amend(moved, "wide crack")
    assert (desk.says, desk.record.facts[0].at) == (["wide crack"], "2026-03-14T08:00:00Z")
    assert desk.record.facts[0].amended_by == (moved, worded)
    desk.drop(moved)
    assert (desk.says, desk.record.facts[0].at) == (["wide crack"], desk.entries[0].at)


def test_the_last_amendment_holds_and_dropping_it_brings_back_the_one_before(desk: Desk) -> None:
    id_ = desk.saw("one")
    desk.amend(id_, "two")
    third = desk.amend(id_, "three")
    assert desk.says == ["three"]
    desk.drop(third)
    assert desk.says == ["two"]


def test_an_amendment_of_an_amendment_amends_the_entry(desk: Desk) -> None:
    id_ = desk.saw("one")
    second = desk.amend(id_, "two")
    third = desk.amend(second, "three", device="b")
    (fact,) = desk.record.facts
    assert (fact.id, fact.amended_by, desk.says) == (id_, (second, third), ["three"])
    assert desk.record.conflicts == ()


def test_amendments_in_ignorance_are_told_and_the_later_holds(desk: Desk) -> None:
    id_ = desk.saw("one")
    on_a = desk.amend(id_, "by a")
    on_b = desk.amend(id_, "by b", device="b")
    (conflict,) = desk.record.conflicts
    assert (conflict.of, conflict.amendments, desk.says) == (id_, (on_a, on_b), ["by b"])
    assert [problem.number for problem in problems_of(desk.record)] == ["WM234"]
    desk.drop(on_a)
    assert (desk.record.conflicts, desk.says) == ((), ["by b"])


def test_one_device_knows_what_it_wrote(desk: Desk) -> None:
    id_ = desk.saw("one")
    desk.amend(id_, "two")
    desk.amend(id_, "three")
    assert desk.record.conflicts == ()


def test_who_knows_of_an_amendment_comes_after_it_whatever_the_clock_says(desk: Desk) -> None:
    id_ = desk.saw("one")
    second = desk.amend(id_, "two")
    desk.now -= timedelta(hours=1)  # the clock of the second device is slow
    third = desk.amend(second, "three", device="b")
    assert (desk.says, desk.record.facts[0].amended_by) == (["three"], (second, third))
    desk.now -= timedelta(hours=1)  # and was set back once more
    desk.amend(id_, "four", device="b")
    assert desk.says == ["four"]


def test_an_amendment_knows_of_one_named_through_another_that_was_dropped(desk: Desk) -> None:
    id_ = desk.saw("one")
    second = desk.amend(id_, "two")
    third = desk.amend(second, "three", device="b")
    desk.now -= timedelta(hours=1)  # a slow clock must not put it before the one it knows of
    desk.pens["c"] = Pen(JOB, "I. Example", "c", now=desk.tick)
    fourth = desk.amend(third, "four", device="c")
    desk.now += timedelta(hours=1)
    desk.drop(third)
    (fact,) = desk.record.facts
    assert (desk.says, fact.amended_by, desk.record.conflicts) == (["four"], (second, fourth), ())


def test_accepting_what_never_was_a_draft_says_nothing_of_it(desk: Desk) -> None:
    desk.accept(desk.saw())
    assert desk.record.facts[0].accepted_by is None


def test_a_removal_takes_out_and_a_removal_of_it_brings_back(desk: Desk) -> None:
    id_ = desk.saw()
    removal = desk.drop(id_)
    assert desk.says == []
    (dismissal,) = desk.record.dismissed
    assert (dismissal.fact.id, dismissal.by, dismissal.why) == (id_, removal, "a mistake")
    back = desk.drop(removal)
    assert (desk.says, desk.record.dismissed) == (["crack"], ())
    desk.drop(back)
    assert desk.says == []


def test_a_dropped_draft_is_dismissed_accepted_or_not(desk: Desk) -> None:
    draft = desk.saw(draft=True)
    desk.drop(draft)
    assert desk.record.drafts == ()
    assert [dismissal.fact.id for dismissal in desk.record.dismissed] == [draft]
    desk.accept(draft)
    assert desk.says == []


def test_what_is_dismissed_is_dismissed_as_amended(desk: Desk) -> None:
    id_ = desk.saw("one")
    amendment = desk.amend(id_, "two")
    desk.drop(id_)
    (dismissal,) = desk.record.dismissed
    assert (dismissal.fact.body, dismissal.fact.amended_by) == (Saw("two"), (amendment,))


def test_drafted_removals_and_amendments_wait_for_a_person(desk: Desk) -> None:
    id_ = desk.saw("one")
    removal, amendment = desk.drop(id_, draft=True), desk.amend(id_, "two", draft=True)
    assert desk.says == ["one"]
    assert [fact.id for fact in desk.record.drafts] == [removal, amendment]
    desk.accept(amendment)
    assert desk.says == ["two"]
    desk.accept(removal)
    assert desk.says == []
    assert desk.record.drafts == ()


def test_a_draft_amended_by_a_person_is_still_a_draft(desk: Desk) -> None:
    draft = desk.saw("one", draft=True)
    desk.amend(draft, "two")
    (fact,) = desk.record.drafts
    assert (fact.body, desk.says) == (Saw("two"), [])


@pytest.mark.parametrize(
    "act", [lambda d: d.amend(new_id(), "x"), lambda d: d.drop(new_id()), lambda d: d.accept(new_id())]
)
def test_what_names_an_unknown_entry_waits(desk: Desk, act: Callable[[Desk], str]) -> None:
    id_ = act(desk)
    behind = desk.amend(id_, "behind") if desk.entries[0].act == "amended" else None
    record = desk.record
    assert [entry.id for entry in record.waiting] == [one for one in (id_, behind) if one]
    assert (record.facts, record.dismissed, record.drafts) == ((), (), ())
    assert {problem.number for problem in problems_of(record)} == {"WM231"}


def test_acceptances_removals_and_seals_cannot_be_amended(desk: Desk) -> None:
    id_ = desk.saw()
    for base in (desk.drop(desk.saw()), desk.accept(id_), desk.write(Sealed())):
        amendment = desk.amend(base, "x")
        assert amendment in {entry.id for entry in desk.record.waiting}
    wrong = desk.write(Amended(id_, "", "dropped", 1, Dropped(id_)))
    assert wrong in {entry.id for entry in desk.record.waiting}
    assert {problem.number for problem in problems_of(desk.record)} == {"WM233"}
    assert desk.says == ["crack"]


def test_what_names_itself_or_goes_round_in_a_circle_has_no_effect(desk: Desk) -> None:
    id_ = desk.saw()
    first, second = desk.drop(id_), desk.drop(id_)
    forged = [
        dataclasses.replace(entry, body=Dropped({first: second, second: first}[entry.id]))
        if entry.id in {first, second}
        else entry
        for entry in desk.entries
    ]
    record = fold(forged)
    assert [fact.id for fact in record.facts] == [id_]
    assert {entry.id for entry in record.waiting} == {first, second}
    itself = dataclasses.replace(desk.entries[1], body=Dropped(first))
    assert [entry.id for entry in fold([itself]).waiting] == [first]
    assert {problem.number for problem in problems_of(record)} == {"WM232"}


def test_acts_to_come_are_kept_and_count_once_amended_to_a_known_one(desk: Desk) -> None:
    desk.saw("one")
    new = as_unread(desk.entries[0], "heard", 1, '{"sound":"hiss"}')
    record = fold([new])
    assert (record.unread, record.facts) == ((new,), ())
    assert [problem.number for problem in problems_of(record)] == ["WM207"]
    desk.entries = [new]
    desk.amend(new.id, "a hiss")
    assert desk.says == ["a hiss"]
    assert desk.record.unread == (new,)


def test_entries_that_come_twice_count_once(desk: Desk) -> None:
    desk.accept(desk.saw(draft=True))
    assert fold(desk.entries * 2) == desk.record


def test_of_two_entries_of_one_id_the_same_is_kept_in_any_order(desk: Desk) -> None:
    desk.saw("one")
    (entry,) = desk.entries
    for other in (dataclasses.replace(entry, by="X"), dataclasses.replace(entry, by="X", hash="0" * 64)):
        assert fold([entry, other]) == fold([other, entry])


def test_an_empty_journal() -> None:
    record = fold([])
    assert (record.facts, record.entries) == ((), {})
