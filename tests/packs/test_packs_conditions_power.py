"""Conditions of heating, cooling and electrical systems: whole, plain, in Spanish too, and heard as they are meant."""

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

SYSTEMS = ("heating", "cooling", "electrical")
FILES = (
    "heating.toml", "heating-vents-and-heaters.toml", "cooling.toml", "cooling-coils-and-drains.toml",
    "electrical.toml", "electrical-service-and-devices.toml",
)  # fmt: skip
LEAST = 155
#: The only words inside a sentence that begin with a capital: devices and a refrigerant, no firm.
SHORT_NAMES = {"GFCI", "AFCI", "R-22"}
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
    assert [c.id for c in rows if c.id.split(".")[0] not in c.kinds] == ["co.elevated"]  # named after the gas
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
    hasty = [c.id for c in rows if c.stake == "upkeep" and c.urgency not in {"plan", "watch"}]
    assert hasty == ["air-filter.dirty"]  # it costs little, and each week wears the blower


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
    """No other word inside a sentence begins with a capital, so there is no name of a firm in it."""
    said = [(c.id, t) for c in rows for t in (c.name, *english(c), *texts(spanish[("condition", c.id)]))]
    named = [
        (row, word)
        for row, text in said
        for sentence in sentences(text)
        for word in sentence.split()[1:]
        if word[:1].isupper() and word.rstrip(".,") not in SHORT_NAMES
    ]
    assert named == []


#: The numbers that texts quote, and the limit of the packs that says the same (NEC 110.26(A)).
QUOTED = (("36 inches", "panel-working-depth"), ("30 of width", "panel-working-width"))


@pytest.mark.parametrize(("words", "limit"), QUOTED)
def test_a_number_in_a_text_is_that_of_the_limit(packs: Packs, words: str, limit: str) -> None:
    assert words in " ".join(texts(packs.conditions["service-panel.clearance"]))
    held = packs.criteria[limit]
    assert units.exact(Quantity(Decimal(words.split(maxsplit=1)[0]), "[in_i]"), held.unit) == Fraction(held.value)


#: What is said of things in order; none of it may be heard as a fault.
IN_ORDER = (
    ("utility room", "furnace fired right up and the flame is blue"), ("utility room", "no rust in the furnace"),
    ("utility room", "filter is clean"), ("utility room", "vent connector has good rise and screws"),
    ("utility room", "service switch is right there"), ("utility room", "humidifier is clean and dry"),
    ("basement", "boiler relief valve is piped to the floor"), ("basement", "expansion tank is good"),
    ("living room", "radiators all got hot"), ("bathroom", "heated floor is warm"),
    ("attic", "ducts are insulated and sealed"), ("attic", "no ice on the coil"),
    ("west side", "condenser is level and quiet"), ("west side", "disconnect is within sight"),
    ("west side", "service drop has a good drip loop"), ("west side", "meter is tight to the wall"),
    ("garage", "panel is labeled and the breakers look good"), ("garage", "no double taps"),
    ("garage", "gfci trips and resets"), ("garage", "car charger is solid on the wall"),
    ("kitchen", "outlets are tamper resistant"), ("bedroom", "ceiling fan runs smooth"),
    ("entry", "doorbell works"), ("roof", "solar panels look good"), ("garage", "solar disconnect is labeled"),
)  # fmt: skip
#: What is said of faults, and the condition meant.
FAULTY = (
    ("utility room", "no service switch at the furnace", "furnace.no-switch"),
    ("utility room", "furnace lights with a bang", "furnace.delayed-ignition"),
    ("utility room", "vent connector is sagging", "vent-connector.slope"),
    ("utility room", "flue is corroded", "vent-connector.rusted"),
    ("utility room", "humidifier is leaking", "humidifier.leaking"),
    ("basement", "boiler relief valve is capped", "boiler.no-relief-valve"),
    ("basement", "condensate pump is overflowing", "condensate-drain.pump-failed"),
    ("hall", "mercury thermostat", "thermostat.mercury"),
    ("living room", "radiator stayed cold", "radiator.cold"),
    ("living room", "mini split drips down the wall", "mini-split.drips"),
    ("bedroom", "window unit on an extension cord", "window-air-conditioner.cord"),
    ("bedroom", "no cooling in this room", "cooling-source.none"),
    ("west side", "heat pump is iced over", "heat-pump.iced"),
    ("west side", "condenser is noisy", "air-conditioner.noisy"),
    ("west side", "meter base is loose", "electric-meter.loose"),
    ("west side", "service drop is pulling off the house", "service-drop.attachment-loose"),
    ("west side", "generator is too close to the window", "generator.exhaust-near-opening"),
    ("garage", "mouse nest in the panel", "service-panel.animals"),
    ("garage", "main disconnect is padlocked", "service-disconnect.blocked"),
    ("garage", "home battery is swollen", "battery-storage.damaged"),
    ("kitchen", "outlet is warm to the touch", "receptacle.hot"),
    ("entry", "doorbell doesn't work", "doorbell.not-working"),
    ("attic", "wiring is chewed", "branch-wiring.chewed"),
    ("roof", "solar panel is cracked", "solar-array.damaged"),
)  # fmt: skip


@pytest.mark.parametrize(("place", "words"), IN_ORDER)
def test_what_is_in_order_is_not_heard_as_a_fault(packs: Packs, place: str, words: str) -> None:
    assert heard(packs, place, words) == set()


@pytest.mark.parametrize(("place", "words", "condition"), FAULTY)
def test_a_fault_is_heard_as_its_condition(packs: Packs, place: str, words: str, condition: str) -> None:
    assert condition in heard(packs, place, words)


@pytest.fixture(name="situations", scope="module")
def _situations(packs: Packs) -> tuple[Situation, ...]:
    files = {path: text for path, text in scenario_texts(()).items() if "conditions-power/" in path}
    return tuple(read_situation(path, text, packs) for path, text in files.items())


def test_situations_come_out_as_a_person_of_the_trade_expects(packs: Packs, situations: tuple[Situation, ...]) -> None:
    assert [str(p) for situation in situations for p in try_situation(situation, packs)] == []
    drafted = {finding for s in situations for finding in s.expect.get("findings", ())}
    assert len([s for s in situations if s.expect.get("findings")]) >= 7
    assert {packs.kinds[packs.conditions[c].kinds[0]].system for c in drafted} >= set(SYSTEMS)
    assert any(s.expect.get("readings") for s in situations)
    assert any(s.expect.get("look_again") for s in situations)
