"""Rankings as plain data, kept in files."""

from __future__ import annotations

import json
import math
import os
from collections.abc import Mapping
from dataclasses import asdict, dataclass, field
from datetime import datetime, timezone
from pathlib import Path
from typing import TYPE_CHECKING, Any

from heatmatch import _library as _core
from heatmatch.errors import FileError, InvalidInput
from heatmatch.io import frames
from heatmatch.io.files import checked_path, write_text
from heatmatch.io.rankings_checked import (
    COLUMNS,
    KEY,
    REJECTED_COLUMNS,
    check_rows,
    is_count,
    is_row,
    is_text,
    refusal,
    shown,
)
from heatmatch.io.rankings_versions import of_version_1, of_version_2

if TYPE_CHECKING:
    import pandas as _pd

FORMAT = "heatmatch_ranking"
VERSION = 3
_REJECTED = (*KEY, "worst_margin", "mean_power_w", "season_kwh", "price_to_buy", "currency")


@dataclass(frozen=True)
class SavedRanking:
    """A ranking as plain data, from ``load_ranking``.

    Attributes
    ----------
    name : str
        Label in comparisons.
    saved_at_utc : str
        Time of saving in ISO 8601, UTC.
    library_version : str
        Version of heatmatch that made the ranking.
    by_season : bool
        Whether rows are ordered by season energy [kWh]; otherwise by mean power [W].
    evaluated : int
        Number of pairings evaluated.
    reasons : dict of int
        Name of a margin to the number of pairings it rejected.
    remarks : list of str
        What to know before reading the rows.
    rows : list of dict
        Candidates, best first, with the columns of ``Ranking.to_frame``.
    rejected : list of dict
        Pairings rejected for a danger that the ranking kept: key, heat, worst margin and price.
        Empty if an early file of version 1 has none.
    recommended : dict or None
        Row of the recommended circuit; None without one, and in files of version 1 and 2.
    alternatives : dict of dict
        Rows of the alternatives by what they are first in.
    lacking : str
        Fact or purchase that a recommendation lacks; empty where there is one.
    """

    name: str
    saved_at_utc: str
    library_version: str
    by_season: bool
    evaluated: int
    reasons: dict[str, int]
    remarks: list[str]
    rows: list[dict[str, Any]]
    rejected: list[dict[str, Any]] = field(default_factory=list)
    recommended: dict[str, Any] | None = None
    alternatives: dict[str, dict[str, Any]] = field(default_factory=dict)
    lacking: str = ""

    @classmethod
    def of(cls, ranking: _core.Ranking, name: str = "") -> SavedRanking:
        """Return a ranking as plain data, with the present time."""
        rejected = [_finite(frames.candidate_row(candidate)) for candidate in ranking.rejected]
        return cls(
            name=name,
            saved_at_utc=datetime.now(timezone.utc).isoformat(timespec="seconds"),
            library_version=_core.library_version(),
            by_season=ranking.by_season,
            evaluated=ranking.evaluated,
            reasons=dict(ranking.reasons),
            remarks=list(ranking.remarks),
            rows=[_finite(frames.candidate_row(candidate)) for candidate in ranking.candidates],
            rejected=[{key: row[key] for key in _REJECTED if key in row} for row in rejected],
            recommended=None
            if ranking.recommended is None
            else _finite(frames.candidate_row(ranking.recommended)),
            alternatives={
                kind: _finite(frames.candidate_row(candidate))
                for kind, candidate in ranking.alternatives.items()
            },
            lacking=str(ranking.lacking),
        )

    def to_frame(self) -> _pd.DataFrame:
        """Return the candidates as a data frame, best first, one row each."""
        return frames.pandas_or_error().DataFrame(self.rows)


def _finite(row: dict[str, Any]) -> dict[str, Any]:
    """A row with None for NaN, which JSON cannot represent."""
    return {
        key: None if isinstance(value, float) and not math.isfinite(value) else value
        for key, value in row.items()
    }


def save_ranking(
    ranking: _core.Ranking | SavedRanking,
    path: str | os.PathLike[str],
    *,
    name: str = "",
    force: bool = False,
) -> Path:
    """Save a ranking as a JSON file, to compare it with a later one.

    Parameters
    ----------
    ranking : Ranking or SavedRanking
        Its candidates are saved as plain rows, rejected pairings in short.
    path : str or os.PathLike
        File to write. It is written whole or not at all.
    name : str
        Label in comparisons; if empty, the file's name without its ending. A SavedRanking keeps
        its own name.
    force : bool
        Also replace a file that is not a saved ranking. A catalog is never replaced.

    Returns
    -------
    pathlib.Path
        The file written.

    Raises
    ------
    FileError
        The file cannot be written, or `path` holds something other than a saved ranking.
    InvalidInput
        `name` is not a text, or a row holds a value that JSON cannot represent.

    Examples
    --------
    >>> import heatmatch as hm, os, tempfile
    >>> ranking = hm.rank(hm.Catalog.starter(), hm.demo(), top=3)
    >>> with tempfile.TemporaryDirectory() as folder:
    ...     hm.save_ranking(ranking, os.path.join(folder, "three.json")).name
    'three.json'
    """
    saved = ranking if isinstance(ranking, SavedRanking) else SavedRanking.of(ranking, name)
    file = checked_path(path, "write")
    plain = {FORMAT: VERSION, **asdict(saved)}
    try:
        _saved_from(plain, file)
        text = json.dumps(plain, ensure_ascii=False, indent=1, allow_nan=False) + "\n"
        text.encode("utf-8")
    except InvalidInput:
        raise
    except (TypeError, ValueError, RecursionError) as error:
        raise refusal(file, "ranking", "not plain data", f"plain data ({error})") from error
    return write_text(path, text, force=force, only_kind=f'"{FORMAT}"')


def load_ranking(path: str | os.PathLike[str]) -> SavedRanking:
    """Load a ranking from a file that `save_ranking` wrote.

    Parameters
    ----------
    path : str or os.PathLike
        The JSON file.

    Returns
    -------
    SavedRanking
        The ranking as plain rows.

    Raises
    ------
    FileError
        The file cannot be read.
    InvalidInput
        The file is not JSON in UTF-8, is not a saved ranking, or has another format version.

    Examples
    --------
    >>> import heatmatch as hm, os, tempfile
    >>> ranking = hm.rank(hm.Catalog.starter(), hm.demo(), top=3)
    >>> with tempfile.TemporaryDirectory() as folder:
    ...     path = hm.save_ranking(ranking, os.path.join(folder, "three.json"))
    ...     hm.load_ranking(path).name
    'three'
    """
    name = checked_path(path, "read")
    try:
        plain = json.loads(Path(path).read_text(encoding="utf-8"))
        json.dumps(plain, ensure_ascii=False).encode("utf-8")
    except OSError as error:
        raise FileError(f'cannot read "{name}": {error.strerror}; check the path') from error
    except UnicodeEncodeError as error:
        raise refusal(name, "file", "half a character", "text in UTF-8") from error
    except (ValueError, RecursionError) as error:
        raise refusal(name, "file", "not JSON", f"a file of save_ranking ({error})") from error
    if not isinstance(plain, dict) or FORMAT not in plain:
        raise refusal(name, FORMAT, "(missing)", "a file of save_ranking")
    if isinstance(plain[FORMAT], bool) or plain[FORMAT] not in range(1, VERSION + 1):
        allowed = f"1 to {VERSION}; a newer heatmatch wrote it"
        raise refusal(name, FORMAT, shown(plain[FORMAT]), allowed)
    if plain[FORMAT] == 1:
        plain = of_version_1(plain)
    return _saved_from(of_version_2(plain), name)


def _saved_from(plain: Mapping[str, Any], name: str) -> SavedRanking:
    kinds: dict[str, tuple[Any, str]] = {
        "name": (is_text, "a str"),
        "saved_at_utc": (is_text, "a str"),
        "library_version": (is_text, "a str"),
        "by_season": (lambda value: isinstance(value, bool), "a bool"),
        "evaluated": (is_count, "a count"),
        "reasons": (
            lambda value: isinstance(value, dict) and all(map(is_count, value.values())),
            "a dict of counts",
        ),
        "remarks": (lambda value: isinstance(value, list) and all(map(is_text, value)), "texts"),
        "rows": (lambda value: isinstance(value, list), "a list"),
        "rejected": (lambda value: isinstance(value, list), "a list"),
        "recommended": (lambda value: value is None or isinstance(value, dict), "a row or null"),
        "alternatives": (
            lambda value: isinstance(value, dict) and all(map(is_row, value.values())),
            "rows by their kind",
        ),
        "lacking": (is_text, "a str"),
    }
    values: dict[str, Any] = {key: plain.get(key) for key in kinds}
    for key, (fits, allowed) in kinds.items():
        if not fits(values[key]):
            raise refusal(name, key, shown(values[key]), allowed)
    by_season = values["by_season"]
    check_rows(name, "rows", plain["rows"], COLUMNS, by_season=by_season)
    check_rows(name, "rejected", values["rejected"], REJECTED_COLUMNS, by_season=by_season)
    first = [] if values["recommended"] is None else [values["recommended"]]
    check_rows(name, "recommended", first, COLUMNS, by_season=by_season)
    others = list(values["alternatives"].values())
    check_rows(name, "alternatives", others, COLUMNS, by_season=by_season)
    return SavedRanking(**{**values, "name": values["name"] or Path(name).stem})
