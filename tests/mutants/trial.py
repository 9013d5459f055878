"""A trial of planted errors: does a test fail where the library flatters?

    python tests/mutants/trial.py --build build/release [--only lid] [--table]

Each mutant replaces one text of one source, which must stand there once; the room is built again,
the tests named are run, and one of them has to fail. The source is put back whatever happens. Those
of tables beside this file (planted_*.csv) are one line each: name, file, old, new, tests.
"""

from __future__ import annotations

import argparse
import csv
import subprocess
import sys
import time
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
SOURCES = ROOT / "libheatmatch" / "src"


@dataclass(frozen=True)
class Mutant:
    """An error, where it is planted and which tests stand nearest."""

    name: str
    file: str
    old: str
    new: str
    tests: tuple[str, ...]


MARGINS, CIRCUIT, DAYS = "match/margins", "match/circuit", "operation/days"
SURVIVORS = "test_survivors"
MUTANTS = (
    Mutant(
        "the distance from which a wire would do is told from the far end",
        f"{MARGINS}/tail_margins.cpp",
        'with<"distance">(100.0 * *distance_m,',
        'with<"distance">(100.0 * (view.tail.run.run.length_m - *distance_m),',
        ("test_tail_margins", SURVIVORS),
    ),
    Mutant(
        "wood beside the lid is judged by the wall",
        f"{MARGINS}/store_margins.cpp",
        "const double hottest_c = std::max(view.point.wall_c, view.point.lid_c);",
        "const double hottest_c = view.point.wall_c;",
        ("test_store_margins", SURVIVORS),
    ),
    Mutant(
        "the lid is judged where the fill conducts best",
        f"{CIRCUIT}/bank_heat.cpp",
        ".lid_c = std::max({low.lid_c, typical.lid_c, high.lid_c}),",
        ".lid_c = high.lid_c,",
        ("test_store_margins", "test_bank_heat", SURVIVORS),
    ),
    Mutant(
        "the wall is judged at one end of the band",
        f"{CIRCUIT}/bank_heat.cpp",
        ".wall_c = std::max({low.wall_c, typical.wall_c, high.wall_c}),",
        ".wall_c = low.wall_c,",
        ("test_store_margins", "test_bank_heat", SURVIVORS),
    ),
    Mutant(
        "stagnation is judged in the season's air",
        f"{CIRCUIT}/bank_heat.cpp",
        ".air_c = stagnation ? store.hottest_air_c : store.air_c,",
        ".air_c = store.air_c,",
        ("test_bank_heat", "test_stagnation", SURVIVORS),
    ),
    Mutant(
        "a stagnation is lived through in the season's air",
        f"{DAYS}/stagnation.cpp",
        ".air_around_c = air_c,",
        ".air_around_c = candidate.circuit.heat->store->air_c,",
        ("test_stagnation", SURVIVORS),
    ),
    Mutant(
        "joints carry the short-circuit current once",
        f"{MARGINS}/run_margins.cpp",
        ".value = lasting_current_factor * run.code_isc_a,\n"
        "                  .limit = connector.current_rating_a,",
        ".value = run.code_isc_a,\n                  .limit = connector.current_rating_a,",
        ("test_run_margins", SURVIVORS),
    ),
    Mutant(
        "a pair for several poles holds for one",
        f"{CIRCUIT}/opening.cpp",
        "opening.rated_a = breaking_current_a(rated, opening.volts, used);",
        "opening.rated_a = breaking_current_a(rated, opening.volts, 99);",
        ("test_opens", "test_device_margins", SURVIVORS),
    ),
    Mutant(
        "volts of a pair for several poles count for one",
        f"{CIRCUIT}/opening.cpp",
        "if (rating.poles <= used) opening.rated_v",
        "opening.rated_v",
        ("test_opens", "test_device_margins", SURVIVORS),
    ),
    Mutant(
        "a welded thermostat welds the limit",
        f"{DAYS}/day_switches.cpp",
        "return fault_ == SwitchCase::thermostat_welded && made.resets;",
        "return fault_ == SwitchCase::thermostat_welded;",
        ("test_day", SURVIVORS),
    ),
    Mutant(
        "one contactor for thermostat and limit is no common cause",
        f"{MARGINS}/opening_margins.cpp",
        "return untold || opening.breaker == breaker;",
        "return false;",
        ("test_device_margins", "test_opening_margins"),
    ),
)


def of_tables() -> tuple[Mutant, ...]:
    rows: list[dict[str, str]] = []
    for table in sorted(Path(__file__).parent.glob("planted_*.csv")):
        with table.open(newline="", encoding="utf-8") as lines:
            rows += csv.DictReader(lines)
    return tuple(
        Mutant(row["name"], row["file"], row["old"], row["new"], tuple(row["tests"].split()))
        for row in rows
    )


def build(folder: Path) -> bool:
    command = ["cmake", "--build", str(folder), "--target", "heatmatch_tests", "--", "--quiet"]
    return subprocess.run(command, capture_output=True, check=False).returncode == 0


def failing(folder: Path, tests: tuple[str, ...]) -> list[str]:
    """Which of these files of tests fail."""
    program = folder / "tests" / "cpp" / "heatmatch_tests"

    def fails(test: str) -> bool:
        command = [str(program), f"--source-file=*/{test}.cpp", "--no-intro", "--minimal"]
        return subprocess.run(command, capture_output=True, check=False).returncode != 0

    return [test for test in tests if fails(test)]


def tried(mutant: Mutant, folder: Path) -> list[str] | None:
    """The tests that fail by a mutant; none where it does not compile."""
    path = SOURCES / mutant.file
    text = path.read_text(encoding="utf-8")
    found = text.count(mutant.old)
    if found != 1:
        sys.exit(f"{mutant.name}: its text stands {found} times in {mutant.file}, not once")
    try:
        path.write_text(text.replace(mutant.old, mutant.new), encoding="utf-8")
        return failing(folder, mutant.tests) if build(folder) else None
    finally:
        path.write_text(text, encoding="utf-8")


def main() -> None:
    options = argparse.ArgumentParser(description=__doc__)
    options.add_argument("--build", type=Path, default=ROOT / "build" / "release")
    options.add_argument("--only", default="", help="mutants whose name has this in it")
    options.add_argument("--table", action="store_true", help="print the table of tests/README.md")
    asked = options.parse_args()
    chosen = [mutant for mutant in (*MUTANTS, *of_tables()) if asked.only in mutant.name]
    everything = tuple({test for mutant in chosen for test in mutant.tests})
    if not build(asked.build) or failing(asked.build, everything):
        sys.exit("the tests have to pass before errors are planted")
    if asked.table:
        print(f"| planted error, {time.strftime('%Y-%m-%d')} | in | killed by |\n|---|---|---|")
    survivors = []
    for mutant in chosen:
        killed_by = tried(mutant, asked.build)
        if not killed_by:
            survivors.append(mutant.name)
        how = "does not compile" if killed_by is None else ", ".join(killed_by) or "nothing"
        row = (mutant.name, mutant.file, how)
        print("| " + " | ".join(row) + " |" if asked.table else ": ".join(row), flush=True)
    build(asked.build)
    if survivors:
        sys.exit(f"{len(survivors)} of {len(chosen)} planted errors are seen by no test")


if __name__ == "__main__":
    main()
