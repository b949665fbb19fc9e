"""What the typesetter is given, and what it gives back: the letter as a data file, laid out as pages.

Nothing a user wrote is ever read as its language. Every picture is a stand-in of one pixel (``splicing`` says why), so that
the pages can be laid out while the pictures are still being made ready.
"""

from __future__ import annotations

import json
import re
import shutil
import tempfile
from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import accumulate, pairwise
from pathlib import Path
from typing import Final, Literal

import typst

from witnessmark.report.contents import language_of, open_groups, other_pictures, sections_of, shutoff_pictures
from witnessmark.report.data import plain, report_bytes
from witnessmark.report.glyphs import FONTS, fitting
from witnessmark.report.letter import Letter
from witnessmark.report.linking import Place, led
from witnessmark.report.offsets import SplicingError
from witnessmark.report.pictures import Look
from witnessmark.report.printable import change_texts
from witnessmark.report.splicing import stand_in
from witnessmark.report.tongue import words_of

__all__ = ["STANDARDS", "Typeset", "TypesettingError", "typeset"]


class TypesettingError(ValueError):
    """The typesetter could not make the pages."""


@dataclass(frozen=True, slots=True)
class Typeset:
    """The pages: ``pdf`` with a stand-in for every picture of ``looks``; signs replaced; what the typesetter warned of."""

    pdf: bytes
    looks: Mapping[str, Look]
    replaced: tuple[str, ...]
    warnings: tuple[str, ...]


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


@lru_cache(maxsize=1 << 14)  # a preview asks for the same texts again
def _fit(text: str) -> tuple[str, tuple[str, ...]]:
    fit, missing = fitting(text)
    return _breakable(fit), missing


def _fitted(letter: Letter) -> tuple[Letter, list[str]]:
    """The letter in signs that the fonts hold, and the signs replaced."""
    lost: dict[str, None] = {}

    def change(text: str) -> str:
        fit, missing = _fit(text)
        if missing:
            lost.update(dict.fromkeys(missing))
        return fit

    def drawn(text: str) -> str:
        fit, missing = fitting(text)
        lost.update(dict.fromkeys(missing))
        return fit  # no break may fall into the lines of a drawing

    fitted = change_texts(replace(letter, problems=(), drawings=()), change)
    return replace(fitted, drawings=change_texts(letter.drawings, drawn)), list(lost)


def _data(letter: Letter, looks: Mapping[str, Look], *, linked: bool, ends: Mapping[str, tuple[int, int]]) -> bytes:
    """What the template reads: the letter, with numbers of entries and pictures resolved."""
    issued = letter.opening.issued_at
    files = {
        str(picture.number): {
            "file": f"pictures/{picture.sha256}.jpg",
            "within": ends.get(picture.sha256),
            "width": look.width,
            "height": look.height,
        }
        for picture in letter.pictures
        if (look := looks.get(picture.sha256))
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
        "linked": linked,
    }
    return json.dumps(body, ensure_ascii=False).encode("utf-8")


def typeset(letter: Letter, looks: Mapping[str, Look], files: Mapping[str, Path] | None = None) -> Typeset:
    """Lay out the letter; *looks* by SHA-256 are the pictures it shows, all others are told in words.

    With *files* the pictures themselves and links are laid in, and nothing has to be put in afterwards.

    Raises:
        TypesettingError: in the typesetter's own words.
    """
    fitted, lost = _fitted(letter)
    with tempfile.TemporaryDirectory(prefix="witnessmark-") as name:
        work = Path(name)
        (work / "pictures").mkdir()
        for sha256, path in (files or {}).items():
            shutil.copyfile(path, work / "pictures" / f"{sha256}.jpg")
        shutil.copyfile(_TEMPLATE, work / _TEMPLATE.name)
        (work / "report.json").write_bytes(report_bytes(letter))
        pdf, warnings = _laid_out(work, fitted, looks, whole=files is not None)
    return Typeset(pdf, {} if files else looks, tuple(lost), tuple(warnings))


def _laid_out(
    work: Path, letter: Letter, looks: Mapping[str, Look], *, whole: bool, linked: bool = False
) -> tuple[bytes, list[str]]:
    """With the pictures themselves (*whole*) or stand-ins, all in one file; and with links that the typesetter leads."""
    linked = linked or whole
    held = {} if whole else {sha256: stand_in(sha256, look) for sha256, look in looks.items()}
    ends = dict(zip(held, pairwise(accumulate(map(len, held.values()), initial=0)), strict=True))
    (work / "stand-ins").write_bytes(b"".join(held.values()))
    (work / "letter.json").write_bytes(_data(letter, looks, linked=linked, ends=ends))
    pdf, warnings, places = _compile(work, placed=not linked)
    if linked:
        return pdf, warnings
    called = {"e": "Entry", "f": "Finding", "p": "Picture"}
    words = words_of(language_of(letter))
    called = {sort: words.get(english, english) for sort, english in called.items()}
    try:
        return led(pdf, places, lambda name: f"{called[name[0]]} {name[1:]}"), warnings
    except SplicingError:
        # Another release of the typesetter may build its files otherwise: slower, and as good.
        return _laid_out(work, letter, looks, whole=whole, linked=True)


def _compile(work: Path, *, placed: bool) -> tuple[bytes, list[str], dict[str, Place]]:
    try:
        compiler = typst.Compiler(
            input=str(work / _TEMPLATE.name), root=str(work), font_paths=[str(FONTS)], ignore_system_fonts=True
        )
        data, warnings = compiler.compile_with_warnings(format="pdf", pdf_standards=list(STANDARDS))
        # It remembers the pages, so that asking for the places of names costs next to nothing.
        found = json.loads(compiler.query("<places>", field="value", one=True)) if placed else []
    except RuntimeError as error:
        raise TypesettingError(str(error)) from error
    if not isinstance(data, bytes):
        raise TypesettingError(f"the typesetter gave {type(data).__name__}, not the bytes of one PDF")
    return data, [str(warning) for warning in warnings], {name: Place(*where) for name, *where in found}
