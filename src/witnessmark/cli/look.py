"""``witnessmark look``: photos and thermal frames to drafts."""

from __future__ import annotations

from pathlib import Path

import click

from witnessmark.assembly import look_at, look_into, open_job
from witnessmark.cli.output import WRONG_USE, answer, complain, json_option, progress, refusing

__all__ = ["look"]


@click.command()
@click.argument("files", nargs=-1, required=True, type=click.Path(path_type=Path))
@click.option(
    "--job", type=click.Path(path_type=Path), help="Keep the pictures in this job and draft entries for them."
)
@click.option("--offset", metavar="±HH:MM", help="Offset from UTC of the camera's clock, for pictures that do not say.")
@click.option("--device", default="camera", show_default=True, help="Which device took them; each keeps its own chain.")
@json_option
@refusing
def look(*, files: tuple[Path, ...], job: Path | None, offset: str | None, device: str, as_json: bool) -> None:
    """Read photos and thermal frames: when they were taken, what they are, and which statements they belong to.

    A picture is kept untouched under its SHA-256. It is tied to what was said within twelve seconds of it; the tie
    is a draft. A file that cannot be read is named, and the others still come in.
    """
    opened = None if job is None else open_job(job)
    with progress("Looking", quiet=as_json) as tell:
        if opened is None:
            seen, problems = look_at(files, offset=offset, tell=tell)
            rows = [picture.as_json() for picture in seen]
        else:
            rows, problems = look_into(opened, files, offset=offset, device=device, tell=tell)
    complain(problems)
    if as_json:
        answer({"pictures": rows, "problems": [problem.as_json() for problem in problems]})
    else:
        for row in rows:
            click.echo(
                f"{row['taken_at'] or 'time unknown':<26}{row['sort']:<9}{row['name']}  {row['width']} × {row['height']}"
            )
        if job is not None:
            click.echo(
                f"{'1 picture is a draft' if len(rows) == 1 else f'{len(rows)} pictures are drafts'} in the journal: witnessmark note {job} accepted of=all"
            )
    if problems and not rows:
        raise SystemExit(WRONG_USE)
