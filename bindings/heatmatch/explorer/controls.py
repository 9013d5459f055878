"""The controls of the explorer: one widget for each choice."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from typing import Any

import ipywidgets as widgets

from heatmatch import _library as _core
from heatmatch.errors import InvalidInput
from heatmatch.explorer.choice import Choice, Workbench, hookups_up_to
from heatmatch.text.columns import clip

ALL = "all"
ANY = "any"
_LARGEST_BANK = 4
_WIDE = {"description_width": "7.5em"}
_LAYOUT = {"width": "21em"}


def other_units(value: float, unit: str) -> str:
    """A quantity in US units, for example `29.5 ft`; nothing where they are the same."""
    si, us = (_core.format_quantity(value, unit, units=units, digits=3) for units in ("si", "us"))
    return "" if si == us else us


class NumberSlider:
    """A slider with its number in SI units beside it, and then in US units."""

    def __init__(
        self, title: str, unit: str, value: float, ends: tuple[float, float], step: float
    ) -> None:
        digits = max(0, -math.floor(math.log10(step)))
        self.unit = unit
        self.slider = widgets.FloatSlider(
            value=value,
            min=min(ends[0], value),
            max=max(ends[1], value),
            step=step,
            description=title,
            readout_format=f".{digits}f",
            style=_WIDE,
            layout=_LAYOUT,
        )
        self.label = widgets.Label(layout={"width": "5em"})
        self.box = widgets.HBox([self.slider, self.label])
        self.slider.observe(lambda change: self._say(), "value")
        self._say()

    @property
    def value(self) -> float:
        """The number as displayed: a browser moves sliders in binary fractions."""
        return round(float(self.slider.value), 9)

    def _say(self) -> None:
        self.label.value = other_units(self.slider.value, self.unit)


def _dropdown(title: str, options: Sequence[Any], value: Any) -> Any:
    return widgets.Dropdown(
        description=title, options=options, value=value, style=_WIDE, layout=_LAYOUT
    )


def _with_any(options: Sequence[str], word: str = ANY) -> list[tuple[str, str]]:
    return [(word, ""), *((option, option) for option in options)]


class Controls:
    """All controls of a workbench; ``changed`` is called once for each change of the choice."""

    def __init__(self, bench: Workbench, elements: Sequence[str]) -> None:
        self.bench = bench
        self.changed: Callable[[], None] = lambda: None
        self._quiet = False
        start = bench.start
        self.dropdowns: dict[str, Any] = {
            "group": _dropdown("panels", _with_any(bench.groups(), ALL), ""),
            "panels": _dropdown("their hook-up", _with_any(bench.hookups()), ""),
            "element": _dropdown("element", _with_any(elements), ""),
            "bank": _dropdown("bank", _with_any(hookups_up_to(_LARGEST_BANK)), ""),
        }
        if start.wire is not None:
            self.dropdowns["wire"] = _dropdown("wire of that run", bench.wires(), start.wire)
        self.sliders = self._sliders(start)
        self.budget = widgets.Text(
            value="" if start.budget is None else f"{start.budget:g}",
            description="budget",
            placeholder="none",
            continuous_update=False,
            style=_WIDE,
            layout=_LAYOUT,
        )
        self._watch()

    def _sliders(self, start: Choice) -> dict[str, NumberSlider]:
        made: dict[str, NumberSlider] = {}
        if start.tilt_deg is not None:
            made["tilt_deg"] = NumberSlider("tilt [deg]", "deg", start.tilt_deg, (0, 90), 5)
        if start.sun_pct is not None:
            made["sun_pct"] = NumberSlider("sun [%]", "%", start.sun_pct, (50, 120), 5)
        if start.length_m is not None:
            title = "longest run [m]"
            made["length_m"] = NumberSlider(title, "m", start.length_m, (1, 60), 1)
        if start.k20_w_mk is not None:
            k20 = start.k20_w_mk
            ends = (round(0.5 * k20, 2), round(2.0 * k20, 2))
            made["k20_w_mk"] = NumberSlider("fill's k [W/mK]", "W/mK", k20, ends, 0.01)
        coldest = min(self.bench.plain.get("weather", {}).get("temp_min_c", [10.0]))
        ends = (-50, min(10, math.floor(coldest)))
        made["record_low_c"] = NumberSlider("record low [°C]", "°C", start.record_low_c, ends, 1)
        return made

    def _watch(self) -> None:
        self.dropdowns["group"].observe(self._group_changed, "value")
        others = [box for name, box in self.dropdowns.items() if name != "group"]
        for widget in (*others, *(number.slider for number in self.sliders.values()), self.budget):
            widget.observe(self._tell, "value")

    def _tell(self, change: object = None) -> None:
        del change
        if not self._quiet:
            self.changed()

    def _group_changed(self, change: object) -> None:
        """Update the hook-ups for another group; keep the chosen one if possible."""
        del change
        with _Held(self):
            box = self.dropdowns["panels"]
            kept = box.value
            hookups = self.bench.hookups(self.dropdowns["group"].value)
            box.options = _with_any(hookups)
            box.value = kept if kept in hookups else ""
        self._tell()

    def choice(self) -> Choice:
        """The setting of the controls.

        Raises
        ------
        InvalidInput
            The budget is not a number, or out of range.
        """
        values = {name: box.value for name, box in self.dropdowns.items()}
        values |= {name: number.value for name, number in self.sliders.items()}
        return Choice(**values, budget=_budget(self.budget.value.strip()))

    def put(self, choice: Choice) -> None:
        """Set all controls, with one notification."""
        with _Held(self):
            self.dropdowns["group"].value = choice.group
            for name, box in self.dropdowns.items():
                box.value = getattr(choice, name)
            for name, number in self.sliders.items():
                number.slider.value = getattr(choice, name)
            self.budget.value = "" if choice.budget is None else f"{choice.budget:g}"
        self._tell()

    def box(self) -> Any:
        """All controls, one below the other."""
        order = [self.dropdowns[name] for name in ("group", "panels", "element", "bank")]
        for name in ("tilt_deg", "sun_pct", "length_m"):
            order += [self.sliders[name].box] if name in self.sliders else []
        order += [self.dropdowns["wire"]] if "wire" in self.dropdowns else []
        for name in ("k20_w_mk", "record_low_c"):
            order += [self.sliders[name].box] if name in self.sliders else []
        return widgets.VBox([*order, self.budget], layout={"width": "27em"})


def _budget(text: str) -> float | None:
    """The budget as entered; None if empty."""
    if not text:
        return None
    try:
        budget = float(text)
    except ValueError:
        budget = -1.0
    if 0.0 <= budget < math.inf:
        return budget
    allowed, remedy = "a number of 0 or more", "leave it empty for none"
    shown = clip(text, 40)
    raise InvalidInput(
        f"budget: write a number of 0 or more, or leave it empty for none, not {shown}",
        "choice",
        "budget",
        shown,
        allowed,
        remedy,
    )


class _Held:
    """Suppress notifications while several controls are set."""

    def __init__(self, controls: Controls) -> None:
        self._controls = controls

    def __enter__(self) -> None:
        self._before = self._controls._quiet
        self._controls._quiet = True

    def __exit__(self, *error: object) -> None:
        self._controls._quiet = self._before
