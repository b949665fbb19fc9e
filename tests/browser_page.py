"""A real browser for tests of pages: Debian's Chromium, driven by Playwright, without network."""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

import pytest
from axe_playwright_python.sync_playwright import Axe  # type: ignore[import-untyped] # it ships no types
from playwright.sync_api import Browser, Page, sync_playwright

__all__ = ["DESK", "PHONE", "a11y_breaches", "browser", "page_of_size"]

PHONE, DESK = (390, 844), (1280, 900)
_NAMES = ("chromium", "chromium-browser", "google-chrome")
_ARGUMENTS = ("--no-sandbox", "--disable-gpu", "--disable-quic", "--disable-background-networking")


def _chromium() -> str:
    found = next((path for name in _NAMES if (path := shutil.which(name))), "")
    if not found:
        why = "no Chromium on this machine: as root, apt-get install chromium"
        if os.environ.get("CI"):
            pytest.fail(why)
        pytest.skip(why)
    return found


@contextmanager
def browser() -> Iterator[Browser]:
    """A browser; starting one takes longer than most tests, so a module shares it."""
    with sync_playwright() as play:
        started = play.chromium.launch(executable_path=_chromium(), args=_ARGUMENTS)
        yield started
        started.close()


@contextmanager
def page_of_size(started: Browser, size: tuple[int, int]) -> Iterator[Page]:
    """A page of its own, of this size (CSS pixels); whatever it asks of the network, or says as an error, fails."""
    context = started.new_context(viewport={"width": size[0], "height": size[1]}, accept_downloads=True)
    page = context.new_page()
    outside: list[str] = []
    page.on("request", lambda request: outside.append(request.url))
    page.on("pageerror", lambda error: outside.append(f"error: {error}"))
    page.on("console", lambda said: outside.append(f"console: {said.text}") if said.type == "error" else None)
    yield page
    context.close()
    bad = [url for url in outside if not url.startswith(("file:", "data:", "blob:"))]
    assert not bad, f"the page asked for or said: {bad[:3]}"


def a11y_breaches(page: Page) -> list[str]:
    """What axe-core finds wrong with a page (rules for WCAG 2.2 A and AA and its best practice), with the first element."""
    found: list[dict[str, Any]] = Axe().run(page).response["violations"]
    return [f"{row['id']}: {row['help']}: {row['nodes'][0]['html'][:160]}" for row in found]
