"""The learned vote: what it is trained on, that training always gives the same weights, and what it may draft."""

from __future__ import annotations

from pathlib import Path

import pytest

from train_votes.examples import UnlabelledError, of_statements, read_statements
from train_votes.fit import fitted, stored
from witnessmark.listening import Line, Narration, listen
from witnessmark.listening import votes_drafts as drafting
from witnessmark.listening.votes import LABELS, Vote, read_weights, stored_weights, vote
from witnessmark.packs.model import Packs

STATEMENTS = Path(__file__).parents[2] / "tools" / "train_votes" / "statements"
MOST_BYTES = 300_000
FEW = (
    [("adverse", text) for text in ("the step is loose", "rail is loose", "it is loose", "hinge is loose")]
    + [("limited", text) for text in ("could not reach it", "could not reach the back", "could not see it")]
    + [("talk", text) for text in ("okay moving on", "moving on", "okay next room", "next room")]
)


def test_the_same_statements_give_the_same_weights(small: Packs) -> None:
    examples = of_statements(FEW, small)
    assert stored(fitted(examples)) == stored(fitted(examples))


def test_what_was_learned_of_one_component_holds_for_another(small: Packs) -> None:
    weights = read_weights(stored(fitted(of_statements(FEW, small))))
    new = of_statements(
        [("adverse", "the tub is loose"), ("talk", "okay next"), ("limited", "could not reach the trap")], small
    )
    assert [vote(e.features, weights).label for e in new] == [e.labels[0] for e in new]


def test_the_stored_weights_are_those_of_the_stored_statements(shipped: Packs) -> None:
    """Of what they were trained on they know nearly all: weights left behind by new statements fall below."""
    rows = [row for path in sorted(STATEMENTS.glob("*.txt")) for row in read_statements(path)]
    assert len(rows) > 1500
    some = of_statements(rows[::7], shipped)
    right = sum(vote(e.features, stored_weights()).label in e.labels for e in some)
    assert right / len(some) > 0.9


def test_every_label_has_statements() -> None:
    rows = [row for path in STATEMENTS.glob("*.txt") for row in read_statements(path)]
    assert {label for label, _ in rows} == set(LABELS)


def test_the_weights_are_small_enough_for_a_phone() -> None:
    size = (Path(drafting.__file__).parent / "votes.json").stat().st_size
    assert 10_000 < size < MOST_BYTES


def test_shares_add_up_and_unknown_features_say_nothing() -> None:
    found = vote(["w:never heard of"], stored_weights())
    assert sum(found.shares) == pytest.approx(1.0)
    assert found.share == pytest.approx(1 / len(LABELS))


def test_a_line_under_no_label_is_refused_with_its_place(tmp_path: Path) -> None:
    path = tmp_path / "wrong.txt"
    path.write_text("[adverse]\nthe step is loose\n[splendid]\nit is splendid\n", encoding="utf-8")
    with pytest.raises(UnlabelledError, match=r"wrong\.txt, line 3: 'splendid'"):
        read_statements(path)


def _first_draft(monkeypatch: pytest.MonkeyPatch, packs: Packs, said: str, told: Vote) -> dict[str, object] | None:
    monkeypatch.setattr("witnessmark.listening.listener.voted", lambda _st, _items: told)
    heard = listen(Narration("one", (Line(0.0, 3.0, said),)), packs).as_json()
    rows = heard["drafts"]
    assert isinstance(rows, list)
    return rows[0] if rows else None


@pytest.mark.parametrize(
    ("said", "label", "act"),
    [("the furnace quux", "off", "stopped"), ("the furnace quux by zanthor", "identified", "identified")],
)
def test_where_no_rule_drafts_a_sure_vote_does(
    said: str, label: str, act: str, small: Packs, monkeypatch: pytest.MonkeyPatch
) -> None:
    made = _first_draft(monkeypatch, small, said, Vote(label, 0.95, ()))
    assert made is not None
    assert (made["act"], made["label"], made["why"]) == (act, "furnace", "vote 0.95")
    assert _first_draft(monkeypatch, small, said, Vote(label, 0.5, ())) is None


@pytest.mark.parametrize(
    "label", ["adverse", "sound", "on", "operated", "described", "limited", "doubt", "talk", "aside", "measured"]
)
def test_what_the_vote_is_often_wrong_about_it_never_drafts(
    label: str, small: Packs, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert _first_draft(monkeypatch, small, "the furnace quux", Vote(label, 1.0, ())) is None


def test_rules_come_before_the_vote(small: Packs, monkeypatch: pytest.MonkeyPatch) -> None:
    made = _first_draft(monkeypatch, small, "the furnace filter is missing", Vote("off", 1.0, ()))
    assert made is not None
    assert made["condition"] == "adverse"


def test_what_is_set_aside_stays_so(small: Packs, monkeypatch: pytest.MonkeyPatch) -> None:
    said = "if the furnace was leaking you would want a new furnace"
    assert _first_draft(monkeypatch, small, said, Vote("off", 1.0, ())) is None
