"""Tries faults of files on every operation of heatmatch and says which claims are false.

LD_PRELOAD=build/release/tests/faults/heatmatch_faults.so python tests/faults/trial.py catalog
"""

from __future__ import annotations

import argparse
import os
import sys
import tempfile
import time
from pathlib import Path

import catalog_trial
import output_trial
import power_trial
import shim
from claims import Tally

MEMORY = "/dev/shm"  # no disk need wait for what is tried


def main() -> int:
    """Runs the trial; 1 where a claim is false."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("what", choices=("catalog", "outputs", "power"))
    parser.add_argument("--most", type=int, default=10**9, help="cases an operation")
    parser.add_argument("--only", default="", help="operations with this in their name")
    parser.add_argument("--folder", default=MEMORY if os.access(MEMORY, os.W_OK) else None)
    options = parser.parse_args()
    if not shim.is_loaded():
        print("heatmatch_faults.so is not preloaded", file=sys.stderr)
        return 2
    begun = time.monotonic()
    tally = Tally()
    with tempfile.TemporaryDirectory(dir=options.folder) as work:
        trials = {"catalog": catalog_trial, "outputs": output_trial, "power": power_trial}
        trials[options.what].try_all(Path(work).resolve(), tally, options.most, options.only)
    print(tally.table())
    print(f"{time.monotonic() - begun:.1f} s", file=sys.stderr)
    for line in tally.found:
        print(f"FALSE {line}")
    return 1 if tally.found else 0


if __name__ == "__main__":
    sys.exit(main())
