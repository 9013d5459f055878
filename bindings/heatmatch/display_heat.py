"""What a candidate's texts and tables say about the heat of its store."""

from __future__ import annotations

from collections.abc import Sequence

from heatmatch import _core

CM_PER_INCH = 2.54
UNKNOWN = "?"


def degrees(celsius: float | None, units: str) -> str:
    """A temperature as a whole number of the unit set's degrees, or `?`."""
    if celsius is None:
        return UNKNOWN
    text = _core.format_quantity(celsius, "°C", units=units, digits=8)
    return f"{float(text.split()[0]):.0f}"


def degree_unit(units: str) -> str:
    """The unit set's degrees."""
    return _core.format_quantity(0.0, "°C", units=units).split()[1]


def load_unit(units: str) -> str:
    """The unit set's watts of heated length."""
    return "W/in" if units == "us" else "W/cm"


def load(w_per_cm: float, units: str) -> str:
    """Watts of heated length in at most four characters."""
    value = w_per_cm * CM_PER_INCH if units == "us" else w_per_cm
    return f"{value:.2f}" if value < 9.995 else f"{value:.1f}" if value < 99.95 else f"{value:.0f}"


def with_store(candidates: Sequence[_core.Candidate]) -> bool:
    """Whether any of them heats a store that is described."""
    return any(candidate.circuit.heat is not None for candidate in candidates)


def sheath_cells(candidate: _core.Candidate, units: str) -> tuple[str, str]:
    """The judged sheath beside its limit, and the watts of heated length."""
    point = candidate.heat
    if point is None:
        return UNKNOWN, UNKNOWN
    sheath = candidate.circuit.sheath
    limit = degrees(None if sheath is None else sheath.verdict_limit_c, units)
    return f"{degrees(point.sheath_c, units)}/{limit}", load(point.w_per_cm, units)


def sheath_legend(units: str) -> str:
    """What those two columns mean."""
    return (
        f"sheath: its temperature in {degree_unit(units)} after three bright days, judged at the "
        f"fill's worst, beside its limit; {load_unit(units)}: of heated length in bright cold; "
        f"{UNKNOWN}: not known, and head with it; "
    )


HEAT_HEADER = ("", "low", "typical", "high", "judged", "limit")
# Margins with a temperature of their own: name -> what the row is called.
_JUDGED = {
    "coil temperature": "coil",
    "settled sand": "sheath in settled sand",
    "stagnation": "sheath, no thermostat",
    "terminal temperature": "terminal",
    "end seal": "end seal",
    "hot tail insulation": "wire at the terminal",
}


def heat_cells(candidate: _core.Candidate, *, units: str = "si") -> list[tuple[str, ...]]:
    """Rows of temperatures: low, typical, high by the fill, judged at its worst, and the limit."""
    point = candidate.heat
    if point is None:
        return []

    def row(name: str, *celsius: float | None | str) -> tuple[str, ...]:
        return (name, *(c if isinstance(c, str) else degrees(c, units) for c in celsius))

    band = point.sheath_band
    sheath = candidate.circuit.sheath
    limit = None if sheath is None else sheath.verdict_limit_c
    judged = {margin.name: margin for margin in candidate.margins if margin.name in _JUDGED}
    rows = [row("sheath", band.low_c, band.typical_c, band.high_c, point.sheath_c, limit)]
    for name, called in _JUDGED.items():
        margin = judged.get(name)
        if margin is not None and margin.value is not None:
            rows.append(row(called, "", "", "", margin.value, margin.limit))
    rows.append(row("bed, mean", "", point.bed_mean_c, "", "", ""))
    wood = next((m.limit for m in candidate.margins if m.name == "wall and lid"), None)
    outside = "" if wood is None else degrees(wood, units)
    rows.append(row("wall, hottest spot", "", "", "", point.wall_c, outside))
    rows.append(row("lid", "", "", "", point.lid_c, outside))
    return rows


def heat_title(candidate: _core.Candidate, *, units: str = "si") -> str:
    """What those rows hold for."""
    heat, point = candidate.circuit.heat, candidate.heat
    if heat is None or point is None:
        return "heat in the store: not computed"
    return (
        f"heat in the store, {degree_unit(units)}: {candidate.bright.element_power_w:.0f} W an "
        f"element in bright cold, {load(point.w_per_cm, units)} {load_unit(units)}, "
        f"{heat.charge_hours:g} h a day"
    )
