"""What people read, kept and compared: numbers at 1e-12, texts letter for letter.

    python tests/bench/outputs.py save FOLDER      # everything that the command line prints
    python tests/bench/outputs.py compare OLD NEW  # exit code 1 where something differs

Save with the package as it was, change, install, save again, compare.
"""

from __future__ import annotations

import copy
import json
import math
import subprocess
import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

DEMO = Path(__file__).parents[2] / "notebooks" / "data" / "demo_installation.json"
NUMBERS_AGREE = 1e-12
READINGS = """irradiance_w_m2,bank_v,bank_a,open_v,short_a,element_ohm
812,41.2,2.13,66.1,6.9,57.9
405,21.0,1.08,63.0,3.4,57.9
"""
JsonObject = dict[str, Any]


def water(place: JsonObject) -> None:
    """The same bank in a drum of water without a vent."""
    place["store"]["medium"] = "water"


def damp(place: JsonObject) -> None:
    """Sand that was put in damp, terminals in the bed, wood near by."""
    place["store"] |= {"moist": True, "terminals": "buried", "combustible_distance_mm": 50}


def bare(place: JsonObject) -> None:
    """Neither store, runs, devices nor space."""
    for key in ("store", "runs", "devices", "space"):
        del place[key]


def chosen(place: JsonObject) -> None:
    """All wire chosen, the air at the element not stated."""
    for run in place["runs"]:
        run["wire"] = "choose"
    del place["runs"][2]["surroundings"]["air_c"]


def named(place: JsonObject) -> None:
    """Names that hold numbers and units."""
    place["panels"][0]["group"] = "pair of 2 m"
    place["circuit"]["group"] = "pair of 2 m"
    place["runs"][0]["name"] = "feed of 10 m"
    place["devices"][0]["run"] = "feed of 10 m"


def hot(place: JsonObject) -> None:
    """A small drum, wire that melts, a limit for alternating current only."""
    place["store"] |= {"diameter_m": 0.3, "height_m": 0.45}
    place["runs"][2]["wire"] = "thhn-12-awg"
    place["devices"] = [{"part": "snap-disc-fixed", "run": "home run", "duty": "breaks dc"}]


def powers(place: JsonObject) -> None:
    """No weather: ranked by power."""
    del place["weather"]


CHANGES: dict[str, Callable[[JsonObject], None]] = {
    "demo": lambda place: None, "water": water, "damp": damp, "bare": bare, "chosen": chosen,
    "named": named, "hot": hot, "powers": powers,
}  # fmt: skip


def commands(place: str) -> Iterator[list[str]]:
    """The calls whose output is kept."""
    yield ["rank", place]
    yield ["assess", place, "--explain"]
    yield ["wires", place]
    yield ["wires", place, "--rank", "1"]
    yield ["day", place, "--month", "Jan", "--days", "3"]
    yield ["day", place, "--stagnation"]
    yield ["meter", place]
    yield ["diagnose", place, "readings.csv"]


def save(folder: Path) -> None:
    """Writes every output of every place in either unit set, as text and as JSON."""
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "readings.csv").write_text(READINGS, encoding="utf-8")
    original = json.loads(DEMO.read_text(encoding="utf-8"))
    for name, change in CHANGES.items():
        place = copy.deepcopy(original)
        change(place)
        (folder / f"{name}.place.json").write_text(json.dumps(place), encoding="utf-8")
        for words in commands(f"{name}.place.json"):
            stem = "-".join([name, words[0], *(word.strip("-") for word in words[2:3])])
            stem += "-ranked" if "--rank" in words else ""
            for units in ("si", "us"):
                keep(folder / f"{stem}.{units}.txt", [*words, "--units", units])
            keep(
                folder / f"{stem}.json",
                [word for word in words if word != "--explain"] + ["--json"],
            )


def keep(file: Path, words: list[str]) -> None:
    """Writes what one call prints, and its exit code."""
    call = [sys.executable, "-m", "heatmatch", *words]
    run = subprocess.run(call, cwd=file.parent, capture_output=True, text=True, check=False)
    file.write_text(f"{run.stdout}{run.stderr}\nexit code {run.returncode}\n", encoding="utf-8")


def differences(old: Any, new: Any, place: str = "") -> Iterator[str]:
    """Where two JSON values differ."""
    if isinstance(old, dict) and isinstance(new, dict):
        for key in sorted({*old, *new}):
            if key not in old or key not in new:
                yield f"{place}.{key}: {'added' if key in new else 'gone'}"
            else:
                yield from differences(old[key], new[key], f"{place}.{key}")
    elif isinstance(old, list) and isinstance(new, list):
        if len(old) != len(new):
            yield f"{place}: {len(old)} entries, now {len(new)}"
        for index, (before, after) in enumerate(zip(old, new, strict=False)):
            yield from differences(before, after, f"{place}[{index}]")
    elif isinstance(old, float | int) and isinstance(new, float | int):
        if not math.isclose(old, new, rel_tol=NUMBERS_AGREE, abs_tol=NUMBERS_AGREE):
            yield f"{place}: {old!r}, now {new!r}"
    elif old != new:
        yield f"{place}:\n    - {old}\n    + {new}"


def sentences(text: str) -> list[str]:
    """A text of 80 columns without its line breaks inside sentences."""
    joined: list[str] = []
    for line in text.splitlines():
        if joined and joined[-1] and line.startswith(" ") and not joined[-1].startswith(" "):
            joined[-1] += " " + line.strip()
        elif joined and len(joined[-1]) > 60 and line and line[0].islower():
            joined[-1] += " " + line
        else:
            joined.append(line.rstrip())
    return joined


def compare(old: Path, new: Path) -> int:
    """Prints what differs; the exit code."""
    files = sorted({path.name for folder in (old, new) for path in folder.glob("*.*")})
    count = 0
    for name in files:
        before, after = (folder / name for folder in (old, new))
        if not before.exists() or not after.exists():
            found = ["only in one of them"]
        elif name.endswith(".json") and not name.endswith(".place.json"):
            texts = [
                path.read_text(encoding="utf-8").rsplit("\nexit code", 1)[0]
                for path in (before, after)
            ]
            try:
                found = list(differences(*(json.loads(text) for text in texts)))
            except json.JSONDecodeError:
                found = [] if texts[0] == texts[1] else [f"- {texts[0]}\n    + {texts[1]}"]
        else:
            lines = [sentences(path.read_text(encoding="utf-8")) for path in (before, after)]
            gone = [line for line in lines[0] if line not in lines[1]]
            come = [line for line in lines[1] if line not in lines[0]]
            found = [f"- {line}" for line in gone] + [f"+ {line}" for line in come]
        for text in found:
            print(f"{name}: {text}")
        count += len(found)
    print(f"{len(files)} files, {count} differences")
    return 1 if count else 0


if __name__ == "__main__":
    match sys.argv[1:]:
        case ["save", folder]:
            save(Path(folder))
        case ["compare", old, new]:
            sys.exit(compare(Path(old), Path(new)))
        case _:
            sys.exit(__doc__)
