"""The look of every face: signals by severity, sizes of type, colors.

Text, HTML, report, explorer and plots use the colors, marks and sizes of this module alone. A
signal has a color, a word and a mark, so that it is seen in black and white too. Signal colors are
those of ISO 3864 and ANSI Z535 (from memory) and are used for severities only.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from heatmatch import _library as _core
from heatmatch.text.plain import escape


@dataclass(frozen=True)
class Signal:
    """How one severity is shown."""

    severity: str
    fill: str
    ink: str  #: of text on the fill
    edge: str
    hatch: str | None  #: of a bar, where a color may not be seen

    @property
    def mark(self) -> str:
        """Its mark: a triangle from a warning on."""
        return _core.severity_mark(self.severity)

    @property
    def word(self) -> str:
        """Its word; danger is in capitals."""
        words = {"danger": "DANGER", "none": "no finding"}
        return words.get(self.severity, self.severity)


WHITE, BLACK = "#ffffff", "#000000"
# In greyscale each is lighter than the one before.
SIGNALS: dict[str, Signal] = {
    "danger": Signal("danger", "#c8102e", WHITE, "#6f0919", "xxx"),
    "warning": Signal("warning", "#ff8200", BLACK, "#7a3f00", "///"),
    "caution": Signal("caution", "#ffd100", BLACK, "#6b5800", "..."),
    "not assessed": Signal("not assessed", "#e8e8e8", BLACK, "#595959", None),
    "none": Signal("none", WHITE, "#404040", "#a6a6a6", None),
}

# Colors of a terminal; the word itself is always printed. A danger is white on red.
TERMINAL = {"danger": "1;37;41", "warning": "33", "caution": "36", "not assessed": "35"}

INK, MUTED, RULE, FAINT, PAPER = "#111111", "#595959", "#a6a6a6", "#ebebeb", WHITE
# Series of data, dark to light; in black and white line styles distinguish them too.
SERIES = ("#14273d", "#2f5478", "#5f87ab", "#98b6d0", "#cfdfeb")
HEAT = "#00665e"  # the load, and what it heats
PALEST = "#f4f8fb"

# Sizes of type in plots [pt]; pages have the same three in proportion.
SMALL, TEXT, HEAD = 7.5, 9.0, 12.0
FONT = 'system-ui, "Segoe UI", "DejaVu Sans", Helvetica, Arial, sans-serif'

# Colors of a page on a dark screen.
DARK = {
    "ink": "#e8e8e8", "muted": "#b0b0b0", "rule": "#6a6a6a", "faint": "#2c2c2c", "paper": "#161616"
}  # fmt: skip
LIGHT = {"ink": INK, "muted": MUTED, "rule": RULE, "faint": FAINT, "paper": PAPER}


def marked(severity: str | None, text: str) -> str:
    """A line of text with mark and word of its severity, if it has one."""
    if severity is None:
        return text
    signal = SIGNALS[severity]
    return f"{signal.mark} {signal.word}: {text}"


def signalled(text: str) -> str:
    """A line that begins with the word of a severity and a colon, with its mark and word."""
    for severity, signal in SIGNALS.items():
        lead = "no finding:" if severity == "none" else f"{severity}:"
        if text.startswith(lead):
            return f"{signal.mark} {signal.word}:{text[len(lead) :]}"
    return text


def _signal_style(signal: Signal) -> str:
    edge = "dashed" if signal.severity == "not assessed" else "solid"
    return (
        f"background:{signal.fill};color:{signal.ink};border:1px {edge} {signal.edge};"
        "print-color-adjust:exact;-webkit-print-color-adjust:exact"
    )


def chip(severity: str) -> str:
    """Mark and word of a severity on its color, as HTML that needs no style sheet."""
    signal = SIGNALS[severity]
    bold = "font-weight:700;" if severity in ("danger", "warning") else ""
    return (
        f'<span style="{_signal_style(signal)};{bold}padding:0 .4em;border-radius:2px;'
        f'white-space:nowrap">{signal.mark} {signal.word}</span>'
    )


def band(severity: str | None, text: str) -> str:
    """The line of a status across the page: as heavy as its severity."""
    if severity is None:
        return f'<p style="margin:.2em 0 .5em"><b>{escape(text)}</b></p>'
    signal = SIGNALS[severity]
    size = "1.35em" if severity == "danger" else "1.1em"
    return (
        f'<p style="{_signal_style(signal)};border-width:2px;padding:.35em .7em;margin:.2em 0 .6em;'
        f'font-size:{size};font-weight:700;text-align:left">'
        f"{signal.mark} {signal.word}: {escape(text)}</p>"
    )


def line(severity: str | None, text: str) -> str:
    """A paragraph that begins with the chip of its severity, if it has one."""
    lead = "" if severity is None else f"{chip(severity)} "
    return f'<p style="margin:.15em 0;text-align:left">{lead}{escape(text)}</p>'


def variables(colors: dict[str, str]) -> str:
    """Colors of a page as variables of its style sheet."""
    return " ".join(f"--{name}: {color};" for name, color in colors.items())


def plot_signal(severity: str) -> dict[str, Any]:
    """Face, edge and hatch of a bar or marker in a plot."""
    signal = SIGNALS[severity]
    return {"facecolor": signal.fill, "edgecolor": signal.edge, "hatch": signal.hatch}


def ink_on(background: tuple[float, ...]) -> str:
    """The text color of higher contrast on a background of these shares of red, green and blue."""
    light = luminance(background) + 0.05
    return WHITE if 1.05 / light > light / (luminance(shares(SERIES[0])) + 0.05) else SERIES[0]


def shares(color: str) -> tuple[float, ...]:
    """Shares of red, green and blue of a color of this module."""
    return tuple(int(color[i : i + 2], 16) / 255.0 for i in (1, 3, 5))


def luminance(color: tuple[float, ...]) -> float:
    """Relative luminance as in WCAG 2.2 (from memory)."""
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in color[:3]]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]
