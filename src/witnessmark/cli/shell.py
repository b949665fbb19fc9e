"""``witnessmark shell``: completion for the shells people use."""

from __future__ import annotations

import click
from click.shell_completion import get_completion_class

__all__ = ["shell"]


@click.command()
@click.argument("name", type=click.Choice(["bash", "zsh", "fish"]))
def shell(name: str) -> None:
    """Print the completion script for a shell.

    \b
      bash:  witnessmark shell bash > ~/.local/share/bash-completion/completions/witnessmark
      zsh:   witnessmark shell zsh > ~/.zfunc/_witnessmark
      fish:  witnessmark shell fish > ~/.config/fish/completions/witnessmark.fish
    """
    completion = get_completion_class(name)
    if completion is None:  # pragma: no cover - click ships these three
        raise click.UsageError(f"no completion for {name}")
    context = click.get_current_context().find_root()
    click.echo(completion(context.command, {}, "witnessmark", "_WITNESSMARK_COMPLETE").source())
