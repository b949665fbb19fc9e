"""Numbered messages of the demo."""

from typing import Final

from witnessmark.problems import Message

__all__ = ["DEMO_THERE", "NOT_A_DEMO", "STILL_OPEN"]

NOT_A_DEMO: Final = Message(
    "WM920",
    "the folder holds something that is not an invented demo job",
    "replacing it would destroy records",
    "name another folder: witnessmark demo FOLDER",
)
DEMO_THERE: Final = Message(
    "WM922",
    "an earlier demo job is in the folder",
    "what was tried out in it would be gone",
    "add --replace to build it anew, or name another folder",
)
STILL_OPEN: Final = Message(
    "WM921",
    "the demo's decisions leave this end loose",
    "its report could not be issued",
    "add a decision to demo/visit/decisions.toml that closes it as a person would",
)
