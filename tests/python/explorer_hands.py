"""Hands and eyes for the explorer: what is read on it, and pressing its buttons."""

from __future__ import annotations

import re
from typing import Any


def words(html: str) -> str:
    return " ".join(re.sub("<[^>]*>", " ", html).split())


def heat_of(panel: Any) -> float:
    return float(panel.candidate.season.kwh)


def press(panel: Any, title: str) -> None:
    """Press the button with that title, wherever it is."""
    buttons = [panel.keep, panel.let_go]
    for row in panel.files.box.children:
        buttons += [child for child in row.children if hasattr(child, "click")]
    next(button for button in buttons if button.description == title).click()
