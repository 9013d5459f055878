"""What a candidate's texts and tables say about its season."""

from __future__ import annotations

from heatmatch import _core
from heatmatch.display_text import table, wrap
from heatmatch.display_units import in_units

MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")


def daily(kwh: float) -> str:
    """Heat of a day in at most four characters."""
    return f"{kwh:.2f}" if kwh < 9.995 else f"{kwh:.1f}" if kwh < 99.95 else f"{kwh:.0f}"


def darkest_month(season: _core.Season) -> int:
    """The month of the season with least heat, 1 to 12."""
    return min(season.months, key=lambda month: float(season.kwh_per_day[month - 1]))


def season_cells(season: _core.Season) -> list[tuple[str, ...]]:
    """Months, heat of a day, what the panels could give, and the share, as rows of a table."""
    known = [m for m in range(12) if season.mpp_kwh_per_day[m] > 0.0]
    delivered = [float(season.kwh_per_day[m]) for m in known]
    possible = [float(season.mpp_kwh_per_day[m]) for m in known]
    marks = ["*" if m + 1 in season.months else "" for m in known]
    return [
        ("month", *(MONTHS[m] + mark for m, mark in zip(known, marks, strict=True))),
        ("kWh/day", *(daily(kwh) for kwh in delivered)),
        ("at most", *(daily(kwh) for kwh in possible)),
        ("%", *(f"{100 * a / b:.0f}" for a, b in zip(delivered, possible, strict=True))),
    ]


def season_sentences(candidate: _core.Candidate) -> list[str]:
    """What a candidate delivers over the season, and why its best ohms are what they are."""
    season = candidate.season
    if season is None:
        return []
    cloud = ", cloud within the step" if season.cloud_band else ""
    ratio = candidate.circuit.bank_ohm / season.best_ohm
    beside = ": too many" if ratio > 1.25 else ": too few" if ratio < 0.8 else ""
    best = f"{season.best_ohm_sentence} {season.noon_loss_sentence}".rstrip()
    lines = [
        f"Over {season.days:.0f} days of the season (*): {season.kwh:.0f} kWh "
        f"({season.kwh_low:.0f} to {season.kwh_high:.0f} by tolerance, age or reading{cloud}), "
        f"{100 * season.harvest_fraction:.0f} % of what the panels could give.",
        f"{best} This bank has {candidate.circuit.bank_ohm:.3g} ohm{beside}.",
        f"In about {100 * season.near_short_share:.0f} % of the sunlit hours the panels sit near "
        "short circuit (below half of their open-circuit voltage): that sun is weak for these "
        "ohms.",
    ]
    if season.price_per_kwh is not None and season.price_per_kwh > 0.0:
        money = f"{season.price_per_kwh:.2f} {candidate.currency}".strip()
        lines.append(f"What is to be bought costs, once, {money} for each kWh of one season.")
    return lines + season.remarks


def season_text(candidate: _core.Candidate, *, units: str = "si") -> str:
    """What a candidate delivers over the season, as sentences and a table of months."""
    season = candidate.season
    if season is None:
        return ""
    lines = [wrap(in_units(text, units)) for text in season_sentences(candidate)]
    rows = season_cells(season)
    if len(rows[0]) > 1:
        widths = (8, *(-5 for _ in rows[0][1:]))
        lines += ["", table(rows[0], rows[1:], widths)]
    return "\n".join(lines)
