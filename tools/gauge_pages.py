"""The pages under docs/gauges/: one a gauge, with its formula, picture, sources, worked example and check values."""

from __future__ import annotations

import importlib
import inspect
import json
import pkgutil
import shlex
import textwrap
from pathlib import Path
from typing import Any

import gauge_pictures
from witnessmark.gauges import FAMILIES, Gauge, evaluate, gauges
from witnessmark.gauges.shown import answer_in_lines, inputs_in_lines

__all__ = ["gauge_pages"]

_TABLES = Path(__file__).resolve().parents[1] / "tests" / "tables"


def gauge_pages() -> dict[str, str]:
    """Every page and picture by its path under docs/."""
    drawn, checks = _pictures(), _checks()
    pages = {"gauges/README.md": _index()}
    for name, one in gauges().items():
        if name in drawn:
            pages[f"pictures/gauges/{name}.svg"] = drawn[name]
        pages[f"gauges/{name}.md"] = _page(one, pictured=name in drawn, rows=checks.get(name, []))
    return pages


def _pictures() -> dict[str, str]:
    drawn: dict[str, str] = {}
    for info in pkgutil.iter_modules(gauge_pictures.__path__):
        module = importlib.import_module(f"gauge_pictures.{info.name}")
        drawn |= {name: make() for name, make in getattr(module, "PICTURES", {}).items()}
    return drawn


def _checks() -> dict[str, list[dict[str, Any]]]:
    found: dict[str, list[dict[str, Any]]] = {}
    for file in sorted(_TABLES.glob("*.json")):
        table = json.loads(file.read_text(encoding="utf-8"))
        for row in table["rows"]:
            if "gauge" in row:
                found.setdefault(row["gauge"], []).append(
                    {**row, "source": {**table["source"], **row.get("source", {})}}
                )
    return found


def _index() -> str:
    parts = [
        (
            "# Gauges\n\nWhat a measurement means, with its published source. Each page says what the gauge takes and how "
            "it is measured, its formula or rule, its known error, what it must never be used to claim, and the published "
            "values it is tested against. A gauge is used from the command (`witnessmark gauge NAME key=value`) or from "
            "Python (`from witnessmark.gauges import evaluate`).\n\n"
            "A source marked *recalled* or *read in a copy* has to be checked against the text before anyone relies on "
            "it. Local law decides which edition is in force; no gauge says that a thing is safe or that it complies.\n"
        )
    ]
    for family, title in FAMILIES.items():
        rows = "\n".join(f"| [{n}]({n}.md) | {one.title} |" for n, one in gauges().items() if one.family == family)
        parts.append(f"## {title}\n\n| gauge | answers |\n|---|---|\n{rows}\n")
    return "\n".join(parts)


def _page(one: Gauge, *, pictured: bool, rows: list[dict[str, Any]]) -> str:
    first, rule, notes = _docstring(one)
    picture = f"\n![{one.title}](../pictures/gauges/{one.name}.svg)\n" if pictured else ""
    typed = " ".join(f"{name}={shlex.quote(text)}" for name, text in one.example.items())
    said = "\n".join(
        textwrap.fill(line, 96, subsequent_indent="  ") if line and not line.startswith(" ") else line
        for line in answer_in_lines(evaluate(one.name, one.example), one)
    )
    inputs = "\n".join(inputs_in_lines(one.inputs))
    sources = "\n".join(f"- {source}" for source in one.sources)
    cautions = "".join(f"- {caution}\n" for caution in one.cautions)
    return (
        f"# {one.title}\n\n`{one.name}`, {FAMILIES[one.family].lower()}. {first}\n{notes}{picture}\n"
        f"## What it takes\n\n```text\n{inputs}\n```\n\n"
        f"## How it answers\n\n```text\n{rule}\n```\n\nIt gives {one.gives}. Known error: {one.error}.\n\n"
        f"Never use it to claim {one.never}.\n\n{cautions}\n"
        f"## Example\n\n```console\n$ witnessmark gauge {one.name} {typed}\n```\n\n```text\n{said}\n```\n\n"
        f"## Sources\n\n{sources}\n{_published(rows)}"
    )


def _docstring(one: Gauge) -> tuple[str, str, str]:
    """First paragraph, the block under ``Formula:`` or ``Rule:``, and other paragraphs."""
    first, rule, notes = "", [], []
    for at, block in enumerate(inspect.cleandoc(one.function.__doc__ or "").split(">>>")[0].strip().split("\n\n")):
        head = block.split("\n", 1)[0].strip()
        if at == 0:
            first = " ".join(block.split())
        elif head in {"Formula:", "Rule:"}:
            rule.append(textwrap.dedent(block.split("\n", 1)[1]) if "\n" in block else "")
        elif rule and block.startswith("    "):
            rule.append(textwrap.dedent(block))
        else:
            notes.append(" ".join(block.split()))
    return first, "\n\n".join(rule), "".join(f"\n{note}\n" for note in notes)


def _published(rows: list[dict[str, Any]]) -> str:
    if not rows:
        return ""
    lines = []
    for row in rows:
        source = row["source"]
        cited = ", ".join(filter(None, (source.get("document"), source.get("edition"), source.get("place"))))
        given = ", ".join(f"{name} {_brief(value)}" for name, value in row["given"].items())
        want = (
            f"refused ({row['refused']})"
            if "refused" in row
            else "; ".join(f"{name} {_brief(value)}" for name, value in row.get("expect", {}).items())
        )
        for name, wrong in row.get("disagrees", {}).items():
            want += f"{'; ' if want else ''}not {name} {_brief(wrong)}"
        lines.append(f"| {row['id']} | {given} | {want} | {row.get('tolerance', 'exact')} | {cited} ({row['basis']}) |")
    return (
        "\n## Values it is tested against\n\n| row | given | must come out | within | published in |\n|---|---|---|---|---|\n"
        + "\n".join(lines)
        + "\n"
    )


def _brief(value: object) -> str:
    text = " ".join(str(value).split()).replace("|", "/")
    return text if len(text) <= 80 else text[:77] + "..."
