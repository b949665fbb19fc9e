"""The letter as a PDF for keeping (PDF/A-3a) and for screen readers (PDF/UA-1), with ``report.json`` attached.

The pages are laid out with stand-ins for pictures, in a thread beside the preparing of pictures where both are to be done.
"""

from __future__ import annotations

import tempfile
from concurrent.futures import Future, ThreadPoolExecutor
from dataclasses import dataclass
from pathlib import Path

from witnessmark.problems import Problem, Refusal
from witnessmark.report.data import replace_file
from witnessmark.report.letter import Letter
from witnessmark.report.messages import NO_PDF, SIGNS_REPLACED
from witnessmark.report.offsets import SplicingError
from witnessmark.report.pictures import Look, Prepared, Progress, foreseen, look_at, prepare
from witnessmark.report.splicing import splice
from witnessmark.report.typesetting import STANDARDS, Typeset, TypesettingError, typeset

__all__ = ["STANDARDS", "Begun", "begin_pdf", "write_pdf"]


@dataclass(frozen=True, slots=True)
class Begun:
    """Pages of a letter that are being laid out."""

    letter: Letter
    pages: Future[Typeset]


def begin_pdf(letter: Letter) -> Begun:
    """Begin to lay out the pages in a thread, by how the pictures will look; ``write_pdf`` takes them up."""
    alone = ThreadPoolExecutor(1, thread_name_prefix="pages")
    pages = alone.submit(lambda: typeset(letter, _foreseen(letter)))
    alone.shutdown(wait=False)
    return Begun(letter, pages)


def write_pdf(
    letter: Letter,
    path: Path,
    *,
    prepared: Prepared | None = None,
    begun: Begun | None = None,
    progress: Progress | None = None,
) -> tuple[Problem, ...]:
    """Write the PDF; the same letter gives the same bytes.

    Pictures are made ready in a folder of their own unless *prepared* before. Returns what could not be shown: signs
    that the fonts do not hold (WM804), pictures that could not be read (WM803). Refused when the typesetter fails
    (WM808) or the place does not take the file (WM809). A PDF of the very same letter that was signed since stays.

    Args:
        letter: what it says.
        path: where it goes.
        prepared: pictures made ready before.
        begun: pages that are being laid out already (``begin_pdf``); those of another letter are not used.
        progress: told how many pictures are ready.
    """
    if prepared is None:
        begun = begun or begin_pdf(letter)
        with tempfile.TemporaryDirectory(prefix="witnessmark-") as name:
            prepared = prepare(letter, Path(name), progress=progress)
            return write_pdf(letter, path, prepared=prepared, begun=begun)
    looks = {sha256: look_at(prepared.folder / file) for sha256, (file, _, _) in prepared.files.items()}
    try:
        pages = begun.pages.result() if begun and begun.letter == letter else typeset(letter, looks)
        if pages.looks != looks:
            pages = typeset(letter, looks)  # a picture turned out otherwise than its first bytes promised
        whole = _whole(letter, pages, prepared)
    except TypesettingError as error:
        raise Refusal(NO_PDF.at(str(path), str(error))) from error
    problems = list(prepared.problems)
    if pages.replaced:
        shown = " ".join(f"U+{ord(sign):04X}" for sign in pages.replaced[:12])
        problems.append(SIGNS_REPLACED.at(str(path), f"{len(pages.replaced)} signs: {shown}"))
    problems += [NO_PDF.at(str(path), warning) for warning in pages.warnings]
    if not _is_signed(path, whole):
        replace_file(path, whole)
    return tuple(problems)


def _foreseen(letter: Letter) -> dict[str, Look]:
    looks = {picture.sha256: foreseen(picture.path) for picture in letter.pictures}
    return {sha256: look for sha256, look in looks.items() if look is not None}


def _whole(letter: Letter, pages: Typeset, prepared: Prepared) -> bytes:
    """The finished file: pages with their pictures."""
    files = prepared.files

    def picture(sha256: str) -> tuple[bytes, int, int]:
        name, width, height = files[sha256]
        return (prepared.folder / name).read_bytes(), width, height

    try:
        whole = splice(pages.pdf, picture, set(pages.looks)) if pages.looks else pages.pdf
    except SplicingError:
        # Another release of the typesetter may build its files otherwise: slower, and as good.
        whole = typeset(letter, pages.looks, {sha256: prepared.folder / files[sha256][0] for sha256 in files}).pdf
    # A signature is appended after this file: it must begin on a line of its own (ISO 19005-3, 6.1.9).
    return whole if whole.endswith(b"\n") else whole + b"\n"


def _is_signed(path: Path, whole: bytes) -> bool:
    """Whether this very PDF stands there already and was signed or stamped since: then it stays as it is."""
    if not path.is_file() or path.stat().st_size <= len(whole):
        return False
    from witnessmark.report.signing import signature_stays  # slow to import, and seldom needed

    return signature_stays(path, whole)
