"""The facts of a job in its folder: ``job.toml``, replaced in one step or not at all."""

from __future__ import annotations

from contextlib import suppress
from pathlib import Path
from typing import Final
from uuid import uuid4

from witnessmark.journal.job import Job
from witnessmark.journal.job_codec import job_from_toml, job_to_toml
from witnessmark.problems import Refusal
from witnessmark.stores import messages
from witnessmark.stores.filesystem import FileSystem, RealFileSystem
from witnessmark.stores.journal_file import require_folder
from witnessmark.stores.refusing import reading, writing

__all__ = ["FACTS", "new_job_folder", "read_facts", "read_job", "write_job"]

FACTS: Final = "job.toml"
_INCOMING: Final = ".job.toml."


def read_facts(folder: Path) -> bytes:
    """The bytes of ``job.toml``, whose hash a seal covers. Raises ``Refusal`` (WM301 to WM303, WM340)."""
    require_folder(folder)
    with reading(folder / FACTS, messages.NO_FACTS):
        return (folder / FACTS).read_bytes()


def read_job(folder: Path) -> Job:
    """The facts of the job. Raises ``Refusal`` as ``read_facts``, or WM250 to WM252 when they cannot be understood."""
    return job_from_toml(read_facts(folder), str(folder / FACTS))


def write_job(folder: Path, job: Job, files: FileSystem | None = None) -> None:
    """Keep the facts in the folder, which exists, in place of any before.

    Raises:
        Refusal: a fact could not be read back (WM252), or the drive refuses (WM304 to WM306). ``job.toml`` is then
            as it was; only if the drive refused the very last step, to sync the folder, it may hold the new facts.
    """
    data = job_to_toml(job)
    require_folder(folder)
    files = RealFileSystem() if files is None else files
    target, incoming = folder / FACTS, folder / f"{_INCOMING}{uuid4().hex}"
    with writing(target):
        try:
            files.write(incoming, [data])
            files.sync(incoming)
            files.rename(incoming, target)
        except OSError:
            with suppress(OSError):  # a file that stays does no harm
                if incoming.exists():
                    files.remove(incoming)
            raise
        files.sync_folder(folder)


def new_job_folder(folder: Path, job: Job, files: FileSystem | None = None) -> None:
    """Make a job folder that holds the facts and nothing else; the journal begins with its first entry.

    Raises:
        Refusal: something is there already (WM344), or as ``write_job``.
    """
    job_to_toml(job)
    files = RealFileSystem() if files is None else files
    if folder.exists() and not folder.is_dir():
        raise Refusal(messages.JOB_EXISTS.at(str(folder), "it is a file"))
    with reading(folder):
        there = [item.name for item in folder.iterdir()] if folder.exists() else []
    if strange := [name for name in there if not name.startswith(_INCOMING)]:
        raise Refusal(messages.JOB_EXISTS.at(str(folder), f"it holds {min(strange)}"))
    with writing(folder):
        for path in reversed([folder, *folder.parents]):
            if not path.exists():
                files.make_folder(path)
                files.sync_folder(path.parent)
    write_job(folder, job, files)
