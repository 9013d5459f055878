"""The explorer where something is not known, dangerous, or of another place."""

from __future__ import annotations

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


def without(*names: str) -> Callable[[dict[str, Any]], None]:
    def drop(plain: dict[str, Any]) -> None:
        for name in names:
            place, _, field = name.partition(".")
            (plain[place] if field else plain).pop(field or place)

    return drop


@pytest.mark.parametrize(
    "missing",
    [
        pytest.param(("store", "space"), id="store-space"),
        pytest.param(("weather", "goals"), id="weather-goals", marks=pytest.mark.long),
        pytest.param(("runs", "devices"), id="runs-devices", marks=pytest.mark.long),
        pytest.param(("site.tilt_deg",), id="site.tilt_deg"),
    ],
)
def test_every_view_is_there_whatever_is_not_known(
    starter: hm.Catalog,
    changed_demo: Callable[..., hm.Installation],
    missing: tuple[str, ...],
) -> None:
    panel = hm.explore(starter, changed_demo(without(*missing)))
    press(panel, "keep this choice")
    for view in panel.view.options:
        panel.view.value = view
        assert "not drawn" not in panel.shown.value
        assert words(panel.shown.value) or "<img" in panel.shown.value
    panel.view.value = "picture"
    for picture in panel.picture.options:
        panel.picture.value = picture
        drawn = panel.shown.value
        assert "<img" in drawn or "must" in drawn, f"{picture}: {words(drawn)}"
    for slider in panel.controls.sliders.values():
        slider.slider.value = slider.slider.max
        assert "not possible" not in panel.status.value


def test_what_is_named_is_what_is_looked_at(panel: Any) -> None:
    panel.look_at.index = 3  # as a browser sends it
    for pct in (90, 70, 110):
        panel.controls.sliders["sun_pct"].slider.value = pct
        shown = panel.look_at.options[panel.look_at.index]
        assert shown[1] == panel.look_at.value
    panel.look_at.index = 0
    assert row_of(panel.candidate) == row_of(panel.ranking.recommended)


def test_a_danger_is_not_saved_in_silence(
    starter: hm.Catalog, changed_demo: Callable[..., hm.Installation], tmp_path: Path
) -> None:
    def melting(plain: dict[str, Any]) -> None:
        plain["runs"][2]["wire"] = "nm-b-12-awg"

    panel = hm.explore(starter, changed_demo(melting))
    panel.files.installation.value = str(tmp_path / "place.json")
    press(panel, "save installation")
    assert "DANGER: " in words(panel.status.value)
    panel.controls.budget.value = "abc"
    press(panel, "save installation")
    assert "controls show what is wrong" in words(panel.status.value)
    panel.files.ranking.value = panel.files.installation.value
    press(panel, "save ranking")
    assert "press again" in words(panel.status.value)
    press(panel, "save ranking")
    assert "Saved" in words(panel.status.value)


def test_weather_of_another_site_is_let_go(
    starter: hm.Catalog, demo: hm.Installation, tmp_path: Path
) -> None:
    panel = hm.explore(starter, demo, hm.Weather.clear_days(demo.site))
    plain = demo.to_dict()
    plain["site"] |= {"latitude_deg": 35, "tilt_deg": 45}
    other = hm.Installation.from_dict(plain)
    other.to_json(tmp_path / "other.json")
    panel.files.installation.value = str(tmp_path / "other.json")
    press(panel, "load installation")
    assert "were removed" in words(panel.status.value)
    assert heat_of(panel) == pytest.approx(hm.rank(starter, other)[0].season.kwh, rel=1e-9)


def test_a_fault_of_ours_shows_as_one(
    starter: hm.Catalog, demo: hm.Installation, monkeypatch: pytest.MonkeyPatch
) -> None:
    panel = hm.explore(starter, demo)

    def broken(*given: object, **options: object) -> None:
        raise ValueError("a fault of the library")

    monkeypatch.setattr(panel.bench, "rank", broken)
    with pytest.raises(ValueError, match="a fault of the library"):
        panel.controls.budget.value = "100"
    assert panel.failed
    assert "budget" not in panel.status.value
    monkeypatch.undo()
    for text in ("sixty", "-1", "nan", "inf", "1e999", "\x1b[31m"):
        panel.controls.budget.value = text
        assert (
            "budget: write a number of 0 or more, or leave it empty for none" in panel.status.value
        )
        assert "\x1b" not in panel.status.value
    panel.controls.budget.value = ""
    monkeypatch.setattr(panel, "_draw_picture", broken)
    with pytest.raises(ValueError, match="a fault of the library"):
        panel._draw()
    assert panel.shown.value == ""
