"""The explorer as it is used: in JupyterLab, in a browser, by the keyboard."""

from __future__ import annotations

import json
import re
import time
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import heatmatch as hm
import pytest
from browser import chromium_path
from jupyter_lab import PATIENT_MS, Lab, run_notebook, running_lab
from playwright.sync_api import Page, expect, sync_playwright


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("lab")
    hm.demo().to_json(path / "place.json")
    return path


@pytest.fixture(scope="module")
def lab(folder: Path) -> Iterator[Lab]:
    with running_lab(folder) as lab:
        yield lab


@pytest.fixture(scope="module")
def page(lab: Lab) -> Iterator[Page]:
    """The notebook, opened and run to its end."""
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=chromium_path(), args=["--no-sandbox"])
        page = browser.new_page(viewport={"width": 1500, "height": 1400})
        page.set_default_timeout(PATIENT_MS)
        page.goto(lab.page_address)
        run_notebook(page, lab)
        yield page
        browser.close()


def table(page: Page) -> list[list[str]]:
    """The cells of the ranking as they are read."""
    rows = page.locator(".hm-columns .hm-panel table").first.locator("tbody tr")
    return [row.locator("td").all_inner_texts() for row in rows.all()]


def press(page: Page, title: str) -> None:
    page.get_by_role("button", name=title, exact=True).focus()
    page.keyboard.press("Enter")


def move(page: Page, title: str, key: str, times: int) -> str:
    """Moves a slider by the keyboard, waits until the table has followed, and gives its number."""
    slider = page.locator(".widget-slider").filter(has_text=title)
    before = table(page)
    slider.locator(".noUi-handle").focus()
    for _ in range(times):
        page.keyboard.press(key)
    end = time.monotonic() + 20
    while table(page) == before and time.monotonic() < end:
        page.wait_for_timeout(50)
    assert table(page) != before, f"{title} moved nothing"
    page.wait_for_timeout(300)
    return slider.locator(".widget-readout").inner_text()


def expected(**changes: Any) -> list[list[str]]:
    """The heat and the elements of a ranking without any page."""
    from heatmatch.explorer.choice import Workbench

    bench = Workbench(hm.Catalog.starter(), hm.demo())
    ranking = bench.rank(bench.start.__class__(**{**vars(bench.start), **changes}))
    return [
        [f"{c.circuit.element.id} {c.circuit.bank}", f"{c.season.mean_kwh_per_day:.2f}"]
        for c in ranking
    ]


def shown(page: Page) -> list[list[str]]:
    return [[row[3], row[4]] for row in table(page)]


def settles_at(page: Page, wanted: list[list[str]]) -> bool:
    """Whether the table comes to that; it follows a slider in steps, however long each takes."""
    end = time.monotonic() + 30
    while shown(page) != wanted and time.monotonic() < end:
        page.wait_for_timeout(50)
    return shown(page) == wanted


def test_the_table_is_that_of_the_ranking(page: Page) -> None:
    assert shown(page) == expected()


@pytest.fixture
def screen(page: Page) -> Iterator[Page]:
    """The page at the size of a small laptop."""
    page.set_viewport_size({"width": 1280, "height": 800})
    page.wait_for_timeout(500)
    yield page
    page.set_viewport_size({"width": 1500, "height": 1400})


def in_sight(page: Page, selector: str) -> float:
    """Share of the height of an element that the window and its own column show."""
    share: float = page.locator(f".hm-columns {selector}").first.evaluate(
        """e => { const box = e.getBoundingClientRect();
        const column = e.closest(".hm-first, .hm-list").getBoundingClientRect();
        const top = Math.max(box.top, column.top, 0);
        const bottom = Math.min(box.bottom, column.bottom, innerHeight);
        return Math.max(0, bottom - top) / box.height; }"""
    )
    return share


# The status, what to build, and the first rows of the table.
ALWAYS = (".hm-answer p", ".hm-answer tbody tr", ".hm-rows thead tr", ".hm-rows tbody tr")


def test_answer_and_table_are_always_in_sight_of_a_small_screen(screen: Page) -> None:
    for selector in ALWAYS:
        assert in_sight(screen, selector) > 0.95, selector
    below = screen.locator(".hm-columns .hm-below").first
    assert below.evaluate("e => e.scrollHeight > e.clientHeight")
    below.evaluate("e => { e.scrollTop = e.scrollHeight; }")
    screen.wait_for_timeout(200)
    for selector in ALWAYS:
        assert in_sight(screen, selector) > 0.95, selector


def test_a_click_on_a_row_changes_the_answer(screen: Page) -> None:
    answer = screen.locator(".hm-columns .hm-answer").first
    before = answer.inner_text()
    row = screen.locator(".hm-columns .hm-rows tbody tr").nth(1)
    row.click()
    expect(screen.locator(".hm-columns .hm-rows tbody tr").nth(1)).to_have_class(
        re.compile("hm-chosen")
    )
    expect(answer).not_to_contain_text("other ways")  # of the ranking, not of a chosen row
    assert answer.inner_text() != before
    screen.locator(".hm-columns .hm-pick select").select_option(index=0)
    expect(answer).to_contain_text("other ways")
    assert answer.inner_text() == before


def test_a_narrow_screen_has_the_answer_in_its_width(page: Page) -> None:
    page.keyboard.press("Control+b")  # the list of files
    page.set_viewport_size({"width": 390, "height": 844})
    page.wait_for_timeout(500)
    first = page.locator(".hm-columns .hm-first").first
    assert first.evaluate("e => e.scrollWidth <= e.clientWidth + 1")
    cell = page.locator(".jp-OutputArea-output").first.bounding_box()
    status = page.locator(".hm-columns .hm-answer p").first.bounding_box()
    assert cell is not None
    assert status is not None
    assert 150 < status["width"] <= cell["width"]
    assert status["x"] + status["width"] <= cell["x"] + cell["width"] + 1
    page.set_viewport_size({"width": 1500, "height": 1400})
    page.keyboard.press("Control+b")
    page.wait_for_timeout(500)


def test_the_static_form_is_hidden_where_widgets_live(page: Page) -> None:
    expect(page.locator(".hm-static")).to_be_hidden()
    assert page.locator(".hm-static img").count() == 1


def test_three_sliders_move_the_table_and_the_rest_follows(page: Page) -> None:
    drawing = page.locator(".hm-columns img[alt]")
    picture = drawing.get_attribute("src") or ""
    assert move(page, "tilt [deg]", "ArrowLeft", 6) == "30"
    assert settles_at(page, expected(tilt_deg=30))
    assert move(page, "longest run [m]", "ArrowRight", 6) == "15"
    assert settles_at(page, expected(tilt_deg=30, length_m=15))
    assert move(page, "record low [°C]", "ArrowRight", 12) in ("-20", "−20")
    assert settles_at(page, expected(tilt_deg=30, length_m=15, record_low_c=-20))
    expect(drawing).not_to_have_attribute("src", picture)


def test_a_group_is_chosen_by_the_keyboard(page: Page) -> None:
    page.get_by_label("panels", exact=True).focus()
    page.keyboard.press("ArrowDown")  # from all to the first group
    expect(page.locator(".hm-columns .hm-panel table").first).to_contain_text("barn pair 2S1P")
    assert all(row[1].startswith("barn pair") for row in table(page))


def test_margins_and_kept_choices_are_read(page: Page) -> None:
    press(page, "keep this choice")
    press(page, "margins")
    expect(page.locator(".hm-columns .hm-panel caption").nth(-3)).to_contain_text(
        "the most severe first"
    )
    expect(page.locator(".hm-columns .hm-panel caption").nth(-2)).to_contain_text(
        "owned and to buy"
    )
    expect(page.locator(".hm-columns .hm-panel caption").last).to_contain_text("code requirements")
    press(page, "kept")
    expect(page.locator(".hm-columns .hm-panel caption").last).to_contain_text("side by side")
    expect(page.locator(".hm-columns .hm-panel table").last).to_contain_text("choice 1")


def test_a_choice_is_saved_and_there_after_a_reload(page: Page, lab: Lab, folder: Path) -> None:
    press(page, "files")
    press(page, "save installation")
    saved = folder / "my_place.json"
    expect(page.locator(".hm-below .hm-panel").last).to_contain_text("Saved my_place.json")
    plain = json.loads(saved.read_text(encoding="utf-8"))
    assert plain["circuit"]["group"] == "barn pair"
    assert (plain["site"]["tilt_deg"], plain["site"]["record_low_c"]) == (30, -20)
    assert plain["runs"][0]["length_m"] == 15
    saved.replace(folder / "place.json")
    page.reload()
    run_notebook(page, lab)
    slider = page.locator(".widget-slider").filter(has_text="tilt [deg]")
    assert slider.locator(".widget-readout").inner_text() == "30"
    wanted = expected(tilt_deg=30, length_m=15, record_low_c=-20)
    assert [row[0] for row in shown(page)] == [row[0] for row in wanted]


def test_a_ranking_is_saved_and_compared(page: Page, folder: Path) -> None:
    press(page, "files")
    press(page, "save ranking")
    expect(page.locator(".hm-below .hm-panel").last).to_contain_text(
        "Saved my_ranking.json", timeout=PATIENT_MS
    )
    assert hm.load_ranking(folder / "my_ranking.json").by_season
    move(page, "tilt [deg]", "ArrowLeft", 6)
    press(page, "compare with ranking")
    caption = page.locator(".hm-columns .hm-panel caption").last
    expect(caption).to_contain_text(re.compile("stays first|is now first"))
