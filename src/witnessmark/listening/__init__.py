"""Listening: what did the speaker see, do and measure, and what is still on or in doubt, by the timed words alone?"""

from witnessmark.listening.bodies import ComponentEntry, PlaceEntry, components, places, to_body
from witnessmark.listening.drafts import Draft, Heard, Misheard, Open, SetAside
from witnessmark.listening.listener import listen
from witnessmark.listening.narration import Line, Narration
from witnessmark.listening.reading import LARGEST, read_narration

__all__ = [
    "LARGEST",
    "ComponentEntry",
    "Draft",
    "Heard",
    "Line",
    "Misheard",
    "Narration",
    "Open",
    "PlaceEntry",
    "SetAside",
    "components",
    "listen",
    "places",
    "read_narration",
    "to_body",
]
