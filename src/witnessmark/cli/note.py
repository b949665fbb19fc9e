"""``witnessmark note``: one entry, or a table of readings."""

from __future__ import annotations

from pathlib import Path

import click

from witnessmark.assembly import ENTRY_FIELDS, fields_of, note_entry, note_readings, open_job, read_packs
from witnessmark.cli.output import answer, complain, in_words, json_option, refusing
from witnessmark.journal.acts import ACTS, BODIES

__all__ = ["note"]

_EXAMPLES = """
    \b
      witnessmark note my-job arrived weather=rain outdoor=52 outdoor_unit=[degF]
      witnessmark note my-job placed place=kitchen name=kitchen sort=kitchen
      witnessmark note my-job ran component=kitchen.range place=kitchen kind=range part=oven what="oven set to bake" left=on
      witnessmark note my-job read component=kitchen.range place=kitchen measure=oven-temperature value=362F
      witnessmark note my-job stopped component=kitchen.range part=oven
      witnessmark note my-job accepted of=all
      witnessmark note my-job settled of=1f0c9a2b how="seen dry after rain"
      witnessmark note my-job amended of=1f0c9a2b why="read the dial again" value=364F
"""


def _show_fields(_context: click.Context, _parameter: click.Parameter, act: str | None) -> None:
    if act is None:
        return
    if act in ACTS:
        newest = max(v for name, v in BODIES if name == act)
        click.echo(in_words((BODIES[act, newest].__doc__ or "").split("\n")[0]))
    for name, form in fields_of(act).items():
        click.echo(f"  {name:<14}{form}")
    click.echo(f"  and of every entry: {', '.join(ENTRY_FIELDS)}")
    raise click.exceptions.Exit(0)


@click.command(epilog="Examples:\n" + _EXAMPLES)
@click.argument("job", type=click.Path(path_type=Path))
@click.argument("act", required=False)
@click.argument("said", nargs=-1, metavar="[KEY=VALUE]...")
@click.option("--from", "table", type=click.Path(path_type=Path), help="A CSV table of readings instead of one act.")
@click.option("--by", help="Who records; the inspector of the job unless said.")
@click.option("--device", default="desk", show_default=True, help="Which device this is; each keeps its own chain.")
@click.option(
    "--fields",
    callback=refusing(_show_fields),
    expose_value=False,
    is_eager=True,
    metavar="ACT",
    help="Say which fields an act has.",
)
@json_option
@refusing
def note(
    *, job: Path, act: str | None, said: tuple[str, ...], table: Path | None, by: str | None, device: str, as_json: bool
) -> None:
    """Record one entry in the journal of JOB.

    ACT is one of the acts of the journal: arrived, left, placed, listed, absent, saw, ran, stopped, read, took,
    identified, skipped, doubted, settled, found, accepted, dropped, amended. KEY=VALUE pairs are its fields, and
    place, component, at (when it happened) and media. Ids of other entries may be shortened to their last characters.

    --from takes a CSV table with the headings at, place, component, kind, measure, value, unit and, if wanted, part,
    spot, instrument. The whole table is recorded or none of it.
    """
    opened = open_job(job)
    packs = read_packs()
    if table is not None:
        if act is not None:
            raise click.UsageError("--from records readings; leave the act out")
        entries = note_readings(opened, packs, table, by=by, device=device)
    elif act is None:
        raise click.UsageError("name an act, or a table with --from")
    else:
        pairs = dict(_pair(pair) for pair in said)
        entries, problems = note_entry(opened, packs, act, pairs, by=by, device=device)
        complain(problems)
    if as_json:
        answer({"entries": [entry.id for entry in entries]})
    else:
        click.echo(
            f"Recorded {len(entries)} {'entry' if len(entries) == 1 else 'entries'}: {entries[-1].act} {entries[-1].id}"
            if entries
            else "Nothing to record."
        )


def _pair(text: str) -> tuple[str, str]:
    key, equals, value = text.partition("=")
    if not equals or not key:
        raise click.UsageError(f"{text!r} is not KEY=VALUE; write for example what='oven set to bake'")
    return key, value
