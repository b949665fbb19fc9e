"""The seven loose ends: what opens each, what closes it, and what is never counted twice."""

from collections import Counter

import pytest

from record_builder import Visit, after
from small_packs import duty, job_packs, small_packs
from witnessmark.journal.acts import (
    Absent,
    Doubted,
    Found,
    Listed,
    Placed,
    Ran,
    Read,
    Saw,
    Settled,
    Skipped,
    Stopped,
    Took,
)
from witnessmark.journal.job import Job
from witnessmark.judging import BLOCKING, LooseEnd, Standing, standing
from witnessmark.packs.model import Subject
from witnessmark.views import looks

JOB = Job("job", rulebook="us.test", date="2026-02-03")


def stand(visit: Visit, minutes: float = 60) -> Standing:
    return standing(visit.record(), job_packs(), JOB, after(minutes))


def ends(visit: Visit, minutes: float = 60) -> dict[str, LooseEnd]:
    return {end.key: end for end in stand(visit, minutes).loose_ends}


def sorts(visit: Visit, minutes: float = 60) -> Counter[str]:
    return Counter(end.sort for end in stand(visit, minutes).loose_ends)


def kitchen() -> Visit:
    visit = Visit()
    visit.add(Placed("Kitchen", "kitchen"), 0, place="k")
    visit.add(Listed("range", "Gas range"), 0, place="k", component="r")
    visit.add(Listed("sink", "Kitchen sink"), 0, place="k", component="s")
    return visit


class TestStillOn:
    def test_opened_by_what_is_left_on_with_its_limit_and_caution(self) -> None:
        visit = kitchen()
        ran = visit.add(Ran("oven", part="oven", left="on", found="off"), 10, component="r")
        end = ends(visit, 25)[f"still on {ran}"]
        assert end.words == "Gas range, oven (Kitchen): still on since 09:10"
        assert (end.opened, end.latest, end.late) == (after(10), after(30), False)
        assert end.cautions == ("hot",)
        assert "turn the oven off" in end.next
        assert ends(visit, 31)[f"still on {ran}"].late

    @pytest.mark.parametrize("left", ["on", "open", "filled", "unlatched", "tripped", "changed"])
    def test_every_way_of_being_left_opens_it(self, left: str) -> None:
        visit = Visit()
        visit.add(Ran(left=left), component="x")
        assert sorts(visit) == {"still on": 1}
        visit.add(Stopped(), component="x")
        assert sorts(visit) == {}

    def test_a_decision_closes_it_only_when_it_says_with_whom(self) -> None:
        visit = kitchen()
        ran = visit.add(Ran(left="on"), component="r")
        visit.add(Settled(of=(ran,), how="stays on"))
        assert f"still on {ran}" in ends(visit)
        visit.add(Settled(of=(ran,), ends=("put back",), with_whom="the occupant"))
        assert f"still on {ran}" in ends(visit)
        visit.add(Settled(of=(ran,), with_whom="the occupant"))
        assert ends(visit) == {}
        (running,) = stand(visit).running
        assert running.words.endswith("left so by agreement with the occupant")

    def test_running_names_what_and_since_when(self) -> None:
        visit = kitchen()
        ran = visit.add(Ran("oven", part="oven", left="on", setting="350 degF"), 10, component="r")
        (row,) = stand(visit).running
        assert (row.entry, row.left, row.since, row.component, row.place) == (ran, "on", after(10), "r", "k")
        assert row.words == "Gas range, oven (Kitchen): on (350 degF)"


class TestLookAgain:
    def test_window_and_closing(self) -> None:
        visit = kitchen()
        ran = visit.add(Ran("filled the sink", left="filled"), 10, component="s")
        visit.add(Stopped("drained"), 14, component="s")
        end = ends(visit, 20)[f"look again {ran}"]
        assert (end.earliest, end.latest, end.late) == (after(15), after(25), False)
        assert "between 09:15 and 09:25" in end.next
        assert ends(visit, 26)[f"look again {ran}"].late
        visit.add(Saw("dry", "sound"), 14.5, component="s")
        assert f"look again {ran}" in ends(visit, 20), "a look before the window opens does not count"
        visit.add(Saw("dry", "sound"), 15, component="s")
        assert ends(visit, 30) == {}

    def test_a_late_look_closes_it_and_is_told_as_late(self) -> None:
        visit = kitchen()
        visit.add(Ran("filled the sink"), 10, component="s")
        saw = visit.add(Saw("dry", "sound"), 50, component="s")
        assert ends(visit) == {}
        (look,) = looks(visit.record(), small_packs())
        assert look.by is not None
        assert (look.by.id, look.late) == (saw, True)

    def test_another_kind_elsewhere_where_the_procedure_says_so(self) -> None:
        visit = Visit()
        visit.add(Placed("Bath", "hall"), 0, place="b")
        visit.add(Placed("Dining", "hall"), 0, place="d")
        ran = visit.add(Ran(kind="shower"), 5, place="b")
        visit.add(Saw("dry", "sound", kind="shower"), 20, place="b")
        assert f"look again {ran}" in ends(visit)
        visit.add(Saw("dry", "sound", kind="ceiling"), 20, place="d")
        assert ends(visit) == {}

    def test_the_inspector_can_say_of_what_it_is_the_second_look(self) -> None:
        visit = kitchen()
        ran = visit.add(Ran(procedure="run-shower", kind="shower"), 0, place="b")
        visit.add(Saw("dry", "sound", kind="receptacle", again=ran), 12, place="elsewhere")
        assert ends(visit) == {}

    def test_which_procedure_was_followed_is_told_by_what_was_said(self) -> None:
        visit = kitchen()
        visit.add(Ran("ran the faucet"), 10, component="s")
        assert ends(visit) == {}
        filled = visit.add(Ran("filled it up"), 10, component="s")
        assert list(ends(visit)) == [f"look again {filled}"]
        visit.add(Settled(of=(filled,), ends=("look again",), how="cabinet was open all along"))
        assert ends(visit) == {}


class TestPutBack:
    def test_while_it_is_still_on_it_is_counted_once(self) -> None:
        visit = Visit()
        visit.add(Ran(kind="thermostat", left="changed", found="68 degF", setting="80 degF"), component="t")
        assert sorts(visit) == {"still on": 1}

    def test_stopped_at_another_set_point_opens_it(self) -> None:
        visit = Visit()
        ran = visit.add(Ran(kind="thermostat", left="changed", found="68 degF", setting="80 degF"), component="t")
        stop = visit.add(Stopped(state="62 degF"), component="t")
        end = ends(visit)[f"put back {ran}"]
        assert sorts(visit) == {"put back": 1}
        assert end.entries == (ran, stop)
        assert end.words == "thermostat: was found 68 degF and now stands 62 degF"
        assert "set it back to the set-point found" in end.next

    @pytest.mark.parametrize("state", [None, "68 °F", "20 °C", "set back to 68 degF", "as found"])
    def test_the_state_as_found_closes_it(self, state: str | None) -> None:
        visit = Visit()
        visit.add(Ran(kind="thermostat", left="changed", found="68 degF"), component="t")
        visit.add(Stopped(state="62 degF"), component="t")
        visit.add(Stopped(state=state), component="t")
        assert sorts(visit) == {}

    def test_what_was_left_open_and_is_still_open_stays(self) -> None:
        visit = Visit()
        ran = visit.add(Ran("cover off", left="open"), component="panel")
        visit.add(Stopped(state="still open"), component="panel")
        assert sorts(visit) == {"put back": 1}
        visit.add(Settled(of=(ran,), state="open"))
        assert sorts(visit) == {"put back": 1}
        visit.add(Settled(of=(ran,), state="closed"))
        assert sorts(visit) == {}


class TestMakeSure:
    def test_doubts_and_unsure_sights(self) -> None:
        visit = kitchen()
        doubt = visit.add(Doubted("is the gas line bonded"), component="r")
        unsure = visit.add(Saw("looks corroded", sure=False), component="s")
        assert set(ends(visit)) == {f"make sure {doubt}", f"make sure {unsure}"}
        assert ends(visit)[f"make sure {doubt}"].words == "Gas range (Kitchen): not sure: is the gas line bonded"
        visit.add(Saw("bonded", "sound"), component="r")
        visit.add(Skipped(reason="no-access"), component="s")
        assert ends(visit) == {}

    def test_a_doubt_about_an_entry_points_at_both(self) -> None:
        visit = kitchen()
        saw = visit.add(Saw("double tap", "adverse"), component="r")
        visit.add(Found("t", rests_on=(saw,)))
        doubt = visit.add(Doubted(of=saw))
        assert ends(visit)[f"make sure {doubt}"].entries == (doubt, saw)
        assert sorts(visit) == {"make sure": 1, "picture it": 1}


class TestWriteUp:
    def test_each_opener_and_both_closers(self) -> None:
        visit = kitchen()
        openers = [
            visit.add(Saw("scorched", "adverse"), component="r"),
            visit.add(Absent("handrail", adverse=True), place="k"),
            visit.add(Took(damage=True, name="p.jpg"), media=("a" * 64,)),
            visit.add(Read("water-temperature", "131", "[degF]", kind="sink"), component="s"),
        ]
        assert {end.entries[0] for end in stand(visit).loose_ends} == set(openers)
        assert sorts(visit) == {"write up": 4, "picture it": 2}, "a photo of damage is not asked for twice"
        visit.add(Found("t", rests_on=tuple(openers[:3])))
        visit.add(Settled(of=tuple(openers[3:]), how="seen and judged harmless"))
        assert ends(visit) == {}

    def test_a_dismissal_needs_its_reason(self) -> None:
        visit = kitchen()
        saw = visit.add(Saw("scorched", "adverse"), component="r")
        visit.add(Settled(of=(saw,)))
        assert sorts(visit) == {"write up": 1}

    def test_a_photo_that_is_evidence_for_an_adverse_fact_is_carried_by_it(self) -> None:
        visit = kitchen()
        saw = visit.add(Saw("scorched", "adverse"), component="r")
        photo = visit.add(Took(damage=True, speaks_of=(saw,)), media=("a" * 64,))
        (end,) = stand(visit).loose_ends
        assert end.entries == (saw, photo)

    def test_a_reading_beyond_two_limits_is_one_loose_end(self) -> None:
        visit = Visit()
        read = visit.add(Read("water-pressure", "20", "[psi]"))
        assert list(ends(visit)) == [f"write up {read}"]


class TestPictureIt:
    def test_something_adverse_without_a_picture(self) -> None:
        visit = kitchen()
        saw = visit.add(Saw("scorched", "adverse"), component="r")
        end = ends(visit)[f"picture it {saw}"]
        assert (end.words, end.place, end.entries) == ("Gas range (Kitchen): scorched", "k", (saw,))
        assert not stand(visit).blocking or all(e.sort != "picture it" for e in stand(visit).blocking)

    @pytest.mark.parametrize("sort", ["photo", "thermal", "video"])
    def test_a_picture_that_speaks_of_it_closes_it(self, sort: str) -> None:
        visit = kitchen()
        saw = visit.add(Saw("scorched", "adverse"), component="r")
        visit.add(Took(sort, speaks_of=(saw,)), media=("a" * 64,))
        assert sorts(visit) == {"write up": 1}

    def test_a_recording_of_the_words_is_no_picture(self) -> None:
        visit = kitchen()
        saw = visit.add(Saw("scorched", "adverse"), component="r")
        visit.add(Took("voice", speaks_of=(saw,)), media=("a" * 64,))
        assert sorts(visit) == {"write up": 1, "picture it": 1}

    def test_a_finding_that_rests_on_both_closes_it_and_one_without_does_not(self) -> None:
        visit = kitchen()
        saw = visit.add(Saw("scorched", "adverse"), component="r")
        took = visit.add(Took(name="p.jpg"), media=("a" * 64,))
        visit.add(Found("t", rests_on=(saw,)))
        assert sorts(visit) == {"picture it": 1, "name it": 1}
        visit.add(Settled(of=(saw,), ends=("write up",), how="seen again"))
        assert sorts(visit) == {"picture it": 1, "name it": 1}, "about another end"
        other = kitchen()
        saw = other.add(Saw("scorched", "adverse"), component="r")
        took = other.add(Took(name="p.jpg"), media=("a" * 64,))
        other.add(Found("t", rests_on=(saw, took)))
        assert sorts(other) == {}

    def test_what_is_dismissed_with_a_reason_needs_none_and_what_is_sound_neither(self) -> None:
        visit = kitchen()
        saw = visit.add(Saw("scorched", "adverse"), component="r")
        visit.add(Settled(of=(saw,), how="soot of the last meal, wiped off"))
        visit.add(Saw("clean", "sound"), component="s")
        assert sorts(visit) == {}

    def test_it_can_be_settled_alone(self) -> None:
        visit = kitchen()
        saw = visit.add(Saw("smells of gas", "adverse"), component="r")
        visit.add(Settled(of=(saw,), ends=("picture it",), how="a smell has no picture"))
        assert sorts(visit) == {"write up": 1}


class TestNameIt:
    def test_media_that_no_entry_speaks_of(self) -> None:
        visit = kitchen()
        took = visit.add(Took(name="p.jpg", shows="the range"), place="k", media=("a" * 64,))
        end = ends(visit)[f"name it {took}"]
        assert end.words == "photo p.jpg (Kitchen): the range: no entry speaks of it"
        visit.add(Saw("clean", "sound"), component="r", media=("a" * 64,))
        assert ends(visit) == {}


class TestSayWhy:
    def test_one_for_each_open_subject_with_its_key(self) -> None:
        packs = job_packs(duty("T-1", "inspect", Subject("ranges", ("range",)), Subject("sinks", ("sink",))))
        visit = kitchen()
        visit.add(Saw("works", "sound"), component="r")
        (end,) = standing(visit.record(), packs, JOB, after(60)).loose_ends
        assert (end.sort, end.key, end.duty, end.tag) == (
            "say why", "say why T-1/2", "T-1", "common practice, no source",
        )  # fmt: skip

    @pytest.mark.parametrize("rulebook", ["", "us.nowhere"])
    def test_without_a_law_nothing_can_be_shown_met(self, rulebook: str) -> None:
        (end,) = standing(Visit().record(), job_packs(), Job("job", rulebook=rulebook), after(0)).loose_ends
        assert end.key == "say why rulebook"
        assert end.sort in BLOCKING

    def test_a_law_not_in_force_on_the_day_is_none(self) -> None:
        job = Job("job", rulebook="us.test", date="1999-12-31")
        (end,) = standing(Visit().record(), job_packs(), job, after(0)).loose_ends
        assert "1999-12-31" in end.words


def test_ends_come_in_their_order_and_by_time() -> None:
    visit = kitchen()
    visit.add(Took(name="p.jpg"), 5, media=("a" * 64,))
    visit.add(Saw("rot", "adverse"), 6)
    visit.add(Doubted("live?"), 7)
    late = visit.add(Ran(left="on"), 9, component="x")
    early = visit.add(Ran(left="on"), 8, component="y")
    found = [(end.sort, end.entries[0]) for end in stand(visit).loose_ends]
    assert [sort for sort, _ in found] == ["still on", "still on", "make sure", "write up", "picture it", "name it"]
    assert [entry for _, entry in found[:2]] == [early, late]


def test_drafts_open_and_close_nothing() -> None:
    visit = kitchen()
    visit.add(Ran(left="on"), component="r", draft=True)
    visit.add(Saw("rot", "adverse"), component="r", draft=True)
    ran = visit.add(Ran(left="on"), component="s")
    visit.add(Stopped(of=ran), component="s", draft=True)
    assert sorts(visit)["still on"] == 1
    assert sorts(visit)["write up"] == 0
