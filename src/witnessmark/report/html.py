"""The letter as a web page: one folder that needs nothing from outside, and no script to be read."""

from __future__ import annotations

import base64
import hashlib
import shutil
from collections.abc import Iterable
from functools import cache
from pathlib import Path

from jinja2 import Environment, PackageLoader, StrictUndefined, Template
from markupsafe import Markup

from witnessmark.problems import Problem, Refusal
from witnessmark.report.contents import SECTIONS, open_groups, other_pictures, shutoff_pictures
from witnessmark.report.data import replace_file, report_bytes
from witnessmark.report.glyphs import FONTS
from witnessmark.report.letter import Evidence, Letter, Picture
from witnessmark.report.messages import CANNOT_WRITE
from witnessmark.report.pictures import Prepared, Progress, prepare

__all__ = ["PAGE", "write_html"]

#: The page of the folder.
PAGE = "index.html"
#: Faces the page uses; the two for other scripts are taken only where a name needs them.
_FACES = (
    "Vollkorn-Regular.ttf", "Vollkorn-Italic.ttf", "Vollkorn-SemiBold.ttf", "Inter-Regular.otf",
    "Inter-SemiBold.otf", "NotoSansHebrew-Regular.ttf", "NotoSansArabic-Regular.ttf", "OFL.txt", "NOTICE",
)  # fmt: skip
_TEMPLATES = Path(__file__).with_name("templates")


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
    return environment.get_template("letter.html")


@cache
def _style() -> str:
    return (_TEMPLATES / "letter.css").read_text(encoding="utf-8")


def _page(letter: Letter, prepared: Prepared) -> str:
    evidence = {row.entry: row for row in letter.evidence}
    pictures = {picture.number: picture for picture in letter.pictures}

    def rows(entries: Iterable[str]) -> list[Evidence]:
        return sorted((evidence[entry] for entry in dict.fromkeys(entries)), key=lambda row: row.number)

    def shown(numbers: Iterable[int]) -> list[tuple[Picture, tuple[str, int, int] | None]]:
        return [(pictures[number], prepared.files.get(pictures[number].sha256)) for number in numbers]

    style = _style()
    digest = base64.b64encode(hashlib.sha256(style.encode("utf-8")).digest()).decode("ascii")
    return _template().render(
        letter=letter,
        sections=dict(SECTIONS),
        open_groups=open_groups(letter),
        rows=rows,
        shown=shown,
        findings={finding.number: finding for finding in letter.findings},
        shutoff_pictures=shutoff_pictures(letter),
        other_pictures=other_pictures(letter),
        # The style is this package's own file, never user text; it is hashed for the content security policy.
        style=Markup(style),  # noqa: S704 - see above
        style_hash=digest,
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
