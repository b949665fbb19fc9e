"""Conditions of roofs, garages, insulation and fireplaces: whole, plain, in Spanish too, and heard as they are meant."""

from __future__ import annotations

import re
from collections import Counter
from decimal import Decimal
from fractions import Fraction
from typing import TYPE_CHECKING

import pytest

from condition_texts import PROMESAS, english, heard, sentences, texts
from witnessmark import units
from witnessmark.assembly.situation import Situation, read_situation
from witnessmark.assembly.situations import try_situation
from witnessmark.packs import scenario_texts
from witnessmark.units import Quantity

if TYPE_CHECKING:
    from witnessmark.packs.model import Condition, Packs, Translation

SYSTEMS = ("roof", "garage", "insulation", "fireplace")
#: The files of conditions of these systems; the barrier before gas equipment stands with the water heaters.
FILES = (
    "roof.toml", "roof-edges-and-drains.toml", "garage.toml", "garage-spaces.toml", "insulation.toml",
    "insulation-and-air.toml", "fireplace.toml", "fireplace-and-stoves.toml",
)  # fmt: skip
LEAST = 102
PROMISES = re.compile(
    r"\b(safe|safely|safety|guarantee\w*|warrant\w*|promis\w*|compliant|complies|comply|up to code|code violation|"
    r"certif(?:y|ies) that)\b",
    re.IGNORECASE,
)
#: Nobody is told to light or restore what was found off.
TOLD = re.compile(
    r"\b(relight|light the pilot|turn (it|them) on|energi[sz]e|encienda (el piloto|fuego))\b", re.IGNORECASE
)


@pytest.fixture(name="rows", scope="module")
def _rows(packs: Packs) -> tuple[Condition, ...]:
    return tuple(c for c in packs.conditions.values() if c.provenance.file.rsplit("/", 1)[-1] in FILES)


def test_there_are_enough_and_all_are_of_these_systems(packs: Packs, rows: tuple[Condition, ...]) -> None:
    assert len(rows) >= LEAST
    assert [c.id for c in rows if packs.kinds[c.kinds[0]].system not in SYSTEMS] == []


def test_every_kind_has_a_condition_that_begins_with_it_or_names_it(packs: Packs, rows: tuple[Condition, ...]) -> None:
    held = Counter(kind for row in rows for kind in row.kinds)
    assert [k.id for k in packs.kinds.values() if k.system in SYSTEMS and not held[k.id]] == []


def test_a_condition_is_named_after_one_of_its_kinds_and_its_part_is_of_one(
    packs: Packs, rows: tuple[Condition, ...]
) -> None:
    assert [c.id for c in rows if c.id.split(".")[0] not in c.kinds] == []
    for row in rows:
        parts = {part.id for kind in row.kinds for part in packs.kinds[kind].parts}
        assert row.part is None or row.part in parts, row.id


def test_each_says_why_its_stake_and_urgency_and_what_shows_it(rows: tuple[Condition, ...]) -> None:
    assert [c.id for c in rows if not c.because.endswith(".") or not c.evidence or c.evidence.endswith(".")] == []
    assert [c.id for c in rows if len(list(sentences(c.because))) != 1] == []
    reasons = Counter(c.because for c in rows)
    assert {reason: n for reason, n in reasons.items() if n > 2} == {}


def test_what_is_not_to_be_used_says_so_and_concerns_people(rows: tuple[Condition, ...]) -> None:
    assert [c.id for c in rows if c.urgency in {"now", "before use"} and c.stake != "people"] == []
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
        if kind.system in SYSTEMS:
            assert spanish[("kind", kind.id)].name, kind.id
            assert spanish[("kind", kind.id)].plural, kind.id


def test_the_numbers_are_the_same_in_both_languages(
    rows: tuple[Condition, ...], spanish: dict[tuple[str, str], Translation]
) -> None:
    spelled = {"Eighteen": "18"}
    for row in rows:
        text = " ".join(texts(row))
        for word, digits in spelled.items():
            text = text.replace(word, digits)
        there = Counter(re.findall(r"\d+", " ".join(texts(spanish[("condition", row.id)]))))
        assert Counter(re.findall(r"\d+", text)) == there, row.id


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
        if word[:1].isupper()
    ]
    assert named == []


#: The numbers that texts quote, and the limit of the packs that says the same (IRC R1001.10, R1003.9, M1502.4.5.1;
#: 16 CFR 1211 for the photo-eyes).
QUOTED = (
    ("hearth.short", "16 inches", "hearth-depth"),
    ("garage-door-opener.photo-eye-high", "6 inches", "photo-eye-height"),
    ("chimney.too-short", "3 feet", "chimney-height"),
    ("dryer-duct.too-long", "35 feet", "dryer-duct-length"),
)


@pytest.mark.parametrize(("condition", "words", "limit"), QUOTED)
def test_a_number_in_a_text_is_that_of_the_limit(packs: Packs, condition: str, words: str, limit: str) -> None:
    assert words in " ".join(texts(packs.conditions[condition]))
    number, unit = words.split()
    said = Quantity(Decimal(number), {"inches": "[in_i]", "feet": "[ft_i]"}[unit])
    held = packs.criteria[limit]
    assert units.exact(said, held.unit) == Fraction(held.value)


#: What is said of things in order; none of it may be heard as a fault.
IN_ORDER = (
    ("roof", "drip edge looks good"), ("roof", "no ice dams up here"), ("roof", "gutter guards are in place and clear"),
    ("roof", "satellite dish is secure"), ("roof", "scuppers are clear"), ("roof", "skylight flashing looks good"),
    ("roof", "box vents are tight"), ("roof", "no hail damage that i can see"), ("roof", "chimney has a cricket"),
    ("garage", "door to the house is self closing and latches"), ("garage", "garage door holds half way"),
    ("garage", "the opener button is at the right height"), ("garage", "bollard is solid"),
    ("garage", "no gas cans by the water heater"), ("attic", "baffles are in place"), ("attic", "no vermiculite here"),
    ("attic", "insulation is pulled back from the flue"), ("attic", "fan duct is insulated and goes outside"),
    ("crawl space", "ground cover is lapped and up the walls"), ("crawl space", "vent wells are clean"),
    ("living room", "gas fireplace lit right up and the glass is clean"), ("living room", "no soot on the glass"),
    ("living room", "stovepipe is screwed together and has good clearance"), ("living room", "insert is lined"),
)  # fmt: skip
#: What is said of faults, and the condition meant.
FAULTY = (
    ("roof", "satellite dish is bolted through the shingles", "roof-equipment.fastened-through-roof"),
    ("roof", "gutter guards are clogged", "gutter.guard-blocked"),
    ("roof", "water sits behind the chimney no cricket behind the chimney", "roof-flashing.saddle-missing"),
    ("roof", "valley is split", "roof-covering.valley-worn"),
    ("roof", "box vent is cracked", "roof-vent.damaged"),
    ("roof", "scupper is blocked", "low-slope-roof.drain-blocked"),
    ("garage", "garage door won't stay up", "garage-door.drops"),
    ("garage", "no release cord", "garage-door-opener.no-release"),
    ("garage", "wall button is too low", "garage-door-opener.button-low"),
    ("garage", "bollard has been hit", "vehicle-barrier.loose"),
    ("attic", "no baffles at the eaves", "attic-insulation.baffles-missing"),
    ("attic", "insulation is touching the flue", "attic-insulation.against-flue"),
    ("attic", "fan duct ends at the soffit", "fan-duct.ends-at-soffit"),
    ("laundry", "dryer vent has a screen", "dryer-duct.screen"),
    ("basement", "h r v drain is leaking", "heat-recovery-ventilator.drain"),
    ("living room", "soot at the pellet stove vent", "pellet-stove.vent-leaks"),
    ("living room", "single wall pipe too close", "wood-stove.pipe-close"),
    ("living room", "fireplace glass is cracked", "gas-fireplace.glass-cracked"),
    ("living room", "smoke chamber is not parged", "fireplace.smoke-chamber-rough"),
    ("living room", "hearth is cracked", "hearth.loose"),
)  # fmt: skip


@pytest.mark.parametrize(("place", "words"), IN_ORDER)
def test_what_is_in_order_is_not_heard_as_a_fault(packs: Packs, place: str, words: str) -> None:
    assert heard(packs, place, words) == set()


@pytest.mark.parametrize(("place", "words", "condition"), FAULTY)
def test_a_fault_is_heard_as_its_condition(packs: Packs, place: str, words: str, condition: str) -> None:
    assert condition in heard(packs, place, words)


@pytest.fixture(name="situations", scope="module")
def _situations(packs: Packs) -> tuple[Situation, ...]:
    files = {path: text for path, text in scenario_texts(()).items() if "conditions-roof/" in path}
    return tuple(read_situation(path, text, packs) for path, text in files.items())


def test_situations_come_out_as_a_person_of_the_trade_expects(packs: Packs, situations: tuple[Situation, ...]) -> None:
    assert [str(p) for situation in situations for p in try_situation(situation, packs)] == []
    drafted = {finding for s in situations for finding in s.expect.get("findings", ())}
    assert len([s for s in situations if s.expect.get("findings")]) >= 7
    assert {packs.kinds[packs.conditions[c].kinds[0]].system for c in drafted} >= set(SYSTEMS)
    assert any(s.expect.get("readings") for s in situations)
    assert any(s.expect.get("look_again") for s in situations)
