"""The numbered messages of the stores."""

from __future__ import annotations

from witnessmark.problems import Message

NO_FOLDER = Message(
    "WM301",
    "there is no job folder here",
    "A job's journal, media and facts lie together in one folder; without it nothing can be read or kept.",
    "Check the path, or make a new job folder there.",
)
NOT_A_FILE = Message(
    "WM302",
    "a folder stands where a file should be",
    "What the file should hold can be neither read nor kept.",
    "Move the folder away and put the file back from another copy of the job.",
)
CANNOT_READ = Message(
    "WM303",
    "the file cannot be read",
    "What it holds is missing from everything computed here.",
    "Check the permissions and the drive, or bring the file from another copy of the job.",
)
CANNOT_WRITE = Message(
    "WM304",
    "the drive refused to write",
    "Nothing of this was kept; what was kept before is as it was.",
    "Check the drive and its permissions, then do it again, or work on a copy of the job on another drive.",
)
DISK_FULL = Message(
    "WM305",
    "there is no room left to write",
    "Nothing of this was kept; what was kept before is as it was.",
    "Free some space on the drive (or raise its quota), then do it again.",
)
NO_PERMISSION = Message(
    "WM306",
    "writing here is not allowed",
    "Nothing of this was kept; what was kept before is as it was.",
    "Give yourself the right to write there, or work on a copy of the job in a folder of your own.",
)
BUSY = Message(
    "WM307",
    "another program is writing to this job and does not come to an end",
    "Two writers at once would mix their entries, so this one waited and then gave up; nothing of it was kept.",
    "Wait for the other program or close it, then do it again.",
)
NO_LOCK = Message(
    "WM308",
    "this drive cannot keep two writers apart",
    "Without a lock two programs could damage the journal, so nothing was written.",
    "Keep the job folder on a local drive while you work on it, and copy it to the other drive afterwards.",
)
UNSURE = Message(
    "WM309",
    "the drive failed while entries were being written, and again while they were being taken back",
    "These entries may be completed when the job is next opened; earlier entries are as they were.",
    "Check the drive, open the job again and look. Writing the same entries again is harmless.",
)
TORN_LINE = Message(
    "WM310",
    "the last line stops before its end",
    "Writing or copying was interrupted there, so that line is not counted as an entry.",
    "Write on: the line is then moved to a file beside the journal. If it came from a copy, copy again.",
)
SET_ASIDE = Message(
    "WM311",
    "bytes that form no whole entry were moved out of the journal",
    "They were left by an interrupted write or copy; nothing of them was deleted.",
    "Look into the file named here, and record again what you miss.",
)
LINE_TOO_LONG = Message(
    "WM312",
    "the line is longer than any entry can be",
    "It was passed over without being loaded; the lines around it were read.",
    "Take the line from another copy of the journal.",
)
BLANK_LINE = Message(
    "WM313",
    "a line is blank",
    "No entry is lost by it, but something else than this program changed the file.",
    "Compare the file with another copy of the journal; do not edit it by hand.",
)
REPEATED = Message(
    "WM314",
    "the same entry stands in the journal twice",
    "It is counted once, but something else than this program changed the file.",
    "Compare the file with another copy of the journal; do not join journals by hand.",
)
SAME_ID = Message(
    "WM315",
    "an earlier line already holds another entry with this id",
    "One of the two was changed or made up. The earlier one is read; this one is not.",
    "Compare both lines with the device that wrote the entry.",
)
EMPTY = Message(
    "WM316",
    "the journal is empty",
    "A journal begins with its first entry, so something has emptied the file.",
    "Restore journal.jsonl from another copy. If nothing was ever recorded, remove the empty file.",
)
MORE_PROBLEMS = Message(
    "WM317",
    "there are more problems of this sort than can usefully be listed",
    "The file as a whole is damaged, or is not a journal.",
    "Check that this is the right file, and restore it from another copy.",
)
LINE_ENDS = Message(
    "WM318",
    "some program changed the marks at the beginning of the file or at the ends of its lines",
    "The entries themselves were read and are whole, but the file is no longer as it was written.",
    "Keep editors and file conversions away from journals; restore the file from another copy.",
)
ID_TAKEN = Message(
    "WM320",
    "another entry with this id is already kept",
    "An entry never changes, so one of the two is not what was recorded; nothing was written.",
    "Compare both entries. To correct an entry, write an amendment.",
)
POSITION_TAKEN = Message(
    "WM321",
    "this position in the device's chain is already taken by another entry",
    "The chain would fork and prove nothing; nothing was written.",
    "Read the device's last entry again and write after it. When bringing in another copy, say that forks are kept.",
)
NO_HASH = Message(
    "WM322",
    "the entry carries no hash",
    "Nothing could later show that it is as it was written; nothing was kept.",
    "Write the entry with a pen, or give it its hash first.",
)
OTHER_JOB = Message(
    "WM323",
    "the entry belongs to another job",
    "What was seen in one house must not stand in another's record; nothing was written.",
    "Open the job folder that the entry belongs to.",
)
ENTRY_TOO_LONG = Message(
    "WM324",
    "the entry is too long to be kept",
    "It could not be read back later; nothing was written.",
    "Shorten its text, or keep the long text as a document among the media.",
)
MEDIA_MISSING = Message(
    "WM330",
    "a file that the record rests on is not there",
    "Entries refer to it as evidence, and it cannot be shown.",
    "Bring the file from the device that took it or from another copy, and add it again.",
)
MEDIA_ALTERED = Message(
    "WM331",
    "a file is not the one that was kept",
    "It was changed or damaged since, so it is no evidence any more.",
    "Bring the original from another copy and add it again; the altered file is then kept beside it.",
)
MEDIA_EXTRA = Message(
    "WM332",
    "a kept file is named by no entry",
    "It plays no part in the record.",
    "Record what it shows, or leave it.",
)
MEDIA_SOURCE = Message(
    "WM333",
    "the file to be added cannot be read",
    "It was not added; nothing else has changed.",
    "Check the path and that it is a file you may read.",
)
STRAY_FILE = Message(
    "WM334",
    "a file in the job folder is none of its parts",
    "It was not checked: it is neither the journal, nor the facts, nor kept media.",
    "Leave it, or move it away once you know what it is.",
)
NOT_A_HASH = Message(
    "WM335",
    "this is not the SHA-256 of a file",
    "Media are kept under 64 hexadecimal digits; nothing can lie under any other name.",
    "Use the hash as it was given when the file was kept.",
)
NO_FACTS = Message(
    "WM340",
    "the job folder holds no facts of the job",
    "Without job.toml no address, date or law is known.",
    "Restore job.toml from another copy, or make the job folder anew and bring in the entries.",
)
NO_JOURNAL = Message(
    "WM341",
    "the job folder holds no journal",
    "Nothing was recorded yet, or the journal was lost; which of the two cannot be told from here.",
    "If anything was recorded, restore journal.jsonl from another copy.",
)
PACK_DIFFERS = Message(
    "WM342",
    "a pack is not the one that was sealed",
    "The report was judged by other criteria, duties or words than the ones here.",
    "Use the version named in the seal to reproduce that report.",
)
PACK_NOT_HERE = Message(
    "WM343",
    "a pack that was sealed is not here",
    "What it held when the report was issued cannot be compared.",
    "Install the release or overlay that holds it.",
)
JOB_EXISTS = Message(
    "WM344",
    "there is something at this place already",
    "A new job would mix with what is there; nothing was changed.",
    "Choose another folder, or an empty one.",
)
NOT_A_DATABASE = Message(
    "WM350",
    "the file is not a journal database",
    "It holds something else or is damaged; nothing was changed in it.",
    "Check the path, or restore the file from another copy.",
)
NEWER_DATABASE = Message(
    "WM351",
    "the journal database was made by a newer release",
    "Its form is not known here, so it was neither read nor changed.",
    "Open it with that release or a newer one.",
)
DATABASE_FAILED = Message(
    "WM352",
    "the journal database could not do what was asked",
    "Nothing of this was kept; what was kept before is as it was.",
    "Check the drive and the detail, then do it again.",
)
