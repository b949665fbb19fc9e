"""Conditions of the structure, the site and the exterior: whole, plain, in Spanish too, and heard as they are meant."""

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

SYSTEMS = ("structure", "site", "exterior")
LEAST = 170
PROMISES = re.compile(
    r"\b(safe|safely|safety|guarantee\w*|warrant\w*|promis\w*|compliant|complies|comply|up to code|code violation)\b",
    re.IGNORECASE,
)
#: Words of danger larger than what was seen.
SHOUTED = re.compile(
    r"\b(deadly|disaster|catastroph\w*|terrible|horrible|peligrosísim\w*|catástrofe|desastre)\b", re.IGNORECASE
)


@pytest.fixture(name="rows", scope="module")
def _rows(packs: Packs) -> tuple[Condition, ...]:
    return tuple(c for c in packs.conditions.values() if packs.kinds[c.kinds[0]].system in SYSTEMS)


def test_there_are_enough_and_every_kind_has_one(packs: Packs, rows: tuple[Condition, ...]) -> None:
    assert len(rows) >= LEAST
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
    assert {text: n for text, n in Counter(c.because for c in rows).items() if n > 1} == {}
    assert {text: n for text, n in Counter(c.evidence for c in rows).items() if n > 1} == {}


def test_what_must_not_wait_concerns_people_and_says_what_to_keep_off(rows: tuple[Condition, ...]) -> None:
    urgent = [c for c in rows if c.urgency in {"now", "before use"}]
    assert [c.id for c in urgent if c.stake != "people"] == []
    keep_off = re.compile(r"\b([Kk]eep \w+|[Dd]o not|[Ss]top using|[Kk]eep people)\b")
    assert [c.id for c in urgent if not keep_off.search(c.do)] == []
    assert [c.id for c in rows if c.stake == "upkeep" and c.urgency not in {"plan", "watch"}] == []


def test_each_is_said_in_several_ways(rows: tuple[Condition, ...]) -> None:
    assert [c.id for c in rows if len(set(c.spoken)) < 4] == []


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
        here, there = " ".join(texts(row)), " ".join(texts(spanish[("condition", row.id)]))
        assert Counter(re.findall(r"\d+", here)) == Counter(re.findall(r"\d+", there)), row.id


def test_nothing_is_promised_or_shouted(
    rows: tuple[Condition, ...], spanish: dict[tuple[str, str], Translation]
) -> None:
    said = [(c.id, t) for c in rows for t in (c.name, *english(c))]
    assert [row for row in said if PROMISES.search(row[1]) or SHOUTED.search(row[1]) or "!" in row[1]] == []
    dicho = [(c.id, t) for c in rows for t in (spanish[("condition", c.id)].name, *texts(spanish[("condition", c.id)]))]
    assert [row for row in dicho if PROMESAS.search(row[1]) or SHOUTED.search(row[1]) or "!" in row[1]] == []


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


#: The numbers that texts quote, and the limit of the packs that says the same (IRC R312.1.2, R312.1.3, R401.3;
#: Wood Handbook ch. 14; EPA 402-K-02-003).
QUOTED = (
    ("deck.guard-gap-wide", "4-inch", "baluster-gap"),
    ("deck.guard-low", "36 inches", "guard-height"),
    ("driveway.slopes-to-house", "2 percent", "paving-slope"),
    ("rim-joist.wet", "20 percent", "wood-moisture-safe"),
    ("roof-sheathing.wet", "20 percent", "wood-moisture-safe"),
    ("trim.wet", "20 percent", "wood-moisture-safe"),
    ("basement.damp-air", "60 percent", "indoor-humidity"),
)


@pytest.mark.parametrize(("condition", "words", "limit"), QUOTED)
def test_a_number_in_a_text_is_that_of_the_limit(packs: Packs, condition: str, words: str, limit: str) -> None:
    assert words in " ".join(texts(packs.conditions[condition]))
    number, unit = re.split(r"[ -]", words)
    held = packs.criteria[limit]
    said = Quantity(Decimal(number), {"inches": "[in_i]", "inch": "[in_i]", "percent": "%"}[unit])
    assert units.exact(said, held.unit) == Fraction(held.value)


def test_a_fall_of_6_inches_in_10_feet_is_the_slope_of_the_limit(packs: Packs) -> None:
    """IRC R401.3 gives it in inches over feet; the packs hold a reading of a level against 5 percent."""
    assert "6 inches of fall in the first 10 feet" in packs.conditions["grading.slopes-to-house"].implication
    assert Fraction(6, 10 * 12) * 100 == Fraction(packs.criteria["grade-slope"].value)


#: What is said of things in order; none of it may be heard as a fault.
IN_ORDER = (
    ("outside", "slope behind the house looks stable"), ("outside", "no erosion along the foundation"),
    ("outside", "yard drain is clear and the grate is in place"), ("outside", "patio slopes away from the house"),
    ("outside", "retaining wall is straight and has weep holes"), ("outside", "window well has a ladder"),
    ("outside", "fence is straight and the gate latches"), ("outside", "shed has power in conduit"),
    ("outside", "sprinklers are not hitting the house"), ("outside", "pool drain covers are in place"),
    ("outside", "hot tub cover locks"), ("outside", "siding has good clearance to the roof"),
    ("outside", "stucco has no stains"), ("outside", "lintels are painted and straight"),
    ("outside", "trim reads ten percent"), ("outside", "vent flaps open and close"),
    ("outside", "no woodpecker holes"), ("outside", "bulkhead is tight and dry"),
    ("deck", "no sway in the deck"), ("deck", "deck beam sits on the posts"), ("deck", "deck hardware has no rust"),
    ("deck", "patio cover is bolted to the house"), ("basement", "beam pocket is dry"),
    ("basement", "no musty smell in the basement"), ("basement", "foundation walls are dry and straight"),
    ("crawl space", "cripple walls are braced with plywood"), ("crawl space", "no sewage under the house"),
    ("crawl space", "no fungus on the joists"), ("crawl space", "joists bear well on the beam"),
    ("attic", "no frost on the nails"), ("attic", "collar ties are in place"), ("attic", "no bats in the attic"),
    ("hall", "attic ladder is bolted and solid"),
)  # fmt: skip
#: What is said of faults, and the condition meant.
FAULTY = (
    ("outside", "drain grate is missing", "site-drainage.grate-missing"),
    ("outside", "patio is pitched the wrong way", "driveway.slopes-to-house"),
    ("outside", "retaining wall has no guard", "retaining-wall.no-guard"),
    ("outside", "window well has no rungs to climb out", "window-well.no-ladder"),
    ("outside", "yard gate drags on the ground", "fence.gate-faulty"),
    ("outside", "shed is fed by an extension cord", "outbuilding.cord-powered"),
    ("outside", "sprinkler is hitting the house", "irrigation.wets-house"),
    ("outside", "pool drain cover is broken", "swimming-pool.drain-cover"),
    ("outside", "lintel is rusting and lifting the brick", "brick-veneer.lintel-rusted"),
    ("outside", "siding laps are caulked shut", "caulking.drain-path-sealed"),
    ("outside", "areaway drain is clogged", "basement-entrance.no-drain"),
    ("outside", "patio cover is nailed to the fascia", "patio-cover.poorly-held"),
    ("deck", "stairs pulled away from the deck", "deck.stairs-loose"),
    ("deck", "ledger is bolted through the brick", "deck.ledger-on-veneer"),
    ("basement", "end of the girder is soft in the pocket", "beam.end-decayed"),
    ("basement", "support post is just a screw jack", "post.screw-jack"),
    ("crawl space", "cripple walls are not braced", "wall-framing.cripple-not-braced"),
    ("crawl space", "anchor bolts have no nuts", "anchor-bolt.loose"),
    ("attic", "collar ties were cut out", "roof-framing.brace-missing"),
    ("attic", "frost on the nails in the attic", "attic.condensation"),
    ("hall", "attic ladder is hung with drywall screws", "attic-ladder.poorly-fastened"),
    ("hall", "crawl hatch is too small to get through", "crawl-access.too-small"),
)  # fmt: skip


@pytest.mark.parametrize(("place", "words"), IN_ORDER)
def test_what_is_in_order_is_not_heard_as_a_fault(packs: Packs, place: str, words: str) -> None:
    assert heard(packs, place, words) == set()


@pytest.mark.parametrize(("place", "words", "condition"), FAULTY)
def test_a_fault_is_heard_as_its_condition(packs: Packs, place: str, words: str, condition: str) -> None:
    assert condition in heard(packs, place, words)


@pytest.fixture(name="situations", scope="module")
def _situations(packs: Packs) -> tuple[Situation, ...]:
    files = {path: text for path, text in scenario_texts(()).items() if "conditions-outside/" in path}
    return tuple(read_situation(path, text, packs) for path, text in files.items())


def test_situations_come_out_as_a_person_of_the_trade_expects(packs: Packs, situations: tuple[Situation, ...]) -> None:
    assert [str(p) for situation in situations for p in try_situation(situation, packs)] == []
    drafted = {finding for s in situations for finding in s.expect.get("findings", ())}
    assert len([s for s in situations if s.expect.get("findings")]) >= 7
    assert {packs.kinds[packs.conditions[c].kinds[0]].system for c in drafted} >= set(SYSTEMS)
    assert len([s for s in situations if s.expect.get("readings")]) >= 3
    assert any(s.expect.get("look_again") for s in situations)
