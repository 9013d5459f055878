"""A bank of unlike elements, through Python and the command line."""

from __future__ import annotations

import pickle
from pathlib import Path

import heatmatch as hm
import pytest
from heatmatch import cli

_LAYOUT = "[storage-rod-1000-240 + storage-rod-850-230] | sauna-rod-2000-230"
_IDS = ["storage-rod-1000-240", "storage-rod-850-230", "sauna-rod-2000-230"]


def _house(demo: hm.Installation, **circuit: object) -> hm.Installation:
    stated = {"group": "barn pair", "panels": "2S1P", **circuit}
    return demo.replace({"circuit": stated})


@pytest.fixture(scope="module")
def house(demo: hm.Installation) -> hm.Installation:
    """The demo with three rods of its barn pair."""
    return _house(demo, elements=_LAYOUT)


@pytest.fixture(scope="module")
def candidate(house: hm.Installation) -> hm.Candidate:
    return hm.assess(hm.Catalog.starter(), house)


def test_the_bank_is_none_of_its_elements(candidate: hm.Candidate) -> None:
    circuit = candidate.circuit
    assert circuit.element is None
    assert circuit.sheath is None
    assert circuit.element_resistance is None
    assert circuit.elements_text == circuit.bank == _LAYOUT
    assert [each.id for each in circuit.elements] == _IDS
    assert circuit.element_count == 3
    assert circuit.title.endswith(_LAYOUT)
    ohm = [each.typical_ohm for each in circuit.element_resistances]
    assert circuit.bank_ohm == pytest.approx(1 / (1 / (ohm[0] + ohm[1]) + 1 / ohm[2]))


def test_each_element_has_its_load_and_margins(candidate: hm.Candidate) -> None:
    bright = candidate.bright
    assert max(bright.powers_w) == bright.element_power_w
    assert len(bright.voltages_v) == len(bright.survivor_powers_w) == 3
    subjects = [each.subject for each in candidate.margins if each.name == "sheath temperature"]
    assert subjects == [f'element "{each}"' for each in _IDS]


def test_equal_elements_keep_their_hookup(demo: hm.Installation) -> None:
    rod = _IDS[0]
    as_text = hm.assess(hm.Catalog.starter(), _house(demo, elements=f"{rod} | {rod}"))
    as_bank = hm.assess(hm.Catalog.starter(), _house(demo, element=rod, bank="1S2P"))
    assert as_text.circuit.bank == "1S2P"
    assert as_text.circuit.element == as_bank.circuit.element
    assert as_bank.circuit.elements_text == f"{rod} | {rod}"
    assert [str(each) for each in as_text.margins] == [str(each) for each in as_bank.margins]
    assert as_bank.bright.powers_w == []


def test_it_survives_a_pickle(candidate: hm.Candidate) -> None:
    again = pickle.loads(pickle.dumps(candidate))
    assert again.circuit.elements_text == _LAYOUT
    assert again.bright.powers_w == candidate.bright.powers_w
    assert [str(each) for each in again.margins] == [str(each) for each in candidate.margins]
    assert again.circuit.heat.elements == 3


def test_its_heat_is_that_of_each_element(candidate: hm.Candidate) -> None:
    heat = candidate.circuit.heat
    assert heat is not None
    with pytest.raises(hm.InvalidInput, match="3 unlike elements"):
        heat.at(100)
    with pytest.raises(hm.InvalidInput, match="3 unlike elements"):
        heat.bed()
    assert candidate.heat is not None


@pytest.mark.parametrize(
    ("circuit", "says"),
    [
        ({"elements": "storage-rod-1000-24 | sauna-rod-2000-230"}, "storage-rod-1000-240"),
        ({"elements": "sauna-rod-2000-230 x7"}, "6 elements"),
        ({"elements": "sauna-rod-2000-230 |"}, "a name is missing"),
        ({"elements": "sauna-rod-2000-230", "bank": "1S1P"}, "elements"),
        ({"element": "sauna-rod-2000-230"}, "bank"),
        ({}, "elements"),
    ],
)
def test_what_is_wrong_is_one_sentence(
    demo: hm.Installation, circuit: dict[str, str], says: str
) -> None:
    with pytest.raises(hm.Error, match=says):
        hm.assess(hm.Catalog.starter(), _house(demo, **circuit))


def test_the_command_line_assesses_it(
    house: hm.Installation, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "house.json"
    path.write_text(house.to_json_text(), encoding="utf-8")
    assert cli.main(["assess", str(path)]) == 3  # a danger was found
    told = "".join(capsys.readouterr().out.split())  # lines break at hyphens
    assert all(each in told for each in _IDS)


def test_diagnosis_refuses_it(candidate: hm.Candidate) -> None:
    with pytest.raises(hm.InvalidInput, match="equal elements"):
        hm.diagnose(candidate, hm.Readings.from_csv("irradiance_w_m2,bank_v,bank_a\n800,50,4\n"))
