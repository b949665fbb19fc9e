"""What holds for every record: nothing raises, order does not matter, everything points at entries, every end closes."""

import random

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from any_record import moments, visits
from record_builder import Visit, after
from small_packs import duty, job_packs
from witnessmark.journal.acts import Body, Found, Saw, Settled, Skipped, Stopped, Took
from witnessmark.journal.entry import Entry
from witnessmark.journal.fold import fold
from witnessmark.journal.job import Job
from witnessmark.judging import ENDS, LooseEnd, draft_findings, standing
from witnessmark.packs.model import Subject
from witnessmark.views import house, looks, media, timeline

PACKS = job_packs(
    duty("T-1", "inspect", Subject("ranges", ("range",)), Subject("joists", ("joist",), part="oven"), extent="all"),
    duty("T-2", "enter", Subject("attics", sorts=("attic",)), when="fuel or outdoor >= 60 degF"),
    duty("T-3", "describe", Subject("materials", attributes=("material",)), extent="one_per_room"),
    duty("T-4", "operate", Subject("windows", ("window",), sorts=("kitchen",), optional=True), extent="one_per_side"),
    duty("T-5", "verify", Subject("pressure", measures=("water-pressure",)), reasons=("unsafe",), when="adverse joist"),
)
JOB = Job("job", rulebook="us.test", date="2026-02-03", year_built=1962)
EXAMPLES = settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.too_slow])


@EXAMPLES
@given(visits(), moments())
def test_no_record_makes_anything_raise(entries: list[Entry], now: object) -> None:
    record = fold(entries)
    stand = standing(record, PACKS, JOB, now)  # type: ignore[arg-type]  # a datetime
    known = set(record.entries)
    for end in stand.loose_ends:
        assert end.sort in ENDS
        assert set(end.entries) <= known
        assert end.words
        assert end.next
        assert end.entries or end.sort == "say why"
    assert len({end.key for end in stand.loose_ends}) == len(stand.loose_ends)
    assert all({e for s in row.subjects for e in s.entries} <= known for row in stand.duties)
    assert all(row.entry in known and row.words for row in stand.readings)
    assert all(row.entry in known for row in stand.running)
    drafts = draft_findings(record, PACKS, stand)
    assert {e for d in drafts for e in d.rests_on} <= known
    opened = {end.entries[0] for end in stand.loose_ends if end.sort == "write up"}
    assert opened <= {e for d in drafts for e in d.rests_on}
    assert all(d.title and d.seen for d in drafts)
    timeline(record)
    media(record)
    house(record)


@EXAMPLES
@given(visits(), st.randoms(use_true_random=False))
def test_the_order_of_delivery_does_not_matter(entries: list[Entry], chance: random.Random) -> None:
    shuffled = entries * 2
    chance.shuffle(shuffled)
    now = after(100)
    assert standing(fold(entries), PACKS, JOB, now) == standing(fold(shuffled), PACKS, JOB, now)


def closing_act(visit: Visit, end: LooseEnd) -> None:
    """Add the act that closes this sort of loose end, long after everything else."""
    opener = end.entries[0] if end.entries else ""
    act = next((e for e in visit.entries if e.id == opener), None)
    place: str | None = None
    component: str | None = None
    media_named: tuple[str, ...] = ()
    body: Body
    if end.sort == "still on":
        body = Stopped(of=opener)
    elif end.sort == "look again":
        body = Saw("dry", "sound", kind="ceiling", again=opener)
    elif end.sort == "put back":
        body = Stopped(of=opener, state="as found")
    elif end.sort == "make sure":
        assert act is not None
        place, component = act.place, act.component
        body = Saw("sure", "sound", getattr(act.body, "part", None), getattr(act.body, "kind", None))
    elif end.sort == "write up":
        body = Found("t", rests_on=end.entries)
    elif end.sort == "picture it":
        media_named, body = ("e" * 64,), Took(speaks_of=end.entries)
    elif end.sort == "name it":
        assert act is not None
        media_named, body = act.media, Saw("shown", "sound")
    else:
        body = Skipped(reason="unsafe", duty=end.duty)
    visit.add(body, 5000, place=place, component=component, media=media_named, name="closing")


@EXAMPLES
@given(visits())
def test_every_loose_end_closes_with_its_closing_act(entries: list[Entry]) -> None:
    now = after(6000)
    for end in standing(fold(entries), PACKS, JOB, now).loose_ends:
        body = fold(entries).entries[end.entries[0]].body if end.entries else None
        somewhere = end.component or getattr(body, "kind", None)
        if (end.sort == "make sure" and not somewhere) or (end.sort == "name it" and not _media(entries, end)):
            continue  # a doubt about nothing in particular, or a file that never came, is settled; see below
        visit = Visit()
        visit.entries = list(entries)
        closing_act(visit, end)
        assert end.key not in {e.key for e in standing(visit.record(), PACKS, JOB, now).loose_ends}


def _media(entries: list[Entry], end: LooseEnd) -> tuple[str, ...]:
    return next(e.media for e in entries if e.id == end.entries[0])


@EXAMPLES
@given(visits())
def test_every_loose_end_of_an_entry_can_be_settled(entries: list[Entry]) -> None:
    now = after(6000)
    for end in standing(fold(entries), PACKS, JOB, now).loose_ends:
        if not end.entries or end.sort == "say why":
            continue
        visit = Visit()
        visit.entries = list(entries)
        visit.add(Settled((end.entries[0],), (end.sort,), "agreed", with_whom="the owner"), 5000, name="closing")
        assert end.key not in {e.key for e in standing(visit.record(), PACKS, JOB, now).loose_ends}


@EXAMPLES
@given(visits())
def test_a_second_look_met_is_after_its_window_opened(entries: list[Entry]) -> None:
    for look in looks(fold(entries), PACKS):
        if look.by is not None:
            assert look.by.at >= look.ran.at
