"""What the benchmarks work on: a year of weather, the public module list, installations."""

from __future__ import annotations

import copy
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import heatmatch as hm
import numpy as np
import numpy.typing as npt

Array = npt.NDArray[np.float64]
YEAR = Path(__file__).parents[1] / "reference" / "weather_greensboro.csv"
DAYS = (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)
HEADER_ROWS = 3  # of the module list: names, units, types


def year_columns() -> tuple[Array, Array]:
    """Plane irradiance and cell temperature of the 8,760 hours."""
    rows = np.loadtxt(YEAR, delimiter=",", skiprows=2, usecols=(6, 7))
    return rows[:, 0], rows[:, 1]


def months(times: int = 1) -> npt.NDArray[np.int64]:
    """The month of every row, each hour that many times."""
    return np.repeat(np.arange(1, 13), np.array(DAYS) * 24 * times)


def year_weather() -> hm.Weather:
    """The year as weather of the plane."""
    sun, cell = year_columns()
    return hm.Weather.from_plane(sun, cell, 1.0, month=months())


def finer_columns(times: int) -> tuple[Array, Array]:
    """The year with every hour in that many rows, each moved a little at random."""
    sun, cell = (np.repeat(column, times) for column in year_columns())
    rng = np.random.default_rng(5)
    sun = sun * rng.uniform(0.7, 1.2, sun.size)
    return sun, cell + rng.normal(0.0, 2.0, cell.size)


def list_of_modules() -> Path:
    """The public module list that the pvlib wheel carries; the newest edition of it."""
    import pvlib  # late: a process whose memory is measured does without it

    folder = Path(pvlib.__file__).parent / "data"
    editions = sorted(folder.glob("sam-library-cec-modules-*.csv"))
    if not editions:
        raise SystemExit(f"no sam-library-cec-modules-*.csv in {folder}: install pvlib with it")
    return editions[-1]


def shortened(path: Path, count: int, to: Path) -> Path:
    """A module list of about that many modules, taken at equal steps."""
    rows = path.read_text(encoding="utf-8").splitlines(keepends=True)
    head, modules = rows[:HEADER_ROWS], rows[HEADER_ROWS:]
    to.write_text("".join(head + modules[:: max(1, len(modules) // count)]), encoding="utf-8")
    return to


def every_hookup(panels: list[str]) -> hm.Installation:
    """Ten of each panel, four of every element of the catalog; neither runs nor devices."""
    return hm.Installation.from_dict(
        {
            "heatmatch_installation": 1,
            "site": {"record_low_c": -20},
            "panels": [{"group": panel, "panel": panel, "count": 10} for panel in panels],
            "elements": [{"any": {}, "count": 4}],
        }
    )


def slider_positions() -> Iterator[hm.Installation]:
    """The demo with every element and without budget, each time at another record low."""
    plain: dict[str, Any] = hm.demo().to_dict()
    plain["elements"] = [{"any": {}, "count": 4}]
    del plain["goals"]["budget"]
    del plain["goals"]["currency"]
    step = 0
    while True:
        moved = copy.deepcopy(plain)
        moved["site"]["record_low_c"] = -32.0 + 0.1 * (step % 200)
        step += 1
        yield hm.Installation.from_dict(moved)


def demo_weather() -> hm.Weather:
    """The hours that the demo's twelve months make."""
    plain = hm.demo().to_dict()
    means = plain["weather"]
    return hm.Weather.from_months(
        hm.demo().site, means["sun_hours"], means["temp_min_c"], means["temp_max_c"]
    )
