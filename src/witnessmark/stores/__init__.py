"""Where are a job's entries, media and facts kept, and are they still what was kept?"""

from witnessmark.stores.filesystem import FileSystem, RealFileSystem
from witnessmark.stores.folder import FolderJournal
from witnessmark.stores.job_file import FACTS, new_job_folder, read_facts, read_job, write_job
from witnessmark.stores.journal_file import JOURNAL
from witnessmark.stores.media import MEDIA, LocalMedia
from witnessmark.stores.memory import MemoryJournal, MemoryMedia
from witnessmark.stores.recording import record
from witnessmark.stores.sqlite import SqliteJournal
from witnessmark.stores.verify import Verification, verify_folder

__all__ = [
    "FACTS",
    "JOURNAL",
    "MEDIA",
    "FileSystem",
    "FolderJournal",
    "LocalMedia",
    "MemoryJournal",
    "MemoryMedia",
    "RealFileSystem",
    "SqliteJournal",
    "Verification",
    "new_job_folder",
    "read_facts",
    "read_job",
    "record",
    "verify_folder",
    "write_job",
]
