"""The amount of an ingredient as a note has it, in the book's spelling: 2 x 250 g, 225g/8oz, half a teaspoon."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from tinbook.notes.kitchens import Kitchen
from tinbook.notes.numbers import in_figures
from tinbook.units import CUPS_ML, Measures, Misread, Quantity, read_number, read_quantity
from tinbook.units.numerals import DIGITS
from tinbook.units.words import WORDS

APART = 0.06
"""Two spellings of one amount differ by at most this share of the larger: 225 g and 8 oz do by 0.8 %."""

_WORDS = "|".join(sorted(map(re.escape, WORDS), key=len, reverse=True))
_WHOLE = r"(?<![0-9])[0-9]{1,7}(?![0-9])"
NUM = (
    rf"(?:{_WHOLE}(?:,[0-9]{{3}}(?![0-9]))?(?:\.[0-9]{{1,7}}(?![0-9]))?"
    rf"(?:\s*[{DIGITS[3:]}]|\s+[0-9]{{1,2}}\s*[/⁄]\s*[0-9]{{1,2}}|\s*[/⁄]\s*[0-9]{{1,2}})?"
    rf"|[{DIGITS[3:]}]|\.[0-9]{{1,7}})"
)
"""A number as notes write it. Its length is bounded, so that a page full of digits costs no more than any other."""
UNIT = (
    rf"(?:level\s+)?(?:(?:us|american|uk|imperial|british|metric|australian)\s+)?(?:fl(?:uid)?\.?\s*(?:oz"
    rf"|ounces?)|{_WORDS}|c|pints?|pt|sticks?|dessertspoons?|dsp|cl|dl)(?![^\W\d_])\.?"
)
_AMOUNT = re.compile(
    rf"\s*(?P<num>{NUM})\s*-?\s*(?P<unit>{UNIT})?(?P<more>\s*{NUM}\s*(?:oz|g|ml)(?![^\W\d_]))?", re.IGNORECASE
)
_TIMES = re.compile(
    rf"\s*(?P<count>[0-9]+)\s*(?:[x×]\s*(?P<one>{NUM}\s*-?\s*(?:g|gm?s?|kg|oz|ounces?|lbs?|ml|l)(?![^\W\d_])\.?)"
    rf"|[x×]?\s*\(?\s*(?P<each>{NUM}\s*-?\s*(?:g|kg|oz|ounces?|lbs?|ml|l)(?![^\W\d_])\.?)\s*\)?(?=\s*(?"
    rf":packs?|packages?|packets?|pkgs?|tins?|cans?|bars?|tubs?|boxes|box|cartons?"
    rf"|pots?|blocks?|bags?)\b))"
    r"\s*(?:packs?|packages?|packets?|pkgs?|tins?|cans?|bars?|tubs?|boxes|box"
    r"|cartons?|pots?|blocks?|bags?)?\b\s*(?:of\s+)?",
    re.IGNORECASE,
)
_OTHER = re.compile(rf"\s*(?:[/|]|or\b|\()\s*(?:about\s+|approx\.?\s+|~\s*)?(?={NUM}\s*-?\s*{UNIT})", re.IGNORECASE)
_PLUS = re.compile(rf"\s*(?:\+|plus\b|and\b|&)\s*(?={NUM}\s*{UNIT})", re.IGNORECASE)
_RANGE = re.compile(rf"\s*(?:[-‐‑‒–—−]|to\b|or\b)\s*(?={NUM})", re.IGNORECASE)
_PINCH = re.compile(r"\s*(?:an?\s+|1\s+)?pinch(?:es)?\b\s*(?:of\s+)?", re.IGNORECASE)
_EACH_HAND = re.compile(
    rf"\s*(?:an?\s+|{NUM}\s*)?(?P<word>heaped|heaping|rounded|scant|generous|knobs?|splash(?:es)?|handfuls?|dash(?:es)?"
    r"|glugs?|drops?|drizzles?|few|little|some|(?:good|large|big|small)(?=\s+pinch)"
    r"|squeeze|sprinkle|sprinkling|bit|touch|grating|large pinch|thumb|jar|packet"
    r"|tin|can|bag|box|slug|walnut)\b",
    re.IGNORECASE,
)
_ABOUT = re.compile(
    r"\s*(?:about|approx(?:imately)?\.?|around|roughly|circa|c\.|~|up to|at least)\s*(?=[0-9½¼¾⅓⅔])", re.IGNORECASE
)
_ARTICLE = re.compile(rf"^\s*an?\s+(?=(?:level\s+)?(?:{_WORDS}|stick|pint|dessertspoon)\b)", re.IGNORECASE)
_OF = re.compile(r"\s*\)?\s*(?:of\s+)?", re.IGNORECASE)
_CUPS = re.compile(rf"{NUM}(?=\s*(?:cups?|c)\b)", re.IGNORECASE)
_FIGURE = re.compile(rf"\s*[{DIGITS}.]")


@dataclass(frozen=True, slots=True, kw_only=True)
class NotedAmount:
    """`text` in the book's spelling, "" if it has none; `doubt`: why it is not certain; `end`: where it ends."""

    text: str
    end: int
    doubt: str = ""
    base: Quantity | None = None
    beside_ml: tuple[float, float] | None = None
    """What a weight says about itself by volume, from the smallest cup it may mean to the largest; None for nothing."""


def prepared(line: str) -> str:
    """A line with its numbers in digits; positions are those in this text."""
    text = _ARTICLE.sub("1 ", in_figures(line.strip()))
    return re.sub(rf"(?<![{DIGITS}])\.(?=[0-9])", "0.", text)


def begins(line: str) -> bool:
    """Whether a prepared line starts with an amount of any kind."""
    return bool(_FIGURE.match(line) or _PINCH.match(line) or _EACH_HAND.match(line) or _ABOUT.match(line))


def read_amount(line: str, kitchen: Kitchen, measures: Measures) -> NotedAmount | None:
    """The amount a prepared line starts with; None if it starts with none."""
    if about := _ABOUT.match(line):
        inner = read_amount(line[about.end() :], kitchen, measures)
        if inner is None:
            return None
        return NotedAmount(text="", end=about.end() + inner.end, doubt=f'"{about[0].strip()}" is not a weight')
    if hand := _EACH_HAND.match(line):
        return NotedAmount(text="", end=hand.end(), doubt=f'"{hand["word"]}" means a different amount to everyone')
    if pinch := _PINCH.match(line):
        return NotedAmount(text="1 pinch", end=pinch.end())
    if (packs := _TIMES.match(line)) and packs["count"] != "0":
        one = _one(packs["one"] or packs["each"], kitchen, measures)
        if one and one.base:
            return NotedAmount(
                text=f"{int(packs['count'][:6]) * one.base.value:g} {one.base.unit}",
                end=packs.end(),
                doubt=one.doubt,
                base=one.base,
            )
    first = _one(line, kitchen, measures)
    if first is None:
        return None
    if ranged := _RANGE.match(line, first.end):
        second = _one(line[ranged.end() :], kitchen, measures)
        if _is_other_spelling(first, second, ranged[0]):
            return _checked(line, first, kitchen, measures)
        end = ranged.end() + (second.end if second else 0)
        return NotedAmount(
            text="", end=_after(line, end), doubt=f'"{line[:end].strip()}" is a range; this takes one amount'
        )
    if plus := _PLUS.match(line, first.end):
        return _sum(line, first, plus.end(), kitchen, measures)
    return _checked(line, first, kitchen, measures)


def _is_other_spelling(first: NotedAmount, second: NotedAmount | None, word: str) -> bool:
    """Whether "or" stands between two units for one amount: 225 g or 8 oz."""
    one, two = first.base, second.base if second else None
    return bool(one and two and "or" in word.lower() and one.unit and two.unit and one.unit != two.unit)


def _one(line: str, kitchen: Kitchen, measures: Measures) -> NotedAmount | None:
    """A single number with or without its unit."""
    found = _AMOUNT.match(line)
    if found is None:
        return None
    number, unit = " ".join(found["num"].split()), " ".join((found["unit"] or "").rstrip(".").split())
    end = found.end() if found["more"] else (found.end("unit") if found["unit"] else found.end("num"))
    try:
        value = read_number(line, found.start("num"))[0]
    except Misread as error:
        return NotedAmount(text="", end=end, doubt=error.message)
    text, doubt = _spelled(number, value, unit, kitchen)
    if doubt or not text:
        return NotedAmount(text="", end=end, doubt=doubt)
    if found["more"] and unit.lower() in ("lb", "lbs", "pound", "pounds", "kg", "l"):
        text = f"{text} {found['more'].strip()}"
    elif found["more"]:
        end = found.end("unit") if found["unit"] else found.end("num")
    try:
        return NotedAmount(
            text=text,
            end=end,
            doubt="",
            base=read_quantity(text, measures, ("mass", "volume", "count", "length", "time")),
        )
    except Misread as error:
        return NotedAmount(text="", end=end, doubt=error.message)


def _spelled(number: str, value: float, unit: str, kitchen: Kitchen) -> tuple[str, str]:
    """A number and a note's unit in the book's spelling, and any objection to it."""
    low = unit.lower().removeprefix("level ")
    word = WORDS.get(low, low)
    if word in ("c", "cup", "°C") and low in ("c", "cup", "cups", "cupful", "cupfuls"):
        return (f"{number} {kitchen.cup}", "") if kitchen.cup else ("", "which cup? US cup, metric cup or UK cup")
    if word == "tbsp":
        return (f"{number} {kitchen.tablespoon}", "") if kitchen.tablespoon else ("", "a tablespoon of 15 ml or 20 ml?")
    if word == "tsp":
        return f"{number} {kitchen.teaspoon}", ""
    if low.replace(".", "").replace(" ", "") in ("floz", "fluidoz", "flounce", "flounces", "fluidounce", "fluidounces"):
        return (f"{number} {kitchen.fluid_ounce}", "") if kitchen.fluid_ounce else ("", "which fluid ounce? UK or US")
    if low in ("pint", "pints", "pt"):
        return (f"{value * kitchen.pint_ml:.0f} ml", "") if kitchen.pint_ml else ("", "which pint? 568 ml or 473 ml")
    if low in ("stick", "sticks"):
        return (f"{value * kitchen.stick_g:.0f} g", "") if kitchen.stick_g else ("", "a stick of 4 oz, 113 g?")
    if low in ("dessertspoon", "dessertspoons", "dsp"):
        return f"{2 * value:g} tsp", ""
    if low in ("cl", "dl"):
        return f"{value * (10 if low == 'cl' else 100):g} ml", ""
    return f"{number} {unit}".strip(), ""


def _sum(line: str, first: NotedAmount, at: int, kitchen: Kitchen, measures: Measures) -> NotedAmount:
    second = _one(line[at:], kitchen, measures)
    end = _after(line, at + (second.end if second else 0))
    one, two = first.base, second.base if second else None
    if one is None or two is None or one.dimension != two.dimension or one.dimension not in ("mass", "volume"):
        return NotedAmount(text="", end=end, doubt=f'"{line[:end].strip()}" is two amounts')
    unit = "g" if one.dimension == "mass" else "ml"
    return NotedAmount(text=f"{round(one.base + two.base, 1):g} {unit}", end=end)


def _checked(line: str, first: NotedAmount, kitchen: Kitchen, measures: Measures) -> NotedAmount:
    """The amount, once its other spellings ("/8oz", "(8 oz)") agree with it."""
    spellings, end = [first], first.end
    while other := _OTHER.match(line, end):
        second = _one(line[other.end() :], kitchen, measures)
        if second is None or (second.base and second.base.unit == ""):
            break
        end = other.end() + second.end
        spellings.append(second)
    known = [each for each in spellings if each.base is not None and each.base.unit]
    if len(spellings) > 1 and not known:
        return NotedAmount(text="", end=_after(line, end), doubt=first.doubt or "neither amount is certain")
    best = min(known, key=_rank) if known else first
    after = _after(line, end)
    if len(spellings) == 1:
        return NotedAmount(text=best.text, end=after, doubt=best.doubt, base=best.base)
    for each in known:
        here, there = best.base, each.base
        if here and there and here.dimension == there.dimension and not _agree(here, there):
            return NotedAmount(text="", end=after, doubt=f"{best.text} and {each.text} are not the same amount")
    beside = _beside(line, spellings) if best.base and best.base.dimension == "mass" else None
    return NotedAmount(text=best.text, end=after, base=best.base, beside_ml=beside)


def _beside(line: str, spellings: Sequence[NotedAmount]) -> tuple[float, float] | None:
    """The volume given beside a weight, in ml; where nobody says whose cup it is, for the smallest and the largest."""
    for each in spellings:
        if each.base and each.base.dimension == "volume":
            return each.base.base, each.base.base
    if cups := _CUPS.search(line):
        value = read_number(line, cups.start())[0]
        return value * min(CUPS_ML.values()), value * max(CUPS_ML.values())
    return None


def _rank(amount: NotedAmount) -> int:
    """Metric weight first, then other weights, then volumes."""
    unit = amount.base.unit if amount.base else ""
    return ("g", "kg", "ml", "l", "oz", "lb").index(unit) if unit in ("g", "kg", "ml", "l", "oz", "lb") else 9


def _agree(one: Quantity, other: Quantity) -> bool:
    low, high = sorted((one.base, other.base))
    return high - low <= APART * high


def _after(line: str, at: int) -> int:
    of = _OF.match(line, at)
    return of.end() if of else at
