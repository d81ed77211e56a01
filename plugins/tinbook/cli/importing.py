"""schema.org data from a saved page, or from a JSON file, as a recipe to draft from.

The page is read as text: nothing in it is run and nothing is fetched. What others write is often untidy, so types and
words are taken as they come; only what cannot be read at all is refused, with a reason.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from dataclasses import dataclass
from html import unescape
from html.parser import HTMLParser
from typing import Any, Literal

LARGEST = 5_000_000
PAGES, FILES = (".html", ".htm", ".xhtml"), (".json", ".jsonld")
LONGEST_MIN = 7 * 24 * 60

_PAGE = re.compile(r"\s*<(?:!doctype\s+html|html|\?xml)\b", re.IGNORECASE)
_JSON = re.compile(r"\s*(?:\{\s*\"|\[\s*\{)")
_WRAPPED = re.compile(r"^\s*(?:/[/*]\s*)?<!(?:\[CDATA\[|--)(?:\s*\*/)?|(?:/[/*]\s*)?(?:\]\]|--)>(?:\s*\*/)?\s*$")
_MARK = re.compile(r"<!--|<script(?![a-z0-9-])", re.IGNORECASE)
_START = re.compile(r"""<script(?:[^<>"']|"[^"]{0,2000}"|'[^']{0,2000}')*>""", re.IGNORECASE)
_END = re.compile(r"</script", re.IGNORECASE)
_TAG = re.compile(r"</?([a-zA-Z][a-zA-Z0-9]*)\b[^<>]{0,2000}>")
_BREAKS = frozenset(("p", "br", "li", "div", "ol", "ul", "tr", "h1", "h2", "h3", "h4"))
_NUMBER = r"(\d{1,9}(?:[.,]\d{1,9})?)"
_DURATION = re.compile(rf"P(?:{_NUMBER}W)?(?:{_NUMBER}D)?(?:T(?:{_NUMBER}H)?(?:{_NUMBER}M)?(?:{_NUMBER}S)?)?")
_MINUTES = (7 * 24 * 60, 24 * 60, 60, 1, 1 / 60)


class NoRecipe(ValueError):
    """Nothing to draft from; the message says why and what to do."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """A recipe as found, all of it text. `others`: how many more the page holds."""

    about: tuple[str, ...]
    also: tuple[str, ...]
    category: str
    keywords: tuple[str, ...]
    yields: tuple[str, ...]
    ingredients: tuple[str, ...]
    steps: tuple[str, ...]
    cook: str
    others: int


def form_of(name: str, text: str) -> Literal["page", "json", ""]:
    """Whether a file, or pasted text, is a web page or JSON; "" for plain lines."""
    low = name.lower()
    if low.endswith(PAGES):
        return "page"
    if low.endswith(FILES):
        return "json"
    if low.endswith(".txt"):
        return ""
    return "page" if _PAGE.match(text) else "json" if _JSON.match(text) else ""


def find_recipe(text: str, form: Literal["page", "json"], name: str) -> Found:
    """The recipe in a page or in JSON: the one called `name`, or the first. Raises NoRecipe."""
    if len(text) > LARGEST:
        raise NoRecipe(f"it is larger than {LARGEST // 1_000_000} MB: save the page alone, without its pictures")
    recipes: list[dict[str, Any]] = []
    broken = ""
    for script in _scripts(text) if form == "page" else [text]:
        try:
            recipes += _recipes(_loaded(script))
        except ValueError as error:
            broken = broken or f"its data cannot be read: {_reason(error)}"
        except RecursionError:
            broken = broken or "its data cannot be read: it is nested too deep"
    if not recipes:
        where = "the page" if form == "page" else "the file"
        reason = broken or f"{where} has no schema.org Recipe"
        raise NoRecipe(f"{reason}. Copy its ingredients and steps into a text file and use that")
    named = [recipe for recipe in recipes if _one(recipe.get("name")).lower() == name.lower()]
    return _found((named or recipes)[0], len(recipes) - 1)


def minutes_of(text: str) -> float | None:
    """The minutes of an ISO 8601 duration of weeks, days, hours, minutes and seconds; None for anything else.

    >>> minutes_of("PT1H35M"), minutes_of("P1W"), minutes_of("35 min")
    (95.0, 10080.0, None)
    """
    duration = _DURATION.fullmatch(text.strip().upper())
    if duration is None:
        return None
    total = sum(
        float((part or "0").replace(",", ".")) * size for part, size in zip(duration.groups(), _MINUTES, strict=True)
    )
    return total if 0 < total <= LONGEST_MIN else None


class _Start(HTMLParser):
    """The type given in a script's start tag."""

    kind = ""

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.kind = next((value or "" for name, value in attrs if name == "type"), "").split(";")[0].strip().lower()


def _scripts(text: str) -> Iterator[str]:
    """The scripts of a page that hold JSON-LD.

    Only their start tags are parsed: on a page made to trip it, the parser's time grows with the square of the length.
    """
    at = 0
    while mark := _MARK.search(text, at):
        if mark[0] == "<!--":
            end = text.find("-->", mark.end())
            at = end if end >= 0 else len(text)
            continue
        start = _START.match(text, mark.start())
        at = mark.end()
        if start is None:
            continue
        end_tag = _END.search(text, start.end())
        at = end_tag.end() if end_tag else len(text)
        parser = _Start()
        parser.feed(start[0])
        if parser.kind == "application/ld+json":
            yield text[start.end() : end_tag.start() if end_tag else len(text)]


def _loaded(script: str) -> Any:
    """JSON, its numbers as text. Line breaks within a text and wrappings for old browsers are allowed."""
    bare = _WRAPPED.sub("", _WRAPPED.sub("", script)).strip().removesuffix(";")
    return json.loads(bare, strict=False, parse_int=str, parse_float=str)


def _reason(error: ValueError) -> str:
    if isinstance(error, json.JSONDecodeError):
        return f"line {error.lineno}, column {error.colno} is not JSON"
    return "it is not JSON"


def _recipes(data: Any) -> list[dict[str, Any]]:
    """Every Recipe in the data, wherever it stands."""
    recipes, left = [], [data]
    while left:
        here = left.pop()
        if isinstance(here, dict):
            if "Recipe" in _types(here):
                recipes.append(here)
            left += reversed(list(here.values()))
        elif isinstance(here, list):
            left += reversed(here)
    return recipes


def _types(data: dict[str, Any]) -> list[str]:
    kinds = data.get("@type", data.get("type"))
    return [
        re.split(r"[/:#]", kind)[-1]
        for kind in (kinds if isinstance(kinds, list) else [kinds])
        if isinstance(kind, str)
    ]


def _found(data: dict[str, Any], others: int) -> Found:
    return Found(
        about=tuple(line for text in _texts(data.get("description")) for line in _lines(text)),
        also=tuple(_flat(data.get("alternateName"))),
        category=next(iter(_flat(data.get("recipeCategory"))), ""),
        keywords=tuple(
            word for text in _flat(data.get("keywords")) for part in text.split(",") if (word := part.strip())
        ),
        yields=tuple(dict.fromkeys(_flat(data.get("recipeYield", data.get("yield"))))),
        ingredients=tuple(
            line for text in _texts(data.get("recipeIngredient", data.get("ingredients"))) for line in _lines(text)
        ),
        steps=tuple(_steps(data.get("recipeInstructions", data.get("step")))),
        cook=_one(data.get("cookTime")),
        others=others,
    )


def _texts(value: Any) -> Iterator[str]:
    """The texts in a value: its own, a list's, or the name of a group of keys."""
    left = [value]
    while left:
        here = left.pop()
        if isinstance(here, str):
            yield here
        elif isinstance(here, list):
            left += reversed(here)
        elif isinstance(here, dict):
            if "value" in here:
                words = (here["value"], here.get("unitText"), here.get("name"))
                yield " ".join(word for word in words if isinstance(word, str))
            else:
                left.append(next((here[key] for key in ("@value", "text", "name") if here.get(key)), None))


def _flat(value: Any) -> list[str]:
    """The texts in a value, each on one line."""
    return [line for text in _texts(value) if (line := " ".join(_lines(text)))]


def _one(value: Any) -> str:
    return next(iter(_flat(value)), "")


def _steps(value: Any) -> Iterator[str]:
    """The steps in order; those of a section begin with its name."""
    left: list[tuple[Any, str]] = [(value, "")]
    while left:
        here, head = left.pop()
        if isinstance(here, str):
            lines = _lines(here)
            if lines and head:
                lines[0] = f"{head}: {lines[0]}"
            yield from lines
        elif isinstance(here, list):
            heads = [head, *[""] * (len(here) - 1)]
            left += reversed(list(zip(here, heads, strict=False)))
        elif isinstance(here, dict):
            inner = here.get("itemListElement", here.get("steps"))
            said = next((here[key] for key in ("text", "item", "name", "description") if here.get(key)), None)
            if here.get("text") or not inner:
                left.append((said, head))
            else:
                section = _one(here.get("name")) if "HowToSection" in _types(here) else ""
                left.append((inner, section or head))


def _lines(text: str) -> list[str]:
    """The lines of a text as a reader of the page sees them: HTML tags removed, runs of spaces made one."""
    # twice: a text with tags in it is often escaped once more
    plain = (
        unescape(_TAG.sub(_mark, unescape(text) if "&lt;" in text else text)) if "<" in text or "&" in text else text
    )
    return [line for row in plain.splitlines() if (line := " ".join(row.split()))]


def _mark(tag: re.Match[str]) -> str:
    return "\n" if tag[1].lower() in _BREAKS else ""
