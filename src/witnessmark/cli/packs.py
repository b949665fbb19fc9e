"""``witnessmark packs``: what the packs hold, whether they are sound, and where a value comes from."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path
from typing import Any, cast

import click

from witnessmark.assembly import check_packs, count_packs, read_packs, run_situations, start_overlay
from witnessmark.cli.output import FALLS_SHORT, answer, complain, in_words, json_option, refusing
from witnessmark.packs import changes
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
    """Check every file of the packs and overlays, then try every situation on them.

    Keys, references, units, dates and sources first; then each situation file: a house, what was done, and which
    duties, loose ends and findings must come of it. Exit status 1 when anything is wrong.
    """
    problems = check_packs(overlays)
    tried = 0
    if not problems:
        tried, problems = run_situations(overlays)
    complain(problems)
    if as_json:
        answer({"sound": not problems, "situations": tried, "problems": [problem.as_json() for problem in problems]})
    elif not problems:
        click.echo(f"The packs are sound; {tried} situations came out as expected.")
    if problems:
        raise SystemExit(FALLS_SHORT)


@packs.command()
@click.argument("folder", type=click.Path(path_type=Path))
@click.option(
    "--firm", default="our own practice", show_default=True, help="Who says so: printed as the source of your rows."
)
@click.option("--rulebook", default="", help="The law you want to correct rows of; the first there is unless named.")
@json_option
@refusing
def start(folder: Path, firm: str, rulebook: str, as_json: bool) -> None:
    """Begin a folder of your own packs: conditions, procedures, wording, corrections of a law, and a situation.

    The files are valid as they stand. Change them, check them with 'witnessmark packs check --overlay FOLDER', and name
    the folder in WITNESSMARK_PACKS to have every command read it.
    """
    written = start_overlay(folder, firm=firm, day=datetime.now().astimezone().date().isoformat(), rulebook=rulebook)
    if as_json:
        answer({"folder": str(folder), "files": [str(path) for path in written]})
        return
    click.echo("\n".join(f"wrote {path}" for path in written))
    click.echo(f"Next: witnessmark packs check --overlay {folder}")


@packs.command("changes")
@overlay_option
@json_option
@refusing
def say_changes(overlays: tuple[Path, ...], as_json: bool) -> None:
    """List what your overlays change: which rows, which fields, from what to what, and on whose word."""
    made = changes(read_packs(overlays))
    if as_json:
        answer({
            "changes": [
                {
                    "table": c.table, "id": c.id, "file": c.file, "source": c.source, "tag": c.tag, "added": c.added,
                    "fields": [{"field": n, "shipped": _told(old), "yours": _told(new)} for n, old, new in c.fields],
                }
                for c in made
            ]
        })  # fmt: skip
        return
    for c in made:
        click.echo(f"{'adds' if c.added else 'replaces'} {c.table} {c.id}  ({c.source}; {c.tag}; {c.file})")
        for name, old, new in c.fields:
            _say(name, f"{_told(old)} -> {_told(new)}")
    if not made:
        click.echo("No overlay, or none that changes anything.")


def _told(value: object) -> str:
    return "; ".join(map(str, value)) if isinstance(value, tuple) else str(value)


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
