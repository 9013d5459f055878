"""The command line: what it prints, its exit codes, and that errors are one message."""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import heatmatch as hm
import pytest

KINDS = tuple(hm.glossary())
CSV = "id,label,v_oc,i_sc,source,source_kind\ngood,Good,37.5 V,8.66,the label,nameplate\n"
MODULES = (
    "Name,Technology,N_s,I_sc_ref,V_oc_ref,I_mp_ref,V_mp_ref,alpha_sc,beta_oc,gamma_r,T_NOCT,A_c,"
    "a_ref,I_L_ref,I_o_ref,R_s,R_sh_ref,Adjust\n,,,,,,,,,,,,,,,,,\n,,,,,,,,,,,,,,,,,\n"
    "Barn 245,Multi-c-Si,60,8.66,37.5,8.14,30.1,0.0058888,-0.130125,-0.461,46.4,1.65,"
    "1.58,8.67,3e-10,0.3,250,5.5\n"
)


@pytest.fixture
def mine(tmp_path: Path) -> Path:
    """The path of a separate catalog file."""
    return tmp_path / "mine.heatmatch"


@pytest.fixture
def element_file(tmp_path: Path, minimal: Callable[..., Any]) -> Path:
    path = tmp_path / "element.json"
    path.write_text(minimal("element").to_json(), encoding="utf-8")
    return path


def unwrapped(text: str) -> str:
    return "".join(text.split())


def widest(text: str) -> int:
    return max(len(line) for line in text.splitlines())


def read_json(text: str) -> Any:
    return json.loads(text, parse_constant=pytest.fail)


def test_rank_prints_a_table_of_80_columns(command: Callable[..., Any], demo_file: Path) -> None:
    for units in ("si", "us"):
        done = command("rank", demo_file, "--top", 3, "--units", units, "--full")
        assert (done.code, done.err) == (0, "")
        assert widest(done.out) <= 80
        assert done.out.startswith("seedling house at Hollow Brook\n")
        for words in ("pairings evaluated", "The first one in full", "Trade-offs", "cautions:"):
            assert words in done.out
        for caution in hm.cautions():
            assert unwrapped(caution) in unwrapped(done.out)


def test_arrays_above_a_voltage_are_left_out_and_counted(
    command: Callable[..., Any], demo_file: Path
) -> None:
    done = command("rank", demo_file, "--volts-max", "60 V")
    assert done.code == 0
    table = [line for line in done.out.splitlines() if re.match(r"#|>?[1-9]\d*\?? +\D", line)]
    head, *rows = [line for line in table if "pairings" not in line]
    assert head.split()[2:4] == ["cold", "V"]
    place = head.index("cold V") + len("cold V")
    assert rows
    for row in rows:
        assert float(row[:place].split()[-1]) <= 60
    data = json.loads(command("rank", demo_file, "--volts-max", 60, "--json").out)
    everything = json.loads(command("rank", demo_file, "--json").out)
    left = everything["evaluated"] - data["evaluated"]
    assert f"{left} more left out: above 60 V at the record low." in " ".join(done.out.split())
    for wrong in ("0", "-5", "lots", "3000 V"):
        assert command("rank", demo_file, f"--volts-max={wrong}").code == 2


def test_rank_gives_plain_data(command: Callable[..., Any], demo_file: Path) -> None:
    done = command("rank", demo_file, "--json", "--top", 2, "--max-bank", 2)
    assert (done.code, done.err) == (0, "")
    data = read_json(done.out)
    ranking = hm.rank(hm.Catalog.starter(), hm.demo(), top=2, max_bank=2)
    assert data["evaluated"] == ranking.evaluated
    assert data["reasons"] == ranking.reasons
    assert [row["element"] for row in data["candidates"]] == [
        candidate.circuit.element.id for candidate in ranking
    ]
    assert data["candidates"][0]["mean_power_w"] == ranking[0].mean_power_w
    assert len(data["candidates"][0]["margins"]) == len(ranking[0].margins)


def test_assess_judges_the_circuit_that_stands(
    command: Callable[..., Any], demo_file: Path, standing: hm.Candidate
) -> None:
    for units in ("si", "us"):
        done = command("assess", demo_file, "--units", units, "--explain")
        assert (done.code, done.err, widest(done.out) <= 80) == (0, "", True)
        assert standing.circuit.title in done.out.replace("\n  ", " ")
        assert "how it was computed:" in done.out
        for step in standing.explain():
            assert unwrapped(step.description.text(units)) in unwrapped(done.out)
        data = read_json(command("assess", demo_file, "--json", "--units", units).out)
        assert data["mean_power_w"] == standing.mean_power_w
        assert data["severity"] == standing.severity
        sentences = [margin["sentence"] for margin in data["margins"]]
        assert sentences == [margin.sentence(units=units) for margin in standing.margins]


def test_a_standing_circuit_with_a_danger_ends_with_3(
    command: Callable[..., Any], demo_file: Path
) -> None:
    plain = json.loads(demo_file.read_text())
    # A toggle switch for alternating current only is to break the array's direct current.
    plain["devices"] = [{"part": "ac-toggle-switch", "run": "home run", "duty": "breaks dc"}]
    demo_file.write_text(json.dumps(plain))
    done = command("assess", demo_file)
    assert (done.code, done.err) == (3, "")
    assert "\N{BLACK UP-POINTING TRIANGLE} DANGER: " in done.out
    assert command("assess", demo_file, "--json").code == 3


def test_demo_prints_an_installation(command: Callable[..., Any], demo: hm.Installation) -> None:
    done = command("demo")
    assert (done.code, done.out) == (0, demo.to_json_text())


@pytest.mark.parametrize("kind", KINDS)
def test_lists_of_every_kind_keep_within_80_columns(
    kind: str, command: Callable[..., Any], view_of: Callable[..., Any], starter: hm.Catalog
) -> None:
    view = view_of(starter, kind)
    done = command("catalog", "list", kind, "--units", "us")
    assert (done.code, done.err) == (0, "")
    assert widest(done.out) <= 80
    assert len(done.out.splitlines()) == 1 + len(view)
    data = read_json(command("catalog", "list", kind, "--json").out)
    assert [row["id"] for row in data] == view.keys()
    for part in view.values():
        shown = command("catalog", "show", kind, part.id)
        assert (shown.code, widest(shown.out) <= 80) == (0, True)
        assert unwrapped(part.label) in unwrapped(shown.out)


def test_list_counts_all_kinds(command: Callable[..., Any], starter: hm.Catalog) -> None:
    counts = read_json(command("catalog", "list", "--json").out)
    assert list(counts) == list(KINDS)
    assert counts["panel"] == len(starter.panels)
    assert f"{len(starter.panels)}  panel\n" in command("catalog", "list").out


def test_a_part_is_added_edited_shown_removed_and_undone(
    command: Callable[..., Any], mine: Path, element_file: Path
) -> None:
    def run(*arguments: object) -> str:
        done = command("catalog", *arguments, "--catalog", mine)
        assert (done.code, done.err) == (0, "")
        return str(done.out)

    assert "my-element" in run("add", "element", element_file)
    changes = ["rated_w=1.5 kW", "terminal_limit_c=392 °F", "built_in_ac_control=yes"]
    run("edit", "element", "my-element", *changes, 'source_of={"rated_w": "a meter"}', "notes==1+1")
    part = hm.Catalog.open(mine).elements["my-element"]
    assert (part.rated_w, part.terminal_limit_c, part.built_in_ac_control) == (1500, 200, True)
    assert (part.source_of, part.notes) == ({"rated_w": "a meter"}, "=1+1")
    run("edit", "element", "my-element", "terminal_limit_c=", "notes=")
    assert hm.Catalog.open(mine).elements["my-element"].terminal_limit_c is None
    assert "rated_w: 1500 W\n" in run("show", "element", "my-element")
    assert "my-element*" in run("list", "element")
    assert "* your own" in run("list", "element")
    run("remove", "element", "my-element")
    assert "undo 4 (remove" in run("undo")
    # An edit names its fields, on a line of its own where they are many.
    history = [line for line in run("history").splitlines() if line[:4].strip().isdigit()]
    assert len(history) == 5
    assert history[3].endswith('remove element "my-element" (undone)')
    exported = read_json(run("export", "-"))
    assert [row["id"] for row in exported["elements"]] == ["my-element"]


def test_rows_are_imported_from_csv_json_and_the_module_list(
    command: Callable[..., Any], mine: Path, tmp_path: Path
) -> None:
    rows, modules, out = (tmp_path / name for name in ("rows.csv", "modules.csv", "out.json"))
    rows.write_text(CSV)
    modules.write_text(MODULES)
    own = ("--catalog", mine)
    first = command("catalog", "import", rows, "--kind", "panel", *own)
    assert first.out == "added 1, replaced 0, removed 0, unchanged 0, refused 0\n"
    assert command("catalog", "import", modules, "--modules", *own).out.startswith("added 1,")
    assert command("catalog", "export", out, *own).out == f"wrote {out}\n"
    assert list(read_json(out.read_text())["panels"][0])[0] == "id"
    other = tmp_path / "other.heatmatch"
    assert command("catalog", "import", out, "--catalog", other).out.startswith("added 2,")
    assert hm.Catalog.open(other).panels["barn-245"].label == "Barn 245"
    everything = read_json(command("catalog", "export", "-", "--all", *own).out)
    assert len(everything["panels"]) == 2 + len(hm.Catalog.starter().panels)
    rows.write_text(CSV + "bad,Bad,-3,8,the label,nameplate\n")
    refused = command("catalog", "import", rows, "--kind", "panel", *own)
    assert (refused.code, refused.out) == (1, "")
    assert 'line 3: panel "bad": v_oc = -3 V' in refused.err
    kept = command("catalog", "import", rows, "--kind", "panel", "--keep-good", *own)
    assert (kept.code, kept.out.splitlines()[0][-9:]) == (0, "refused 1")
    assert widest(kept.out) <= 80


def test_the_catalog_may_come_from_the_environment(
    command: Callable[..., Any],
    mine: Path,
    element_file: Path,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setenv("HEATMATCH_CATALOG", str(mine))
    assert command("catalog", "add", "element", element_file).code == 0
    assert "my-element" in hm.Catalog.open(mine).elements
    other = tmp_path / "other.heatmatch"
    refused = command("catalog", "history", "--catalog", other)
    assert refused.code == 1
    assert "no catalog file" in refused.err
    assert not other.exists()


@pytest.mark.parametrize(
    ("arguments", "code", "words"),
    [
        ("rank none.json", 1, "none.json"),
        ("assess none.json", 1, "none.json"),
        ("rank {demo} --max-bank 0", 2, "must be 1 or more"),
        ("rank {demo} --catalog {demo}", 1, "is not a heatmatch catalog"),
        ("rank {element}", 1, "heatmatch_installation = (missing)"),
        ("catalog show panel cdte-10", 1, 'did you mean "cdte-100"'),
        ("catalog add element {element}", 1, "--catalog mine.heatmatch"),
        ("catalog undo", 1, "--catalog mine.heatmatch"),
        ("catalog add element none.json --catalog {mine}", 1, "none.json"),
        ("catalog add panel {element} --catalog {mine}", 1, "family"),
        ("catalog edit panel cdte-100 v_oc --catalog {mine}", 1, "field=value"),
        ("catalog edit panel cdte-100 voc=3 --catalog {mine}", 1, 'did you mean "v_oc"'),
        ("catalog edit panel cdte-100 v_oc= --catalog {mine}", 1, "v_oc = (missing)"),
        ("catalog edit panel cdte-100 id=x --catalog {mine}", 1, "id cannot be edited"),
        ("catalog edit panel cdte-100 source_of=x --catalog {mine}", 1, "source_of"),
        ("catalog remove panel nobody --catalog {mine}", 1, 'no panel "nobody"'),
        ("catalog remove insulation silicone-180 --catalog {mine}", 1, "is refused"),
        ("catalog undo --catalog {mine}", 1, "nothing to undo"),
        ("catalog import {element} --catalog {mine}", 1, "heatmatch_catalog = (missing)"),
        ("catalog import {element} --modules --catalog {mine}", 1, 'column "Name"'),
        ("catalog export no-folder/x.json", 1, "no-folder"),
        ("", 2, "COMMAND"),
        ("rank", 2, "INSTALLATION.json"),
        ("rank {demo} --top many", 2, "--top"),
        ("rank {demo} --units metric", 2, "--units"),
        ("rankk {demo}", 2, "rankk"),
        ("catalog", 2, "ACTION"),
        ("catalog list panal", 2, "panal"),
        ("catalog edit panel cdte-100", 2, "FIELD=VALUE"),
    ],
)
def test_errors_are_one_message_without_a_traceback(
    arguments: str,
    code: int,
    words: str,
    command: Callable[..., Any],
    demo_file: Path,
    element_file: Path,
    mine: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.chdir(mine.parent)
    paths = {"demo": demo_file, "element": element_file, "mine": mine}
    done = command(*(word.format(**paths) for word in arguments.split()))
    assert (done.code, done.out) == (code, "")
    assert words in done.err
    assert "Traceback" not in done.err
    assert code == 2 or (done.err.startswith("heatmatch: ") and done.err.count("\n") == 1)
