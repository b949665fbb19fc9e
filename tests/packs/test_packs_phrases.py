"""What a spoken phrase may mean, and which phrases mean two things."""

from packs.small_pack import small
from witnessmark.packs import Candidate, ambiguities, parse, plain, read, show, spoken_index


def test_every_sort_of_row_is_found_by_its_words() -> None:
    packs, _ = parse(small())
    index = spoken_index(packs)
    assert index["stove"] == (Candidate("kind", "range"),)
    assert index["ranges"] == (Candidate("kind", "range"),)
    assert Candidate("part", "bracket", "range") in index["anti tip bracket"]
    assert index["kitchenette"] == (Candidate("sort", "kitchen"),)
    assert index["gas"] == (Candidate("value", "natural gas", "fuel"),)
    assert index["fuel"] == (Candidate("attribute", "fuel"),)
    assert index["locked"] == (Candidate("reason", "locked"),)
    assert index["tips"] == (Candidate("condition", "range-tips"),)
    assert index["turn the oven on"] == (Candidate("procedure", "range-bake"),)
    assert index["oven temperature"] == (Candidate("measure", "oven-temperature"),)
    assert [c.id for c in index["oven"]] == ["range", "wall-oven"]


def test_phrases_are_held_plain() -> None:
    assert plain("  Anti-Tip   BRACKET. ") == "anti tip bracket"
    assert plain("owner's 20% / half") == "owner's 20% / half"
    assert all(phrase == plain(phrase) for phrase in spoken_index(read()))


def test_a_phrase_of_two_kinds_is_a_note_with_both() -> None:
    packs, problems = parse(small())
    assert problems == []
    (note,) = ambiguities(packs)
    assert note.number == "WM417"
    assert "'oven': range, wall-oven" in note.detail


def test_shipped_phrases_reach_every_kind() -> None:
    packs = read()
    reached = {c.id for found in spoken_index(packs).values() for c in found if c.sort == "kind"}
    assert reached == set(packs.kinds)
    assert show(packs, next(iter(packs.kinds)))["found"]
