"""Pack files are read whole or refused with a number, a place and the way out."""

from dataclasses import fields
from datetime import date
from hashlib import sha256
from pathlib import Path
from typing import Any

import pytest

from packs.small_pack import LAW, THINGS, WORDS, pack, small
from witnessmark.packs import check, parse, read, show
from witnessmark.packs.model import Packs
from witnessmark.problems import Problem, Refusal


def numbers(problems: list[Problem]) -> list[str]:
    return [p.number for p in problems]


def changed(old: str, new: str) -> list[Problem]:
    """The problems of the small pack with *old* replaced by *new* once, in whichever file it stands."""
    texts = {path: data.decode() for path, data in small().items()}
    path = next(p for p, text in texts.items() if old in text)
    texts[path] = texts[path].replace(old, new, 1)
    return parse({p: t.encode() for p, t in texts.items()})[1]


def test_a_good_pack_has_no_problem_and_every_table() -> None:
    packs, problems = parse(small())
    assert problems == []
    for field in fields(Packs):
        if field.name != "overrides":
            assert getattr(packs, field.name), field.name


def test_defaults_follow_from_the_name() -> None:
    packs, _ = parse(small())
    kind = packs.kinds["range"]
    assert kind.plural == "ranges"
    assert kind.spoken == ("range", "stove", "oven")
    assert packs.kinds["wall-oven"].parts[0].spoken == ("door",)
    assert packs.sorts["kitchen"].spoken == ("kitchen", "kitchenette")
    assert packs.attributes["fuel"].values[1].spoken == ("electricity",)


def test_provenance_is_the_rows_before_the_files() -> None:
    packs, _ = parse(small())
    assert packs.criteria["oven-at-350"].provenance.in_force == "2022-02-01"
    assert packs.criteria["oven-at-350"].provenance.file == "things.toml"
    assert packs.kinds["range"].provenance.in_force == "2026-01-01"


def test_files_carry_their_hash() -> None:
    packs, _ = parse({"words.toml": b'pack = "a"\nversion = "1"\n'})
    assert packs.files[0].hash == sha256(b'pack = "a"\nversion = "1"\n').hexdigest()


@pytest.mark.parametrize(
    ("old", "new", "number", "told"),
    [
        ('name = "bake"', 'nme = "bake"', "WM403", "did you mean name"),
        ('name = "bake"', 'name = "bake"\nWhat = 1', "WM403", "allowed: id, kind, name"),
        ("here = false", "hear = false", "WM403", "allowed: words, why, earliest"),
        ("expected = true }", "expectd = true }", "WM403", "expected"),
        ("optional = true }", "optinal = true }", "WM403", "optional"),
        ('how = "Set it to 350."\n', "", "WM404", "how is missing"),
        ('edition = "2022"\n', "", "WM404", "edition is missing"),
        ('version = "2026.11"\n', "", "WM404", "version"),
        ('pack = "words"\n', "", "WM404", "pack"),
        ('pack = "words"', "pack = 3", "WM405", "text in quotes"),
        ("habitable = true", 'habitable = "yes"', "WM405", "true or false"),
        ("at_most = 60", "at_most = 60.5", "WM405", "whole number"),
        ("at_most = 60", "at_most = true", "WM405", "whole number"),
        ('value = "325"', "value = 325", "WM405", "a number in quotes"),
        ('kinds = ["range"]\njur', 'kinds = "range"\njur', "WM405", "expected a list"),
        ('sorts = ["kitchen"]\n', "sorts = [1]\n", "WM405", "in quotes"),
        ("[[caution]]", "[caution]", "WM405", "[[caution]]"),
        ('system = "appliances"\nname = "range"', 'system = "kitchen"\nname = "range"', "WM406", "allowed: site"),
        ('leaves = "on"', 'leaves = "running"', "WM406", "as found"),
        ('direct = "repair"', 'direct = "fix"', "WM406", "further evaluation"),
        ('stake = "people"', 'stake = "high"', "WM406", "upkeep"),
        ('urgency = "before use"', 'urgency = "red"', "WM406", "watch"),
        ('op = "between"', 'op = "="', "WM406", "<="),
        ('force = "guide"', 'force = "maybe"', "WM406", "law"),
        ('verb = "describe"', 'verb = "look"', "WM406", "inspect"),
        ('modality = "shall"', 'modality = "must"', "WM406", "shall_not"),
        ('tag = "memory"', 'tag = "sure"', "WM406", "seen-copy"),
        ('id = "kitchen"', 'id = "the kitchen!"', "WM407", "the kitchen!"),
        ('id = "wall-oven"', 'id = "range"', "WM408", "things.toml"),
        ('id = "bracket", name', 'id = "bracket", name = "x" }, { id = "bracket", name', "WM408", "part bracket"),
        ('source = "common practice, no source"\n', "", "WM409", "source is missing"),
        ('tag = "common practice, no source"\n', "", "WM409", "tag is missing"),
        ('in_force = "2026-01-01"\n', "", "WM409", "in_force is missing"),
        ('in_force = "2022-02-01"', 'in_force = "2022-02-30"', "WM410", "2022-02-30"),
        ('in_force = "2022-02-01"', 'in_force = "20220201"', "WM410", "20220201"),
        ('effective_from = "2020-01-01"', 'effective_from = "2020"', "WM410", "2020"),
        ('value = "325"', 'value = "about 325"', "WM411", "about 325"),
        ('high = "900"', 'high = "NaN"', "WM411", "NaN"),
        ('unit = "[degF]"\nwords', 'unit = "degrees F"\nwords', "WM412", "degrees F"),
        ('units = ["Cel"]', 'units = ["Cel", "hot"]', "WM412", "hot"),
        ('kind = "range"', 'kind = "rnage"', "WM413", "did you mean range"),
        ('part = "bracket"\nname', 'part = "leg"\nname', "WM413", "no part 'leg' of range"),
        ('by = "electrician"', 'by = "magician"', "WM413", "no trade 'magician'"),
        ('cautions = ["hot"]\nparts', 'cautions = ["cold"]\nparts', "WM413", "no caution 'cold'"),
        ('describe = ["fuel"]', 'describe = ["feul"]', "WM413", "did you mean fuel"),
        ('condition = "range-tips"', 'condition = "range-tip"', "WM413", "range-tips"),
        ('reasons = ["locked"]\n[[definition]]', 'reasons = ["shut"]\n[[definition]]', "WM413", "reason 'shut'"),
        ('refer_to = "electrician"', 'refer_to = "an electrician"', "WM413", "trade"),
        ('attributes = ["fuel"]', 'attributes = ["make"]', "WM413", "subject 1"),
        ('high = "375"\n', "", "WM414", "between"),
        ('high = "375"', 'high = "300"', "WM414", "not below"),
        ("earliest = 10, latest = 40", "earliest = 40, latest = 10", "WM414", "look_again"),
        ("at_most = 60", "at_most = 0", "WM414", "at_most"),
        ("built_to = 1990", "built_from = 1995\nbuilt_to = 1990", "WM414", "1995"),
        ('in_force = "2022-02-01"', 'in_force = "2022-02-01"\nuntil = "2021-01-01"', "WM414", "until"),
        ('units = ["Cel"]', 'units = ["[psi]"]', "WM419", "pressure"),
        ('unit = "[degF]"\nwords', 'unit = "[in_i]"\nwords', "WM419", "length"),
        ('words = "It is hot."', 'words = " "', "WM420", "words"),
        ('[rulebook]\nid = "us.xx"', '[lawbook]\nid = "us.xx"', "WM403", "rulebook"),
    ],
)
def test_each_fault_is_told_with_its_number_and_place(old: str, new: str, number: str, told: str) -> None:
    problems = changed(old, new)
    assert number in numbers(problems), [str(p) for p in problems]
    text = "\n".join(str(p) for p in problems if p.number == number)
    assert told in text
    assert ".toml" in text


def test_dates_may_be_written_as_toml_dates() -> None:
    packs, problems = parse(small() | {"things.toml": pack("things", THINGS.replace('"2022-02-01"', "2022-02-01"))})
    assert problems == []
    assert packs.criteria["oven-at-350"].provenance.in_force == date(2022, 2, 1).isoformat()


@pytest.mark.parametrize(
    ("data", "number"),
    [
        (b"\xff\xfe", "WM401"),
        (b"pack = ", "WM402"),
        (b"x = " + b"[" * 5000 + b"]" * 5000, "WM402"),
        (b"x = " + b"9" * 5000, "WM402"),
        (b"[[kind]]\nid = 3\n", "WM405"),
        (b"kind = [3, 4]", "WM405"),
        (b"# " + b"x" * (4 * 1024 * 1024), "WM418"),
        (b'[rulebook]\nid = "x"', "WM409"),
        (b'[[duty]]\nid = "x"', "WM404"),
    ],
)
def test_unreadable_files_are_told(data: bytes, number: str) -> None:
    packs, problems = parse(small() | {"bad.toml": data})
    assert number in numbers(problems)
    assert "range" in packs.kinds, "the good files stay readable"


def test_two_files_with_one_pack_id_are_told() -> None:
    texts = small() | {"more.toml": pack("words")}
    assert "WM408" in numbers(parse(texts)[1])


def test_two_duties_with_one_id_are_told() -> None:
    twice = LAW + LAW[LAW.index("[[duty]]") :]
    assert "WM408" in numbers(parse(small() | {"law.toml": pack("law", twice)})[1])


OWN = """
[[trade]]
id = "electrician"
words = "our own electrician"
[[trade]]
id = "sweep"
words = "our chimney sweep"
"""


def test_an_overlay_wins_and_the_shipped_row_stays_in_sight() -> None:
    packs, problems = parse(small(), [{"own.toml": pack("own", OWN)}])
    assert problems == []
    assert packs.trades["electrician"].words == "our own electrician"
    assert packs.trades["sweep"].words == "our chimney sweep"
    (override,) = packs.overrides
    assert (override.id, override.sort) == ("electrician", "trade")
    assert (override.shipped.file, override.overlay.file) == ("words.toml", "own.toml")
    assert [f.overlay for f in packs.files if f.id == "own"] == [True]
    shown: Any = show(packs, "electrician")
    assert shown["found"][0]["stands_in_for"][0]["row"]["words"] == "a licensed electrician"


def test_a_later_overlay_wins_over_an_earlier() -> None:
    second = pack("second", '[[trade]]\nid = "electrician"\nwords = "theirs"\n')
    packs, problems = parse(small(), [{"own.toml": pack("own", OWN)}, {"second.toml": second}])
    assert problems == []
    assert packs.trades["electrician"].words == "theirs"
    assert [o.overlay.file for o in packs.overrides] == ["own.toml", "second.toml"]


def test_one_overlay_must_not_say_a_thing_twice() -> None:
    texts = {"a.toml": pack("a", OWN), "b.toml": pack("b", OWN)}
    assert "WM408" in numbers(parse(small(), [texts])[1])


def test_overlays_are_read_from_folders_and_files(tmp_path: Path) -> None:
    deep = tmp_path / "packs" / "deep"
    deep.mkdir(parents=True)
    (deep / "own.toml").write_bytes(pack("own", OWN.replace('"sweep"', '"our-sweep"')))
    for overlay in (tmp_path / "packs", deep / "own.toml"):
        packs = read([overlay])
        assert packs.trades["our-sweep"].provenance.file == str(deep / "own.toml")
    assert read().trades["electrician"].words == "a licensed electrician"


def test_a_missing_overlay_is_refused(tmp_path: Path) -> None:
    with pytest.raises(Refusal) as caught:
        read([tmp_path / "nowhere"])
    assert numbers(list(caught.value.problems)) == ["WM416"]
    assert numbers(check([tmp_path])) == ["WM416"]


def test_a_bad_overlay_is_refused_with_every_problem(tmp_path: Path) -> None:
    (tmp_path / "bad.toml").write_text('pack = "bad"\n[[kind]]\nid = "x y"\nspelt = 1\n')
    with pytest.raises(Refusal) as caught:
        read([tmp_path])
    assert {"WM403", "WM404", "WM407", "WM409"} <= set(numbers(list(caught.value.problems)))
    assert numbers(check([tmp_path])) == numbers(list(caught.value.problems))


def test_problems_name_no_more_than_the_file_said() -> None:
    long = "x" * 100_000
    problems = parse({"a.toml": pack("a", f'[[trade]]\nid = "{long}"\nwords = "x"\n"{long}" = 1\n')})[1]
    assert problems
    assert all(len(str(p)) < 2000 for p in problems)


def test_the_small_pack_is_its_own_words() -> None:
    assert WORDS
    assert pack("x").decode().startswith('pack = "x"')
