"""Any row can be shown with its source, its file and what refers to it."""

import json
from typing import Any

import pytest

from packs.small_pack import small
from witnessmark.packs import parse, read, show
from witnessmark.problems import Refusal


def found(row_id: str) -> list[dict[str, Any]]:
    rows = show(parse(small())[0], row_id)["found"]
    assert isinstance(rows, list)
    return rows


def test_a_row_is_shown_with_what_refers_to_it() -> None:
    (row,) = found("range")
    assert row["table"] == "kind"
    assert row["row"]["provenance"]["source"] == "common practice, no source"
    assert row["file"]["id"] == "things"
    assert len(row["file"]["hash"]) == 64
    assert row["referred_to_by"] == [
        "procedure range-bake", "condition range-tips", "criterion oven-at-350", "era old-range", "life range.a-table",
        "duty XX-001 of us.xx",
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("row_id", "by"),
    [
        ("hot", "kind range"),
        ("electrician", "condition range-tips"),
        ("electrician", "duty XX-001"),
        ("oven-temperature", "criterion oven-at-350"),
        ("fuel", "duty XX-001 of us.xx"),
        ("locked", "rulebook us.xx"),
        ("kitchen", "kind range"),
        ("range-tips", "criterion oven-at-350"),
    ],
)
def test_references_of_every_sort(row_id: str, by: str) -> None:
    assert by in found(row_id)[0]["referred_to_by"]


def test_a_duty_a_rulebook_and_a_pack_are_shown() -> None:
    assert found("XX-001")[0]["table"] == "duty"
    assert found("us.xx")[0]["row"]["duties"][0]["id"] == "XX-001"
    packs, _ = parse(small())
    assert show(packs, "words")["pack"]


def test_an_unknown_id_is_told_with_the_nearest() -> None:
    with pytest.raises(Refusal) as caught:
        found("rage")
    (problem,) = caught.value.problems
    assert problem.number == "WM415"
    assert "did you mean range" in problem.detail


def test_every_shipped_row_can_be_shown_as_json() -> None:
    packs = read()
    for table in (packs.kinds, packs.conditions, packs.criteria, packs.eras, packs.rulebooks, packs.sorts):
        for row_id in table:
            assert json.dumps(show(packs, row_id))
