"""``witnessmark packs``: what the packs hold, whether they are sound, and where a value comes from."""

from __future__ import annotations

from pathlib import Path
from typing import Any, cast

import click

from witnessmark.assembly import check_packs, count_packs, read_packs
from witnessmark.cli.output import FALLS_SHORT, answer, complain, in_words, json_option, refusing
from witnessmark.packs import show as show_row

__all__ = ["packs"]

overlay_option = click.option(
    "--overlay", "overlays", multiple=True, type=click.Path(path_type=Path), help="A folder with your own packs; its rows win. May be repeated.",
)  # fmt: skip


@click.group(invoke_without_command=True)
@overlay_option
@json_option
@click.pass_context
@refusing
def packs(context: click.Context, overlays: tuple[Path, ...], as_json: bool) -> None:
    """Say which packs are read: kinds, procedures, conditions, criteria, rulebooks, and their sources.

    Folders named in WITNESSMARK_PACKS (separated as in PATH) are read as overlays by every command.
    """
    if context.invoked_subcommand is not None:
        return
    read = read_packs(overlays)
    counts = count_packs(read)
    if as_json:
        files = [
            {"id": f.id, "version": f.version, "hash": f.hash, "path": f.path, "overlay": f.overlay} for f in read.files
        ]
        answer({"rows": counts, "rulebooks": sorted(read.rulebooks), "files": files})
        return
    for name, count in counts.items():
        click.echo(f"{count:>6}  {name}")
    click.echo("Rulebooks: " + ", ".join(f"{book.id} ({book.citation})" for book in read.rulebooks.values()))
    for file in read.files:
        click.echo(f"  {file.id} {file.version}  {file.hash[:16]}{'  (overlay)' if file.overlay else ''}")


@packs.command()
@overlay_option
@json_option
@refusing
def check(overlays: tuple[Path, ...], as_json: bool) -> None:
    """Check every file of the packs and overlays: keys, references, units, dates, sources.

    Exit status 1 when anything is wrong.
    """
    problems = check_packs(overlays)
    complain(problems)
    if as_json:
        answer({"sound": not problems, "problems": [problem.as_json() for problem in problems]})
    elif not problems:
        click.echo("The packs are sound.")
    if problems:
        raise SystemExit(FALLS_SHORT)


@packs.command()
@click.argument("row")
@overlay_option
@json_option
@refusing
def show(row: str, overlays: tuple[Path, ...], as_json: bool) -> None:
    """Show one row by its id, with its source, how sure it is, which file holds it and what refers to it."""
    shown = show_row(read_packs(overlays), row)
    if as_json:
        answer(shown)
        return
    for found in cast("list[dict[str, Any]]", shown["found"]):
        source = found["row"].pop("provenance", None)
        file = found["file"]
        click.echo(f"{found['table']} {row}, in {file['path'] if isinstance(file, dict) else file}")
        for key, value in found["row"].items():
            if value not in (None, [], "", False):
                _say(key, value)
        if source:
            _say("source", f"{source['source']} ({source['tag']}), in force {source['in_force']}")
        _say("referred to by", found["referred_to_by"] or "nothing")
        if found.get("stands_in_for"):
            _say("stands in for", found["stands_in_for"])


def _say(name: str, value: object) -> None:
    click.echo(in_words(f"{name.replace('_', ' ')}: {_words(value)}", "  "))


def _words(value: object) -> str:
    if isinstance(value, dict):
        return ", ".join(f"{key} {_words(part)}" for key, part in value.items() if part not in (None, [], "", False))
    if isinstance(value, list):
        return "; ".join(_words(part) for part in value)
    return str(value)
