"""The numbered messages of packs."""

from __future__ import annotations

from witnessmark.problems import Message

__all__ = [
    "BAD_DATE", "BAD_ID", "BAD_NUMBER", "CONTRADICTS", "CORRECTS_WHAT", "DUPLICATE_ID", "EMPTY_TEXT",
    "FRAMES_DIFFER", "MISSING_KEY", "NOT_ALLOWED", "NOT_TOML", "NO_OVERLAY", "NO_PROVENANCE", "NO_SUCH_ROW",
    "SAID_OF_TWO", "TOO_LARGE", "UNKNOWN_KEY", "UNKNOWN_REFERENCE", "UNKNOWN_UNIT", "UNREADABLE", "WRONG_DIMENSION",
    "WRONG_TYPE",
]  # fmt: skip

UNREADABLE = Message(
    "WM401",
    "This pack file cannot be read.",
    "Nothing in it can be used, and a visit must not be judged by half of a pack.",
    "Check that the file exists, that you may read it and that it is UTF-8 text.",
)
NOT_TOML = Message(
    "WM402",
    "This pack file is not TOML.",
    "Nothing in it can be used, and a visit must not be judged by half of a pack.",
    "Correct the file at the line named; the form is described in docs/packs.",
)
UNKNOWN_KEY = Message(
    "WM403",
    "There is a key that no pack has.",
    "A mistyped key would otherwise be left out in silence, and with it what it was to say.",
    "Correct the key, or remove it.",
)
MISSING_KEY = Message(
    "WM404",
    "A key that must be there is missing.",
    "The row cannot be used without it.",
    "Add the key.",
)
WRONG_TYPE = Message(
    "WM405",
    "A key holds the wrong sort of value.",
    "The row cannot be used as it stands.",
    "Write the value in the form named; numbers that were published stand in quotes, so that no digit is lost.",
)
NOT_ALLOWED = Message(
    "WM406",
    "A key holds a word that it cannot hold.",
    "The program acts on a closed list of words here, and would not know what to do with another.",
    "Use one of the words listed.",
)
BAD_ID = Message(
    "WM407",
    "This is no id.",
    "Journals and reports keep ids for years; they must be writable anywhere.",
    "Use letters, digits and single hyphens or dots, at most 80 characters, such as water-heater.",
)
DUPLICATE_ID = Message(
    "WM408",
    "Two rows have the same id.",
    "It would depend on the order of files which of them counts.",
    "Rename one; a value that succeeds another is a new row, with @ and its date after the id.",
)
NO_PROVENANCE = Message(
    "WM409",
    "This row does not say where it comes from.",
    "What the tool says must be traceable to a document, its date and how sure we are of it.",
    "State source, tag and in_force for the row, or once at the top of the file.",
)
BAD_DATE = Message(
    "WM410",
    "This is no date.",
    "A visit is judged by what was in force on its day.",
    "Write the date as year-month-day, such as 2026-01-31.",
)
BAD_NUMBER = Message(
    "WM411",
    "This is no number.",
    "Readings are held against it.",
    "Write a plain decimal number in quotes, such as 7.75.",
)
UNKNOWN_UNIT = Message(
    "WM412",
    "This unit is not known.",
    "A number whose unit is not known cannot be compared with a reading.",
    "Use a UCUM code the program converts, such as [in_i], [psi], [degF] or %.",
)
UNKNOWN_REFERENCE = Message(
    "WM413",
    "This names a row that is in no pack.",
    "What it was to point at would be missing on site or in the report.",
    "Correct the id, or add the row it names.",
)
CONTRADICTS = Message(
    "WM414",
    "Two values of this row contradict each other.",
    "The row could never apply, or would always.",
    "Correct one of them.",
)
NO_SUCH_ROW = Message(
    "WM415",
    "No pack has a row with this id.",
    "There is nothing to show.",
    "Check the spelling; the nearest ids are named where there are any.",
)
NO_OVERLAY = Message(
    "WM416",
    "This folder of your own packs is not there, or holds no pack file.",
    "What you meant to add or change would be missing without a word.",
    "Name a folder, or a file, that holds .toml packs.",
)
SAID_OF_TWO = Message(
    "WM417",
    "The same words are said of more than one kind.",
    "Speech that uses them is told apart by place and context, or asked about.",
    "Nothing has to be done; use more particular words where you can.",
)
TOO_LARGE = Message(
    "WM418",
    "This pack file is larger than any pack can be.",
    "Reading it would hold up the phone it is read on.",
    "Split it into files of at most 4 MB each.",
)
WRONG_DIMENSION = Message(
    "WM419",
    "The unit is one of another kind of quantity than the measure's.",
    "No reading could ever be compared with it.",
    "Use a unit that the measure's own unit converts to.",
)
EMPTY_TEXT = Message(
    "WM420",
    "A text that must say something is empty.",
    "It would be printed, or said, as nothing.",
    "Write the words.",
)
CORRECTS_WHAT = Message(
    "WM421",
    "Only a file of your own packs can correct a rulebook, and it names the rulebook and holds none of its own.",
    "A correction laid over nothing, or over the shipped file by itself, would change the law without a word.",
    'Write corrects = "the rulebook\'s id" at the top of a file in your own folder, and the duties to correct below it.',
)
FRAMES_DIFFER = Message(
    "WM422",
    "Two sentences for one use have different gaps.",
    "What belongs in the gap would be missing from the report in one of the languages.",
    "Give both sentences the same gaps, each written as {name}.",
)
