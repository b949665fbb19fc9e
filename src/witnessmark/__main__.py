"""``python -m witnessmark`` is the same as ``witnessmark``."""

from witnessmark.cli.main import main

main(prog_name="witnessmark")
