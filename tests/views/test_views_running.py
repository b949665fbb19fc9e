"""What was left on, and which stop closes which run."""

import pytest

from record_builder import Visit, after
from witnessmark.journal.acts import Listed, Ran, Stopped
from witnessmark.views import running, timeline
from witnessmark.views.states import contradicts, restores, same_state


def stops(visit: Visit) -> dict[str, str | None]:
    return {run.fact.id: run.stopped.id if run.stopped else None for run in running(visit.record())}


def test_a_stop_that_names_its_run_closes_that_one() -> None:
    visit = Visit()
    first = visit.add(Ran("front burner on", left="on"), component="range")
    second = visit.add(Ran("rear burner on", left="on"), component="range")
    stop = visit.add(Stopped("front burner off", of=first), component="range")
    assert stops(visit) == {first: stop, second: None}


def test_without_a_name_it_closes_the_newest_of_the_component_and_part() -> None:
    visit = Visit()
    oven = visit.add(Ran(part="oven", left="on"), component="range")
    burner = visit.add(Ran(part="burner", left="on"), component="range")
    again = visit.add(Ran(part="burner", left="on"), component="range")
    stop = visit.add(Stopped(part="burner"), component="range")
    assert stops(visit) == {oven: None, burner: None, again: stop}


def test_a_stop_of_one_component_never_closes_another() -> None:
    visit = Visit()
    for tub in ("tub-1", "tub-2"):
        visit.add(Listed("bathtub", tub), place="bath", component=tub)
    ran = visit.add(Ran("filled", left="filled"), place="bath", component="tub-1")
    visit.add(Stopped("drained"), place="bath", component="tub-2")
    assert stops(visit) == {ran: None}


def test_the_same_kind_in_the_same_place_when_not_both_name_a_component() -> None:
    visit = Visit()
    upstairs = visit.add(Ran(kind="sink", left="filled"), place="upper bath")
    below = visit.add(Ran(kind="sink", left="filled"), place="lower bath")
    stop = visit.add(Stopped(kind="sink"), place="upper bath")
    assert stops(visit) == {upstairs: stop, below: None}


def test_a_stop_without_a_place_closes_the_only_one_of_its_kind_and_none_of_two() -> None:
    visit = Visit()
    only = visit.add(Ran(kind="dishwasher", left="on"), place="kitchen")
    stop = visit.add(Stopped(kind="dishwasher"))
    assert stops(visit) == {only: stop}
    both = Visit()
    first = both.add(Ran(kind="sink", left="filled"), place="kitchen")
    second = both.add(Ran(kind="sink", left="filled"), place="bath")
    both.add(Stopped(kind="sink"))
    assert stops(both) == {first: None, second: None}


def test_a_stop_does_not_close_what_was_run_after_it() -> None:
    visit = Visit()
    visit.add(Stopped(), component="furnace")
    ran = visit.add(Ran(left="on"), component="furnace")
    assert stops(visit) == {ran: None}


def test_a_setting_changed_again_keeps_what_was_found_first() -> None:
    visit = Visit()
    visit.add(Ran(left="changed", found="68 degF", setting="76 degF"), component="thermostat")
    visit.add(Ran(left="changed", found="76 degF", setting="60 degF"), component="thermostat")
    first, second = running(visit.record())
    assert first.taken_over == second.fact
    assert not first.open
    assert second.open
    assert second.found == "68 degF"


def test_what_is_left_as_it_was_found_is_not_open() -> None:
    visit = Visit()
    visit.add(Ran("fan already on", left="on", found="on"), component="fan")
    visit.add(Ran("tried the switch"), component="light")
    assert not any(run.open for run in running(visit.record()))


def test_a_later_stop_says_anew_how_it_stands() -> None:
    visit = Visit()
    visit.add(Ran(left="changed", found="68"), component="thermostat")
    off = visit.add(Stopped(state="72"), component="thermostat")
    back = visit.add(Stopped(state="68"), component="thermostat")
    (run,) = running(visit.record())
    assert run.stopped is not None
    assert run.restated is not None
    assert (run.stopped.id, run.restated.id) == (off, back)


def test_intervals_and_what_was_on_after_each_event() -> None:
    visit = Visit()
    visit.add(Ran(left="on"), 10, component="oven")
    visit.add(Ran(left="filled"), 12, component="tub")
    visit.add(Stopped(), 30, component="oven")
    line = timeline(visit.record())
    assert [event.running for event in line.events] == [1, 2, 1]
    assert [(i.run.fact.component, i.until) for i in line.intervals] == [("oven", after(30)), ("tub", None)]


@pytest.mark.parametrize(
    ("left", "right", "same"),
    [
        ("68 degF", "68 °F", True), ("20 °C", "68F", True), ("68F", "80F", False), ("OFF", "switched off", True),
        ("", "", False), (None, None, False), ("on", "on standby", False), ("shut", "closed", True),
    ],
)  # fmt: skip
def test_same_state(left: str | None, right: str | None, same: bool) -> None:
    assert same_state(left, right) is same


def test_restoring_and_contradicting() -> None:
    assert restores("set back to 68", "68")
    assert restores("as found", "62 degF heat")
    assert not restores("72 degF", "68 degF")
    assert not restores("not locked", "locked")
    assert contradicts("still open", "open")
    assert not contradicts("closed and latched", "unlatched")
