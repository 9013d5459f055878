"""The explorer's files: installations to save and load, rankings to save and compare."""

from __future__ import annotations

import os
from collections.abc import Callable
from typing import TYPE_CHECKING, Any

import ipywidgets as widgets

from heatmatch import _library as _core
from heatmatch.errors import Error
from heatmatch.explorer.tables import panel as styled
from heatmatch.io import rankings
from heatmatch.text.comparison import comparison_html
from heatmatch.text.forms import paragraphs

if TYPE_CHECKING:
    from heatmatch.explorer.panel import ExplorerPanel

_HOW = (
    "Save installation: your choices and the selected circuit as a file. Use it next time, on "
    "the command line or for a report. Load: start from such a file.",
    "Save ranking: the present ranking as a file. Compare: the change of every pairing since then.",
)


class FileRow:
    """Names of two files, with buttons for each."""

    def __init__(self, panel: ExplorerPanel) -> None:
        self.panel = panel
        self.comparison = ""
        self._asked = ""
        self.installation = self._name("installation", "my_place.json")
        self.ranking = self._name("ranking", "my_ranking.json")
        self.box = widgets.VBox(
            [
                widgets.HBox(
                    [
                        self.installation,
                        self._button("save installation", self.save),
                        self._button("load installation", self.load),
                    ]
                ),
                widgets.HBox(
                    [
                        self.ranking,
                        self._button("save ranking", self.save_ranking),
                        self._button("compare with ranking", self.compare),
                    ]
                ),
            ],
            layout={"display": "none"},
        )

    @staticmethod
    def _name(title: str, value: str) -> Any:
        return widgets.Text(
            value=value,
            description=title,
            style={"description_width": "6em"},
            layout={"width": "34em"},
        )

    def _button(self, title: str, work: Callable[[], None]) -> Any:
        button = widgets.Button(description=title, layout={"width": "13em"})

        def press(_: object) -> None:
            try:
                work()
            except Error as error:
                self.panel.say(str(error), wrong=True)

        button.on_click(press)
        return button

    def html(self) -> str:
        """Result of the buttons, and the requested comparison."""
        return styled(paragraphs(_HOW) + self.comparison)

    def _may_write(self, what: str, path: str) -> bool:
        """Whether the file is new, or the same press came twice."""
        asked, self._asked = self._asked, ""
        if not os.path.exists(path) or asked == f"{what} {path}":
            return True
        self._asked = f"{what} {path}"
        self.panel.say(f"{path} exists; press again to overwrite it.", wrong=True)
        return False

    def save(self) -> None:
        """Writes the choice and its circuit as an installation file."""
        candidate = self.panel.candidate
        path = self.installation.value.strip()
        if candidate is None:
            self.panel.say("There is no circuit to save.", wrong=True)
        elif self.panel.failed:
            self.panel.say("The controls show what is wrong; correct that first.", wrong=True)
        elif self._may_write("installation", path):
            made = self.panel.bench.saved(self.panel.choice, candidate)
            made.to_json(path, force=True)
            danger = candidate.severity == "danger"
            told = f" {_core.margin_sentence(candidate)}" if danger else ""
            self.panel.say(f"Saved {path} with {candidate.circuit.title} as its circuit.{told}")

    def load(self) -> None:
        """Restart with an installation file."""
        path = self.installation.value.strip()
        given = self.panel.bench.given_weather
        self.panel.restart(_core.Installation.from_json(path))
        left = given is not None and self.panel.bench.given_weather is None
        told = " The given weather data are for another site and were removed." if left else ""
        self.panel.say(f"Loaded {path}.{told}")

    def save_ranking(self) -> None:
        """Write the ranking shown, with up to two hundred candidates."""
        path = self.ranking.value.strip()
        if self._may_write("ranking", path):
            whole = self.panel.bench.rank(self.panel.choice, top=200, keep_rejected=2000)
            rankings.save_ranking(whole, path, force=True)
            self.panel.say(f"Saved {path}: {len(whole)} candidates.")

    def compare(self) -> None:
        """Show the change of every pairing of a saved ranking."""
        path = self.ranking.value.strip()
        before = rankings.load_ranking(path)
        now = self.panel.bench.rank(self.panel.choice, top=200, keep_rejected=2000)
        after = rankings.SavedRanking.of(now, "the present choice")
        self.comparison = comparison_html(rankings.compare_rankings(before, after))
        self.panel.shown.value = self.html()
        self.panel.say(f"Compared with {path}.")
