"""What the listening tests share: the shipped packs, small packs made by hand, and the score of a narration."""

from __future__ import annotations

import difflib
import json
import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import pytest

from witnessmark import packs
from witnessmark.listening import Heard, Line, Narration, listen, read_narration
from witnessmark.packs.model import (
    Attribute,
    AttributeValue,
    Condition,
    Kind,
    Measure,
    Packs,
    Part,
    Procedure,
    Provenance,
    Reason,
    Sort,
)  # fmt: skip

NARRATIONS = Path(__file__).parent / "narrations"
NEAR = 5.0
IDENTITIES = {"make", "model", "serial", "made"}
BY_CONDITION = {"adverse": "defect", "sound": "fine"}
BY_ACT = {"ran": "operated", "stopped": "operated", "read": "measured", "skipped": "limited", "doubted": "doubt"}

HERE = Provenance("made by hand for this test", "2026-01-01", "common practice, no source", "test")


@pytest.fixture(scope="session")
def shipped() -> Packs:
    return packs.read()


@pytest.fixture(scope="session")
def small() -> Packs:
    """A handful of rows: enough to show each rule without the shipped packs."""
    kinds = (
        Kind("furnace", "heating", "furnace", "furnaces", ("furnace",), HERE, heard=("fur nest",),
             parts=(Part("filter", "filter", ("filter",), expected=True),),
             describe=("fuel", "make", "model", "serial", "made"), measures=("supply",), operated="by the thermostat"),
        Kind("sink", "plumbing", "sink", "sinks", ("sink",), HERE, sorts=("kitchen", "bathroom"),
             parts=(Part("trap", "trap", ("trap",)),), operated="filled and drained"),
        Kind("bathtub", "plumbing", "bathtub", "bathtubs", ("tub",), HERE, sorts=("bathroom",), operated="filled"),
        Kind("deck", "exterior", "deck", "decks", ("deck",), HERE, sorts=("outside-face",), measures=("gap",),
             parts=(Part("baluster", "baluster", ("baluster", "balusters")), Part("hanger", "joist hanger", ("joist hanger",)))),
        Kind("smoke-alarm", "alarms", "smoke alarm", "smoke alarms", ("smoke detector",), HERE, expected=("bedroom",)),
        Kind("window", "interior", "window", "windows", ("window",), HERE),
        Kind("gfci", "electrical", "GFCI device", "GFCI devices", ("g f c i",), HERE),
    )  # fmt: skip
    conditions = (
        Condition("deck.gap", ("deck",), "openings in the guard too wide", ("balusters too far apart",), "o", "i", "f", "d",
                  "carpenter", "repair", "people", "soon", HERE, part="baluster"),
        Condition("smoke.none", ("smoke-alarm",), "no smoke alarm", ("no smoke alarm",), "o", "i", "f", "d", "electrician",
                  "repair", "people", "now", HERE, absence=True),
    )  # fmt: skip
    procedures = (
        Procedure("bathtub.fill", "bathtub", "fill the tub", "how", "filled", HERE, said=("fill the tub",), put_back="drain it"),
    )  # fmt: skip
    measures = (
        Measure("supply", "supply air temperature", "[degF]", ("Cel",), ("at the supply",), HERE, "0", "220"),
        Measure("gap", "baluster gap", "[in_i]", ("cm",), ("inches apart",), HERE, "0", "24"),
        Measure("pressure", "water pressure", "[psi]", ("kPa",), ("pressure",), HERE, "0", "250"),
    )  # fmt: skip
    sorts = (
        Sort("house", "the house", (), HERE),
        Sort("kitchen", "kitchen", ("kitchen",), HERE, habitable=True),
        Sort("bathroom", "bathroom", ("bath", "hall bath"), HERE, habitable=True),
        Sort("bedroom", "bedroom", ("primary bedroom",), HERE, habitable=True),
        Sort("outside-face", "outside face", ("outside",), HERE, outside=True),
        Sort("attic", "attic", ("attic",), HERE),
    )  # fmt: skip
    attributes = (
        Attribute("fuel", "fuel", ("fuel",), (AttributeValue("gas", ("gas",)), AttributeValue("oil", ("oil",))), HERE),
        Attribute("make", "make", ("brand",), (), HERE),
        Attribute("made", "year", ("made",), (), HERE),
        Attribute("size", "size", ("size",), (), HERE),
    )  # fmt: skip
    reasons = (Reason("locked", "it was locked", ("locked",), HERE), Reason("wet", "it was wet", ("wet",), HERE))
    return Packs(
        kinds={k.id: k for k in kinds}, conditions={c.id: c for c in conditions}, procedures={p.id: p for p in procedures},
        measures={m.id: m for m in measures}, sorts={s.id: s for s in sorts}, attributes={a.id: a for a in attributes},
        reasons={r.id: r for r in reasons},
    )  # fmt: skip


Hear = Callable[..., Heard]


@pytest.fixture(scope="session")
def hear(small: Packs) -> Hear:
    """Listen to lines of three seconds each with the small packs (or others)."""

    def listening(*lines: str, using: Packs | None = None, place: str | None = None) -> Heard:
        timed = tuple(Line(3.0 * i, 3.0 * i + 3.0, text) for i, text in enumerate(lines))
        return listen(Narration("test", timed), using or small, place=place)

    return listening


@dataclass
class Score:
    """How a narration was heard against the records expected of it."""

    predicted: int = 0
    expected: int = 0
    matched: int = 0
    matched_component: int = 0
    values: tuple[int, int] = (0, 0)
    states: tuple[int, int] = (0, 0)
    in_hypothetical: list[dict[str, Any]] = field(default_factory=list)
    still_on: tuple[int, int, int] = (0, 0, 0)
    doubts: tuple[int, int, int] = (0, 0, 0)

    def f(self, matched: int | None = None) -> float:
        """The harmonic mean of precision and recall."""
        return 2 * (self.matched if matched is None else matched) / max(1, self.predicted + self.expected)


def kind_of(draft: dict[str, Any]) -> str | None:
    """The sort of record that a draft of ``listen --json`` is."""
    if draft["act"] == "saw":
        return BY_CONDITION.get(draft["condition"])
    if draft["act"] == "identified":
        return "identified" if draft["attribute"] in IDENTITIES else "described"
    return BY_ACT.get(draft["act"])


def _words(text: str | None) -> set[str]:
    small = {"the", "a", "of", "main", "kitchen", "hall", "master", "bathroom"}
    return {w.rstrip("s") for w in re.findall(r"[a-z]+", (text or "").lower())} - small


def _same_component(one: str, other: str) -> bool:
    return bool(_words(one) & _words(other)) or difflib.SequenceMatcher(None, one.lower(), other.lower()).ratio() > 0.6


def _matches(drafts: list[dict[str, Any]], gold: list[dict[str, Any]], *, component: bool) -> list[tuple[int, int]]:
    pairs = sorted(
        (not _same_component(d["label"], g["component"]), str(d["value"]) != str(g["value"]), abs(d["start"] - g["t"]), i, j)
        for i, d in enumerate(drafts)
        for j, g in enumerate(gold)
        if abs(d["start"] - g["t"]) <= NEAR
        and kind_of(d) in [g["kind"], *g.get("kind_also_ok", [])]
        and (not component or _same_component(d["label"], g["component"]))
    )  # fmt: skip
    left: set[int] = set()
    right: set[int] = set()
    found = []
    for *_, i, j in pairs:
        if i not in left and j not in right:
            left.add(i)
            right.add(j)
            found.append((i, j))
    return found


def _open_ends(rows: list[dict[str, Any]], gold: list[dict[str, Any]]) -> tuple[int, int, int]:
    hit = sum(any(abs(r["start"] - g["t"]) <= NEAR for r in rows) for g in gold)
    return hit, len(rows), len(gold)


def score(name: str, using: Packs, folder: Path = NARRATIONS) -> Score:
    """Listen to a stored narration and compare."""
    heard = listen(read_narration(folder / f"{name}.jsonl"), using).as_json()
    expected = json.loads((folder / f"{name}.gold.json").read_text(encoding="utf-8"))
    rows: Any = heard["drafts"]
    standing: Any = heard["standing"]
    drafts, gold = [d for d in rows if kind_of(d)], expected["records"]
    matched = _matches(drafts, gold, component=False)
    valued = [(drafts[i], gold[j]) for i, j in matched if gold[j]["value"] is not None]
    state = {"on": "running", "off": "off"}
    stated = [(drafts[i], gold[j]) for i, j in matched if gold[j]["state_after"]]
    return Score(
        predicted=len(drafts),
        expected=len(gold),
        matched=len(matched),
        matched_component=len(_matches(drafts, gold, component=True)),
        values=(sum(str(d["value"]) == str(g["value"]) for d, g in valued), sum(g["value"] is not None for g in gold)),
        states=(
            sum(state.get(d["left"]) == g["state_after"] for d, g in stated),
            sum(bool(g["state_after"]) for g in gold),
        ),
        in_hypothetical=[d for d in drafts if any(a <= d["start"] <= b for a, b in expected["hypothetical_spans"])],
        still_on=_open_ends(standing["still_on"], expected["left_running"]),
        doubts=_open_ends(standing["make_sure"], expected["unresolved_doubts"]),
    )


@pytest.fixture(scope="session")
def scores(shipped: Packs) -> dict[str, Score]:
    return {name: score(name, shipped) for name in names_in(NARRATIONS)}


@pytest.fixture(scope="session")
def unseen(shipped: Packs) -> dict[str, Score]:
    folder = NARRATIONS / "validation"
    return {name: score(name, shipped, folder) for name in names_in(folder)}


def names_in(folder: Path) -> list[str]:
    """The narrations with their gold in a folder."""
    return sorted(path.name.removesuffix(".gold.json") for path in folder.glob("*.gold.json"))


def _together(scores: Sequence[Score]) -> str:
    """The figures of several narrations together."""
    if not scores:
        return "none"
    matched, predicted, expected, component = (
        sum(getattr(one, name) for one in scores) for name in ("matched", "predicted", "expected", "matched_component")
    )
    both = predicted + expected
    rest = ", ".join(
        f"{name.replace('_', ' ')} " + "/".join(str(sum(getattr(one, name)[i] for one in scores)) for i in range(count))
        for name, count in (("values", 2), ("states", 2), ("still_on", 3), ("doubts", 3))
    )
    return (
        f"P {matched / predicted:.2f} R {matched / expected:.2f} F {2 * matched / both:.2f}, with component "
        f"{2 * component / both:.2f}; {rest}, in hypothetical {sum(len(one.in_hypothetical) for one in scores)}"
    )


def _figures() -> None:
    """Print how each stored narration is heard, and all together: run this file."""
    using = packs.read()
    made = []
    for name in names_in(NARRATIONS):
        s = score(name, using)
        made.append(s)
        print(  # noqa: T201 - figures for a person
            f"{name:28} P {s.matched / s.predicted:.2f} R {s.matched / s.expected:.2f} F {s.f():.2f}, with component "
            f"{s.f(s.matched_component):.2f}; values {s.values[0]}/{s.values[1]}, states {s.states[0]}/{s.states[1]}, "
            f"in hypothetical {len(s.in_hypothetical)}, still on {s.still_on}, doubts {s.doubts}"
        )
    print(f"{'all':28} {_together(made)}")  # noqa: T201 - as above
    folder = NARRATIONS / "validation"
    held = [score(name, using, folder) for name in names_in(folder)]
    print(f"{'kept for validation':28} {_together(held)}")  # noqa: T201 - as above


if __name__ == "__main__":
    _figures()
