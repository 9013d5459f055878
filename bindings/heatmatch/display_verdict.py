"""What a candidate comes to, in plain sentences."""

from __future__ import annotations

from heatmatch import _core
from heatmatch.display_season import MONTHS, darkest_month

SEVERITIES = ("danger", "warning", "caution", "not assessed", "none")


def by_severity(candidate: _core.Candidate) -> list[_core.Margin]:
    """The margins of a candidate, the most severe first."""
    return sorted(candidate.margins, key=lambda margin: SEVERITIES.index(margin.severity))


def headroom_cell(margin: _core.Margin) -> str:
    """How much of a limit is left, at most all of it; nothing where that is not known."""
    return "" if margin.headroom is None else f"{min(margin.headroom, 1.0):.2f}"


def headroom_left(candidate: _core.Candidate) -> str:
    """How near its nearest limit is; not known where how hot the sheath gets is not."""
    if candidate.heat_unknown:
        return "?"
    return f"{min(candidate.smallest_headroom, 1.0):.2f}"


def severity_counts(candidate: _core.Candidate) -> dict[str, int]:
    """How many margins of each severity that is to be told, the most severe first."""
    counts = {name: sum(m.severity == name for m in candidate.margins) for name in SEVERITIES[:-1]}
    return {name: count for name, count in counts.items() if count}


def heat_sentence(candidate: _core.Candidate) -> str:
    """How much heat, and what that is like."""
    season = candidate.season
    if season is None:
        return f"About {candidate.mean_power_w:.0f} W averaged over the conditions."
    darkest = darkest_month(season)
    least = float(season.kwh_per_day[darkest - 1])
    mean = season.mean_kwh_per_day
    return (
        f"About {mean:.2f} kWh of heat on an average day of the season, like a heater of "
        f"{1000.0 * mean / 24.0:.0f} W left on; {least:.2f} kWh a day in "
        f"{MONTHS[darkest - 1]}, the darkest month, like {1000.0 * least / 24.0:.0f} W. "
        f"Over the season that is {100.0 * season.harvest_fraction:.0f} % of what the panels could "
        "give."
    )


def space_sentence(candidate: _core.Candidate, *, units: str = "si") -> str:
    """What the heat does for the space, by what the space loses."""
    space, season = candidate.space, candidate.season
    if space is None or not space.known:
        return "No space is described with its covers and volume: what it does for one is not told."

    def kelvin(difference_k: float) -> str:
        return _core.format_quantity(difference_k, "K", units=units, digits=2)

    heat_w = candidate.mean_power_w if season is None else 1000.0 * season.mean_kwh_per_day / 24.0
    when = "while it gives that" if season is None else "in the mean over the season"
    return (
        f"The space loses {10.0 * space.loss_w_k:.0f} W when it is {kelvin(10.0)} warmer than "
        f"outside; {when} this lifts it by {kelvin(float(space.lift_k(heat_w)))}."
    )


def margin_sentence(candidate: _core.Candidate) -> str:
    """What its margins come to; a danger is named."""
    counts = severity_counts(candidate)
    warnings = dict.fromkeys(m.name for m in candidate.margins if m.severity == "warning")
    told = ", ".join(
        f"{count} {name}" + (f" ({', '.join(warnings)})" if name == "warning" else "")
        for name, count in counts.items()
    )
    if not counts:
        return "Every margin was assessed and is within its limit."
    if "danger" in counts:
        names = sorted({m.name for m in candidate.margins if m.severity == "danger"})
        return f"DANGER: {', '.join(names)}. Do not build it so. Margins: {told}."
    return f"Margins: {told}."


def nearest_sentence(candidate: _core.Candidate, *, units: str = "si") -> str:
    """Which limit whose passing is a danger is nearest, how near, and whether one is missing."""
    nearest = candidate.nearest_limit
    unknown = "How hot the sheath gets is not known: that limit may be nearer."
    if nearest is None:
        return unknown if candidate.heat_unknown else ""
    numbers = ""
    if nearest.value is not None and nearest.limit is not None:
        value, limit = (
            _core.format_quantity(number, nearest.unit, units=units, digits=3)
            for number in (nearest.value, nearest.limit)
        )
        numbers = f": {value}, its limit is {limit}"
    said = (
        f"Of the limits whose passing is a danger the nearest is {nearest.name} of "
        f"{nearest.subject}{numbers} (headroom {nearest.headroom:.2f})."
    )
    return f"{said} {unknown}" if candidate.heat_unknown else said


def verdict_sentences(candidate: _core.Candidate) -> list[str]:
    """What a candidate comes to; a danger first."""
    sentences = [heat_sentence(candidate), margin_sentence(candidate)]
    return sentences[::-1] if "danger" in severity_counts(candidate) else sentences


def nothing_left(ranking: _core.Ranking) -> str:
    """Why no pairing is left, in one sentence: for dangers, for money, or for both."""
    if sum(ranking.reasons.values()) < ranking.evaluated:
        return "No pairing was asked for: top is 0."
    money = {"budget", "price not known"}
    if not money & set(ranking.reasons):
        return "No pairing is without danger."
    if set(ranking.reasons) <= money:
        return "No pairing is within the budget with its price known."
    return "No pairing is left: each has a danger, is beyond the budget, or has no known price."
