"""Every notebook runs from top to bottom, and carries no output in git."""

from __future__ import annotations

from pathlib import Path

import nbformat
import pytest
from nbclient import NotebookClient

NOTEBOOKS = sorted((Path(__file__).parents[2] / "notebooks").glob("*.ipynb"))


def test_there_are_notebooks() -> None:
    assert NOTEBOOKS


@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda path: path.stem)
def test_a_notebook_is_stripped_of_output(path: Path) -> None:
    for cell in nbformat.read(path, as_version=4).cells:
        if cell.cell_type == "code":
            assert cell.outputs == []
            assert cell.execution_count is None


@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda path: path.stem)
@pytest.mark.filterwarnings("ignore::DeprecationWarning", "ignore::RuntimeWarning")
@pytest.mark.filterwarnings("ignore::pytest.PytestUnraisableExceptionWarning")
def test_a_notebook_runs(path: Path, tmp_path: Path) -> None:
    notebook = nbformat.read(path, as_version=4)
    place = {"metadata": {"path": str(tmp_path)}}  # what it writes stays there
    NotebookClient(notebook, timeout=120, kernel_name="python3", resources=place).execute()
    outputs = [output for cell in notebook.cells for output in cell.get("outputs", [])]
    assert any("image/png" in output.get("data", {}) for output in outputs)


@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda path: path.stem)
def test_no_more_than_25_lines_of_code_stand_between_two_texts(path: Path) -> None:
    lines = 0
    for cell in nbformat.read(path, as_version=4).cells:
        code = cell.cell_type == "code"
        lines = lines + sum(1 for line in cell.source.splitlines() if line.strip()) if code else 0
        assert lines <= 25, cell.id


def test_the_notebooks_are_one_course() -> None:
    names = [path.stem for path in NOTEBOOKS]
    for place, path in enumerate(NOTEBOOKS):
        first = nbformat.read(path, as_version=4).cells[0].source
        for neighbour in (*names[max(0, place - 1) : place], *names[place + 1 : place + 2]):
            assert f"`{neighbour}`" in first
