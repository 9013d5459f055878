"""heatmatch: which heating element suits the panels you own, and which wire will melt.

Rank panel and element pairings by the season's heat and by named safety margins::

    import heatmatch as hm

    hm.rank(hm.Catalog.starter(), hm.demo())[0].margins

The results are estimates; local codes and licensed practice decide.
"""

from __future__ import annotations

try:
    import heatmatch._stopping as _stopping  # noqa: F401  first: from here on it hears signals
    import heatmatch.face as _face  # noqa: F401
    from heatmatch import _core
    from heatmatch._records import name_records as _name_records
except ImportError as _error:  # pragma: no cover - needs a broken installation
    from heatmatch._missing_part import import_failure

    raise import_failure(_error) from _error

from heatmatch import choices as choices
from heatmatch import plot, weather
from heatmatch._core import (
    Advice,
    Alloy,
    ArrayCurve,
    ArrayPoint,
    BedTemperatures,
    BillLine,
    CheckCounts,
    CodeDuty,
    ConductorTemperature,
    Connector,
    Control,
    Cover,
    DarkHours,
    DatasheetFit,
    DayEnergy,
    Delivered,
    Device,
    DiodeCurve,
    Element,
    ElementResistance,
    ExpectedBand,
    Extremes,
    Fitted,
    FittedValue,
    HeatPoint,
    HistoryEntry,
    HotTail,
    Hypothesis,
    IdlePanels,
    ImportReport,
    Insulation,
    InsulationReach,
    LargestPoint,
    Medium,
    MeterCheck,
    MeterRow,
    MixedArrayCurve,
    NextMeasurement,
    NotChecked,
    OperatingPoint,
    OperatingPoints,
    OwnedPanels,
    Panel,
    PanelPoint,
    Parts,
    PlacedDevice,
    PlaneIrradiance,
    PlaneIrradiances,
    PlanOffer,
    Probe,
    RankMemory,
    RefusedRow,
    RunParts,
    Sheath,
    SheathTemperature,
    SingleDiode,
    Site,
    SkyIrradiance,
    SkyIrradiances,
    SpaceBalance,
    Step,
    Store,
    StringPanel,
    StringPoint,
    SunPositions,
    Surroundings,
    SwitchEvent,
    TemperatureBand,
    Wire,
    WireCheck,
    WireLimit,
    WireRun,
)
from heatmatch._library import (
    cautions,
    clear_sky,
    coil_above_sheath_k,
    cold_voltage,
    conductor_temperature,
    element_resistance,
    erbs_split,
    faiman_cell_temperature_c,
    fit_single_diode,
    format_quantity,
    glass_transmission,
    glossary,
    hours_to_limit,
    incidence_angle_deg,
    installation_glossary,
    largest_power_w,
    noct_cell_temperature_c,
    operating_points,
    packed_bed_conductivity,
    plane_irradiance,
    sheath_in_air_c,
    sheath_temperature,
    sun_position,
    widest_vectors,
)
from heatmatch.errors import CatalogError, Error, FileError, InvalidInput, NotFound, OutcomeUnknown
from heatmatch.explorer import explore, start
from heatmatch.face import (
    AllowedElements,
    Array,
    BankHeat,
    BedCharge,
    Bill,
    Calibration,
    Candidate,
    Catalog,
    Circuit,
    CoverArea,
    DayAnswer,
    DayRun,
    Diagnosis,
    ElementFilter,
    EnergyCurve,
    ExistingCircuit,
    Goals,
    Installation,
    Margin,
    MeterSheet,
    MonthlyNormals,
    MonthlySky,
    PartPeak,
    PartsView,
    Plan,
    Ranking,
    Readings,
    Season,
    Space,
    Stagnation,
    StoreLog,
    Unlock,
    Weather,
    assess,
    assess_circuits,
    calibrate,
    demo,
    diagnose,
    meter_sheet,
    plan,
    rank,
    simulate_circuits,
    simulate_day,
    simulate_stagnation,
    simulate_stagnations,
)
from heatmatch.io.frames import sources
from heatmatch.io.rankings import compare_rankings, load_ranking, save_ranking
from heatmatch.report.page import report
from heatmatch.text.words import words

__version__ = _core.library_version()

__all__ = [
    "Advice", "AllowedElements", "Alloy", "Array", "ArrayCurve", "ArrayPoint", "BankHeat",
    "BedCharge", "BedTemperatures", "Bill", "BillLine", "Calibration", "Candidate", "Catalog",
    "CatalogError", "CheckCounts", "Circuit", "CodeDuty", "ConductorTemperature", "Connector",
    "Control", "Cover", "CoverArea", "DarkHours", "DatasheetFit", "DayAnswer", "DayEnergy",
    "DayRun", "Delivered", "Device", "Diagnosis", "DiodeCurve", "Element", "ElementFilter",
    "ElementResistance", "EnergyCurve", "Error", "ExistingCircuit", "ExpectedBand", "Extremes",
    "FileError", "Fitted", "FittedValue", "Goals", "HeatPoint", "HistoryEntry", "HotTail",
    "Hypothesis", "IdlePanels", "ImportReport", "Installation", "Insulation", "InsulationReach",
    "InvalidInput", "LargestPoint", "Margin", "Medium", "MeterCheck", "MeterRow", "MeterSheet",
    "MixedArrayCurve", "MonthlyNormals", "MonthlySky", "NextMeasurement", "NotChecked",
    "NotFound", "OperatingPoint", "OperatingPoints", "OutcomeUnknown", "OwnedPanels", "Panel",
    "PanelPoint", "PartPeak", "Parts", "PartsView", "PlacedDevice", "PlaneIrradiance",
    "PlaneIrradiances", "Plan", "PlanOffer", "Probe", "RankMemory", "Ranking", "Readings",
    "RefusedRow", "RunParts",
    "Season", "Sheath", "SheathTemperature", "SingleDiode", "Site", "SkyIrradiance",
    "SkyIrradiances", "Space", "SpaceBalance", "Stagnation", "Step", "Store", "StoreLog",
    "StringPanel", "StringPoint", "SunPositions", "Surroundings", "SwitchEvent",
    "TemperatureBand", "Unlock", "Weather", "Wire", "WireCheck", "WireLimit", "WireRun",
    "__version__",
    "assess", "assess_circuits",
    "calibrate", "cautions", "clear_sky", "coil_above_sheath_k", "cold_voltage",
    "compare_rankings", "conductor_temperature", "demo", "diagnose", "element_resistance",
    "erbs_split", "explore", "faiman_cell_temperature_c", "fit_single_diode",
    "format_quantity", "glass_transmission", "glossary", "hours_to_limit",
    "incidence_angle_deg", "installation_glossary", "largest_power_w", "load_ranking",
    "meter_sheet", "noct_cell_temperature_c", "operating_points", "packed_bed_conductivity",
    "plan", "plane_irradiance", "plot", "rank", "report", "save_ranking", "sheath_in_air_c",
    "sheath_temperature", "simulate_circuits", "simulate_day", "simulate_stagnation",
    "simulate_stagnations", "sources", "start", "sun_position",
    "weather", "widest_vectors", "words",
]  # fmt: skip

_name_records([globals()[name] for name in __all__])


def __dir__() -> list[str]:
    return sorted([*__all__, "choices"])
