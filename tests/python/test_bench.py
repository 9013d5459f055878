"""The benchmarks run and print what they promise; how fast they are is not judged here."""

from __future__ import annotations

import re
import subprocess
from collections.abc import Callable
from pathlib import Path

BENCH = Path(__file__).parents[1] / "bench"
# What a line is about, and how many there are of it.
JOBS = {
    "operating point": 2,
    "energy curve of one panel": 6,
    "listed modules,": 2,
    "the same; ": 2,
    "moving a slider": 1,
    "ranking the demo": 1,
    "growth: ranking more listed modules": 1,
    "growth: the same in processor time": 1,
    "growth: weather of more rows": 1,
}


def test_the_quick_run_prints_every_job_with_a_ratio(
    python: Callable[..., subprocess.CompletedProcess[str]],
) -> None:
    done = python(str(BENCH / "season.py"), "--quick", "--core", "none")
    assert done.returncode == 0, done.stderr
    assert re.search(r"^Measured \d{4}-\d\d-\d\d, .+, \d+ cores", done.stdout)
    lines = [line for line in done.stdout.splitlines() if line.startswith("| ")][2:]
    cells = [[cell.strip() for cell in line.strip("|").split("|")] for line in lines]
    for job, count in JOBS.items():
        found = [row for row in cells if row[0].startswith(job) or f" {job}" in row[0]]
        assert len(found) == count, f"{job}: {found}"
        for row in found:
            assert len(row) == 5
            assert row[1], row
            assert row[2], row
            assert float(row[3].replace(",", "")) > 0.0
    text = done.stdout
    assert text.count("% of the exact sum") == 6
    assert len(re.findall(r"peak [\d,]+ MiB", text)) == 2
    assert text.count("extrapolated from") == 4
    for goal in ("300: ", "6 s: ", "3 s: ", "1 GiB: ", "20 ms: ", "linear (1) or better: "):
        assert re.search(re.escape(goal) + "(met|missed)", text), goal


def test_the_speed_page_shows_the_jobs_of_the_run() -> None:
    page = (BENCH / "README.md").read_text(encoding="utf-8")
    assert "tests/bench/season.py" in page
    for job in JOBS:
        assert job in page, job
