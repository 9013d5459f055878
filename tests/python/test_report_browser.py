"""The report in a browser, from disk, with the network off: no errors, no requests, printable."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import heatmatch as hm
import pytest
from browser import chromium_path
from playwright.sync_api import Browser, Page, sync_playwright

pytest.importorskip("jinja2")


@pytest.fixture(scope="module")
def path(
    tmp_path_factory: pytest.TempPathFactory, demo_ranking: hm.Ranking, demo: hm.Installation
) -> Path:
    found = tmp_path_factory.mktemp("report") / "report.html"
    return hm.report(demo_ranking, found, installation=demo)


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=chromium_path(), args=["--no-sandbox"])
        yield browser
        browser.close()


@pytest.fixture
def seen(browser: Browser, path: Path) -> Iterator[tuple[Page, list[str]]]:
    """The page, with its errors and requests."""
    context = browser.new_context(offline=True)
    page = context.new_page()
    heard: list[str] = []
    page.on("console", lambda message: heard.append(f"{message.type}: {message.text}"))
    page.on("pageerror", lambda error: heard.append(str(error)))
    page.on("request", lambda request: heard.append(request.url[:80]))
    page.goto(path.as_uri())
    yield page, heard
    context.close()


def test_it_is_quiet_and_asks_for_itself_only(seen: tuple[Page, list[str]], path: Path) -> None:
    page, heard = seen
    asked = [line for line in heard if not line.startswith("data:")]
    assert asked == [path.as_uri()]
    sizes = page.eval_on_selector_all("img", "all => all.map(i => [i.complete, i.naturalWidth])")
    assert len(sizes) >= 9
    assert all(done and width > 300 for done, width in sizes)


def test_the_unit_set_is_changed_by_the_keyboard(seen: tuple[Page, list[str]]) -> None:
    page, _ = seen
    assert "°F" not in page.inner_text("main")
    page.focus("#unit-si")
    page.keyboard.press("ArrowRight")
    assert page.is_checked("#unit-us")
    text = page.inner_text("main")
    assert "°F" in text
    assert "AWG" in text


def test_nothing_sticks_out_of_a_narrow_page(seen: tuple[Page, list[str]]) -> None:
    page, _ = seen
    page.set_viewport_size({"width": 1000, "height": 800})
    wide = page.evaluate("document.documentElement.scrollWidth")
    assert wide <= 1000


def test_a_phone_shows_it_in_its_width(seen: tuple[Page, list[str]]) -> None:
    page, _ = seen
    page.set_viewport_size({"width": 390, "height": 844})
    assert page.evaluate("document.documentElement.scrollWidth") <= 390


def page_count(pdf: bytes) -> int:
    return len(re.findall(rb"/Type\s*/Page\b", pdf))


def test_what_is_folded_on_the_screen_is_printed(seen: tuple[Page, list[str]]) -> None:
    page, _ = seen
    unfolded = page_count(page.pdf(format="A4"))
    page.click("summary")
    assert not page.evaluate("document.querySelector('details').open")
    assert page_count(page.pdf(format="A4")) == unfolded


def test_heads_stay_with_their_rows_in_print(seen: tuple[Page, list[str]]) -> None:
    page, _ = seen
    page.emulate_media(media="print")
    style = "all => all.map(e => getComputedStyle(e).breakInside)"
    wiring = page.eval_on_selector_all("table:has(caption:text('wiring list'))", style)
    assert wiring == ["avoid"]
    assert set(page.eval_on_selector_all("tr, figure, .check", style)) == {"avoid"}
    after = page.eval_on_selector_all(
        "h2, thead, dt", "all => all.map(e => getComputedStyle(e).breakAfter)"
    )
    assert set(after) == {"avoid"}


# Printable heights at margins of 13 mm, and widths: A4 is 210 x 297 mm, letter 8.5 x 11 in.
SHEETS = {"A4": (210.0 - 26.0, 297.0 - 26.0), "Letter": (215.9 - 26.0, 279.4 - 26.0)}


@pytest.mark.parametrize("paper", SHEETS)
@pytest.mark.parametrize("section", ["drawing", "limits", "season"])
def test_a_page_of_the_body_fits_one_sheet(
    seen: tuple[Page, list[str]], paper: str, section: str
) -> None:
    page, _ = seen
    width, height = (round(mm / 25.4 * 96.0) for mm in SHEETS[paper])
    page.set_viewport_size({"width": width, "height": height})
    page.emulate_media(media="print")
    found = page.locator(f"section.{section}").bounding_box()
    assert found is not None
    assert 0.3 * height < found["height"] <= height


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_it_prints(seen: tuple[Page, list[str]], paper: str) -> None:
    page, _ = seen
    pdf = page.pdf(format=paper)
    assert pdf.startswith(b"%PDF-")
    assert 8 <= page_count(pdf) <= 30
