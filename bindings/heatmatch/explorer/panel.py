"""The explorer's panel: controls on the left; ranking, pictures and margins on the right."""

from __future__ import annotations

import asyncio
from collections.abc import Callable
from typing import Any

import ipywidgets as widgets

from heatmatch import _library as _core
from heatmatch.errors import Error
from heatmatch.explorer import tables
from heatmatch.explorer.choice import Choice, Workbench, row_of
from heatmatch.explorer.controls import Controls
from heatmatch.explorer.files import FileRow
from heatmatch.explorer.pictures import PICTURES, Shown, picture_html
from heatmatch.explorer.tables import Kept
from heatmatch.text.plain import escape
from heatmatch.text.table import texts

_DRAW_AFTER_S = 0.08
_MOST_KEPT = 6
BEST = "the recommended one"
# JupyterLab handles arrow keys and letters itself, unless the focused element prevents it. A click
# on a row of the table selects it in the list beside it, which also works by the keyboard.
_SCRIPT = """<script>
document.addEventListener("focusin", event => {
  if (event.target.closest(".hm-explorer"))
    event.target.setAttribute("data-lm-suppress-shortcuts", "true");
});
document.addEventListener("click", event => {
  const row = event.target.closest(".hm-explorer .hm-rows tbody tr");
  const list = row && row.closest(".hm-explorer").querySelector(".hm-pick select");
  if (!list) return;
  list.selectedIndex = 1 + [...row.parentNode.children].indexOf(row);
  list.dispatchEvent(new Event("change", {bubbles: true}));
});
</script>"""
VIEWS = ("picture", "margins", "kept", "files")


class ExplorerPanel:
    """An installation with controls for what may be chosen; ``hm.explore`` makes it.

    Attributes
    ----------
    box : ipywidgets.VBox
        All of it, for a layout of one's own.
    choice : Choice
        What is shown: what the controls said when that could last be computed.
    failed : bool
        Whether the controls say something else, which cannot be.
    ranking : Ranking
        What is left by the choice.
    candidate : Candidate
        The one that pictures and margins are of.
    kept : list of Kept
        Choices kept for comparison.
    """

    def __init__(
        self,
        catalog: _core.Catalog,
        installation: _core.Installation,
        weather: _core.Weather | None = None,
        *,
        units: str = "si",
    ) -> None:
        self.units = units
        self.failed = False
        self.kept: list[Kept] = []
        self._timer: asyncio.TimerHandle | None = None
        self.box = widgets.VBox()
        self.box.add_class("hm-explorer")
        self._begin(Workbench(catalog, installation, weather))

    def _begin(self, bench: Workbench) -> None:
        """Fills the panel for a workbench."""
        self.bench = bench
        self.choice = bench.start
        self.ranking = bench.rank(self.choice)
        self.candidate = _first(self.ranking)
        self.controls = Controls(bench, bench.elements())
        self.controls.changed = self.update
        self.files = FileRow(self)
        self._make_views()
        controls = self.controls.box()
        controls.add_class("hm-controls")
        views = widgets.HBox(
            [self.view, self.picture, self.keep, self.let_go], layout={"flex_flow": "row wrap"}
        )
        below = widgets.VBox([self.look_at, views, self.files.box, self.shown, self.status])
        below.add_class("hm-below")
        results = widgets.VBox([self.answer, self.table, below])
        results.add_class("hm-results")
        columns = widgets.HBox([controls, results])
        columns.add_class("hm-columns")
        self.box.children = (widgets.HTML(tables.STYLE + tables.LIVE), columns)
        self._show(self.choice, self.ranking)

    def _make_views(self) -> None:
        self.answer = widgets.HTML()
        self.status = widgets.HTML()
        self.table = widgets.HTML()
        self.answer.add_class("hm-first")
        self.table.add_class("hm-list")
        self.shown = widgets.HTML()
        wide = {"width": "40em"}
        style = {"description_width": "6em"}
        self.look_at = widgets.Dropdown(
            description="show", options=[(BEST, ())], style=style, layout=wide
        )
        self.look_at.add_class("hm-pick")
        self.shown.add_class("hm-shown")
        self.view = widgets.ToggleButtons(options=VIEWS, value="picture")
        self.view.style.button_width = "6em"
        self.picture = widgets.Dropdown(
            options=list(PICTURES), description="picture", layout={"width": "24em"}
        )
        self.keep = widgets.Button(description="keep this choice")
        self.let_go = widgets.Button(description="remove last")
        self._looked = lambda change: self._look()
        self.look_at.observe(self._looked, "value")
        self.view.observe(lambda change: self._draw(), "value")
        self.picture.observe(lambda change: self._draw(), "value")
        self.keep.on_click(lambda button: self._keep())
        self.let_go.on_click(lambda button: self._let_go())

    def update(self) -> None:
        """Rank with the setting of the controls and show it; errors are shown, the rest remains."""
        self.failed = True
        try:
            choice = self.controls.choice()
            ranking = self.bench.rank(choice)
        except Error as error:
            self.say(f"{error}. The previous result is shown.", wrong=True)
            return
        self.failed = False
        self._show(choice, ranking)

    def _show(self, choice: Choice, ranking: _core.Ranking) -> None:
        self.choice, self.ranking = choice, ranking
        self._list_candidates()
        self._look()

    def _list_candidates(self) -> None:
        """Candidates to select; the present one remains selected if it is still there."""
        options: list[tuple[str, tuple[str, ...]]] = [(BEST, ())]
        for place, one in enumerate(self.ranking, 1):
            options.append((tables.candidate_title(f"{place}", one), row_of(one)))
        for one in self.ranking.rejected:
            options.append((tables.candidate_title("rejected:", one), row_of(one)))
        wanted = self.look_at.value
        if options != list(self.look_at.options):
            # Only our own listener is suspended: the widget needs its own for a consistent state.
            self.look_at.unobserve(self._looked, "value")
            self.look_at.options = options
            self.look_at.value = wanted if wanted in [key for _, key in options] else ()
            self.look_at.observe(self._looked, "value")

    def _look(self) -> None:
        """Select a candidate, and show its results."""
        wanted = self.look_at.value
        everyone = [*self.ranking, *self.ranking.rejected]
        found = [one for one in everyone if row_of(one) == wanted]
        self.candidate = found[0] if found else _first(self.ranking)
        self.table.value = tables.ranking_html(self.ranking, self.units, self.candidate)
        self.answer.value = tables.answer_html(
            self.ranking, found[0] if found else None, self.units
        )
        if self.candidate is None:
            self.say("No pairing fits; relax panels, element or bank.", wrong=True)
        else:
            title = tables.candidate_title("", self.candidate).strip()
            said = [*_core.verdict(self.candidate), _core.nearest_sentence(self.candidate)]
            below = tables.unchecked_html(self.candidate, self.units)
            self.say(" ".join([f"{title}.", *texts(said, self.units)]), below=below)
        self._later(self._draw)

    def _draw(self) -> None:
        """Show the chosen view of the candidate; on an error the old view is removed.

        Errors of the user's data are shown as text; other errors are raised.
        """
        try:
            self._draw_view()
        except Error as error:
            self.shown.value = tables.panel(f"<p>not drawn: {escape(str(error))}</p>")
        except BaseException:
            self.shown.value = ""
            raise

    def _draw_view(self) -> None:
        view = self.view.value
        self.picture.disabled = view != "picture"
        self.files.box.layout.display = "" if view == "files" else "none"
        if view == "kept":
            self.shown.value = tables.kept_html(self.kept, self.units)
        elif view == "files":
            self.shown.value = self.files.html()
        elif self.candidate is None:
            self.shown.value = ""
        elif view == "margins":
            self.shown.value = tables.margins_html(self.candidate, self.units)
        else:
            self._draw_picture(self.candidate)

    def _draw_picture(self, candidate: _core.Candidate) -> None:
        self.shown.value = picture_html(
            self.picture.value,
            Shown(self.bench, self.choice, self.ranking, candidate, self.units),
        )

    def _later(self, work: Callable[[], None]) -> None:
        """Run it after the last change: tables follow at once, pictures after a pause."""
        try:
            loop = asyncio.get_running_loop()
        except RuntimeError:
            work()
            return
        if self._timer is not None:
            self._timer.cancel()
        self._timer = loop.call_later(_DRAW_AFTER_S, work)

    def _keep(self) -> None:
        if self.candidate is None:
            return
        if len(self.kept) >= _MOST_KEPT:
            self.say(f"{_MOST_KEPT} choices are kept; remove the last one first.", wrong=True)
            return
        number = 1 + max((int(one.name.split()[1]) for one in self.kept), default=0)
        place = str(self.bench.plain.get("name", ""))
        self.kept.append(Kept(f"choice {number}", place, self.choice, self.candidate))
        self.say(f"Kept as choice {number}; “kept” shows them side by side.")
        self._draw()

    def _let_go(self) -> None:
        if self.kept:
            self.say(f"Removed {self.kept.pop().name}.")
            self._draw()

    def say(self, text: str, *, wrong: bool = False, below: str = "") -> None:
        """One line with the result or the error, and HTML shown under it."""
        mark = "<b>not possible:</b> " if wrong else ""
        line = f'<p class="hm-small">{mark}{escape(text)}</p>'
        # A message is above the controls of the views; the standing result is below them.
        self.status.layout.order = "1" if below else "-1"
        self.status.value = tables.panel(f"{line}{below}")

    def restart(self, installation: _core.Installation) -> None:
        """Restart with another installation; kept choices remain.

        Given weather belongs to its site: it is dropped for another one.

        Raises
        ------
        Error
            It cannot be ranked; the panel is unchanged.
        """
        weather = self.bench.given_weather
        same = installation.to_dict()["site"] == self.bench.plain["site"]
        bench = Workbench(self.bench.catalog, installation, weather if same else None)
        bench.rank(bench.start, top=1, keep_rejected=1)
        self.failed = False
        self._begin(bench)

    def static_html(self) -> str:
        """Answer, table and picture as they are now, for a notebook that is only read."""
        if not self.shown.value:
            self._draw()
        parts = [tables.STYLE, self.answer.value, self.table.value, self.shown.value]
        return f'<div class="hm-explorer hm-static">{"".join(parts)}</div>'

    def _ipython_display_(self) -> None:
        from IPython.display import HTML, display

        display(self.box._repr_mimebundle_(), raw=True)  # type: ignore[no-untyped-call]
        # An exported notebook, which has no widgets, shows the static form; the widgets hide it.
        display(HTML(self.static_html()))  # type: ignore[no-untyped-call]
        display(HTML(_SCRIPT))  # type: ignore[no-untyped-call]


def _first(ranking: _core.Ranking) -> Any:
    """The recommended candidate, else the best, else the best rejected one, or None."""
    return ranking.recommended or next(iter([*ranking, *ranking.rejected]), None)
