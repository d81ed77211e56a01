"""`tinbook sheet`: one technique as a file of its own. What may leave the house leaves; nothing else does."""

from __future__ import annotations

import re
import shutil
import subprocess
import zlib
from collections.abc import Callable
from html.parser import HTMLParser
from io import BytesIO
from pathlib import Path

import pytest
import zxingcpp
from click.testing import Result
from PIL import Image

Run = Callable[..., Result]
# A word that is written only where it must not leave from.
SECRET = "cormorant"
ADDRESS = "https://heronsmouth.example/book"
TOWER = """\
name: Stack a lighthouse
purpose: So that the tower stands plumb and travels.
level: practised
makes: one tower of three tiers
tools: [{tool: spirit level, shared: yes}, {tool: "palette knife, 15 cm", count: 2}]
materials:
  - {take: 900 g sugarpaste, note: white}
  - {take: 9 dowels, not food: yes, note: food grade}
  - {take: 20 g sugar pearls, small hard: yes}
  - {take: 250 g dark ganache, shared: yes}
steps:
  - {do: Roll <1/2 sugarpaste> 4 mm thick., hands on: 12 min, picture: lamp.svg}
  - {do: Press <dowels> upright into the tier., hands on: 15 min, done: "A ruler lies flat.", picture: quay.jpg}
  - {do: Leave to set., waiting: 12 h, keeps: 3 days, ahead: 2 days}
checks: [The level reads true both ways.]
faults: [{fault: The tower leans., cure: Trim the longest dowel.}]
cautions: [Say at the table that the dowels come out first.]
pictures:
  - {file: lamp.svg, alt: A lamp room in section., shows: The lamp room.}
  - {file: quay.jpg, alt: A grey quay., shows: Low water.}
tips: [Travel with the tiers apart.]
"""
LAMP = """\
<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 200 100"><path d="M10 90h180L100 10z" fill="none" stroke="#000"/>
<text x="60" y="60">gallery 40</text></svg>
"""


def photo() -> bytes:
    out, exif = BytesIO(), Image.Exif()
    exif[0x010E] = SECRET
    Image.linear_gradient("L").resize((1800, 1200)).convert("RGB").save(out, "JPEG", exif=exif, comment=SECRET)
    return out.getvalue()


@pytest.fixture(autouse=True)
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """An empty folder to write into."""
    (tmp_path / "out").mkdir()
    monkeypatch.chdir(tmp_path / "out")
    return tmp_path / "out"


@pytest.fixture
def tower(book: Path) -> Path:
    """The demo book with an address, and a technique that has everything."""
    house = book / "recipes/house/house.yaml"
    without = re.sub(r"address:.*\n", "", house.read_text("utf-8"))
    house.write_text(without.rstrip() + f"\naddress: {ADDRESS}/\n", "utf-8")
    (book / "recipes/techniques/tower.yaml").write_text(TOWER, "utf-8")
    (book / "recipes/pictures").mkdir(exist_ok=True)
    (book / "recipes/pictures/lamp.svg").write_text(LAMP)
    (book / "recipes/pictures/quay.jpg").write_bytes(photo())
    return book


def add(path: Path, text: str) -> None:
    path.write_text(path.read_text("utf-8").rstrip() + f"\n{text}", "utf-8")


def asked(program: str, *words: str | Path) -> str:
    """What a program of poppler says of a PDF (https://poppler.freedesktop.org)."""
    assert shutil.which(program), f"{program} is not installed; the tests need it (apt install poppler-utils)"
    done = subprocess.run([program, *map(str, words)], capture_output=True, text=True, check=True, timeout=60)
    return done.stdout


class Words(HTMLParser):
    """The words of a page as they are read: not its styles, scripts or drawings."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.inside: list[str] = []
        self.text = ""
        self.feed(html)

    def handle_starttag(self, tag: str, attrs: object) -> None:
        if tag in ("style", "script", "svg", "title"):
            self.inside.append(tag)

    def handle_endtag(self, tag: str) -> None:
        if self.inside and self.inside[-1] == tag:
            self.inside.pop()

    def handle_data(self, data: str) -> None:
        if not self.inside:
            self.text += data


def words(text: str) -> set[str]:
    return set(re.findall(r"[^\W_]+", text.lower()))


def unpacked(pdf: bytes) -> bytes:
    """A PDF with its packed streams unpacked: whatever is written anywhere in it."""
    found = [pdf]
    for stream in re.findall(rb"stream\r?\n(.*?)endstream", pdf, re.DOTALL):
        try:
            found.append(zlib.decompressobj().decompress(stream))
        except zlib.error:
            continue
    return b"\n".join(found)


def test_one_page_is_written_and_said(run: Run, tower: Path, here: Path) -> None:
    done = run("sheet", "tower")
    assert done.exit_code == 0, done.output
    assert re.fullmatch(r'"tower\.html" written, \d+ kB\.\n', done.output)
    assert [path.name for path in here.iterdir()] == ["tower.html"]
    html = (here / "tower.html").read_text("utf-8")
    assert len(html) < 2_000_000
    text = Words(html).text
    for told in ("Heronsmouth house book", "So that the tower stands plumb and travels.", "practised", "900\N{NO-BREAK SPACE}g",
                 "one tower of three tiers", "2 × palette knife, 15 cm", "food grade", "450\N{NO-BREAK SPACE}g", "A ruler lies flat.",
                 "The lamp room.", "The level reads true both ways.", "Trim the longest dowel.", "not food", "9 dowels (food grade): all out and counted",
                 "Say at the table that the dowels come out first.", "Small, hard or round things can choke a child",
                 "Things in the cake that are not food", "Travel with the tiers apart.", f"{ADDRESS}/techniques/tower/"):  # fmt: skip
        assert told in text, told


@pytest.mark.parametrize("name", ["tower", "Stack a lighthouse", "STACK A LIGHTHOUSE"])
def test_a_technique_goes_by_all_its_names(run: Run, tower: Path, here: Path, name: str) -> None:
    assert run("sheet", name).exit_code == 0
    assert (here / "tower.html").is_file()


def test_for_some_people(run: Run, tower: Path, here: Path) -> None:
    assert run("sheet", "tower", "--people", "4").exit_code == 0
    text = Words((here / "tower.html").read_text("utf-8")).text.replace("\N{NO-BREAK SPACE}", " ")
    assert "For 4 people" in text
    for told in (
        "3600 g",
        "1800 g sugarpaste",
        "36",
        "80 g",
        "250 g",
        "to share",
        "8 × palette knife",
        "36 dowels (food grade): all out",
    ):
        assert told in text, told
    assert "4 × spirit level" not in text and "1000 g" not in text
    assert [run("sheet", "tower", "--force", "--people", wrong).exit_code for wrong in ("0", "100", "two")] == [2, 2, 2]


class TestNothingIsWrittenOver:
    def test_unless_told_to(self, run: Run, tower: Path, here: Path) -> None:
        (here / "tower.html").write_text("mine")
        done = run("sheet", "tower")
        assert done.exit_code == 1
        assert done.output == (
            'Error: "tower.html" already exists and has been left alone: '
            "add --force to overwrite it, or give another name with -o\n"
        )
        assert (here / "tower.html").read_text() == "mine"
        assert run("sheet", "tower", "--force").exit_code == 0
        assert "Stack a lighthouse" in (here / "tower.html").read_text("utf-8")

    def test_nor_is_half_of_it_written(self, run: Run, tower: Path, here: Path) -> None:
        (here / "tower.pdf").write_text("mine")
        assert run("sheet", "tower", "--pdf").exit_code == 1
        assert [path.name for path in here.iterdir()] == ["tower.pdf"]
        assert (here / "tower.pdf").read_text() == "mine"

    def test_a_folder_is_never(self, run: Run, tower: Path, here: Path) -> None:
        (here / "tower.html").mkdir()
        done = run("sheet", "tower", "--force")
        assert done.exit_code == 1 and "name another" in done.output

    def test_no_source_of_the_book(self, run: Run, tower: Path) -> None:
        before = {path: path.read_bytes() for path in tower.rglob("*") if path.is_file()}
        assert run("sheet", "tower", "--pdf").exit_code == 0
        assert {path: path.read_bytes() for path in tower.rglob("*") if path.is_file()} == before


def test_where_to(run: Run, tower: Path, tmp_path: Path) -> None:
    (tmp_path / "mail ½").mkdir()
    to = tmp_path / "mail ½" / "for the class.html"
    assert run("sheet", "tower", "--pdf", "-o", str(to)).exit_code == 0
    assert sorted(path.name for path in to.parent.iterdir()) == ["for the class.html", "for the class.pdf"]
    assert "there is no folder" in run("sheet", "tower", "-o", str(tmp_path / "gone" / "x.html")).output
    assert "does not end in .html" in run("sheet", "tower", "-o", "x.pdf").output


@pytest.mark.parametrize(
    ("name", "told"),
    [
        ("towr", 'the book has no technique or cake "towr"; did you mean "tower"?'),
        ("zzzz", 'the book has no technique or cake "zzzz"; it has: '),
        ("../tower", 'the book has no technique or cake "../tower"; did you mean "tower"?'),
        ("mud-cake", 'the book has no technique or cake "mud-cake"; '),
    ],
)
def test_no_such_technique(run: Run, tower: Path, here: Path, name: str, told: str) -> None:
    done = run("sheet", name)
    assert done.exit_code == 1
    assert told in done.output
    assert not list(here.iterdir())


def test_no_sheet_of_what_is_private_or_broken(run: Run, tower: Path, here: Path) -> None:
    path = tower / "recipes/techniques/tower.yaml"
    path.write_text(TOWER + "private: yes\n", "utf-8")
    done = run("sheet", "Tower")
    assert (done.exit_code, done.output) == (1, 'Error: "Tower" is private, so no sheet can be made of it\n')
    path.write_text(TOWER + "colour: red\n", "utf-8")
    done = run("sheet", "tower")
    assert (done.exit_code, done.output) == (
        1,
        'Error: "tower" has a mistake in it: run "tinbook check" to see what to fix\n',
    )
    assert not list(here.iterdir())


def plant(book: Path) -> None:
    """Put the secret into every field of the book that is not on the list of what goes along."""
    recipes = book / "recipes"
    add(
        recipes / "techniques/tower.yaml",
        f"""\
also: [{SECRET} stack]
tags: [{SECRET}]
works with: [{SECRET} paste, tideline ganache]
related: [{SECRET}]
mixtures: [tideline]
private: [tips, checks]
""",
    )
    text = (recipes / "techniques/tower.yaml").read_text("utf-8")
    text = text.replace("Travel with the tiers apart.", SECRET).replace("The level reads true both ways.", SECRET)
    (recipes / "techniques/tower.yaml").write_text(text, "utf-8")
    everything = TOWER.replace("Stack a lighthouse", SECRET)
    for word in (
        "plumb",
        "Leave to set.",
        "spirit level",
        "Trim",
        "Say at",
        "A ruler",
        "Travel",
        "white",
        "grey quay",
        "Low water",
    ):
        everything = everything.replace(word, SECRET)
    (recipes / f"techniques/{SECRET}.yaml").write_text(everything, "utf-8")
    (recipes / f"techniques/{SECRET}-too.yaml").write_text(everything + "private: yes\n", "utf-8")
    # of a mixture it works with its name and allergens go along, and nothing else
    (recipes / "mixtures/tideline.yaml").write_text(
        f"""\
name: Tideline ganache
kind: ganache
also: [{SECRET}]
tags: [{SECRET}]
about: {SECRET}
makes: 900 g
mix: [{{take: "300 g butter, {SECRET}", note: {SECRET}, part: {SECRET}}}]
method: [{{do: {SECRET}, done: {SECRET}}}]
keeps: {SECRET}
notes: [{SECRET}]
off balance: {SECRET}
""",
        "utf-8",
    )
    add(recipes / "house/tins.yaml", f"  - {{tin: round 33 cm x 7.5 cm, note: {SECRET}}}\n")
    cards = (recipes / "house/ingredients.yaml").read_text("utf-8")
    # on the card of the very material that goes along, and on one that does not
    cards += f"""\
  {SECRET}:
    also: [{SECRET} sugar]
    allergens: none
    notes: [{SECRET}]
    private: [notes]
  sugar pearls:
    also: [{SECRET} pearls]
    allergens: none
    notes: [{SECRET}]
    private: [also]
"""
    (recipes / "house/ingredients.yaml").write_text(cards, "utf-8")


def test_only_what_is_on_the_list_goes_along(run: Run, tower: Path, here: Path) -> None:
    plant(tower)
    assert SECRET not in run("check").output, "what was planted is not sound"
    done = run("sheet", "tower", "--pdf")
    assert done.exit_code == 0, done.output
    html, pdf = (here / "tower.html").read_text("utf-8"), (here / "tower.pdf").read_bytes()
    assert "Stack a lighthouse" in html and "Tideline ganache" in html
    assert SECRET not in html.lower()
    assert SECRET not in asked("pdftotext", here / "tower.pdf", "-").lower()
    assert SECRET.encode() not in unpacked(pdf).lower()
    # nor where the book lies, or who made it
    for place in (str(tower), str(here.parent), str(Path.home()), "sheet.typ"):
        assert place not in html and place.encode() not in unpacked(pdf)


class TestPdf:
    @pytest.fixture
    def pdf(self, run: Run, tower: Path, here: Path) -> Path:
        done = run("sheet", "tower", "--people", "4", "--pdf")
        assert done.exit_code == 0, done.output
        return here / "tower.pdf"

    def test_a_tagged_a4_with_nothing_but_a_title(self, pdf: Path) -> None:
        info = dict(line.split(":", 1) for line in asked("pdfinfo", pdf).splitlines())
        assert info["Title"].strip() == "Stack a lighthouse"
        assert info["Tagged"].strip() == "yes"
        assert "A4" in info["Page size"]
        assert int(info["Pages"]) <= 2
        assert not {"Author", "Subject", "Keywords", "CreationDate", "ModDate"} & set(info)
        # PDF/UA-1 says so in its metadata: ISO 14289-1, 5
        meta = asked("pdfinfo", "-meta", pdf)
        assert re.search(r"<pdfuaid:part>1</pdfuaid:part>", meta)

    def test_its_letters_are_inside(self, pdf: Path) -> None:
        rows = asked("pdffonts", pdf).splitlines()[2:]
        fonts = [row.split() for row in rows]
        assert {font[0].split("+")[1].split("-")[0] for font in fonts} == {"AtkinsonHyperlegibleNext", "Besley"}
        for row in rows:
            # emb sub uni: embedded, with a table back to text
            assert row.split()[-5:-2] == ["yes", "yes", "yes"], row

    def test_it_says_what_the_page_says(self, pdf: Path) -> None:
        page = words(Words(pdf.with_suffix(".html").read_text("utf-8")).text)
        # the PDF numbers its pages and steps, and names the step at a picture; its drawings are text too
        printed = words(asked("pdftotext", "-layout", pdf, "-"))
        assert page - printed == set()
        # of the paper itself are the kind, the lines for notes and the bars to measure
        own = {"technique", "notes", "100"}
        assert printed - page <= {"1", "2", "3", "of", "step", "gallery", "40", *own}

    def test_pictures_have_words(self, pdf: Path) -> None:
        tags = asked("pdfinfo", "-struct", pdf)
        assert tags.count("Figure") >= 2
        assert "H1" in tags and "H2" in tags and "P" in tags
        found = unpacked(pdf.read_bytes())
        # the code stands at the foot of each sheet, where nothing is tagged, with its address in letters beside it
        for alt in ("A lamp room in section.", "A grey quay."):
            assert alt.encode() in found or alt.encode("utf-16-be") in found, alt

    def test_the_code_leads_to_the_page_of_the_book(self, pdf: Path, tmp_path: Path) -> None:
        asked("pdftoppm", "-r", "150", "-f", "1", "-l", "1", "-png", "-singlefile", pdf, tmp_path / "page")
        (code,) = zxingcpp.read_barcodes(Image.open(tmp_path / "page.png"))
        assert code.text == f"{ADDRESS}/techniques/tower/"

    def test_the_same_again_is_the_same_file(self, run: Run, pdf: Path) -> None:
        first = pdf.read_bytes()
        assert run("sheet", "tower", "--people", "4", "--pdf", "--force").exit_code == 0
        assert pdf.read_bytes() == first


def test_no_code_without_an_address(run: Run, book: Path, here: Path) -> None:
    (book / "recipes/techniques/tower.yaml").write_text("name: Tower\npurpose: x\nsteps: [Look.]\n", "utf-8")
    house = book / "recipes/house/house.yaml"
    house.write_text(re.sub(r"address:.*\n", "", house.read_text("utf-8")), "utf-8")
    assert run("sheet", "tower", "--pdf").exit_code == 0
    assert "<svg" not in (here / "tower.html").read_text("utf-8")
    add(house, f"address: {ADDRESS}\nprivate: [address]\n")
    assert run("sheet", "tower", "--force").exit_code == 0
    html = (here / "tower.html").read_text("utf-8")
    assert "<svg" not in html and ADDRESS not in html
