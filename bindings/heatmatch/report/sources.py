"""The entries of the bibliography that a report cites."""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Any

from heatmatch.io import frames


def cited_sources(texts: Iterable[str]) -> list[tuple[str, str]]:
    """The entries of the bibliography that the texts name."""
    known = frames.sources()
    named = {key for text in texts for key in re.findall(r"[a-z0-9][a-z0-9-]*", text)}
    return [(key, _cited(known[key])) for key in sorted(named & set(known))]


def _cited(entry: dict[str, Any]) -> str:
    parts = [entry.get(name) for name in ("title", "publisher", "year", "where")]
    seen = entry.get("seen")
    text = ", ".join(str(part) for part in parts if part)
    return f"{text} (seen: {seen})" if seen else text
