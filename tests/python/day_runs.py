"""What tests of days share: weather of the demo, changed candidates, a log made of a run."""

from __future__ import annotations

from typing import Any

import heatmatch as hm
import numpy as np


def weather_of(installation: hm.Installation) -> hm.Weather:
    """The installation's own twelve months as a year of hours."""
    means = installation.to_dict()["weather"]
    names = ("sun_hours", "temp_min_c", "temp_max_c")
    return hm.Weather.from_months(installation.site, *(means[name] for name in names))


def log_rows(run: hm.DayRun, start_c: float) -> dict[str, Any]:
    """Columns of a log as probes on sheath and lid would have read a run that began so warm."""
    return {
        "hours": np.concatenate([[0.0], run.hours]),
        "power_w": np.concatenate([[0.0], run.power_w]),
        "air_c": np.concatenate([[run.space_c[0]], run.space_c]),
        "sheath_c": np.concatenate([[start_c], run.sheath_c]),
        "lid_c": np.concatenate([[start_c], run.lid_c]),
    }
