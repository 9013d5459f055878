"""One look: every face takes colors, marks and sizes of type from one module."""

from __future__ import annotations

import itertools
import re
from pathlib import Path
from typing import Any

import heatmatch as hm
import picture_scenes as scenes
import pytest
from heatmatch.text import look

PACKAGE = Path(hm.__file__).parent
# A color by its number, its name, or a share of white.
COLOUR = re.compile(
    r"#[0-9a-fA-F]{6}\b|#[0-9a-fA-F]{3}\b|rgba?\(|hsl\("
    r"|color=\"(?!none)[^\"]+\"|\"0\.\d+\"|\"(?:black|white|red|orange|yellow|gr[ae]y)\""
)
MARKS = "▲△◆"


def lightness(color: str) -> float:
    """CIE lightness, 0 to 100."""
    share = look.luminance(look.shares(color))
    return 116.0 * share ** (1 / 3) - 16.0 if share > 0.008856 else 903.3 * share


def faces() -> list[Path]:
    """The files of every face but the look itself."""
    every = [*PACKAGE.rglob("*.py"), *PACKAGE.rglob("*.j2")]
    return [path for path in every if path != PACKAGE / "text" / "look.py"]


def test_no_face_has_a_color_or_a_mark_of_its_own() -> None:
    assert len(faces()) > 50
    for path in faces():
        text = path.read_text(encoding="utf-8")
        code = re.sub(r'""".*?"""', "", text, flags=re.DOTALL)
        assert not (found := COLOUR.findall(code)), f"{path.name}: {found}"
        assert not set(MARKS) & set(code), path.name
    assert COLOUR.search('color="0.4"')
    assert COLOUR.search("border: 1px solid #888")


def test_signals_differ_by_mark_word_and_lightness() -> None:
    signals = list(look.SIGNALS.values())
    assert [signal.severity for signal in signals] == [
        "danger", "warning", "caution", "not assessed", "none",
    ]  # fmt: skip
    assert len({signal.mark for signal in signals}) == len(signals)
    assert len({signal.word for signal in signals}) == len(signals)
    # Printed in grey, or seen by an eye that knows no red: each is lighter than the one before.
    values = [lightness(signal.fill) for signal in signals]
    assert values == sorted(values)
    assert all(b - a > 12.0 for a, b in itertools.pairwise(values[:3]))
    # Contrast of text as in WCAG 2.2, level AA (from memory).
    for signal in signals:
        light, dark = sorted(
            (look.luminance(look.shares(c)) + 0.05 for c in (signal.fill, signal.ink)), reverse=True
        )
        assert light / dark >= 4.5, signal.severity


def test_series_read_in_greyscale() -> None:
    values = [lightness(color) for color in look.SERIES]
    assert all(b - a > 9.0 for a, b in itertools.pairwise(values))
    assert not set(look.SERIES) & {signal.fill for signal in look.SIGNALS.values()}


def test_danger_looks_like_danger(starter: hm.Catalog, demo: hm.Installation) -> None:
    circuit = hm.assess(starter, scenes.five_groups(starter, demo))
    assert circuit.severity == "danger"
    danger = look.SIGNALS["danger"]
    page = circuit._repr_html_()
    assert f"background:{danger.fill}" in page
    assert "▲ DANGER" in page
    plot = pytest.importorskip("heatmatch.plot")
    matplotlib = pytest.importorskip("matplotlib")
    matplotlib.use("Agg")
    for draw in (plot.load_lines, plot.heat_path, plot.margins, plot.months):
        ax = draw(circuit)
        assert ax.get_title().startswith("▲ DANGER"), draw
        assert matplotlib.colors.to_hex(ax.title.get_bbox_patch().get_facecolor()) == danger.fill
    drawn = plot.hookup_diagram(circuit)
    assert any(text.get_text().startswith("▲ DANGER: Not for building") for text in drawn.texts)
    matplotlib.pyplot.close("all")


def test_checks_without_a_finding_are_folded(standing: hm.Candidate) -> None:
    page = standing._repr_html_()
    folded = page[page.index("<details>") : page.index("</details>")]
    counted = sum(1 for margin in standing.margins if margin.severity == "none")
    assert folded.count("· no finding") == counted > 5
    assert f"{counted} other checks: no finding" in folded
    assert "no finding</span>" not in page.replace(folded, "")


def test_numbers_align_to_the_right(standing: hm.Candidate) -> None:
    page = standing._repr_html_()
    headroom = next(m for m in standing.margins if m.severity == "warning" and m.headroom)
    cell = f'<td style="text-align:right;font-variant-numeric:tabular-nums">{headroom.headroom:.2f}'
    assert cell in page


def test_a_danger_among_the_margins_looks_like_one(changed_demo: Any) -> None:
    from heatmatch.text.results import margins_text

    def melting(plain: dict[str, Any]) -> None:
        plain["runs"][2]["wire"] = "nm-b-12-awg"

    text = margins_text(hm.assess(hm.Catalog.starter(), changed_demo(melting)))
    lines = text.splitlines()
    assert any(line.startswith("\N{BLACK UP-POINTING TRIANGLE} DANGER: ") for line in lines)
    assert not any(line.startswith("danger:") for line in lines)
    for severity in ("warning", "caution", "not assessed"):
        lead = f"{look.SIGNALS[severity].mark} {severity}: "
        assert any(line.startswith(lead) for line in lines)


def test_only_the_word_of_a_severity_with_a_colon_is_marked() -> None:
    assert look.signalled("danger: hot") == look.marked("danger", "hot")
    assert look.signalled("no finding: hot") == look.marked("none", "hot")
    assert look.signalled("47 other checks: no finding") == "47 other checks: no finding"
    assert look.signalled("warnings: 2") == "warnings: 2"
