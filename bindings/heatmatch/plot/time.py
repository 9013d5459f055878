"""What plots over the time of a run share: nights, the axis of days and hours, long runs."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Any

import numpy as np
import numpy.typing as npt

from heatmatch import _library as _core
from heatmatch.errors import InvalidInput
from heatmatch.plot.style import FAINT, TEXT

if TYPE_CHECKING:
    from matplotlib.axes import Axes

_Numbers = npt.NDArray[np.float64]
DARK_W_M2 = 1.0
NIGHT = FAINT
# Up to these numbers of days the axis shows hours, or every day; above, a day is one point.
_HOURS_TOLD, _DAYS_TOLD, _STEPS_DRAWN = 8.0, 16.0, 31.0
_MEANS: dict[str, Callable[..., Any]] = {"mean": np.mean, "highest": np.max, "lowest": np.min}


def checked_run(run: object) -> _core.DayRun:
    """The run, if it is one."""
    if isinstance(run, _core.DayRun):
        return run
    raise InvalidInput(
        f"run = {type(run).__name__} must be a DayRun; "
        "hm.simulate_day(candidate, weather) gives one"
    )


class RunPlot:
    """A run over time: every step where they are few, a point for each day where they are many."""

    def __init__(self, run: _core.DayRun) -> None:
        self.run = run
        self.by_day = run.days > _STEPS_DRAWN

    def line(self, ax: Axes, values: _Numbers, of_day: str, **how: Any) -> None:
        """Draws a list; of long runs the mean, highest or lowest of each day."""
        ax.plot(*self.drawn(values, of_day), **how)

    def drawn(self, values: _Numbers, of_day: str) -> tuple[_Numbers, _Numbers]:
        """Times [h] and values as drawn."""
        if not self.by_day:
            return self.run.hours, values
        day = np.floor((self.run.hours - 1e-6) / 24.0).astype(int)
        first = np.flatnonzero(np.diff(day, prepend=-1))
        parts = np.split(values, first[1:])
        return 24.0 * day[first] + 12.0, np.array([_MEANS[of_day](part) for part in parts])

    def label(self, text: str, of_day: str) -> str:
        """A label of the other axis, saying what of a day is drawn."""
        return f"{text}, {of_day} of the day" if self.by_day else text

    def shade_nights(self, *panels: Axes) -> None:
        """Grey where no sun is on the panels."""
        if self.by_day:
            return
        run = self.run
        begins = np.concatenate([[0.0], run.hours[:-1]])
        dark = np.concatenate([[False], run.irradiance_w_m2 < DARK_W_M2, [False]])
        turns = np.flatnonzero(dark[1:] != dark[:-1])
        for first, last in zip(turns[::2], turns[1::2], strict=True):
            for ax in panels:
                ax.axvspan(begins[first], run.hours[last - 1], color=NIGHT, linewidth=0, zorder=0)

    def time_axis(self, ax: Axes) -> None:
        """Hours within days where they are few, days where they are many."""
        run = self.run
        end = float(run.hours[-1])
        ax.set_xlim(0.0, end)
        if run.days > _DAYS_TOLD:
            step = next(s for s in (2, 7, 14, 30, 60, 120, 366, 3660) if run.days / s <= 14)
            days = np.arange(0, int(run.days) + 1, step)
            ax.set_xticks(24.0 * days, [f"{day}" for day in days])
            ax.set_xlabel("time since the beginning [days]")
            return
        nights = np.arange(-run.first_hour, end + 0.5, 24.0)
        told = run.days <= _HOURS_TOLD
        labels = [(h + 12.0, f"12 h\nday {i}" if told else f"{i}") for i, h in enumerate(nights, 1)]
        labels += [(h, "0 h") for h in nights] if told else []
        labels = [(h, text) for h, text in labels if 0.0 <= h <= end]
        ax.set_xticks([h for h, _ in labels], [text for _, text in labels], fontsize=TEXT)
        ax.set_xticks([h for h in nights if 0.0 <= h <= end], minor=True)
        what = "day and hour" if told else "day"
        ax.set_xlabel(f"{what} by mean solar time [{'h' if told else 'days'}]")
