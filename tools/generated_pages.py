"""The pages under docs/ that are made from the code: commands, acts, messages, packs and rulebooks."""

from __future__ import annotations

import importlib
import inspect
import pkgutil
import typing
from collections.abc import Iterator

import click

import witnessmark
from gauge_pages import gauge_pages
from witnessmark import packs as packs_package
from witnessmark.cli.main import main
from witnessmark.journal.acts import BODIES
from witnessmark.journal.schema import schema_files
from witnessmark.packs.model import Packs
from witnessmark.problems import Message
from witnessmark.report.schema import SCHEMA_NAME, report_schema

__all__ = ["messages", "pages"]

_MADE = "<!-- Made from the code by `make docs`; change the code, not this page. -->\n\n"


def pages() -> dict[str, str]:
    """Every generated page by its path under docs/."""
    packs = packs_package.read()
    return {
        "commands.md": _commands(),
        "acts.md": _acts(),
        "problems.md": _problems(),
        **gauge_pages(),
        "pack-files.md": _files(packs),
        **{f"packs/{name}": text for name, text in packs_package.pages(packs).items()},
        **{f"schema/{name}": text.decode() for name, text in schema_files().items()},
        f"schema/{SCHEMA_NAME}": report_schema().decode(),
    }


def _walk(command: click.Command, path: str) -> Iterator[tuple[str, click.Command]]:
    yield path, command
    if isinstance(command, click.Group):
        for name in command.commands:
            yield from _walk(command.commands[name], f"{path} {name}")


def _commands() -> str:
    parts = [_MADE + "# Commands\n\nEach page of help, as the command prints it.\n"]
    for path, command in _walk(main, "witnessmark"):
        context = click.Context(command, info_name=path, terminal_width=96, max_content_width=96)
        parts.append(f"## {path}\n\n```text\n{command.get_help(context).rstrip()}\n```\n")
    return "\n".join(parts)


def _acts() -> str:
    parts = [
        _MADE + "# Acts\n\nWhat an entry of the journal can record. The JSON Schema of each is in [schema/](schema/); "
        "what every entry carries is in [schema/README.md](schema/README.md).\n"
    ]
    for (act, version), body in BODIES.items():
        hints = typing.get_type_hints(body)
        rows = "\n".join(f"| `{name}` | {_type(hint)} |" for name, hint in hints.items())
        parts.append(
            f"## {act} (version {version})\n\n{inspect.getdoc(body)}\n\n| field | holds |\n|---|---|\n{rows}\n"
        )
    return "\n".join(parts)


def _type(hint: object) -> str:
    if isinstance(hint, type):
        return hint.__name__
    text = str(hint).replace("witnessmark.journal.acts.", "").replace("NoneType", "None")
    return text if len(text) < 60 else "another act's body"


def messages() -> dict[str, list[Message]]:
    """Every declared message by package, in the order of their numbers."""
    found: dict[str, list[Message]] = {}
    for info in pkgutil.walk_packages(witnessmark.__path__, "witnessmark."):
        if info.name.endswith(".messages"):
            rows = [value for value in vars(importlib.import_module(info.name)).values() if isinstance(value, Message)]
            found[" ".join(info.name.split(".")[1:-1])] = sorted(rows, key=lambda message: message.number)
    return found


def _problems() -> str:
    parts = [
        _MADE + "# Messages\n\nEach has a stable number, and says what happened, why it matters and what to do next.\n"
    ]
    for package, rows in sorted(messages().items(), key=lambda item: item[1][0].number):
        parts.append(f"## {package}\n")
        parts += [f"**{m.number}** {m.what}\n: Why it matters: {m.why}\n: What to do: {m.next}\n" for m in rows]
    return "\n".join(parts)


def _files(packs: Packs) -> str:
    rows = "\n".join(f"| `{file.id}` | {file.version} | `{file.path}` |" for file in packs.files)
    return (
        _MADE
        + "# Pack files\n\nEvery file that is shipped, under `src/witnessmark/packs/data/`. Any row of them is shown with "
        f"its source by `witnessmark packs show ID`.\n\n| pack | version | file |\n|---|---|---|\n{rows}\n"
    )
