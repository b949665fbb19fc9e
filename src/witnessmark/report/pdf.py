"""The letter as a PDF for keeping (PDF/A-3a) and for screen readers (PDF/UA-1), with ``report.json`` attached.

The typesetter gets the letter as a data file; nothing a user wrote is ever read as its language.
"""

from __future__ import annotations

import json
import os
import re
import shutil
import tempfile
from dataclasses import replace
from pathlib import Path
from typing import Final, Literal

import typst

from witnessmark.problems import Problem, Refusal
from witnessmark.report.contents import language_of, open_groups, other_pictures, sections_of, shutoff_pictures
from witnessmark.report.data import plain, replace_file, report_bytes
from witnessmark.report.glyphs import FONTS, fitting
from witnessmark.report.letter import Letter
from witnessmark.report.messages import NO_PDF, SIGNS_REPLACED
from witnessmark.report.pictures import Prepared, Progress, prepare
from witnessmark.report.printable import change_texts
from witnessmark.report.tongue import words_of

__all__ = ["STANDARDS", "write_pdf"]

#: PDF/A-3a (ISO 19005-3) and PDF/UA-1 (ISO 14289-1), both in one file.
STANDARDS: Final[list[Literal["a-3a", "ua-1"]]] = ["a-3a", "ua-1"]
_TEMPLATE = Path(__file__).with_name("templates") / "letter.typ"
#: Words longer than this may be broken anywhere: no column is narrower.
_LONG = 24
_LONG_WORD = re.compile(rf"[^\s\u200b]{{{_LONG + 1},}}")
_ID = re.compile(r"[0-9a-fA-F-]{32,128}")
_PIECE = re.compile(r".{1,12}", re.DOTALL)


def _breakable(text: str) -> str:
    """Zero-width spaces in very long words, so that no line runs out of its column."""
    if _ID.fullmatch(text):
        return text  # an id or a hash by itself: the template sees to its line
    return _LONG_WORD.sub(lambda word: "\u200b".join(_PIECE.findall(word.group())), text)


def _fitted(letter: Letter) -> tuple[Letter, list[str]]:
    """The letter in signs that the fonts hold, and the signs replaced."""
    lost: dict[str, None] = {}

    def change(text: str) -> str:
        fit, missing = fitting(text)
        lost.update(dict.fromkeys(missing))
        return _breakable(fit)

    def drawn(text: str) -> str:
        fit, missing = fitting(text)
        lost.update(dict.fromkeys(missing))
        return fit  # no break may fall into the lines of a drawing

    fitted = change_texts(replace(letter, problems=(), drawings=()), change)
    return replace(fitted, drawings=change_texts(letter.drawings, drawn)), list(lost)


def _data(letter: Letter, prepared: Prepared, issued: str) -> bytes:
    """What the template reads: the letter, with numbers of entries and files of pictures resolved."""
    files = {
        str(picture.number): {"file": f"pictures/{file[0]}", "width": file[1], "height": file[2]}
        for picture in letter.pictures
        if (file := prepared.files.get(picture.sha256))
    }
    body = {
        "letter": plain(replace(letter, problems=())),
        "numbers": letter.numbers,
        "sections": sections_of(letter),
        "open_groups": plain(open_groups(letter)),
        "words": words_of(language_of(letter)),
        "files": files,
        "shutoff_pictures": list(shutoff_pictures(letter)),
        "other_pictures": list(other_pictures(letter)),
        "issued": [int(part) for part in issued[:10].split("-")],
    }
    return json.dumps(body, ensure_ascii=False).encode("utf-8")


def _lay(source: Path, target: Path) -> None:
    """The file under another name: linked where the disk allows it, else copied."""
    try:
        os.link(source, target)
    except OSError:
        shutil.copyfile(source, target)


def _compile(work: Path) -> tuple[bytes, list[str]]:
    compiler = typst.Compiler(
        input=str(work / _TEMPLATE.name), root=str(work), font_paths=[str(FONTS)], ignore_system_fonts=True
    )
    data, warnings = compiler.compile_with_warnings(format="pdf", pdf_standards=list(STANDARDS))
    if not isinstance(data, bytes):
        raise TypeError(f"the typesetter gave {type(data).__name__}, not the bytes of one PDF")
    return data, [str(warning) for warning in warnings]


def write_pdf(
    letter: Letter,
    path: Path,
    *,
    prepared: Prepared | None = None,
    progress: Progress | None = None,
) -> tuple[Problem, ...]:
    """Write the PDF; the same letter gives the same bytes.

    Pictures are made ready in a folder of their own unless *prepared* before. Returns what could not be shown: signs
    that the fonts do not hold (WM804), pictures that could not be read (WM803). Refused when the typesetter fails
    (WM808) or the place does not take the file (WM809).
    """
    fitted, lost = _fitted(letter)
    with tempfile.TemporaryDirectory(prefix="witnessmark-") as name:
        work = Path(name)
        if prepared is None:
            prepared = prepare(letter, work / "prepared", progress=progress)
        (work / "pictures").mkdir()
        for file, _, _ in prepared.files.values():
            _lay(prepared.folder / file, work / "pictures" / file)
        shutil.copyfile(_TEMPLATE, work / _TEMPLATE.name)
        (work / "letter.json").write_bytes(_data(fitted, prepared, letter.opening.issued_at))
        (work / "report.json").write_bytes(report_bytes(letter))
        try:
            data, warnings = _compile(work)
        except (RuntimeError, TypeError) as error:
            raise Refusal(NO_PDF.at(str(path), str(error))) from error
    problems = list(prepared.problems)
    if lost:
        shown = " ".join(f"U+{ord(sign):04X}" for sign in lost[:12])
        problems.append(SIGNS_REPLACED.at(str(path), f"{len(lost)} signs: {shown}"))
    problems += [NO_PDF.at(str(path), warning) for warning in warnings]
    # A signature is appended after this file: it must begin on a line of its own (ISO 19005-3, 6.1.9).
    whole = data if data.endswith(b"\n") else data + b"\n"
    if not _is_signed(path, whole):
        replace_file(path, whole)
    return tuple(problems)


def _is_signed(path: Path, whole: bytes) -> bool:
    """Whether this very PDF stands there already and was signed or stamped since: then it stays as it is."""
    if not path.is_file() or path.stat().st_size <= len(whole):
        return False
    from witnessmark.report.signing import signature_stays  # slow to import, and seldom needed

    return signature_stays(path, whole)
