"""heatmatch: which heating element suits the panels you own, and which wire will melt.

Rank panel and element pairings by the season's heat and by named safety margins::

    import heatmatch as hm

    ranking = hm.rank(hm.Catalog.starter(), hm.demo())
    ranking[0].margins

The results are estimates; local codes and licensed practice decide.
"""

from __future__ import annotations

try:
    from heatmatch import _core
except ImportError as _error:  # pragma: no cover - needs a broken installation
    raise ImportError(
        "heatmatch is installed without its compiled part; install the package again with "
        "'pip install .' in the source folder (it needs a C++20 compiler, CMake and SQLite)"
    ) from _error

from heatmatch import forms, frames, plot, weather
from heatmatch._core import (
    Advice,
    Alloy,
    Array,
    ArrayCurve,
    BankHeat,
    BedCharge,
    BedTemperatures,
    Candidate,
    Catalog,
    Circuit,
    ConductorTemperature,
    Connector,
    Control,
    Cover,
    DatasheetFit,
    Delivered,
    Device,
    DiodeCurve,
    Element,
    ElementResistance,
    EnergyCurve,
    Extremes,
    HeatPoint,
    HistoryEntry,
    ImportReport,
    Installation,
    Insulation,
    LargestPoint,
    Margin,
    Medium,
    OperatingPoint,
    OperatingPoints,
    OwnedPanels,
    Panel,
    Parts,
    PartsView,
    PlacedDevice,
    PlaneIrradiance,
    PlaneIrradiances,
    Ranking,
    RefusedRow,
    RunParts,
    Season,
    Sheath,
    SheathTemperature,
    SingleDiode,
    Site,
    SkyIrradiance,
    SkyIrradiances,
    Step,
    Store,
    SunPositions,
    Surroundings,
    TemperatureBand,
    Weather,
    Wire,
    WireRun,
    assess,
    cautions,
    clear_sky,
    coil_above_sheath_k,
    cold_voltage,
    conductor_temperature,
    demo,
    element_resistance,
    erbs_split,
    faiman_cell_temperature_c,
    fit_single_diode,
    format_quantity,
    glass_transmission,
    glossary,
    hours_to_limit,
    incidence_angle_deg,
    largest_power_w,
    noct_cell_temperature_c,
    operating_points,
    packed_bed_conductivity,
    plane_irradiance,
    rank,
    sheath_in_air_c,
    sheath_temperature,
    sun_position,
    widest_vectors,
)
from heatmatch.errors import CatalogError, Error, FileError, InvalidInput, NotFound
from heatmatch.frames import sources

__version__ = _core.library_version()

__all__ = [
    "Advice",
    "Alloy",
    "Array",
    "ArrayCurve",
    "BankHeat",
    "BedCharge",
    "BedTemperatures",
    "Candidate",
    "Catalog",
    "CatalogError",
    "Circuit",
    "ConductorTemperature",
    "Connector",
    "Control",
    "Cover",
    "DatasheetFit",
    "Delivered",
    "Device",
    "DiodeCurve",
    "Element",
    "ElementResistance",
    "EnergyCurve",
    "Error",
    "Extremes",
    "FileError",
    "HeatPoint",
    "HistoryEntry",
    "ImportReport",
    "Installation",
    "Insulation",
    "InvalidInput",
    "LargestPoint",
    "Margin",
    "Medium",
    "NotFound",
    "OperatingPoint",
    "OperatingPoints",
    "OwnedPanels",
    "Panel",
    "Parts",
    "PartsView",
    "PlacedDevice",
    "PlaneIrradiance",
    "PlaneIrradiances",
    "Ranking",
    "RefusedRow",
    "RunParts",
    "Season",
    "Sheath",
    "SheathTemperature",
    "SingleDiode",
    "Site",
    "SkyIrradiance",
    "SkyIrradiances",
    "Step",
    "Store",
    "SunPositions",
    "Surroundings",
    "TemperatureBand",
    "Weather",
    "Wire",
    "WireRun",
    "__version__",
    "assess",
    "cautions",
    "clear_sky",
    "coil_above_sheath_k",
    "cold_voltage",
    "conductor_temperature",
    "demo",
    "element_resistance",
    "erbs_split",
    "faiman_cell_temperature_c",
    "fit_single_diode",
    "format_quantity",
    "glass_transmission",
    "glossary",
    "hours_to_limit",
    "incidence_angle_deg",
    "largest_power_w",
    "noct_cell_temperature_c",
    "operating_points",
    "packed_bed_conductivity",
    "plane_irradiance",
    "plot",
    "rank",
    "sheath_in_air_c",
    "sheath_temperature",
    "sources",
    "sun_position",
    "weather",
    "widest_vectors",
]

# Tracebacks, pickles and help() should name the package, not its compiled part.
for _name in __all__:
    _thing = globals()[_name]
    if getattr(_thing, "__module__", "") == "heatmatch._core":
        _thing.__module__ = "heatmatch"
del _name, _thing

frames.attach()
forms.attach()
weather.attach()
