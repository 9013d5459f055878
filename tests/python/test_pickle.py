"""Everything pickles and comes back with the same content, also into other processes."""

from __future__ import annotations

import copy
import multiprocessing
import pickle
from collections.abc import Callable
from concurrent.futures import ProcessPoolExecutor
from typing import Any

import heatmatch as hm
import numpy as np
import pytest
from day_runs import log_rows
from heatmatch.choices import Choice
from plan_things import held, plan_things

pd = pytest.importorskip("pandas")
KINDS = tuple(hm.glossary())
NAMES = """
DatasheetFit SingleDiode DiodeCurve OperatingPoint OperatingPoints Array ArrayCurve Surroundings
StringPanel MixedArrayCurve ArrayPoint StringPoint PanelPoint ConductorTemperature
ElementResistance Installation Site OwnedPanels WireRun Device Circuit RunParts PlacedDevice
Candidate Delivered Margin Step Catalog PartsView Weather Season EnergyCurve LargestPoint Store
TemperatureBand SheathTemperature BedTemperatures BedCharge HeatPoint Extremes Advice BankHeat
HotTail WireCheck WireLimit InsulationReach SpaceBalance DayRun DayEnergy DayAnswer DarkHours
PartPeak SwitchEvent Stagnation Probe StoreLog Fitted Calibration ExpectedBand MeterRow MeterCheck
MeterSheet Readings FittedValue Hypothesis NextMeasurement Diagnosis AllowedElements CoverArea
ElementFilter Goals MonthlyNormals Space ExistingCircuit MonthlySky SunPositions SkyIrradiance
SkyIrradiances PlaneIrradiance PlaneIrradiances CheckCounts NotChecked CodeDuty Bill BillLine
Plan PlanOffer IdlePanels Unlock"""


def plain(thing: Any) -> Any:
    """What an object holds, by its public properties, as lists and dicts to compare."""
    if isinstance(thing, np.ndarray):
        return thing.tolist()
    if isinstance(thing, Choice):
        return thing.value
    if isinstance(thing, (list, tuple)):
        return [plain(item) for item in thing]
    if isinstance(thing, dict):
        return {key: plain(item) for key, item in thing.items()}
    if not type(thing).__module__.startswith("heatmatch"):
        return thing
    values = {name: held(thing, name) for name in dir(thing) if not name.startswith("_")}
    return {name: plain(value) for name, value in values.items() if not callable(value)}


def rounded(thing: Any) -> Any:
    """The same with numbers to ten digits: what is computed anew may differ in its last."""
    if isinstance(thing, float):
        return float(f"{thing:.10g}")
    if isinstance(thing, list):
        return [rounded(item) for item in thing]
    if isinstance(thing, dict):
        return {key: rounded(item) for key, item in thing.items()}
    return thing


def again(thing: Any) -> Any:
    return pickle.loads(pickle.dumps(thing))


@pytest.mark.parametrize("kind", KINDS)
def test_every_starter_part_pickles(
    kind: str, starter: hm.Catalog, view_of: Callable[..., Any]
) -> None:
    parts = view_of(starter, kind).values()
    assert again(parts) == parts
    assert copy.deepcopy(parts[0]) == copy.copy(parts[0]) == parts[0]


@pytest.mark.parametrize("protocol", range(2, pickle.HIGHEST_PROTOCOL + 1))
def test_every_protocol_from_the_second_on_works(protocol: int, standing: hm.Candidate) -> None:
    assert plain(pickle.loads(pickle.dumps(standing, protocol))) == plain(standing)


@pytest.fixture(scope="module")
def things(starter: hm.Catalog, demo: hm.Installation, standing: hm.Candidate) -> dict[str, Any]:
    """One of everything a user may hold, by the name of its class."""
    circuit = standing.circuit
    array = circuit.array
    sun = {"irradiance_w_m2": 800, "cell_temperature_c": 40}
    one = circuit.diode_new.at(**sun)
    mixed = hm.Array([[circuit.panel, circuit.panel], [circuit.panel]]).at(**sun)
    mixed_point = mixed.at_voltage(20.0)
    wire = starter.wires["silicone-14-awg"]
    around = hm.Surroundings.sunlit(30, irradiance_w_m2=900)
    moments = hm.sun_position(40, -75, 10, [1.7e9, 1.71e9])
    light = {"plane_azimuth_deg": 180, "apparent_zenith_deg": 40, "sun_azimuth_deg": 170}
    light |= {"ghi_w_m2": 600, "dni_w_m2": 650, "dhi_w_m2": 100}
    energy = hm.EnergyCurve(starter.panels["cdte-100"], hm.Weather.clear_days(demo.site))
    found = [
        moments,
        hm.clear_sky(40),
        hm.clear_sky(moments.apparent_zenith_deg),
        hm.plane_irradiance(tilt_deg=30, **light),
        hm.plane_irradiance(tilt_deg=[30, 60], **light),
        circuit.diode_new,
        circuit.diode_today,
        one,
        one.maximum_power(),
        one.into_resistance([[1.0, 2.0]]),
        array,
        array.at(**sun),
        hm.StringPanel(circuit.panel),
        *(mixed, mixed_point, mixed_point.strings[0], mixed_point.strings[0].panels[0]),
        around,
        hm.conductor_temperature(wire, current_a=9, surroundings=around),
        circuit.element_resistance,
        demo,
        demo.site,
        demo.panels[0],
        demo.runs[0],
        demo.devices[0],
        demo.weather,
        *demo.elements[1:],
        demo.elements[-1].any,
        demo.space,
        demo.space.covers[0],
        demo.goals,
        demo.circuit,
        circuit,
        circuit.runs[0],
        circuit.devices[0],
        standing,
        standing.delivered[0],
        standing.margins[0],
        standing.explain()[0],
        standing.checks,
        standing.not_checked[0],
        standing.code_duties()[0],
        starter,
        starter.panels,
        hm.Weather.clear_days(demo.site),
        hm.MonthlySky(demo.site, **demo.weather.to_dict()),
        standing.season,
        energy,
        energy.largest(5.0),
        *heat_things(standing),
        *day_things(starter, demo, standing),
        *meter_things(standing),
        *plan_things(starter, demo),
    ]
    return {type(thing).__name__: thing for thing in found}


def heat_things(standing: hm.Candidate) -> list[Any]:
    """One object of each class for the heat of a store."""
    heat = standing.circuit.heat
    assert heat is not None
    bed = heat.bed()
    at = hm.sheath_temperature(bed.element, heat.store, power_w=400, medium=heat.medium)
    check = standing.check_wires()[-1]
    found = [heat, heat.store, bed, bed.temperatures(400), at, at.sheath_c, standing.heat]
    found += [standing.bright, standing.advice(), standing.tail, check]
    return [*found, check.limits[0], check.reach[0], standing.bill, standing.bill.lines[0]]


def day_things(starter: hm.Catalog, demo: hm.Installation, standing: hm.Candidate) -> list[Any]:
    """One object of each class for days and logs."""
    plain_demo = demo.to_dict()
    plain_demo["devices"][2] |= {"part": "capillary-thermostat-90", "set_c": 11}
    early = hm.assess(starter, hm.Installation.from_dict(plain_demo))
    days: dict[str, Any] = {"month": 4, "days": 1, "warm_up_days": 0, "thermal_step_s": 1800}
    run = hm.simulate_day(early, hm.Weather.clear_days(demo.site), air_around_c=10.0, **days)
    answer = run.answer
    log = hm.StoreLog.from_frame(pd.DataFrame(log_rows(run, 10.0)))
    made = hm.calibrate(standing, log)
    found = [standing.space, run, run.energy, answer, answer.all, answer.peaks[0], run.events[0]]
    return [*found, hm.simulate_stagnation(standing), log, log.probes[0], made, made.k20_w_mk]


def meter_things(standing: hm.Candidate) -> list[Any]:
    """One object of each class for meters."""
    sheet = hm.meter_sheet(standing)
    readings = hm.Readings.from_rows([{"bank_v": 40.0, "bank_a": 1.4}])
    found = hm.diagnose(standing, readings)
    fitted = next(number for each in found.ranked for number in each.fitted)
    row = sheet.rows[0]
    return [
        sheet, row, row.open_v, sheet.checks[0], readings, found, found.ranked[0], found.next[0],
        fitted,
    ]  # fmt: skip


def test_the_list_of_things_is_complete(things: dict[str, Any]) -> None:
    assert set(things) == set(NAMES.split())
    elsewhere = {"Parts", "Ranking", "RankMemory", "ImportReport", "RefusedRow", "HistoryEntry"}
    parts = {kind.capitalize() for kind in KINDS}
    listed = set(NAMES.split()) | elsewhere | parts
    classes = {name for name in hm.__all__ if isinstance(getattr(hm, name), type)}
    errors = {"Error", "InvalidInput", "NotFound", "FileError", "CatalogError", "OutcomeUnknown"}
    assert classes - errors <= listed


@pytest.mark.parametrize("name", NAMES.split())
def test_it_comes_back_with_equal_content(name: str, things: dict[str, Any]) -> None:
    thing = things[name]
    back = again(thing)
    assert type(back) is type(thing)
    assert plain(back) == plain(thing)
    assert plain(copy.deepcopy(thing)) == plain(thing)
    if isinstance(thing, hm.PartsView):
        assert back.values() == thing.values()


def test_a_ranking_comes_back_with_equal_content(demo_ranking: hm.Ranking) -> None:
    back = again(demo_ranking)
    assert str(back) == str(demo_ranking)
    assert back.to_frame().equals(demo_ranking.to_frame())
    assert plain(back[0]) == plain(demo_ranking[0])
    assert plain(back.rejected[0]) == plain(demo_ranking.rejected[0])
    assert (back.reasons, back.evaluated) == (demo_ranking.reasons, demo_ranking.evaluated)
    assert (back.remarks, back.conditions) == (demo_ranking.remarks, demo_ranking.conditions)
    titles = [[c.circuit.title for c in one.pareto] for one in (back, demo_ranking)]
    assert titles[0] == titles[1]


def test_a_candidate_that_came_back_still_explains_and_speaks(standing: hm.Candidate) -> None:
    back = again(standing)
    assert [repr(step) for step in back.explain()] == [repr(step) for step in standing.explain()]
    for units in ("si", "us"):
        assert [m.sentence(units=units) for m in back.margins] == [
            m.sentence(units=units) for m in standing.margins
        ]


def test_a_candidate_that_came_back_is_as_hot_and_advises_the_same(
    standing: hm.Candidate, demo_ranking: hm.Ranking, starter: hm.Catalog
) -> None:
    for one in (standing, demo_ranking[0], *demo_ranking.rejected[:20]):
        back = again(one)
        assert plain(back.heat) == plain(one.heat)
        assert plain(back.bright) == plain(one.bright)
        assert plain(back.circuit.heat) == plain(one.circuit.heat)
        assert plain(back.circuit.sheath) == plain(one.circuit.sheath)
        assert back.site == one.site
        assert plain(back.advice()) == plain(one.advice())
        assert plain(back.tail) == plain(one.tail)
        # The parts it was chosen among stay behind: they are given again.
        wires = [rounded(plain(which.check_wires(starter))) for which in (back, one)]
        assert wires[0] == wires[1]
    assert again(standing).circuit.heat.bed().sheath_c(300.0) == (
        standing.circuit.heat.bed().sheath_c(300.0)
    )


def test_a_bed_and_a_tail_that_came_back_still_compute(standing: hm.Candidate) -> None:
    bed = standing.circuit.heat.bed(conductivity="high", moist=False)
    assert again(bed).hours_to_limit(2000.0, limit_c=500) == bed.hours_to_limit(2000.0, limit_c=500)
    tail = standing.tail
    assert again(tail).wire_c([0.0, 0.1, 0.5]).tolist() == tail.wire_c([0.0, 0.1, 0.5]).tolist()


def test_a_catalog_pickles_as_its_path(own: hm.Catalog, minimal: Callable[..., Any]) -> None:
    own.add(minimal("panel"))
    assert own.path.encode() in pickle.dumps(own)
    back = again(own)
    assert back.path == own.path
    assert back.panels["my-panel"] == minimal("panel")
    assert again(hm.Catalog.starter()).path == ""


def test_reports_and_history_pickle(own: hm.Catalog) -> None:
    header = "id,label,v_oc,i_sc,source,source_kind\n"
    rows = "a,A,37,9,s,nameplate\nb,B,-1,9,s,nameplate\n"
    report = own.import_csv_text("panel", header + rows, keep_good=True)
    assert plain(again(report.refused[0])) == plain(report.refused[0])
    assert plain(again(report)) == plain(report)
    assert plain(again(own.history())) == plain(own.history())


@pytest.mark.parametrize(
    "error",
    [hm.Error, hm.InvalidInput, hm.NotFound, hm.FileError, hm.CatalogError, hm.OutcomeUnknown],
)
def test_errors_keep_their_pieces(error: type[hm.Error]) -> None:
    pieces = ("message", "part", "field", "value", "allowed", "remedy")
    back = again(error(*pieces))
    assert type(back) is error
    assert tuple(getattr(back, name) for name in pieces) == pieces
    assert str(back) == "message"


def test_other_processes_rank_the_same(
    starter: hm.Catalog, demo: hm.Installation, demo_ranking: hm.Ranking
) -> None:
    fresh = multiprocessing.get_context("spawn")
    with ProcessPoolExecutor(max_workers=2, mp_context=fresh) as pool:
        jobs = [pool.submit(hm.rank, starter, demo, top=n, keep_rejected=0) for n in (1, 3)]
        first, third = (job.result() for job in jobs)
        with pytest.raises(hm.InvalidInput) as refused:
            pool.submit(hm.rank, starter, demo, max_bank=0).result()
    assert [len(first), len(third)] == [1, 3]
    assert [c.circuit.title for c in third] == [c.circuit.title for c in demo_ranking][:3]
    assert plain(first[0]) == plain(demo_ranking[0])
    assert (refused.value.field, refused.value.value) == ("max_bank", "0")
