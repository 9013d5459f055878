"""Plot of a candidate's margins: how much of each limit is left."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from typing import TYPE_CHECKING

from heatmatch import _library as _core
from heatmatch.plot.style import INK, SMALL, TEXT, axes_or_new, set_title
from heatmatch.text import look
from heatmatch.text.columns import clip
from heatmatch.text.units import checked_units

if TYPE_CHECKING:
    from matplotlib.axes import Axes

_MOST = 26
_LOWEST = -1.0
_WORSE = ("danger", "warning", "caution", "none")


def _worst_of_each(margins: Sequence[_core.Margin]) -> list[tuple[_core.Margin, int]]:
    """The worst of each name, and how many others of that name there are; the worst first."""
    by_name: dict[str, list[_core.Margin]] = {}
    for margin in margins:
        by_name.setdefault(margin.name, []).append(margin)

    def rank(margin: _core.Margin) -> tuple[int, float]:
        headroom = 2.0 if margin.headroom is None else margin.headroom
        return _WORSE.index(margin.severity), headroom

    worst = [(min(same, key=rank), len(same) - 1) for same in by_name.values()]
    return sorted(worst, key=lambda pair: rank(pair[0]))


def _called(margin: _core.Margin) -> str:
    return _core.shown_margin_name(margin.name)


def _value_text(margin: _core.Margin, units: str) -> str:
    """Value and limit with their unit."""

    def text(value: float | None) -> str:
        if value is None:
            return "?"
        return _core.format_quantity(value, margin.unit, units=units, digits=3)

    if margin.value is None and margin.limit is None:
        return ""
    value, limit = text(margin.value), text(margin.limit)
    unit = limit.split(" ", 1)[1] if " " in limit else ""
    return f"{value.removesuffix(unit).strip()} / {limit}" if unit else f"{value} / {limit}"


def margins(candidate: _core.Candidate, *, units: str = "si", ax: Axes | None = None) -> Axes:
    """Plot the headroom of a candidate's margins, worst first.

    A heavy line marks the limits. Color, hatch and mark of a bar are those of its severity; margins
    that are not assessed are listed below.

    Parameters
    ----------
    candidate : Candidate
        Of margins with one name the worst is drawn, with the number of the others.
    units : {"si", "us"}
        Unit set of the values beside the bars.
    ax : matplotlib.axes.Axes, optional
        Axes to draw on; new ones if not given.

    Returns
    -------
    matplotlib.axes.Axes
        One bar per name of margin over headroom [1].

    Raises
    ------
    InvalidInput
        `units` is neither "si" nor "us".
    ImportError
        matplotlib is not installed.

    Notes
    -----
    ``h = (limit - value) / (limit - rest)`` for an upper limit, all in the unit of the margin; rest
    is the value with nothing connected. h is 1 at rest, 0 at the limit and below 0 beyond it.

    Examples
    --------
    >>> import heatmatch as hm
    >>> candidate = hm.assess(hm.Catalog.starter(), hm.demo())
    >>> ax = hm.plot.margins(candidate)
    >>> ax.get_legend().get_title().get_text()
    'severity'
    """
    checked_units(units)
    assessed = [m for m in candidate.margins if m.severity != "not assessed"]
    unknown = sorted(Counter(_called(m) for m in candidate.margins if m not in assessed).items())
    rows = _worst_of_each(assessed)
    drawn = rows[: max(_MOST - len(unknown), 10)]
    ax = axes_or_new(ax, (9.0, 1.4 + 0.17 * (len(drawn) + len(unknown))))
    used: list[str] = []
    labels = []
    for y, (margin, others) in enumerate(drawn):
        how = look.plot_signal(margin.severity)
        signal = look.SIGNALS[margin.severity]
        label = None if margin.severity in used else f"{signal.mark} {signal.word}"
        used.append(margin.severity)
        headroom = margin.headroom
        mark = "" if margin.severity == "none" else f"{signal.mark} "
        labels.append(f"{mark}{_called(margin)}" + (f" +{others}" if others else ""))
        if headroom is None:
            ax.plot(
                0.02, y, marker="D", color=how["facecolor"], markeredgecolor=how["edgecolor"],
                markersize=5, label=label, linestyle="none",
            )  # fmt: skip
        else:
            width = min(1.0, max(_LOWEST, headroom))
            ax.barh(y, width, height=0.66, linewidth=0.7, label=label, **how)
            if headroom < _LOWEST:
                ax.annotate(
                    f"◂ {headroom:.1f}", (_LOWEST, y), fontsize=SMALL, va="center", ha="right"
                )
        ax.text(1.04, y, _value_text(margin, units), fontsize=SMALL, va="center", parse_math=False)
    asked = look.SIGNALS["not assessed"]
    for y, (name, count) in enumerate(unknown, len(drawn)):
        labels.append(f"{asked.mark} {name}" + (f" +{count - 1}" if count > 1 else ""))
        ax.text(0.02, y, asked.word, fontsize=SMALL, va="center", style="italic")
    ax.axvline(0.0, color=INK, linewidth=2.6)
    ax.set_yticks(range(len(labels)), [clip(label, 34) for label in labels])
    ax.set_ylim(len(labels) - 0.4, -0.6)
    lowest = min([0.0, *(m.headroom for m, _ in drawn if m.headroom is not None)])
    ax.set_xlim(max(lowest, _LOWEST) - 0.12, 1.02)
    left = [margin.headroom for margin, _ in rows[len(drawn) :]]
    numbers = len(left) - left.count(None)
    more = f"\n{numbers} more are less severe or further from their limits" if numbers else ""
    if len(left) > numbers:
        more += f"{'; ' if more else chr(10)}{len(left) - numbers} more have no number"
    ax.set_xlabel(f"headroom: 0 at the limit (heavy line), 1 unused{more}")
    set_title(ax, candidate.circuit.title, str(candidate.severity))
    for tick in ax.get_yticklabels():
        tick.set(fontsize=SMALL, parse_math=False)
    for tick, (margin, _) in zip(ax.get_yticklabels(), drawn, strict=False):
        if margin.severity == "danger":
            tick.set(color=look.SIGNALS["danger"].fill, fontweight="bold")
    ax.legend(
        fontsize=TEXT, title_fontsize=TEXT, loc="upper left", bbox_to_anchor=(1.2, 1.0),
        borderaxespad=0.0, title="severity",
    )  # fmt: skip
    return ax
