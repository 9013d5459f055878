"""Takes a picture of a rendered notebook, from its first table to its first map.

picture.py PAGE.html PICTURE.png; `notebooks/render` calls it.
"""

from __future__ import annotations

import os
import shutil
import sys
from pathlib import Path

from playwright.sync_api import sync_playwright

WIDTH, HEIGHT = 1060, 1830


def main(page_path: str, picture_path: str) -> None:
    """Opens the page from disk and saves what stands below the heading of the ranking."""
    chromium = os.environ.get("HEATMATCH_CHROMIUM") or shutil.which("chromium")
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=chromium, args=["--no-sandbox"])
        page = browser.new_context(offline=True).new_page()
        page.set_viewport_size({"width": WIDTH, "height": HEIGHT})
        page.goto(Path(page_path).resolve().as_uri())
        top = page.locator("#The-ranking").bounding_box()
        if top is None:
            sys.exit(f"{page_path}: no heading of the ranking")
        area = {"x": 0, "y": top["y"] - 10, "width": WIDTH, "height": HEIGHT}
        page.screenshot(path=picture_path, clip=area, full_page=True)
        browser.close()


if __name__ == "__main__":
    main(*sys.argv[1:])
