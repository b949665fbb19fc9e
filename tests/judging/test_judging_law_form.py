"""The form that the law of Texas prescribes: its items in order, each marked as the record has it.

Source: property inspection report form REI 7-6, adopted by 22 TAC 535.223; its order is recalled and its rows say so.
"""

from __future__ import annotations

from functools import cache
from string import ascii_uppercase

import pytest

from record_builder import Visit, after
from witnessmark import packs
from witnessmark.journal.acts import Absent, Arrived, Body, Found, Listed, Placed, Saw, Skipped
from witnessmark.journal.job import Job
from witnessmark.judging.law_form import FormState, form_states
from witnessmark.judging.scene import gather
from witnessmark.packs.model import Packs


@cache
def shipped() -> Packs:
    return packs.read()


def visit(*more: tuple[Body, str | None]) -> Visit:
    made = Visit()
    made.add(Arrived(), 0)
    made.add(Placed("kitchen", "kitchen"), 1, place="kitchen")
    for minute, (body, component) in enumerate(more, 2):
        made.add(body, minute, place="kitchen", component=component)
    return made


def states(made: Visit, rulebook: str = "us.tx.535-r") -> dict[str, FormState]:
    job = Job("job", rulebook=rulebook, date="2026-02-03", year_built=1996)
    rows = form_states(gather(made.record(), shipped(), job, after(600)))
    return {f"{row.item.group.partition('.')[0]}.{row.item.number}": row for row in rows}


def codes(row: FormState) -> str:
    return " ".join(word.code for word in row.marks)


LISTED = (Listed("dishwasher", "dishwasher"), "d")


@pytest.mark.parametrize(
    ("more", "marked"),
    [
        ((LISTED, (Saw("in order", "sound"), "d")), "I"),
        ((LISTED, (Saw("leaks at the door", "adverse"), "d")), "I D"),
        ((LISTED, (Saw("seems to leak", "adverse", sure=False), "d")), "I D"),
        ((LISTED, (Skipped(reason="no-water", what="dishwasher"), "d")), "NI"),
        (((Skipped(reason="stored-items", what="dishwasher", kind="dishwasher"), None),), "NI"),
        (((Absent("dishwasher"), None),), "NP"),
        (((Absent("dishwasher", adverse=True), None),), "D"),
        ((LISTED,), ""),
        ((), ""),
    ],
)
def test_an_item_is_marked_as_the_record_has_it(more: tuple[tuple[Body, str | None], ...], marked: str) -> None:
    assert codes(states(visit(*more))["V.A"]) == marked


def test_one_part_left_out_does_not_hide_that_another_was_inspected() -> None:
    made = visit(
        (Listed("window", "first window"), "w1"),
        (Listed("window", "second window"), "w2"),
        (Saw("in order", "sound"), "w1"),
        (Skipped(reason="stored-items", what="second window"), "w2"),
    )
    row = states(made)["I.H"]
    assert codes(row) == "I"
    assert {state.means for state in row.states} == {"inspected", "not inspected"}


def test_a_place_left_out_is_the_item_of_its_sort() -> None:
    made = visit()
    made.add(Placed("attic", "attic"), 8, place="attic")
    made.add(Skipped(reason="stored-items", what="the attic"), 9, place="attic")
    assert codes(states(made)["I.D"]) == "NI"


def test_a_finding_on_what_is_in_order_makes_nothing_deficient() -> None:
    made = visit(LISTED, (Saw("in order", "sound"), "d"))
    sound = made.entries[-1].id
    made.add(Found("Works", rests_on=(sound,), stake="upkeep", urgency="watch", kind="dishwasher"), 9, component="d")
    assert codes(states(made)["V.A"]) == "I"


def test_what_no_item_names_goes_to_the_other_of_its_group_and_optional_items_only_where_there_is_one() -> None:
    made = visit((Listed("generator", "generator"), "g"), (Saw("in order", "sound"), "g"))
    rows = states(made)
    assert codes(rows["II.C"]) == "I"
    assert "I.L" not in rows
    assert not any(name.startswith("VI.") for name in rows)
    pool = visit((Listed("swimming-pool", "pool"), "p"), (Saw("in order", "sound"), "p"))
    assert codes(states(pool)["VI.B"]) == "I"


def test_no_kind_is_lost_and_none_stands_twice() -> None:
    items = shipped().rulebooks["us.tx.535-r"].form_items
    named = [kind for item in items for kind in item.kinds]
    assert len(named) == len(set(named))
    systems = {system for item in items for system in item.systems}
    assert all(kind.id in named or kind.system in systems for kind in shipped().kinds.values())


def test_items_are_lettered_without_a_gap_in_groups_numbered_without_a_gap() -> None:
    items = shipped().rulebooks["us.tx.535-r"].form_items
    groups = dict.fromkeys(item.group for item in items)
    assert [group.partition(".")[0] for group in groups] == ["I", "II", "III", "IV", "V", "VI"]
    for group in groups:
        letters = [item.number for item in items if item.group == group]
        assert letters == list(ascii_uppercase[: len(letters)])
    assert {item.tag for item in items} <= {"memory", "memory?"}, "nobody has read the form itself yet"


def test_a_law_without_a_form_asks_for_none() -> None:
    assert states(visit(LISTED), "us.wa.308-408c") == {}
