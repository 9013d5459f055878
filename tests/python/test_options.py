"""Scalar options are given by keyword only, in every function that has some."""

from __future__ import annotations

import inspect
import re
from typing import Any

import heatmatch as hm
import pytest


def keywords_of(function: Any) -> list[str]:
    """The keyword-only names of a function; a compiled one's docstring begins with them."""
    if inspect.isfunction(function):
        parameters = inspect.signature(function).parameters.values()
        return [one.name for one in parameters if one.kind is inspect.Parameter.KEYWORD_ONLY]
    signature = function.__doc__.split("\n")[0]
    return re.findall(r"(\w+):", signature.split(" *, ")[1]) if " *, " in signature else []


RANK_OPTIONS = """top keep_rejected max_bank volts_max fold group element panels bank conditions
coil_temperature_c exact_weather threads vector_width progress memory"""


@pytest.mark.parametrize(
    ("function", "keywords"),
    [
        (hm.rank, RANK_OPTIONS),
        (hm.start, "units"),
        (hm.assess, "conditions coil_temperature_c exact_weather memory"),
        (hm.EnergyCurve.delivered_kwh, "wire_ohm"),
        (hm.fit_single_diode, "use_gamma"),
        (hm.cold_voltage, "record_low_c"),
        (hm.conductor_temperature, "current_a surroundings insulation"),
        (hm.element_resistance, "alloy coil_temperature_c"),
        (hm.format_quantity, "units digits"),
        (hm.SingleDiode.at, "irradiance_w_m2 cell_temperature_c"),
        (hm.SingleDiode.scaled, "current_factor voltage_factor"),
        (hm.Array.at, "irradiance_w_m2 cell_temperature_c shade"),
        (hm.Surroundings.sunlit, "irradiance_w_m2"),
        (hm.Control.breaking_current_a, "voltage_v poles"),
        (hm.Wire.resistance_ohm_per_m, "temperature_c"),
        (hm.Margin.sentence, "units"),
        (hm.Catalog.open, "wait_ms"),
        (hm.Catalog.import_json, "keep_good"),
        (hm.Catalog.import_json_text, "keep_good"),
        (hm.Catalog.import_csv_text, "origin keep_good number_records"),
        (hm.Catalog.import_module_csv, "keep_good"),
        (hm.Catalog.export_json, "force"),
        (hm.Installation.to_json, "force"),
        (hm.simulate_stagnation, "progress"),
        (hm.calibrate, "progress"),
        (hm.diagnose, "catalog progress"),
    ],
)
def test_scalar_options_are_keywords_only(function: Any, keywords: str) -> None:
    assert keywords_of(function) == keywords.split()
