"""Ranks a module list with every element over a year, in a process of its own; prints JSON.

``python whole_list.py LIST.csv ROUNDS WIDTH[,WIDTH...] COUNT[,COUNT...]``; a count of 0 is all.
"""

from __future__ import annotations

import itertools
import json
import resource
import sys
import tempfile
import time
from pathlib import Path

import heatmatch as hm
import jobs
import numpy as np

THREADS = 2


def peak_mib() -> float:
    """Largest memory of this process so far [MiB]."""
    try:  # getrusage counts what the parent held before this program was started
        status = Path("/proc/self/status").read_text(encoding="utf-8")
        return next(int(row.split()[1]) for row in status.splitlines() if "VmHWM" in row) / 1024
    except (OSError, StopIteration):
        return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024


def cpu_s() -> float:
    """Processor time of all threads so far [s]."""
    used = resource.getrusage(resource.RUSAGE_SELF)
    return used.ru_utime + used.ru_stime


def main() -> None:
    """Imports the list, ranks in turn, tells times and memory."""
    path, rounds = Path(sys.argv[1]), int(sys.argv[2])
    widths = sys.argv[3].split(",")
    counts = [int(count) for count in sys.argv[4].split(",")]
    with tempfile.TemporaryDirectory() as folder:
        catalog = hm.Catalog.open(Path(folder) / "list.heatmatch")
        starter = set(hm.Catalog.starter().panels)
        start = time.perf_counter()
        catalog.import_module_csv(path, keep_good=True)
        import_s = time.perf_counter() - start
        listed = [panel for panel in catalog.panels if panel not in starter]
        shuffled = [str(panel) for panel in np.random.default_rng(3).permutation(listed)]
        weather = jobs.year_weather()
        runs = []
        for _, count, width in itertools.product(range(rounds), counts, widths):
            panels = shuffled[:count] if count else listed
            installation = jobs.every_hookup(panels)
            cpu, start = cpu_s(), time.perf_counter()
            ranking = hm.rank(
                catalog,
                installation,
                weather,
                top=20,
                keep_rejected=20,
                threads=THREADS,
                vector_width=width,
            )
            wall = time.perf_counter() - start
            runs.append(
                {
                    "width": width,
                    "panels": len(panels),
                    "pairings": ranking.evaluated,
                    "wall_s": wall,
                    "cpu_s": cpu_s() - cpu,
                }
            )
        catalog.close()
    print(json.dumps({"import_s": import_s, "runs": runs, "peak_mib": peak_mib()}))


if __name__ == "__main__":
    main()
