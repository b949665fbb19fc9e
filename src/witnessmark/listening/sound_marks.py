"""What stands in captions and was not said: ``[Music]``, ``(applause)``, what is sung between ``♪``."""

from __future__ import annotations

import re

__all__ = ["without_sound_marks"]

#: A note begins what is sung, up to the next note or the end of the line; square brackets hold what is no speech.
_MARKS = re.compile(
    r"[♪♫♬♩][^♪♫♬♩]*[♪♫♬♩]?"
    r"|\[[^\]\d]{1,40}\]"
    r"|\((?:[a-z]+ ){0,3}(?:music|applause|laughter|laughs|laughing|noise|noises|inaudible|silence|sighs?|coughs?|coughing|creaks?|"
    r"beeps?|beeping|knocking|barking|static|unintelligible)(?: [a-z]+)?\)"
    r"|\*(?:[a-z]+ ){0,2}(?:music|applause|laughter|silence|noise)(?: [a-z]+)?\*",
    re.IGNORECASE,
)
_OPENING = frozenset("[(*♪♫♬♩")


def without_sound_marks(line: str) -> str:
    """The line with blanks in place of all that was not said, so that every word keeps its position.

    >>> without_sound_marks("[Music] the sink leaks"), without_sound_marks("la la").strip()
    ('        the sink leaks', 'la la')
    >>> without_sound_marks("♪ la la ♪").strip()
    ''
    """
    if _OPENING.isdisjoint(line):
        return line
    return _MARKS.sub(lambda found: " " * len(found.group()), line)
