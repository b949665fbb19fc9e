"""The command: one group, one file for each thing it does."""

from __future__ import annotations

import click

from witnessmark import __version__
from witnessmark.cli.demo import demo
from witnessmark.cli.gauge import gauge
from witnessmark.cli.listen import listen
from witnessmark.cli.look import look
from witnessmark.cli.new import new
from witnessmark.cli.note import note
from witnessmark.cli.packs import packs
from witnessmark.cli.report import report
from witnessmark.cli.shell import shell
from witnessmark.cli.sign import sign
from witnessmark.cli.standing import standing
from witnessmark.cli.verify import verify

__all__ = ["main"]


@click.group(context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100})
@click.version_option(__version__, prog_name="witnessmark")
def main() -> None:
    """Carry everything seen, said, done and measured in a house through to the report.

    A job is a folder. Make one, record the visit in it, ask where it stands, and write the report:

    \b
      witnessmark new my-job --address "12 Some Street" --client "A. Buyer" --year-built 1968
      witnessmark listen walk.vtt --job my-job --began 2026-10-14T09:04:00-07:00
      witnessmark look photos/*.jpg --job my-job
      witnessmark note my-job accepted of=all
      witnessmark gauge dew-point temperature=72F humidity=55%
      witnessmark standing my-job
      witnessmark report my-job

    Or see the whole of it at once on an invented house: witnessmark demo

    Every command takes --json. Exit status: 0 done; 1 the thing asked about falls short; 2 wrong use or
    unreadable input.
    """


for command in (demo, new, note, listen, look, gauge, standing, report, sign, verify, packs, shell):
    main.add_command(command)
