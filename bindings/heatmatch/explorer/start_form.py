"""The questions of a new installation as a form of controls in a notebook."""

from __future__ import annotations

from typing import Any

import ipywidgets as widgets

from heatmatch import _library as _core
from heatmatch.text import look
from heatmatch.text.plain import escape
from heatmatch.text.units import told

_WIDE = {"width": "46em"}
_MARK = look.SIGNALS["danger"].mark


class _Entry:
    """One question: its text, a field, and how the answer was read."""

    def __init__(self, question: dict[str, Any], units: str) -> None:
        self.kind: str = question["kind"]
        self.repeats: bool = question["repeats"]
        ask = escape(told(question["ask"], units))
        self.field = (widgets.Textarea if self.repeats else widgets.Text)(
            placeholder=question["example"],
            continuous_update=False,
            layout=_WIDE | ({"height": "4.5em"} if self.repeats else {}),
            tooltip=told(question["ask"], units),
        )
        self.said = widgets.HTML()
        self.box = widgets.VBox([widgets.HTML(f"<b>{ask}</b>"), self.field, self.said])

    def answers(self) -> list[tuple[str, str]]:
        """The answers of the field: one, or one in each line."""
        lines = self.field.value.splitlines() if self.repeats else [self.field.value]
        return [(self.kind, line) for line in lines if line.strip()]


class StartForm:
    """The questions of a new installation; ``hm.start`` makes it.

    Every answer is checked when it is changed.

    Attributes
    ----------
    box : ipywidgets.VBox
        All of it, for a layout of one's own.
    """

    def __init__(self, catalog: _core.Catalog, *, units: str = "si") -> None:
        self._catalog = catalog
        self._units = units
        self._entries = [_Entry(one, units) for one in _core.questions(units=units)]
        self._assumed = widgets.HTML()
        self._accepted: list[tuple[str, str]] = []
        self.box = widgets.VBox([*(entry.box for entry in self._entries), self._assumed])
        for entry in self._entries:
            entry.field.observe(lambda change: self._read(), "value")
        self._read()

    @property
    def accepted(self) -> dict[str, list[str]]:
        """Accepted answers by question."""
        found: dict[str, list[str]] = {}
        for kind, text in self._accepted:
            found.setdefault(kind, []).append(text)
        return found

    @property
    def installation(self) -> _core.Installation:
        """Installation of the accepted answers; an answer that was not accepted counts as open."""
        made: _core.Installation = self._made()[0]
        return made

    @property
    def assumed(self) -> list[str]:
        """Assumptions for what was not answered, in words."""
        return [told(sentence, self._units) for sentence in self._made()[1]]

    def answer(self, kind: str, text: str) -> None:
        """Write an answer into the field of a question."""
        entry = next((one for one in self._entries if one.kind == kind), None)
        if entry is None:
            raise KeyError(f'no question "{kind}"; {", ".join(e.kind for e in self._entries)}')
        entry.field.value = text

    def said(self, kind: str) -> str:
        """How the answer to a question was read, as HTML."""
        return next(str(one.said.value) for one in self._entries if one.kind == kind)

    def _made(self) -> tuple[Any, list[Any]]:
        made, assumed = _core.start_installation(self._catalog, self._accepted, units=self._units)
        return made, assumed

    def _read(self) -> None:
        self._accepted = []
        for entry in self._entries:
            lines = []
            for kind, text in entry.answers():
                accepted, said = _core.understand(
                    self._catalog, self._accepted, kind, text, units=self._units
                )
                if accepted:
                    self._accepted.append((kind, text))
                shown = escape(told(said, self._units))
                lines.append(shown if accepted else f'<span role="alert">{_MARK} {shown}</span>')
            entry.said.value = "<br>".join(lines)
        items = "".join(f"<li>{escape(text)}</li>" for text in self.assumed)
        self._assumed.value = f"<ul>{items}</ul>"

    def _ipython_display_(self) -> None:
        from IPython.display import display

        display(self.box)  # type: ignore[no-untyped-call]
