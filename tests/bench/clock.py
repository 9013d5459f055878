"""Times of jobs that are run in turn, and the table that tells them."""

from __future__ import annotations

import os
import platform
import statistics
import time
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path

Work = Callable[[], object]


def seconds_of(work: Work) -> float:
    """How long one run takes [s]."""
    start = time.perf_counter()
    work()
    return time.perf_counter() - start


def in_turn(works: Mapping[str, Work], rounds: int) -> dict[str, list[float]]:
    """Times of several runs of each, one after the other so that a busy moment hits all [s]."""
    times: dict[str, list[float]] = {name: [] for name in works}
    for _ in range(rounds):
        for name, work in works.items():
            times[name].append(seconds_of(work))
    return times


def best_in_turn(works: Mapping[str, Work], rounds: int) -> dict[str, float]:
    """Shortest run of each [s]."""
    return {name: min(times) for name, times in in_turn(works, rounds).items()}


def median_in_turn(works: Mapping[str, Work], rounds: int) -> dict[str, float]:
    """Median run of each [s]."""
    return {name: statistics.median(times) for name, times in in_turn(works, rounds).items()}


def three_digits(value: float) -> str:
    """A number to three digits, without an exponent."""
    return f"{value:,.0f}" if value >= 100.0 else f"{value:.3g}"


def duration(seconds: float) -> str:
    """A time with the unit that suits it."""
    for unit, size in (("h", 3600.0), ("min", 60.0), ("s", 1.0), ("ms", 1e-3), ("us", 1e-6)):
        if seconds >= size:
            return f"{three_digits(seconds / size)} {unit}"
    return f"{three_digits(seconds / 1e-9)} ns"


def goal(over: float, text: str) -> str:
    """A goal, met, or missed by the factor that is lacking."""
    return f"{text}: met" if over <= 1.0 else f"{text}: missed, a factor of {over:.3g} lacks"


@dataclass
class Line:
    """One line of the table: a job by heatmatch beside its peer."""

    job: str
    ours: str
    peer: str
    ratio: str
    goal: str = ""


def ratio_of(theirs: float, ours: float) -> str:
    """How many times as long the peer takes."""
    return three_digits(theirs / ours)


def table(lines: list[Line]) -> str:
    """The lines as Markdown."""
    rows = [("job", "heatmatch", "peer", "ratio", "goal"), ("---", "---", "---", "---:", "---")]
    rows += [(line.job, line.ours, line.peer, line.ratio, line.goal) for line in lines]
    return "\n".join("| " + " | ".join(row) + " |" for row in rows)


def processor() -> str:
    """The processor as the system names it."""
    try:
        text = Path("/proc/cpuinfo").read_text(encoding="utf-8")
    except OSError:
        return platform.processor() or platform.machine()
    names = [row.split(":", 1)[1].strip() for row in text.splitlines() if "model name" in row]
    models = [
        row.split(":", 1)[1].strip() for row in text.splitlines() if row.startswith("model\t")
    ]
    return f"{names[0]}, model {models[0]}" if names and models else platform.machine()


def machine() -> str:
    """Date, processor, cores and how busy they are."""
    load = ", ".join(f"{value:.1f}" for value in os.getloadavg())
    return (
        f"{time.strftime('%Y-%m-%d')}, {processor()}, {os.cpu_count()} cores, load averages "
        f"{load} (1, 5, 15 minutes)"
    )
