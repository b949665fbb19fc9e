"""Timed lines from caption files (WebVTT, SRT) and from marked-up text (JSON lines, plain ``[m:ss] words``).

WebVTT: Timed Text Tracks, W3C Candidate Recommendation 4 April 2019, section 4 (syntax). SRT has no standard; the
usual form (counter, ``hh:mm:ss,mmm --> hh:mm:ss,mmm``, text, blank line) is what is read.
"""

from __future__ import annotations

import html
import json
import math
import re
from dataclasses import dataclass

from witnessmark.listening.messages import BAD_LINE
from witnessmark.problems import Problem

__all__ = ["RawLine", "cues", "is_cues", "is_json_lines", "json_lines", "plain_lines"]

_CLOCK = r"(?:(\d+):)?(\d{1,3}):(\d{1,2})(?:[.,](\d{1,3}))?"
_ARROW = re.compile(rf"^\s*{_CLOCK}\s*-->\s*{_CLOCK}(?:\s.*)?$")
_PLAIN = re.compile(rf"^\s*(?:\[\s*{_CLOCK}\s*\]|\(\s*{_CLOCK}\s*\)|{_CLOCK}(?=\s))\s*[-–—:]?\s*(.*)$")
_TAG = re.compile(r"<[^<>]{0,200}>")
_SECONDS_IN = (3600.0, 60.0, 1.0)
#: Nothing is narrated for longer than this; larger times are slips of the file.
_LONGEST = 14 * 24 * 3600.0


@dataclass(frozen=True, slots=True)
class RawLine:
    """A line as the file gives it: times in seconds (end None when not given), words, number of its file line."""

    start: float
    end: float | None
    text: str
    at: int


def _seconds(hours: str | None, minutes: str, seconds: str, fraction: str | None) -> float:
    whole = sum(f * int(v or 0) for f, v in zip(_SECONDS_IN, (hours, minutes, seconds), strict=True))
    return round(whole + (int(fraction) / 10 ** len(fraction) if fraction else 0.0), 3)


def _clean(text: str) -> str:
    return " ".join(html.unescape(_TAG.sub(" ", text)).split())


def is_cues(text: str) -> bool:
    """Whether the text holds caption cues: any line with ``-->`` between two times, or the WebVTT signature."""
    return text.startswith("WEBVTT") or any("-->" in line and _ARROW.match(line) for line in text.splitlines())


def cues(text: str, name: str) -> tuple[list[RawLine], list[Problem]]:
    """The cues of a WebVTT or SRT file. Notes, styles, regions and cue identifiers are passed over."""
    lines: list[RawLine] = []
    problems: list[Problem] = []
    current: tuple[float, float, int] | None = None
    words: list[str] = []

    def close() -> None:
        if current is not None and (said := _clean(" ".join(words))):
            lines.append(RawLine(current[0], current[1], said, current[2]))
        words.clear()

    for number, line in enumerate(text.splitlines(), 1):
        if "-->" in line:
            found = _ARROW.match(line)
            if words and words[-1].strip().isdecimal() and current is not None:
                words.pop()  # the counter of an SRT cue whose blank line is missing
            close()
            current = None
            if found:
                g = found.groups()
                current = (_seconds(g[0], g[1], g[2], g[3]), _seconds(g[4], g[5], g[6], g[7]), number)
            else:
                problems.append(BAD_LINE.at(f"{name}, line {number}", "the times of this cue"))
        elif not line.strip():
            close()
            current = None
        elif current is not None:
            words.append(line)
    close()
    return lines, problems


def is_json_lines(text: str) -> bool:
    """Whether the first line with anything in it opens a JSON object or list."""
    return text.lstrip()[:1] in {"{", "["} and not _PLAIN.match(text.lstrip().partition("\n")[0])


def _number(value: object) -> float | None:
    if isinstance(value, bool) or not isinstance(value, (int, float)):
        return None
    try:
        number = float(value)
    except OverflowError:
        return None
    return number if math.isfinite(number) and 0 <= number <= _LONGEST else None


def _row(row: object, at: int) -> RawLine | None:
    if not isinstance(row, dict):
        return None
    start, text = _number(row.get("t", row.get("start"))), row.get("text")
    if start is None or not isinstance(text, str):
        return None
    return RawLine(start, _number(row.get("end")), _clean(text), at)


def json_lines(text: str, name: str) -> tuple[list[RawLine], list[Problem]]:
    """Lines of ``{"t": seconds, "end": seconds, "text": words}`` (``start`` serves for ``t``; one JSON list too)."""
    lines: list[RawLine] = []
    problems: list[Problem] = []
    rows: list[tuple[int, object]] = []
    try:
        whole = json.loads(text)
        rows = list(enumerate(whole, 1)) if isinstance(whole, list) else [(1, whole)]
    except (ValueError, RecursionError):
        for number, line in enumerate(text.splitlines(), 1):
            if not line.strip():
                continue
            try:
                rows.append((number, json.loads(line)))
            except (ValueError, RecursionError):
                problems.append(BAD_LINE.at(f"{name}, line {number}", "not JSON"))
    for number, row in rows:
        made = _row(row, number)
        if made is None:
            problems.append(BAD_LINE.at(f"{name}, line {number}", 'needs "t" in seconds and "text"'))
        elif made.text:
            lines.append(made)
    return lines, problems


def plain_lines(text: str, name: str) -> tuple[list[RawLine], list[Problem]]:
    """Lines that begin with a time (``[3:20]``, ``[1:02:03]``, ``(3:20)``, ``3:20``); others continue the last one."""
    lines: list[RawLine] = []
    problems: list[Problem] = []
    for number, line in enumerate(text.splitlines(), 1):
        found = _PLAIN.match(line)
        if found:
            g = found.groups()
            clock = next(g[i : i + 4] for i in (0, 4, 8) if g[i + 1] is not None)
            start = _seconds(*clock)
            if start > _LONGEST:
                problems.append(BAD_LINE.at(f"{name}, line {number}", "the time is beyond any recording"))
                continue
            lines.append(RawLine(start, None, _clean(g[12]), number))
        elif line.strip() and lines:
            last = lines[-1]
            lines[-1] = RawLine(last.start, None, f"{last.text} {_clean(line)}".strip(), last.at)
        elif line.strip():
            problems.append(BAD_LINE.at(f"{name}, line {number}", "words before the first time"))
    return [line for line in lines if line.text], problems
