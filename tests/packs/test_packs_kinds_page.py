"""The table of kinds: every count is right, and no kind of the shipped packs is empty."""

from witnessmark import packs
from witnessmark.packs.kinds_page import counts_by_kind, kinds_page


def test_every_count_is_of_rows_that_name_the_kind() -> None:
    read = packs.read()
    counts = counts_by_kind(read)
    assert set(counts) == set(read.kinds)
    heater = counts["water-heater"]
    assert heater["conditions"] == sum("water-heater" in row.kinds for row in read.conditions.values())
    assert heater["procedures"] == sum(row.kind == "water-heater" for row in read.procedures.values())
    assert f"| {read.kinds['water-heater'].name} |" in kinds_page(read)


def test_no_kind_is_empty() -> None:
    assert [kind for kind, row in counts_by_kind(packs.read()).items() if not row.get("conditions")] == []
