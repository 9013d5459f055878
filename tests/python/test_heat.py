"""Heat in a store from Python: functions, results, beds, and what is refused."""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import Any

import heatmatch as hm
import numpy as np
import pytest


@pytest.fixture(scope="module")
def rod(starter: hm.Catalog) -> hm.Element:
    return starter.elements["storage-rod-1000-240"]


@pytest.fixture(scope="module")
def drum(demo: hm.Installation) -> hm.Store:
    assert demo.store is not None
    return demo.store


def test_a_result_holds_a_band_for_every_place(rod: hm.Element, drum: hm.Store) -> None:
    at = hm.sheath_temperature(rod, drum, power_w=400, elements=2, hours=6, air_c=25)
    for name in ("sheath_c", "coil_c", "bed_mean_c", "wall_c", "lid_c"):
        band = getattr(at, name)
        assert 25.0 < band.low_c <= band.typical_c <= band.high_c, name
    assert at.coil_c.typical_c > at.sheath_c.typical_c > at.bed_mean_c.typical_c > at.lid_c.low_c
    assert at.sheath_verdict_c == pytest.approx(25.0 + 1.10 * (at.sheath_c.high_c - 25.0))
    # 400 W over two elements of 1450 mm.
    assert at.w_per_cm == pytest.approx(400 / 290.0)
    assert at.warnings == []
    assert repr(at).startswith("<sheath ")


def test_more_watts_hours_elements_and_less_sand_do_what_they_should(
    rod: hm.Element, drum: hm.Store
) -> None:
    def sheath(**given: Any) -> float:
        usual: dict[str, Any] = {"power_w": 400, "elements": 2}
        return hm.sheath_temperature(rod, drum, **(usual | given)).sheath_c.typical_c

    base = sheath()
    assert sheath(power_w=500) > base
    assert sheath(hours=8) > base
    assert sheath(days=3) > base
    assert sheath(air_c=40) > base
    assert sheath(elements=3) < base
    assert sheath(moist=True) < base


def test_the_fill_comes_from_a_catalog_or_is_given(
    rod: hm.Element, drum: hm.Store, starter: hm.Catalog, own: hm.Catalog
) -> None:
    def sheath(medium: Any) -> float:
        at = hm.sheath_temperature(rod, drum, power_w=300, medium=medium)
        return at.sheath_c.typical_c

    assert sheath(None) == sheath(starter) == sheath(starter.media["dry-sand"])
    better = starter.media["dry-sand"].replace(k20_w_mk=0.40, k20_low_w_mk=None, k20_high_w_mk=None)
    assert sheath(better) < sheath(None)
    own.replace(better) if "dry-sand" in own.media else own.add(better)
    assert sheath(own) == sheath(better)


# Source: design: the table value of moist ground, 2 W/mK, is no value of dry sand (0.17 to 0.35).
def test_moist_ground_in_a_dry_bed_is_named(
    rod: hm.Element, drum: hm.Store, minimal: Callable[..., Any]
) -> None:
    ground = minimal("medium", id="ground", k20_w_mk=2.0)
    at = hm.sheath_temperature(rod, drum, power_w=300, medium=ground)
    (warning,) = at.warnings
    assert '"ground"' in warning
    assert "moist ground" in warning
    assert "2 W/mK" in warning


def test_a_bed_says_how_long_and_how_much(rod: hm.Element, drum: hm.Store) -> None:
    bed = hm.BedCharge(rod, drum, elements=2, hours=6, air_c=25, days=3)
    assert bed.conductivity == "low"
    assert bed.heated_length_m == pytest.approx(2.9)
    assert bed.leg_length_m == pytest.approx(0.725)
    assert bed.legs.shape == (4, 2)
    assert np.allclose(bed.legs.mean(axis=0), 0.0)
    most_w = bed.largest_power_w(limit_c=540.0)
    assert bed.temperatures(most_w).sheath_c == pytest.approx(25.0 + (540 - 25) / 1.10, abs=0.01)
    assert bed.largest_power_w(limit_c=540.0, factor=1.0) > most_w
    assert bed.largest_power_w(limit_c=20.0) == 0.0
    watts = np.array([50.0, 1000.0, 2000.0])
    hours = bed.hours_to_limit(watts, limit_c=540.0)
    assert hours[0] == math.inf
    assert hours[1] > hours[2] > 0.0
    assert bed.hours_to_limit(2000.0, limit_c=540.0) == hours[2]
    reached = hm.BedCharge(rod, drum, elements=2, hours=float(hours[2]), air_c=25)
    assert reached.temperatures(2000.0).sheath_c == pytest.approx(540.0, abs=0.5)


def test_the_functions_agree_with_the_bed(rod: hm.Element, drum: hm.Store) -> None:
    given: dict[str, Any] = {"elements": 2, "air_c": 25.0}
    bed = hm.BedCharge(rod, drum, hours=6, days=3, **given)
    assert hm.largest_power_w(
        rod, drum, limit_c=500.0, hours=6, days=3, **given
    ) == bed.largest_power_w(limit_c=500.0)
    assert hm.hours_to_limit(
        rod, drum, power_w=2000.0, limit_c=500.0, **given
    ) == bed.hours_to_limit(2000.0, limit_c=500.0)
    at = hm.sheath_temperature(rod, drum, power_w=600, hours=6, days=3, **given)
    assert bed.temperatures(600).sheath_c == at.sheath_c.high_c
    assert bed.sheath_c([0.0, 600.0]).tolist() == [pytest.approx(25.0), at.sheath_c.high_c]


def test_the_bed_cools_outwards(rod: hm.Element, drum: hm.Store) -> None:
    bed = hm.BedCharge(rod, drum, hours=6, air_c=25, conductivity="typical")
    distances = np.array([0.004, 0.01, 0.03, 0.1])
    celsius = bed.bed_temperature_c(distances, power_w=300)
    assert np.all(np.diff(celsius) < 0.0)
    assert celsius[0] == pytest.approx(bed.temperatures(300).sheath_c, rel=0.02)


def test_the_better_fill_is_cooler_at_the_sheath(rod: hm.Element, drum: hm.Store) -> None:
    ends = [
        hm.BedCharge(rod, drum, conductivity=end).temperatures(300).sheath_c
        for end in ("low", "typical", "high")
    ]
    assert ends == sorted(ends, reverse=True)


def test_water_has_rules_of_its_own(rod: hm.Element, drum: hm.Store, starter: hm.Catalog) -> None:
    water = starter.media["water"]
    at = hm.sheath_temperature(rod, drum, power_w=900, hours=6, medium=water, days=30)
    assert at.sheath_verdict_c <= 125.0
    with pytest.raises(hm.InvalidInput, match="liquid"):
        hm.BedCharge(rod, drum, medium=water)


BAD = [
    ({"power_w": math.nan}, "power_w"),
    ({"power_w": -1.0}, "power_w"),
    ({"hours": 0.0}, "hours"),
    ({"hours": 25.0}, "hours"),
    ({"hours": math.nan}, "hours"),
    ({"air_c": -300.0}, "air_c"),
    ({"air_c": math.inf}, "air_c"),
    ({"days": 0.0}, "days"),
    ({"elements": 0}, "elements"),
    ({"elements": 400}, "in the store"),
    ({"medium": "dry-sand"}, "medium"),
]


@pytest.mark.parametrize(("bad", "field"), BAD, ids=lambda x: str(x))
def test_bad_input_is_one_clear_error(
    bad: dict[str, Any], field: str, rod: hm.Element, drum: hm.Store
) -> None:
    given: dict[str, Any] = {"power_w": 300.0} | bad
    with pytest.raises(hm.InvalidInput) as refused:
        hm.sheath_temperature(rod, drum, **given)
    assert refused.value.field == field
    assert refused.value.allowed
    assert refused.value.remedy
    power_w = given.pop("power_w")
    with pytest.raises(hm.InvalidInput) as refused:
        hm.BedCharge(rod, drum, **given).temperatures(power_w)
    assert refused.value.field == field


def test_elements_without_lengths_and_stores_without_sizes_are_refused(
    rod: hm.Element, drum: hm.Store
) -> None:
    for element, field in (
        (rod.replace(heated_length_mm=None), "heated_length_mm"),
        (rod.replace(sheath_diameter_mm=None), "sheath_diameter_mm"),
    ):
        with pytest.raises(hm.InvalidInput, match="measure the element") as refused:
            hm.sheath_temperature(element, drum, power_w=300)
        assert refused.value.field == field
        assert '"storage-rod-1000-240"' in refused.value.part
    with pytest.raises(hm.InvalidInput, match="heated_length_mm = 0 mm"):
        rod.replace(heated_length_mm=0)
    bare = hm.Store(medium="dry-sand", shape="cylinder", diameter_m=0.57)
    with pytest.raises(hm.InvalidInput, match="height_m"):
        hm.sheath_temperature(rod, bare, power_w=300)
    with pytest.raises(hm.NotFound, match="dry-snad"):
        hm.sheath_temperature(rod, hm.Store(medium="dry-snad", shape="box"), power_w=300)
    with pytest.raises(hm.InvalidInput, match="low"):
        hm.BedCharge(rod, drum, conductivity="worst")


def test_a_store_is_a_record_like_the_others() -> None:
    store = hm.Store(medium="dry-sand", shape="cylinder", diameter_m="22 in", height_m="3 ft")
    assert store.diameter_m == pytest.approx(0.5588)
    assert store.to_dict()["shape"] == "cylinder"
    assert store == hm.Store(**store.to_dict())
    with pytest.raises(hm.InvalidInput, match="diameter_m"):
        hm.Store(medium="dry-sand", shape="cylinder", diameter_m=-1)
    with pytest.raises(hm.InvalidInput, match="nearest|diameter"):
        hm.Store(medium="dry-sand", shape="cylinder", diametre_m=1)


def test_temperatures_below_absolute_zero_and_wires_of_no_gauge_are_refused() -> None:
    for make in (hm.Surroundings.open_air, hm.Surroundings.sunlit, hm.Surroundings.conduit):
        with pytest.raises(hm.InvalidInput, match="-300 °C") as refused:
            make(-300)
        assert refused.value.field == "air_c"
    wire: dict[str, Any] = {"conductor": "copper", "plating": "tin", "insulation": "silicone-180"}
    about = {"id": "w", "label": "W", "source": "s", "source_kind": "nameplate"}
    with pytest.raises(hm.InvalidInput, match="99 AWG") as refused:
        hm.Wire(area_mm2="99 AWG", **wire, **about)
    assert refused.value.field == "area_mm2"


# Source: heat transfer at the surface: all of it goes into the air, so at no load none is above it.
def test_an_element_in_air_is_as_hot_as_its_load() -> None:
    loads = np.array([0.0, 1.0, 5.0, 20.0])
    celsius = hm.sheath_in_air_c(diameter_mm=8.0, w_per_cm=loads)
    assert celsius[0] == pytest.approx(20.0)
    assert np.all(np.diff(celsius) > 0.0)
    assert hm.sheath_in_air_c(diameter_mm=8.0, w_per_cm=5.0, emissivity=0.3) > celsius[2]
    above = hm.coil_above_sheath_k(w_per_cm=loads)
    assert np.allclose(above / np.where(loads > 0, loads, 1.0), [0.0, *(above[1:] / loads[1:])])
    for bad in (math.nan, -1.0):
        with pytest.raises(hm.InvalidInput, match="w_per_cm"):
            hm.sheath_in_air_c(diameter_mm=8.0, w_per_cm=bad)
        with pytest.raises(hm.InvalidInput, match="w_per_cm"):
            hm.coil_above_sheath_k(w_per_cm=bad)
    with pytest.raises(hm.InvalidInput, match="temperature_c"):
        hm.packed_bed_conductivity(temperature_c=-300)
