"""Where the rows of a file come from: source, tag and dates, each row's own before the file's."""

from __future__ import annotations

import re
from collections.abc import Mapping
from datetime import date, datetime

from witnessmark.packs import messages
from witnessmark.packs.faults import Report
from witnessmark.packs.model import TAGS, Provenance

__all__ = ["PROVENANCE_KEYS", "Origin", "is_date"]

PROVENANCE_KEYS = ("source", "tag", "in_force", "until")
_DATE = re.compile(r"\d{4}-\d{2}-\d{2}", re.ASCII)


def is_date(value: str) -> bool:
    """Whether *value* is a calendar date, ISO 8601."""
    if _DATE.fullmatch(value) is None:
        return False
    try:
        date.fromisoformat(value)
    except ValueError:
        return False
    return True


class Origin:
    """Gives each row of one file its provenance; rows that say nothing of their own share the file's."""

    def __init__(self, file: str, top: Mapping[str, object], report: Report) -> None:
        self._file = file
        self._defaults = {key: top[key] for key in PROVENANCE_KEYS if key in top}
        self._shared: Provenance | None = None
        self._report = report

    def of(self, table: Mapping[str, object], where: str) -> Provenance | None:
        """The provenance of a row; None, and a problem, when any of it is missing or wrong."""
        if not any(key in table for key in PROVENANCE_KEYS):
            if self._shared is None:
                self._shared = self._read(table, where)
            return self._shared
        return self._read(table, where)

    def _texts(self, table: Mapping[str, object], where: str) -> dict[str, str] | None:
        values: dict[str, str] = {}
        for key in PROVENANCE_KEYS:
            value = table.get(key, self._defaults.get(key))
            if isinstance(value, date) and not isinstance(value, datetime):
                value = value.isoformat()
            if value is None and key == "until":
                continue
            if value is None:
                self._report(messages.NO_PROVENANCE, where, f"{key} is missing")
                return None
            if not isinstance(value, str) or not value.strip():
                self._report(messages.NO_PROVENANCE, f"{where}, key {key!r}", f"{value!r:.80} is no text")
                return None
            values[key] = value
        return values

    def _read(self, table: Mapping[str, object], where: str) -> Provenance | None:
        values = self._texts(table, where)
        if values is None:
            return None
        if values["tag"] not in TAGS:
            allowed = ", ".join(TAGS)
            self._report(messages.NOT_ALLOWED, f"{where}, key 'tag'", f"{values['tag']!r:.80}; allowed: {allowed}")
            return None
        until = values.get("until")
        for key in ("in_force", "until"):
            if key in values and not is_date(values[key]):
                self._report(messages.BAD_DATE, f"{where}, key {key!r}", f"{values[key]!r:.80}")
                return None
        if until is not None and until <= values["in_force"]:
            self._report(messages.CONTRADICTS, where, f"until {until} is not after in_force {values['in_force']}")
            return None
        return Provenance(values["source"], values["in_force"], values["tag"], self._file, until)
