"""The journal: what was recorded, by whom and when, so that nothing can be lost or changed unseen.

Answers: what does this line say (``codec``), is the record whole (``chain``, ``merge``, ``seal``), and what now holds
(``fold``). The acts and the entry are in ``acts`` and ``entry``; what the journal needs from outside is in ``ports``.
"""

from witnessmark.journal.acts import (
    ACTS,
    BODIES,
    Absent,
    Accepted,
    Amended,
    Arrived,
    Body,
    Count,
    Doubted,
    Dropped,
    Found,
    Head,
    Identified,
    Left,
    Listed,
    PackUsed,
    Placed,
    Ran,
    Read,
    Saw,
    Sealed,
    Settled,
    Skipped,
    Stopped,
    Took,
)
from witnessmark.journal.canonical import encode
from witnessmark.journal.chain import check_chains
from witnessmark.journal.codec import (
    from_line,
    from_plain,
    hash_of,
    problems_of_unread,
    to_line,
    to_plain,
    with_hash,
)
from witnessmark.journal.entry import NO_PREVIOUS, SOURCES, Entry, Source, Unread
from witnessmark.journal.fold import Conflict, Dismissal, Fact, Record, fold, problems_of
from witnessmark.journal.identity import Ids, is_id, is_uuid, new_id
from witnessmark.journal.job import Alteration, Job
from witnessmark.journal.job_codec import facts_hash, job_from_toml, job_to_toml
from witnessmark.journal.lines import read_lines, write_lines
from witnessmark.journal.merge import merge
from witnessmark.journal.moment import instant, text_of
from witnessmark.journal.pen import Pen
from witnessmark.journal.ports import JournalStore, MediaStore, Signer
from witnessmark.journal.seal import check_seal, message_of, root_of, seal
from witnessmark.journal.vocabulary import check_words, misused_words

__all__ = [
    "ACTS",
    "BODIES",
    "NO_PREVIOUS",
    "SOURCES",
    "Absent",
    "Accepted",
    "Alteration",
    "Amended",
    "Arrived",
    "Body",
    "Conflict",
    "Count",
    "Dismissal",
    "Doubted",
    "Dropped",
    "Entry",
    "Fact",
    "Found",
    "Head",
    "Identified",
    "Ids",
    "Job",
    "JournalStore",
    "Left",
    "Listed",
    "MediaStore",
    "PackUsed",
    "Pen",
    "Placed",
    "Ran",
    "Read",
    "Record",
    "Saw",
    "Sealed",
    "Settled",
    "Signer",
    "Skipped",
    "Source",
    "Stopped",
    "Took",
    "Unread",
    "check_chains",
    "check_seal",
    "check_words",
    "encode",
    "facts_hash",
    "fold",
    "from_line",
    "from_plain",
    "hash_of",
    "instant",
    "is_id",
    "is_uuid",
    "job_from_toml",
    "job_to_toml",
    "merge",
    "message_of",
    "misused_words",
    "new_id",
    "problems_of",
    "problems_of_unread",
    "read_lines",
    "root_of",
    "seal",
    "text_of",
    "to_line",
    "to_plain",
    "with_hash",
    "write_lines",
]  # fmt: skip
