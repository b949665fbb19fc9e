"""The letter as a web page: one folder, or one file, that needs nothing from outside and no script to be read.

The script, where it runs, lets a reader choose findings and keep a repair list; it is this package's own, known to the
page's policy by its hash, and sends nothing anywhere.
"""

from __future__ import annotations

import base64
import hashlib
import re
import shutil
from collections.abc import Iterable
from functools import cache
from pathlib import Path

from jinja2 import Environment, PackageLoader, StrictUndefined, Template
from markupsafe import Markup

from witnessmark.problems import Problem, Refusal
from witnessmark.report.choices import choices_of
from witnessmark.report.contents import open_groups, other_pictures, sections_of, shutoff_pictures, tongue_of
from witnessmark.report.data import replace_file, report_bytes
from witnessmark.report.glyphs import FONTS
from witnessmark.report.letter import Evidence, Letter, Picture
from witnessmark.report.messages import CANNOT_WRITE
from witnessmark.report.pictures import Prepared, Progress, prepare

__all__ = ["PAGE", "write_html", "write_single"]

#: The page of the folder.
PAGE = "index.html"
#: Faces the page uses; the two for other scripts are taken only where a name needs them.
_FACES = (
    "Vollkorn-Regular.ttf", "Vollkorn-Italic.ttf", "Vollkorn-SemiBold.ttf", "Inter-Regular.otf",
    "Inter-SemiBold.otf", "NotoSansHebrew-Regular.ttf", "NotoSansArabic-Regular.ttf", "OFL.txt", "NOTICE",
)  # fmt: skip
#: Signs between which a face is needed at all.
_SCRIPTS = {"NotoSansHebrew-Regular.ttf": ("\u0590", "\u05ff"), "NotoSansArabic-Regular.ttf": ("\u0600", "\u06ff")}
_FACE = re.compile(r'url\("fonts/(?P<name>[^"]+)"\)')
_TEMPLATES = Path(__file__).with_name("templates")


def _inline(drawn: str) -> Markup:
    """A drawing as part of the page. Drawings are made by this package, which escapes the texts in them."""
    return Markup(drawn.replace(' xmlns="http://www.w3.org/2000/svg"', "", 1))  # noqa: S704 - see above


@cache
def _template() -> Template:
    environment = Environment(
        loader=PackageLoader("witnessmark.report"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
    )
    environment.filters["svg"] = _inline
    return environment.get_template("letter.html")


@cache
def _own(name: str) -> str:
    """A file of this package that goes into the page whole."""
    return (_TEMPLATES / name).read_text(encoding="utf-8")


def _digest(text: str) -> str:
    """The SHA-256 by which the content security policy knows a text of ours; what differs is not run or used."""
    return base64.b64encode(hashlib.sha256(text.encode("utf-8")).digest()).decode("ascii")


def _embedded(path: Path, mime: str) -> str:
    """The file as a data address (RFC 2397)."""
    return f"data:{mime};base64,{base64.b64encode(path.read_bytes()).decode('ascii')}"


def _needs(letter: Letter, name: str) -> bool:
    """Whether the page needs a face: those of other scripts only where a text of the letter is written in one."""
    first, last = _SCRIPTS.get(name, ("", ""))
    return not first or any(first <= sign <= last for sign in report_bytes(letter).decode("utf-8"))


def _with_faces(style: str, letter: Letter) -> str:
    """The style with its faces inside, so that the page needs no file beside it."""

    def face(match: re.Match[str]) -> str:
        name = match["name"]
        if not _needs(letter, name):
            return "local('none')"
        return f'url("{_embedded(FONTS / name, "font/" + name.rpartition(".")[2])}")'

    return _FACE.sub(face, style)


def _page(letter: Letter, prepared: Prepared, *, single: bool = False) -> str:
    evidence = {row.entry: row for row in letter.evidence}
    pictures = {picture.number: picture for picture in letter.pictures}

    def rows(entries: Iterable[str]) -> list[Evidence]:
        return sorted((evidence[entry] for entry in dict.fromkeys(entries)), key=lambda row: row.number)

    def shown(numbers: Iterable[int]) -> list[tuple[Picture, tuple[str, int, int] | None]]:
        return [(pictures[number], prepared.files.get(pictures[number].sha256)) for number in numbers]

    def source(file: tuple[str, int, int]) -> str:
        return _embedded(prepared.folder / file[0], "image/jpeg") if single else f"pictures/{file[0]}"

    style = _with_faces(_own("letter.css"), letter) if single else _own("letter.css")
    script = _own("letter.js")
    return _template().render(
        letter=letter,
        sections=sections_of(letter),
        t=tongue_of(letter).say,
        open_groups=open_groups(letter),
        rows=rows,
        shown=shown,
        findings={finding.number: finding for finding in letter.findings},
        shutoff_pictures=shutoff_pictures(letter),
        other_pictures=other_pictures(letter),
        choices=choices_of(letter),
        # Style and script are this package's own files, never user text.
        style=Markup(style),  # noqa: S704 - see above
        style_hash=_digest(style),
        script=Markup(script),  # noqa: S704 - see above
        script_hash=_digest(script),
        single=single,
        source=source,
    )


def _copy_faces(folder: Path) -> None:
    try:
        folder.mkdir(parents=True, exist_ok=True)
        for name in _FACES:
            shutil.copyfile(FONTS / name, folder / name)
    except OSError as error:
        raise Refusal(CANNOT_WRITE.at(str(folder), str(error))) from error


def write_html(
    letter: Letter,
    folder: Path,
    *,
    prepared: Prepared | None = None,
    progress: Progress | None = None,
) -> tuple[Problem, ...]:
    """Write ``index.html`` with ``pictures/``, ``fonts/`` and ``report.json`` beside it.

    Pictures are made ready in ``folder/pictures`` unless *prepared* there before. Returns what could not be shown.
    Refused (WM809) when the folder does not take the files.
    """
    home = folder / "pictures"
    if prepared is None or prepared.folder.resolve() != home.resolve():
        prepared = prepare(letter, home, progress=progress)
    _copy_faces(folder / "fonts")
    replace_file(folder / "report.json", report_bytes(letter))
    replace_file(folder / PAGE, _page(letter, prepared).encode("utf-8"))
    return prepared.problems


def write_single(
    letter: Letter, path: Path, *, prepared: Prepared, progress: Progress | None = None
) -> tuple[Problem, ...]:
    """Write the page as one file with style, faces and pictures inside: to send or to keep where folders get lost.

    *prepared* are the pictures made ready before (``prepare``). Refused (WM809) when the place does not take the file.
    """
    if progress is not None:
        progress(0, 1)
    try:
        page = _page(letter, prepared, single=True).encode("utf-8")
    except OSError as error:
        raise Refusal(CANNOT_WRITE.at(str(path), str(error))) from error
    replace_file(path, page)
    if progress is not None:
        progress(1, 1)
    return prepared.problems
