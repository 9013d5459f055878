"""Rankings, margins and parts as data frames, and data frames into the catalog."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any

from heatmatch import _library as _core
from heatmatch.errors import InvalidInput
from heatmatch.text.bank import element_name

if TYPE_CHECKING:
    import pandas as _pd

    from heatmatch.face.catalog_files import CatalogFiles


def pandas_or_error() -> Any:
    """The module pandas, or an error that explains how to install it."""
    try:
        import pandas as pd
    except ImportError as error:
        raise ImportError(
            "data frames need pandas; install it with pip install 'libheatmatch[notebook]'"
        ) from error
    return pd


def season_row(season: _core.Season) -> dict[str, Any]:
    """Season of a candidate, as part of its row; energies in kWh."""
    row: dict[str, Any] = {
        "season_kwh": season.kwh,
        "season_kwh_low": season.kwh_low,
        "season_kwh_high": season.kwh_high,
        "season_harvest_fraction": season.harvest_fraction,
        "season_kwh_per_day": season.mean_kwh_per_day,
        "season_best_ohm": season.best_ohm,
        "season_best_cloud_ohm": season.best_ohm_cloud,
        "season_best_kwh": season.best_kwh,
        "season_stc_match_ohm": season.stc_match_ohm,
        "season_stc_match_kwh": season.stc_match_kwh,
        "near_short_circuit_share": season.near_short_circuit_share,
        "price_per_kwh": season.price_per_kwh,
    }
    for month in season.months:
        row[f"month_{month:02d}_kwh_per_day"] = float(season.kwh_per_day[month - 1])
    return row


def heat_row(candidate: _core.Candidate) -> dict[str, Any]:
    """Temperatures in the store, as part of its row; None where they are not known."""
    point, sheath = candidate.heat, candidate.circuit.sheath
    band = None if point is None else point.sheath_band
    return {
        "element_power_w": candidate.bright.element_power_w,
        "w_per_cm": None if point is None else point.w_per_cm,
        "sheath_c": None if point is None else point.sheath_c,
        "sheath_low_c": None if band is None else band.low_c,
        "sheath_typical_c": None if band is None else band.typical_c,
        "sheath_high_c": None if band is None else band.high_c,
        "sheath_limit_c": None if sheath is None else sheath.verdict_limit_c,
        "bed_mean_c": None if point is None else point.bed_mean_c,
        "wall_c": None if point is None else point.wall_c,
        "lid_c": None if point is None else point.lid_c,
    }


def candidate_row(candidate: _core.Candidate) -> dict[str, Any]:
    """One candidate as a flat row.

    Parameters
    ----------
    candidate : Candidate
        A circuit with its numbers.

    Returns
    -------
    dict
        Column name -> value; powers in watts, resistances in ohms, the price in `currency`.
    """
    circuit = candidate.circuit
    worst = candidate.worst
    row: dict[str, Any] = {
        "group": circuit.owned.group if circuit.equal_panels else circuit.array_layout,
        "panel": circuit.panel.id if circuit.equal_panels else None,
        "panels": circuit.panels if circuit.equal_panels else None,
        "element": element_name(circuit),
        "bank": circuit.bank,
        "bank_ohm": circuit.bank_ohm,
        "stc_match_ohm": circuit.stc_match_ohm,
        "mean_power_w": candidate.mean_power_w,
        "mean_power_low_w": candidate.mean_power_low_w,
        "mean_power_high_w": candidate.mean_power_high_w,
    }
    if candidate.season is not None:
        row |= season_row(candidate.season)
    if circuit.heat is not None:
        row |= heat_row(candidate)
    for at in candidate.delivered:
        name = f"{at.irradiance_w_m2:g}_w_m2_{at.cell_temperature_c:g}_c"
        row[f"power_w_at_{name}"] = at.power_w
        row[f"harvest_fraction_at_{name}"] = at.harvest_fraction
    row |= {
        "cold_voltage_v": circuit.cold_voltage_v,
        "severity": candidate.severity,
        "worst_severity": candidate.worst_severity,
        "worst_margin": "" if worst is None else worst.name,
        "smallest_headroom": candidate.smallest_headroom,
        "not_assessed": candidate.not_assessed,
        "price_to_buy": candidate.price_to_buy,
        "currency": candidate.currency,
        "like_it": candidate.like_it,
    }
    return row


BILL_COLUMNS = (
    "kind", "part", "label", "quantity", "owned", "to_buy", "unit", "low", "typical", "high",
    "currency", "state", "why",
)  # fmt: skip


def bill_to_frame(self: _core.Bill) -> _pd.DataFrame:
    """Return the lines of a bill as a data frame, one row each."""
    rows = [{name: getattr(line, name) for name in BILL_COLUMNS} for line in self.lines]
    return pandas_or_error().DataFrame(rows, columns=list(BILL_COLUMNS))


def ranking_to_frame(self: _core.Ranking, *, rejected: bool = False) -> _pd.DataFrame:
    """Return the candidates, or what was rejected, as a data frame, best first.

    Parameters
    ----------
    rejected : bool, default False
        The rows of `ranking.rejected` instead of those of the ranking.

    Returns
    -------
    pandas.DataFrame
        Shape (candidates, columns); units are in the column names.
    """
    rows = [candidate_row(one) for one in (self.rejected if rejected else self.candidates)]
    some = [*self.candidates[:1], *self.rejected[:1]]
    if rows or not some:
        return pandas_or_error().DataFrame(rows)
    return pandas_or_error().DataFrame(columns=list(candidate_row(some[0])))


def margins_to_frame(self: _core.Candidate, *, units: str = "si") -> _pd.DataFrame:
    """The margins of a candidate as a data frame, one row each.

    Parameters
    ----------
    units : {"si", "us"}
        Unit set of the sentences; `value` and `limit` stay in `unit`.

    Returns
    -------
    pandas.DataFrame
        Columns severity, worst_severity, name, subject, value, limit, unit, headroom, sentence,
        source, assumed, missing.
    """
    rows = [
        {
            "severity": margin.severity,
            "worst_severity": margin.worst_severity,
            "name": margin.name,
            "subject": margin.subject,
            "value": margin.value,
            "limit": margin.limit,
            "unit": margin.unit,
            "headroom": margin.headroom,
            "sentence": margin.sentence(units=units),
            "source": margin.source,
            "assumed": "; ".join(margin.assumed),
            "missing": "; ".join(margin.missing),
        }
        for margin in self.margins
    ]
    return pandas_or_error().DataFrame(rows)


def parts_to_frame(self: _core.PartsView) -> _pd.DataFrame:
    """The parts of one kind as a data frame with the id as index, unknown fields missing."""
    rows = [part.to_dict() for part in self.values()]
    if not rows:
        names = [field["name"] for field in _core.glossary()[self.kind]]
        return pandas_or_error().DataFrame(columns=names).set_index("id")
    return pandas_or_error().DataFrame(rows).set_index("id")


def import_frame(
    self: CatalogFiles, kind: str, frame: _pd.DataFrame, *, keep_good: bool = False
) -> _core.ImportReport:
    """Puts the rows of a data frame into the catalog, adding or replacing.

    Parameters
    ----------
    kind : str
        Kind of part, for example ``"panel"``.
    frame : pandas.DataFrame
        Columns named as the fields; an index named ``id`` counts as a column. Missing values are
        unknown fields. Lists and dicts are used unchanged.
    keep_good : bool
        Leave refused rows out and report them, instead of refusing the whole frame.

    Returns
    -------
    ImportReport
        What was added, replaced and refused; ``line`` is the row, the header being line 1.

    Raises
    ------
    InvalidInput
        A column is not a field of that kind.
    CatalogError
        Rows cannot be used and `keep_good` is false; the catalog is unchanged.
    """
    if not isinstance(frame, pandas_or_error().DataFrame):
        raise InvalidInput(
            f"frame = {type(frame).__name__} must be a pandas DataFrame; "
            "import_json and import_csv_text take files and text"
        )
    if frame.index.name == "id":
        frame = frame.reset_index()

    def cell(value: Any) -> Any:
        if hasattr(value, "tolist"):
            value = value.tolist()
        compound = isinstance(value, (list, tuple, dict))
        return json.dumps(value, ensure_ascii=False) if compound else value

    plain = frame.map(cell) if hasattr(frame, "map") else frame.applymap(cell)
    return self.import_csv_text(
        kind,
        plain.to_csv(index=False),
        origin="data frame",
        keep_good=keep_good,
        number_records=True,
    )


def sources() -> dict[str, dict[str, Any]]:
    """Return the bibliography.

    Returns
    -------
    dict of dict
        Cite key to its entry: title, publisher, year, place in the work, and how it was seen.

    Examples
    --------
    >>> import heatmatch as hm
    >>> hm.sources()["fao-56"]["year"]
    1998
    """
    bibliography: dict[str, dict[str, Any]] = json.loads(_core.sources_json())
    return bibliography
