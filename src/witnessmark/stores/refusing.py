"""Which numbered refusal an error of the operating system stands for."""

from __future__ import annotations

import errno
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from witnessmark.problems import Message, Problem, Refusal
from witnessmark.stores import messages

__all__ = ["read_problem", "reading", "write_problem", "writing"]

_FULL = {errno.ENOSPC, errno.EDQUOT, errno.EFBIG}
_FORBIDDEN = {errno.EACCES, errno.EPERM, errno.EROFS}
_NO_LOCKS = {errno.ENOLCK, errno.EOPNOTSUPP, errno.ENOSYS}


def write_problem(error: OSError, where: Path) -> Problem:
    """What a failed write means to a person."""
    message = messages.CANNOT_WRITE
    if isinstance(error, TimeoutError):
        message = messages.BUSY
    elif error.errno in _FULL:
        message = messages.DISK_FULL
    elif error.errno in _FORBIDDEN:
        message = messages.NO_PERMISSION
    elif error.errno in _NO_LOCKS:
        message = messages.NO_LOCK
    elif isinstance(error, IsADirectoryError):
        message = messages.NOT_A_FILE
    elif isinstance(error, FileNotFoundError | NotADirectoryError):
        message = messages.NO_FOLDER
    return message.at(str(where), _facts(error))


def read_problem(error: OSError, where: Path, missing: Message = messages.CANNOT_READ) -> Problem:
    """What a failed read means to a person; *missing* is said of a file that is not there."""
    if isinstance(error, FileNotFoundError | NotADirectoryError):
        return missing.at(str(where))
    if isinstance(error, IsADirectoryError):
        return messages.NOT_A_FILE.at(str(where))
    if isinstance(error, TimeoutError):
        return messages.BUSY.at(str(where), _facts(error))
    return messages.CANNOT_READ.at(str(where), _facts(error))


@contextmanager
def writing(where: Path) -> Iterator[None]:
    """Turn an ``OSError`` into the ``Refusal`` of a write to *where*."""
    try:
        yield
    except OSError as error:
        raise Refusal(write_problem(error, where)) from error


@contextmanager
def reading(where: Path, missing: Message = messages.CANNOT_READ) -> Iterator[None]:
    """Turn an ``OSError`` into the ``Refusal`` of a read from *where*."""
    try:
        yield
    except OSError as error:
        raise Refusal(read_problem(error, where, missing)) from error


def _facts(error: OSError) -> str:
    return error.strerror or str(error)
