"""``witnessmark sign``: sign the PDF of a report, and have it stamped with a time."""

from __future__ import annotations

from pathlib import Path

import click

from witnessmark.assembly import open_job, sign_report
from witnessmark.cli.output import answer, json_option, refusing

__all__ = ["sign"]


@click.command()
@click.argument("job", type=click.Path(path_type=Path))
@click.option("--pdf", type=click.Path(path_type=Path), help="The PDF to sign; JOB/report/report.pdf unless said.")
@click.option(
    "--key",
    type=click.Path(path_type=Path),
    help="Your private key, PEM or PKCS#12. Unless said, one is made for you, with a certificate of its own.",
)
@click.option(
    "--certificate", type=click.Path(path_type=Path), help="Your certificates (PEM), unless the key holds them."
)
@click.option(
    "--password-file",
    type=click.Path(path_type=Path),
    help="File whose first line is the password of the key. Unless said: $WITNESSMARK_PASSWORD.",
)
@click.option("--reason", default="", help="Why it is signed; PDF readers show it.")
@click.option(
    "--stamp", help="Address of a time-stamp service (RFC 3161). Nothing is asked of the network unless said."
)
@json_option
@refusing
def sign(
    *,
    job: Path,
    pdf: Path | None,
    key: Path | None,
    certificate: Path | None,
    password_file: Path | None,
    reason: str,
    stamp: str | None,
    as_json: bool,
) -> None:
    """Sign the PDF of JOB's report. Issue it first: the PDF of another edition, or of a record that changed, is a new file without a signature.

    A signature with a certificate of your own making shows that nothing was changed since, and not who you are; one from an
    authority shows both. It is no qualified signature in the sense of any law.
    """
    made = sign_report(
        open_job(job),
        pdf=pdf,
        key=key,
        certificate=certificate,
        password_file=password_file,
        reason=reason,
        stamp=stamp,
    )
    if as_json:
        answer(made.as_json())
        return
    click.echo(f"Signed {made.path}")
    click.echo(made.shows)
