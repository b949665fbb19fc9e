"""Chains: what is missing, forked, broken, changed, foreign or from the future is named."""

from __future__ import annotations

import dataclasses
from datetime import UTC, datetime, timedelta
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from visit_builder import START, build_visit
from witnessmark.journal.acts import Saw
from witnessmark.journal.chain import check_chains
from witnessmark.journal.codec import with_hash
from witnessmark.journal.entry import Entry
from witnessmark.journal.identity import new_id
from witnessmark.journal.merge import merge
from witnessmark.journal.pen import Pen

VISIT = build_visit(60, seed=11)
PHONE = [entry for entry in VISIT if entry.device == "phone-a"]
LATER = START + timedelta(days=1)


def numbers(entries: list[Entry], now: datetime | None = LATER) -> list[str]:
    return [problem.number for problem in check_chains(entries, now)]


def on(entry: Entry) -> Pen:
    """A pen that writes on after that entry."""
    return Pen(entry.job, entry.by, entry.device, entry.n, entry.hash, now=lambda: START)


def test_a_whole_record_has_no_problems() -> None:
    assert check_chains(VISIT, LATER) == []
    assert check_chains(VISIT[::-1] + VISIT) == []
    assert check_chains([]) == []


def test_a_gap_is_named() -> None:
    (problem,) = check_chains([entry for entry in VISIT if entry not in PHONE[3:6]])
    assert problem.number == "WM220"
    assert problem.where == "device phone-a"
    assert "numbers 4 to 6" in problem.detail
    assert problem.entries == (PHONE[2].id, PHONE[6].id)
    (problem,) = check_chains(PHONE[1:])
    assert "number 1, before" in problem.detail


def test_a_device_restored_from_a_backup_forks() -> None:
    pen = on(PHONE[9])
    branch = [pen.write(Saw("again")) for _ in range(4)]
    (problem,) = check_chains(VISIT + branch)
    assert (problem.number, problem.where) == ("WM221", "device phone-a, number 11")
    assert set(problem.entries) == {PHONE[10].id, branch[0].id}
    once_more = on(branch[1]).write(Saw("a third time"))
    assert numbers([*VISIT, *branch, once_more]) == ["WM221", "WM221"]


def test_a_second_fork_where_another_branch_ended_is_named() -> None:
    short = on(PHONE[-3]).write(Saw("a branch of one entry"))
    again = on(PHONE[-2]).write(Saw("a branch beside the last entry"))
    assert [p.where for p in check_chains([*PHONE, short, again])] == [
        f"device phone-a, number {PHONE[-2].n}", f"device phone-a, number {PHONE[-1].n}",
    ]  # fmt: skip


def test_a_fork_hidden_in_a_gap_is_named() -> None:
    pen = on(PHONE[9])
    branch = [pen.write(Saw("again")) for _ in range(4)]
    kept = [entry for entry in [*PHONE, *branch] if entry.n not in {11, 12}]
    assert sorted(numbers(kept)) == ["WM220", "WM221"]


def test_a_changed_entry_is_named() -> None:
    changed = [dataclasses.replace(entry, by="Someone else") if entry is PHONE[4] else entry for entry in VISIT]
    (problem,) = check_chains(changed)
    assert problem.number == "WM223"
    assert problem.entries == (PHONE[4].id,)
    assert "number 5 of phone-a" in problem.where


def test_a_changed_entry_with_its_hash_made_to_fit_breaks_the_chain() -> None:
    forged = with_hash(dataclasses.replace(PHONE[4], by="Someone else"))
    (problem,) = check_chains([forged if entry is PHONE[4] else entry for entry in VISIT])
    assert problem.number == "WM222"
    assert problem.entries == (PHONE[5].id, PHONE[4].id)


def test_what_cannot_be_written_is_a_changed_entry() -> None:
    changed = dataclasses.replace(PHONE[0], at="noon?", logged="2026-02-03T09:30:00Z")
    assert numbers([changed]) == ["WM223"]


def test_a_first_entry_that_follows_something_is_named() -> None:
    forged = with_hash(dataclasses.replace(PHONE[0], prev="1" * 64))
    assert numbers([forged]) == ["WM222"]


def test_another_job_is_named() -> None:
    stray = Pen(new_id(), "I. Example", "phone-z", now=lambda: START).write(Saw())
    (problem,) = check_chains([*VISIT, stray])
    assert (problem.number, problem.entries) == ("WM225", (stray.id,))


def test_an_entry_from_the_future_is_named_and_kept() -> None:
    now = datetime(2026, 2, 3, 18, tzinfo=UTC)
    late = on(PHONE[-1]).write(Saw(), at=now + timedelta(seconds=1))
    (problem,) = [problem for problem in check_chains([*PHONE, late], now) if late.id in problem.entries]
    assert problem.number == "WM224"
    assert check_chains([*PHONE, late]) == []


def test_two_entries_of_one_id_are_both_kept_and_told() -> None:
    other = with_hash(dataclasses.replace(PHONE[-1], by="Someone else"))
    merged, problems = merge(VISIT, [other])
    assert {PHONE[-1], other} <= set(merged)
    assert [(problem.number, problem.entries) for problem in problems] == [("WM230", (other.id,))]
    assert merge([other], VISIT) == (merged, problems)
    same_hash = dataclasses.replace(PHONE[-1], by="Someone else")
    merged, problems = merge(VISIT, [same_hash])
    assert (merged, problems) == merge([same_hash], VISIT)
    assert len(problems) == 1
    assert set(numbers([*VISIT, other])) == {"WM230", "WM221"}


FIELDS: dict[str, Any] = {
    "by": "Someone else", "at": "2026-02-03T09:00:00-08:00", "logged": "2026-02-03T09:00:00-08:00", "place": "p",
    "component": "c", "media": ("ab" * 32,), "body": Saw("other"), "act": "saw", "v": 2, "n": 3, "prev": "1" * 64,
    "device": "x", "job": new_id(), "id": new_id(), "draft": True,
}  # fmt: skip


@given(st.integers(0, len(VISIT) - 1), st.sampled_from(sorted(FIELDS)))
@settings(max_examples=100)
def test_any_field_changed_in_memory_is_found_and_the_entry_named(which: int, field: str) -> None:
    changed = dataclasses.replace(VISIT[which], **{field: FIELDS[field]})
    if changed == VISIT[which]:
        return
    problems = check_chains([*VISIT[:which], changed, *VISIT[which + 1 :]])
    assert any(problem.number == "WM223" and changed.id in problem.entries for problem in problems)
