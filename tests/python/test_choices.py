"""Closed choices: str enums that are equal to their words."""

from __future__ import annotations

import copy
import enum
import json
import pickle
from pathlib import Path

import heatmatch as hm
import pytest
from heatmatch import choices

ROOT = Path(__file__).parents[2]


def test_a_choice_is_its_word_wherever_it_is_shown() -> None:
    run = next(run for run in hm.demo().runs if run.surroundings.kind == "sunlit")
    kind = run.surroundings.kind
    assert kind is choices.SurroundingsKind.SUNLIT
    assert isinstance(kind, enum.Enum)
    assert isinstance(kind, str)
    assert kind == "sunlit"
    assert kind != "bed"
    assert hash(kind) == hash("sunlit")
    assert f"{kind}" == str(kind) == "sunlit"
    assert f"{kind:>8}" == "  sunlit"
    assert repr(kind) == "'sunlit'"
    assert json.dumps({"kind": kind}) == '{"kind": "sunlit"}'
    assert kind in ("bed", "sunlit")
    assert {kind: 1}["sunlit"] == 1


def test_choices_pickle_and_copy() -> None:
    for choice in (choices.Duty.BREAKS_DC, choices.ConductorMetal.NICKEL_CLAD_COPPER):
        assert pickle.loads(pickle.dumps(choice)) is choice
        assert copy.deepcopy(choice) is choice
    bed = hm.Surroundings(kind="bed", air_c=20.0)
    assert pickle.loads(pickle.dumps(bed)) == bed
    assert b"heatmatch.choices" not in pickle.dumps(bed)  # files keep the words


def test_word_and_member_are_both_accepted() -> None:
    by_word = hm.Surroundings(kind="open air", air_c=20.0)
    by_member = hm.Surroundings(kind=choices.SurroundingsKind.OPEN_AIR, air_c=20.0)
    assert by_word == by_member
    panel = hm.Catalog.starter().panels["silicon-60-cell-245"]
    assert panel.replace(technology=choices.Technology.CDTE).technology == "CdTe"
    assert panel.replace(technology="CdTe").technology is choices.Technology.CDTE
    assert panel.replace(technology=None).technology is None
    place = hm.demo().to_dict()
    place["store"]["shape"] = choices.StoreShape.CYLINDER
    assert hm.Installation.from_dict(place) == hm.demo()


def test_a_word_that_is_none_is_refused_with_the_nearest() -> None:
    with pytest.raises(hm.InvalidInput, match='kind = "Bed" must be open air.*mean "bed"'):
        hm.Surroundings(kind="Bed", air_c=20.0)


def test_data_hold_plain_words() -> None:
    panel = hm.Catalog.starter().panels["silicon-60-cell-245"]
    assert type(panel.to_dict()["technology"]) is str
    assert type(hm.demo().to_dict()["store"]["shape"]) is str


def test_every_choice_of_a_field_has_its_class() -> None:
    classes = [thing for thing in vars(choices).values() if isinstance(thing, enum.EnumMeta)]
    known = [[str(choice) for choice in cls] for cls in classes]
    for glossary in (hm.glossary(), hm.installation_glossary()):
        for fields in glossary.values():
            for field in fields:
                assert not field["words"] or field["words"] in known


def test_the_stub_of_the_choices_follows_their_words() -> None:
    stub = (ROOT / "bindings" / "heatmatch" / "choices.pyi").read_text(encoding="utf-8")
    for name, thing in vars(choices).items():
        if isinstance(thing, enum.EnumMeta) and thing is not choices.Choice:
            members = "".join(f'    {choice.name} = "{choice.value}"\n' for choice in thing)
            assert f"class {name}(Choice):\n{members}" in stub, "run bindings/generate.py"
            assert thing.__doc__
