"""Places and components, declared or only named; readings, media, doubts, adverse facts."""

from decimal import Decimal

from record_builder import Visit
from witnessmark.journal.acts import (
    Absent,
    Count,
    Doubted,
    Dropped,
    Found,
    Identified,
    Listed,
    Placed,
    Ran,
    Read,
    Saw,
    Settled,
    Skipped,
    Took,
)
from witnessmark.journal.entry import Source
from witnessmark.views import adverse, doubts, house, media, readings


def test_what_is_only_named_appears_and_is_marked() -> None:
    visit = Visit()
    visit.add(Placed("Kitchen", "kitchen", storey="1"), place="k")
    visit.add(Listed("range", "Gas range", 1), place="k", component="r")
    saw = visit.add(Saw("anti-tip bracket missing"), component="r")
    visit.add(Ran(kind="furnace", left="on"), place="cellar", component="f")
    loose = visit.add(Saw("smell of gas"))
    home = house(visit.record())
    assert (home.places["k"].name, home.places["k"].declared) == ("Kitchen", True)
    assert (home.places["cellar"].name, home.places["cellar"].declared) == ("cellar", False)
    assert home.components["r"].label == "Gas range"
    assert [fact.id for fact in home.places["k"].facts][-1] == saw
    assert (home.components["f"].kind, home.components["f"].place, home.components["f"].declared) == (
        "furnace", "cellar", False,
    )  # fmt: skip
    assert [fact.id for fact in home.loose] == [loose]


def test_the_last_listing_holds() -> None:
    visit = Visit()
    visit.add(Listed("range", "Range"), place="k", component="r")
    visit.add(Listed("cooktop", "Cooktop"), place="k2", component="r")
    component = house(visit.record()).components["r"]
    assert (component.kind, component.label, component.place) == ("cooktop", "Cooktop", "k2")


def test_readings_are_numbers_or_say_that_they_are_not() -> None:
    visit = Visit()
    visit.add(Read("water-temperature", "118", "[degF]"), component="tap")
    visit.add(Read("water-temperature", "122", "[degF]", high="118"))
    visit.add(Read("water-temperature", "hot", "[degF]"))
    visit.add(Read("water-temperature", "1e400000", "[degF]"))
    first, ranged, words, huge = readings(visit.record())
    assert first.low is not None
    assert first.low.value == Decimal(118)
    assert ranged.low is not None
    assert ranged.high is not None
    assert (ranged.low.value, ranged.high.value) == (Decimal(118), Decimal(122))
    assert words.low is None
    assert huge.low is None


def test_media_and_who_speaks_of_them() -> None:
    visit = Visit()
    saw = visit.add(Saw("stain"), media=("a" * 64,))
    visit.add(Took(name="one.jpg"), media=("a" * 64,))
    visit.add(Took(name="two.jpg", speaks_of=(saw, "nobody")), media=("b" * 64,))
    three = visit.add(Took(name="three.jpg"), media=("c" * 64,))
    found = visit.add(Found("Leak", rests_on=(three,)))
    visit.add(Took(name="four.jpg", speaks_of=("nobody",)), media=("d" * 64,))
    heard = visit.add(Saw("cracked"), source=Source("speech", file="walk.m4a"))
    visit.add(Took("voice", "walk.m4a"), media=("e" * 64,))
    visit.add(Saw("x"), media=("f" * 64,))
    by_name = {m.body.name if m.body else m.sha256[0]: m.spoken_of_by for m in media(visit.record())}
    assert by_name == {
        "one.jpg": (saw,), "two.jpg": (saw,), "three.jpg": (found,), "four.jpg": (), "walk.m4a": (heard,),
        "f": ("e009",),
    }  # fmt: skip


def test_doubts_and_what_makes_them_sure() -> None:
    visit = Visit()
    by_saw = visit.add(Doubted("live?", part="lug"), component="panel")
    by_skip = visit.add(Saw("wet?", sure=False), component="wall")
    by_attribute = visit.add(Doubted("copper?", attribute="material"), component="pipe")
    by_decision = visit.add(Doubted("old?"), component="roof")
    about = visit.add(Saw("double tapped", kind="service-panel"), place="garage")
    of_entry = visit.add(Doubted("is it?", of=about))
    still = visit.add(Doubted("asbestos?"), component="tile")
    bare = visit.add(Doubted("loose?", kind="window"), place="bed")
    saw = visit.add(Saw("dead", part="lug"), component="panel")
    visit.add(Saw("other part", part="label"), component="tile")
    visit.add(Saw("maybe", sure=False), component="tile")
    skip = visit.add(Skipped(reason="concealed"), component="wall")
    identified = visit.add(Identified("material", "copper"), component="pipe")
    settled = visit.add(Settled(of=(by_decision, about), how="asked the owner"))
    seen = visit.add(Saw("tight", kind="window"), place="bed")
    closed = {d.fact.id: d.closed_by.id if d.closed_by else None for d in doubts(visit.record())}
    assert closed == {
        by_saw: saw, by_skip: skip, by_attribute: identified, by_decision: settled, of_entry: settled, still: None,
        bare: seen, "e011": None,
    }  # fmt: skip


def test_a_doubt_about_an_entry_stands_where_the_entry_does() -> None:
    visit = Visit()
    about = visit.add(Saw("double tapped", "adverse", part="breaker"), component="panel")
    visit.add(Doubted("is it?", of=about))
    sure = visit.add(Saw("one wire after all", "sound", part="breaker"), component="panel")
    (doubt,) = doubts(visit.record())
    assert doubt.closed_by is not None
    assert doubt.closed_by.id == sure


def test_a_reading_or_another_attribute_does_not_make_sure() -> None:
    visit = Visit()
    visit.add(Doubted("copper?", attribute="material"), component="pipe")
    visit.add(Identified("size", "3/4 in"), component="pipe")
    (doubt,) = doubts(visit.record())
    assert doubt.closed_by is None


def test_what_is_adverse_and_what_deals_with_it() -> None:
    visit = Visit()
    plain = visit.add(Saw("rot", "adverse"), component="sill", media=("a" * 64,))
    visit.add(Saw("fine", "sound", condition="rot"), component="sill")
    visit.add(Saw("perhaps", "unclear", condition="rot"), component="sill")
    named = visit.add(Saw("rot", condition="rot"), component="post")
    counted = visit.add(Saw("ungrounded", count=Count(12, 40, 3)), component="receptacles")
    gone = visit.add(Absent("handrail", adverse=True))
    visit.add(Absent("sump", adverse=None))
    carried = visit.add(Took(damage=True), media=("a" * 64,))
    photo = visit.add(Took(damage=True, shows="split rafter"), media=("b" * 64,))
    found = visit.add(Found("Rot", rests_on=(plain, named)))
    reason = visit.add(Settled(of=(counted,), how="new work already ordered"))
    visit.add(Settled(of=(gone,), how=" "))
    rows = {row.fact.id: row for row in adverse(visit.record())}
    assert list(rows) == [plain, named, counted, gone, carried, photo]
    assert rows[plain].evidence == (carried,)
    assert rows[carried].carried_by == plain
    deals = {name: row.dealt_with_by.id if row.dealt_with_by else None for name, row in rows.items()}
    assert deals == {plain: found, named: found, counted: reason, gone: None, carried: None, photo: None}


def test_a_dropped_entry_counts_no_more() -> None:
    visit = Visit()
    wrong = visit.add(Saw("rot", "adverse"), component="sill")
    visit.add(Dropped(of=wrong, why="other house"))
    assert adverse(visit.record()) == ()
    assert house(visit.record()).components == {}
