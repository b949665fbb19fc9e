"""The page in a real browser, at phone and desk size: chosen from, ticked, saved, printed, and read by machine (axe-core)."""

from __future__ import annotations

import csv
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from browser_page import DESK, PHONE, a11y_breaches, browser, page_of_size
from record_builder import Visit
from report.small_visit import Given, given, letter_of
from witnessmark.journal.acts import Found
from witnessmark.report import Letter, prepare, write_html, write_single


def many(folder: Path) -> Letter:
    """The small visit with three more findings, one of which tries to be a formula."""
    some: Given = given(folder)
    more = Visit()
    more.entries = list(some.record.entries.values())
    rests = (more.entries[5].id,)
    more.add(Found("Loose rail", "it moves by hand", "w", "f", "fasten it", "carpenter", "repair", "people", "now", rests_on=rests),
             60, place="porch", name="f-rail")  # fmt: skip
    more.add(Found("=1+1", "Überlauf", "w", "f", "=SUM(A1)", "plumber", "repair", "upkeep", "watch", rests_on=rests),
             61, place="kitchen", name="f-sum")  # fmt: skip
    from dataclasses import replace

    return letter_of(replace(some, record=more.record()))


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    made = tmp_path_factory.mktemp("report")
    letter = many(tmp_path_factory.mktemp("media"))
    prepared = prepare(letter, made / "pictures")
    write_html(letter, made, prepared=prepared)
    write_single(letter, made / "single.html", prepared=prepared)
    return made


@pytest.fixture(scope="module")
def chromium() -> Iterator[Browser]:
    with browser() as started:
        yield started


@pytest.fixture(params=[PHONE, DESK], ids=["phone", "desk"])
def page(request: pytest.FixtureRequest, chromium: Browser, folder: Path) -> Iterator[Page]:
    with page_of_size(chromium, request.param) as made:
        made.goto((folder / "index.html").as_uri())
        yield made


def shown(page: Page) -> list[str]:
    return [finding.inner_text() for finding in page.locator("article.finding:visible h4").all()]


def test_axe_finds_nothing_wrong(page: Page) -> None:
    assert a11y_breaches(page) == []


def test_axe_would_find_a_picture_without_words(page: Page) -> None:
    page.evaluate("document.images[0].removeAttribute('alt')")
    assert any(row.startswith("image-alt") for row in a11y_breaches(page))


def test_nothing_stands_beyond_the_edge(page: Page) -> None:
    wide = page.evaluate("[document.documentElement.scrollWidth, innerWidth]")
    assert wide[0] <= wide[1]


def test_findings_are_chosen_by_words_place_stake_urgency_and_trade(page: Page) -> None:
    everything = shown(page)
    page.fill("#words", "rail hand")
    assert shown(page) == ["Loose rail"]
    assert page.inner_text("#chosen") == f"1 of {len(everything)} findings are shown."
    assert page.locator("[data-order]:visible [data-finding]:visible").count() == 1
    page.fill("#words", "uberlauf")
    assert shown(page) == ["=1+1"], "accents do not matter"
    page.click("text=Show all")
    page.wait_for_function("document.querySelector('#words').value === ''")
    assert shown(page) == everything
    for field, value, expected in (
        ("place", "porch", "Loose rail"),
        ("urgency", "now", "Loose rail"),
        ("stake", "upkeep", "=1+1"),
    ):
        page.select_option(f"#choose-{field}", value)
        assert expected in shown(page)
        assert len(shown(page)) < len(everything)
        page.select_option(f"#choose-{field}", "")
    assert shown(page) == everything


def test_a_link_to_a_finding_that_is_hidden_shows_it_again(page: Page) -> None:
    page.fill("#words", "rail")
    hidden = page.locator("article.finding:not(:visible) h4").first.get_attribute("id")
    page.evaluate(f"location.hash = '{hidden}'")
    page.wait_for_selector(f"#{hidden}", state="visible")


def test_one_order_is_read_at_a_time(page: Page) -> None:
    assert page.locator("h3:visible", has_text="By place").count() == 1
    assert page.locator("h3:visible", has_text="By system").count() == 0
    page.check("input[value=system]")
    assert page.locator("h3:visible", has_text="By system").count() == 1
    assert page.locator("h3:visible", has_text="By place").count() == 0


def test_a_repair_list_is_ticked_kept_saved_and_emptied(page: Page, tmp_path: Path) -> None:
    for title in ("Loose rail", "=1+1"):
        page.locator("article.finding", has_text=title).first.get_by_label("On my repair list").check()
    rows = page.locator("#repairs-list li")
    assert rows.count() == 2
    rows.filter(has_text="Loose rail").get_by_label("What you ask for").fill('a new rail, "solid"')
    for _ in range(20):  # a busy browser takes a while to hand what is kept to the process of the new page
        page.reload()
        if rows.count() == 2:
            break
        page.wait_for_timeout(250)
    assert rows.count() == 2, "it is kept in this browser"
    with page.expect_download() as waiting:
        page.click("text=Save it as a table")
    saved = tmp_path / waiting.value.suggested_filename
    waiting.value.save_as(saved)
    table = list(csv.DictReader(saved.read_text(encoding="utf-8-sig").splitlines()))
    assert {row["Title"] for row in table} == {"Loose rail", "'=1+1"}, "no cell is a formula"
    assert {row["What you ask for"] for row in table} == {'a new rail, "solid"', ""}
    assert all(not value.startswith("=") for row in table for value in row.values())
    page.click("text=Empty it")
    assert page.locator("#repairs-list li").count() == 0
    assert page.locator("input[data-pick]:checked").count() == 0


def test_spoilt_storage_does_no_harm(page: Page) -> None:
    job = page.evaluate("document.body.dataset.job")
    for spoilt in ("not json", "[]", '{"x": 1}', "null"):
        page.evaluate("([k, v]) => localStorage.setItem(k, v)", [f"witnessmark repair list {job}", spoilt])
        page.reload()
        assert page.locator("#repairs-list li").count() == 0
        assert shown(page)


def test_the_repair_list_prints_alone_and_the_letter_without_it(page: Page) -> None:
    page.locator("input[data-pick]").first.check()
    page.emulate_media(media="print")
    assert not page.locator("#repairs-part").is_visible()
    assert not page.locator("#choose").is_visible()
    page.evaluate("document.body.classList.add('only-repairs')")
    assert page.locator("#repairs-part").is_visible()
    assert not page.locator("article.finding").first.is_visible()


def test_everything_is_reached_by_keyboard(page: Page) -> None:
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.className") == "skip"
    names = set()
    for _ in range(400):
        page.keyboard.press("Tab")
        names.add(
            page.evaluate("document.activeElement.id || document.activeElement.name || document.activeElement.tagName")
        )
    assert {"words", "choose-place", "choose-trade", "order"} <= names


def test_what_is_touched_is_large_enough(page: Page) -> None:
    for field in page.locator("input[type=search], select, button, textarea").all():
        if field.is_visible():
            box = field.bounding_box()
            assert box is not None
            assert box["height"] >= 43, field.evaluate("e => e.outerHTML")


def test_one_file_needs_nothing_beside_it(chromium: Browser, folder: Path, tmp_path: Path) -> None:
    alone = tmp_path / "sent.html"
    alone.write_bytes((folder / "single.html").read_bytes())
    with page_of_size(chromium, PHONE) as page:
        page.goto(alone.as_uri())
        page.wait_for_function("document.fonts.status === 'loaded'")
        assert page.evaluate("Array.from(document.fonts).filter(f => f.status === 'loaded').length") >= 2
        for _ in range(3):
            page.evaluate("scrollTo(0, document.body.scrollHeight)")
        widths = page.evaluate(
            "Promise.all(Array.from(document.images, i => (i.loading = 'eager', i.decode().then(() => i.naturalWidth))))"
        )
        assert widths
        assert all(widths)
        page.locator("input[data-pick]").first.check()
        assert page.locator("#repairs-list li").count() == 1


def test_without_script_everything_can_be_read(chromium: Browser, folder: Path) -> None:
    context = chromium.new_context(java_script_enabled=False)
    still = context.new_page()
    still.goto((folder / "index.html").as_uri())
    assert still.locator("article.finding:visible").count() == still.locator("article.finding").count()
    assert still.locator("h3:visible", has_text="By system").count() == 1
    assert not still.locator("#choose").is_visible()
    assert not still.locator("#repairs-part").is_visible()
    context.close()
