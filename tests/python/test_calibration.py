"""Logs of a store, and the fill and losses fitted to them."""

from __future__ import annotations

import pickle
import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import heatmatch as hm
import numpy as np
import pytest
from day_runs import log_rows

pd = pytest.importorskip("pandas")
START_C = 12.0
TRUE_K20, TRUE_LOSS = 0.33, 1.25
CSV = """hours,power_w,air_c,wall_c,"bed_c@0.12,0.40"
0,0,10,10,10
1,200,10,11,14.5
2,200,11,12,
"""


def lived(candidate: hm.Candidate, installation: hm.Installation) -> hm.DayRun:
    """Two clear spring days in still air around the store."""
    clear = hm.Weather.clear_days(installation.site)
    days: dict[str, Any] = {"month": 4, "days": 2, "warm_up_days": 0, "thermal_step_s": 600}
    return hm.simulate_day(candidate, clear, air_around_c=10.0, start_c=START_C, **days)


@pytest.fixture(scope="module")
def frame(starter: hm.Catalog, demo: hm.Installation) -> Any:
    """A log of a store whose fill conducts better, and that loses more, than described."""
    plain = demo.to_dict()
    sand = starter.media["dry-sand"].replace(k20_w_mk=TRUE_K20, k20_high_w_mk=0.4)
    plain["parts"] = {"media": [sand.to_dict()]}
    plain["store"]["loss_factor"] = TRUE_LOSS
    candidate = hm.assess(starter, hm.Installation.from_dict(plain))
    assert candidate.circuit.heat.store.loss_factor == TRUE_LOSS
    return pd.DataFrame(log_rows(lived(candidate, demo), START_C))


@pytest.fixture(scope="module")
def calibration(standing: hm.Candidate, frame: Any) -> hm.Calibration:
    """The fit to that log."""
    return hm.calibrate(standing, hm.StoreLog.from_frame(frame))


def test_a_log_comes_from_text_path_and_frame(tmp_path: Path) -> None:
    path = tmp_path / "lög.csv"
    path.write_text(CSV, encoding="utf-8")
    frame = pd.read_csv(path)
    logs = [
        hm.StoreLog.from_csv(CSV),
        hm.StoreLog.from_csv(path),
        hm.StoreLog.from_csv(str(path)),
        hm.StoreLog.from_frame(frame),
    ]
    timed = frame.drop(columns="hours")
    timed.index = pd.date_range("2026-01-05 08:00", periods=3, freq="h", tz="America/New_York")
    logs.append(hm.StoreLog.from_frame(timed))
    for log in logs:
        assert (len(log), log.readings) == (3, 5)
        assert log.hours.tolist() == [0.0, 1.0, 2.0]
        assert log.power_w.tolist() == [0.0, 200.0, 200.0]
        assert log.air_c.tolist() == [10.0, 10.0, 11.0]
        wall, bed = log.probes
        assert (wall.place, wall.radius_m) == ("wall", None)
        assert (bed.place, bed.radius_m, bed.height_m) == ("bed", 0.12, 0.4)
        assert np.isnan(log.temperature_c[1][2])
        assert not log.hours.flags.writeable
    assert "hours" in frame.columns
    back = pickle.loads(pickle.dumps(logs[0]))
    assert [probe.name for probe in back.probes] == [probe.name for probe in logs[0].probes]
    assert np.array_equal(back.temperature_c, logs[0].temperature_c, equal_nan=True)
    assert back.remarks == logs[0].remarks


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("power_w", "power", "without power_w"),
        ("2,200,11", "1,200,11", "hours in row 2"),
        ("2,200,11", "2,-5,11", "power_w in row 2"),
        ("2,200,11", "2,200,300", "air_c in row 2"),
        ("1,200,10,11,14.5", "1,200,10,11", "line 3"),
        ("1,200,10,11", "1,two hundred,10,11", "power_w in line 3"),
        ("bed_c@0.12,0.40", "bed_c", "without radius or height"),
        ("wall_c", "roof_c", "bed, wall, lid or sheath"),
    ],
)
def test_a_log_that_cannot_be_read_is_refused_by_name(old: str, new: str, said: str) -> None:
    assert old in CSV
    with pytest.raises(hm.InvalidInput, match=said):
        hm.StoreLog.from_csv(CSV.replace(old, new))


def test_a_frame_that_is_no_log_is_refused_by_name(frame: Any, tmp_path: Path) -> None:
    with pytest.raises(hm.InvalidInput) as refused:
        hm.StoreLog.from_frame(frame.drop(columns="hours"))
    assert refused.value.field == "hours"
    with pytest.raises(hm.InvalidInput, match="column lid_c"):
        hm.StoreLog.from_frame(frame.assign(lid_c="warm"))
    with pytest.raises(hm.InvalidInput, match="DataFrame"):
        hm.StoreLog.from_frame([1, 2])  # type: ignore[arg-type]
    with pytest.raises(hm.FileError):
        hm.StoreLog.from_csv(tmp_path / "none.csv")


def test_an_open_thermocouple_is_left_out_and_told(frame: Any) -> None:
    odd = frame.copy()
    odd.loc[5:7, "sheath_c"] = 1300.0
    log = hm.StoreLog.from_frame(odd)
    assert np.isnan(log.temperature_c[0][5:8]).all()
    assert any("sheath_c" in remark for remark in log.remarks)
    assert log.readings == 2 * len(frame) - 3


# The log is made of the same model with other numbers: what is tested is that they are found.
def test_both_numbers_of_a_made_log_are_found(calibration: hm.Calibration) -> None:
    k20, loss = calibration.k20_w_mk, calibration.loss_factor
    assert k20.value == pytest.approx(TRUE_K20, rel=0.03)
    assert loss.value == pytest.approx(TRUE_LOSS, rel=0.05)
    for fitted in (k20, loss):
        assert fitted.low < fitted.value < fitted.high
        assert fitted.standard_error > 0.0
    assert calibration.residual_k < 0.2 * calibration.residual_before_k
    assert calibration.medium == "dry-sand"
    assert -1.0 <= calibration.correlation <= 1.0


def test_it_says_what_it_found(calibration: hm.Calibration) -> None:
    assert f"{calibration.k20_w_mk.value:.2f}" in calibration.sentences[0]
    text = str(calibration)
    assert max(len(line) for line in text.splitlines()) <= 80
    assert calibration._repr_html_().startswith("<p>The fill conducts")
    back = pickle.loads(pickle.dumps(calibration))
    assert str(back) == text
    assert back.k20_w_mk.high == calibration.k20_w_mk.high


def test_bands_are_never_narrower_than_the_field_itself(calibration: hm.Calibration) -> None:
    for fitted, least in ((calibration.k20_w_mk, 0.03), (calibration.loss_factor, 0.06)):
        assert fitted.high / fitted.value >= 1.0 + least
        assert fitted.value / fitted.low >= 1.0 + least
    assert not any("on the sheath" in remark for remark in calibration.remarks)


def test_a_log_without_a_sheath_says_so(standing: hm.Candidate, frame: Any) -> None:
    found = hm.calibrate(standing, hm.StoreLog.from_frame(frame.drop(columns="sheath_c")))
    assert any("No thermocouple was on the sheath" in remark for remark in found.remarks)


def test_a_first_fire_has_its_stop_from_the_margins(standing: hm.Candidate) -> None:
    recipe = hm.StoreLog.first_fire(standing)
    # The alloy of the demo's coil is not stated, so its limit may be the lowest of all.
    assert any("to stop is not assessed. The limit of the coil" in sentence for sentence in recipe)
    assert not any("when the sheath reads" in sentence for sentence in recipe)
    assert "licensed practice" in recipe[-1]


def test_a_first_fire_has_its_stop_from_the_margins_where_the_coil_is_known(
    starter: hm.Catalog, demo: hm.Installation
) -> None:
    plain = demo.to_dict()
    rod = starter.elements["storage-rod-1000-240"].to_dict()
    plain.setdefault("parts", {}).setdefault("elements", []).append(
        {**rod, "id": "rod-of-known-alloy", "alloy": "nicr-80-20"}
    )
    plain["elements"][0] = {"element": "rod-of-known-alloy", "count": 2}
    plain["circuit"]["element"] = "rod-of-known-alloy"
    standing = hm.assess(starter, hm.Installation.from_dict(plain))
    recipe = hm.StoreLog.first_fire(standing)
    sheath = next(m for m in standing.margins if m.name == "sheath temperature")
    stop = next(sentence for sentence in recipe if "when the sheath reads" in sentence)
    assert float(re.findall(r"reads ([\d.]+) °C", stop)[0]) < sheath.limit
    assert "°F" in stop.text("us")


def test_it_is_put_into_the_installation_as_measured(
    calibration: hm.Calibration, starter: hm.Catalog, demo: hm.Installation, frame: Any
) -> None:
    measured = calibration.applied_to(demo, starter)
    assert measured != demo
    assert measured.store.loss_factor == calibration.loss_factor.value
    (sand,) = measured.to_dict()["parts"]["media"]
    assert (sand["id"], sand["k20_w_mk"]) == ("dry-sand", calibration.k20_w_mk.value)
    assert sand["source_of"]["k20_w_mk"] == "measured"
    again = lived(hm.assess(starter, measured), demo)
    assert again.sheath_c == pytest.approx(frame["sheath_c"].to_numpy()[1:], abs=2.0)


def test_a_log_that_cannot_tell_is_refused(
    standing: hm.Candidate,
    frame: Any,
    starter: hm.Catalog,
    changed_demo: Callable[..., hm.Installation],
    calibration: hm.Calibration,
) -> None:
    with pytest.raises(hm.InvalidInput, match="readings"):
        hm.calibrate(standing, hm.StoreLog.from_frame(frame.iloc[60:65]))
    with pytest.raises(hm.InvalidInput, match="power_w"):
        hm.calibrate(standing, hm.StoreLog.from_frame(frame.assign(power_w=0.0)))
    wet = hm.assess(starter, changed_demo(lambda plain: plain["store"].update(medium="water")))
    with pytest.raises(hm.InvalidInput, match="liquid"):
        hm.calibrate(wet, hm.StoreLog.from_frame(frame))
    other = changed_demo(lambda plain: plain["store"].update(medium="water"))
    with pytest.raises(hm.InvalidInput, match="store was logged"):
        calibration.applied_to(other, starter)
