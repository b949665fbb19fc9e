"""A handful of pack rows for tests of judging: made up for the tests, except where a source is named."""

from __future__ import annotations

from dataclasses import replace

from witnessmark.packs.model import (
    Attribute,
    Caution,
    Condition,
    Criterion,
    Duty,
    Kind,
    LookAgain,
    Measure,
    Packs,
    Part,
    Procedure,
    Provenance,
    Reason,
    Rulebook,
    Sort,
    Subject,
    Trade,
)

__all__ = ["SOURCE", "duty", "job_packs", "small_packs"]

SOURCE = Provenance("made up for tests", "2000-01-01", "common practice, no source", "tests")


def _kind(id_: str, system: str, name: str, **more: object) -> Kind:
    return replace(Kind(id_, system, name, name + "s", (name,), SOURCE), **more)  # type: ignore[arg-type]  # test rows


_KINDS = (
    _kind("range", "appliances", "range", parts=(Part("oven", "oven"), Part("burner", "burner"))),
    _kind("sink", "plumbing", "sink", cautions=("hot-water",), water=True),
    _kind("dishwasher", "appliances", "dishwasher"),
    _kind("shower", "plumbing", "shower"),
    _kind("ceiling", "interior", "ceiling"),
    _kind("thermostat", "heating", "thermostat"),
    _kind("furnace", "heating", "furnace"),
    _kind("service-panel", "electrical", "service panel"),
    _kind("receptacle", "electrical", "receptacle"),
    _kind("water-heater", "plumbing", "water heater", parts=(Part("tp-valve", "relief valve"),)),
    _kind("stair", "interior", "stair"),
    _kind("handrail", "interior", "handrail"),
    _kind("deck", "exterior", "deck"),
    _kind("smoke-alarm", "alarms", "smoke alarm"),
    _kind("window", "interior", "window"),
    _kind("joist", "structure", "joist", sorts=("crawl-space",)),
)
_PROCEDURES = (
    Procedure("oven", "range", "run the oven", "by its knob", "on", SOURCE, part="oven", said=("run the oven",),
              put_back="turn the oven off", at_most=20, cautions=("hot",)),
    Procedure("fill-sink", "sink", "fill the sink", "by its stopper", "filled", SOURCE, said=("fill the sink",),
              put_back="drain it",
              look_again=LookAgain("look under the sink", "a drain leaks only while it runs", 5, 15)),
    Procedure("run-faucet", "sink", "run the faucet", "by its handle", "as found", SOURCE, said=("run the faucet",)),
    Procedure("run-shower", "shower", "run the shower", "by its handle", "on", SOURCE,
              look_again=LookAgain("look at the ceiling below", "a pan leaks slowly", 10, 40, ("ceiling",), here=False)),
    Procedure("set-back", "thermostat", "call for heat", "by its dial", "changed", SOURCE,
              put_back="set it back to the set-point found"),
)  # fmt: skip
_CONDITIONS = (
    Condition("rot", ("joist", "deck"), "rotted wood", ("rot",), "The wood is soft and decayed.",
              "Rotted wood carries less.", "It spreads and the member can fail.", "Have it repaired.", "carpenter",
              "repair", "building", "soon", SOURCE),
    Condition("no-handrail", ("stair",), "stair without handrail", (), "The stair has no handrail.",
              "People fall.", "A fall is likely.", "Have one installed.", "carpenter", "repair", "people",
              "before use", SOURCE, absence=True),
    Condition("scald", ("water-heater", "sink"), "water hot enough to scald", (), "The water is hotter than the limit.",
              "Hot water burns fast.", "Someone is scalded.", "Have it adjusted.", "plumber", "specialist", "people",
              "now", SOURCE),
)  # fmt: skip
_MEASURES = (
    Measure("water-temperature", "water temperature", "[degF]", ("Cel",), (), SOURCE),
    Measure("water-pressure", "water pressure", "[psi]", ("kPa", "bar"), (), SOURCE),
    Measure("handrail-height", "handrail height", "[in_i]", ("mm", "cm"), (), SOURCE),
    Measure("riser-height", "riser height", "[in_i]", ("mm",), (), SOURCE),
    Measure("baluster-gap", "baluster gap", "[in_i]", ("mm",), (), SOURCE),
    Measure("temperature-split", "temperature split", "[degF]{difference}", ("Cel{difference}",), (), SOURCE),
    Measure("roof-pitch", "roof pitch", "[in_i]/[ft_i]", ("deg", "%"), (), SOURCE),
)  # fmt: skip


def _limit(id_: str, measure: str, op: str, value: str, unit: str, *, words: str = "", **more: object) -> Criterion:
    row = Criterion(
        id_, measure, op, value, unit, words, "International Residential Code", "2018", "R311", "law", SOURCE
    )
    return replace(row, **more)  # type: ignore[arg-type]  # test rows


_CRITERIA = (
    # IRC 2018 R311.7.5.1, R311.7.8.1, R312.1.3; 22 TAC 535.231 (80 psi); UPC 2018 408.3 (120 °F): from the tests' source
    # sheet, numbers as printed there.
    _limit("riser", "riser-height", "<=", "7.75", "[in_i]", words="A riser is at most 7 3/4 in high.", built_from=2000,
           kinds=("stair",), stake="people"),
    _limit("handrail", "handrail-height", "between", "34", "[in_i]", words="A handrail is 34 to 38 in high.", high="38"),
    _limit("gap", "baluster-gap", "<", "4", "[in_i]", words="A 4 in sphere does not pass.", kinds=("stair", "deck")),
    _limit("pressure", "water-pressure", "<=", "80", "[psi]", words="Static pressure is at most 80 psi.",
           jurisdiction="us.tx"),
    _limit("pressure-guide", "water-pressure", ">=", "40", "[psi]", words="Below 40 psi fixtures run weakly.", force="guide"),
    _limit("tap", "water-temperature", "<=", "120", "[degF]", words="Water at a tap is at most 120 °F.", condition="scald"),
    _limit("old-tap", "water-temperature", "<=", "140", "[degF]", words="An older limit.",
           provenance=replace(SOURCE, until="2010-01-01")),
    _limit("split", "temperature-split", "between", "14", "[degF]{difference}", words="A working split.", high="22",
           force="guide"),
    _limit("pitch", "roof-pitch", ">=", "2", "[in_i]/[ft_i]", words="Shingles need 2 in 12."),
)  # fmt: skip
_SORTS = (
    Sort("kitchen", "kitchen", (), SOURCE, habitable=True, water=True),
    Sort("bedroom", "bedroom", (), SOURCE, habitable=True),
    Sort("hall", "hall", (), SOURCE),
    Sort("attic", "attic", (), SOURCE),
    Sort("crawl-space", "crawl space", ("crawlspace",), SOURCE),
    Sort("roof", "roof", (), SOURCE, outside=True),
    Sort("outside-face", "outside face", (), SOURCE, outside=True),
)


def small_packs() -> Packs:
    """The rows above, without a rulebook."""
    return Packs(
        kinds={row.id: row for row in _KINDS},
        procedures={row.id: row for row in _PROCEDURES},
        conditions={row.id: row for row in _CONDITIONS},
        measures={row.id: row for row in _MEASURES},
        criteria={row.id: row for row in _CRITERIA},
        sorts={row.id: row for row in _SORTS},
        reasons={
            row.id: row
            for row in (
                Reason("no-access", "no access was provided", (), SOURCE),
                Reason("unsafe", "it was not safe to do so", (), SOURCE),
                Reason("other", "another reason, told in words", (), SOURCE),
            )
        },
        cautions={"hot": Caution("hot", "Hot.", SOURCE), "hot-water": Caution("hot-water", "Hot water.", SOURCE)},
        trades={"plumber": Trade("plumber", "a licensed plumber", SOURCE)},
        attributes={"material": Attribute("material", "material", (), (), SOURCE)},
    )


def duty(id_: str, verb: str, *subjects: Subject, **more: object) -> Duty:
    """A tracked duty of the tests' law."""
    row = Duty(id_, f"§{id_}", "general", verb, "shall", f"duty {id_}", SOURCE, subjects, tracked=True)
    return replace(row, **more)  # type: ignore[arg-type]  # test rows


def job_packs(*duties: Duty, reasons: tuple[str, ...] = ()) -> Packs:
    """The rows above with one rulebook, ``us.test``, of these duties."""
    book = Rulebook("us.test", "Test law", "us.tx", "§§", "2000-01-01", "", duties, SOURCE, reasons=reasons)
    return replace(small_packs(), rulebooks={book.id: book})
