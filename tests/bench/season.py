"""The speed of operating points, season curves and the ranking beside their peers, as a table.

Run with ``.venv/bin/python tests/bench/season.py``; ``--quick`` runs everything on little data, to
see that it works: its times mean nothing.
"""

from __future__ import annotations

import argparse
import itertools
import json
import pickle
import subprocess
import sys
import tempfile
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import anew
import clock
import growth
import heatmatch as hm
import jobs
import numpy as np
import peers
from clock import Line, duration, goal, ratio_of

HERE = Path(__file__).parent
CORE = HERE.parents[1] / "build" / "release" / "tests" / "bench" / "heatmatch_bench"
WIDE = hm.widest_vectors()


@dataclass
class Size:
    """How much is done."""

    points: int = 200_000
    ohms: int = 64
    rounds: int = 7
    modules: int = 0  # 0 for all
    list_rounds: int = 2
    sample: int = 300
    slider: int = 50
    exact_slider: int = 7
    growth: tuple[int, ...] = (1000, 5000, 0)
    finer: tuple[int, ...] = (1, 10, 60)


QUICK = Size(2000, 8, 1, 60, 1, 4, 3, 1, (20, 40, 0), (1, 2))


def core_points(core: Path) -> dict[str, float]:
    """Time per point of the C++ core in each build of its loops [s]."""
    command = [
        str(core),
        "--benchmark_filter=operating_points_of_arrays",
        "--benchmark_format=json",
        "--benchmark_min_time=0.2",
    ]
    done = subprocess.run(command, capture_output=True, text=True, check=True)
    results = json.loads(done.stdout)["benchmarks"]
    return {
        result["name"].rsplit("/", 1)[1]: result["per_point"]
        for result in results
        if "per_point" in result
    }


def operating_points(size: Size, core: Path) -> list[Line]:
    """Random operating points."""
    loads = peers.Loads(size.points)
    theirs = loads.pvlib()
    good = np.isfinite(theirs)
    error = np.max(np.abs(loads.heatmatch()[good] / theirs[good] - 1.0))
    lost = f", which gives no number at {size.points - good.sum():,}" if not good.all() else ""
    best = clock.best_in_turn(
        {"ours": loads.heatmatch, "blocks": loads.pvlib, "whole": loads.pvlib_whole}, size.rounds
    )
    each = {name: time / size.points for name, time in best.items()}
    job = f"operating point, {size.points:,} random ones"
    names = {"blocks": f"pvlib, blocks of {peers.BLOCK:,}", "whole": "pvlib, whole arrays"}
    lines = [
        Line(
            f"{job}; Python, {WIDE}; differs by at most {error:.0e} from pvlib{lost}",
            duration(each["ours"]),
            f"{duration(each[peer])} ({name})",
            ratio_of(each[peer], each["ours"]),
        )
        for peer, name in names.items()
    ]
    if core.exists():
        runs, peer = [], []
        for _ in range(min(size.rounds, 3)):
            runs.append(core_points(core))
            peer.append(clock.seconds_of(loads.pvlib) / size.points)
        for width in runs[0]:
            ours = min(run[width] for run in runs)
            lines.append(
                Line(
                    f"operating point, 20,000 random ones; C++, {width}",
                    duration(ours),
                    f"{duration(min(peer))} ({names['blocks']})",
                    ratio_of(min(peer), ours),
                )
            )
    return lines


def year() -> peers.Year:
    """The sunlit hours."""
    sun, cell = jobs.year_columns()
    return peers.Year(sun[sun > 0.0], cell[sun > 0.0])


def energy_curve(size: Size) -> list[Line]:
    """One panel over a year into many resistances; the weather is condensed for the first panel."""
    panel = hm.Catalog.starter().panels["silicon-60-cell-245"]
    diode = hm.fit_single_diode(panel, use_gamma=False)
    weather, hours = jobs.year_weather(), year()
    noon = panel.v_mp / panel.i_mp
    ohms = noon * np.geomspace(0.15, 20.0, size.ohms)  # between those of the curve's own table

    def ours(width: str) -> Callable[[], peers.Array]:
        return lambda: hm.EnergyCurve(diode, weather, vector_width=width).delivered_kwh(ohms)

    def first() -> peers.Array:
        return hm.EnergyCurve(diode, unseen.pop(), vector_width=WIDE).delivered_kwh(ohms)

    unseen = [pickle.loads(pickle.dumps(weather)) for _ in range(size.rounds + 1)]

    def theirs(block: int) -> Callable[[], peers.Array]:
        return lambda: peers.hours_of_diode(diode, hours).kwh(ohms, block)

    exact = theirs(peers.BLOCK)()
    works: dict[str, clock.Work] = {
        "portable": ours("portable"),
        WIDE: ours(WIDE),
        f"{WIDE}, the first in its weather, which is condensed": first,
    }
    in_blocks, plain = "pvlib hour by hour, in blocks", "pvlib hour by hour, whole arrays"
    theirs_by = {in_blocks: theirs(peers.BLOCK), plain: theirs(hours.sun_w_m2.size * size.ohms)}
    best = clock.best_in_turn(works | theirs_by, size.rounds)
    lines = []
    for width, peer in itertools.product(works, theirs_by):
        error = np.max(np.abs(ours(width.split(",")[0])() / exact - 1.0))
        lines.append(
            Line(
                f"energy curve of one panel, {size.ohms} resistances x {hours.sun_w_m2.size:,} "
                f"sunlit hours; {width}; error at most "
                f"{100 * error:.2f} % of the exact sum",
                duration(best[width]),
                f"{duration(best[peer])} ({peer})",
                ratio_of(best[peer], best[width]),
                goal(300.0 * best[width] / best[peer], "300"),
            )
        )
    return lines


def fresh_process(path: Path, rounds: int, widths: str, counts: str) -> dict[str, Any]:
    """Ranks the list in a process of its own."""
    command = [sys.executable, str(HERE / "whole_list.py"), str(path), str(rounds), widths, counts]
    done = subprocess.run(command, stdout=subprocess.PIPE, text=True, check=True)
    return dict(json.loads(done.stdout))


def sampled_peers(size: Size) -> tuple[clock.Work, clock.Work]:
    """A random sample of pairings summed over the year, and one panel's table with look-ups."""
    rng = np.random.default_rng(7)
    diodes = [
        hm.fit_single_diode(panel, use_gamma=False)
        for panel in hm.Catalog.starter().panels.values()
    ]
    hours = year()
    curves = [peers.hours_of_diode(diode, hours) for diode in diodes]
    picks = rng.integers(len(diodes), size=size.sample)
    ohms = 10 ** rng.uniform(0.0, 2.0, size.sample)

    def pairings() -> None:
        for pick, ohm in zip(picks, ohms, strict=True):
            curves[pick].kwh(np.array([ohm]))

    grid = np.geomspace(0.5, 300.0, 64)
    loads = np.log(10 ** rng.uniform(0.0, 2.0, 14_256))

    def one_panel() -> None:
        np.interp(loads, np.log(grid), peers.hours_of_diode(diodes[0], hours).kwh(grid))

    return pairings, one_panel


def whole_list(size: Size, path: Path) -> list[Line]:
    """Every listed module with every element, all hook-ups, over a year."""
    pairings, one_panel = sampled_peers(size)
    done = {}
    peer_pairing, peer_panel = [], []
    for width in ("portable", WIDE):
        peer_pairing.append(clock.seconds_of(pairings) / size.sample)
        done[width] = fresh_process(path, size.list_rounds, width, "0")
        peer_panel.append(clock.best_in_turn({"panel": one_panel}, 3)["panel"])
    lines = []
    for width, limit in (("portable", 6.0), (WIDE, 3.0)):
        best = min(done[width]["runs"], key=lambda run: run["wall_s"])
        cpu = min(run["cpu_s"] for run in done[width]["runs"])
        wall, count, panels = best["wall_s"], best["pairings"], best["panels"]
        peak = done[width]["peak_mib"]
        job = f"{panels:,} listed modules, {count:,} pairings over the year, 2 threads; {width}"
        by_sum = min(peer_pairing) * count
        by_table = min(peer_panel) * panels
        lines.append(
            Line(
                job,
                f"{wall:.2f} s ({cpu:.2f} s of processor time), peak {peak:,.0f} MiB",
                f"{duration(by_sum)} (pvlib, every pairing summed; extrapolated from "
                f"{size.sample} on one core)",
                ratio_of(by_sum, wall),
                goal(wall / limit, f"{limit:g} s") + "; " + goal(peak / 1024.0, "1 GiB"),
            )
        )
        lines.append(
            Line(
                f"the same; {width}",
                f"{wall:.2f} s",
                f"{duration(by_table)} (pvlib, a table of 64 resistances a panel and np.interp, "
                "energy only; extrapolated from one panel on one core)",
                ratio_of(by_table, wall),
            )
        )
    lines.append(
        Line("reading that list into a catalog", f"{done[WIDE]['import_s']:.2f} s", "none", "")
    )
    return lines


def main() -> None:
    """Measures everything and prints the table."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--quick", action="store_true", help="little data, meaningless times")
    parser.add_argument("--core", type=Path, default=CORE, help="heatmatch_bench, if it is built")
    given = parser.parse_args()
    size = QUICK if given.quick else Size()
    print(f"Measured {clock.machine()}.\n", flush=True)
    with tempfile.TemporaryDirectory() as folder:
        path = jobs.list_of_modules()
        if size.modules:
            path = jobs.shortened(path, size.modules, Path(folder) / "some.csv")
        lines = operating_points(size, given.core)
        lines += energy_curve(size)
        lines += whole_list(size, path)
        lines += anew.lines(size.slider, size.exact_slider)
        counts = ",".join(str(count) for count in size.growth)
        lines += growth.of_panels(fresh_process(path, size.list_rounds, WIDE, counts)["runs"])
    lines += growth.of_rows(size.finer, min(size.rounds, 3))
    print(clock.table(lines))


if __name__ == "__main__":
    main()
