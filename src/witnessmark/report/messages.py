"""What writing a report can say."""

from __future__ import annotations

from witnessmark.problems import Message

__all__ = [
    "CANNOT_WRITE", "FILE_MISSING", "NOT_DISPLAYABLE", "NO_PDF", "NO_RULEBOOK", "NO_SUCH_ENTRY", "PICTURE_UNREADABLE",
    "SIGNS_REMOVED", "SIGNS_REPLACED",
]  # fmt: skip

FILE_MISSING = Message(
    "WM801",
    "the journal names a file that is not among the media",
    "The report lists it by name only; whoever reads it cannot look at the evidence.",
    "Put the file back into the job's media folder under its hash, then write the report again.",
)
NOT_DISPLAYABLE = Message(
    "WM802",
    "this file cannot be shown on a page",
    "The report lists it in words; it stays in the record as it is.",
    "Nothing, if words are enough; else add a JPEG or PNG of it to the record.",
)
PICTURE_UNREADABLE = Message(
    "WM803",
    "this picture could not be read",
    "The report shows its description in place of the picture.",
    "Open the file with an image program; if it is damaged, import the original again.",
)
SIGNS_REPLACED = Message(
    "WM804",
    "the fonts of the PDF do not hold some signs",
    "They are printed as a replacement sign in the PDF; the HTML and report.json keep them.",
    "Write the text in letters that the fonts hold, or give readers the HTML beside the PDF.",
)
SIGNS_REMOVED = Message(
    "WM805",
    "some texts held control signs that cannot be printed",
    "They were left out of the report; they could have hidden or turned round the words beside them.",
    "Nothing, unless the text reads wrong; then amend the entry it comes from.",
)
NO_RULEBOOK = Message(
    "WM806",
    "the rulebook that the job names is not among the packs",
    "The report cannot list the duties of the law.",
    "Correct the rulebook in job.toml, or add the pack that holds it.",
)
NO_SUCH_ENTRY = Message(
    "WM807",
    "the report cites an entry that is not in the record",
    "A statement that points at nothing cannot be defended.",
    "Merge the device that holds the entry, or amend the statement so that it cites what it rests on.",
)
NO_PDF = Message(
    "WM808",
    "the PDF could not be made",
    "The HTML and report.json may be complete all the same; the PDF is not.",
    "Send the detail to the makers of the program; until then, print the HTML.",
)
CANNOT_WRITE = Message(
    "WM809",
    "the report could not be written there",
    "What was there before is as it was, or the file is missing; no half-written file is left under that name.",
    "Choose a folder you may write to, with room on the disk.",
)
