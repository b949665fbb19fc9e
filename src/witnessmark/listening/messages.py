"""What reading and hearing a narration can say went wrong."""

from __future__ import annotations

from witnessmark.problems import Message

__all__ = [
    "AUDIO", "BACKWARD", "BAD_LINE", "EMPTY", "NOTHING_HEARD", "NOT_A_FILE", "NOT_TEXT", "NO_LINES", "OTHER_ENCODING",
    "OVERLAP", "TOO_LARGE", "UNREADABLE",
]  # fmt: skip

_FORMS = (
    "Give WebVTT, SRT, JSON lines with \"t\" and \"text\", or plain lines such as '[3:20] flue looks good'."
)  # fmt: skip

AUDIO = Message(
    "WM601",
    "this is a sound recording, and speech recognition is an extra that is not installed",
    "No words can be drafted from sound alone; the recording itself is untouched.",
    "Install the speech extra, or have the recording transcribed with times and give that file.",
)
EMPTY = Message(
    "WM602",
    "the narration is empty",
    "There are no words to draft entries from.",
    "Check that the right file was given and that its export had finished.",
)
NOT_A_FILE = Message(
    "WM603",
    "this is not a file",
    "A narration is read from one file at a time.",
    "Give the path of the timed narration itself.",
)
TOO_LARGE = Message(
    "WM604",
    "the file is larger than a narration can be",
    "A day of speech is under 2 MB of text; a file this large is something else, or would fill the memory.",
    "Give the transcript alone; split it by visit when it really is speech.",
)
NOT_TEXT = Message(
    "WM605",
    "this is not text",
    "Words read out of binary data would be invented ones.",
    _FORMS,
)
OTHER_ENCODING = Message(
    "WM606",
    "the file is not UTF-8; it was read as Windows-1252 (Latin-1)",
    "Accented letters may show wrongly; every line was kept.",
    "Compare the words with the recording, or save the file as UTF-8 and read it again.",
)
NO_LINES = Message(
    "WM607",
    "no timed line was found",
    "Without times a statement can be laid neither beside a photo nor beside the recording.",
    _FORMS,
)
BAD_LINE = Message(
    "WM608",
    "this line could not be read",
    "What was said there is in no draft.",
    "Correct the line in the transcript and read it again; the other lines were read.",
)
BACKWARD = Message(
    "WM609",
    "the times run backwards",
    "What was said next decides what 'it' means, so lines are heard in the order of their times.",
    "Check the times against the recording; no line was dropped.",
)
OVERLAP = Message(
    "WM610",
    "this line begins before the one before it ends",
    "Two people may be speaking, or a caption is shown twice; both are heard, which can double a draft.",
    "Look at the drafts around this time before you accept them.",
)
NOTHING_HEARD = Message(
    "WM611",
    "almost nothing in this narration was understood",
    "Drafts from words that tell of nothing a house has would be noise, so none were made; what is sung, and marks such as "
    "[Music], are no speech.",
    "Check that this is a walk-through of a house, in English, and that the recognition heard the speaker.",
)
UNREADABLE = Message(
    "WM612",
    "the file could not be read",
    "Nothing was changed.",
    "Check that it exists and that you may read it.",
)
