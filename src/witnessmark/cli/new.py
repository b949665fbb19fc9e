"""``witnessmark new``: a job folder from property facts."""

from __future__ import annotations

from pathlib import Path

import click

from witnessmark.assembly import job_from_facts, new_job
from witnessmark.cli.output import answer, json_option, refusing

__all__ = ["new"]


@click.command()
@click.argument("folder", type=click.Path(path_type=Path))
@click.option(
    "--facts", type=click.Path(path_type=Path), help="A TOML file with the facts, as in a job.toml; options win."
)
@click.option("--address", help="Street address of the property.")
@click.option("--town", help="Town, state and postcode.")
@click.option("--client", help="For whom the inspection is made.")
@click.option("--inspector", help="Who inspects.")
@click.option("--licence", help="The inspector's licence number.")
@click.option("--firm", help="The firm.")
@click.option("--rulebook", help="The law in force, by id (see: witnessmark packs). Example: us.wa.308-408c")
@click.option("--date", help="Date of the visit, as 2026-10-14.")
@click.option("--year-built", type=int, help="Year the house was built.")
@click.option("--altered", multiple=True, help='Something altered later, as "2007 basement finished". May be repeated.')
@click.option("--fuel", "fuels", multiple=True, help='A fuel used in the house ("natural gas"). May be repeated.')
@click.option("--attached-garage/--no-attached-garage", default=None, help="Whether a garage is attached.")
@click.option(
    "--outlook", is_flag=True, default=None, help="The client asked, in the agreement, how long ageing parts may go on."
)
@json_option
@refusing
def new(*, folder: Path, facts: Path | None, as_json: bool, **said: object) -> None:
    """Make a job folder from property facts.

    FOLDER must not exist yet, or be empty. What is not known can be left out and added to job.toml later.
    """
    job = job_from_facts(facts, {key: value for key, value in said.items() if value not in (None, ())})
    opened = new_job(folder, job)
    if as_json:
        answer({"folder": str(opened.folder), "job": job.id})
    else:
        click.echo(f"Made the job folder {opened.folder}.")
        click.echo(f"Record the visit next: witnessmark note {opened.folder} arrived")
