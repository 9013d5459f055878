"""The recommended circuit in every command: the same one, by default and by name."""

from __future__ import annotations

import json
import re

import heatmatch as hm
from heatmatch.cli import main


def _told(capsys, *arguments: object) -> str:
    assert main([*map(str, arguments), "--quiet"]) in (0, 3)
    return capsys.readouterr().out


def _place(tmp_path, **changes: object) -> object:
    path = tmp_path / "place.json"
    place = hm.demo().replace({"circuit": None, **changes})
    path.write_text(place.to_json_text(), encoding="utf-8")
    return path


def test_commands_show_the_recommended_circuit_by_default_and_by_name(tmp_path, capsys) -> None:
    path = _place(tmp_path)
    place = hm.Installation.from_json(path)
    title = hm.rank(hm.Catalog.starter(), place).recommended.circuit.title
    for options in ((), ("--rank", "build")):
        assert json.loads(_told(capsys, "wires", path, "--json", *options))["title"] == title


def test_top_is_the_number_of_rows_and_the_recommended_one_is_marked(tmp_path, capsys) -> None:
    path = _place(tmp_path)
    for rows in (3, 12):
        told = _told(capsys, "rank", path, "--top", rows)
        table = told[told.index("#  ") :].splitlines()[1:]
        places = [
            line.split()[0]
            for line in table
            if re.match(r">?\d+\?? +\D", line) and "pairings" not in line
        ]
        numbered = [place.strip(">?") for place in places]
        assert sum(place.startswith(">") for place in places) == 1
        assert {str(each) for each in range(1, rows + 1)} <= set(numbered)
        assert len(numbered) <= rows + 1
