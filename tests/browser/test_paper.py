"""Paper: a mixture at the bench is one sheet for the chosen tin, the tins are one wall chart. Read back by poppler."""

from __future__ import annotations

import re
import subprocess
from collections.abc import Callable
from itertools import product
from pathlib import Path

import pytest
from playwright.sync_api import Page
from tests.browser.conftest import placed
from tests.every import check_every

from tinbook.loading import Loaded
from tinbook.plans.base.weighing import weigh_all

pytestmark = pytest.mark.browser

FINISHED = {
    True: ("covering/", "boards/", "oven/"),
    False: ("mixtures/dark-ganache/", "mixtures/marzipan/", "mixtures/rich-fruit-cake/"),
}
"""Where a cake's finish is told, with scripts and without."""
LEAST_PT = 9.0
"""No letter on paper is smaller."""


def read(pdf: Path, *options: str) -> str:
    """The words of a PDF, without breaks."""
    run = subprocess.run(["pdftotext", *options, str(pdf), "-"], capture_output=True, text=True, check=True)
    return " ".join(run.stdout.split())


def sheets(pdf: Path) -> list[tuple[float, float]]:
    """Width and height of each page, pt."""
    run = subprocess.run(["pdfinfo", "-l", "99", str(pdf)], capture_output=True, text=True, check=True)
    return [(float(wide), float(high)) for wide, high in re.findall(r"size: +([\d.]+) x ([\d.]+) pts", run.stdout)]


def words(text: str) -> str:
    return " ".join(text.split())


@pytest.fixture
def printed(tmp_path: Path) -> Callable[..., Path]:
    """printed(tab): what its print button gives."""

    def to_pdf(tab: Page, paper: str = "A4") -> Path:
        file = tmp_path / "sheet.pdf"
        tab.pdf(path=file, format=paper, prefer_css_page_size=True)
        return file

    return to_pdf


@pytest.mark.long
def test_a_mixture_is_one_sheet(
    page: Callable[..., Page],
    demo_url: str,
    demo: Loaded,
    printed: Callable[..., Path],
    few: Callable[[str], list[str]],
) -> None:
    tab, lengths = page(viewport={"width": 820, "height": 1180}), {}
    batches = weigh_all(demo.book, demo.facts)
    for slug in few("mixtures/*"):
        batch = batches[slug]
        tab.goto(f"{demo_url}mixtures/{slug}/")
        for more in tab.locator(".tb-chip:not([aria-pressed=true]):visible").all()[:1]:
            more.click()
        cake = tab.locator(".tb-this").inner_text()
        file = printed(tab)
        assert [tuple(map(round, size)) for size in sheets(file)] == [(596, 843)], slug
        text = read(file)
        assert batch.mixture.name in text and words(cake) in text
        # a line is read as its figure, its unit and its name
        lines = tab.locator(".tb-lines li").evaluate_all(
            """lines => lines.map(line => [line.querySelector("b").innerText, line.querySelector(".tb-qty i").innerText,
                line.querySelector(".tb-name").firstChild.textContent])"""
        )
        for figure, unit, name in lines:
            assert words(f"{figure} {unit}") in text, (slug, figure)
            assert words(name) in text, slug
        assert lines
        for step in tab.locator(".tb-do").all_text_contents():
            first = words(step).split(". ")[0]
            assert first[:30] in text, (slug, first)
        for caution in tab.locator(".tb-caution b").all_inner_texts():
            assert words(caution) in text, (slug, caution)
        assert "Contains:" in text or "None of the fourteen" in text
        assert "For every tin" not in text and "By number of eggs" not in text and "Tinbook" not in text
        lengths[slug] = len(text)
        tab.emulate_media(media="print")
        room = placed(tab.locator(".tb-pencil"))
        assert room["height"] >= 30, (slug, room)
        tab.emulate_media(media="null")
    # Letter is 18 mm shorter: only the longest may turn the page
    letters = {}
    for slug in sorted(lengths, key=lambda slug: -lengths[slug])[:3]:
        tab.goto(f"{demo_url}mixtures/{slug}/")
        letters[slug] = len(sheets(printed(tab, "Letter")))
    assert max(letters.values()) <= 2 and sorted(letters.values())[-2] == 1, letters


def test_pencil_notes_are_printed(page: Callable[..., Page], demo_url: str, kinds: dict[str, str], printed: Callable[..., Path]) -> None:  # fmt: skip
    tab = page(viewport={"width": 820, "height": 1180})
    tab.goto(demo_url + kinds["mixture by weight"])
    tab.locator("#tb-pencil").fill("Two drops more of blue.")
    assert "Two drops more of blue." in read(printed(tab))
    tab.reload()
    assert "Two drops more of blue." in read(printed(tab))


def test_without_scripts_everything_is_printed(
    page: Callable[..., Page], demo_url: str, kinds: dict[str, str], printed: Callable[..., Path]
) -> None:
    tab = page(java_script_enabled=False)
    tab.goto(demo_url + kinds["mixture in tins"])
    text = read(printed(tab))
    assert "Contains:" in text and "Notes" in text and "Heat the oven" in text


@pytest.mark.parametrize("paper", ["A4", "Letter"])
@pytest.mark.parametrize(
    ("address", "title", "charts"), [("tins/", "Tins at a glance", 1), ("tins/all/", "All tins", 2)]
)
def test_the_tins_are_a_wall_chart(
    page: Callable[..., Page],
    demo_url: str,
    printed: Callable[..., Path],
    paper: str,
    address: str,
    title: str,
    charts: int,
) -> None:
    """The house's tins on one sheet lying on its side; all tins on two, to rounds and to squares."""
    tab = page(viewport={"width": 820, "height": 1180})
    tab.goto(demo_url + address)
    told = "rows => rows.map(row => [...row.querySelectorAll('td')].map(cell => cell.textContent).join(' '))"
    file = printed(tab, paper)
    (wide, high), *_ = sheets(file)
    assert wide > high
    matrices = tab.locator(".tb-matrix")
    assert matrices.count() == charts
    for place in range(charts):
        rows: list[str] = matrices.nth(place).locator("tbody tr").evaluate_all(told)
        assert len(rows) >= 15
        sheet = read(file, "-f", str(place + 1), "-l", str(place + 1), "-layout")
        for row in rows:
            assert row in sheet, row
    assert title in read(file, "-l", "1", "-layout")


def test_no_letter_on_paper_is_too_small(
    page: Callable[..., Page], demo_url: str, kinds: dict[str, str], printed: Callable[..., Path]
) -> None:
    tab = page(viewport={"width": 820, "height": 1180})
    for kind in (
        "mixture in tins",
        "mixture by weight",
        "tins",
        "measures",
        "covering",
        "oven",
        "boards",
        "portions",
        "guests",
    ):
        tab.goto(demo_url + kinds[kind])
        file = printed(tab)
        run = subprocess.run(["pdftotext", "-bbox-layout", str(file), "-"], capture_output=True, text=True, check=True)
        lines = re.findall(r'<line xMin="[\d.]+" yMin="([\d.]+)" xMax="[\d.]+" yMax="([\d.]+)">', run.stdout)
        heights = sorted(float(bottom) - float(top) for top, bottom in lines)
        # the box of a line of letters is a little higher than their size
        assert heights and heights[0] >= LEAST_PT * 0.8, (kind, heights[:5])


@pytest.mark.parametrize("scripts", [True, False])
def test_no_column_of_a_finished_cake_is_cut(
    page: Callable[..., Page], demo_url: str, printed: Callable[..., Path], scripts: bool
) -> None:
    tab = page(viewport={"width": 820, "height": 1180}, java_script_enabled=scripts)

    def whole(case: tuple[str, str]) -> None:
        address, paper = case
        tab.goto(demo_url + address)
        file = printed(tab, paper)
        (wide, _), *_ = sheets(file)
        told = subprocess.run(["pdftotext", "-bbox", str(file), "-"], capture_output=True, text=True, check=True).stdout
        words = re.findall(r'<word xMin="([\d.]+)" yMin="[\d.]+" xMax="([\d.]+)" yMax="[\d.]+">([^<]*)</word>', told)
        margin = 10 / 25.4 * 72
        assert words and all(margin <= float(left) and float(right) <= wide - margin for left, right, _ in words)
        # the last cell of every row is there
        text = [word for _, _, word in words]
        ends = tab.locator(".tb-table tbody tr").evaluate_all("rows => rows.map(row => row.lastElementChild.innerText)")
        for cell in ends:
            assert set(cell.replace("\u00a0", " ").split()) <= set(" ".join(text).replace("\u00a0", " ").split()), cell

    check_every(product(FINISHED[scripts], ("A4", "Letter")), whole)


A3_PT, A4_PT = (1191, 842), (596, 843)
LETTERS = """() => {
  const sizes = {};
  const walk = document.createTreeWalker(document.querySelector("article"), NodeFilter.SHOW_TEXT);
  while (walk.nextNode()) {
    const holder = walk.currentNode.parentElement;
    if (!walk.currentNode.data.trim() || !holder.getClientRects().length) continue;
    if (holder.closest("svg, script, .tb-unseen")) continue;
    const size = parseFloat(getComputedStyle(holder).fontSize) * 0.75;
    if (size < 8.99) sizes[walk.currentNode.data.trim()] = size;
  }
  return sizes;
}"""
"""Words of a page as it is printed in letters of less than 9 pt."""


@pytest.mark.long
def test_the_tables_of_a_mixture_are_one_sheet_for_the_wall(
    page: Callable[..., Page], demo_url: str, printed: Callable[..., Path], few: Callable[[str], list[str]]
) -> None:
    tab = page(viewport={"width": 820, "height": 1180})

    def one_sheet(slug: str) -> None:
        tab.goto(f"{demo_url}mixtures/{slug}/tables/")
        told = tab.locator(".tb-wall").inner_text()
        assert ("One sheet of A3" in told) != ("One sheet of A4" in told), told
        size, margin = (A3_PT, 9 / 25.4 * 72) if "A3" in told else (A4_PT, 14 / 25.4 * 72)
        file = printed(tab)
        assert [tuple(map(round, each)) for each in sheets(file)] == [size]
        run = subprocess.run(["pdftotext", "-bbox", str(file), "-"], capture_output=True, text=True, check=True)
        sides = re.findall(r'<word xMin="([\d.]+)" yMin="[\d.]+" xMax="([\d.]+)"', run.stdout)
        assert sides and all(
            margin - 1 <= float(left) and float(right) <= size[0] - margin + 1 for left, right in sides
        )
        text = read(file)
        assert "other sizes" not in text and "How this was worked out" not in text
        tab.emulate_media(media="print")
        rows = tab.locator(".tb-table tbody tr:visible")
        for cell in rows.evaluate_all("rows => rows.map(row => row.lastElementChild.innerText)"):
            assert set(cell.split()) <= set(text.split()), cell
        assert tab.evaluate(LETTERS) == {}
        tab.emulate_media(media="null")

    check_every(few("mixtures/*/tables"), one_sheet)
