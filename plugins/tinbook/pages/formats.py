"""Spells numbers that were rounded elsewhere. A unit never leaves its number (no-break space)."""

from __future__ import annotations

import json
from collections.abc import Iterable
from functools import lru_cache

from markupsafe import Markup, escape

from tinbook.plans.measures import Measured, Spooned
from tinbook.plans.versions import Amount
from tinbook.units import Heat, Quantity, Span

NBSP = "\u00a0"
MINUS = "\u2212"
UNIT_SEPARATOR = "\x1f"
FRACTIONS = {125: "⅛", 250: "¼", 333: "⅓", 375: "⅜", 500: "½", 625: "⅝", 667: "⅔", 750: "¾", 875: "⅞"}
OUNCES_IN_POUND = 16


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
    """A number with a fixed count of decimals, for columns: `1.78`, `−1.6`."""
    text = f"{abs(value):.{places}f}"
    return (MINUS if value < 0 and float(text) else "") + text


@lru_cache(maxsize=4096)
def mixed(value: float) -> str:
    """`3½`, `⅔`, `2`: eighths, quarters and thirds as fractions, other numbers plain."""
    whole = int(value)
    fraction = FRACTIONS.get(round((value - whole) * 1000))
    if fraction is None:
        return number(value)
    return f"{whole or ''}{fraction}"


def signed(value: float) -> str:
    """A percentage with its sign: `+4.2`, `−1.6`, `0`."""
    return ("+" if value > 0 else "") + number(value)


def with_unit(text: str, unit: str) -> str:
    """A figure and its unit, kept together."""
    return f"{text}{NBSP}{unit}" if unit else text


def figure(amount: Amount) -> str:
    """An amount without its unit, as measured out."""
    return number(amount.shown) if amount.unit in ("g", "ml") else mixed(amount.shown)


def spelled(amount: Amount) -> str:
    """An amount with its unit: `595 g`, `3½ tsp`, `7`."""
    return with_unit(figure(amount), amount.unit)


def grams(value: float) -> str:
    """`595 g`."""
    return with_unit(number(value), "g")


def written_figure(measured: Measured) -> str:
    """The figure of a line as written: grams, or what is counted, poured or spooned as such."""
    if measured.weighed:
        return number(measured.grams)
    return number(measured.millilitres) if measured.millilitres is not None else mixed(measured.line.amount)


def written_unit(measured: Measured) -> str:
    """Its unit, empty for pieces."""
    return measured.line.unit


def written(measured: Measured) -> str:
    """A line as written, with its unit."""
    return with_unit(written_figure(measured), measured.line.unit)


def ounces(value: float) -> str:
    """`15 oz`, `1 lb 4 oz`, `2¼ oz`."""
    pounds, rest = divmod(value, OUNCES_IN_POUND)
    if not pounds:
        return with_unit(mixed(value), "oz")
    pound = with_unit(str(int(pounds)), "lb")
    return f"{pound}{NBSP}{with_unit(mixed(rest), 'oz')}" if rest else pound


def spoons(spooned: Spooned | None) -> str:
    """`1⅔ cups`, `2 tbsp`; says so where an ingredient has no volume measure."""
    if spooned is None:
        return "by weight"
    unit = "cups" if spooned.unit == "cup" and spooned.shown > 1 else spooned.unit
    return with_unit(mixed(spooned.shown), unit)


def millimetres(value: float) -> str:
    """Whole millimetres: `44 mm`."""
    return with_unit(f"{value:.0f}", "mm")


def centimetres(value_mm: float) -> str:
    """A length of the trade in cm: `7.5 cm`."""
    return with_unit(number(value_mm / 10), "cm")


def litres(value_ml: float) -> str:
    """`2.36 l` from a litre up, `830 ml` below; rounded to 10 ml before."""
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
    """`1.9 %`."""
    return with_unit(number(value), "%")


def kept_together(text: str) -> str:
    """A written amount whose number keeps its unit."""
    return text.replace(" ", NBSP)


def tin_words(text: str) -> str:
    """A tin's name with `×` and figures kept to their units."""
    return text.replace(" x ", f"{NBSP}×{NBSP}").replace(" cm", f"{NBSP}cm").replace(" in", f"{NBSP}in")


def cells(texts: Iterable[str]) -> Markup:
    """A row of table cells. Escaped in one go: a large book has a million of them."""
    row = str(escape(UNIT_SEPARATOR.join(texts)))
    return Markup("<td>" + row.replace(UNIT_SEPARATOR, "</td><td>") + "</td>")


def title(text: str) -> str:
    """The first letter large, the rest as written: `Self-raising flour`, `UK large`."""
    return text[:1].upper() + text[1:]


def sentence(words: Iterable[str]) -> str:
    """`milk`, `milk and egg`, `milk, egg and wheat`."""
    *most, last = words
    return f"{', '.join(most)} and {last}" if most else last


def quoted(text: str) -> Markup:
    """Text as a quoted value for a page's front matter."""
    return Markup(json.dumps(" ".join(text.split())))


def plain(text: object) -> Markup:
    """Text from YAML for a Markdown page: nothing in it is markup, neither Markdown nor HTML."""
    spelled_out = "".join(
        f"&#{ord(sign)};" if not (sign.isalnum() or sign in " ,.'’–—×½¼¾") else sign
        for sign in " ".join(str(text).split())
    )
    return Markup(spelled_out)


def prose(text: str) -> Markup:
    """Markdown from YAML: its HTML, attribute lists and script links are shown, not run."""
    safe = text.replace("&", "&amp;").replace("<", "&lt;").replace("{", "&#123;").replace("\x00", "")
    lines = ["&#35;" + line[1:] if line.startswith("#") else line for line in safe.splitlines()]
    return Markup("\n".join(lines).replace("](", "]&#40;") if _odd_link(safe) else "\n".join(lines))


def _odd_link(text: str) -> bool:
    """Whether a link in it leads anywhere but to a page or the web."""
    low = "".join(text.lower().split())
    return any(scheme in low for scheme in ("javascript:", "data:", "vbscript:", "]:", "<!--"))
