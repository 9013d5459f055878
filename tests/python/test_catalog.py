"""The catalog: a mapping of parts, changes and their undoing, imports, two openings of a file."""

from __future__ import annotations

import json
import pickle
import sqlite3
from collections.abc import Callable
from pathlib import Path
from typing import Any

import heatmatch as hm
import pytest

KINDS = tuple(hm.glossary())
# An invented module of 60 cells in the layout of the public module-rating list.
MODULE_HEADER = (
    "Name,Technology,N_s,I_sc_ref,V_oc_ref,I_mp_ref,V_mp_ref,alpha_sc,beta_oc,gamma_r,T_NOCT,A_c,"
    "a_ref,I_L_ref,I_o_ref,R_s,R_sh_ref,Adjust\n"
    "Units,,,A,V,A,V,A/K,V/K,%/K,C,m2,V,A,A,Ohm,Ohm,%\n"
    "[0],,,cec_i_sc_ref,,,,,,,,,,,,,,\n"
)
MODULE_ROW = (
    "Barn & Sons 245,Multi-c-Si,60,8.66,37.5,{i_mp},30.1,0.0058888,-0.130125,-0.461,46.4,1.65,"
    "1.58,8.67,3e-10,0.3,250,5.5\n"
)
CSV = "id,label,v_oc,i_sc,source,source_kind\n"
GOOD_ROW = "good,Good,37.5 V,8.66,the label,nameplate\n"
BAD_ROW = "bad,Bad,-3,8.66,the label,nameplate\n"


def content(catalog: hm.Catalog) -> str:
    """Everything a catalog file holds, its history included."""
    return catalog.export_json_text() + repr(catalog.history())


@pytest.mark.parametrize("kind", KINDS)
def test_a_view_is_a_mapping(
    kind: str, starter: hm.Catalog, view_of: Callable[..., Any], class_of: Callable[[str], Any]
) -> None:
    view = view_of(starter, kind)
    ids = list(view)
    assert view.kind == kind
    assert ids == view.keys() == sorted(ids)
    assert len(view) == len(ids) == len(view.values()) > 10
    assert view.items() == list(zip(ids, view.values(), strict=True))
    assert dict(view) == dict(view.items())
    for name, part in view.items():
        assert isinstance(part, class_of(kind))
        assert part.id == name
        assert name in view
        assert view[name] == view.get(name) == part
    assert "nobody" not in view
    assert 5 not in view
    assert view.get("nobody") is None
    assert view.get("nobody", 7) == 7
    assert str(len(view)) in repr(view)
    assert ids[0] in repr(view)


@pytest.mark.parametrize("kind", KINDS)
def test_an_unknown_id_is_not_found_and_the_nearest_is_named(
    kind: str, starter: hm.Catalog, view_of: Callable[..., Any]
) -> None:
    view = view_of(starter, kind)
    name = view.keys()[0]
    with pytest.raises(hm.NotFound, match=f'did you mean "{name}"') as missing:
        view[name + "x"]
    assert isinstance(missing.value, KeyError)
    assert missing.value.part == f'{kind} "{name}x"'
    assert missing.value.field == "id"


def test_the_starter_is_read_only(starter: hm.Catalog, tmp_path: Path, minimal: Any) -> None:
    (tmp_path / "rows.json").write_text(hm.Catalog.starter().export_json_text())
    changes: list[Callable[[], object]] = [
        lambda: starter.add(minimal("panel")),
        lambda: starter.replace(starter.panels["cdte-100"]),
        lambda: starter.remove("panel", "cdte-100"),
        starter.undo,
        lambda: starter.import_json(tmp_path / "rows.json"),
        lambda: starter.import_json_text('{"heatmatch_catalog": 1}'),
        lambda: starter.import_csv_text("panel", CSV + GOOD_ROW),
        lambda: starter.import_module_csv(tmp_path / "none.csv"),
        lambda: starter.save_copy(tmp_path / "copy.heatmatch"),
    ]
    for change in changes:
        with pytest.raises(hm.CatalogError, match="starter") as refused:
            change()
        assert "::" not in str(refused.value)
    assert (starter.path, starter.history(), repr(starter)) == ("", [], "Catalog.starter()")
    assert "cdte-100" in starter.panels
    assert not starter.is_own("panel", "cdte-100")


@pytest.mark.parametrize("kind", KINDS)
def test_a_part_of_each_kind_is_added_changed_and_removed(
    kind: str, own: hm.Catalog, minimal: Callable[..., Any], view_of: Callable[..., Any]
) -> None:
    view = view_of(own, kind)
    part = minimal(kind)
    own.add(part)
    assert view[part.id] == part
    assert own.is_own(kind, part.id)
    changed = part.replace(notes="weighed again")
    own.replace(changed)
    assert view[part.id] == changed
    own.remove(kind, part.id)
    assert part.id not in view
    actions = [entry.action for entry in own.history()]
    title = f'{kind} "{part.id}"'
    assert actions == [f"add {title}", f"replace {title}", f"remove {title}"]


def test_history_numbers_every_call_and_undo_takes_them_back(
    own: hm.Catalog, minimal: Callable[..., Any]
) -> None:
    panel = minimal("panel")
    own.add(panel)
    own.replace(panel.replace(v_oc=38))
    first, second = own.history()
    assert (first.number, second.number, first.rows, first.undoes) == (1, 2, 1, 0)
    assert first.at_utc[:2] == "20"
    assert first.at_utc[-1] == "Z"
    taken = own.undo()
    assert (taken.number, taken.undoes) == (3, 2)
    assert own.panels["my-panel"] == panel
    assert [entry.undone for entry in own.history()] == [False, True, False]
    own.undo()
    assert "my-panel" not in own.panels
    with pytest.raises(hm.CatalogError, match="nothing to undo"):
        own.undo()


def test_a_starter_part_is_hidden_replaced_and_brought_back(own: hm.Catalog) -> None:
    starter_part = own.panels["cdte-100"]
    own.replace(starter_part.replace(notes="mine"))
    assert own.is_own("panel", "cdte-100")
    own.remove("panels", "cdte-100")
    assert "cdte-100" not in own.panels
    own.undo()
    assert own.panels["cdte-100"].notes == "mine"
    own.undo()
    assert own.panels["cdte-100"] == starter_part
    assert not own.is_own("panel", "cdte-100")


def test_refused_changes_leave_the_file_as_it_was(
    own: hm.Catalog, minimal: Callable[..., Any], tmp_path: Path
) -> None:
    own.add(minimal("insulation", id="my-sleeve"))
    own.add(minimal("wire", insulation="my-sleeve"))
    before = content(own)
    missing = tmp_path / "no-such-folder" / "file"
    refusals: list[tuple[type[hm.Error], str, Callable[[], object]]] = [
        (hm.CatalogError, "is taken", lambda: own.add(minimal("wire"))),
        (hm.NotFound, "add it instead", lambda: own.replace(minimal("panel"))),
        (hm.NotFound, "to remove", lambda: own.remove("panel", "nobody")),
        (hm.CatalogError, 'wire "my-wire"', lambda: own.remove("insulation", "my-sleeve")),
        (hm.CatalogError, '"no"', lambda: own.add(minimal("wire", id="w", insulation="no"))),
        (hm.InvalidInput, 'did you mean "panel"', lambda: own.remove("panal", "cdte-100")),
        (hm.InvalidInput, "a Panel, Element", lambda: own.add({"id": "p"})),  # type: ignore
        (hm.CatalogError, "line 3", lambda: own.import_csv_text("panel", CSV + GOOD_ROW + BAD_ROW)),
        (hm.InvalidInput, "v_oc", lambda: own.import_csv_text("panel", "id,voc\na,1\n")),
        (hm.InvalidInput, "heatmatch_catalog", lambda: own.import_json_text("{}")),
        (hm.InvalidInput, "correct the JSON", lambda: own.import_json_text("{")),
        (hm.FileError, "no-such-folder", lambda: own.import_json(missing)),
        (hm.FileError, "no-such-folder", lambda: own.import_module_csv(missing)),
        (hm.FileError, "no-such-folder", lambda: own.export_json(missing)),
        (hm.FileError, "no-such-folder", lambda: own.save_copy(missing)),
    ]
    for error, words, change in refusals:
        with pytest.raises(error, match=words):
            change()
        assert content(own) == before


def test_export_and_import_give_the_same_bytes(
    own: hm.Catalog, tmp_path: Path, minimal: Callable[..., Any]
) -> None:
    own.add(minimal("panel", label="ö 日本 ☀️", v_mp="30.1 V"))
    own.add(minimal("alloy", resistance_factor=[{"t_c": 20, "factor": 1.0}]))
    own.remove("panel", "cdte-100")
    path = tmp_path / "rows.json"
    own.export_json(path)
    assert path.read_text(encoding="utf-8") == own.export_json_text()
    other = hm.Catalog.open(tmp_path / "other.heatmatch")
    report = other.import_json(str(path))
    assert (report.added, report.replaced, report.removed) == (2, 0, 1)
    assert (report.unchanged, report.refused) == (0, [])
    assert other.export_json_text() == own.export_json_text()
    again = other.import_json(path)
    assert (again.added, again.removed, again.unchanged) == (0, 0, 3)
    assert len(other.history()) == 1
    everything = json.loads(own.export_all_json_text())
    assert len(everything["panels"]) == len(own.panels)


def test_bad_rows_are_named_by_line_and_good_ones_kept_if_asked(own: hm.Catalog) -> None:
    row = '{"id": "good", "label": "G", "v_oc": 37.5, "i_sc": 9, "source": "s", '
    row += '"source_kind": "nameplate"}'
    text = f'{{"heatmatch_catalog": 1,\n"panels": [\n{{"id": "bad"}},\n{row}]}}'
    with pytest.raises(hm.CatalogError, match=r'line 3: panel "bad": label = \(missing\)'):
        own.import_json_text(text)
    report = own.import_json_text(text, keep_good=True)
    assert (report.added, len(report.refused)) == (1, 1)
    assert (report.refused[0].line, report.refused[0].id) == (3, "bad")
    assert "refused=1" in repr(report)
    csv_report = own.import_csv_text("panel", CSV + BAD_ROW + GOOD_ROW, keep_good=True)
    assert (csv_report.replaced, csv_report.refused[0].line) == (1, 2)
    named = own.import_csv_text("panel", CSV + BAD_ROW, origin="mine.csv", keep_good=True)
    assert named.refused[0].reason.startswith("mine.csv, line 2:")


# 0.0058888 of 8.66 A is 0.068 %/K and -0.130125 of 37.5 V is -0.347 %/K.
def test_the_module_list_becomes_panels(own: hm.Catalog, tmp_path: Path) -> None:
    path = tmp_path / "list.csv"
    path.write_text(MODULE_HEADER + MODULE_ROW.format(i_mp="8.14"))
    assert own.import_module_csv(path).added == 1
    panel = own.panels["barn-sons-245"]
    assert (panel.label, panel.technology, panel.v_oc) == ("Barn & Sons 245", "multi-Si", 37.5)
    assert (panel.alpha_isc_pct_per_k, panel.beta_voc_pct_per_k) == (0.068, -0.347)
    path.write_text(MODULE_HEADER + MODULE_ROW.format(i_mp="9.99"))
    with pytest.raises(hm.CatalogError, match=r"i_mp = 9.99 A must be below i_sc"):
        own.import_module_csv(path)
    report = own.import_module_csv(path, keep_good=True)
    assert (report.added, report.refused[0].line) == (0, 4)


def test_two_openings_of_one_file_see_each_other(own: hm.Catalog, minimal: Any) -> None:
    other = hm.Catalog.open(own.path)
    own.add(minimal("panel"))
    assert other.panels["my-panel"] == minimal("panel")
    other.remove("panel", "my-panel")
    assert "my-panel" not in own.panels
    assert len(own.history()) == len(other.history()) == 2


def test_a_file_locked_by_another_program_is_named(own: hm.Catalog, minimal: Any) -> None:
    impatient = hm.Catalog.open(own.path, wait_ms=1)
    with sqlite3.connect(own.path) as other:
        other.execute("BEGIN IMMEDIATE")
        with pytest.raises(hm.CatalogError, match="in use by another program"):
            impatient.add(minimal("panel"))
        other.rollback()
    other.close()
    impatient.add(minimal("panel"))
    assert "my-panel" in own.panels


def test_paths_may_be_text_or_pathlib_and_must_name_a_file(tmp_path: Path) -> None:
    for path in (tmp_path / "ö a.heatmatch", str(tmp_path / "b.heatmatch")):
        catalog = hm.Catalog.open(path)
        assert catalog.path == str(path)
        assert repr(catalog) == f"Catalog.open('{path}')"
        assert pickle.loads(pickle.dumps(catalog)).path == str(path)
    (tmp_path / "text").write_text("no catalog" * 100)
    with pytest.raises(hm.CatalogError, match="is not a heatmatch catalog"):
        hm.Catalog.open(tmp_path / "text")
    with pytest.raises(hm.FileError, match="it is a folder"):
        hm.Catalog.open(tmp_path)
    with pytest.raises(hm.FileError, match="check that the folder exists"):
        hm.Catalog.open(tmp_path / "none" / "a.heatmatch")
    with pytest.raises(TypeError):
        hm.Catalog.open(5)  # type: ignore


@pytest.mark.parametrize("path", ["", ":memory:"])
def test_a_catalog_that_would_vanish_is_not_opened(path: str) -> None:
    with pytest.raises((hm.FileError, hm.InvalidInput)):
        hm.Catalog.open(path)


def test_a_saved_copy_has_all_of_it_and_overwrites_nothing(
    own: hm.Catalog, tmp_path: Path, minimal: Any
) -> None:
    own.add(minimal("panel"))
    own.save_copy(tmp_path / "copy.heatmatch")
    copied = hm.Catalog.open(tmp_path / "copy.heatmatch")
    assert content(copied) == content(own)
    with pytest.raises(hm.FileError, match="it exists; choose a new name"):
        own.save_copy(tmp_path / "copy.heatmatch")
