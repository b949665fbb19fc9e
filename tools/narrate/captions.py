"""Cuts what was said into captions with times, broken anywhere, as automatic captions are."""

from __future__ import annotations

import random
from collections.abc import Sequence
from typing import Any

from narrate.source import Said

__all__ = ["captions"]

#: Seconds a word takes, and the lines of captions: words at least and at most.
_WORD, _FEWEST, _MOST = 0.36, 3, 12


def captions(said: Sequence[Said], seed: str) -> tuple[list[dict[str, Any]], dict[str, Any]]:
    """Caption lines (``t``, ``text``) and the gold (``records``, ``left_running``, …) of what was said.

    ``seed`` decides rhythm and line breaks, so that the same source always gives the same captions. Line breaks fall
    anywhere, but a long pause begins a new line. ``boundaries`` of the gold lists, by word, where statements begin.
    """
    rng = random.Random(seed)  # noqa: S311 - rhythm, no secret
    lines: list[dict[str, Any]] = []
    starts: list[float] = []  # of the caption line in which each word stands
    at = round(rng.uniform(0.8, 3.0), 1)
    room = 0
    firsts: list[tuple[Said, int, int]] = []
    for row in said:
        pause = rng.uniform(2.5, 7.0) if row.paused else rng.choice((0.0, 0.0, 0.15, 0.3, 0.7, 1.2))
        at += pause
        if pause > 2.0:
            room = 0
        words = row.words.split()
        firsts.append((row, len(starts), len(starts) + len(words)))
        for word in words:
            if room == 0:
                lines.append({"t": round(at, 1), "text": ""})
                room = rng.randint(_FEWEST, _MOST)
            lines[-1]["text"] = f"{lines[-1]['text']} {word}".strip()
            starts.append(lines[-1]["t"])
            room -= 1
            at += _WORD * rng.uniform(0.8, 1.25)
    records: list[dict[str, Any]] = []
    left: list[dict[str, Any]] = []
    doubts: list[dict[str, Any]] = []
    spans: list[list[float]] = []
    superseded: list[dict[str, Any]] = []
    wrong: list[dict[str, Any]] = []
    for row, first, last in firsts:
        t = starts[first]
        wrong += [{"t": t, "heard": bad, "meant": right} for right, bad in row.wrong]
        for record in row.records:
            flags = record.get("flags", ())
            kept = {k: v for k, v in record.items() if k != "flags"}
            records.append({"t": t, **kept, "evidence": row.words})
            if "left" in flags:
                left.append({"t": t, "component": record["component"]})
            if "open" in flags:
                doubts.append({"t": t, "component": record["component"]})
        if row.sort == "hypothetical":
            spans.append([t, starts[last - 1]])
        elif row.sort == "taken back":
            superseded.append({"t": t, "text": row.words})
    solid = [s for s in spans if not any(s[0] <= r["t"] <= s[1] for r in records)]
    gold = {
        "records": records,
        "left_running": left,
        "unresolved_doubts": doubts,
        "hypothetical_spans": solid,
        "superseded": superseded,
        "misrecognitions": wrong,
        "boundaries": [first for _, first, _ in firsts],
    }
    return lines, gold
