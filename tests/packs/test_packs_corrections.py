"""A user's folder: corrections of a law win and are listed; translations, frames and lives are checked."""

import pytest

from packs.small_pack import LAW, pack, small
from witnessmark.packs import changes, parse


def fixed(*tables: str, corrects: str = "us.xx") -> bytes:
    head = f'corrects = "{corrects}"\n'
    return pack("own.law", *tables).replace(b'pack = "own.law"\n', b'pack = "own.law"\n' + head.encode())


DUTY = LAW[LAW.index("[[duty]]") :]


def test_a_corrected_duty_stands_in_for_the_shipped_one_and_others_stay() -> None:
    mine = DUTY.replace("state the fuel of the range", "state the fuel")
    packs, problems = parse(
        small(),
        [{"own/law.toml": fixed(mine, '[[definition]]\nterm = "attic"\nwords = "w"\nsection = "9"\ntag = "seen"\n')}],
    )
    assert problems == []
    book = packs.rulebooks["us.xx"]
    assert [d.words for d in book.duties] == ["state the fuel"]
    assert {d.term for d in book.definitions} > {"attic"}
    (change, *rest) = changes(packs)
    assert (change.table, change.id, change.added) == ("duty", "XX-001", False)
    assert change.fields == (("words", "state the fuel of the range", "state the fuel"),)
    assert change.file == "own/law.toml"
    assert rest == []


def test_an_added_duty_comes_at_the_end_and_is_said_to_be_added() -> None:
    packs, problems = parse(small(), [{"own/law.toml": fixed(DUTY.replace("XX-001", "XX-900"))}])
    assert problems == []
    assert [d.id for d in packs.rulebooks["us.xx"].duties][-1] == "XX-900"
    assert [(c.id, c.added) for c in changes(packs)] == [("XX-900", True)]


@pytest.mark.parametrize(
    ("text", "overlay", "number"),
    [
        (fixed(DUTY, corrects="us.yy"), True, "WM413"),
        (fixed(DUTY), False, "WM421"),
        (fixed(LAW), True, "WM421"),
    ],
)
def test_a_correction_of_nothing_is_refused(text: bytes, overlay: bool, number: str) -> None:
    texts, over = (small(), [{"own.toml": text}]) if overlay else ({**small(), "own.toml": text}, [])
    assert number in {p.number for p in parse(texts, over)[1]}


FRAME = '[[frame]]\nid = "{id}"\nuse = "not-inspected"\nlanguage = "{language}"\ntext = "{text}"\n'


def test_frames_of_one_use_have_the_same_gaps() -> None:
    english = FRAME.format(id="en.x", language="en", text="{what} was not inspected: {reason}.")
    spanish = FRAME.format(id="es.x", language="es", text="No se inspeccionó {what}.")
    problems = parse({**small(), "w.toml": pack("w", english, spanish)})[1]
    assert {p.number for p in problems} == {"WM422"}
    assert "reason" in problems[0].detail


@pytest.mark.parametrize(
    ("table", "number"),
    [
        ('[[translation]]\nid = "es.x"\nlanguage = "es"\ntable = "kind"\nof = "rnge"\nname = "estufa"\n', "WM413"),
        ('[[translation]]\nid = "es.x"\nlanguage = "es"\ntable = "kind"\nof = "range"\n', "WM420"),
        ('[[translation]]\nid = "es.x"\nlanguage = "en"\ntable = "kind"\nof = "range"\nname = "x"\n', "WM406"),
        ('[[life]]\nid = "l"\nkinds = ["range"]\nname = "n"\nlow = "20"\nhigh = "10"\ndocument = "d"\nedition = "e"\nplace = "p"\n', "WM414"),
        ('[[life]]\nid = "l"\nkinds = ["range"]\nname = "n"\nlow = "ten"\nhigh = "10"\ndocument = "d"\nedition = "e"\nplace = "p"\n', None),
    ],
)  # fmt: skip
def test_new_tables_are_checked(table: str, number: str | None) -> None:
    problems = parse({**small(), "w.toml": pack("w", table)})[1]
    assert problems
    assert number is None or number in {p.number for p in problems}


FORM = '[form]\nwords = "the form"\nsection = "9"\ntag = "memory"\n'
ITEM = '[[form_item]]\ngroup = "I. Kitchen"\nnumber = "A"\nwords = "{words}"\nkinds = ["{kind}"]\ntag = "memory"\n'


def test_an_item_of_a_form_stands_in_for_the_one_with_its_number() -> None:
    law = {**small(), "law.toml": pack("law", LAW, FORM, ITEM.format(words="Ranges", kind="range"))}
    packs, problems = parse(law, [{"own.toml": fixed(ITEM.format(words="Stoves", kind="range"))}])
    assert problems == []
    assert [item.words for item in packs.rulebooks["us.xx"].form_items] == ["Stoves"]
    assert packs.rulebooks["us.xx"].form is not None


def test_an_item_names_kinds_that_there_are_and_belongs_to_a_form() -> None:
    wrong = pack("law", LAW, FORM, ITEM.format(words="Ranges", kind="rang"))
    assert "WM413" in {p.number for p in parse({**small(), "law.toml": wrong})[1]}
    formless = pack("law", LAW, ITEM.format(words="Ranges", kind="range"))
    (problem,) = parse({**small(), "law.toml": formless})[1]
    assert "[form] is missing" in str(problem)
    empty = pack("law", LAW, FORM, ITEM.format(words="Ranges", kind="range").replace('"range"', ""))
    (problem,) = parse({**small(), "law.toml": empty})[1]
    assert "name nothing" in str(problem)
