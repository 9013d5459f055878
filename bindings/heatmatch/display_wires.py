"""What the checks of a circuit's wires say, as text of 80 columns."""

from __future__ import annotations

from collections.abc import Sequence

from heatmatch import _core
from heatmatch.display_heat import UNKNOWN, degree_unit, degrees
from heatmatch.display_text import table, wrap
from heatmatch.display_units import in_units, listed

WIRES_WIDTHS = (14, 20, -9, -5, -7, -6, -11)
_SHOWN_INSULATIONS = 4
_AT_TERMINAL_M = 1e-9


def wires_header(units: str = "si") -> tuple[str, ...]:
    """The columns of the table of wires."""
    return ("run", "wire", "gauge", "A", f"hot, {degree_unit(units)}", "limit", "limited by")


def wires_legend(units: str = "si") -> str:
    """What those columns mean."""
    return (
        f"A: amperes it carries at most; hot: the conductor at its worst in {degree_unit(units)}; "
        "limit: of what gives way first, insulation, plating or joint. Below, each run with its "
        "severity and the reason that decides; none: within its limits; ?: not known, it may melt."
    )


def gauge(circuit: _core.Circuit, run: str, units: str) -> str:
    """The size of a run's wire in the unit set."""
    for parts in circuit.runs:
        if parts.run.name == run and parts.wire is not None:
            return _core.format_quantity(parts.wire.area_mm2, "mm2", units=units, digits=3)
    return UNKNOWN


def wires_cells(
    circuit: _core.Circuit, checks: Sequence[_core.WireCheck], *, units: str = "si"
) -> list[tuple[str, ...]]:
    """One row for each run."""
    rows: list[tuple[str, ...]] = []
    for check in checks:
        limit = next((limit for limit in check.limits if limit.what == check.decides), None)
        rows.append(
            (
                check.run,
                check.wire,
                gauge(circuit, check.run, units),
                f"{check.current_a:.1f}",
                _hot(check, units),
                degrees(None if limit is None else limit.limit_c, units),
                check.decides or UNKNOWN,
            )
        )
    return rows


def _hot(check: _core.WireCheck, units: str) -> str:
    """How hot a run gets; unknown where the heat that comes down the element is not known."""
    if check.runaway:
        return "runaway"
    unknown = check.at_element and check.severity == "not assessed"
    return UNKNOWN if unknown else degrees(check.conductor_c, units)


def _reach_lines(check: _core.WireCheck, units: str) -> list[str]:
    """Which insulations the end at the element leaves."""
    near = [r for r in check.reach if r.from_m is not None and r.from_m <= _AT_TERMINAL_M]
    far = [r for r in check.reach if r.from_m is not None and r.from_m > _AT_TERMINAL_M]
    lines = []
    for text, reach in (("at the terminal", near), ("only further on", far)):
        first = sorted(reach, key=lambda r: r.limit_c)[:_SHOWN_INSULATIONS]
        names = [
            f"{r.insulation} ({_core.format_quantity(r.limit_c, '°C', units=units)}"
            + (
                f", from {_core.format_quantity(r.from_m, 'm', units=units, digits=2)})"
                if r.from_m
                else ")"
            )
            for r in first
        ]
        more = f" and {len(reach) - len(first)} more" if len(reach) > len(first) else ""
        if names:
            lines.append(
                wrap(f"  insulation that would do {text}: {', '.join(names)}{more}", "    ")
            )
    return lines


def wires_text(
    candidate: _core.Candidate, checks: Sequence[_core.WireCheck], *, units: str = "si"
) -> str:
    """The runs of a circuit as a table, then each with its severity, reason and remedy."""
    rows = wires_cells(candidate.circuit, checks, units=units)
    lines = [table(wires_header(units), rows, WIRES_WIDTHS), "", wrap(wires_legend(units)), ""]
    for check in checks:
        sentence = in_units(check.sentence, units)
        lines.append(wrap(f"{check.severity}: {check.run}: {sentence}"))
        if check.would_do is not None:
            wire = f"{check.would_do.id}, {check.would_do_gauge}"
            lines.append(wrap(f"  would do: {wire}", "    "))
        if check.at_element:
            lines += _reach_lines(check, units)
    assumed = dict.fromkeys(text for check in checks for text in check.assumed)
    return "\n".join([*lines, *listed("assumed:", assumed, units)])
