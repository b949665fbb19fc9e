"""Conditions of rooms, appliances and alarms: whole, plain, in Spanish too, and heard as they are meant."""

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

SYSTEMS = ("interior", "appliances", "alarms")
FILES = (
    "interior.toml", "interior-rooms-and-stairs.toml", "appliances.toml", "appliances-kitchen-and-laundry.toml",
    "alarms.toml",
)  # fmt: skip
LEAST = 118
#: The pan below a washer is a part of the washer connections, which are plumbing; its row is named after the washer.
PAN = "clothes-washer.no-pan"
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
    assert [c.id for c in rows if packs.kinds[c.kinds[0]].system not in SYSTEMS] == [PAN]


def test_every_kind_has_a_condition_that_begins_with_it_or_names_it(packs: Packs, rows: tuple[Condition, ...]) -> None:
    held = Counter(kind for row in rows for kind in row.kinds)
    assert [k.id for k in packs.kinds.values() if k.system in SYSTEMS and not held[k.id]] == []


def test_a_condition_is_named_after_one_of_its_kinds_and_its_part_is_of_one(
    packs: Packs, rows: tuple[Condition, ...]
) -> None:
    assert [c.id for c in rows if c.id.split(".")[0] not in c.kinds] == [PAN]
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
    for row in rows:
        text = " ".join(texts(row))
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


#: The numbers that texts quote, and the limit of the packs that says the same (IRC R310, R311.7.2, R312; NFPA 72 for
#: the age of alarms; 40 degrees is the limit of public food advice).
QUOTED = (
    ("escape-opening.too-small", "20 inches", "escape-opening-width"),
    ("guard.low", "36 inches", "guard-height-inside"),
    ("smoke-alarm.old", "10 years", "smoke-alarm-age"),
    ("refrigerator.warm", "40 degrees", "refrigerator-temperature"),
)


@pytest.mark.parametrize(("condition", "words", "limit"), QUOTED)
def test_a_number_in_a_text_is_that_of_the_limit(packs: Packs, condition: str, words: str, limit: str) -> None:
    assert words in " ".join(texts(packs.conditions[condition]))
    number, unit = words.split()
    said = Quantity(Decimal(number), {"inches": "[in_i]", "years": "a", "degrees": "[degF]"}[unit])
    held = packs.criteria[limit]
    assert units.exact(said, held.unit) == Fraction(held.value)


#: What is said of things in order; none of it may be heard as a fault.
IN_ORDER = (
    ("stairs", "handrail is solid and returns to the wall"), ("stairs", "treads are tight"),
    ("stairs", "risers are closed"), ("stairs", "light switches at the top and bottom of the stairs"),
    ("stairs", "stair lift runs and stops at each end"), ("hall", "balusters are tight and close together"),
    ("bedroom", "window opens and latches"), ("bedroom", "window bars have a quick release"),
    ("bedroom", "screens are all there"), ("bedroom", "no stains below the window"),
    ("living room", "hardwood floor is flat and dry"), ("living room", "no patches in the ceiling"),
    ("kitchen", "burner flames are blue and steady"), ("kitchen", "oven door closes tight"),
    ("kitchen", "all the knobs are there"), ("kitchen", "glass cooktop is in good shape"),
    ("kitchen", "range hood is clean"), ("kitchen", "instant hot works"), ("kitchen", "compactor runs and returns"),
    ("laundry", "washer has braided hoses"), ("laundry", "no lint behind the dryer"),
    ("laundry", "metal dryer hose short and clean"), ("hall", "smoke alarm sounded and the others with it"),
    ("garage", "heat detector is in place"), ("entry", "alarm panel is lit and shows ready"),
)  # fmt: skip
#: What is said of faults, and the condition meant.
FAULTY = (
    ("stairs", "stair lift doesn't work", "elevator.not-working"),
    ("stairs", "third step has a loose tread", "stair.tread-loose"),
    ("stairs", "stairs have no light", "stair.dark"),
    ("stairs", "open risers on the basement stairs", "stair.open-risers"),
    ("stairs", "handrail stops short", "stair.handrail-stops-short"),
    ("hall", "two spindles here there's a missing spindle", "guard.baluster-missing"),
    ("bedroom", "window bars with no release", "escape-opening.barred"),
    ("bedroom", "slide bolt on the outside of the bedroom door", "interior-door.locks-someone-in"),
    ("bedroom", "windows are sweating", "window.condensation"),
    ("living room", "floor is cupped", "floor.buckled"),
    ("bathroom", "wall is soft behind the tile", "tile.loose-in-wet-wall"),
    ("basement", "pipe wrap is crumbling", "suspect-material.crumbling"),
    ("kitchen", "burner flame is yellow", "range.flame-yellow"),
    ("kitchen", "crack in the glass cooktop", "cooktop.glass-cracked"),
    ("kitchen", "cabinet is too close to the stove", "range.cabinet-close"),
    ("kitchen", "trash compactor doesn't work", "trash-compactor.not-working"),
    ("kitchen", "instant hot drips", "hot-water-dispenser.leaking"),
    ("laundry", "washing machine has old rubber hoses", "clothes-washer.hoses-old"),
    ("laundry", "foil hose behind the dryer", "clothes-dryer.foil-connector"),
    ("laundry", "dryer doesn't heat", "clothes-dryer.not-heating"),
    ("garage", "central vac doesn't work", "central-vacuum.weak"),
    ("garage", "painted heat detector", "heat-alarm.damaged"),
    ("hall", "smoke alarm is too close to the stove", "smoke-alarm.badly-placed"),
    ("entry", "alarm panel shows trouble", "security-system.trouble"),
    ("entry", "intercom is dead", "intercom.not-working"),
    ("utility room", "fire sprinkler has no pressure", "fire-sprinkler.valve-closed"),
)  # fmt: skip


@pytest.mark.parametrize(("place", "words"), IN_ORDER)
def test_what_is_in_order_is_not_heard_as_a_fault(packs: Packs, place: str, words: str) -> None:
    assert heard(packs, place, words) == set()


@pytest.mark.parametrize(("place", "words", "condition"), FAULTY)
def test_a_fault_is_heard_as_its_condition(packs: Packs, place: str, words: str, condition: str) -> None:
    assert condition in heard(packs, place, words)


@pytest.fixture(name="situations", scope="module")
def _situations(packs: Packs) -> tuple[Situation, ...]:
    files = {path: text for path, text in scenario_texts(()).items() if "conditions-inside/" in path}
    return tuple(read_situation(path, text, packs) for path, text in files.items())


def test_situations_come_out_as_a_person_of_the_trade_expects(packs: Packs, situations: tuple[Situation, ...]) -> None:
    assert [str(p) for situation in situations for p in try_situation(situation, packs)] == []
    drafted = {finding for s in situations for finding in s.expect.get("findings", ())}
    assert len([s for s in situations if s.expect.get("findings")]) >= 7
    assert {packs.kinds[packs.conditions[c].kinds[0]].system for c in drafted} >= set(SYSTEMS)
    assert any(s.expect.get("readings") for s in situations)
    assert any(s.expect.get("look_again") for s in situations)
