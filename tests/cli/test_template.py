"""`tinbook template` and `tinbook sheet --cake`: the PDFs measured by pdfplumber, a library independent of the printer.

pdfplumber reads a PDF's geometry by pdfminer.six; https://github.com/jsvine/pdfplumber.
"""

from __future__ import annotations

import getpass
import re
import zlib
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from contextlib import suppress
from itertools import pairwise
from math import pi
from pathlib import Path
from typing import Any

import pdfplumber
import pytest
from click.testing import Result
from shapely import Polygon
from tests.browser.conftest import launched

from tinbook.cli.template import TEMPLATES
from tinbook.loading import Loaded
from tinbook.pages.technique.true_size import paper_pages
from tinbook.plans.techniques.parts import cakes_for, decoration
from tinbook.plans.true_size.drawn import Stroke, Template
from tinbook.plans.true_size.papers import PAPERS
from tinbook.press import templates_pdf
from tinbook.tins import Tin

Run = Callable[..., Result]
PT_MM = 25.4 / 72.0
SIZES = {"A4": (210.0, 297.0), "Letter": (215.9, 279.4)}
TECHNIQUE = "boat-on-the-shingle"


@pytest.fixture(autouse=True)
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """An empty folder to write into."""
    (tmp_path / "out").mkdir()
    monkeypatch.chdir(tmp_path / "out")
    return tmp_path / "out"


def strokes(page: Any) -> list[dict[str, Any]]:
    """Every path of a page."""
    return [*page.lines, *page.curves, *page.rects]


def bars_mm(page: Any) -> list[float]:
    """The two bars: the level lines in the foot that are as thick as an outline."""
    found = [
        each for each in strokes(page)
        if each["height"] < 0.01 and each["width"] > 100 and each["top"] > page.height - 80
        and abs(each["linewidth"] - 0.45 / PT_MM) < 0.02
    ]  # fmt: skip
    return [each["width"] * PT_MM for each in sorted(found, key=lambda each: each["top"])]


def grey(colour: Any) -> set[float]:
    """A colour's parts, as one number or several."""
    return {float(part) for part in colour} if isinstance(colour, tuple | list) else {float(colour)}


def check_page(page: Any, paper: str) -> None:
    """What every page of every template must be."""
    assert sorted((page.width * PT_MM, page.height * PT_MM)) == pytest.approx(sorted(SIZES[paper]), abs=0.05)
    bars = bars_mm(page)
    assert len(bars) == 2
    assert abs(bars[0] - 100.0) <= 0.3 and abs(bars[1] - 101.6) <= 0.3
    text = page.extract_text()
    assert "Measure this first" in text and "100 mm" in text and "4 in" in text and "Scale 1:1" in text
    assert f"of {len(page.pdf.pages)}" in text and "Page" in text
    # of words that run upwards the height lies across
    assert min(each["x1"] - each["x0"] if abs(each["matrix"][1]) > 0.5 else each["size"] for each in page.chars) >= 9.0
    for each in strokes(page):
        assert not each["fill"] and grey(each["stroking_color"]) == {0.0}, "black only"
    for each in page.chars:
        assert grey(each["non_stroking_color"]) == {0.0}, "black only"
    for each in (*strokes(page), *page.chars):
        assert each["x0"] >= -0.1 and each["x1"] <= page.width + 0.1
        assert each["top"] >= 0 and each["bottom"] <= page.height


@pytest.mark.parametrize("paper", SIZES)
@pytest.mark.parametrize("kind", TEMPLATES)
@pytest.mark.parametrize("cake", ["round 20 cm", "square 30 cm", "heart 25 cm"])
def test_every_kind_is_true(run: Run, here: Path, kind: str, paper: str, cake: str) -> None:
    drops = ("--deep", "4 cm") if kind == "strip" else ()
    done = run("template", kind, "--cake", cake, "--paper", paper, *drops)
    assert done.exit_code == 0, done.output
    (path,) = here.iterdir()
    with pdfplumber.open(path) as pdf:
        for page in pdf.pages:
            check_page(page, paper)
            assert f"For {cake}" in page.extract_text()


def test_a_strip_is_as_long_as_the_cake_is_round(run: Run, here: Path) -> None:
    """Laid on each other at their joints, three sheets measure π (d + two coats), by hand, with what the house says."""
    assert run("template", "strip", "--cake", "round 20 cm", "--drops", "6").exit_code == 0
    (path,) = here.iterdir()
    assert path.name == "side-strip-6-panels-round-20-cm.pdf"
    with pdfplumber.open(path) as pdf:
        total, joints = 0.0, []
        for page in pdf.pages:
            said = page.extract_text()
            levels = [
                each for each in strokes(page) if abs(each["linewidth"] - 0.45 / PT_MM) < 0.02 and each["height"] < 0.01
            ]
            outline = [
                each for each in strokes(page) if abs(each["linewidth"] - 0.45 / PT_MM) < 0.02 and each["height"] > 200
            ]
            parts = [each for each in (levels + outline) if each["bottom"] < page.height - 85 and each["width"] > 60]
            left, right = min(each["x0"] for each in parts), max(each["x1"] for each in parts)
            total += (right - left) * PT_MM
            joints.append((left, right, page.width))
        overlap = 12.0
        total -= overlap * (len(pdf.pages) - 1)
        coats = float(re.search(r"\(([\d.]+) mm of coating on each side\)", said)[1])  # type: ignore[index]
    assert total == pytest.approx(pi * (200.0 + 2.0 * coats), abs=2.0), "what it says is rounded to half a millimetre"
    assert len(joints) == 3


@pytest.mark.parametrize("size", [(100.0, 80.0), (181.0, 150.0), (33.3, 66.6)])
def test_an_outline_in_the_pdf_measures_what_is_planned(tmp_path: Path, size: tuple[float, float]) -> None:
    wide, high = size
    ring = ((0.0, 0.0), (wide, 0.0), (wide, high / 2), (wide / 2, high), (0.0, high / 2))
    made = Template(
        key="x",
        name="A pennant",
        size="",
        cake=Tin(shape="round", sizes_mm=(200.0,)),
        strokes=(Stroke.ring("cut", ring),),
    )
    path = tmp_path / "x.pdf"
    path.write_bytes(templates_pdf("A pennant", paper_pages([made], PAPERS["A4"], 12.0, "")))
    with pdfplumber.open(path) as pdf:
        (page,) = pdf.pages
        (outline,) = [each for each in page.curves if len(each["pts"]) >= 5]
        points = [(x * PT_MM, y * PT_MM) for x, y in outline["pts"]]
        assert Polygon(points).area == pytest.approx(Polygon(ring).area, rel=1e-3)
        assert outline["width"] * PT_MM == pytest.approx(wide, abs=0.05)
        assert outline["height"] * PT_MM == pytest.approx(high, abs=0.05)


@pytest.mark.parametrize("cake", ["round 15 cm", "round 20 cm", "round 30 cm"])
def test_the_parts_of_a_sheet_measure_what_is_planned(run: Run, here: Path, demo: Loaded, cake: str) -> None:
    """Each part drawn on one sheet is found in the PDF with its width and its height."""
    done = run("sheet", TECHNIQUE, "--cake", cake)
    assert done.exit_code == 0, done.output
    slug = f"{TECHNIQUE}-{cake.replace(' ', '-')}"
    assert sorted(path.name for path in here.iterdir()) == [f"{slug}-templates.pdf", f"{slug}.html"]
    technique = demo.book.techniques[TECHNIQUE]
    tin = next(each for each in cakes_for(technique) if each.name == cake)
    planned = [
        (part.width_mm, part.height_mm) for part in decoration(technique, tin, demo.book, demo.facts).parts
        if part.form in ("solid", "sheet") and part.width_mm < 170
    ]  # fmt: skip
    assert planned
    with pdfplumber.open(here / f"{slug}-templates.pdf") as pdf:
        for page in pdf.pages:
            check_page(page, "A4")
        found = [(each["width"] * PT_MM, each["height"] * PT_MM) for page in pdf.pages for each in strokes(page)]
    for size in planned:
        assert any(each == pytest.approx(size, abs=0.1) for each in found), size


def test_nothing_of_the_world_is_in_the_file(run: Run, here: Path, book: Path) -> None:
    assert run("template", "ring", "--cake", "round 20 cm").exit_code == 0
    with pdfplumber.open(here / "board-ring-round-20-cm.pdf") as pdf:
        told = pdf.metadata
    assert set(told) <= {"Title", "Creator", "Producer"} and told["Title"] == "Board guide ring, round 20 cm"
    content = (here / "board-ring-round-20-cm.pdf").read_bytes()
    inside = [content]
    for stream in re.findall(rb"stream\r?\n(.*?)endstream", content, re.DOTALL):
        with suppress(zlib.error):
            inside.append(zlib.decompress(stream))
    assert len(inside) > 4
    for secret in (str(book), str(here), str(Path.home()), getpass.getuser() + "@"):
        assert not any(secret.encode() in part for part in inside)
    first = content
    assert run("template", "ring", "--cake", "round 20 cm", "--force").exit_code == 0
    assert (here / "board-ring-round-20-cm.pdf").read_bytes() == first, "the same again, to the byte"


def test_drawings_beside_it(run: Run, here: Path) -> None:
    assert run("template", "ring", "--cake", "round 20 cm", "--svg").exit_code == 0
    names = sorted(path.name for path in here.glob("*.svg"))
    assert names == [f"board-ring-round-20-cm-{which}.svg" for which in ("a1", "a2", "b1", "b2")]
    assert 'width="210.0mm"' in (here / names[0]).read_text("utf-8")
    assert run("template", "ring", "--cake", "round 10 cm", "--svg", "--paper", "letter").exit_code == 0
    assert run("sheet", TECHNIQUE, "--cake", "round 20 cm", "--svg").exit_code == 0
    assert (here / f"{TECHNIQUE}-round-20-cm-templates-parts-1.svg").is_file()


def test_the_sheet_has_them_in_its_one_file(run: Run, here: Path) -> None:
    assert run("sheet", TECHNIQUE, "--cake", "round 25 cm", "--paper", "Letter", "--pdf").exit_code == 0
    slug = f"{TECHNIQUE}-round-25-cm"
    assert sorted(path.name for path in here.iterdir()) == [f"{slug}-templates.pdf", f"{slug}.html", f"{slug}.pdf"]
    html = (here / f"{slug}.html").read_text("utf-8")
    with pdfplumber.open(here / f"{slug}-templates.pdf") as pdf:
        assert html.count('<section class="true') == len(pdf.pages) > 1
    assert (
        "For a round 25 cm cake: " in html
        and "<select" not in html
        and "@page upright { size: 215.9mm 279.4mm; margin: 0 }" in html
    )
    assert run("sheet", TECHNIQUE).exit_code == 0
    every = (here / f"{TECHNIQUE}.html").read_text("utf-8")
    cakes = re.findall(r"<option(?: selected)?>([^<]+)</option>", every)
    assert len(cakes) == 9 and len(every) < 1_200_000
    for cake in cakes:
        assert f'<div data-cake="{cake}"' in every and re.search(f'<section class="true[^>]*data-cake="{cake}"', every)


@pytest.mark.browser
def test_the_one_file_prints_true(run: Run, here: Path) -> None:
    """Printed by Chromium, its own templates measure true and lie on pages of their own."""
    from playwright.sync_api import sync_playwright

    def to_paper() -> None:
        with sync_playwright() as driver:
            browser = launched(driver.chromium)
            page = browser.new_page()
            page.goto((here / f"{TECHNIQUE}-round-30-cm.html").as_uri())
            page.pdf(path=here / "printed.pdf", prefer_css_page_size=True)
            browser.close()

    assert run("sheet", TECHNIQUE, "--cake", "round 30 cm").exit_code == 0
    # in a thread of its own: this one may already hold a browser
    with ThreadPoolExecutor(1) as alone:
        alone.submit(to_paper).result()
    with (
        pdfplumber.open(here / "printed.pdf") as printed,
        pdfplumber.open(here / f"{TECHNIQUE}-round-30-cm-templates.pdf") as pdf,
    ):
        last = printed.pages[-len(pdf.pages) :]
        for one, other in zip(last, pdf.pages, strict=True):
            assert (one.width, one.height) == pytest.approx((other.width, other.height), abs=1.0)
            bars = [
                each["width"] * PT_MM for each in strokes(one) if each["height"] < 0.5 and each["top"] > one.height - 80
            ]
            assert [each for each in bars if abs(each - 100.0) <= 0.3] and [
                each for each in bars if abs(each - 101.6) <= 0.3
            ]


def test_what_is_there_is_left(run: Run, here: Path) -> None:
    assert run("template", "ring", "--cake", "round 20 cm").exit_code == 0
    done = run("template", "ring", "--cake", "round 20 cm")
    assert done.exit_code == 1 and "already exists and has been left alone: add --force" in done.output
    (here / f"{TECHNIQUE}-round-20-cm-templates.pdf").write_text("mine")
    done = run("sheet", TECHNIQUE, "--cake", "round 20 cm")
    assert done.exit_code == 1 and "already exists" in done.output
    assert (here / f"{TECHNIQUE}-round-20-cm-templates.pdf").read_text() == "mine"
    assert not (here / f"{TECHNIQUE}-round-20-cm.html").exists(), "all of them or none"
    assert "there is no folder" in run("template", "ring", "--cake", "round 20 cm", "-o", "gone/x.pdf").output


def test_a_whole_cake_has_every_part_and_its_dowels_in_one_file(run: Run, here: Path) -> None:
    assert run("template", "all", "--of", "lighthouse-cake", "--size", "+1").exit_code == 0
    assert run("template", "all", "--of", "estuary-wedding-cake", "-o", "all.pdf").exit_code == 0
    with pdfplumber.open(here / "lighthouse-cake-templates.pdf") as pdf:
        assert "round 23 cm" in pdf.pages[0].extract_text()
        for page in pdf.pages:
            check_page(page, "A4")
    with pdfplumber.open(here / "all.pdf") as pdf:
        told = [page.extract_text() for page in pdf.pages]
    assert sum("dowels" in text.lower() for text in told) >= 2


def test_what_there_is(run: Run) -> None:
    done = run("template")
    assert [line.split()[0] for line in done.output.splitlines()] == [*TEMPLATES, "all"]


@pytest.mark.parametrize(
    ("asked", "told"),
    [
        (["all"], "these templates need a cake: say which, with --of: estuary-wedding-cake, first-season-cake"),
        (["all", "--of", "lighthouse-cake", "--cake", "round 20 cm"], "--cake is for a single tin"),
        (["all", "--of", "lighthouse-cake", "--size", "+9"], 'there is no size "+9"'),
        (["ring", "--cake", "round 20 cm", "--size", "+1"], 'the template "ring" cannot use --size'),
        (["rng", "--cake", "round 20 cm"], 'there is no template "rng": did you mean "ring"?'),
        (["ring"], 'a template needs a cake: say which, such as --cake "round 20 cm"'),
        (["ring", "--cake", "triangle 20 cm"], "--cake: "),
        (["ring", "--cake", "2 round 20 cm"], '--cake: a template is for one cake, not 2: write "round 20 cm"'),
        (["ring", "--cake", "12 standard cups"], "are not cut or covered like a cake: name a tin"),
        (["ring", "--cake", "round 20 cm", "-o", "x.svg"], '"x.svg" does not end in .pdf: name a file that does'),
        (["strip", "--cake", "round 20 cm", "--drops", "0"], "a strip needs drops or panels to divide it: ask for 2 or more"),
        (["strip", "--cake", "round 20 cm", "--deep", "30 cm"], "a drop 300 mm deep is more than the height of the cake"),
        (["strip", "--cake", "round 20 cm", "--deep", "4 kg"], "--deep: "),
        (["strip", "--cake", "round 20 cm", "--height", "x"], "--height: "),
        (["dowels", "--cake", "round 15 cm", "--above", "round 20 cm"], "round 20 cm is wider than round 15 cm"),
        (["dowels", "--cake", "round 15 cm", "--above", "tower"], "--above: "),
        (["cutting", "--cake", "round 20 cm", "--portion", "slab"], 'there is no portion called "slab": ask for finger, dessert'),
        (["strip", "--cake", "round 20 cm", "--start", "2 cm"],
         '--start is only for drops, and without --deep you get panels: add --deep "4 cm", or leave it out'),
        (["ring", "--cake", "round 20 cm", "--drops", "8"],
         'the template "ring" cannot use --drops: it takes no options of its own; --drops goes with strip'),
        (["cutting", "--cake", "round 20 cm", "--above", "round 15 cm"],
         'the template "cutting" cannot use --above: it takes --portion; --above goes with dowels'),
        (["ring", "--cake", "round 20 cm x 7.5 cm, measured 2200 ml"],
         'on a cake\'s outline, not on what its tin holds: write "round 20 cm x 7.5 cm"'),
    ],
)  # fmt: skip
def test_bad_questions(run: Run, here: Path, asked: list[str], told: str) -> None:
    done = run("template", *asked)
    assert done.exit_code == 1
    assert told in done.output and "Traceback" not in done.output
    assert not list(here.iterdir())


@pytest.mark.parametrize(
    ("asked", "told"),
    [
        (["level-and-cut", "--cake", "round 20 cm"], "has no parts to draw for a cake: leave --cake out, or try"),
        ([TECHNIQUE, "--cake", "cloud 20 cm"], "--cake: "),
        ([TECHNIQUE, "--svg"], "templates are for a cake: say which"),
    ],
)
def test_bad_questions_to_a_sheet(run: Run, here: Path, asked: list[str], told: str) -> None:
    done = run("sheet", *asked)
    assert done.exit_code == 1 and told in done.output
    assert not list(here.iterdir())


def test_each_cake_has_its_own(run: Run, here: Path) -> None:
    """Lengths go by the cake's width: the same part, larger and larger."""
    widths = []
    for cake in ("round 15 cm", "round 20 cm", "round 25 cm"):
        assert run("sheet", "lighthouse-for-the-front", "--cake", cake, "--svg").exit_code == 0
        svg = next(here.glob(f"*{cake.replace(' ', '-')}-templates-parts-1.svg")).read_text("utf-8")
        xs = [float(x) for x in re.findall(r"[ML]([\d.]+) ", re.search(r'class="cut"[^>]*><path d="([^"]+Z)"', svg)[1])]  # type: ignore[index]
        widths.append(max(xs) - min(xs))
    for one, other in pairwise(zip(widths, (15, 20, 25), strict=True)):
        assert other[0] / one[0] == pytest.approx(other[1] / one[1], rel=0.02)
