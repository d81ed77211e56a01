"""Takes the screens of the demo book into site_demo/screens: `python site_demo/screens.py`, or those named after it.

It builds the book, serves it to a real Chromium and needs what the tests need (`pip install -e ".[test]"`, Chromium,
poppler for the printed page).
"""

from __future__ import annotations

import functools
import http.server
import shutil
import subprocess
import sys
import tempfile
import threading
from pathlib import Path

from PIL import Image
from playwright.sync_api import Browser, sync_playwright

HERE = Path(__file__).parent
SCREENS = HERE / "screens"
TABLET, UPRIGHT, PHONE = (1180, 820), (820, 1180), (390, 844)
LOOKED_AT = (
    # name, page, size, look, what to touch first
    ("home", "", UPRIGHT, "default", ()),
    ("bench", "mixtures/creamed-butter-sponge/", UPRIGHT, "default", ('[data-tin="round 20 cm"]',)),
    ("bench-dark", "mixtures/mud-cake/", UPRIGHT, "slate", ('[data-tin="square 20 cm"]',)),
    ("bench-phone", "mixtures/creamed-butter-sponge/", PHONE, "default", ()),
    ("tins", "tins/#for?from=round 20 cm&to=square 25 cm", TABLET, "default", ()),
    ("measures", "measures/", TABLET, "default", ()),
    ("ingredients-phone", "ingredients/", PHONE, "default", ()),
    ("technique", "techniques/stack-two-tiers/", UPRIGHT, "default", ()),
    ("layers", "mixtures/creamed-butter-sponge/#layers", UPRIGHT, "default", ()),
    ("layers-phone", "mixtures/creamed-butter-sponge/#layers", PHONE, "default", ()),
    ("coats", "mixtures/dark-ganache/#for-every-cake", TABLET, "default", ()),
    ("coats-phone", "mixtures/dark-ganache/#for-every-cake", PHONE, "default", ()),
    ("pastes", "mixtures/marzipan/#for-every-cake", TABLET, "default", ()),
    ("covering", "covering/", TABLET, "default", ()),
    ("covering-phone", "covering/", PHONE, "default", ()),
    ("boards", "boards/", UPRIGHT, "default", ()),
    ("portions", "portions/", UPRIGHT, "default", ()),
    ("portion-charts", "portions/#portions-against-size", TABLET, "default", ()),
    ("cuts", "portions/round/#round-20-cm-dessert", TABLET, "default", ()),
    ("cuts-phone", "portions/heart/#heart-20-cm-dessert", PHONE, "default", ()),
    ("guests", "guests/", TABLET, "default", ()),
    ("guests-phone", "guests/", PHONE, "default", ()),
    ("boards-phone", "boards/", PHONE, "default", ()),
    ("oven", "oven/", UPRIGHT, "default", ()),
    ("oven-phone", "oven/", PHONE, "default", ()),
    ("parts", "techniques/lighthouse-for-the-front/#parts", UPRIGHT, "default", ()),
    ("colours", "colours/", TABLET, "default", ()),
)
PRINTED = (
    ("paper", "mixtures/creamed-butter-sponge/"),
    ("covering-paper", "covering/"),
    ("boards-paper", "boards/"),
    ("cuts-paper", "portions/round/#round-18-cm-dessert"),
)


class Quiet(http.server.SimpleHTTPRequestHandler):
    """Serves without a word."""

    def log_message(self, *_: object) -> None:
        """Say nothing."""


def chromium_path() -> str | None:
    """A Chromium of the system; None leaves the choice to Playwright."""
    return next(filter(None, map(shutil.which, ("chromium", "chromium-browser", "google-chrome"))), None)


def keep(png: bytes | Path, name: str) -> None:
    """A picture as WebP, small enough to be tracked."""
    with tempfile.TemporaryDirectory() as folder:
        path = png if isinstance(png, Path) else Path(folder, "x.png")
        if isinstance(png, bytes):
            path.write_bytes(png)
        Image.open(path).convert("RGB").save(SCREENS / f"{name}.webp", quality=80, method=6)
    print(f"  {name}.webp")


def shoot(browser: Browser, base: str, asked: list[str]) -> None:
    """The screens `asked` for, or all of them, then the printed pages."""
    for name, page, (width, height), look, touched in LOOKED_AT:
        if asked and name not in asked:
            continue
        tab = browser.new_page(viewport={"width": width, "height": height})
        tab.goto(base + page)
        tab.evaluate("look => document.body.setAttribute('data-md-color-scheme', look)", look)
        for part in touched:
            tab.click(part)
        tab.wait_for_timeout(300)
        keep(tab.screenshot(), name)
        tab.close()
    for name, page in PRINTED:
        if asked and name not in asked:
            continue
        tab = browser.new_page()
        tab.goto(base + page)
        with tempfile.TemporaryDirectory() as folder:
            tab.pdf(path=f"{folder}/x.pdf", format="A4", prefer_css_page_size=True)
            subprocess.run(["pdftoppm", "-r", "80", "-singlefile", "-png", "x.pdf", "x"], cwd=folder, check=True)
            keep(Path(folder, "x.png"), name)
        tab.close()


def main() -> None:
    """Build, serve, shoot."""
    subprocess.run([sys.executable, "-m", "mkdocs", "build", "--quiet", "--strict"], cwd=HERE.parent, check=True)
    SCREENS.mkdir(exist_ok=True)
    handler = functools.partial(Quiet, directory=str(HERE / "book"))
    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    with sync_playwright() as play:
        browser = play.chromium.launch(executable_path=chromium_path(), args=["--no-sandbox", "--disable-gpu"])
        shoot(browser, f"http://127.0.0.1:{server.server_port}/", sys.argv[1:])
        browser.close()


if __name__ == "__main__":
    main()
