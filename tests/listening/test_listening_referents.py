"""The ranking of what a statement may be about (sentences written by us; common practice, no source)."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from train_referents.examples import Example, of_narration, same_component
from train_referents.fit import fitted, stored
from witnessmark.listening import Line, Narration
from witnessmark.listening.listener import listened
from witnessmark.listening.referents import Weighed, best, read_weights, stored_weights
from witnessmark.packs.model import Packs

NARRATIONS = Path(__file__).parent / "narrations"


def told(*lines: str) -> Narration:
    return Narration("test", tuple(Line(3.0 * i, 3.0 * i + 3.0, text) for i, text in enumerate(lines)))


def seen(packs: Packs, *lines: str, weights: dict[str, float] | None = None) -> list[Weighed]:
    found: list[Weighed] = []
    listened(told(*lines), packs, weights=weights, watch=found.append)
    return found


def test_the_rules_choice_stands_unless_another_is_clearly_likelier() -> None:
    assert best([["a"], ["b"]], {}) == 0
    assert best([["a"], ["b"]], {"b": 0.1}) == 0
    assert best([["a"], ["b"]], {"b": 2.0}) == 1
    assert best([["a"], ["b"], ["b", "c"]], {"b": 2.0, "c": 1.0}) == 2


def test_what_was_spoken_of_before_is_weighed(shipped: Packs) -> None:
    rows = seen(shipped, "the dishwasher is level", "the sink has a stain", "it drains slow")
    labels = [one.thing.label for one in rows[-1].candidates]
    assert labels[0] == "sink"
    assert "dishwasher" in labels
    assert len({*labels}) == len(labels)


def test_weights_can_turn_to_what_was_spoken_of_before(shipped: Packs) -> None:
    lines = ("the dishwasher is level", "the sink has a stain", "it is cracked")
    ruled = listened(told(*lines), shipped, weights={})
    turned = listened(told(*lines), shipped, weights={"before1": 5.0})
    assert ruled.drafts[-1].kind == "sink"
    assert turned.drafts[-1].kind == "dishwasher"
    assert turned.drafts[-1].text == "it is cracked"


def test_one_thing_alone_is_not_weighed(shipped: Packs) -> None:
    assert seen(shipped, "the dishwasher is level") == []


def test_no_weight_is_of_a_kind(shipped: Packs) -> None:
    """What was learned holds for kinds of an overlay too."""
    kinds = {k for k in shipped.kinds if len(k) > 4}
    for name in stored_weights():
        assert not kinds & set(name.replace(":", " ").split()), name


def test_examples_know_which_candidates_are_right(shipped: Packs) -> None:
    rows = of_narration(NARRATIONS / "d1_basement_mechanical.jsonl", shipped, {})
    assert len(rows) > 20
    assert all(len(row.features) == len(row.right) > 1 for row in rows)
    assert 0.5 < sum(row.right[0] for row in rows) / len(rows) < 1.0


def test_names_of_the_same_component() -> None:
    assert same_component("valve (boiler zone valve)", "zone valves")
    assert same_component("dehumidifyer", "dehumidifier")
    assert not same_component("window", "boiler")


def test_fitting_prefers_what_is_right_and_is_the_same_each_time() -> None:
    examples = [Example((("near",), ("far", "fits")), (False, True)), Example((("near",), ("far",)), (True, False))] * 8
    weights = fitted(examples)
    assert weights["fits"] > weights["far"]
    assert weights["near"] > weights["far"]
    assert stored(weights) == stored(fitted(examples))
    kept: dict[str, Any] = read_weights(stored(weights))
    assert {name: round(w, 2) for name, w in weights.items() if round(w, 2)} == {
        n: round(w, 2) for n, w in kept.items()
    }
