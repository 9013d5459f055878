"""Meter sheets, diagnoses and calibrations as plain data."""

from __future__ import annotations

from typing import Any

from heatmatch import _library as _core
from heatmatch.cli.margin_json import texts_in
from heatmatch.cli.output import picked
from heatmatch.io import meters

_CHECK = (
    "letter", "reading", "how", "expect", "low", "typical", "high", "unit", "if_low", "if_high",
    "source",
)  # fmt: skip


def row_values(row: _core.MeterRow) -> dict[str, float]:
    """A row of a sheet with the ends of its bands, with the names of the data frame."""
    values = picked(row, "irradiance_w_m2", "cell_temperature_c")
    for name in meters.BANDS:
        band = picked(getattr(row, name), "low", "typical", "high")
        for end, value in band.items():
            values[name if end == "typical" else f"{name}_{end}"] = value
    return values


def sheet_json(sheet: _core.MeterSheet, units: str) -> dict[str, Any]:
    """A meter sheet as plain data."""
    told = ("without_sun_meter", "missing", "remarks", "assumed")
    texts = ("reading", "how", "expect", "if_low", "if_high")
    return texts_in(picked(sheet, "title", *told), units, *told) | {
        "rows": [row_values(row) for row in sheet.rows],
        "checks": [texts_in(picked(check, *_CHECK), units, *texts) for check in sheet.checks],
    }


def diagnosis_json(diagnosis: _core.Diagnosis, units: str) -> dict[str, Any]:
    """A diagnosis as plain data."""
    told = ("kind", "name", "sentence", "misfit", "score", "weight", "evidence")
    fitted = ("name", "value", "low", "high", "unit")
    next_ = ("reading", "how", "predictions", "separation")
    data = picked(diagnosis, "verdict", "group", "indistinguishable", "unexplained", "remarks")
    data["bank_ohms"] = diagnosis.bank_ohms
    return texts_in(data, units, "verdict", "bank_ohms", "remarks") | {
        "ranked": [
            texts_in(picked(item, *told), units, "sentence", "evidence")
            | {"fitted": [picked(value, *fitted) for value in item.fitted]}
            for item in diagnosis.ranked
        ],
        "next": [texts_in(picked(item, *next_), units, *next_) for item in diagnosis.next],
    }


def calibration_json(calibration: _core.Calibration, units: str) -> dict[str, Any]:
    """A calibration as plain data."""
    fitted = ("value", "standard_error", "low", "high")
    data = picked(
        calibration, "medium", "correlation", "residual_k", "residual_before_k", "readings",
        "loss_factor_before", "sentences", "remarks",
    )  # fmt: skip
    return texts_in(data, units, "sentences", "remarks") | {
        "k20_w_mk": picked(calibration.k20_w_mk, *fitted),
        "loss_factor": picked(calibration.loss_factor, *fitted),
    }
