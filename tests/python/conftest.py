"""What the Python tests share: catalogs, the demo installation, the command line."""

from __future__ import annotations

import copy
import os
import subprocess
import sys
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import heatmatch as hm
import pytest
from heatmatch import cli

SOURCE = {"source": "the label", "source_kind": "nameplate"}

# The fewest fields that make a part of each kind.
MINIMAL_FIELDS: dict[str, dict[str, Any]] = {
    "panel": {"v_oc": 37.5, "i_sc": 8.66},
    "element": {"family": "oven lower", "rated_v": 240, "rated_w": 1000},
    "wire": {
        "conductor": "copper",
        "plating": "tin",
        "area_mm2": "14 AWG",
        "insulation": "silicone-180",
    },
    "insulation": {"family": "silicone rubber", "limit_c": 180},
    "control": {"family": "isolator"},
    "connector": {"family": "ring terminal", "limit_c": 200},
    "medium": {
        "form": "granular",
        "k20_w_mk": 0.27,
        "density_kg_m3": 1550,
        "heat_capacity_j_kgk": [{"t_c": 20, "heat_capacity_j_kgk": 800}],
    },
    "alloy": {},
    "sheath": {"verdict_limit_c": 540, "hard_limit_c": 649},
    "cover": {"u_w_m2k": 3.2},
}


@dataclass
class CommandResult:
    """Result of one call of the command line."""

    code: int
    out: str
    err: str


def plural_of(kind: str) -> str:
    """The name of the catalog's view of that kind."""
    return {"medium": "media"}.get(kind, kind + "s")


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Leave what is marked long to the long run."""
    if os.environ.get("HEATMATCH_LONG_RUN"):
        return
    left = pytest.mark.skip(reason="of the long run")
    for item in items:
        if item.get_closest_marker("long"):
            item.add_marker(left)


def pytest_terminal_summary(terminalreporter: Any) -> None:
    """Say how many dangers are not found yet, how many rows still flatter, what tests told."""
    for name in ("test_must_never_pass.py::test_assess", "test_never_kinder.py::"):
        waits, found = (
            [report for report in terminalreporter.stats.get(of, []) if name in report.nodeid]
            for of in ("xfailed", "xpassed")
        )
        if waits or found:
            what = name.split("::")[0].removeprefix("test_").removesuffix(".py").replace("_", " ")
            line = f"{what}: {len(waits)} wait for the library, {len(found)} pass and still wait"
            terminalreporter.write_line(line)
    for reports in terminalreporter.stats.values():
        for report in reports:
            told = [text for name, text in getattr(report, "user_properties", ()) if name == "told"]
            for text in told if getattr(report, "when", "") == "call" else ():
                terminalreporter.write_line(text)


@pytest.fixture(scope="session")
def starter() -> hm.Catalog:
    """The read-only starter catalog."""
    return hm.Catalog.starter()


@pytest.fixture
def own(tmp_path: Path) -> hm.Catalog:
    """A separate catalog file, new for each test."""
    return hm.Catalog.open(tmp_path / "mine.heatmatch")


@pytest.fixture(scope="session")
def view_of() -> Callable[[hm.Catalog, str], hm.PartsView]:
    """Gives the parts of one kind of a catalog."""
    return lambda catalog, kind: getattr(catalog, plural_of(kind))


@pytest.fixture(scope="session")
def class_of() -> Callable[[str], Any]:
    """Gives the class of a kind of part."""
    return lambda kind: getattr(hm, kind.capitalize())


@pytest.fixture(scope="session")
def minimal() -> Callable[..., Any]:
    """Makes a part of a kind with the fewest fields, some of them changed or added."""

    def make(kind: str, **changes: Any) -> Any:
        fields = {"id": f"my-{kind}", "label": f"My {kind}", **MINIMAL_FIELDS[kind], **SOURCE}
        return getattr(hm, kind.capitalize())(**copy.deepcopy(fields | changes))

    return make


@pytest.fixture(scope="session")
def demo() -> hm.Installation:
    """The demo installation."""
    return hm.demo()


@pytest.fixture
def changed_demo(demo: hm.Installation) -> Callable[[Callable[[dict[str, Any]], Any]], Any]:
    """Gives the demo installation after a change to its dict."""

    def make(change: Callable[[dict[str, Any]], Any]) -> hm.Installation:
        plain = demo.to_dict()
        change(plain)
        return hm.Installation.from_dict(plain)

    return make


@pytest.fixture
def demo_file(tmp_path: Path, demo: hm.Installation) -> Path:
    """The demo installation as a file."""
    path = tmp_path / "demo.json"
    demo.to_json(path)
    return path


@pytest.fixture(scope="session")
def demo_ranking(starter: hm.Catalog, demo: hm.Installation) -> hm.Ranking:
    """The demo installation, ranked once with the default options."""
    return hm.rank(starter, demo)


@pytest.fixture(scope="session")
def standing(starter: hm.Catalog, demo: hm.Installation) -> hm.Candidate:
    """The existing circuit of the demo installation."""
    return hm.assess(starter, demo)


@pytest.fixture
def command(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> Callable[..., CommandResult]:
    """Runs the command line in this process."""
    monkeypatch.delenv("HEATMATCH_CATALOG", raising=False)
    monkeypatch.setenv("COLUMNS", "80")

    def run(*arguments: object) -> CommandResult:
        capsys.readouterr()
        try:
            code = cli.main([str(argument) for argument in arguments])
        except SystemExit as stop:
            code = int(stop.code or 0)
        captured = capsys.readouterr()
        return CommandResult(code, captured.out, captured.err)

    return run


@pytest.fixture
def python(tmp_path: Path) -> Callable[..., subprocess.CompletedProcess[str]]:
    """Run a separate Python, which finds the same heatmatch."""
    folder = str(Path(hm.__file__).resolve().parents[1])

    def run(
        *arguments: str, timeout: float = 300, **variables: str
    ) -> subprocess.CompletedProcess[str]:
        environment = {**os.environ, "PYTHONPATH": folder, "PYTHONIOENCODING": "utf-8"}
        environment.pop("HEATMATCH_CATALOG", None)
        return subprocess.run(
            [sys.executable, *arguments],
            capture_output=True,
            encoding="utf-8",
            errors="replace",
            cwd=tmp_path,
            env=environment | variables,
            timeout=timeout,
            check=False,
        )

    return run


BARE = {"heatmatch_installation": 1, "site": {"record_low_c": -20}}
GROUPS = {
    "script": "<script>alert(1)</script>",
    "entities": "a & b </td> \"c\" 'd'",
    "hebrew": "לוח שמש",
    "emoji": "☀️👩‍🔧",
    "long": "barn " * 2000,
    "lines": "barn\npair",
    "braces": "{value} {0}",
}


@pytest.fixture
def ranked(starter: hm.Catalog) -> Callable[..., hm.Ranking]:
    """Ranks panels of one group with the elements of a filter."""

    def rank(group: str, panel: str, count: int, elements: Any) -> hm.Ranking:
        panels = [{"group": group, "panel": panel, "count": count}]
        plain = {**BARE, "panels": panels, "elements": elements}
        return hm.rank(starter, hm.Installation.from_dict(plain))

    return rank


@pytest.fixture(params=GROUPS.values(), ids=GROUPS.keys())
def odd_group(request: pytest.FixtureRequest) -> str:
    """Names that a table, a page or a message could stumble over."""
    return str(request.param)
