"""The shape of the house: rooms on floors, small files, names found, sources cited."""

from __future__ import annotations

import json
import re
import subprocess
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
LIBRARY = ROOT / "libheatmatch"
# A room includes itself and lower floors only; a room in a room counts as a floor of its own.
FLOORS = (
    {"base"},
    {"parts"},
    {"setting"},
    {"solar", "heat", "text"},
    {"match/circuit", "catalog"},
    {"match/margins"},
    {"match/candidate"},
    {"match/rank"},
    {"match/plan"},
    {"operation/days", "operation/calibration", "operation/meter"},
    {"operation/diagnosis"},
    {"answer"},
)
FLOOR = {room: floor for floor, rooms in enumerate(FLOORS) for room in rooms}
HOUSE = (LIBRARY / "include" / "heatmatch", LIBRARY / "src")
TOP_LEVEL = {
    "CMakeLists.txt", "CMakePresets.json", "pyproject.toml", "README.md", "DEVELOPERS.md",
    "CHANGELOG.md", "LICENSE", "libheatmatch", "bindings", "catalog", "tests", "notebooks",
}  # fmt: skip
INCLUDE = re.compile(r'^#include [<"]([^>"]+)[>"]', re.MULTILINE)
CITE = re.compile(r"@cite ([a-z0-9-]+)")


def tracked(*patterns: str) -> list[Path]:
    """Files of the repository that git tracks or would add."""
    command = ["git", "ls-files", "--cached", "--others", "--exclude-standard", "--", *patterns]
    listed = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=True).stdout
    paths = (ROOT / line for line in listed.splitlines())
    return [path for path in paths if path.is_file()]


def room_of(path: Path) -> str:
    """The room a library file is in, by its place in the house: `base`, `match/margins`."""
    house = next(root for root in HOUSE if path.is_relative_to(root))
    return path.relative_to(house).parent.as_posix()


def library_files() -> list[Path]:
    """All headers and sources of the library."""
    return [path for root in HOUSE for path in root.rglob("*.[ch]pp")]


def included_file(path: Path, included: str) -> Path | None:
    """The file of the library that an include names: public, private, or beside the file."""
    places = (LIBRARY / "include" / included, LIBRARY / "src" / included, path.parent / included)
    return next((place.resolve() for place in places if place.is_file()), None)


@pytest.mark.parametrize("path", library_files(), ids=lambda path: f"{room_of(path)}-{path.name}")
def test_a_room_includes_itself_and_lower_floors_only(path: Path) -> None:
    own = room_of(path)
    for included in INCLUDE.findall(path.read_text(encoding="utf-8")):
        file = included_file(path, included)
        if file is None:
            assert not included.startswith("heatmatch/"), f"{path.name} includes {included}"
            continue
        other = room_of(file)
        assert other == own or FLOOR[other] < FLOOR[own], f"{path.name} includes {included}"


def test_no_include_climbs_by_its_path() -> None:
    for path in library_files():
        for included in INCLUDE.findall(path.read_text(encoding="utf-8")):
            assert ".." not in included, f"{path.name} includes {included}"


def test_public_headers_hide_the_database_the_json_and_the_bindings() -> None:
    for header in (LIBRARY / "include").rglob("*.hpp"):
        for included in INCLUDE.findall(header.read_text(encoding="utf-8")):
            lower = included.lower()
            assert not any(word in lower for word in ("sqlite", "nlohmann", "pybind", "boost"))


def test_match_never_sees_the_catalog() -> None:
    for path in library_files():
        if room_of(path).startswith("match"):
            assert "heatmatch/catalog/" not in path.read_text(encoding="utf-8"), path.name


def test_every_public_header_is_documented_and_guarded() -> None:
    for header in (LIBRARY / "include").rglob("*.hpp"):
        text = header.read_text(encoding="utf-8")
        assert text.startswith("#pragma once\n"), header.name
        assert "///" in text, header.name


def test_files_have_at_most_three_hundred_lines() -> None:
    generated = {"_core.pyi"}
    long = {}
    for path in tracked("*.cpp", "*.hpp", "*.py"):
        lines = len(path.read_text(encoding="utf-8").splitlines())
        if lines > 300 and path.name not in generated:
            long[path.name] = lines
    assert not long


def test_every_noun_has_its_test() -> None:
    tests = {path.stem for path in (ROOT / "tests" / "cpp").glob("test_*.cpp")}
    for header in (LIBRARY / "include").rglob("*.hpp"):
        text = header.read_text(encoding="utf-8")
        has_code = any(
            (LIBRARY / "src" / room_of(header) / name).exists() for name in (header.stem + ".cpp",)
        )
        if has_code and "std::span<const Field>" not in text:
            assert f"test_{header.stem}" in tests, f"no test for {header.stem}"


def test_cited_sources_are_in_the_bibliography() -> None:
    sources = json.loads((ROOT / "catalog" / "sources.json").read_text(encoding="utf-8"))
    for path in library_files():
        text = path.read_text(encoding="utf-8")
        for key in CITE.findall(text):
            assert key in sources, f"{path.name} cites {key}"
        for key in re.findall(r'\.source = "([a-z0-9-]+)"', text):
            assert key in sources, f"{path.name} names {key}"


def test_the_bibliography_tells_title_and_how_it_was_seen() -> None:
    sources = json.loads((ROOT / "catalog" / "sources.json").read_text(encoding="utf-8"))
    for key, entry in sources.items():
        assert re.fullmatch(r"[a-z0-9-]+", key)
        assert entry.get("title"), key
        assert entry.get("seen"), key


def test_every_source_has_one_entry() -> None:
    seen: list[str] = []

    def entries(pairs: list[tuple[str, object]]) -> dict[str, object]:
        seen.extend(key for key, value in pairs if isinstance(value, dict))
        return dict(pairs)

    text = (ROOT / "catalog" / "sources.json").read_text(encoding="utf-8")
    json.loads(text, object_pairs_hook=entries)
    assert sorted(seen) == sorted(set(seen))


def test_only_known_things_lie_at_the_top() -> None:
    names = {path.relative_to(ROOT).parts[0] for path in tracked()}
    assert {name for name in names if not name.startswith(".")} <= TOP_LEVEL


def test_the_commands_of_the_readme_exist() -> None:
    text = (ROOT / "README.md").read_text(encoding="utf-8")
    for command in ("notebooks/run", "tests/run"):
        assert command in text
        assert (ROOT / command).stat().st_mode & 0o100


def test_nothing_is_called_without_risk() -> None:
    word = re.compile(r"\bsafe(ly)?\b", re.IGNORECASE)
    allowed = re.compile(r"thread-safe|fail-safe|unsafe|is safe to call", re.IGNORECASE)
    places = tracked("*.md", "*.json", "*.hpp", "*.cpp", "*.py", "*.ipynb")
    for path in places:
        if "tests" in path.parts or path.name == "sources.json":
            continue
        for line in path.read_text(encoding="utf-8").splitlines():
            assert not word.search(allowed.sub("", line)), f"{path.name}: {line.strip()[:100]}"
