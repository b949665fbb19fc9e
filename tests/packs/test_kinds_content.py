"""Kinds, procedures and conditions as shipped: enough for a whole house, said in several ways, in plain words."""

import re
from collections import Counter
from collections.abc import Iterator

import pytest

from witnessmark.packs import SYSTEMS, ambiguities, plain, read
from witnessmark.packs.model import DIRECTIONS, STAKES, URGENCIES, Condition, Packs

#: A visit lasts two to four hours; nothing is asked to be looked at again after it.
LONGEST_VISIT_MIN = 240
WORDS_PER_SENTENCE = 30
SENTENCE = re.compile(r"(?<=[.!?])\s+")
#: Never said of a house: that it is safe, that it will do, that it meets a code, what it costs.
NEVER = re.compile(
    r"\b(safe|safely|safety|guarantee\w*|promise\w*|warrant\w*|code violation|up to code|catastroph\w*|deadly|"
    r"death ?trap|ticking|disaster|emergency call|\$\d+)\b",
    re.IGNORECASE,
)
#: Nobody is told to start, light, open or energise what was found off.
NEVER_TOLD = re.compile(
    r"\b(relight|light the pilot|turn the gas on|open the (gas|water|main) (valve|shutoff)|energi[sz]e|"
    r"reset the breaker|turn the breaker on|lift the relief valve)\b",
    re.IGNORECASE,
)

#: What the laws held here name as components to inspect, and a kind that stands for each. Paraphrased from
#: WAC 308-408C-070(1)(a), -090(1), -110(1), -140(1), -150(1) (read in the law's own text); 11 NCAC 08 .1108-.1114
#: (read in official copies); Fla. Admin. Code 61-30.804, .807, .810 (read); 22 TAC 535.228-.232 (read in part).
NAMED_BY_LAW = {
    "foundations": "foundation", "floors, posts, beams, joists": "floor-joist", "slabs": "slab", "posts": "post",
    "beams": "beam", "subfloors": "subfloor", "roof structure": "roof-framing", "trusses": "roof-framing",
    "stairs": "stair", "crawl space": "crawl-space", "attic": "attic", "basement": "basement",
    "wood rot and insects": "wood-pests", "conditions that invite pests": "wood-soil-contact",
    "roof covering": "roof-covering", "gutters": "gutter", "flashing": "roof-flashing", "soffits": "soffit",
    "fascia": "fascia", "skylights": "skylight", "roof penetrations": "roof-penetration", "chimneys": "chimney",
    "service drop": "service-drop", "service conductors": "service-conductors", "panels": "service-panel",
    "main disconnect": "service-disconnect", "grounding electrode": "grounding-electrode",
    "branch wiring": "branch-wiring", "receptacles": "receptacle", "switches": "switch", "fixtures": "light-fixture",
    "GFCI": "gfci", "AFCI": "afci", "ceiling fans": "ceiling-fan", "smoke alarms": "smoke-alarm",
    "carbon monoxide alarms": "co-alarm", "supply piping": "supply-piping", "drain, waste, vent": "drain-piping",
    "water heater": "water-heater", "fuel storage": "oil-tank", "gas piping": "gas-piping", "sump": "sump-pump",
    "main shutoff": "main-shutoff", "expansion tank": "expansion-tank", "pressure regulator": "pressure-regulator",
    "hydromassage tub": "whirlpool-tub", "heating equipment": "furnace", "boiler": "boiler", "heat pump": "heat-pump",
    "controls": "thermostat", "ducts": "duct", "filters": "air-filter", "flues": "vent-connector",
    "heat source in each habitable space": "heat-source", "cooling equipment": "air-conditioner",
    "cooling source in each habitable space": "cooling-source", "condensate drain": "condensate-drain",
    "walls": "wall", "ceilings": "ceiling", "interior floors": "floor", "doors": "interior-door", "windows": "window",
    "guards": "guard", "landings": "landing", "cabinets": "cabinet", "counters": "countertop",
    "caulk and grout": "wet-area-sealant", "glazing": "glazing", "emergency escape": "escape-opening",
    "attic insulation": "attic-insulation", "floor insulation": "floor-insulation", "ground cover": "ground-cover",
    "insulation on ducts": "duct-insulation", "insulation on supply plumbing": "pipe-insulation",
    "attic ventilation": "attic-ventilation", "foundation ventilation": "crawl-ventilation",
    "mechanical exhaust": "exhaust-fan", "dryer exhaust": "dryer-duct", "vapor retarders": "vapor-retarder",
    "fireplaces": "fireplace", "solid fuel appliances": "wood-stove", "hearth": "hearth", "grading": "grading",
    "vegetation": "vegetation", "drives": "driveway", "walks": "walkway", "patios": "patio",
    "retaining walls": "retaining-wall", "cladding": "siding", "trim": "trim", "exterior doors": "exterior-door",
    "decks": "deck", "balconies": "balcony", "porches": "porch", "eaves": "eave", "garage doors": "garage-door",
    "garage door operators": "garage-door-opener", "garage-house door": "garage-house-door",
    "garage separation": "garage-separation", "carports": "carport", "range": "range", "dishwasher": "dishwasher",
    "disposer": "disposer", "hood": "range-hood", "microwave": "microwave", "compactor": "trash-compactor",
    "refrigerator": "refrigerator", "washer": "clothes-washer", "dryer": "clothes-dryer",
}  # fmt: skip

#: Everything wrong in the invented demo house, by condition.
OF_THE_DEMO_HOUSE = (
    "driveway.cracked", "grading.slopes-to-house", "siding.swollen", "supply-piping.pressure-high",
    "downspout.ends-at-foundation", "deck.ledger-nailed-only", "deck.guard-gap-wide", "receptacle.no-gfci",
    "gfci.missing", "vent-hood.missing-cap", "dryer-duct.lint", "roof-covering.moss", "roof-flashing.step-lifted",
    "gutter.full", "attic-ventilation.soffit-blocked", "range.no-anti-tip", "sink.trap-leak",
    "water-heater.water-too-hot", "fireplace.firebox-cracked", "hearth.short", "window.fogged",
    "stair.risers-uneven", "stair.steep", "stair.handrail-low", "receptacle.open-ground", "smoke-alarm.old",
    "smoke-alarm.none-in-bedroom", "window.painted-shut", "toilet.loose", "exhaust-fan.weak", "ceiling.stain",
    "fan-duct.ends-in-attic", "roof-sheathing.stained", "roof-sheathing.wet", "roof-sheathing.daylight",
    "garage-door-opener.photo-eye-high", "garage-house-door.hollow-core", "garage-house-door.no-closer",
    "escape-opening.too-small", "wall-insulation.gap", "wall.damp", "dryer-duct.plastic", "floor-drain.dry",
    "air-filter.dirty", "furnace.aged", "water-heater.aged", "water-heater.no-pan", "water-heater.discharge-high",
    "water-heater.strap-missing", "expansion-tank.missing", "main-shutoff.old-gate-valve",
    "service-panel.double-lug", "service-panel.over-fused", "service-panel.warm-breaker",
    "grounding-electrode.not-confirmed", "ground-cover.missing", "water-entry.standing-water", "rim-joist.rot",
    "rim-joist.wet", "wood-pests.carpenter-ants", "duct.disconnected", "floor-insulation.fallen",
    "attic-insulation.thin",
)  # fmt: skip

#: What matters most by not being there.
ABSENCES = (
    "range.no-anti-tip", "gfci.missing", "afci.missing", "expansion-tank.missing", "water-heater.strap-missing",
    "deck.guard-missing", "guard.missing", "ground-cover.missing", "smoke-alarm.none-in-bedroom", "co-alarm.none",
    "water-heater.discharge-missing", "exterior-steps.no-handrail", "stair.handrail-missing",
    "deck.ledger-flashing-missing", "gas-piping.no-drip-leg", "garage-door-opener.no-photo-eye",
    "chimney.cap-missing", "heat-source.none", "exhaust-fan.missing", "escape-opening.missing",
)  # fmt: skip


@pytest.fixture(name="packs", scope="module")
def _packs() -> Packs:
    return read()


def texts(condition: Condition) -> tuple[str, ...]:
    return (condition.observation, condition.implication, condition.if_left, condition.do)


def every_sentence(packs: Packs) -> Iterator[tuple[str, str]]:
    for condition in packs.conditions.values():
        for text in texts(condition):
            for sentence in SENTENCE.split(text):
                yield condition.id, sentence


def test_there_are_kinds_enough_and_every_system_has_some(packs: Packs) -> None:
    assert len(packs.kinds) >= 155
    held = Counter(kind.system for kind in packs.kinds.values())
    assert set(held) == set(SYSTEMS)
    assert {system: count for system, count in held.items() if count < 5} == {}


def test_what_the_laws_name_has_a_kind(packs: Packs) -> None:
    assert {named: kind for named, kind in NAMED_BY_LAW.items() if kind not in packs.kinds} == {}


def test_every_kind_is_said_in_more_than_one_way(packs: Packs) -> None:
    assert [kind.id for kind in packs.kinds.values() if len({plain(s) for s in kind.spoken}) < 2] == []
    assert [kind.id for kind in packs.kinds.values() if not kind.heard] == []


def test_spoken_forms_are_lower_case_and_belong_to_one_kind(packs: Packs) -> None:
    forms = [form for kind in packs.kinds.values() for form in (*kind.spoken, *kind.heard)]
    forms += [form for kind in packs.kinds.values() for part in kind.parts for form in part.spoken]
    forms += [form for condition in packs.conditions.values() for form in condition.spoken]
    forms += [form for procedure in packs.procedures.values() for form in procedure.said]
    assert [form for form in forms if form != form.lower() or re.search(r"[0-9&/]", form)] == []
    assert [str(note) for note in ambiguities(packs)] == []


def test_what_is_misheard_is_no_name_of_another_kind(packs: Packs) -> None:
    spoken = {plain(s): kind.id for kind in packs.kinds.values() for s in (kind.name, *kind.spoken)}
    taken = {
        f"{kind.id}: {form}": spoken[plain(form)]
        for kind in packs.kinds.values()
        for form in kind.heard
        if spoken.get(plain(form), kind.id) != kind.id
    }
    assert taken == {}


def test_acronyms_are_there_as_a_word_and_letter_by_letter(packs: Packs) -> None:
    for kind, word in (("gfci", "gfci"), ("afci", "afci"), ("co-alarm", "co alarm"), ("pressure-regulator", "prv")):
        spoken = {plain(s) for s in packs.kinds[kind].spoken}
        letters = " ".join(word.split()[0])
        assert plain(word) in spoken
        assert {s for s in spoken if s.startswith(letters)}


def test_every_operated_kind_has_a_procedure_and_the_other_way_round(packs: Packs) -> None:
    run = {procedure.kind for procedure in packs.procedures.values()}
    assert {kind.id for kind in packs.kinds.values() if kind.operated} ^ run == set()
    assert len(packs.procedures) >= 85


def test_what_is_left_on_says_how_it_ends(packs: Packs) -> None:
    rows = packs.procedures.values()
    assert [p.id for p in rows if p.leaves != "as found" and not (p.put_back or p.look_again)] == []
    assert [p.id for p in rows if p.leaves != "as found" and not p.put_back] == []


def test_windows_fit_a_visit(packs: Packs) -> None:
    for procedure in packs.procedures.values():
        again = procedure.look_again
        if again is not None:
            assert 0 <= again.earliest < again.latest <= LONGEST_VISIT_MIN, procedure.id
            assert again.words, procedure.id
            assert again.why, procedure.id
        if procedure.at_most is not None:
            assert 0 < procedure.at_most <= LONGEST_VISIT_MIN, procedure.id


def test_a_dishwasher_and_a_full_sink_are_looked_at_again(packs: Packs) -> None:
    assert packs.procedures["dishwasher.cycle"].look_again is not None
    under = packs.procedures["sink.fill"].look_again
    below = packs.procedures["bathtub.fill"].look_again
    assert under is not None
    assert under.here
    assert below is not None
    assert not below.here
    assert "ceiling" in below.kinds


def test_procedures_are_said_in_several_ways(packs: Packs) -> None:
    assert [p.id for p in packs.procedures.values() if len(set(p.said)) < 3] == []


def test_a_procedure_carries_the_cautions_its_kind_asks_for_where_energy_is_involved(packs: Packs) -> None:
    asked = {"gas-and-co", "garage-door", "ladder-and-roof"}
    bare = {
        procedure.id: sorted(set(packs.kinds[procedure.kind].cautions) & asked)
        for procedure in packs.procedures.values()
        if procedure.leaves not in {"as found", "tripped"}
        and not procedure.cautions
        and set(packs.kinds[procedure.kind].cautions) & asked
    }
    assert bare == {}


def test_nobody_is_told_to_start_what_is_off(packs: Packs) -> None:
    told = [
        f"{row.id}: {text}"
        for row in packs.procedures.values()
        for text in (row.how, row.put_back)
        if NEVER_TOLD.search(text)
    ]
    told += [f"{row.id}: {row.do}" for row in packs.conditions.values() if NEVER_TOLD.search(row.do)]
    assert told == []


def test_there_are_conditions_enough_and_those_of_the_demo_house(packs: Packs) -> None:
    assert len(packs.conditions) >= 120
    assert [c for c in (*OF_THE_DEMO_HOUSE, *ABSENCES) if c not in packs.conditions] == []
    systems = {packs.kinds[c.kinds[0]].system for c in packs.conditions.values()}
    assert systems == set(SYSTEMS)


def test_a_condition_is_whole(packs: Packs) -> None:
    for condition in packs.conditions.values():
        assert condition.name, condition.id
        assert all(text.strip() and text.strip()[-1] in ".!?" for text in texts(condition)), condition.id
        assert len({plain(s) for s in condition.spoken}) >= 3, condition.id
        assert condition.by in packs.trades, condition.id
        assert condition.direct in DIRECTIONS, condition.id
        assert condition.stake in STAKES, condition.id
        assert condition.urgency in URGENCIES, condition.id


def test_sentences_are_short(packs: Packs) -> None:
    assert [f"{c}: {s}" for c, s in every_sentence(packs) if len(s.split()) > WORDS_PER_SENTENCE] == []


def test_nothing_is_called_safe_promised_or_shouted(packs: Packs) -> None:
    rows = [(c.id, text) for c in packs.conditions.values() for text in (c.name, *texts(c))]
    rows += [(p.id, text) for p in packs.procedures.values() for text in (p.name, p.how, p.put_back)]
    assert [f"{row}: {text}" for row, text in rows if NEVER.search(text) or "!" in text] == []


def test_an_absence_is_of_one_thing(packs: Packs) -> None:
    held = Counter((k, c.part) for c in packs.conditions.values() if c.absence for k in c.kinds)
    assert [pair for pair, count in held.items() if count > 1] == []
    assert [c for c in ABSENCES if not packs.conditions[c].absence] == []
    for condition in packs.conditions.values():
        if not condition.absence:
            continue
        if condition.part is None:
            assert len(condition.kinds) == 1, f"{condition.id}: the absence of which of {condition.kinds}?"
        for kind in condition.kinds:
            parts = {part.id for part in packs.kinds[kind].parts}
            assert condition.part is None or condition.part in parts, f"{condition.id}: {kind} has no {condition.part}"


def test_a_part_worth_missing_has_a_condition_for_it(packs: Packs) -> None:
    """Where a pack says that a part's absence is worth saying, most have a condition that says it."""
    expected = [(kind.id, part.id) for kind in packs.kinds.values() for part in kind.parts if part.expected]
    told = {(k, c.part) for c in packs.conditions.values() for k in c.kinds}
    assert len([pair for pair in expected if pair in told]) * 2 > len(expected)


def test_what_may_hurt_someone_now_carries_a_caution_or_is_an_alarm(packs: Packs) -> None:
    now = [c for c in packs.conditions.values() if c.stake == "people" and c.urgency == "now" and not c.cautions]
    assert [c.id for c in now if packs.kinds[c.kinds[0]].system != "alarms"] == []


def test_the_same_words_of_one_kind_mean_one_condition(packs: Packs) -> None:
    said: dict[tuple[str, str], set[str]] = {}
    for condition in packs.conditions.values():
        for kind in condition.kinds:
            for form in condition.spoken:
                said.setdefault((kind, plain(form)), set()).add(condition.id)
    assert {pair: sorted(ids) for pair, ids in said.items() if len(ids) > 1} == {}
