"""Lives stand twice, as rows of the packs and as the table of a gauge that is usable alone: both say the same."""

from decimal import Decimal

from witnessmark.gauges.age.lives_table import LIVES, PUBLISHED
from witnessmark.packs.model import Packs

#: Components of the gauge that are no kind of the packs.
NO_KIND = {"freezer", "dehumidifier"}


def test_every_life_of_the_gauge_is_a_row_of_the_packs_and_the_other_way_round(packs: Packs) -> None:
    rows = {(row.name, row.document, row.climate, Decimal(row.low), Decimal(row.high)) for row in packs.lives.values()}
    table = {
        (name, PUBLISHED[one.source].document, one.climate, Decimal(str(one.low)), Decimal(str(one.high or one.low)))
        for name, lives in LIVES.items()
        if name not in NO_KIND
        for one in lives
    }
    assert rows == table
