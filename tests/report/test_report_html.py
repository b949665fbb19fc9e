"""The page: well formed, in order, reachable by keyboard and by ear, with nothing fetched and no script but our own."""

import base64
import hashlib
import re
from dataclasses import replace
from html.parser import HTMLParser
from itertools import pairwise
from pathlib import Path

import pytest

from report.small_visit import JOB, given, letter_of
from witnessmark.journal.acts import Found
from witnessmark.problems import Refusal
from witnessmark.report import Letter, write_html

VOID = {"meta", "link", "img", "br", "hr", "input"}
JS = Path(__file__).resolve().parents[2] / "src" / "witnessmark" / "report" / "templates" / "letter.js"
CSS = Path(__file__).resolve().parents[2] / "src" / "witnessmark" / "report" / "templates" / "letter.css"


class Page(HTMLParser):
    """Reads a page strictly: every element that opens must close, in order."""

    def __init__(self, text: str) -> None:
        super().__init__(convert_charrefs=True)
        self.open: list[str] = []
        self.tags: list[tuple[str, dict[str, str]]] = []
        self.text: list[str] = []
        self.headings: list[tuple[int, str]] = []
        self.feed(text)
        self.close()
        assert not self.open, f"left open: {self.open}"

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        names = [name for name, _ in attrs]
        assert len(names) == len(set(names)), f"an attribute twice on {tag}"
        self.tags.append((tag, {name: value or "" for name, value in attrs}))
        if tag not in VOID:
            self.open.append(tag)
        if re.fullmatch("h[1-6]", tag):
            self.headings.append((int(tag[1]), ""))

    def handle_endtag(self, tag: str) -> None:
        assert self.open, f"</{tag}> closes nothing"
        assert self.open[-1] == tag, f"</{tag}> closes {self.open[-1]}"
        self.open.pop()

    def handle_data(self, data: str) -> None:
        if not {"style", "script"} & set(self.open):
            self.text.append(data)
        if (self.open and re.fullmatch("h[1-6]", self.open[-1])) or ("bdi" in self.open[-1:] and "h1" in self.open):
            level, said = self.headings[-1]
            self.headings[-1] = (level, said + data)

    def all(self, tag: str) -> list[dict[str, str]]:
        return [attrs for name, attrs in self.tags if name == tag]

    @property
    def words(self) -> str:
        return " ".join("".join(self.text).split())


def page_of(letter: Letter, folder: Path) -> Page:
    write_html(letter, folder)
    return Page((folder / "index.html").read_text(encoding="utf-8"))


@pytest.fixture
def page(tmp_path: Path) -> Page:
    return page_of(letter_of(given(tmp_path / "media")), tmp_path / "out")


def test_language_title_landmarks_and_skip_link(page: Page) -> None:
    assert page.all("html") == [{"lang": "en-US"}]
    assert len(page.all("title")) == len(page.all("main")) == len(page.all("nav")) == len(page.all("h1")) == 1
    assert page.all("header")
    assert page.all("footer")
    first = page.all("a")[0]
    assert first == {"class": "skip", "href": "#letter"}
    assert page.all("main")[0]["id"] == "letter"


def test_headings_skip_no_level(page: Page) -> None:
    # Technique G141 of the W3C for Success Criterion 1.3.1 of WCAG 2.2: organize a page by headings, in order.
    levels = [level for level, _ in page.headings]
    assert levels[0] == 1
    assert all(later <= earlier + 1 for earlier, later in pairwise(levels))
    assert all(said.strip() for _, said in page.headings)


def test_the_parts_come_in_the_order_of_the_letter(page: Page) -> None:
    seconds = [said.strip() for level, said in page.headings if level == 2]
    assert seconds == [
        "In this letter", "What is still open", "What the law wants you to read", "What matters most",
        "The house at a glance", "Findings by place and by system", "What was inspected, and how",
        "What was not inspected, and why", "What was started, watched and put back", "Readings", "Pictures",
        "Terms and cautions", "The record, entry by entry", "The seal, and how to check it", "Your repair list",
    ]  # fmt: skip


def test_ids_are_unique_and_every_link_leads_somewhere(page: Page) -> None:
    ids = [attrs["id"] for _, attrs in page.tags if "id" in attrs]
    assert len(ids) == len(set(ids))
    for attrs in page.all("a"):
        assert attrs["href"].startswith("#")
        assert attrs["href"][1:] in ids
    for _, attrs in page.tags:
        for name in ("aria-labelledby",):
            assert attrs.get(name, ids[0]) in ids


def test_every_picture_has_words_size_and_a_file(page: Page, tmp_path: Path) -> None:
    pictures = page.all("img")
    assert len(pictures) == 3
    for attrs in pictures:
        assert len(attrs["alt"].split()) > 3
        assert attrs["width"].isdigit()
        assert attrs["height"].isdigit()
        assert (tmp_path / "out" / attrs["src"]).read_bytes().startswith(b"\xff\xd8")


def test_nothing_is_fetched_and_no_script_but_our_own_can_run(page: Page, tmp_path: Path) -> None:
    (policy,) = [attrs["content"] for attrs in page.all("meta") if attrs.get("http-equiv") == "Content-Security-Policy"]
    assert policy.startswith("default-src 'none'")
    own = base64.b64encode(hashlib.sha256(JS.read_bytes()).digest()).decode()
    assert re.findall(r"script-src ([^;]*);", policy) == [f"'sha256-{own}'"]
    assert "unsafe" not in policy
    assert len(page.all("script")) == 1
    text = (tmp_path / "out" / "index.html").read_text(encoding="utf-8")
    assert not re.search(r"https?:|//[a-z]", re.sub(r"<(style|script)>.*?</\1>", "", text, flags=re.DOTALL))
    assert not re.search(r"https?:|fetch|XMLHttp|sendBeacon|WebSocket|eval|innerHTML", JS.read_text(encoding="utf-8"))
    assert "http" not in CSS.read_text(encoding="utf-8")
    used = set(re.findall(r'url\("([^"]+)"\)', CSS.read_text(encoding="utf-8")))
    assert used
    assert all((tmp_path / "out" / url).is_file() for url in used)


@pytest.mark.parametrize(
    "evil",
    ["<script>alert(1)</script>", '"><img src=x onerror=alert(1)>', "{{ 7 * 7 }}", "</title><script>", "' onload='x"],
)
def test_what_a_user_wrote_stays_text(tmp_path: Path, evil: str) -> None:
    some = given(tmp_path / "media", job=replace(JOB, client=evil, address=evil, inspector=evil, firm=evil, note=evil))
    facts = tuple(
        replace(fact, body=replace(fact.body, title=evil, seen=evil, do=evil, by=evil, stake=evil))
        if isinstance(fact.body, Found)
        else fact
        for fact in some.record.facts
    )
    page = page_of(letter_of(replace(some, record=replace(some.record, facts=facts))), tmp_path / "out")
    assert len(page.all("script")) == 1, "our own, and no other"
    assert len(page.all("img")) == 3
    assert not [name for _, attrs in page.tags for name in attrs if name.startswith("on")]
    assert " ".join(evil.split()) in page.words


def test_draft_and_invented_are_on_every_page(page: Page) -> None:
    # The running line stays in sight on screen and is repeated on paper.
    assert page.words.count("Draft: not issued. Two things are open.") >= 3
    assert page.words.count("these people and these pictures do not exist") >= 2
    css = CSS.read_text(encoding="utf-8")
    assert re.search(r"\.running \{\s*position: sticky", css)
    assert re.search(r"@media print .*\.running \{ display: table-header-group", css, re.DOTALL)


def test_evidence_is_shown_with_time_device_and_words(page: Page) -> None:
    assert "there's a drip right at the nut" in page.words
    assert "phone, said aloud at 8:50 to 8:54 of talk.vtt" in page.words
    assert "An Invented Code, 2020, 7.1" in page.words
    assert "recalled, check the text" in page.words


def test_stake_and_urgency_are_words_and_nothing_else(tmp_path: Path) -> None:
    write_html(letter_of(given(tmp_path / "media")), tmp_path / "out")
    css = CSS.read_text(encoding="utf-8")
    colours = set(re.findall(r"#[0-9a-fA-F]{3,8}\b", css))
    # Ink, its quieter tone, paper, line, the accent, and the tint of what a link has led to.
    assert colours == {"#1c1b19", "#504c46", "#fffefb", "#d9d4c9", "#1d3f72", "#eef1f6"}
    assert "people" not in css
    assert "soon" not in css


def luminance(colour: str) -> float:
    channels = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


@pytest.mark.parametrize("ink", ["#1c1b19", "#504c46", "#1d3f72"])
@pytest.mark.parametrize("paper", ["#fffefb", "#eef1f6"])
def test_contrast_is_enhanced(ink: str, paper: str) -> None:
    # WCAG 2.2, Success Criterion 1.4.6 Contrast (Enhanced): at least 7 to 1; formula under "relative luminance".
    light, dark = sorted((luminance(ink), luminance(paper)), reverse=True)
    assert (light + 0.05) / (dark + 0.05) >= 7


def test_black_on_white_is_21_to_1() -> None:
    # WCAG 2.2, note to "contrast ratio": contrast ratios can range from 1 to 21.
    assert (luminance("#ffffff") + 0.05) / (luminance("#000000") + 0.05) == pytest.approx(21)


def test_the_same_letter_gives_the_same_page(tmp_path: Path) -> None:
    letter = letter_of(given(tmp_path / "media"))
    write_html(letter, tmp_path / "one")
    write_html(letter, tmp_path / "two")
    for path in sorted((tmp_path / "one").rglob("*")):
        if path.is_file():
            assert path.read_bytes() == (tmp_path / "two" / path.relative_to(tmp_path / "one")).read_bytes()


def test_a_picture_that_cannot_be_read_is_told_in_words(tmp_path: Path) -> None:
    some = given(tmp_path / "media")
    (tmp_path / "media" / "drip.jpg").write_bytes(b"\xff\xd8\xff not a picture")
    problems = write_html(letter_of(some), tmp_path / "out")
    assert [problem.number for problem in problems] == ["WM803"]
    page = Page((tmp_path / "out" / "index.html").read_text(encoding="utf-8"))
    assert "This picture (drip.jpg) could not be shown. Photo, kitchen, 9:09:30 am: Drip under the sink." in page.words


def test_a_folder_that_takes_no_files_is_refused(tmp_path: Path) -> None:
    (tmp_path / "out").write_text("a file where the folder should be")
    with pytest.raises(Refusal, match="WM809"):
        write_html(letter_of(given(tmp_path / "media")), tmp_path / "out")
    assert (tmp_path / "out").read_text() == "a file where the folder should be"


def test_many_findings_and_none(tmp_path: Path) -> None:
    some = given(tmp_path / "media")
    template = next(fact for fact in some.record.facts if isinstance(fact.body, Found))
    many = tuple(replace(template, id=f"m{i:03}") for i in range(300))
    page = page_of(
        letter_of(replace(some, record=replace(some.record, facts=some.record.facts + many))), tmp_path / "a"
    )
    assert len(page.all("article")) == 302
    none = tuple(fact for fact in some.record.facts if not isinstance(fact.body, Found))
    page = page_of(letter_of(replace(some, record=replace(some.record, facts=none))), tmp_path / "b")
    assert "Nothing was written down as a finding." in page.words
