"""The explorer as it is used: in JupyterLab, in a browser, by the keyboard."""

from __future__ import annotations

import json
import os
import re
import socket
import subprocess
import sys
import time
import urllib.request
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import heatmatch as hm
import nbformat
import pytest
from browser import chromium_path
from playwright.sync_api import Page, TimeoutError, expect, sync_playwright

CELL = """\
import heatmatch as hm
panel = hm.explore(hm.Catalog.starter(), hm.Installation.from_json("place.json"))
panel
"""
TOKEN = "explore"
PATIENT_MS = 90_000
ASKED_MS = 15_000


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("lab")
    hm.demo().to_json(path / "place.json")
    notebook = nbformat.v4.new_notebook(cells=[nbformat.v4.new_code_cell(CELL)])
    notebook.metadata["kernelspec"] = {"name": "python3", "display_name": "Python 3"}
    nbformat.write(notebook, path / "explore.ipynb")
    return path


@pytest.fixture(scope="module")
def lab(folder: Path) -> Iterator[str]:
    """The address of a JupyterLab over that folder."""
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    of_its_own = ("CONFIG_DIR", "DATA_DIR", "RUNTIME_DIR", "PLATFORM_DIRS")
    environment = {
        **os.environ,
        **{f"JUPYTER_{name}": str(folder / ".jupyter" / name) for name in of_its_own[:3]},
        "JUPYTER_PLATFORM_DIRS": "1",
        "JUPYTERLAB_SETTINGS_DIR": str(folder / ".jupyter" / "settings"),
        "PYTHONPATH": str(Path(hm.__file__).resolve().parents[1]),
    }
    command = [sys.executable, "-m", "jupyterlab", "--no-browser", "--allow-root"]
    command += [f"--ServerApp.port={port}", "--ServerApp.ip=127.0.0.1"]
    command += [f"--IdentityProvider.token={TOKEN}", f"--ServerApp.root_dir={folder}"]
    command += ["--LabApp.news_url=None"]
    address = f"http://127.0.0.1:{port}"
    with (folder / "lab.log").open("w") as log:
        server = subprocess.Popen(command, cwd=folder, env=environment, stdout=log, stderr=log)
        try:
            _wait_for(f"{address}/api?token={TOKEN}", server, folder / "lab.log")
            yield address
        finally:
            server.terminate()
            server.wait(timeout=30)


def _wait_for(address: str, server: subprocess.Popen[bytes], log: Path) -> None:
    end = time.monotonic() + PATIENT_MS / 1000
    while time.monotonic() < end and server.poll() is None:
        try:
            urllib.request.urlopen(address, timeout=5).close()
        except OSError:
            time.sleep(0.2)
        else:
            return
    pytest.fail(f"JupyterLab did not start:\n{log.read_text()[-2000:]}")


@pytest.fixture(scope="module")
def page(lab: str) -> Iterator[Page]:
    """The notebook, opened and run to its end."""
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=chromium_path(), args=["--no-sandbox"])
        page = browser.new_page(viewport={"width": 1500, "height": 1400})
        page.set_default_timeout(PATIENT_MS)
        page.goto(f"{lab}/lab/tree/explore.ipynb?token={TOKEN}&reset")
        page.wait_for_selector('.jp-Notebook-ExecutionIndicator[data-status="idle"]')
        _run(page)
        yield page
        browser.close()


def _run(page: Page) -> None:
    """Runs the cell by the keyboard, and waits for the table and the picture.

    A kernel says that it is idle a little before it listens: what is not heard is said again.
    """
    for _ in range(PATIENT_MS // ASKED_MS):
        page.locator(".jp-Cell .cm-content").first.click()
        page.keyboard.press("Control+Enter")
        try:
            page.wait_for_selector(".hm-panel table", timeout=ASKED_MS)
            break
        except TimeoutError:
            continue
    page.wait_for_selector(".jp-OutputArea img[alt]")


def table(page: Page) -> list[list[str]]:
    """The cells of the ranking as they are read."""
    rows = page.locator(".hm-panel table").first.locator("tbody tr")
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
    """The heat and the elements that a ranking without any page tells."""
    from heatmatch.explorer_choice import Workbench

    bench = Workbench(hm.Catalog.starter(), hm.demo())
    ranking = bench.rank(bench.start.__class__(**{**vars(bench.start), **changes}))
    return [
        [f"{c.circuit.element.id} {c.circuit.bank}", f"{c.season.mean_kwh_per_day:.2f}"]
        for c in ranking
    ]


def shown(page: Page) -> list[list[str]]:
    return [[row[2], row[3]] for row in table(page)]


def test_the_table_is_that_of_the_ranking(page: Page) -> None:
    assert shown(page) == expected()


def test_three_sliders_move_the_table_and_the_rest_follows(page: Page) -> None:
    picture = page.locator(".jp-OutputArea img[alt]").get_attribute("src")
    assert move(page, "tilt [deg]", "ArrowLeft", 6) == "30"
    assert shown(page) == expected(tilt_deg=30)
    assert move(page, "longest run [m]", "ArrowRight", 6) == "15"
    assert shown(page) == expected(tilt_deg=30, length_m=15)
    assert move(page, "record low [°C]", "ArrowRight", 12) in ("-20", "−20")
    assert shown(page) == expected(tilt_deg=30, length_m=15, record_low_c=-20)
    page.wait_for_timeout(1000)
    assert page.locator(".jp-OutputArea img[alt]").get_attribute("src") != picture


def test_a_group_is_chosen_by_the_keyboard(page: Page) -> None:
    page.get_by_label("panels", exact=True).focus()
    page.keyboard.press("ArrowDown")  # from all to the first group
    expect(page.locator(".hm-panel table").first).to_contain_text("barn pair 2S1P")
    assert all(row[1].startswith("barn pair") for row in table(page))


def test_margins_and_kept_choices_are_read(page: Page) -> None:
    press(page, "keep this choice")
    press(page, "margins")
    expect(page.locator(".hm-panel caption").last).to_contain_text("the most severe first")
    press(page, "kept")
    expect(page.locator(".hm-panel caption").last).to_contain_text("side by side")
    expect(page.locator(".hm-panel table").last).to_contain_text("choice 1")


def test_a_choice_is_saved_and_there_after_a_reload(page: Page, folder: Path) -> None:
    press(page, "files")
    press(page, "save installation")
    saved = folder / "my_place.json"
    expect(page.locator(".hm-panel").nth(0)).to_contain_text("Saved my_place.json")
    plain = json.loads(saved.read_text(encoding="utf-8"))
    assert plain["circuit"]["group"] == "barn pair"
    assert (plain["site"]["tilt_deg"], plain["site"]["record_low_c"]) == (30, -20)
    assert plain["runs"][0]["length_m"] == 15
    saved.replace(folder / "place.json")
    page.reload()
    page.wait_for_selector('.jp-Notebook-ExecutionIndicator[data-status="idle"]')
    _run(page)
    slider = page.locator(".widget-slider").filter(has_text="tilt [deg]")
    assert slider.locator(".widget-readout").inner_text() == "30"
    wanted = expected(tilt_deg=30, length_m=15, record_low_c=-20)
    assert [row[0] for row in shown(page)] == [row[0] for row in wanted]


def test_a_ranking_is_saved_and_compared(page: Page, folder: Path) -> None:
    press(page, "files")
    press(page, "save ranking")
    expect(page.locator(".hm-panel").nth(0)).to_contain_text("Saved my_ranking.json")
    assert hm.load_ranking(folder / "my_ranking.json").by_season
    move(page, "tilt [deg]", "ArrowLeft", 6)
    press(page, "compare with ranking")
    caption = page.locator(".hm-panel caption").last
    expect(caption).to_contain_text(re.compile("stays first|is first, before"))
