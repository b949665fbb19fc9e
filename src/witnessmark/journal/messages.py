"""The numbered messages of the journal."""

from __future__ import annotations

from witnessmark.problems import Message

LINE_UNREADABLE = Message(
    "WM201",
    "this line is not a journal entry",
    "What it recorded cannot be shown or judged; the line itself stays as it is.",
    "Compare the line with another copy of the journal; do not edit it by hand.",
)
UNKNOWN_FIELD = Message(
    "WM202",
    "the entry has a field that does not belong there",
    "A field nobody reads could hide something that was recorded, so the whole entry is set aside.",
    "Correct what wrote the entry, or take the line from another copy of the journal.",
)
MISSING_FIELD = Message(
    "WM203",
    "the entry lacks a field that every entry has",
    "Without it the entry cannot be placed in the record.",
    "Take the line from another copy of the journal, or correct what wrote it.",
)
WRONG_VALUE = Message(
    "WM204",
    "a field holds something that is not allowed there",
    "Guessing what was meant would change the record.",
    "Write the field as the detail says, or take the line from another copy of the journal.",
)
HASH_DIFFERS = Message(
    "WM205",
    "the entry's content does not match its hash",
    "It was changed or damaged after it was written, so it cannot be relied on as evidence.",
    "Take this entry from another device or a backup; keep the damaged line as well.",
)
NOT_CANONICAL = Message(
    "WM206",
    "the line is not in the one form in which an entry is written",
    "Two spellings of one entry would have two hashes, and tampering could hide in the difference.",
    "Take the line from another copy of the journal; do not reformat journals.",
)
UNREAD = Message(
    "WM207",
    "this release does not know the act or its version",
    "The entry is kept to the byte and its hash was checked, but what it says is not judged or reported.",
    "Read the journal with a newer release.",
)
NO_CANONICAL_FORM = Message(
    "WM208",
    "the value has no canonical JSON form",
    "It could not be hashed the same way on every machine.",
    "Use text without lone surrogates, whole numbers up to 9007199254740991 and finite numbers only.",
)
BAD_TIME = Message(
    "WM209",
    "the time is not a date and time with its offset",
    "A time without offset means different moments on different devices.",
    "Write it as 2026-03-14T09:26:53-07:00 (RFC 3339).",
)
NOT_WRITABLE = Message(
    "WM210",
    "this entry cannot be written",
    "Once written it could not be read back as it was meant, so nothing was written.",
    "Correct the field as the detail says and write it again.",
)
WORD_NOT_KNOWN = Message(
    "WM211",
    "a field holds a word or number that the record has no meaning for",
    "Loose ends and findings are computed from these words; another word would be passed over in silence.",
    "Amend the entry with one of the words allowed.",
)
CHAIN_GAP = Message(
    "WM220",
    "entries of this device are missing",
    "Something that was recorded has not arrived here, or was removed.",
    "Bring the missing entries from that device or from another copy, then check again.",
)
CHAIN_FORK = Message(
    "WM221",
    "two entries hold the same position on one device",
    "The device was restored from a backup or copied, and wrote on from an old state; both entries are kept.",
    "Read both, drop the one that should not count, and give the device a new name before it writes on.",
)
CHAIN_BROKEN = Message(
    "WM222",
    "the entry does not follow the one before it on its device",
    "The entry before it was changed after this one was written, or stems from another chain.",
    "Compare both entries with another copy of the journal.",
)
CONTENT_CHANGED = Message(
    "WM223",
    "the entry's content does not match its hash",
    "It was changed after it was written, so it cannot be relied on as evidence.",
    "Take this entry from another device or a backup; keep the changed one as well.",
)
IN_THE_FUTURE = Message(
    "WM224",
    "the entry says it happened later than now",
    "The clock of the device was probably wrong, so windows and durations computed from it are wrong too.",
    "Amend the entry's time; the entry is kept as it is.",
)
OTHER_JOB = Message(
    "WM225",
    "entries of more than one job are mixed",
    "What was seen in one house would be reported for another.",
    "Keep each job's entries in its own journal.",
)
SAME_ID = Message(
    "WM230",
    "one id names two different entries",
    "One of them was changed or made up; both are kept.",
    "Compare them with the device that wrote the entry.",
)
BASE_MISSING = Message(
    "WM231",
    "the entry speaks of an entry that has not arrived",
    "It waits and has no effect yet.",
    "Bring the journal of the device that wrote the missing entry.",
)
CIRCLE = Message(
    "WM232",
    "entries accept, drop or amend each other in a circle",
    "None of them can be taken as the one that holds, so none has an effect.",
    "Write one entry that says what holds.",
)
CANNOT_AMEND = Message(
    "WM233",
    "the amendment has no effect",
    "It says nothing that could hold, or amends an acceptance, a removal or a seal.",
    "Drop what should not count, and record what holds as an entry of its own.",
)
AMENDED_TWICE = Message(
    "WM234",
    "one entry was amended twice in ignorance of each other",
    "The later one is taken to hold; the other may be the right one.",
    "Read both and drop the amendment that does not hold.",
)
NOT_A_PERSON = Message(
    "WM235",
    "a program wrote an acceptance",
    "Only a person may make a draft count, so it has no effect.",
    "Accept the drafts yourself.",
)
SEAL_ROOT = Message(
    "WM240",
    "the seal's root does not match the heads it lists",
    "The seal itself was changed or damaged.",
    "Take the seal from the issued report or another copy of the journal.",
)
SEAL_ENTRIES = Message(
    "WM241",
    "the record does not match what was sealed",
    "The report was issued on other entries than the ones kept here.",
    "Compare the device's entries named here with another copy of the journal.",
)
SEAL_SIGNATURE = Message(
    "WM242",
    "the signature does not fit the seal",
    "The seal was changed after signing, or was signed with another key.",
    "Compare the key with the one printed in the report; take the seal from another copy.",
)
SEAL_FACTS = Message(
    "WM243",
    "the facts of the job are not the ones that were sealed",
    "The report was issued for other facts (address, date, law in force) than the ones kept here.",
    "Restore job.toml as it was when the report was issued, or issue a new edition.",
)
NOT_A_SEAL = Message(
    "WM244",
    "this entry is not a seal",
    "Only an entry of the act sealed can be checked against the record.",
    "Name an entry whose act is sealed.",
)
SEAL_UNSAFE = Message(
    "WM245",
    "the record cannot be sealed as it is",
    "A seal over a broken record would vouch for something nobody can check.",
    "Mend the record as the detail says, then seal it.",
)
JOB_UNREADABLE = Message(
    "WM250",
    "the facts of the job cannot be read",
    "Without them no law, date or address is known, so nothing can be judged or reported.",
    "Correct the file as the detail says; it must be TOML in UTF-8.",
)
JOB_UNKNOWN_KEY = Message(
    "WM251",
    "the facts of the job hold a key that has no meaning",
    "A misspelt key would leave a fact out of the report in silence.",
    "Use one of the allowed keys, or put what you want to keep under note.",
)
JOB_WRONG_VALUE = Message(
    "WM252",
    "a fact of the job holds something that is not allowed there",
    "Guessing what was meant could put a wrong fact into the report.",
    "Write it as the detail says.",
)
