"""The first screen: short, the answer first, the same in every face."""

from __future__ import annotations

import copy
import pickle
from pathlib import Path

import heatmatch as hm
from heatmatch.cli import main
from heatmatch.text.first_screen import first_screen_html, first_screen_text

MOST_LINES = 25
MOST_WORDS = 350


def demo_ranking(**options: object) -> hm.Ranking:
    return hm.rank(hm.Catalog.starter(), hm.demo(), **options)


def test_the_first_screen_has_at_most_25_lines_of_80_columns() -> None:
    for units in ("si", "us"):
        lines = first_screen_text(demo_ranking(top=3), units=units).splitlines()
        assert len(lines) <= MOST_LINES
        assert max(map(len, lines)) <= 80


def test_rank_prints_at_most_350_words_by_default(tmp_path, capsys) -> None:
    path = tmp_path / "demo.json"
    path.write_text(hm.demo().to_json_text(), encoding="utf-8")
    assert main(["rank", str(path), "--quiet"]) == 0
    short = capsys.readouterr().out
    assert len(short.split()) <= MOST_WORDS
    assert "BUILD" in short
    assert "OTHER WAYS" in short
    assert main(["rank", str(path), "--quiet", "--full"]) == 0
    full = capsys.readouterr().out
    assert len(full.split()) > 3 * MOST_WORDS
    assert "cautions:" in full
    assert "cautions:" not in short


def test_the_sample_of_the_readme_is_what_the_demo_prints() -> None:
    readme = Path(__file__).parents[2] / "README.md"
    sample = readme.read_text(encoding="utf-8").split("## An answer")[1].split("```")[1]
    lines = [line.rstrip() for line in sample.strip().splitlines()[:-1]]
    printed = [line.rstrip() for line in first_screen_text(demo_ranking(top=3)).splitlines()]
    begins = printed.index(lines[0])
    assert len(lines) > 10
    assert printed[begins : begins + len(lines)] == lines


def test_the_recommendation_is_in_text_html_and_data() -> None:
    ranking = demo_ranking(top=3)
    first = ranking.recommended
    assert first is not None
    assert ranking.recommended is first
    assert not ranking.lacking
    assert set(ranking.alternatives) <= {
        "most heat", "least money", "below touch voltage", "coolest", "all owned"
    }  # fmt: skip
    html = first_screen_html(ranking)
    assert first.circuit.owned.group in html
    assert "OTHER WAYS" in html
    assert html in ranking._repr_html_()
    for made in (pickle.loads(pickle.dumps(ranking)), copy.copy(ranking)):
        assert made.recommended.circuit.title == first.circuit.title
        assert list(made.alternatives) == list(ranking.alternatives)
        assert made.lacking == ranking.lacking


def test_without_a_recommendation_the_missing_fact_is_said() -> None:
    place = hm.demo().replace({"store": None})
    ranking = hm.rank(hm.Catalog.starter(), place, top=3)
    assert ranking.recommended is None
    assert ranking.alternatives == {}
    assert "store" in ranking.lacking
    assert ranking.lacking in " ".join(first_screen_text(ranking).split())


def test_a_saved_ranking_keeps_the_recommendation(tmp_path) -> None:
    ranking = demo_ranking(top=3)
    path = hm.save_ranking(ranking, tmp_path / "kept.json")
    saved = hm.load_ranking(path)
    assert saved.recommended["element"] == ranking.recommended.circuit.element.id
    assert list(saved.alternatives) == list(ranking.alternatives)
    assert saved.lacking == ""


def test_folding_can_be_switched_off() -> None:
    folded = demo_ranking(top=2000)
    whole = demo_ranking(top=2000, fold=False)
    like = sum(candidate.like_it for candidate in folded)
    assert len(whole) == len(folded) + like
    assert like > 0
    assert all(candidate.like_it == 0 for candidate in whole)


def test_the_plan_is_a_line_below_the_other_ways() -> None:
    ranking = demo_ranking(top=3)
    pointer = "With everything you own: heatmatch plan."
    assert pointer in first_screen_html(ranking)
    rods = hm.AllowedElements(element="storage-rod-1000-240", count=2)
    plan = hm.plan(hm.Catalog.starter(), hm.demo().replace({"elements": [rods]}))
    made = first_screen_html(ranking, plan=plan)
    assert pointer not in made
    assert "With everything you own: " in made
    assert " circuit, " in made
    assert f"{plan.bill.typical:.0f} of 150 USD" in made


def test_rank_with_a_plan_says_what_it_has(tmp_path, capsys) -> None:
    rods = hm.AllowedElements(element="storage-rod-1000-240", count=2)
    path = tmp_path / "few.json"
    path.write_text(hm.demo().replace({"elements": [rods]}).to_json_text(), encoding="utf-8")
    assert main(["rank", str(path), "--quiet"]) == 0
    assert "With everything you own: heatmatch plan." in " ".join(capsys.readouterr().out.split())
    assert main(["rank", str(path), "--quiet", "--plan"]) == 0
    said = " ".join(capsys.readouterr().out.split())
    assert "kWh a day, 1 circuit, " in said or "kWh a day, 2 circuits, " in said
    assert main(["rank", str(path), "--quiet", "--plan", "--json"]) == 0
    assert '"plan": {' in capsys.readouterr().out
