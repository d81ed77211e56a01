"""The spelling of numbers, and text from YAML made harmless."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from markdown import markdown

from tinbook.pages import formats
from tinbook.plans.measures import Spooned
from tinbook.plans.versions import Amount
from tinbook.units import read_heat, read_span

N = "\u00a0"


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (595, "595"),
        (1250, "1250"),
        (12500, "12,500"),
        (4.5, "4.5"),
        (0.25, "0.25"),
        (-1.6, "−1.6"),
        (0, "0"),
        (-0.0, "0"),
        (100, "100"),
    ],
)
def test_number(value: float, text: str) -> None:
    assert formats.number(value) == text


@pytest.mark.parametrize(
    ("value", "text"),
    [(3.5, "3½"), (0.5, "½"), (2, "2"), (1 / 3, "⅓"), (1 + 2 / 3, "1⅔"), (0.125, "⅛"), (2.75, "2¾"), (0.1, "0.1")],
)
def test_mixed(value: float, text: str) -> None:
    assert formats.mixed(value) == text


def test_signs_and_decimals() -> None:
    assert [formats.signed(value) for value in (4.2, -1.6, 0)] == ["+4.2", "−1.6", "0"]
    assert [formats.fixed(value, 2) for value in (1.78, -0.5, 4, -0.001)] == ["1.78", "−0.50", "4.00", "0.00"]


def test_a_unit_never_leaves_its_number() -> None:
    assert formats.spelled(Amount(595.2, 595, "g")) == f"595{N}g"
    assert formats.spelled(Amount(3.4, 3.5, "tsp")) == f"3½{N}tsp"
    assert formats.spelled(Amount(7.1, 7, "")) == "7"
    assert formats.litres(2360) == f"2.36{N}l"
    assert formats.litres(830) == f"830{N}ml"
    assert formats.millimetres(44.3) == f"44{N}mm"


@pytest.mark.parametrize(
    ("value", "text"), [(15, f"15{N}oz"), (20, f"1{N}lb{N}4{N}oz"), (16, f"1{N}lb"), (2.25, f"2¼{N}oz")]
)
def test_ounces(value: float, text: str) -> None:
    assert formats.ounces(value) == text


def test_spoons_and_cups() -> None:
    assert formats.spoons(Spooned(1.7, 5 / 3, "cup")) == f"1⅔{N}cups"
    assert formats.spoons(Spooned(0.5, 0.5, "cup")) == f"½{N}cup"
    assert formats.spoons(None) == "by weight"


def test_times_and_oven() -> None:
    assert formats.span(read_span("55-65 min", ("time",))) == f"55–65{N}min"
    assert formats.span(read_span("2 h", ("time",))) == f"2{N}h"
    assert formats.oven(read_heat("160 °C"), 20) == f"160{N}°C, fan 140{N}°C"


def test_words() -> None:
    assert formats.sentence(["milk"]) == "milk"
    assert formats.sentence(["milk", "egg", "wheat"]) == "milk, egg and wheat"
    assert formats.title("UK large") == "UK large"
    assert formats.quoted('a "b"\n c') == '"a \\"b\\" c"'


HOSTILE = [
    "<script>alert(1)</script>",
    "[x](javascript:alert(1))",
    "**b** _i_ `c` # h",
    "{: onclick=alert(1) }",
    "![i](http://elsewhere/x.png)",
    "a|b\n\n---\n- c",
    "<img src=x onerror=alert(1)>",
    "[ref]: javascript:alert(1)",
    "&lt;b&gt;",
]


@pytest.mark.parametrize("text", HOSTILE)
def test_plain_text_is_never_markup(text: str) -> None:
    made = markdown(f"{formats.plain(text)}", extensions=["attr_list", "tables"])
    assert made.startswith("<p>") and made.count("<") == 2, made


@given(st.text(max_size=80))
def test_no_plain_text_at_all_is_markup(text: str) -> None:
    made = markdown(f"x{formats.plain(text)}", extensions=["attr_list"])
    assert made.count("<") == 2, made


@pytest.mark.parametrize("text", HOSTILE)
def test_prose_runs_nothing(text: str) -> None:
    made = markdown(str(formats.prose(text)), extensions=["attr_list"]).lower()
    assert "<script" not in made and "<img src=x" not in made and "onclick" not in made.replace("&#123;: onclick", "")
    assert 'href="javascript' not in made


def test_prose_is_markdown() -> None:
    assert "<em>pale</em>" in markdown(str(formats.prose("Beat until *pale*.")))
