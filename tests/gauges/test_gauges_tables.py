"""Every published value in tests/tables comes out of the gauges as printed, within its tolerance."""

import collections

import pytest

from gauge_tables import BASES, Row, check, rows

ROWS = rows()


@pytest.mark.parametrize("row", ROWS, ids=[f"{row.file.removesuffix('.json')}-{row.id}" for row in ROWS])
def test_published_value(row: Row) -> None:
    check(row)


def test_every_row_says_where_it_comes_from_and_no_row_stands_twice() -> None:
    assert all(row.source.get("document") and row.body.get("basis") in BASES for row in ROWS)
    assert [row for row, count in collections.Counter(r.id for r in ROWS).items() if count > 1] == []


def test_a_wrong_row_is_caught() -> None:
    body = {"id": "x", "gauge": "wood-emc", "given": {"temperature": "70F", "humidity": "50%"}, "basis": "calculated"}
    with pytest.raises(AssertionError):
        check(Row("x", "x", {}, {**body, "expect": {"value": "9.4"}, "tolerance": "0.06"}))
    with pytest.raises(AssertionError):
        check(Row("x", "x", {}, {**body, "disagrees": {"value": "9.24"}, "tolerance": "0.01"}))
    with pytest.raises(AssertionError):
        check(Row("x", "x", {}, {**body, "refused": "WM006"}))
