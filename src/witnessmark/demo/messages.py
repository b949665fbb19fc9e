"""Numbered messages of the demo."""

from typing import Final

from witnessmark.problems import Message

__all__ = ["NOTHING_PICKED", "NOT_A_DEMO", "STILL_OPEN"]

NOT_A_DEMO: Final = Message(
    "WM920",
    "the folder holds something that is not an invented demo job",
    "replacing it would destroy records",
    "name another folder: witnessmark demo FOLDER",
)
NOTHING_PICKED: Final = Message(
    "WM921",
    "a decision of the demo names an entry that is not there",
    "the demo would settle something other than what it says",
    "bring demo/visit/decisions.toml into line with what the narration now yields",
)
STILL_OPEN: Final = Message(
    "WM922",
    "the demo's decisions leave this end loose",
    "its report could not be issued",
    "add a decision to demo/visit/decisions.toml that closes it as a person would",
)
