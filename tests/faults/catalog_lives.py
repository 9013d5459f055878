"""Lives of a catalog file: what is done to it, and what it must hold after some of that."""

from __future__ import annotations

import contextlib
import itertools
import json
import sqlite3
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

import heatmatch as hm

NAME = "mine.heatmatch"
SOURCE = {"source": "the label", "source_kind": "nameplate"}
# An invented module of 60 cells in the layout of the public module-rating list.
MODULES = (
    "Name,Technology,N_s,I_sc_ref,V_oc_ref,I_mp_ref,V_mp_ref,alpha_sc,beta_oc,gamma_r,T_NOCT,A_c,"
    "a_ref,I_L_ref,I_o_ref,R_s,R_sh_ref,Adjust\n"
    "Units,,,A,V,A,V,A/K,V/K,%/K,C,m2,V,A,A,Ohm,Ohm,%\n"
    "[0],,,cec_i_sc_ref,,,,,,,,,,,,,,\n"
) + "".join(
    f"Barn & Sons {number},Multi-c-Si,60,8.66,37.5,8.14,30.1,0.0058888,-0.130125,-0.461,46.4,1.65,"
    "1.58,8.67,3e-10,0.3,250,5.5\n"
    for number in range(40)
)


def panel(name: str, v_oc: float = 37.5) -> hm.Panel:
    """A panel of one's own."""
    return hm.Panel(id=name, label=f"Mine, {name}", v_oc=v_oc, i_sc=8.66, **SOURCE)


def _add(name: str) -> Callable[[hm.Catalog], object]:
    return lambda catalog: catalog.add(panel(name))


def _edit(catalog: hm.Catalog) -> object:
    return catalog.replace(catalog.panels["second"].replace(v_oc=41.5))


def _import_json(catalog: hm.Catalog) -> object:
    rows = [json.loads(hm.Panel.to_json(panel(f"row-{i}"))) for i in range(30)]
    return catalog.import_json_text(json.dumps({"heatmatch_catalog": 1, "panels": rows}))


def _import_modules(catalog: hm.Catalog) -> object:
    return catalog.import_module_csv(str(Path(catalog.path).parents[1] / "modules.csv"))


def _save_copy(catalog: hm.Catalog) -> object:
    return catalog.save_copy(str(Path(catalog.path).with_name("copy.heatmatch")))


@dataclass(frozen=True)
class Life:
    """What is done between the opening of a catalog and its end."""

    name: str
    steps: tuple[Callable[[hm.Catalog], object], ...]
    made_before: bool = True  #: there is a file with rows before it begins
    is_older: bool = False  #: an earlier version wrote that file
    copies: bool = False  #: the first step makes no change but a second file
    again: Callable[[hm.Catalog], object] | None = None
    """What is done after another opening, where it was not known whether the first step was."""


LIVES = (
    Life("create", (_add("new"), _add("last")), made_before=False, again=_add("new")),
    Life("bring up to date", (_add("new"), _add("last")), is_older=True, again=_add("new")),
    Life("add", (_add("new"), _add("last")), again=_add("new")),
    Life("edit", (_edit, _add("last"))),
    Life("remove", (lambda catalog: catalog.remove("panel", "second"), _add("last"))),
    Life("hide", (lambda catalog: catalog.remove("panel", "cdte-100"), _add("last"))),
    Life("undo", (hm.Catalog.undo, _add("last")), again=lambda catalog: catalog.undo(3)),
    Life("import of JSON", (_import_json, _add("last"))),
    Life("import of modules", (_import_modules, _add("last"))),
    Life("copy", (_save_copy, _add("last")), copies=True),
)


def prepare(life: Life, folder: Path) -> None:
    """Makes what is there before a life begins."""
    (folder.parent / "modules.csv").write_text(MODULES, encoding="utf-8")
    if life.made_before:
        with hm.Catalog.open(folder / NAME) as catalog:
            catalog.add(panel("first"))
            catalog.add(panel("second"))
            catalog.replace(panel("second", 39.5))
    if life.is_older:
        with contextlib.closing(sqlite3.connect(folder / NAME)) as file:
            version = file.execute("PRAGMA user_version").fetchone()[0]
            file.execute("ALTER TABLE panels DROP COLUMN notes")
            file.execute(f"PRAGMA user_version = {version - 1}")


@dataclass(frozen=True)
class Held:
    """What a catalog file holds: rows and removals, and its history without the time."""

    rows: str
    history: tuple[tuple[int, str, int, int, bool], ...]


def held_by(catalog: hm.Catalog) -> Held:
    """What the file of that catalog holds, as it says itself."""
    entries = catalog.history()
    plain = [(e.number, e.action, e.rows, e.undoes, e.undone) for e in entries]
    return Held(catalog.export_json_text(), tuple(plain))


def held_after(life: Life, done: Sequence[bool], folder: Path) -> Held:
    """What it holds after those steps of a life and no others, without any fault."""
    with contextlib.suppress(FileNotFoundError):
        (folder / "copy.heatmatch").unlink()
    with hm.Catalog.open(folder / NAME) as catalog:
        for step, wanted in zip(life.steps, done, strict=True):
            if wanted:
                step(catalog)
        return held_by(catalog)


def subsets(life: Life) -> Iterator[tuple[bool, ...]]:
    """Every choice of steps that may have been done."""
    return itertools.product((False, True), repeat=len(life.steps))


def read(path: Path) -> Held:
    """What lies on the disk, read by an opening of its own; its structure is whole."""
    with hm.Catalog.open(path) as catalog:
        held = held_by(catalog)
    with contextlib.closing(sqlite3.connect(path)) as file:
        found = file.execute("PRAGMA integrity_check").fetchall()
        broken = file.execute("PRAGMA foreign_key_check").fetchall()
    if found != [("ok",)] or broken:
        raise ValueError(f"the file is damaged: {found} {broken}")
    return held
