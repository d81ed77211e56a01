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
ASKED = "lighthose 20"
"""What is asked of Find: with a slip, and a tin."""
SCREENS = HERE / "screens"
TABLET, UPRIGHT, PHONE = (1180, 820), (820, 1180), (390, 844)
LOOKED_AT = (
    # name, page, size, look, what to touch first
    ("home", "", UPRIGHT, "light", ()),
    ("bench", "mixtures/creamed-butter-sponge/", TABLET, "light", ('[data-tin="round 20 cm"]',)),
    ("bench-upright", "mixtures/rich-fruit-cake/", UPRIGHT, "light", ()),
    ("bench-dark", "mixtures/mud-cake/", UPRIGHT, "dark", ('[data-tin="square 20 cm"]',)),
    ("bench-contrast", "mixtures/creamed-butter-sponge/", TABLET, "contrast", ('[data-tin="round 23 cm"]',)),
    ("tables", "mixtures/creamed-butter-sponge/tables/", TABLET, "light", ()),
    ("find", "", TABLET, "light", (".tb-find",)),
    ("find-phone", "", PHONE, "light", (".tb-find",)),
    ("bench-phone", "mixtures/creamed-butter-sponge/", PHONE, "light", ()),
    ("tins", "tins/#for?from=round 20 cm&to=square 25 cm", TABLET, "light", ()),
    ("measures", "measures/", TABLET, "light", ()),
    ("ingredients-phone", "ingredients/", PHONE, "light", ()),
    ("technique", "techniques/stack-two-tiers/", UPRIGHT, "light", ()),
    ("layers", "mixtures/creamed-butter-sponge/tables/#layers", UPRIGHT, "light", ()),
    ("layers-phone", "mixtures/creamed-butter-sponge/tables/#layers", PHONE, "light", ()),
    ("coats", "mixtures/dark-ganache/tables/#coats", TABLET, "light", ()),
    ("coats-phone", "mixtures/dark-ganache/tables/#coats", PHONE, "light", ()),
    ("pastes", "mixtures/marzipan/tables/#pastes", TABLET, "light", ()),
    ("covering", "covering/", TABLET, "light", ()),
    ("covering-phone", "covering/", PHONE, "light", ()),
    ("boards", "boards/", UPRIGHT, "light", ()),
    ("portions", "portions/", UPRIGHT, "light", ()),
    ("portion-charts", "portions/#portions-against-size", TABLET, "light", ()),
    ("cuts", "portions/round/#round-20-cm-dessert", TABLET, "light", ()),
    ("cuts-phone", "portions/heart/#heart-20-cm-dessert", PHONE, "light", ()),
    ("guests", "guests/", TABLET, "light", ()),
    ("guests-phone", "guests/", PHONE, "light", ()),
    ("boards-phone", "boards/", PHONE, "light", ()),
    ("oven", "oven/", UPRIGHT, "light", ()),
    ("oven-phone", "oven/", PHONE, "light", ()),
    ("parts", "techniques/lighthouse-for-the-front/#parts", UPRIGHT, "light", ()),
    ("colours", "colours/", TABLET, "light", ()),
    ("cake", "cakes/estuary-wedding-cake/", TABLET, "light", ()),
    ("cake-upright", "cakes/pier-cake/", UPRIGHT, "light", ()),
    ("cake-phone", "cakes/sea-garden-cups/", PHONE, "light", ()),
    ("cake-making", "cakes/pier-cake/making/", TABLET, "light", ()),
    ("cake-used", "cakes/lighthouse-cake/used/", UPRIGHT, "light", ()),
)
PRINTED = (
    ("paper", "mixtures/creamed-butter-sponge/"),
    ("tables-paper", "mixtures/creamed-butter-sponge/tables/"),
    ("covering-paper", "covering/"),
    ("boards-paper", "boards/"),
    ("cake-paper", "cakes/estuary-wedding-cake/"),
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
        contrast, colours = ("more", "light") if look == "contrast" else ("no-preference", look)
        size = {"width": width, "height": height}
        tab = browser.new_page(viewport=size, contrast=contrast, color_scheme=colours)
        tab.goto(base + page)
        for part in touched:
            tab.click(part)
        if ".tb-find" in touched:
            tab.wait_for_selector(".tb-mean a")
            tab.fill("#tb-asked", ASKED)
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
