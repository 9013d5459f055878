"""Rankings kept in files, and two of them compared."""

from __future__ import annotations

import json
import os
import tempfile
from collections.abc import Mapping
from dataclasses import asdict, dataclass, field
from datetime import datetime, timezone
from pathlib import Path
from typing import TYPE_CHECKING, Any

from heatmatch import _core, frames
from heatmatch.errors import FileError, InvalidInput

if TYPE_CHECKING:
    import pandas as _pd

FORMAT = "heatmatch_ranking"
VERSION = 1
KEY = ("group", "panels", "element", "bank")
_NEEDED = (*KEY, "mean_power_w", "severity", "smallest_headroom")


@dataclass(frozen=True)
class SavedRanking:
    """A ranking as plain data: its rows are those of ``Ranking.to_frame``, best first."""

    name: str
    saved_at_utc: str
    library_version: str
    by_season: bool
    evaluated: int
    reasons: dict[str, int]
    remarks: list[str]
    rows: list[dict[str, Any]]

    @classmethod
    def of(cls, ranking: _core.Ranking, name: str = "") -> SavedRanking:
        """The plain data of a ranking, as of now."""
        return cls(
            name=name,
            saved_at_utc=datetime.now(timezone.utc).isoformat(timespec="seconds"),
            library_version=_core.library_version(),
            by_season=ranking.by_season,
            evaluated=ranking.evaluated,
            reasons=dict(ranking.reasons),
            remarks=list(ranking.remarks),
            rows=[frames.candidate_row(candidate) for candidate in ranking.candidates],
        )

    def to_frame(self) -> _pd.DataFrame:
        """The candidates as a data frame, best first, one row each."""
        return frames.pandas_or_error().DataFrame(self.rows)


@dataclass(frozen=True)
class Move:
    """What became of one pairing: places count from 1, None where it was not kept."""

    group: str
    panels: str
    element: str
    bank: str
    before: int | None
    after: int | None
    heat_before: float | None
    heat_after: float | None
    headroom_before: float | None
    headroom_after: float | None

    @property
    def change(self) -> float | None:
        """Heat after less heat before, in their unit."""
        if self.heat_before is None or self.heat_after is None:
            return None
        return self.heat_after - self.heat_before


@dataclass(frozen=True)
class RankingComparison:
    """Two rankings side by side, in the order of the later one; then what only the earlier has."""

    before: str
    after: str
    unit: str  #: of heat: kWh of the season, or W averaged over the conditions
    moves: list[Move] = field(default_factory=list)
    remarks: list[str] = field(default_factory=list)

    def to_dict(self) -> dict[str, Any]:
        """The comparison as plain data."""
        return asdict(self)

    def to_frame(self) -> _pd.DataFrame:
        """The comparison as a data frame, a row for each pairing."""
        return frames.pandas_or_error().DataFrame([asdict(move) for move in self.moves])

    def __str__(self) -> str:
        from heatmatch.display_rankings import comparison_text

        return comparison_text(self)

    def _repr_html_(self) -> str:
        from heatmatch.display_rankings import comparison_html

        return comparison_html(self)


def write_text(path: str | os.PathLike[str], text: str) -> Path:
    """Writes a file whole or not at all.

    Raises
    ------
    FileError
        Names the path and the reason.
    """
    goal = Path(path)
    try:
        if goal.is_dir():
            raise IsADirectoryError(0, "it is a folder")
        handle, name = tempfile.mkstemp(dir=goal.parent, prefix=f".{goal.name[:40]}-")
        try:
            with os.fdopen(handle, "w", encoding="utf-8", newline="\n") as file:
                file.write(text)
            mode = goal.stat().st_mode & 0o777 if goal.exists() else 0o666 & ~_umask()
            os.chmod(name, mode)
            os.replace(name, goal)
        except BaseException:
            os.unlink(name)
            raise
    except OSError as error:
        raise FileError(
            f'cannot write "{os.fspath(path)}": {error.strerror or error}; check the folder'
        ) from error
    return goal


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask


def save_ranking(
    ranking: _core.Ranking | SavedRanking, path: str | os.PathLike[str], *, name: str = ""
) -> Path:
    """Keeps a ranking in a file of JSON, to be compared with a later one.

    Parameters
    ----------
    ranking : Ranking or SavedRanking
    path : path
        Written whole or not at all.
    name : str
        What it is called where it is compared; the file's name if not given.

    Returns
    -------
    pathlib.Path

    Raises
    ------
    FileError
        The file cannot be written.
    """
    saved = ranking if isinstance(ranking, SavedRanking) else SavedRanking.of(ranking, name)
    plain = {FORMAT: VERSION, **asdict(saved)}
    return write_text(path, json.dumps(plain, ensure_ascii=False, indent=1, allow_nan=False) + "\n")


def load_ranking(path: str | os.PathLike[str]) -> SavedRanking:
    """A ranking that ``save_ranking`` kept.

    Raises
    ------
    FileError
        The file cannot be read.
    InvalidInput
        It is no ranking, or of a later format.
    """
    name = os.fspath(path)
    try:
        plain = json.loads(Path(path).read_text(encoding="utf-8"))
    except OSError as error:
        raise FileError(f'cannot read "{name}": {error.strerror}; check the path') from error
    except ValueError as error:
        raise _refusal(name, "file", "not JSON", f"a file of save_ranking ({error})") from error
    if not isinstance(plain, dict) or FORMAT not in plain:
        raise _refusal(name, FORMAT, "(missing)", "a file of save_ranking")
    if plain[FORMAT] != VERSION:
        raise _refusal(name, FORMAT, repr(plain[FORMAT]), f"{VERSION}; a newer heatmatch wrote it")
    return _saved_from(plain, name)


def _saved_from(plain: Mapping[str, Any], name: str) -> SavedRanking:
    kinds: dict[str, type] = {
        "name": str,
        "saved_at_utc": str,
        "library_version": str,
        "by_season": bool,
        "evaluated": int,
        "reasons": dict,
        "remarks": list,
        "rows": list,
    }
    for key, kind in kinds.items():
        if not isinstance(plain.get(key), kind):
            raise _refusal(name, key, repr(plain.get(key))[:40], f"a {kind.__name__}")
    needed = (*_NEEDED, "season_kwh") if plain["by_season"] else _NEEDED
    for number, row in enumerate(plain["rows"], 1):
        missing = [key for key in needed if not isinstance(row, dict) or key not in row]
        if missing:
            raise _refusal(name, f"rows[{number}]", f"without {missing[0]}", "whole")
    values = {key: plain[key] for key in kinds}
    return SavedRanking(**{**values, "name": values["name"] or Path(name).stem})


def _refusal(file: str, field_name: str, value: str, allowed: str) -> InvalidInput:
    remedy = "make one with save_ranking"
    message = f'ranking "{file}": {field_name} = {value} must be {allowed}; {remedy}'
    return InvalidInput(message, f'ranking "{file}"', field_name, value, allowed, remedy)


def compare_rankings(
    before: _core.Ranking | SavedRanking, after: _core.Ranking | SavedRanking
) -> RankingComparison:
    """What became of every pairing from one ranking to another.

    Parameters
    ----------
    before, after : Ranking or SavedRanking
        Pairings are the same where group, hook-up, element and bank are.

    Returns
    -------
    RankingComparison
    """
    first, second = (
        ranking if isinstance(ranking, SavedRanking) else SavedRanking.of(ranking, name)
        for ranking, name in ((before, "before"), (after, "after"))
    )
    by_season = first.by_season and second.by_season
    heat = "season_kwh" if by_season else "mean_power_w"
    remarks = []
    if first.by_season != second.by_season:
        remarks.append(
            "Only one of them knows a season: heat is the power averaged over its conditions."
        )
    old = {_key(row): (place, row) for place, row in enumerate(first.rows, 1)}
    new = {_key(row): (place, row) for place, row in enumerate(second.rows, 1)}
    order = [*new, *(key for key in old if key not in new)]
    moves = [_move(key, old.get(key), new.get(key), heat) for key in order]
    return RankingComparison(
        before=first.name or "before",
        after=second.name or "after",
        unit="kWh" if by_season else "W",
        moves=moves,
        remarks=remarks,
    )


_Row = tuple[int, dict[str, Any]]


def _key(row: Mapping[str, Any]) -> tuple[str, ...]:
    return tuple(str(row[name]) for name in KEY)


def _move(key: tuple[str, ...], old: _Row | None, new: _Row | None, heat: str) -> Move:
    def value(row: _Row | None, name: str) -> Any:
        return None if row is None else row[1][name]

    group, panels, element, bank = key
    return Move(
        group,
        panels,
        element,
        bank,
        before=None if old is None else old[0],
        after=None if new is None else new[0],
        heat_before=value(old, heat),
        heat_after=value(new, heat),
        headroom_before=value(old, "smallest_headroom"),
        headroom_after=value(new, "smallest_headroom"),
    )
