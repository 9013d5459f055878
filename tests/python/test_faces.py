"""The public classes are plain Python: each holds one compiled object and copies nothing."""

from __future__ import annotations

import copy
import inspect
import pickle
import threading
from collections.abc import Callable
from typing import Any

import heatmatch as hm
import numpy as np
import pytest
from heatmatch import _core
from heatmatch._faces import FACES, Call, Face

pd = pytest.importorskip("pandas")
TWELVE = [
    "Catalog", "Installation", "Ranking", "Candidate", "Season", "Margin", "Weather",
    "EnergyCurve", "DayRun", "MeterSheet", "Diagnosis", "Calibration",
]  # fmt: skip
PANEL = "silicon-60-cell-245"


@pytest.fixture(scope="module")
def ranking(starter: hm.Catalog, demo: hm.Installation) -> hm.Ranking:
    return hm.rank(starter, demo, top=20, keep_rejected=5)


@pytest.fixture(scope="module")
def year(demo: hm.Installation) -> hm.Weather:
    return hm.Weather.from_installation(demo)


@pytest.fixture(scope="module")
def curve(starter: hm.Catalog, year: hm.Weather) -> hm.EnergyCurve:
    return hm.EnergyCurve(starter.panels[PANEL], year)


@pytest.mark.parametrize("name", TWELVE)
def test_a_public_class_is_written_in_python(name: str) -> None:
    cls = getattr(hm, name)
    assert type(cls) is type
    assert issubclass(cls, Face)
    assert FACES[getattr(_core, name)] is cls
    assert not issubclass(cls, getattr(_core, name))


# Python members are in the bodies of the public classes, none is added to compiled ones.
@pytest.mark.parametrize("compiled", FACES, ids=lambda cls: cls.__name__)
def test_nothing_is_patched_onto_a_compiled_class(compiled: Any) -> None:
    added = {"_repr_html_", "to_frame", "margins_frame", "months_frame", "import_frame"}
    assert not added & set(vars(compiled))


def test_one_object_of_the_library_has_one_face(ranking: hm.Ranking) -> None:
    assert ranking[0] is ranking[0] is ranking[-len(ranking)] is next(iter(ranking))
    assert ranking[:3] == ranking.candidates[:3]
    assert all(a is b for a, b in zip(ranking.pareto, ranking.pareto, strict=True))
    assert ranking[0].season is ranking[0].season
    assert ranking[0] in ranking
    assert isinstance(ranking[0], hm.Candidate)
    assert isinstance(ranking[0].margins[0], hm.Margin)
    assert isinstance(ranking[0].season, hm.Season)
    assert isinstance(ranking.rejected[0], hm.Candidate)


def test_candidates_are_wrapped_when_somebody_asks_and_kept(
    starter: hm.Catalog, demo: hm.Installation
) -> None:
    many = hm.rank(starter, demo, top=1500)
    assert not many._kept
    first = id(many[0])
    assert len(many._kept) == 1
    assert id(many[0]) == first
    assert len(list(many)) == len(many) == len(many._kept)


def test_wrapping_copies_nothing(year: hm.Weather) -> None:
    assert np.shares_memory(year.hours, year._core.hours)


def test_many_threads_get_the_same_face(ranking: hm.Ranking) -> None:
    found: list[hm.Candidate] = []
    threads = [threading.Thread(target=lambda: found.extend(ranking)) for _ in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert len(set(map(id, found))) == len(ranking)


def test_pickles_copies_equality_and_hash_are_those_of_the_library(
    demo: hm.Installation, year: hm.Weather, ranking: hm.Ranking
) -> None:
    for thing in (demo, year):
        for other in (copy.copy(thing), copy.deepcopy(thing), pickle.loads(pickle.dumps(thing))):
            assert type(other) is type(thing)
            assert other == thing
            assert other is not thing
        with pytest.raises(TypeError, match="unhashable"):
            hash(thing)
    assert demo != year
    assert demo != 5
    assert len({ranking[0], ranking[0], ranking[1]}) == 2
    assert type(pickle.loads(pickle.dumps(ranking))[0]) is hm.Candidate


def test_a_field_cannot_be_set_and_says_so(ranking: hm.Ranking) -> None:
    with pytest.raises(AttributeError, match="^Candidate.mean_power_w cannot be set$"):
        ranking[0].mean_power_w = 3  # type: ignore
    with pytest.raises(AttributeError):
        ranking[0].mean_powr_w = 3  # type: ignore


@pytest.mark.parametrize("name", ["Ranking", "Candidate", "Season", "Margin", "DayRun", "Weather"])
def test_what_only_the_library_makes_has_no_constructor(name: str) -> None:
    with pytest.raises(TypeError, match=f"^{name} has no constructor; it comes from "):
        getattr(hm, name)()


@pytest.fixture(scope="module")
def results(
    starter: hm.Catalog, demo: hm.Installation, standing: hm.Candidate, ranking: hm.Ranking
) -> dict[str, Any]:
    year = hm.Weather.from_installation(demo)
    read = hm.Readings.from_rows([{"bank_v": 68.9, "bank_a": 1.21, "irradiance_w_m2": 820}])
    run = hm.simulate_day(standing, year, month=1, days=1)
    found = [ranking, standing, standing.season, standing.margins[0], year, run]
    found += [hm.meter_sheet(standing), hm.diagnose(standing, read), starter, demo]
    return {type(one).__name__: one for one in found}


@pytest.mark.parametrize(
    "name", [name for name in TWELVE if name not in ("EnergyCurve", "Calibration")]
)
def test_a_repr_is_one_line(name: str, results: dict[str, Any]) -> None:
    text = repr(results[name])
    assert "\n" not in text
    assert name in text
    assert "object at 0x" not in text


@pytest.mark.parametrize(
    "name", ["Ranking", "Candidate", "Season", "DayRun", "MeterSheet", "Diagnosis"]
)
def test_the_table_is_in_str_and_in_html(name: str, results: dict[str, Any]) -> None:
    assert len(str(results[name]).splitlines()) > 1
    assert "<table>" in results[name]._repr_html_()


# numbers in a Series keep its index, as pandas users expect of a function of numbers
def test_results_of_a_series_keep_its_index(curve: hm.EnergyCurve) -> None:
    ohms = pd.Series([5.0, 10.0], index=["low", "high"], name="ohm")
    for method in (curve.delivered_kwh, curve.slope_kwh, curve.near_short_circuit_share):
        found = method(ohms)
        assert isinstance(found, pd.Series)
        assert list(found.index) == ["low", "high"]
        assert list(found) == list(method(ohms.to_numpy()))
    above = curve.hours_above(10.0, pd.Series([10.0, 50.0], index=[3, 4]))
    assert list(above.index) == [3, 4]
    assert isinstance(curve.delivered_kwh([5.0]), np.ndarray)
    assert isinstance(curve.delivered_kwh(5.0), float)


Make = Callable[[hm.Catalog, hm.Installation, hm.Candidate], Any]
WRONG: dict[str, tuple[Make, str]] = {
    "swapped": (
        lambda cat, place, c: hm.rank(place, cat),  # type: ignore
        "rank(): catalog = an Installation must be a Catalog",
    ),
    "no weather": (
        lambda cat, place, c: hm.assess(cat, place, "year.epw"),  # type: ignore
        "assess(): weather = 'year.epw' must be a Weather",
    ),
    "text for a number": (
        lambda cat, place, c: hm.rank(cat, place, top="ten"),  # type: ignore
        "rank(): top = 'ten' must be a whole number",
    ),
    "a candidate is wanted": (
        lambda cat, place, c: hm.simulate_day(place, c),  # type: ignore
        "simulate_day(): candidate = an Installation must be a Candidate",
    ),
    "a ranking is no candidate": (
        lambda cat, place, c: hm.meter_sheet([c]),  # type: ignore
        "meter_sheet(): candidate = a list must be a Candidate",
    ),
    "no catalog": (
        lambda cat, place, c: c.check_wires(place),  # type: ignore
        "check_wires(): catalog = an Installation must be a Catalog",
    ),
    "no place": (
        lambda cat, place, c: hm.rank(cat, place, top=3)["first"],  # type: ignore
        "ranking['first']: the place must be a whole number or a slice",
    ),
    "keyword of a compiled function": (
        lambda cat, place, c: hm.largest_power_w(cat.elements["tubular-1000-120"], place.store),  # type: ignore
        "largest_power_w(): limit_c is missing; it must be a number",
    ),
    "an argument where none is accepted": (
        lambda cat, place, c: hm.glossary("element"),  # type: ignore
        "glossary(): 1 argument given; it accepts none",
    ),
    "a number for a part": (
        lambda cat, place, c: hm.cold_voltage(40.0, record_low_c=-20.0),  # type: ignore
        "cold_voltage(): panel = 40.0 must be a Panel",
    ),
}


@pytest.mark.parametrize("which", WRONG)
def test_a_wrong_argument_is_named_in_one_sentence(
    which: str, starter: hm.Catalog, demo: hm.Installation, standing: hm.Candidate
) -> None:
    make, said = WRONG[which]
    with pytest.raises(TypeError) as refused:
        make(starter, demo, standing)
    assert str(refused.value).startswith(said)
    assert "\n" not in str(refused.value)


def test_what_takes_a_catalog_takes_the_public_one(
    starter: hm.Catalog, demo: hm.Installation
) -> None:
    element, store = starter.elements["tubular-1000-120"], demo.store
    assert store is not None
    found = hm.sheath_temperature(element, store, power_w=100, medium=starter)
    assert found.sheath_c.typical_c > 0
    bed = hm.BedCharge(element, store, medium=starter)
    assert bed.medium == starter.media[store.medium]
    with pytest.raises(TypeError, match=r"^BedCharge\(\): store = an Element must be a Store$"):
        hm.BedCharge(element, element)  # type: ignore


def test_compiled_functions_show_their_parameters() -> None:
    shown = inspect.signature(hm.cold_voltage)
    assert list(shown.parameters) == ["panel", "record_low_c"]
    assert shown.parameters["record_low_c"].annotation == "float"
    compiled = [getattr(hm, name) for name in hm.__all__]
    signatures = [inspect.signature(one) for one in compiled if isinstance(one, Call)]
    assert len(signatures) > 10
    assert all("arguments" not in one.parameters for one in signatures)
