"""Golden reports: what a reader reads, as text, with dates and hashes scrubbed; a difference is shown side by side."""

from __future__ import annotations

import difflib
import os
import re
from html.parser import HTMLParser
from pathlib import Path

__all__ = ["hold_against", "read_text"]

GOLDEN = Path(__file__).with_name("golden")
_BREAKS = frozenset(
    {
        "p",
        "li",
        "h1",
        "h2",
        "h3",
        "h4",
        "tr",
        "dt",
        "dd",
        "figcaption",
        "div",
        "section",
        "article",
        "option",
        "legend",
        "br",
    }
)
_SCRUBBED = (
    (re.compile(r"\b[0-9a-f]{64}\b"), "<hash>"),
    (re.compile(r"\b[0-9a-f]{16}\b"), "<short hash>"),
    (re.compile(r"\b[0-9a-f]{128}\b"), "<signature>"),
    (re.compile(r"\b(?:Mon|Tues|Wednes|Thurs|Fri|Satur|Sun)day, [A-Z][a-z]+ \d{1,2}, \d{4}"), "<day>"),
    (re.compile(r"\b(?:lunes|martes|miércoles|jueves|viernes|sábado|domingo), \d{1,2} de [a-z]+ de \d{4}"), "<day>"),
    (re.compile(r"\b\d{1,2}:\d{2}(?::\d{2})? [ap]m\b"), "<time>"),
    (re.compile(r"\b20\d\d\.\d\d(?:\.\d+)?\b"), "<version>"),
)  # fmt: skip


class _Reader(HTMLParser):
    """The words of a page, one block a line; pictures by their alternative text; links and fields by theirs."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.lines: list[str] = [""]
        self.skip = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.skip += tag in {"style", "script"}
        if tag in _BREAKS:
            self.lines.append(f"{tag}: " if tag.startswith("h") and tag[1:].isdigit() else "")
        said = dict(attrs)
        if tag == "img":
            self.lines.append(f"[picture: {said.get('alt')}]")
        if said.get("role") == "img":
            self.lines.append(f"[drawing: {said.get('aria-label')}]")

    def handle_endtag(self, tag: str) -> None:
        self.skip -= tag in {"style", "script"}
        if tag in _BREAKS:
            self.lines.append("")

    def handle_data(self, data: str) -> None:
        if not self.skip:
            self.lines[-1] += data


def read_text(page: str) -> str:
    """The text of a page as a reader meets it, scrubbed of dates, times and hashes."""
    reader = _Reader()
    reader.feed(page)
    text = "\n".join(line for line in (" ".join(row.split()) for row in reader.lines) if line) + "\n"
    for pattern, name in _SCRUBBED:
        text = pattern.sub(name, text)
    return text


def hold_against(name: str, page: str, folder: Path) -> None:
    """Fail with a side-by-side page in *folder* when the text differs from the golden one of this name.

    ``GOLDEN=write`` in the environment writes the golden text anew: look at the difference before keeping it.
    """
    path, text = GOLDEN / f"{name}.txt", read_text(page)
    if os.environ.get("GOLDEN") == "write":
        path.write_text(text, encoding="utf-8")
    kept = path.read_text(encoding="utf-8") if path.exists() else ""
    if text == kept:
        return
    beside = folder / f"{name}-beside.html"
    diff = difflib.HtmlDiff(wrapcolumn=80)
    beside.write_text(
        diff.make_file(kept.splitlines(), text.splitlines(), "as it was", "as it is", context=True, numlines=3),
        encoding="utf-8",
    )
    raise AssertionError(f"{name} reads otherwise than before; side by side in {beside}")
