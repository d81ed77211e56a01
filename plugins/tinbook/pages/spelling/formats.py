"""Spells numbers that were rounded elsewhere. A unit never leaves its number (no-break space)."""

from __future__ import annotations

import json
import re
from collections.abc import Iterable
from functools import lru_cache

from markupsafe import Markup, escape

from tinbook.plans.base.versions import Amount
from tinbook.plans.measures.spooned import Measured, Spooned
from tinbook.units import Heat, Quantity, Span

NBSP = "\u00a0"
MINUS = "\u2212"
FRACTIONS = {125: "⅛", 250: "¼", 333: "⅓", 375: "⅜", 500: "½", 625: "⅝", 667: "⅔", 750: "¾", 875: "⅞"}
PINCH = 0.0625
"""Of a teaspoon."""
OUNCES_IN_POUND = 16
TURNING = dict.fromkeys([*range(0x202A, 0x202F), *range(0x2066, 0x206A)])
MARKUP = re.compile(r"""[^\w ,.;%/?°'"’()–—×-]|_|(?<!\w)-|-(?!\w)""")
"""A character that Markdown may take for markup where it stands."""
LISTED = re.compile(r"^(\d+)\.")
HEADING = re.compile(r"(?<![^\s>*+.-])#|(?<![^\s>*+])[=-](?=[=-]*\s*$)", re.MULTILINE)
"""A character that makes a heading, even in a list or a quotation: before the words, or under them."""
LINK = re.compile(r"\]\(([^)]*)\)?")
AN = re.compile(r"[aeio]|8|1[18]\b", re.IGNORECASE)
"""What begins with a vowel as it is said: `oval`, `8 mm`, `11`, `80 g`."""
WEB = re.compile(r"\s*https?:", re.IGNORECASE)
HEAD = re.compile(r"(.*?)((?: of | for | with |, | \().*|)", re.DOTALL)
"""What is counted, and what it is made of, for or like: `sheet` and ` of baking paper`."""
CUPS = re.compile(r"\b(mini|standard|jumbo) cups\b")
CONSONANT_Y = re.compile(r"[^aeiou]y$")


@lru_cache(maxsize=4096)
def number(value: float) -> str:
    """`595`, `1250`, `12,500`, `4.5`, `−1.6`: no trailing zeros, a comma from five digits."""
    text = f"{abs(value):.4f}".rstrip("0").rstrip(".")
    whole, dot, rest = text.partition(".")
    if len(whole) > 4:
        whole = f"{int(whole):,}"
    return (MINUS if value < 0 and text != "0" else "") + whole + dot + rest


@lru_cache(maxsize=4096)
def fixed(value: float, places: int) -> str:
    """A number with a fixed number of decimals, for columns: `1.78`, `−1.6`."""
    text = f"{abs(value):.{places}f}"
    return (MINUS if value < 0 and float(text) else "") + text


def bounds(low: float, high: float) -> str:
    """`140–150`; one number if both are the same."""
    return number(low) if low == high else f"{number(low)}–{number(high)}"


@lru_cache(maxsize=4096)
def mixed(value: float) -> str:
    """`3½`, `⅔`, `2`: eighths, quarters and thirds as fractions, a pinch as `1/16`, other numbers plain."""
    if value == PINCH:
        return "1/16"
    whole = int(value)
    fraction = FRACTIONS.get(round((value - whole) * 1000))
    if fraction is None:
        return number(value)
    return f"{whole or ''}{fraction}"


def signed(value: float) -> str:
    """A percentage with its sign: `+4.2`, `−1.6`, `0`."""
    return ("+" if value > 0 else "") + number(value)


def with_unit(text: str, unit: str) -> str:
    """A figure joined to its unit."""
    return f"{text}{NBSP}{unit}" if unit else text


@lru_cache(maxsize=16384)
def measure(shown: float, unit: str) -> str:
    """A figure as measured out in `unit`, which stands elsewhere: weights plain, spoons and pieces with fractions."""
    return number(shown) if unit in ("g", "ml") else mixed(shown)


def figure(amount: Amount) -> str:
    """An amount without its unit, as measured out."""
    return measure(amount.shown, amount.unit)


def spelled(amount: Amount) -> str:
    """An amount with its unit: `595 g`, `3½ tsp`, `1 lb 4 oz`, `7`."""
    if amount.unit == "oz":
        return ounces(amount.shown)
    return with_unit(figure(amount), "cups" if amount.unit == "cup" and amount.shown > 1 else amount.unit)


def counted(amount: Amount, name: str) -> str:
    """How much of what: `5 dowels`, `1 cake card`, `2 cake cards`, `30 g wire`."""
    return f"{spelled(amount)} {name if amount.unit or amount.shown <= 1 else several(name)}"


def several(name: str) -> str:
    """A name for more than one of it: `cake cards`, `rounds of baking paper`, `brushes, 4 mm`."""
    found = HEAD.fullmatch(name)
    head, rest = (found[1], found[2]) if found else (name, "")
    if head.endswith("s"):
        return name
    if head.endswith(("x", "ch", "sh")):
        return f"{head}es{rest}"
    return f"{head[:-1]}ies{rest}" if CONSONANT_Y.search(head) else f"{head}s{rest}"


def grams(value: float) -> str:
    """`595 g`."""
    return with_unit(number(value), "g")


def written_figure(measured: Measured) -> str:
    """The figure of a line as written: grams, or what is counted, poured or spooned as such."""
    if measured.weighed:
        return number(measured.grams)
    return number(measured.millilitres) if measured.millilitres is not None else mixed(measured.line.amount)


def single(measured: Measured) -> bool:
    """Whether a line as written is of one piece, or less."""
    return measured.line.amount <= 1


def written_unit(measured: Measured) -> str:
    """Its unit, empty for pieces."""
    return measured.line.unit


def written(measured: Measured) -> str:
    """A line as written, with its unit."""
    return with_unit(written_figure(measured), measured.line.unit)


def ounces(value: float) -> str:
    """`12 oz`, `1 lb 4 oz`, `2¼ oz`."""
    pounds, rest = divmod(value, OUNCES_IN_POUND)
    if not pounds:
        return with_unit(mixed(value), "oz")
    pound = with_unit(str(int(pounds)), "lb")
    return f"{pound}{NBSP}{with_unit(mixed(rest), 'oz')}" if rest else pound


def spoons(spooned: Spooned | None) -> str:
    """`1⅔ cups`, `2 tbsp`; says so if an ingredient has no volume measure."""
    if spooned is None:
        return "by weight"
    unit = "cups" if spooned.unit == "cup" and spooned.shown > 1 else spooned.unit
    return with_unit(mixed(spooned.shown), unit)


def millimetres(value: float) -> str:
    """Whole millimetres: `44 mm`."""
    return with_unit(f"{value:.0f}", "mm")


def centimetres(value_mm: float) -> str:
    """A trade length in cm: `7.5 cm`."""
    return with_unit(number(value_mm / 10), "cm")


def litres(value_ml: float) -> str:
    """`2.36 l` from a litre up, `830 ml` below; already rounded to 10 ml."""
    return with_unit(fixed(value_ml / 1000, 2), "l") if value_ml >= 1000 else with_unit(number(value_ml), "ml")


def quantity(value: Quantity) -> str:
    """A quantity as a baker wrote it, in the book's spelling."""
    return with_unit(mixed(value.value), value.unit)


def span(value: Span) -> str:
    """`55–65 min`, `2 h`."""
    if value.low.base == value.high.base:
        return quantity(value.low)
    if value.low.unit == value.high.unit:
        return f"{mixed(value.low.value)}–{quantity(value.high)}"
    return f"{quantity(value.low)} to {quantity(value.high)}"


def celsius(value: float) -> str:
    """`170 °C`."""
    return with_unit(number(round(value, 1)), "°C")


def oven(heat: Heat, fan_difference_c: float) -> str:
    """`160 °C, fan 140 °C`."""
    return f"{celsius(heat.celsius)}, fan {celsius(heat.celsius - fan_difference_c)}"


def percent(value: float) -> str:
    """`1.9%`."""
    return f"{number(value)}%"


def kept_together(text: str) -> str:
    """A written amount, its number joined to its unit."""
    return text.replace(" ", NBSP)


def tin_words(text: str) -> str:
    """A tin's name with `×` and its figures joined to their units."""
    text = cups_said(text)
    return text.replace(" x ", f"{NBSP}×{NBSP}").replace(" cm", f"{NBSP}cm").replace(" in", f"{NBSP}in")


def cups_said(text: str) -> str:
    """A tin's name, cups of a tray by what is baked in them: nobody takes `24 standard cupcakes` for a measure."""
    return CUPS.sub(r"\1 cupcakes", text.replace("fairy cups", "fairy cakes"))


def title(text: str) -> str:
    """The first letter large, the rest as written: `Self-raising flour`, `UK large`."""
    return text[:1].upper() + text[1:]


def a_or_an(text: str) -> str:
    """`a round 20 cm`, `an oval`, `an 8 mm`: with its article, by how it is said."""
    return f"{'an' if AN.match(text) else 'a'} {text}"


def a_said(tin: str) -> str:
    """`a 20 cm round` for `the 20 cm round`; `a number 1` for one called by its owner."""
    return a_or_an(tin.removeprefix("the "))


def sentence(words: Iterable[str]) -> str:
    """`milk`, `milk and egg`, `milk, egg and wheat`."""
    *most, last = words
    return f"{', '.join(most)} and {last}" if most else last


def quoted(text: str) -> Markup:
    """Text as a quoted value for a page's front matter. The theme prints it as it is, so it is escaped here."""
    return Markup(json.dumps(str(escape(" ".join(unturned(text).split()))), ensure_ascii=False))


def unturned(text: str) -> str:
    """Text without the invisible characters that change the reading direction: they could turn the page's own words."""
    return text.translate(TURNING)


def plain(text: object) -> Markup:
    """Text from YAML for a Markdown page: nothing in it is markup, neither Markdown nor HTML."""
    words = " ".join(unturned(str(text)).split())
    return Markup(LISTED.sub(r"\1&#46;", MARKUP.sub(_spelled_out, words)))


def prose(text: str) -> Markup:
    """Markdown from YAML: its HTML, pictures, headings, attribute lists and odd links are shown as text."""
    safe = unturned(text).replace("&", "&amp;").replace("<", "&lt;").replace("{", "&#123;").replace("![", "!&#91;")
    safe = HEADING.sub(_spelled_out, safe.replace("]:", "]&#58;"))
    return Markup(LINK.sub(_link_or_text, safe))


def _spelled_out(sign: re.Match[str]) -> str:
    return f"&#{ord(sign[0])};"


def _link_or_text(link: re.Match[str]) -> str:
    """A link to the web or to a page of the book; any other kind is shown as text."""
    return link[0] if WEB.match(link[1]) or ":" not in link[1] else "]&#40;" + link[0][2:]
