"""An installation made of keywords, and one thing of it changed."""

from __future__ import annotations

import dataclasses
from typing import Any

import heatmatch as hm
import pytest
from heatmatch.face import setting

RECORDS = {
    "weather": hm.MonthlyNormals,
    "elements": hm.AllowedElements,
    "elements.any": hm.ElementFilter,
    "space": hm.Space,
    "space.covers": hm.CoverArea,
    "goals": hm.Goals,
    "circuit": hm.ExistingCircuit,
}


@pytest.mark.parametrize("place", RECORDS)
def test_a_record_has_the_fields_of_the_glossary(place: str) -> None:
    glossary = {field["name"] for field in hm.installation_glossary()[place]}
    lists = {"space": {"covers"}, "elements": {"any"}}.get(place, set())
    assert {field.name for field in dataclasses.fields(RECORDS[place])} == glossary | lists


def test_all_parts_are_attributes_and_make_the_same_installation(demo: hm.Installation) -> None:
    again = hm.Installation(
        name=demo.name,
        site=demo.site,
        weather=demo.weather,
        panels=demo.panels,
        elements=demo.elements,
        store=demo.store,
        runs=demo.runs,
        devices=demo.devices,
        space=demo.space,
        goals=demo.goals,
        circuit=demo.circuit,
        parts=demo.parts,
    )
    assert again == demo
    assert again.circuit is not None
    assert again.circuit.bank == "1S2P"
    assert again.goals.budget == 150
    assert again.space is not None
    assert again.space.covers[0].area_m2 == 28
    assert again.panels[0].measured == demo.panels[0].measured


def test_keywords_take_mappings_texts_with_units_and_parts() -> None:
    own = hm.Panel(id="my-285", label="285 W", v_oc=39.2, i_sc=9.58, source="its label",
                   source_kind="nameplate")  # fmt: skip
    place = hm.Installation(
        site={"record_low_c": "-4 °F"},
        panels=[{"group": "mine", "panel": "my-285", "count": 2}],
        elements=[hm.AllowedElements(count=1, any=hm.ElementFilter())],
        parts={"panels": [own]},
    )
    assert place.site.record_low_c == pytest.approx(-20)
    assert place.parts == {"panels": [own]}
    assert place.elements == [hm.AllowedElements(count=1, any=hm.ElementFilter())]
    assert (place.store, place.weather, place.space, place.circuit) == (None,) * 4
    assert place.goals == hm.Goals()


def test_a_missing_or_unknown_keyword_is_one_sentence() -> None:
    with pytest.raises(TypeError, match="site"):
        hm.Installation()  # type: ignore
    with pytest.raises(TypeError, match="sites"):
        hm.Installation(site={"record_low_c": -20}, sites=3)  # type: ignore
    with pytest.raises(hm.InvalidInput, match="record_low_c"):
        hm.Installation(site={})


def test_one_thing_is_changed_by_its_path(demo: hm.Installation) -> None:
    made = demo.replace({"store.height_m": "1 m", "runs.hot tail.wire": "thhn-12-awg"})
    assert made.store is not None
    assert made.store.height_m == 1.0
    assert [run.wire for run in made.runs] == ["choose", "thhn-12-awg", "thhn-12-awg"]
    assert demo.runs[2].wire == "silicone-14-awg"
    plain = demo.to_dict()
    plain["store"]["height_m"] = 1
    plain["runs"][2]["wire"] = "thhn-12-awg"
    del plain["runs"][2]["owned_m"]  # of another wire nothing is owned
    assert made == hm.Installation.from_dict(plain)


def test_items_are_named_or_numbered_and_leave_when_none(demo: hm.Installation) -> None:
    assert [r.name for r in demo.replace({"runs.0": None, "runs.2": None}).runs] == [
        "along the wall"
    ]
    older = demo.replace({"panels.porch four.age_years": 20, "panels.2.age_years": None})
    assert [owned.age_years for owned in older.panels] == [14, 20, None]
    # both paths are of the installation as it was: the first does not hide the second
    thermostat = {"part": "capillary-thermostat-90", "set_c": 30}
    sensing = demo.replace({f"devices.snap-disc-fixed.{k}": v for k, v in thermostat.items()})
    assert (sensing.devices[2].part, sensing.devices[2].set_c) == ("capillary-thermostat-90", 30)


def test_a_whole_record_may_be_given_or_taken_away(demo: hm.Installation) -> None:
    bare = demo.replace({"space": None, "store": None, "weather": None, "circuit": None})
    assert (bare.space, bare.store, bare.weather, bare.circuit) == (None,) * 4
    back = bare.replace({"circuit": demo.circuit, "space.volume_m3": 3, "space.covers": []})
    assert back.circuit == demo.circuit
    assert back.space == hm.Space(volume_m3=3)
    site = hm.Site(**(demo.site.to_dict() | {"record_low_c": -25}))
    assert demo.replace({"site": site}) == demo.replace({"site.record_low_c": -25})


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"store.fill": "gravel"}, "store: fill must be a known field; choices: medium"),
        ({"stroe.height_m": 1}, "stroe must be a known field"),
        ({"store.height_m": -1}, "height_m = -1 m must be"),
        ({"runs.hot tial.wire": "x"}, 'one of "home run", "along the wall", "hot tail"'),
        ({"runs.7.wire": "x"}, "a number from 0 to 2"),
        ({"name.x": 1}, 'a path that ends at "name"'),
        ({"store.medium": None}, r"medium = \(missing\) must be given"),
    ],
)
def test_what_cannot_be_changed_is_named(
    changes: dict[str, Any], words: str, demo: hm.Installation
) -> None:
    with pytest.raises(hm.InvalidInput, match=words):
        demo.replace(changes)


@pytest.mark.parametrize("changes", [5, "store", {3: 4}])
def test_changes_are_a_mapping_of_paths(changes: Any, demo: hm.Installation) -> None:
    with pytest.raises(TypeError, match=r"^replace\(\): changes = .* must be a mapping of paths"):
        demo.replace(changes)


def test_a_changed_record_is_refused_as_a_whole_one_would_be(demo: hm.Installation) -> None:
    with pytest.raises(dataclasses.FrozenInstanceError):
        demo.goals.budget = 3  # type: ignore
    assert setting.plain_of(demo.goals) == demo.to_dict()["goals"]


def test_a_tilt_without_its_sun_hours_is_warned_of(demo: hm.Installation) -> None:
    with pytest.warns(UserWarning, match=r"weather\.sun_hours did not: they hold for tilt_deg"):
        demo.replace({"site.tilt_deg": 30})
    sums = [3.0] * 12
    demo.replace({"site.tilt_deg": 30, "weather.sun_hours": sums})
    demo.replace({"site.tilt_deg": demo.site.tilt_deg})
    demo.replace({"site.tilt_deg": 30, "weather": None})
