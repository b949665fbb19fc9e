"""Conditions of water, drains, hot water and piped fuel: whole, plain, in Spanish too, and heard as they are meant."""

from __future__ import annotations

import re
from collections import Counter
from decimal import Decimal
from fractions import Fraction
from typing import TYPE_CHECKING

import pytest

from condition_texts import PROMESAS, english, heard, sentences, texts
from witnessmark import units
from witnessmark.assembly.situation import read_situation
from witnessmark.assembly.situations import try_situation
from witnessmark.packs import scenario_texts
from witnessmark.units import Quantity

if TYPE_CHECKING:
    from witnessmark.packs.model import Condition, Packs, Translation

LEAST = 84
PROMISES = re.compile(
    r"\b(safe|safely|safety|guarantee\w*|warrant\w*|promis\w*|compliant|complies|comply|up to code|code violation)\b",
    re.IGNORECASE,
)
#: Nobody is told to light, open or restore what was found off.
TOLD = re.compile(
    r"\b(relight|light the pilot|turn (it|them) on|energi[sz]e|open the tank|encienda|abra (la fosa|la llave))\b",
    re.IGNORECASE,
)
#: Words that begin with a capital inside a sentence and are no maker's name.
CAPITALS = {"GFCI", "Fahrenheit.", "Fahrenheit"}


@pytest.fixture(name="rows", scope="module")
def _rows(packs: Packs) -> tuple[Condition, ...]:
    return tuple(
        c for c in packs.conditions.values() if c.provenance.file.rsplit("/", 1)[-1].startswith("plumbing")
    )  # fmt: skip


def test_there_are_enough(rows: tuple[Condition, ...]) -> None:
    assert len(rows) >= LEAST


def test_every_kind_has_a_condition(packs: Packs, rows: tuple[Condition, ...]) -> None:
    held = Counter(kind for row in rows for kind in row.kinds)
    assert [k.id for k in packs.kinds.values() if k.system == "plumbing" and not held[k.id]] == []


def test_a_condition_is_named_after_one_of_its_kinds_and_its_part_is_of_one(
    packs: Packs, rows: tuple[Condition, ...]
) -> None:
    assert [c.id for c in rows if c.id.split(".")[0] not in packs.kinds] == []
    for row in rows:
        parts = {part.id for kind in row.kinds for part in packs.kinds[kind].parts}
        assert row.part is None or row.part in parts, row.id


def test_each_says_why_its_stake_and_urgency_and_what_shows_it(rows: tuple[Condition, ...]) -> None:
    assert [c.id for c in rows if not c.because.endswith(".") or not c.evidence or c.evidence.endswith(".")] == []
    assert [c.id for c in rows if len(list(sentences(c.because))) != 1] == []
    for said in (Counter(c.because for c in rows), Counter(c.observation for c in rows)):
        assert [text for text, n in said.items() if n > 1] == []


def test_what_is_not_to_be_used_concerns_people_and_carries_a_caution(rows: tuple[Condition, ...]) -> None:
    assert [c.id for c in rows if c.urgency in {"now", "before use"} and c.stake != "people"] == []
    assert [c.id for c in rows if c.urgency in {"now", "before use"} and not c.cautions] == []
    assert [c.id for c in rows if c.stake == "upkeep" and c.urgency not in {"plan", "watch"}] == []


def test_every_condition_and_kind_is_there_in_spanish(
    packs: Packs, rows: tuple[Condition, ...], spanish: dict[tuple[str, str], Translation]
) -> None:
    for row in rows:
        said = spanish[("condition", row.id)]
        assert said.name, row.id
        assert all(text.endswith(".") for text in texts(said)), row.id
        assert not {said.name, *texts(said)} & {row.name, *texts(row)}, row.id
    for kind in packs.kinds.values():
        if kind.system == "plumbing":
            assert spanish[("kind", kind.id)].name, kind.id
            assert spanish[("kind", kind.id)].plural, kind.id


def test_the_numbers_are_the_same_in_both_languages(
    rows: tuple[Condition, ...], spanish: dict[tuple[str, str], Translation]
) -> None:
    for row in rows:
        there = Counter(re.findall(r"\d+", " ".join(texts(spanish[("condition", row.id)]))))
        assert Counter(re.findall(r"\d+", " ".join(texts(row)))) == there, row.id


def test_nothing_is_promised_and_nobody_is_told_to_light_anything(
    rows: tuple[Condition, ...], spanish: dict[tuple[str, str], Translation]
) -> None:
    said = [(c.id, t) for c in rows for t in (c.name, *english(c))]
    assert [row for row in said if PROMISES.search(row[1]) or TOLD.search(row[1]) or "!" in row[1]] == []
    dicho = [(c.id, t) for c in rows for t in (spanish[("condition", c.id)].name, *texts(spanish[("condition", c.id)]))]
    assert [row for row in dicho if PROMESAS.search(row[1]) or TOLD.search(row[1]) or "!" in row[1]] == []


def test_no_maker_is_named(rows: tuple[Condition, ...], spanish: dict[tuple[str, str], Translation]) -> None:
    """No word inside a sentence begins with a capital, so there is no name of a firm in it."""
    said = [(c.id, t) for c in rows for t in (c.name, *english(c), *texts(spanish[("condition", c.id)]))]
    named = [
        (row, word)
        for row, text in said
        for sentence in sentences(text)
        for word in sentence.split()[1:]
        if word[:1].isupper() and word.rstrip(".") not in CAPITALS
    ]
    assert named == []


#: The numbers that texts quote, and the limit of the packs that says the same (UPC 608.2; CPSC publication 5098;
#: IRC P2804.6.1; 22 TAC 535.230).
QUOTED = (
    ("supply-piping.pressure-high", "above 80 pounds", Quantity(Decimal(80), "[psi]"), "water-pressure-high"),
    ("water-heater.water-too-hot", "above 120 degrees", Quantity(Decimal(120), "[degF]"), "hot-water-scald"),
    ("water-heater.discharge-high", "6 inches", Quantity(Decimal(6), "[in_i]"), "relief-discharge-height"),
)


@pytest.mark.parametrize(("condition", "words", "said", "limit"), QUOTED)
def test_a_number_in_a_text_is_that_of_the_limit(
    packs: Packs, condition: str, words: str, said: Quantity, limit: str
) -> None:
    assert words in " ".join(texts(packs.conditions[condition]))
    held = packs.criteria[limit]
    assert held.condition == condition
    assert units.exact(said, held.unit) == Fraction(held.value)


#: What is said of things in order; none of it may be heard as a fault.
IN_ORDER = (
    ("basement", "water meter is dry and easy to read"), ("basement", "sump pump lid is on and bolted"),
    ("site", "propane tank is level and has no rust"), ("site", "well cap is tight"),
    ("bathroom", "bidet is tight and does not leak"), ("bathroom", "toilet is solid on the floor"),
    ("kitchen", "no leaks under the sink"), ("kitchen", "angle stops look good"),
    ("garage", "water heater has both straps"), ("basement", "backflow preventer is dry and has a test tag"),
    ("utility room", "recirc pump is running quiet"), ("site", "septic lids are in place"),
    ("kitchen", "gas shutoff is right behind the range"), ("laundry", "washer hoses are braided"),
)  # fmt: skip
#: What is said of faults, and the condition meant.
FAULTY = (
    ("site", "water meter is still spinning", "water-meter.turns-with-all-off"),
    ("site", "meter box lid is broken", "water-meter.box-broken"),
    ("garage", "backflow preventer is leaking", "backflow-preventer.leaking"),
    ("bathroom", "bidet is loose", "bidet.leaking"),
    ("utility room", "recirc pump is leaking", "recirculation-pump.not-working"),
    ("site", "propane tank is leaning", "propane-tank.rusted"),
    ("site", "wellhead cap is cracked", "well-equipment.cap-damaged"),
    ("utility room", "pressure tank is waterlogged", "well-equipment.short-cycles"),
    ("site", "septic lid is cracked", "septic-system.lid-broken"),
    ("site", "soggy over the leach field", "septic-system.wet-ground"),
    ("kitchen", "angle stop is frozen", "stop-valve.seized"),
    ("bathroom", "toilet tank is cracked", "toilet.cracked"),
    ("bathroom", "shower wall is soft", "shower.walls-soft"),
    ("basement", "oil tank is leaking", "oil-tank.leaking"),
    ("basement", "ejector lid is not sealed", "sewage-ejector.lid-not-sealed"),
    ("basement", "sump discharges at the foundation", "sump-pump.discharge-near"),
    ("site", "gas meter is behind the deck", "gas-meter.blocked"),
    ("attic", "drain vent is open in the attic", "drain-piping.vent-indoors"),
)  # fmt: skip


@pytest.mark.parametrize(("place", "words"), IN_ORDER)
def test_what_is_in_order_is_not_heard_as_a_fault(packs: Packs, place: str, words: str) -> None:
    assert heard(packs, place, words) == set()


@pytest.mark.parametrize(("place", "words", "condition"), FAULTY)
def test_a_fault_is_heard_as_its_condition(packs: Packs, place: str, words: str, condition: str) -> None:
    assert condition in heard(packs, place, words)


def test_situations_come_out_as_a_person_of_the_trade_expects(packs: Packs) -> None:
    files = {path: text for path, text in scenario_texts(()).items() if "conditions-plumbing/" in path}
    situations = [read_situation(path, text, packs) for path, text in files.items()]
    assert [str(p) for situation in situations for p in try_situation(situation, packs)] == []
    assert len([s for s in situations if s.expect.get("findings")]) >= 7
    assert any(s.expect.get("readings") for s in situations)
    assert any(s.expect.get("look_again") for s in situations)
