"""The wiring list of a report: every run by the zone it lies in, with what is on it."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from heatmatch import _core
from heatmatch.display_heat import UNKNOWN, degree_unit, degrees
from heatmatch.display_text import clip

ZONES = ("1 sun and weather", "2 out of the sun", "3 hot end")
_HOT_C = 60.0  # from here on a run counts as the hot end
HEADER = (
    "zone", "run", "carries", "length, one way", "wire", "insulation and its limit", "at its worst",
    "limit, by", "joints", "on it", "would do",
)  # fmt: skip


def zone(run: _core.RunParts, check: _core.WireCheck | None) -> str:
    """Where a run lies: the bank's runs, what is buried and what stands in hot air are hot."""
    around = run.run.surroundings
    hot = around.air_c is not None and around.air_c > _HOT_C
    runs_away = check is not None and check.runaway
    if run.run.carries != "array" or around.kind == "bed" or hot or runs_away:
        return ZONES[2]
    return ZONES[0] if around.kind == "sunlit" else ZONES[1]


def _wire(run: _core.RunParts, units: str) -> str:
    if run.wire is None:
        return UNKNOWN
    sizes = [
        _core.format_quantity(run.wire.area_mm2, "mm2", units=one, digits=3)
        for one in (("us", "si") if units == "us" else ("si", "us"))
    ]
    return f"{run.wire.id}, {sizes[0]} ({sizes[1]}) {run.wire.conductor}"


def _insulation(run: _core.RunParts, units: str) -> str:
    if run.insulation is None:
        return UNKNOWN
    limit = _core.format_quantity(run.insulation.limit_c, "°C", units=units, digits=3)
    return f"{run.insulation.id}, {limit}"


def _joints(run: _core.RunParts, units: str) -> str:
    if run.connector is None:
        return "not known"
    limit = _core.format_quantity(run.connector.limit_c, "°C", units=units, digits=3)
    return f"{run.connector.id}, {limit}"


def _would_do(check: _core.WireCheck | None) -> str:
    if check is None or check.severity in ("none", "caution") or check.would_do is None:
        return ""
    return f"{check.would_do.id}, {check.would_do_gauge}"


def _hot(check: _core.WireCheck | None, units: str) -> str:
    if check is None:
        return UNKNOWN
    if check.runaway:
        return "runaway: no steady temperature"
    if check.at_element and check.severity == "not assessed":
        return "not known: it may melt"
    celsius = f"{degrees(check.conductor_c, units)} {degree_unit(units)}"
    return celsius if check.severity == "none" else f"{celsius}, {check.severity}"


def _limit(check: _core.WireCheck | None, units: str) -> str:
    if check is None or not check.decides:
        return UNKNOWN
    limit = next((one for one in check.limits if one.what == check.decides), None)
    celsius = None if limit is None else limit.limit_c
    return f"{degrees(celsius, units)} {degree_unit(units)}, {check.decides}"


def _cells(run: _core.RunParts, check: _core.WireCheck | None, units: str) -> list[str]:
    """The cells of a run in one unit set."""
    cells = [
        zone(run, check),
        clip(run.name, 60),
        run.run.carries,
        _core.format_quantity(run.run.length_m, "m", units=units, digits=3),
        _wire(run, units),
        _insulation(run, units),
        _hot(check, units),
        _limit(check, units),
        _joints(run, units),
        _would_do(check),
    ]
    return [clip(cell, 120) for cell in cells]


def wiring(
    candidate: _core.Candidate, either: Callable[[str, str], Any]
) -> tuple[tuple[str, ...], list[list[Any]], list[str]]:
    """Head, rows by zone, and the reasons that decide, of the wiring list."""
    circuit = candidate.circuit
    checks = {check.run: check for check in candidate.check_wires()}
    on_run: dict[str, list[str]] = {}
    for device in circuit.devices:
        place = device.device.run or ""
        on_run.setdefault(place, []).append(f"{device.control.id} ({device.device.duty})")
    rows = []
    for run in sorted(circuit.runs, key=lambda one: zone(one, checks.get(one.name))):
        si, us = (_cells(run, checks.get(run.name), units) for units in ("si", "us"))
        row = [either(*cells) for cells in zip(si, us, strict=True)]
        rows.append([*row[:9], clip(", ".join(on_run.get(run.name, [])), 160), row[9]])
    reasons = [f"{clip(run, 60)}: {check.sentence}" for run, check in checks.items()]
    reasons += [f"{text}: placed on no run" for text in on_run.get("", [])]
    # A column that says nothing of any run takes the room of those that do.
    kept = [i for i in range(len(HEADER)) if not rows or any(row[i] for row in rows)]
    header = tuple(HEADER[i] for i in kept)
    return header, [[row[i] for i in kept] for row in rows], reasons
