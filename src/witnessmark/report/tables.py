"""Tables for programs that calculate: every reading, and every finding as a repair list (CSV, RFC 4180).

Files begin with a byte order mark, so that spreadsheet programs read them as UTF-8. A cell that begins like a formula
gets an apostrophe before it: what somebody typed as a note must not be run where the table is opened.
"""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Sequence
from pathlib import Path

from witnessmark.report.data import replace_file
from witnessmark.report.letter import Letter

__all__ = ["READINGS", "REPAIRS", "readings_table", "repairs_table", "write_tables"]

READINGS = "readings.csv"
REPAIRS = "repair-list.csv"
_FORMULA = ("=", "+", "-", "@", "\t", "\r")
_MARK = "\ufeff"


def _cell(text: str) -> str:
    number = text.removeprefix("-").replace(".", "", 1).isdigit()
    return f"'{text}" if text.startswith(_FORMULA) and not number else text


def _table(heads: Sequence[str], rows: Iterable[Sequence[str]]) -> bytes:
    out = io.StringIO(newline="")
    writer = csv.writer(out)
    writer.writerow(heads)
    writer.writerows([_cell(cell) for cell in row] for row in rows)
    return (_MARK + out.getvalue()).encode("utf-8")


def readings_table(letter: Letter) -> bytes:
    """Every reading: when, where, of what, how much, with what, and what it was held against."""
    heads = ("Time", "Place", "Component", "Spot", "Measure", "Value", "Instrument", "Held against", "Entry")
    times = {row.entry: row.at for row in letter.evidence}
    return _table(
        heads,
        (
            (times.get(r.entry, ""), r.place, r.subject, r.spot, r.measure, r.value, r.instrument, " ".join(r.limits), r.entry)
            for r in letter.readings
        ),
    )  # fmt: skip


def repairs_table(letter: Letter) -> bytes:
    """Every finding: what it is, where, what is at stake, how soon, what to do and by whom."""
    heads = (
        "Finding",
        "Title",
        "Place",
        "Component",
        "At stake",
        "How soon",
        "What was seen",
        "What to do",
        "By whom",
        "Entry",
    )
    return _table(
        heads,
        (
            (str(f.number), f.title, f.place, f.component, f.stake, f.urgency, f.seen, f.do, f.by, f.entry)
            for f in letter.findings
        ),
    )


def write_tables(letter: Letter, folder: Path) -> None:
    """Write both tables. Refused (WM809) when the place does not take them."""
    replace_file(folder / READINGS, readings_table(letter))
    replace_file(folder / REPAIRS, repairs_table(letter))
