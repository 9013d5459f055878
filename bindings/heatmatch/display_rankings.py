"""Two rankings side by side, as text of 80 columns and as HTML."""

from __future__ import annotations

from collections.abc import Iterable

from heatmatch.display_text import clip, clip_middle, table, wrap
from heatmatch.forms import html_table, paragraphs
from heatmatch.rankings import Move, RankingComparison

ROWS = 12
DANGER = "danger"
# Where a place is a danger, its word takes what the elements have room for.
_WIDTHS = (-3, -4, 15, 25, -5, -5, -6, -4, -5)
_WIDTHS_OF_DANGER = (-6, -6, 15, 20, -5, -5, -6, -4, -5)


def comparison_header(comparison: RankingComparison) -> tuple[str, ...]:
    """The columns of the comparison."""
    return ("now", "was", "panels", "elements", comparison.unit, "was", "change", "head", "buy")


def _number(value: float | None, pattern: str) -> str:
    if value is None:
        return "-"
    shown = format(value, pattern)
    return shown.replace("-", "+") if float(shown) == 0.0 else shown


def _place(place: int | None, severity: str | None, worst: str | None) -> str:
    """A place, or why there is none."""
    if place is None and severity == DANGER:
        return f"{DANGER}: {clip(worst, 60)}" if worst else DANGER
    return _number(place, "d")


def comparison_cells(move: Move, names: tuple[int, int] = (120, 120)) -> tuple[str, ...]:
    """The cells of one pairing, its two names cut to so many characters."""
    known = move.after is not None or move.severity_after == DANGER
    headroom = move.headroom_after if known else move.headroom_before
    return (
        _place(move.after, move.severity_after, move.worst_after),
        _place(move.before, move.severity_before, move.worst_before),
        f"{clip(move.group, names[0] - len(move.panels) - 1)} {move.panels}",
        f"{clip_middle(move.element, names[1] - len(move.bank) - 1)} {move.bank}",
        _number(move.heat_after, ".0f"),
        _number(move.heat_before, ".0f"),
        _number(move.change, "+.0f"),
        _number(headroom, ".2f"),
        _number(move.price_after, ".0f"),
    )


def verdict(comparison: RankingComparison) -> str:
    """What became of the first place, in one sentence."""
    first = next((move for move in comparison.moves if move.after == 1), None)
    then = next((move for move in comparison.moves if move.before == 1), None)
    if then is None:
        one = "" if first is None else f"; {_name(first)} is first now"
        return f"Before, no pairing was without danger{one}."
    if first is None:
        why = _danger_after(then)
        fate = f" is a {why}" if why.startswith(DANGER) else " is not kept"
        return f"Now no pairing is without danger; {_name(then)}, first before,{fate}."
    name = _name(first)
    if first is then:
        return f"{name} stays first, {_number(first.change, '+.0f')} {comparison.unit}."
    where = f"now at place {then.after}"
    if then.after is None:
        where = f"now a {_danger_after(then)}" if then.severity_after else "no longer kept"
    was = f"at place {first.before}"
    if first.before is None:
        was = f"a {_danger_before(first)}" if first.severity_before else "not kept"
    return f"{name} is first, before {was}; {_name(then)}, first before, is {where}."


def _danger_after(move: Move) -> str:
    return _place(move.after, move.severity_after, move.worst_after)


def _danger_before(move: Move) -> str:
    return _place(move.before, move.severity_before, move.worst_before)


def _name(move: Move) -> str:
    return f"{clip(move.group, 40)} {move.panels} into {clip_middle(move.element, 40)} {move.bank}"


def dangers(moves: Iterable[Move]) -> list[str]:
    """Which pairings became, or were, a danger, by margin."""
    told: dict[str, list[str]] = {}
    for move in moves:
        for when, why in (("Now", _danger_after(move)), ("Before", _danger_before(move))):
            if why.startswith(DANGER):
                told.setdefault(f"{when} a {why}", []).append(_name(move))
    return [f"{why}: {', '.join(names)}." for why, names in told.items()]


def _reasons(comparison: RankingComparison) -> list[str]:
    """How many pairings each margin rejected, where that has changed."""
    old, new = comparison.reasons_before, comparison.reasons_after
    if old == new:
        return []

    def told(reasons: dict[str, int]) -> str:
        named = (f"{clip(name, 60)} {count}" for name, count in sorted(reasons.items()))
        return ", ".join(named) or "none"

    return [f"Pairings rejected now: {told(new)}. They were: {told(old)}."]


def notes(comparison: RankingComparison) -> list[str]:
    """What the columns mean, and what else there is to say."""
    heat = (
        "kWh: heat of the season" if comparison.unit == "kWh" else "W: averaged over the conditions"
    )
    money = f" in {clip(comparison.currency, 10)}" if comparison.currency else ""
    return [
        f"now: place in {clip(comparison.after, 60)}; was: in {clip(comparison.before, 60)}; "
        f"{heat} into the elements; head: smallest headroom of the limits whose passing is a "
        f"danger; buy: price now of what is to be bought{money}; danger: rejected for one; -: not "
        "known, or not among those kept.",
        *_reasons(comparison),
        *comparison.remarks,
    ]


def _shown(comparison: RankingComparison) -> list[Move]:
    """The best of both."""
    return [m for m in comparison.moves if min(m.after or ROWS + 1, m.before or ROWS + 1) <= ROWS]


def comparison_text(comparison: RankingComparison) -> str:
    """A comparison as text."""
    shown = _shown(comparison)
    told = dangers(shown)
    widths = _WIDTHS_OF_DANGER if told else _WIDTHS
    rows = []
    for move in shown:
        now, was, *others = comparison_cells(move, (widths[2], widths[3]))
        rows.append((now.partition(":")[0], was.partition(":")[0], *others))
    return "\n".join(
        [
            wrap(verdict(comparison)),
            "",
            table(comparison_header(comparison), rows, widths),
            "",
            *(wrap(text) for text in [*told, *notes(comparison)]),
        ]
    )


def comparison_html(comparison: RankingComparison) -> str:
    """A comparison as an HTML table; every text is escaped."""
    rows = [comparison_cells(move) for move in _shown(comparison)]
    title = verdict(comparison)
    return html_table(comparison_header(comparison), rows, title) + paragraphs(notes(comparison))
