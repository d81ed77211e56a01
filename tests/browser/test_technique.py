"""A technique printed from its page: one or two sheets that can be read, with a code to scan, for any number of people."""

from __future__ import annotations

import re
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest
import zxingcpp
from click.testing import CliRunner
from PIL import Image
from playwright.sync_api import Page
from tests.browser.conftest import placed

from tinbook.cli import main
from tinbook.loading import Loaded
from tinbook.plans.base.asking import Query
from tinbook.plans.techniques.shown import shown_g, shown_pot_g
from tinbook.plans.techniques.tables import colour_rows, part_rows
from tinbook.tins import read_tin

pytestmark = pytest.mark.browser

ROOT = Path(__file__).parents[2]
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
    page: Callable[..., Page], demo_url: str, demo: Loaded, tmp_path: Path, few: Callable[[str], list[str]]
) -> None:
    drawn = 0
    for slug in few("techniques/*"):
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


def _words(text: str) -> str:
    """Without spaces: a sheet breaks its lines where a page does not."""
    return "".join(text.split())


@pytest.mark.parametrize("slug", ["heron-for-the-side", "boat-on-the-shingle", "lighthouse-for-the-front"])
def test_a_class_is_told_the_same_on_page_file_and_pdf(
    page: Callable[..., Page], demo_url: str, demo: Loaded, tmp_path: Path, slug: str
) -> None:
    """Parts, paste, colours, cutters and what is not food, multiplied for four by the page's script, in the sheet of one
    file and in its PDF; the figures by hand from the table for one."""
    people, cake = 4, read_tin("round 20 cm")[1]
    html = tmp_path / "sheet.html"
    done = CliRunner().invoke(
        main, ["--book", str(ROOT), "sheet", slug, "--people", str(people), "--pdf", "-o", str(html)]
    )
    assert done.exit_code == 0, done.output
    pdf = str(html.with_suffix(".pdf"))
    # in the order they are written, so that a cell of two lines is read as one
    told = subprocess.run(["pdftotext", "-raw", pdf, "-"], capture_output=True, text=True, check=True)
    in_lines = subprocess.run(["pdftotext", "-layout", pdf, "-"], capture_output=True, text=True, check=True).stdout
    ours, sheet = page(), page()
    ours.goto(f"{demo_url}techniques/{slug}/#for?people={people}")
    sheet.goto(html.as_uri())
    paper, file = _words(told.stdout), _words(sheet.locator("main").inner_text())
    shown = ours.locator('[data-cake="round 20 cm"]')
    rows = {each.locator("th b").inner_text(): each for each in shown.locator("tbody tr:has(th b)").all()}

    query = Query(of=slug, tins=((1, cake),))
    for part in part_rows(demo.book, demo.facts, query).rows:
        many, grams = part["count"] * people, f"{shown_g(part['total_g'] * people):g}"
        row = rows[str(part["letter"])]
        assert row.locator("[data-many]").inner_text() == str(many), part["part"]
        assert row.locator(".tb-chosen").inner_text() == grams, part["part"]
        named = _words(f"{part['letter']} {str(part['part']).capitalize()}")
        line = sheet.locator(f'[data-cake="round 20 cm"] .parts tr:has(th:text-is("{part["letter"]}"))')
        assert _words(line.inner_text()).startswith(named) and line.locator(".chosen").inner_text() == grams
        assert line.locator("td").nth(2).inner_text() == str(many)
        row_on_paper = rf"\b{part['letter']}\s+{str(part['part']).capitalize()}\b.*\s{many}\s.*\s{re.escape(grams)}\b"
        assert re.search(row_on_paper, in_lines), part["part"]
        if part["cutter_wanted_width_mm"]:
            (cutter,) = row.locator("[data-cutters]").all_inner_texts()
            shared = demo.book.techniques[slug].parts[ord(str(part["letter"])) - ord("A")].cutter_shared
            assert cutter.startswith("4 × ") != shared and cutter.endswith("; one to share") == shared
            assert _words(cutter) in file and _words(cutter) in paper
    needs = colour_rows(demo.book, demo.facts, query).rows
    lines = [_words(text) for text in shown.locator(".tb-colours li").all_inner_texts()]
    for need in needs:
        grams = f"{shown_g(need['exact_g'] * people):g}"
        name = str(need["colour"] or "uncoloured").capitalize()
        (line,) = {line for line in lines if line.startswith(_words(f"{name} {grams} g"))}
        assert _words(f"{name}, {grams} g") in file and _words(f"{name}, {grams} g") in paper
        if need["pot_g"]:
            pot = _words(f"{shown_pot_g(need['pot_g'] * people):g} g {need['pot']}")
            assert pot in line and pot in file and pot in paper
    whole = _words(shown.locator("p").first.inner_text())
    total = shown_g(sum({(need["paste"], need["colour"]): need["exact_g"] for need in needs}.values()) * people)
    assert f"{total:g}g" in whole and f"{total:g}g" in paper
    assert whole.partition("Templates")[0][:40] in file
    for caution in ours.locator(".tb-caution b", has_text="Not edible").all_inner_texts():
        assert _words(caution) in file and _words(caution) in paper
    # the table for every cake as well
    cell = ours.locator("#paste-for-every-cake-rows tr", has_text="as written").locator(".tb-main")
    assert cell.inner_text() in whole
    # one person's page says what it said before the script
    ours.locator(".tb-people").get_by_role("button", name="fewer people").click(click_count=3)
    plain = page(java_script_enabled=False)
    plain.goto(f"{demo_url}techniques/{slug}/")
    for place in (".tb-parts", ".tb-colours", ".tb-caution", "#paste-for-every-cake-rows"):
        assert ours.locator(place).all_text_contents() == plain.locator(place).all_text_contents()


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


@pytest.mark.parametrize("slug", ["lighthouse-for-the-front", "bream-with-scales", "coil-of-rope"])
def test_letters_of_the_table_stand_in_the_drawing_and_in_the_steps(
    page: Callable[..., Page], demo_url: str, slug: str
) -> None:
    for width, height in ((1180, 820), (820, 1180), (390, 844)):
        tab = page(viewport={"width": width, "height": height})
        tab.goto(f"{demo_url}techniques/{slug}/")
        shown = tab.locator("[data-cake]:not([hidden]) .tb-parts tbody tr:not(.tb-sum) th")
        letters = shown.all_inner_texts()
        assert letters == [chr(ord("A") + nth) for nth in range(len(letters))] and len(letters) > 2
        drawing = tab.locator(".tb-put svg")
        assert drawing.count() == 1
        drawn = drawing.locator("text, tspan").evaluate_all("all => all.map(each => each.textContent.trim())")
        assert [letter for letter in letters if drawn.count(letter) < 1] == []
        box = placed(drawing)
        assert box["x"] >= 0 and box["x"] + box["width"] <= width
        # a long figure lies across the page, above its table
        if width == 1180 and box["width"] < width / 2:
            table = placed(tab.locator("[data-cake]:not([hidden]) .tb-parts"))
            assert table["x"] >= box["x"] + box["width"], "side by side"
            assert table["y"] < box["y"] + box["height"]
        inside = tab.locator(".tb-do .tb-letter").all_inner_texts()
        assert inside and set(inside) <= set(letters)
        # a time that steps share is said above them and not again
        done = tab.locator(".tb-do .tb-done").all_inner_texts()
        ahead = [words for words in done if "ahead" in words]
        assert len(ahead) == len(set(ahead)) and tab.locator(".tb-once").count() >= 1


def test_the_code_stands_below_the_title(page: Callable[..., Page], demo_url: str, demo: Loaded) -> None:
    for slug in sorted(demo.book.techniques, key=lambda slug: -len(demo.book.techniques[slug].name))[:3]:
        tab = page(viewport={"width": WIDE_PX, "height": 1000})
        tab.goto(f"{demo_url}techniques/{slug}/")
        tab.emulate_media(media="print")
        title, code = placed(tab.locator("h1")), placed(tab.locator(".tb-scan"))
        article = placed(tab.locator("article"))
        assert code["y"] >= title["y"] + title["height"] - 1
        assert title["width"] >= article["width"] - 2


def test_what_only_a_script_could_do_is_not_offered_without_one(page: Callable[..., Page], demo_url: str) -> None:
    """The steppers and switches stand in the page, and show where they work."""
    still, tab = page(java_script_enabled=False), page()
    for each in (still, tab):
        each.goto(f"{demo_url}techniques/lighthouse-for-the-front/")
        for place in (".tb-people", ".tb-measure", ".tb-cakes"):
            assert each.locator(place).count() == 1
            assert each.locator(place).is_visible() == (each is tab), place
    before = still.locator(".tb-lines").inner_text()
    assert tab.locator(".tb-lines").inner_text() == before
    tab.locator(".tb-people").get_by_role("button", name="more people").click()
    assert tab.locator(".tb-lines").inner_text() != before
