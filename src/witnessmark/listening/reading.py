"""Which file is this, and what timed lines does it hold? Decided by content, never by the name's suffix."""

from __future__ import annotations

from itertools import pairwise
from pathlib import Path

from witnessmark.listening.captions import RawLine, cues, is_cues, is_json_lines, json_lines, plain_lines
from witnessmark.listening.messages import (
    AUDIO,
    BACKWARD,
    EMPTY,
    NO_LINES,
    NOT_A_FILE,
    NOT_TEXT,
    OTHER_ENCODING,
    OVERLAP,
    TOO_LARGE,
    UNREADABLE,
)  # fmt: skip
from witnessmark.listening.narration import Line, Narration
from witnessmark.problems import Problem, Refusal

__all__ = ["LARGEST", "read_narration"]

#: Bytes; a day of speech as JSON lines is under 2 MB.
LARGEST = 50_000_000

#: How long a last line without an end is taken to last, by its words (seconds a word).
_A_WORD = 0.4
#: Lines that overlap by less than this are rounding, not two voices (seconds).
_SLACK = 0.05

#: Bytes below this are controls; text has few of them.
_PRINTING = 32

_SOUND: tuple[tuple[int, bytes, str], ...] = (
    (8, b"WAVE", "WAV"),
    (0, b"ID3", "MP3"),
    (0, b"\xff\xfb", "MP3"),
    (0, b"\xff\xf3", "MP3"),
    (0, b"\xff\xf2", "MP3"),
    (0, b"\xff\xf1", "AAC"),
    (0, b"\xff\xf9", "AAC"),
    (4, b"ftyp", "MP4"),
    (0, b"OggS", "Ogg"),
    (0, b"fLaC", "FLAC"),
    (0, b"\x1aE\xdf\xa3", "WebM"),
)


def read_narration(source: Path | str | bytes, name: str | None = None) -> Narration:
    """Read a timed narration from a path or from bytes; *name* stands in messages, the file's own when left out.

    WebVTT, SRT, JSON lines and plain lines that begin with a time are read. Lines come back in the order of their
    times; what was odd about the file stands in ``problems``. A file that is not UTF-8 is read as Windows-1252 with
    a problem (WM606) that names the first byte.

    Raises:
        Refusal: sound (WM601), empty (WM602), not a file (WM603), over ``LARGEST`` bytes (WM604), not text (WM605),
            no timed line at all (WM607), not readable (WM612).
    """
    if name is None:
        name = "narration" if isinstance(source, bytes) else Path(source).name or str(source)
    data = source if isinstance(source, bytes) else _contents(Path(source), name)
    if len(data) > LARGEST:
        raise Refusal(TOO_LARGE.at(name, f"{len(data):,} bytes, limit {LARGEST:,}"))
    for offset, magic, sort in _SOUND:
        if data[offset : offset + len(magic)] == magic and (sort != "WAV" or data[:4] in {b"RIFF", b"RF64"}):
            raise Refusal(AUDIO.at(name, f"{sort} by its first bytes"))
    text, problems = _decoded(data, name)
    if not text.strip():
        raise Refusal(EMPTY.at(name))
    if is_cues(text):
        raw, more = cues(text, name)
    elif is_json_lines(text):
        raw, more = json_lines(text, name)
    else:
        raw, more = plain_lines(text, name)
    problems += more
    if not raw:
        raise Refusal(NO_LINES.at(name), *problems[:3])
    return Narration(name, *_ordered(raw, name, problems))


def _contents(path: Path, name: str) -> bytes:
    try:
        if path.is_dir():
            raise Refusal(NOT_A_FILE.at(name, "it is a folder"))
        if path.exists() and not path.is_file():
            raise Refusal(NOT_A_FILE.at(name))
        size = path.stat().st_size
        if size > LARGEST:
            raise Refusal(TOO_LARGE.at(name, f"{size:,} bytes, limit {LARGEST:,}"))
        return path.read_bytes()
    except (OSError, ValueError) as error:
        raise Refusal(UNREADABLE.at(name, str(error))) from error


def _decoded(data: bytes, name: str) -> tuple[str, list[Problem]]:
    if data[:2] in {b"\xff\xfe", b"\xfe\xff"}:
        try:
            return data.decode("utf-16"), []
        except UnicodeDecodeError as error:
            raise Refusal(NOT_TEXT.at(name, f"byte {error.start}: begins like UTF-16 but is not")) from error
    zero = data.find(b"\0")
    if zero >= 0:
        raise Refusal(NOT_TEXT.at(name, f"byte {zero} is zero"))
    problems: list[Problem] = []
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        odd = sum(b < _PRINTING and b not in b"\t\n\r\f" for b in data[:4096])
        if odd > len(data[:4096]) // 100:
            raise Refusal(NOT_TEXT.at(name, f"byte {error.start}, line {line}")) from error
        text = data.decode("cp1252", errors="replace")
        where = f"byte {error.start} ({data[error.start]:#04x}), line {line}"
        problems.append(OTHER_ENCODING.at(name, where))
    return text, problems


def _ordered(raw: list[RawLine], name: str, problems: list[Problem]) -> tuple[tuple[Line, ...], tuple[Problem, ...]]:
    back = [b for a, b in pairwise(raw) if b.start < a.start]
    problems += [
        BACKWARD.at(f"{name}, line {line.at}", f"{line.start:g} s; {len(back)} such lines") for line in back[:3]
    ]
    ordered = sorted(raw, key=lambda line: line.start)
    lines: list[Line] = []
    overlaps: list[RawLine] = []
    for line, following in zip(ordered, [*ordered[1:], None], strict=True):
        given = line.end is not None and line.end >= line.start
        if given and line.end is not None:
            end = line.end
            if following is not None and end > following.start + _SLACK:
                overlaps.append(following)
        elif following is not None:
            end = following.start
        else:
            end = round(line.start + _A_WORD * len(line.text.split()), 3)
        lines.append(Line(line.start, end, line.text, given))
    problems += [
        OVERLAP.at(f"{name}, line {line.at}", f"{line.start:g} s; {len(overlaps)} such lines") for line in overlaps[:3]
    ]
    return tuple(lines), tuple(problems)
