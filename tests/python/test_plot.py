"""Plots: each function accepts and returns an Axes, labeled with units."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

import heatmatch as hm
import numpy as np
import pytest
from heatmatch import plot
from matplotlib.text import Text

matplotlib = pytest.importorskip("matplotlib")
matplotlib.use("Agg")
plt = pytest.importorskip("matplotlib.pyplot")

FUNCTIONS = [plot.load_lines, plot.power_against_ohms]
LABELS = {
    "load_lines": ("array voltage [V]", "array current [A]"),
    "power_against_ohms": ("resistance of the elements [ohm]", "power into the elements [W]"),
}
each_function = pytest.mark.parametrize("function", FUNCTIONS, ids=lambda f: f.__name__)


@pytest.fixture(autouse=True)
def closed_figures() -> Iterator[None]:
    yield
    plt.close("all")


@each_function
def test_a_new_axes_is_made_where_none_is_given(function: Any, standing: hm.Candidate) -> None:
    ax = function(standing)
    assert isinstance(ax, matplotlib.axes.Axes)
    assert plt.get_fignums() == [ax.figure.number]
    assert function(standing) is not ax


@each_function
def test_the_given_axes_is_drawn_on_and_given_back(function: Any, standing: hm.Candidate) -> None:
    figure, (left, right) = plt.subplots(1, 2)
    assert function(standing, ax=right) is right
    assert right.lines
    assert not left.lines
    assert plt.get_fignums() == [figure.number]


@each_function
def test_the_options_are_keywords_only(function: Any, standing: hm.Candidate) -> None:
    with pytest.raises(TypeError):
        function(standing, plot.SUNS)


@each_function
def test_axes_have_labels_with_units_a_title_and_a_legend(
    function: Any, standing: hm.Candidate
) -> None:
    ax = function(standing)
    assert (ax.get_xlabel(), ax.get_ylabel()) == LABELS[function.__name__]
    assert ax.get_title()
    entries = [text.get_text() for text in ax.get_legend().get_texts()]
    for sun, cell in plot.SUNS:
        assert any(f"{sun:.0f} W/m², cells {cell:.0f} °C" in entry for entry in entries)
    assert any("ohm" in entry for entry in entries)
    ax.figure.canvas.draw()


@each_function
def test_every_sun_has_a_line_of_its_own_style(function: Any, standing: hm.Candidate) -> None:
    ax = function(standing, suns=[(900, 40), (300, 20)])
    lines = [line for line in ax.lines if "W/m²" in str(line.get_label())]
    assert len(lines) == 2
    assert lines[0].get_linestyle() != lines[1].get_linestyle()
    assert lines[0].get_color() != lines[1].get_color()


@each_function
def test_every_kind_of_candidate_can_be_drawn(function: Any, demo_ranking: hm.Ranking) -> None:
    for candidate in [*demo_ranking.candidates[::120], *demo_ranking.rejected[::180]]:
        ax = function(candidate)
        ax.figure.canvas.draw()
        assert ax.get_title()
        assert ax.lines
        plt.close(ax.figure)


@each_function
def test_more_suns_than_styles_are_not_left_out_in_silence(
    function: Any, standing: hm.Candidate
) -> None:
    suns = [(1000 - 100 * n, 40) for n in range(7)]
    try:
        ax = function(standing, suns=suns)
    except (ValueError, hm.InvalidInput):
        return
    assert sum("W/m²" in str(line.get_label()) for line in ax.lines) == len(suns)


def test_curves_show_what_the_array_gives(standing: hm.Candidate) -> None:
    ax = plot.load_lines(standing, suns=[(1000, 45)])
    curve = standing.circuit.array.at(irradiance_w_m2=1000, cell_temperature_c=45)
    line = next(line for line in ax.lines if "W/m²" in str(line.get_label()))
    volts, amperes = (np.asarray(data, dtype=float) for data in line.get_data())
    assert amperes.tolist() == curve.current_a(volts).tolist()
    assert volts[-1] == curve.open_circuit_voltage_v
    watts = f"{standing.delivered[0].power_w:.0f} W"
    assert str(line.get_label()).endswith(watts)


def test_the_power_curve_passes_through_what_the_bank_takes(standing: hm.Candidate) -> None:
    ax = plot.power_against_ohms(standing, suns=[(1000, 45)])
    line = next(line for line in ax.lines if "W/m²" in str(line.get_label()))
    ohms, watts = (np.asarray(data, dtype=float) for data in line.get_data())
    at_bank = np.interp(standing.circuit.bank_ohm, ohms, watts)
    assert at_bank == pytest.approx(standing.delivered[0].power_w, rel=1e-3)


def test_a_title_with_markup_is_drawn_as_text(
    starter: hm.Catalog, changed_demo: Callable[..., hm.Installation]
) -> None:
    def rename(plain: dict[str, Any]) -> None:
        plain["panels"][0]["group"] = plain["circuit"]["group"] = "$\\frac{1}$ 100 % _pair_"

    odd = hm.assess(starter, changed_demo(rename))
    for function in FUNCTIONS:
        figure = function(odd).figure
        figure.canvas.draw()
        assert any("frac" in text.get_text() for text in figure.findobj(Text))


def test_plots_are_there_without_a_further_import(python: Callable[..., Any]) -> None:
    done = python("-c", "import heatmatch as hm; print(hm.plot.load_lines.__name__)")
    assert done.stdout == "load_lines\n", done.stderr[-300:]


def test_the_package_needs_no_plotting_and_no_data_frames(python: Callable[..., Any]) -> None:
    program = (
        "import sys\n"
        "sys.modules['matplotlib'] = sys.modules['pandas'] = None\n"
        "import heatmatch as hm\n"
        "from heatmatch import plot\n"
        "one = hm.assess(hm.Catalog.starter(), hm.demo())\n"
        "for call in (lambda: plot.load_lines(one), one.margins_frame):\n"
        "    try:\n"
        "        call()\n"
        "    except ImportError as error:\n"
        "        print(error)\n"
    )
    done = python("-c", program)
    lines = done.stdout.splitlines()
    assert len(lines) == 2, done.stderr[-300:]
    assert "pip install 'libheatmatch[notebook]'" in lines[0]
    assert "matplotlib" in lines[0]
    assert "pandas" in lines[1]
