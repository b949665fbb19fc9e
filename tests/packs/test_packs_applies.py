"""What applies on a date, at a place, to a kind and a year built."""

import pytest

from packs.small_pack import LAW, THINGS, pack, small
from witnessmark.packs import (
    conditions_of,
    criteria_for,
    eras_of,
    in_force,
    is_must,
    parse,
    procedures_of,
    rulebook_for,
)  # fmt: skip
from witnessmark.packs.model import Packs

LIMITS = """
[[measure]]
id = "gap"
name = "gap"
unit = "[in_i]"
units = []
"""


def limit(row_id: str, more: str) -> str:
    return f"""
[[criterion]]
id = "{row_id}"
measure = "gap"
op = "<"
value = "4"
unit = "[in_i]"
words = "less than 4 in"
document = "a code"
edition = "2018"
section = "1"
{more}
"""


@pytest.fixture(name="packs", scope="module")
def _packs() -> Packs:
    texts = small() | {
        "limits.toml": pack(
            "limits",
            LIMITS,
            limit("everywhere", 'force = "law"\nin_force = "2000-01-01"\nbuilt_from = 2000'),
            limit("old", 'force = "law"\nin_force = "1980-01-01"\nuntil = "2000-01-01"'),
            limit("in-wa", 'force = "guide"\nin_force = "2009-04-20"\njurisdiction = "us.wa"'),
            limit("of-a-range", 'force = "law"\nin_force = "2000-01-01"\nkinds = ["range"]\npart = "bracket"'),
        )
    }
    packs, problems = parse(texts)
    assert problems == []
    return packs


def ids(rows: tuple[object, ...]) -> list[str]:
    return [row.id for row in rows]  # type: ignore[attr-defined]  # every row has an id


def test_limits_hold_by_date(packs: Packs) -> None:
    assert ids(criteria_for(packs, "gap", on_date="1999-12-31")) == ["old"]
    assert ids(criteria_for(packs, "gap", on_date="2000-01-01")) == ["everywhere"]
    assert ids(criteria_for(packs, "gap", on_date="1979-12-31")) == []


def test_limits_hold_by_place(packs: Packs) -> None:
    here = criteria_for(packs, "gap", on_date="2026-10-14", jurisdiction="us.wa", built_year=2007)
    assert ids(here) == ["everywhere", "in-wa"]
    assert "in-wa" in ids(criteria_for(packs, "gap", on_date="2026-10-14", jurisdiction="us.wa.king"))
    assert "in-wa" not in ids(criteria_for(packs, "gap", on_date="2026-10-14", jurisdiction="us.wax"))


def test_limits_hold_by_kind_and_part(packs: Packs) -> None:
    def found(kind: str | None, part: str | None) -> list[str]:
        return ids(criteria_for(packs, "gap", kind, part, "2026-10-14"))

    assert "of-a-range" in found("range", "bracket")
    assert "of-a-range" not in found("range", None)
    assert "of-a-range" not in found("wall-oven", "bracket")


def test_a_must_comes_first_and_depends_on_the_year_built(packs: Packs) -> None:
    everywhere = packs.criteria["everywhere"]
    assert [is_must(everywhere, year) for year in (1968, 1999, 2000, None)] == [False, False, True, False]
    assert is_must(packs.criteria["old"], None)
    assert not is_must(packs.criteria["in-wa"], 2020)
    old_house = criteria_for(packs, "gap", on_date="2026-10-14", jurisdiction="us.wa", built_year=1968)
    assert ids(old_house) == ["in-wa", "everywhere"]


def test_in_force_takes_an_instant_as_well_as_a_date(packs: Packs) -> None:
    rows = packs.criteria.values()
    assert in_force(rows, "1999-12-31T23:59:59-08:00") == in_force(rows, "1999-12-31")


def test_procedures_and_conditions_of_a_kind(packs: Packs) -> None:
    assert ids(procedures_of(packs, "range")) == ["range-bake"]
    assert ids(procedures_of(packs, "range", "bracket")) == ["range-bake"]
    assert ids(procedures_of(packs, "wall-oven")) == []
    assert ids(conditions_of(packs, "range")) == ["range-tips"]
    assert ids(conditions_of(packs, "range", "bracket")) == ["range-tips"]
    assert ids(conditions_of(packs, "range", "door")) == []


def test_eras_by_year(packs: Packs) -> None:
    assert ids(eras_of(packs, 1990)) == ["old-range"]
    assert ids(eras_of(packs, 1991)) == []
    assert ids(eras_of(packs, None)) == []


def test_a_part_is_asked_about_with_its_own_date() -> None:
    packs, _ = parse(small())
    assert ids(eras_of(packs, 1990, "range")) == ["old-range"]
    assert ids(eras_of(packs, 2010, "range")) == []
    assert ids(eras_of(packs, 1990, "wall-oven")) == []


def test_a_rulebook_gives_way_to_its_successor() -> None:
    later = LAW.replace('id = "us.xx"', 'id = "us.xx@2027-01-01"').replace('from = "2020', 'from = "2027')
    first = LAW.replace("verified =", 'effective_to = "2027-01-01"\nverified =')
    packs, problems = parse(small() | {"law.toml": pack("law", first), "later.toml": pack("later", later)})
    assert problems == []

    def book(day: str) -> str | None:
        found = rulebook_for(packs, "us.xx", day)
        return None if found is None else found.id

    assert [book(d) for d in ("2019-12-31", "2026-12-31", "2027-01-01")] == [None, "us.xx", "us.xx@2027-01-01"]
    assert rulebook_for(packs, "us.yy", "2026-01-01") is None


def test_duties_hold_by_date() -> None:
    ended = LAW.replace("tracked = true", 'tracked = true\nin_force = "2020-01-01"\nuntil = "2025-01-01"')
    packs, problems = parse(small() | {"law.toml": pack("law", ended), "things.toml": pack("things", THINGS)})
    assert problems == []
    before, after = (rulebook_for(packs, "us.xx", day) for day in ("2024-12-31", "2025-01-01"))
    assert before is not None
    assert after is not None
    assert (len(before.duties), len(after.duties)) == (1, 0)
