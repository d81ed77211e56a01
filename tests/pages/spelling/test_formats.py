"""Numbers in words: each filter by its exact text; and hostile text that stays text."""

from __future__ import annotations

import json
from collections.abc import Callable
from html.parser import HTMLParser

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st
from markdown import Markdown
from markupsafe import Markup, escape
from tests.every import every, many

from tinbook.models import Book
from tinbook.pages.spelling import formats
from tinbook.plans.base.versions import Amount
from tinbook.plans.base.weighing import Batch
from tinbook.plans.measures.spooned import Spooned, measured
from tinbook.units import read_heat, read_quantity, read_span

N = "\u00a0"


@every(
    ("made", "text"),
    [
        (formats.number(595.0), "595"),
        (formats.number(4.5), "4.5"),
        (formats.number(1250.0), "1250"),
        (formats.number(12500.0), "12,500"),
        (formats.number(1234567.25), "1,234,567.25"),
        (formats.number(-1.6), "−1.6"),
        (formats.number(0.0), "0"),
        (formats.number(-0.00001), "0"),
        (formats.number(0.12345), "0.1235"),
        (formats.fixed(1.777, 2), "1.78"),
        (formats.fixed(-1.6, 1), "−1.6"),
        (formats.fixed(-0.001, 2), "0.00"),
        (formats.fixed(2.0, 2), "2.00"),
        (formats.mixed(3.5), "3½"),
        (formats.mixed(2 / 3), "⅔"),
        (formats.mixed(1 + 1 / 3), "1⅓"),
        (formats.mixed(0.125), "⅛"),
        (formats.mixed(0.0625), "1/16"),
        (formats.mixed(7.0), "7"),
        (formats.mixed(2.2), "2.2"),
        (formats.mixed(0.0), "0"),
        (formats.signed(4.2), "+4.2"),
        (formats.signed(-1.6), "−1.6"),
        (formats.signed(0.0), "0"),
        (formats.with_unit("5", "g"), f"5{N}g"),
        (formats.with_unit("5", ""), "5"),
        (formats.measure(595.0, "g"), "595"),
        (formats.measure(12500.0, "ml"), "12,500"),
        (formats.measure(2.5, "tsp"), "2½"),
        (formats.measure(7.0, ""), "7"),
        (formats.figure(Amount(594.8, 595.0, "g")), "595"),
        (formats.spelled(Amount(594.8, 595.0, "g")), f"595{N}g"),
        (formats.spelled(Amount(3.4, 3.5, "tsp")), f"3½{N}tsp"),
        (formats.spelled(Amount(7.0, 7.0, "")), "7"),
        (formats.grams(595.0), f"595{N}g"),
        (formats.ounces(15.0), f"15{N}oz"),
        (formats.ounces(20.0), f"1{N}lb{N}4{N}oz"),
        (formats.ounces(2.25), f"2¼{N}oz"),
        (formats.ounces(32.0), f"2{N}lb"),
        (formats.ounces(0.125), f"⅛{N}oz"),
        (formats.spoons(None), "by weight"),
        (formats.spoons(Spooned(1.66, 1 + 2 / 3, "cup")), f"1⅔{N}cups"),
        (formats.spoons(Spooned(1.0, 1.0, "cup")), f"1{N}cup"),
        (formats.spoons(Spooned(2.0, 2.0, "tbsp")), f"2{N}tbsp"),
        (formats.millimetres(44.4), f"44{N}mm"),
        (formats.centimetres(75.0), f"7.5{N}cm"),
        (formats.litres(2360.0), f"2.36{N}l"),
        (formats.litres(1000.0), f"1.00{N}l"),
        (formats.litres(830.0), f"830{N}ml"),
        (formats.quantity(read_quantity("1 lb 4 oz")), f"20{N}oz"),
        (formats.span(read_span("55-65 min", ("time",))), f"55–65{N}min"),
        (formats.span(read_span("2 h", ("time",))), f"2{N}h"),
        (formats.span(read_span("50 min to 1 h", ("time",))), f"50{N}min to 1{N}h"),
        (formats.celsius(170.0), f"170{N}°C"),
        (formats.celsius(176.6667), f"176.7{N}°C"),
        (formats.oven(read_heat("160 °C"), 20.0), f"160{N}°C, fan 140{N}°C"),
        (formats.percent(1.9), "1.9%"),
        (formats.tin_words("round 20 cm x 7.5 cm (8 in)"), f"round 20{N}cm{N}×{N}7.5{N}cm (8{N}in)"),
        (formats.title("self-raising flour"), "Self-raising flour"),
        (formats.title("UK large"), "UK large"),
        (formats.title(""), ""),
        (formats.sentence(["milk"]), "milk"),
        (formats.sentence(["milk", "egg"]), "milk and egg"),
        (formats.sentence(("milk", "egg", "wheat")), "milk, egg and wheat"),
    ],
)  # fmt: skip
def test_spelling(made: str, text: str) -> None:
    assert made == text


def test_an_amount_as_written(batch: Callable[..., Batch], kitchen: Book) -> None:
    mix = ["250 g butter", "1/2 eggs", "60 ml milk", "1 1/2 tsp vanilla extract", "10 oz caster sugar"]
    lines = measured(batch(mix=mix), kitchen)
    assert [formats.written(line) for line in lines] == [f"250{N}g", "½", f"60{N}ml", f"1½{N}tsp", f"285{N}g"]
    assert [(formats.written_figure(line), formats.written_unit(line)) for line in lines[:2]] == [
        ("250", "g"),
        ("½", ""),
    ]


@given(st.floats(-1e7, 1e7), st.integers(0, 3))
def test_a_spelled_number_reads_back(value: float, places: int) -> None:
    assert float(formats.number(value).replace(",", "").replace("−", "-")) == pytest.approx(value, abs=5.1e-5)
    assert float(formats.fixed(value, places).replace("−", "-")) == pytest.approx(value, abs=0.51 * 10**-places)
    assert "-0" not in formats.fixed(value, places)


HOSTILE = [
    "<script>alert(1)</script>", "<img src=x onerror=alert(1)>", "<b>bold</b>", "<!--tinbook:tables/tins-->",
    "[click](javascript:alert(1))", "[click]( JavaScript:alert(1))", "[click](java\nscript:alert(1))",
    "[click][1]\n\n[1]: javascript:alert(1)", "[1]: javascript:alert(1)\n\n[click][1]", "<javascript:alert(1)>",
    "[click](data:text/html,<script>alert(1)</script>)", "[click](vbscript:x)", "[x](&#106;avascript:alert(1))",
    "![pixel](https://example.org/pixel.png)", "![pixel][1]\n\n[1]: https://example.org/pixel.png",
    "text { #anchor onclick=alert(1) }", "{: onclick=alert(1) }", "# heading { .big }", "Heading\n=====", "Heading\n---",
    "`code`", "```\nfence\n```", "    indented", "* star", "- dash", "1. one", "12. twelve", "> quote", "a | b\n--|--\n1 | 2",
    "**bold** *em* __b__ _e_", "&lt;b&gt; &amp; &copy;", "\\*escaped\\*", "a\\\nb", "\u202eturned\u202c", "\u2066turned",
    "x" * 5000, "🎂🎈 cake", "half ½ & third ⅓", '"quoted" \'text\'', "line\u2028separator", "{{ 7 * 7 }}{% raw %}", "--- ---",
    "***", "___", "===", "[[wiki]]", "~~gone~~", "==mark==", ":smile:", "H~2~O x^2^", "www.example.org",
    "https://example.org", "me@example.org", "", " ", "*", "[", "](", "![", "<", "&", "#", "1.", "-",
]  # fmt: skip
ALLOWED = {"p", "em", "strong", "code", "pre", "ul", "ol", "li", "blockquote", "hr", "br", "a", "table", "thead", "tbody", "tr", "td", "th"}  # fmt: skip


class Seen(HTMLParser):
    """Tags, attributes and text of HTML."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.tags: list[str] = []
        self.attributes: list[tuple[str, str]] = []
        self.text = ""
        self.feed(text)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append(tag)
        self.attributes += [(name, value or "") for name, value in attrs]

    def handle_data(self, data: str) -> None:
        self.text += data


def seen(markdown: str) -> Seen:
    return Seen(Markdown(extensions=["attr_list", "toc", "tables", "fenced_code"]).convert(markdown))


def words(text: str) -> str:
    return " ".join(formats.unturned(text).split())


@every("text", HOSTILE)
def test_plain_text_is_nothing_but_text(text: str) -> None:
    for before, after, tag in (("", "", "p"), ("# ", "", "h1"), ("- ", "", "li"), ("## ", " { #here }", "h2")):
        page = seen(f"{before}{formats.plain(text)}{after}")
        if not words(text):
            continue
        assert [each for each in page.tags if each != "ul"] == [tag]
        assert {name for name, _ in page.attributes} <= {"id"}
        assert words(page.text) == words(text)


@many(200)
@given(st.text(st.characters(codec="utf-8", exclude_categories=("Cc", "Cs", "Cn")), max_size=60))
def test_any_plain_text_is_nothing_but_text(text: str) -> None:
    """Without what Unicode calls no character (in Cn): Python's reader of HTML drops those."""
    page = seen(formats.plain(text))
    assert page.tags == (["p"] if words(text) else [])
    assert words(page.text) == words(text)


@every("text", HOSTILE)
def test_prose_makes_words_and_harmless_links_only(text: str) -> None:
    page = seen(str(formats.prose(text)))
    assert set(page.tags) <= ALLOWED
    for name, value in page.attributes:
        assert name in ("href", "title", "class", "style"), (name, value)
        if name == "href":
            assert "script:" not in value.lower() and not value.lower().startswith("data:"), value
    assert "\u202e" not in page.text and "\u2066" not in page.text


def test_prose_is_markdown_where_it_may_be() -> None:
    page = seen(
        str(
            formats.prose(
                "It cuts *cleanly*, see [the web](https://example.org) or [lining](line-a-tin.md).\n\n- a\n- b"
            )
        )
    )
    assert page.tags == ["p", "em", "a", "a", "ul", "li", "li"]
    assert page.attributes == [("href", "https://example.org"), ("href", "line-a-tin.md")]


def test_markup_in_prose_is_shown() -> None:
    assert seen(str(formats.prose("<b>x</b> & ![y](z.png)"))).text == "<b>x</b> & ![y](z.png)"


@many(200)
@given(st.text(alphabet="[](){}<>!#*_`:/\\ \n-=1.ajscript&;\"'|", max_size=50))
def test_no_prose_runs(text: str) -> None:
    page = seen(str(formats.prose(text)))
    assert set(page.tags) <= ALLOWED
    assert {name for name, _ in page.attributes} <= {"href", "title", "class", "style"}
    assert all("javascript:" not in value.lower() for name, value in page.attributes if name == "href")


@every("text", [*HOSTILE, 'a "b": c # d', "no", "1", "null", "- x", "🎂", "é\u2029x"])
def test_a_title_comes_through_front_matter(text: str) -> None:
    front = yaml.safe_load(f"title: {formats.quoted(text)}\nsearch: {{boost: 2}}")
    assert front["title"] == escape(words(text))  # the theme prints a title as it is
    front["title"].encode("utf-8")


def test_what_is_spelled_for_markdown_is_not_escaped_twice() -> None:
    assert isinstance(formats.plain("a & b"), Markup)
    assert formats.plain("a & b") == "a &#38; b"
    assert formats.plain("Self-raising (soft) 1/2 – ½ × 3; 5 %") == "Self-raising (soft) 1/2 – ½ × 3; 5 %"
    assert json.loads(formats.quoted('a "b"')) == "a &#34;b&#34;"


def test_a_number_never_leaves_its_unit() -> None:
    spell: Callable[[float], str]
    for spell in (formats.grams, formats.ounces, formats.celsius, formats.centimetres, formats.litres, formats.percent):
        assert " " not in spell(1250.5)


@pytest.mark.parametrize(
    ("name", "told"),
    [("cocktail stick", "cocktail sticks"), ("rounds of baking paper", "rounds of baking paper"),
     ("sheet of baking paper", "sheets of baking paper"), ("lolly stick, 4 mm", "lolly sticks, 4 mm"),
     ("brush for the glaze", "brushes for the glaze"), ("box", "boxes"), ("dummy", "dummies"), ("tray", "trays")],
)  # fmt: skip
def test_the_name_of_several(name: str, told: str) -> None:
    assert formats.several(name) == told


@pytest.mark.parametrize(
    ("name", "told"),
    [("24 standard cups", "24 standard cupcakes"), ("mini cups", "mini cupcakes"), ("fairy cups", "fairy cakes"),
     ("round 20 cm", "round 20 cm"), ("Gran's tea cups", "Gran's tea cups")],
)  # fmt: skip
def test_cups_of_a_tray_are_no_measure(name: str, told: str) -> None:
    assert formats.cups_said(name) == told


@pytest.mark.parametrize(
    ("shown", "unit", "name", "told"),
    [(5, "", "dowels", "5 dowels"), (1, "", "cake card", "1 cake card"), (2, "", "cake card", "2 cake cards"),
     (30, "g", "wire", "30\u00a0g wire"), (0.5, "", "board", "½ board")],
)  # fmt: skip
def test_how_much_of_what(shown: float, unit: str, name: str, told: str) -> None:
    assert formats.counted(Amount(shown, shown, unit), name) == told


@pytest.mark.parametrize(
    ("shown", "unit", "told"),
    [(20, "oz", "1\u00a0lb\u00a04\u00a0oz"), (1.5, "cup", "1½\u00a0cups"), (1, "cup", "1\u00a0cup")],
)
def test_amounts_in_ounces_and_cups(shown: float, unit: str, told: str) -> None:
    assert formats.spelled(Amount(shown, shown, unit)) == told
