"""The browser that pages are looked at with."""

from __future__ import annotations

import os
import shutil

import pytest


def chromium_path() -> str:
    """Path of Chromium: HEATMATCH_CHROMIUM, or found on the path."""
    named = os.environ.get("HEATMATCH_CHROMIUM")
    for name in (named, "chromium", "chromium-browser", "google-chrome"):
        found = shutil.which(name) if name else None
        if found:
            return found
    pytest.fail(
        "no Chromium: install it (apt-get install chromium), or name it in HEATMATCH_CHROMIUM"
    )
