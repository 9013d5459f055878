"""The explorer without a browser: what a change of a control does to what is shown."""

from __future__ import annotations

import re
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import heatmatch as hm
import pytest
from explorer_hands import heat_of, press, words
from heatmatch.explorer.choice import row_of

pytest.importorskip("ipywidgets")


@pytest.fixture
def panel(starter: hm.Catalog, demo: hm.Installation) -> Any:
    return hm.explore(starter, demo)


def test_it_begins_with_the_installation_as_it_is(
    panel: Any, starter: hm.Catalog, demo: hm.Installation
) -> None:
    ranking = hm.rank(starter, demo, top=8)
    assert [c.circuit.title for c in panel.ranking] == [c.circuit.title for c in ranking]
    assert heat_of(panel) == pytest.approx(ranking.recommended.season.kwh, rel=1e-12)
    assert panel.bench.installation(panel.choice).to_dict() == demo.to_dict()
    assert "kWh of heat on an average day" in words(panel.status.value)
    assert panel.shown.value.startswith("<img")


# The sky of another tilt is checked against measured hours in test_monthly_sky.py.
def test_the_tilt_slider_turns_the_panels(panel: Any, demo: hm.Installation) -> None:
    sky = hm.MonthlySky(demo.site, **demo.to_dict()["weather"])
    panel.controls.sliders["tilt_deg"].slider.value = 20
    told = panel.bench.installation(panel.choice).to_dict()
    assert told["site"]["tilt_deg"] == 20
    assert told["weather"]["sun_hours"] == pytest.approx(sky.sun_hours(tilt_deg=20), abs=1e-4)
    again = hm.rank(hm.Catalog.starter(), panel.bench.installation(panel.choice), top=8)
    assert heat_of(panel) == pytest.approx(again.recommended.season.kwh, rel=1e-3)


def test_less_sun_gives_less_heat_and_more_than_the_sky_has_is_said(panel: Any) -> None:
    before = heat_of(panel)
    panel.controls.sliders["sun_pct"].slider.value = 70
    assert heat_of(panel) < 0.75 * before
    kept = panel.table.value
    panel.controls.sliders["sun_pct"].slider.max = 200
    panel.controls.sliders["sun_pct"].slider.value = 200
    assert "not possible:" in words(panel.status.value)
    assert "the sum under the clearest sky on this plane" in words(panel.status.value)
    assert panel.table.value == kept


@pytest.mark.parametrize(
    ("name", "value", "margin"),
    [
        ("k20_w_mk", 0.4, "sheath temperature"),
        ("record_low_c", -15.0, "cold voltage"),
        ("length_m", 40.0, "voltage drop"),
    ],
)
def test_a_slider_moves_its_margin(panel: Any, name: str, value: float, margin: str) -> None:
    panel.controls.dropdowns["group"].value = "thin pair"
    panel.controls.dropdowns["panels"].value = "2S1P"
    panel.controls.dropdowns["element"].value = "storage-rod-1000-240"
    panel.controls.dropdowns["bank"].value = "1S1P"
    panel.controls.budget.value = ""

    def values() -> list[float]:
        return [m.value for m in panel.candidate.margins if m.name == margin and m.value]

    before = values()
    panel.controls.sliders[name].slider.value = value
    assert before
    assert len(values()) == len(before)
    change = [now - then for now, then in zip(values(), before, strict=True)]
    # Better sand and a warmer record lower theirs, a longer wire drops more.
    assert any(c > 0 for c in change) if name == "length_m" else all(c < 0 for c in change)


def test_choices_leave_only_what_they_name(panel: Any) -> None:
    panel.controls.dropdowns["group"].value = "barn pair"
    hookups = [value for _, value in panel.controls.dropdowns["panels"].options]
    assert hookups == ["", "1S1P", "2S1P", "1S2P"]
    panel.controls.dropdowns["panels"].value = "2S1P"
    panel.controls.dropdowns["bank"].value = "1S2P"
    assert len(panel.ranking) > 1
    assert {(c.circuit.panels, c.circuit.bank) for c in panel.ranking} == {("2S1P", "1S2P")}
    panel.controls.dropdowns["group"].value = "porch four"
    assert panel.controls.dropdowns["panels"].value == "2S1P"
    assert {c.circuit.owned.group for c in panel.ranking} == {"porch four"}
    panel.controls.dropdowns["group"].value = "thin pair"
    assert "4S1P" not in dict(panel.controls.dropdowns["panels"].options)


def test_where_all_have_a_danger_the_rejected_are_shown(
    starter: hm.Catalog, changed_demo: Callable[..., hm.Installation]
) -> None:
    def melting(plain: dict[str, Any]) -> None:
        plain["runs"][2]["wire"] = "nm-b-12-awg"

    panel = hm.explore(starter, changed_demo(melting))
    assert len(panel.ranking) == 0
    assert "No pairing is without danger." in words(panel.table.value)
    assert panel.candidate.severity == "danger"
    panel.view.value = "margins"
    assert words(panel.shown.value).count("▲ DANGER") >= 1
    assert "▲ DANGER" in words(panel.answer.value)


def test_another_wire_and_a_budget(panel: Any) -> None:
    panel.controls.dropdowns["wire"].value = "pv-wire-8-awg"
    assert panel.candidate.circuit.runs[0].wire.id == "pv-wire-8-awg"
    panel.controls.budget.value = "60"
    assert all(c.price_to_buy <= 60 for c in panel.ranking)
    panel.controls.budget.value = "sixty"
    assert "budget: write a number" in words(panel.status.value)


def test_what_is_looked_at_stays_while_it_can(panel: Any) -> None:
    third = panel.look_at.options[3]
    panel.look_at.value = third[1]
    assert row_of(panel.candidate) == third[1]
    panel.controls.sliders["record_low_c"].slider.value = -31
    assert panel.look_at.value == third[1]
    panel.controls.dropdowns["group"].value = "thin pair"
    assert panel.look_at.value == ()
    best = panel.ranking.recommended or panel.ranking[0]
    assert panel.candidate.circuit.title == best.circuit.title


def test_answer_table_and_picture_stay_in_an_exported_notebook(panel: Any) -> None:
    page = panel.static_html()
    assert "Not for building" in words(page)
    assert panel.candidate.circuit.element.id in page
    assert '<img style="max-width:100%" alt="' in page
    chosen = panel.look_at.options[2][1]
    panel.look_at.value = chosen
    marked = panel.table.value.split('class="hm-chosen"')
    assert len(marked) == 2
    assert f"{chosen[2]} {chosen[3]}" in words("<" + marked[1].split("</tr>")[0])


def test_the_static_form_is_an_output_of_its_own(
    panel: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    # An exporter prefers the view of a widget within one output, and offline that is empty.
    shown: list[Any] = []
    monkeypatch.setattr("IPython.display.display", lambda data, **_: shown.append(data))
    panel.shown.value = ""  # drawn only after a pause where an event loop runs
    panel._ipython_display_()
    assert "text/html" not in shown[0]
    html = str(shown[1].data)
    assert 'class="hm-explorer hm-static"' in html
    assert '<img style="max-width:100%" alt="' in html
    assert "display: none" not in html


def test_kept_choices_stand_side_by_side(panel: Any) -> None:
    press(panel, "keep this choice")
    first = panel.candidate
    panel.controls.dropdowns["group"].value = "barn pair"
    press(panel, "keep this choice")
    panel.view.value = "kept"
    text = words(panel.shown.value)
    for word in ("choice 1", "choice 2", "porch four 4S1P", "barn pair", f"{first.season.kwh:.0f}"):
        assert word in text
    press(panel, "remove last")
    assert "choice 2" not in words(panel.shown.value)
    for _ in range(7):
        press(panel, "keep this choice")
    assert len(panel.kept) == 6
    assert "remove the last one first" in words(panel.status.value)


def test_a_choice_is_saved_and_loaded(panel: Any, tmp_path: Path, starter: hm.Catalog) -> None:
    path = tmp_path / "place.json"
    panel.files.installation.value = str(path)
    panel.controls.dropdowns["group"].value = "barn pair"
    panel.controls.sliders["k20_w_mk"].slider.value = 0.33
    panel.controls.sliders["tilt_deg"].slider.value = 45
    press(panel, "save installation")
    saved = hm.Installation.from_json(path)
    assert saved.to_dict()["circuit"]["group"] == "barn pair"
    assert saved.to_dict()["parts"]["media"][0]["k20_w_mk"] == 0.33
    standing = hm.assess(starter, saved)
    assert standing.circuit.title == panel.candidate.circuit.title
    assert standing.season.kwh == pytest.approx(panel.candidate.season.kwh, rel=1e-3)
    press(panel, "save installation")
    assert "press again to overwrite it" in words(panel.status.value)
    press(panel, "load installation")
    assert panel.controls.sliders["k20_w_mk"].slider.value == 0.33
    assert panel.controls.sliders["tilt_deg"].slider.value == 45
    panel.controls.sliders["record_low_c"].slider.value = -20  # the new controls act
    assert panel.choice.record_low_c == -20
    panel.files.installation.value = str(tmp_path / "none.json")
    press(panel, "load installation")
    assert "not possible:" in words(panel.status.value)
    assert panel.choice.record_low_c == -20


def test_rankings_are_saved_and_compared(panel: Any, tmp_path: Path) -> None:
    panel.files.ranking.value = str(tmp_path / "then.json")
    panel.view.value = "files"
    press(panel, "save ranking")
    panel.controls.sliders["tilt_deg"].slider.value = 0
    press(panel, "compare with ranking")
    text = words(panel.shown.value)
    assert re.search(r"is now first \(before: at place \d+\)|stays first", text)
    assert "was: in then" in text


def test_weather_of_its_own_leaves_tilt_and_sun_alone(
    starter: hm.Catalog, demo: hm.Installation
) -> None:
    panel = hm.explore(starter, demo, hm.Weather.clear_days(demo.site), units="us")
    assert "tilt_deg" not in panel.controls.sliders
    assert "°F" in panel.table.value
    panel.controls.sliders["length_m"].slider.value = 12
    assert panel.controls.sliders["length_m"].label.value == "39.4 ft"


def test_odd_names_do_no_harm(
    starter: hm.Catalog, changed_demo: Callable[..., hm.Installation], odd_group: str
) -> None:
    def rename(plain: dict[str, Any]) -> None:
        plain["panels"][0]["group"] = plain["circuit"]["group"] = odd_group

    panel = hm.explore(starter, changed_demo(rename))
    panel.controls.dropdowns["group"].value = odd_group
    press(panel, "keep this choice")
    for view in panel.view.options:
        panel.view.value = view
        for html in (panel.status.value, panel.table.value, panel.shown.value):
            assert "<script" not in html
            assert len(html) < 200_000


def test_it_says_what_it_needs(monkeypatch: pytest.MonkeyPatch, starter: hm.Catalog) -> None:
    with pytest.raises(hm.InvalidInput, match='units = "metric" must be "si" or "us"'):
        hm.explore(starter, hm.demo(), units="metric")
    monkeypatch.setitem(sys.modules, "ipywidgets", None)
    for name in [name for name in sys.modules if name.startswith("heatmatch.explorer.")]:
        monkeypatch.delitem(sys.modules, name)
    with pytest.raises(ImportError, match=r"pip install 'libheatmatch\[notebook\]'"):
        hm.explore(starter, hm.demo())
