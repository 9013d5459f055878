"""A JupyterLab over a folder of its own, with a kernel that runs before any page asks for it.

A page that has to start its kernel itself shows a dialog when that fails, and everything after it
waits behind that dialog. Here the kernel is asked for again until it runs, a dialog is read and
closed, and what was read is told if the table never comes.
"""

from __future__ import annotations

import json
import os
import socket
import subprocess
import sys
import time
import urllib.error
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any, NoReturn

import heatmatch as hm
import nbformat
import pytest
from playwright.sync_api import Page, TimeoutError

CELL = """\
import heatmatch as hm
panel = hm.explore(hm.Catalog.starter(), hm.Installation.from_json("place.json"))
panel
"""
NOTEBOOK = "explore.ipynb"
TOKEN = "explore"
PATIENT_MS = 90_000
ASKED_MS = 15_000


class Lab:
    """The running server: its address, its folder and what it has logged."""

    def __init__(self, address: str, folder: Path, server: subprocess.Popen[bytes]) -> None:
        self.address, self.folder, self.server = address, folder, server

    @property
    def page_address(self) -> str:
        return f"{self.address}/lab/tree/{NOTEBOOK}?token={TOKEN}&reset"

    def ask(self, path: str, body: dict[str, Any] | None = None) -> Any:
        request = urllib.request.Request(
            f"{self.address}/api{path}",
            data=None if body is None else json.dumps(body).encode(),
            headers={"Authorization": f"token {TOKEN}"},
        )
        with urllib.request.urlopen(request, timeout=ASKED_MS / 1000) as answer:
            return json.load(answer)

    def insist(self, path: str, body: dict[str, Any] | None = None) -> Any:
        """Poll until there is an answer; fail with the last response."""
        end, said = time.monotonic() + PATIENT_MS / 1000, "nothing"
        while time.monotonic() < end and self.server.poll() is None:
            try:
                return self.ask(path, body)
            except urllib.error.HTTPError as refusal:
                said = f"{refusal}: {refusal.read().decode(errors='replace')[:1000]}"
            except OSError as silence:
                said = str(silence)
            time.sleep(0.2)
        return self.fail(f"JupyterLab answered {path} with {said}")

    def fail(self, why: str) -> NoReturn:
        log = (self.folder / "lab.log").read_text(errors="replace")[-3000:]
        pytest.fail(f"{why}\nits log:\n{log}")


@contextmanager
def running_lab(folder: Path) -> Iterator[Lab]:
    """JupyterLab over `folder`, with the explorer's notebook in it and a kernel for it."""
    notebook = nbformat.v4.new_notebook(cells=[nbformat.v4.new_code_cell(CELL)])
    notebook.metadata["kernelspec"] = {"name": "python3", "display_name": "Python 3"}
    nbformat.write(notebook, folder / NOTEBOOK)
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    with (folder / "lab.log").open("w") as log:
        server = subprocess.Popen(
            _command(folder, port), cwd=folder, env=_environment(folder), stdout=log, stderr=log
        )
        try:
            lab = Lab(f"http://127.0.0.1:{port}", folder, server)
            lab.insist("/status")
            kernel = {"kernel": {"name": "python3"}}
            lab.insist("/sessions", {"path": NOTEBOOK, "name": "", "type": "notebook", **kernel})
            yield lab
        finally:
            server.terminate()
            server.wait(timeout=30)


def _command(folder: Path, port: int) -> list[str]:
    return [
        *(sys.executable, "-m", "jupyterlab", "--no-browser", "--allow-root"),
        *(f"--ServerApp.port={port}", "--ServerApp.ip=127.0.0.1"),
        *(f"--IdentityProvider.token={TOKEN}", f"--ServerApp.root_dir={folder}"),
        "--LabApp.news_url=None",
    ]


def _environment(folder: Path) -> dict[str, str]:
    own = folder / ".jupyter"
    names = ("CONFIG_DIR", "DATA_DIR", "RUNTIME_DIR")
    return {
        **os.environ,
        **{f"JUPYTER_{name}": str(own / name) for name in names},
        "JUPYTER_PLATFORM_DIRS": "1",
        # Some file systems keep no modes: a kernel's connection file is then refused.
        "JUPYTER_ALLOW_INSECURE_WRITES": "1",
        "JUPYTERLAB_SETTINGS_DIR": str(own / "settings"),
        "IPYTHONDIR": str(own / "ipython"),
        "PYTHONPATH": str(Path(hm.__file__).resolve().parents[1]),
    }


def run_notebook(page: Page, lab: Lab) -> None:
    """Runs the cell by the keyboard until the table and the picture are there.

    A kernel reports idle shortly before it accepts keys: missed keys are sent again.
    """
    read: list[str] = []
    for _ in range(PATIENT_MS // ASKED_MS):
        try:
            page.wait_for_selector(
                '.jp-Notebook-ExecutionIndicator[data-status="idle"]', timeout=ASKED_MS
            )
            _close_dialogs(page, read)
            page.locator(".jp-Cell .cm-content").first.click(timeout=ASKED_MS)
            page.keyboard.press("Control+Enter")
            page.wait_for_selector(".hm-columns .hm-panel table", timeout=ASKED_MS)
        except TimeoutError as late:
            read.append(str(late)[:300])
            if _close_dialogs(page, read):
                page.goto(lab.page_address)
        else:
            page.wait_for_selector(".hm-columns img[alt]")
            return
    lab.fail("the table never came; on the way: " + "\n".join(read))


def _close_dialogs(page: Page, read: list[str]) -> bool:
    """Accept the default of each dialog; return whether there was one."""
    dialogs = page.locator(".jp-Dialog")
    found = dialogs.count()
    for _ in range(found):
        read.append("a dialog: " + dialogs.last.inner_text())
        page.keyboard.press("Enter")
        page.wait_for_timeout(300)
    return found > 0
