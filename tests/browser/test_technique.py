"""A technique printed from its page: one or two sheets that can be read, with a code to scan, for any number of people."""

from __future__ import annotations

import re
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest
import zxingcpp
from PIL import Image
from playwright.sync_api import Page

from tinbook.loading import Loaded

pytestmark = pytest.mark.browser

LEAST_PT = 9.0
"""No letter on paper is smaller."""
WIDE_PX = 688
"""A4 between its side margins, 182 mm, at 96 px an inch."""
# The size of each run of letters as printed: of a drawing's, with the scale it is drawn at.
SIZES = """() => {
  const found = [], walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (walk.nextNode()) {
    const holder = walk.currentNode.parentElement, text = walk.currentNode.textContent.trim();
    if (!text || !holder.getClientRects().length || holder.closest("script, style, .md-skip")) continue;
    const drawn = holder.closest("svg") && holder.getScreenCTM ? holder.getScreenCTM().a : 1;
    found.push([Math.round(parseFloat(getComputedStyle(holder).fontSize) * drawn * 75) / 100, text.slice(0, 40)]);
  }
  return found;
}"""


def printed(tab: Page, file: Path) -> int:
    """Print a page on A4; how many sheets."""
    tab.pdf(path=file, format="A4", prefer_css_page_size=True)
    told = subprocess.run(["pdfinfo", str(file)], capture_output=True, text=True, check=True).stdout
    assert "(A4)" in told
    return int(re.findall(r"Pages: +(\d+)", told)[0])


def test_each_is_one_or_two_sheets_that_can_be_read(
    page: Callable[..., Page], demo_url: str, demo: Loaded, tmp_path: Path
) -> None:
    drawn = 0
    for slug in demo.book.techniques:
        tab = page(viewport={"width": WIDE_PX, "height": 1000})
        tab.goto(f"{demo_url}techniques/{slug}/")
        file = tmp_path / f"{slug}.pdf"
        # its parts take one more
        assert printed(tab, file) <= (3 if demo.book.techniques[slug].parts else 2), slug
        tab.emulate_media(media="print")
        sizes = tab.evaluate(SIZES)
        assert [each for each in sizes if each[0] < LEAST_PT] == [], slug
        drawn += tab.locator(".tb-picture svg text").count()
        # and nothing was shrunk to fit: a line of letters stands 1.3 times their size or more in these two fonts
        boxes = subprocess.run(
            ["pdftotext", "-bbox", str(file), "-"], capture_output=True, text=True, check=True
        ).stdout
        # a fraction comes from a font of the machine, which has another height
        words = re.findall(r'yMin="([\d.]+)" xMax="[\d.]+" yMax="([\d.]+)">[\w,.:]+</word>', boxes, re.ASCII)
        heights = [float(low) - float(top) for top, low in words]
        assert min(heights) >= LEAST_PT * 1.3 - 0.1, slug
        # the drawings lie on the sheet and over no words
        assert tab.evaluate("document.scrollingElement.scrollWidth") <= WIDE_PX, slug
    assert drawn > 50


def test_the_code_on_paper_leads_to_the_page(
    page: Callable[..., Page], demo_url: str, demo: Loaded, tmp_path: Path
) -> None:
    # what differs is the address: the shortest and the longest make the least and the largest code
    for slug in sorted(demo.book.techniques, key=len)[:: len(demo.book.techniques) - 1]:
        tab = page(java_script_enabled=False)
        tab.goto(f"{demo_url}techniques/{slug}/")
        assert not tab.locator(".tb-scan").is_visible(), "on the tablet it is of no use"
        printed(tab, tmp_path / "sheet.pdf")
        words = [
            "pdftoppm",
            "-r",
            "150",
            "-l",
            "1",
            "-singlefile",
            "-png",
            str(tmp_path / "sheet.pdf"),
            str(tmp_path / "sheet"),
        ]
        subprocess.run(words, check=True)
        (code,) = zxingcpp.read_barcodes(Image.open(tmp_path / "sheet.png"))
        assert code.text == f"{demo.book.house.address}/techniques/{slug}/"


def test_for_some_people_on_page_and_paper(page: Callable[..., Page], demo_url: str, tmp_path: Path) -> None:
    tab = page()
    tab.goto(f"{demo_url}techniques/cover-a-board/#for?people=4")
    shown = tab.locator("article").inner_text().replace("\N{NO-BREAK SPACE}", " ")
    printed(tab, tmp_path / "sheet.pdf")
    told = subprocess.run(
        ["pdftotext", "-layout", str(tmp_path / "sheet.pdf"), "-"], capture_output=True, text=True, check=True
    )
    paper = " ".join(told.stdout.replace("\N{NO-BREAK SPACE}", " ").split())
    # 4 × 350 g; the rolling pin is shared, the smoother is not
    for words in ("1400 g", "4 × icing smoother", "4 people"):
        assert words in " ".join(shown.split()) and words in paper, words
    assert "4 × rolling pin" not in paper


def test_amounts_in_steps_follow_the_measure(page: Callable[..., Page], demo_url: str) -> None:
    tab = page()
    tab.goto(f"{demo_url}techniques/line-a-tin/")
    amount = tab.locator(".tb-do b[data-line]").first
    told = []
    for button in tab.locator(".tb-measure .tb-switch button").all():
        button.click()
        told.append(amount.inner_text().replace("\N{NO-BREAK SPACE}", " "))
    # 5 g of butter: 0.176 oz, and 14.2 g a US tablespoon (227 g a cup of 16)
    assert told == ["5 g", "⅛ oz", "1 tsp"]
