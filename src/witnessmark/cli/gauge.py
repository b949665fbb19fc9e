"""``witnessmark gauge``: what a measurement means, with its published source."""

from __future__ import annotations

import sys
from pathlib import Path

import click

from witnessmark.assembly import limit_from_pack
from witnessmark.cli.output import FALLS_SHORT, answer, in_words, json_option, refusing
from witnessmark.gauges import FAMILIES, Answer, Gauge, Limit, Source, evaluate, find, gauges
from witnessmark.gauges.shown import answer_as_data, answer_in_lines, inputs_in_lines
from witnessmark.units import parse_quantity

__all__ = ["gauge"]


def _inputs(pairs: tuple[str, ...]) -> dict[str, str]:
    given = {}
    for pair in pairs:
        name, equals, text = pair.partition("=")
        if not equals:
            raise click.UsageError(f"{pair!r} is not KEY=VALUE; write for example temperature=70F")
        given[name.strip()] = _text(text) if text.startswith("@") else text
    return given


def _text(named: str) -> str:
    if named == "@-":
        return sys.stdin.read()
    try:
        return Path(named[1:]).read_text(encoding="utf-8-sig")
    except (OSError, UnicodeDecodeError, ValueError) as why:
        raise click.UsageError(
            f"{named[1:]!r} cannot be read ({why}); name a text file with one value or row a line"
        ) from None


def _limit(at_least: str | None, at_most: str | None, says: str | None, criterion: str | None) -> Limit | None:
    if criterion is not None:
        return limit_from_pack(criterion)
    if at_least is None and at_most is None:
        return None
    low = None if at_least is None else parse_quantity(at_least)
    high = None if at_most is None else parse_quantity(at_most)
    words = " and ".join(
        f"{word} {text}" for word, text in (("at least", at_least), ("at most", at_most)) if text is not None
    )
    return Limit(Source(says or "the limit you gave", "", "", "seen"), low, high, words)


def _show(found: Answer, about: Gauge) -> None:
    click.echo(f"{about.title}\n")
    for line in answer_in_lines(found, about):
        click.echo(in_words(line, indent="") if line and not line.startswith(" ") else line)


def _command(about: Gauge) -> click.Command:
    example = " ".join(f"{name}={_quoted(text)}" for name, text in about.example.items())
    body = "\n".join(inputs_in_lines(about.inputs, indent="  "))
    text = (
        f"{about.title}.\n\n{(about.function.__doc__ or '').split(chr(10) + chr(10))[0]}\n\n\b\nIt takes:\n{body}\n\n"
        f"Known error: {about.error}.\n\nNever use it to claim {about.never}.\n\n\b\nExample:\n"
        f"  witnessmark gauge {about.name} {example}"
    )

    @click.argument("inputs", nargs=-1, metavar="[KEY=VALUE]...")
    @click.option("--at-most", metavar="VALUE", help="Hold the answer against this upper limit.")
    @click.option("--at-least", metavar="VALUE", help="Hold the answer against this lower limit.")
    @click.option("--says", metavar="WORDS", help="Who sets that limit: document, edition, section.")
    @click.option("--criterion", metavar="ID", help="Hold the answer against this criterion of the packs.")
    @json_option
    @refusing
    def run(
        inputs: tuple[str, ...], at_most: str | None, at_least: str | None, says: str | None, criterion: str | None,
        *, as_json: bool,
    ) -> None:  # fmt: skip
        parent = click.get_current_context().parent
        as_json = as_json or bool(parent and parent.params.get("as_json"))
        found = evaluate(about.name, _inputs(inputs), _limit(at_least, at_most, says, criterion))
        if as_json:
            answer(answer_as_data(found, about))
        else:
            _show(found, about)
        if found.verdict is not None and found.verdict.outcome == "beyond":
            sys.exit(FALLS_SHORT)

    return click.command(about.name, help=text, short_help=about.title)(run)


def _quoted(text: str) -> str:
    return text if text.replace(".", "").replace("%", "").isalnum() else "'" + text.replace("'", "'\\''") + "'"


class _Gauges(click.Group):
    """A group whose commands are the gauges."""

    def list_commands(self, ctx: click.Context) -> list[str]:  # noqa: ARG002 - click's signature
        """The gauges' names."""
        return list(gauges())

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command:  # noqa: ARG002 - click's signature
        """The gauge of this name; refuses others with their nearest names."""
        return _command(find(cmd_name))

    def resolve_command(
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:
        """The gauge named first; an unknown one is told as a numbered message."""

        def resolved(*, as_json: bool) -> tuple[str | None, click.Command | None, list[str]]:  # noqa: ARG001 - read by `refusing`
            return super(_Gauges, self).resolve_command(ctx, args)

        return refusing(resolved)(as_json="--json" in args or bool(ctx.params.get("as_json")))

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:  # noqa: ARG002 - click's signature
        """The gauges by family."""
        for family, title in FAMILIES.items():
            rows = [(name, one.title) for name, one in gauges().items() if one.family == family]
            if rows:
                with formatter.section(title):
                    formatter.write_dl(rows)


@click.group(cls=_Gauges, invoke_without_command=True, subcommand_metavar="[NAME [KEY=VALUE]...]")
@json_option
@click.pass_context
def gauge(context: click.Context, as_json: bool) -> None:
    r"""Say what a measurement means, with its published source.

    Without a name: the list of gauges. With one: its answer, what it may be off by, where it is published, and what
    it must never be used to claim. Values carry their units, as read: 118F, 62psi, 5 3/4in, 6'8", 19%. Many values
    or rows can come from a file: readings=@log.csv (or @- for standard input).

    \b
      witnessmark gauge
      witnessmark gauge wood-emc --help
      witnessmark gauge wood-emc temperature=70F humidity=50%

    Exit status 1 when the answer lies beyond a limit it was held against.
    """
    if context.invoked_subcommand is not None:
        return
    if as_json:
        answer({
            "gauges": [
                {
                    "name": one.name, "family": one.family, "title": one.title, "gives": one.gives, "unit": one.unit,
                    "inputs": [
                        {"name": each.name, "what": each.asked.what, "unit": each.asked.unit, "optional": each.optional,
                         "lowest": each.asked.lowest, "highest": each.asked.highest, "how": each.asked.how}
                        for each in one.inputs
                    ],
                    "example": dict(one.example), "never": one.never, "error": one.error,
                }
                for one in gauges().values()
            ]
        })  # fmt: skip
        return
    wide = max(map(len, gauges()), default=0) + 2
    for family, title in FAMILIES.items():
        click.echo(title)
        for name, one in gauges().items():
            if one.family == family:
                click.echo(f"  {name:<{wide}}{one.title}")
