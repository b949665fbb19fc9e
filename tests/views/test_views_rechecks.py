"""Findings that were looked at again."""

from record_builder import Visit
from witnessmark.journal.acts import Found, Settled
from witnessmark.views import rechecks


def test_the_last_answer_holds_and_the_earlier_ones_are_kept() -> None:
    visit = Visit()
    drip = visit.add(Found("drip"))
    rail = visit.add(Found("rail loose"))
    visit.add(Found("never looked at again"))
    first = visit.add(Settled(of=(drip, rail), state="Not repaired", how="still drips"))
    last = visit.add(Settled(of=(drip,), state="repaired", how="new washer, dry after ten minutes"))
    rows = rechecks(visit.record())
    assert [(row.finding.id, row.state, row.answer.id) for row in rows] == [
        (drip, "repaired", last), (rail, "not repaired", first),
    ]  # fmt: skip
    assert rows[0].words == "new washer, dry after ten minutes"
    assert [fact.id for fact in rows[0].before] == [first]


def test_other_decisions_about_a_finding_answer_nothing() -> None:
    visit = Visit()
    drip = visit.add(Found("drip"))
    visit.add(Settled(of=(drip,), how="told the client"))
    visit.add(Settled(of=("0199e000-0000-7000-8000-000000000001",), state="repaired"))
    assert rechecks(visit.record()) == ()
