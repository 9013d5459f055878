"""Reads a report: its text in each unit set, its tags and addresses."""

from __future__ import annotations

from html.parser import HTMLParser
from pathlib import Path

VOID = {"meta", "img", "input", "br"}


class Page(HTMLParser):
    """A page's text in each unit set, its tags and addresses; fails on tags that do not match."""

    def __init__(self, text: str) -> None:
        super().__init__(convert_charrefs=True)
        self.open: list[tuple[str, str]] = []
        self.tags: list[str] = []
        self.addresses: list[str] = []
        self.said: dict[str, list[str]] = {"si": [], "us": []}
        self.feed(text)
        self.close()
        assert self.open == []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append(tag)
        plain = dict(attrs)
        assert not any(name.startswith("on") for name in plain)
        self.addresses += [plain[name] or "" for name in ("src", "href") if name in plain]
        if tag not in VOID:
            self.open.append((tag, plain.get("class") or ""))

    def handle_endtag(self, tag: str) -> None:
        opened = self.open.pop()
        assert opened[0] == tag

    def handle_data(self, data: str) -> None:
        shown = {kind for _, kind in self.open if kind in ("si", "us")}
        for units in shown or {"si", "us"}:
            self.said[units].append(data)

    def text(self, units: str) -> str:
        return " ".join(" ".join(self.said[units]).split())


def read(path: Path) -> Page:
    return Page(path.read_text(encoding="utf-8"))
