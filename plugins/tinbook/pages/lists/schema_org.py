"""What a page tells other programs: schema.org data as JSON-LD, a Recipe for a mixture or a cake, a HowTo for a
technique.

It says nothing the page does not show: it is made from the same views, after everything private has gone. An amount is
spelled so that our own reader reads it back to the last digit. For a range of times the longer one is given: anyone who
plans by it is never late.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace
from decimal import Decimal
from functools import lru_cache
from typing import Any

from tinbook.models import Book, Step, Take
from tinbook.pages.base.page import Page
from tinbook.pages.cake.view import CakeView
from tinbook.pages.mixture.view import MixtureView
from tinbook.pages.spelling import formats
from tinbook.pages.technique.view import TechniqueView
from tinbook.plans.base.versions import amount
from tinbook.plans.mixtures.inline import StepPiece, pieces, pieces_of
from tinbook.plans.mixtures.steps import step_times
from tinbook.plans.techniques.kit import material_share
from tinbook.plans.techniques.technique import technique_times
from tinbook.units import Quantity

CONTEXT = "https://schema.org"
DONE = " Done: "
"""Stands between what to do and what it looks like when done."""

Data = dict[str, Any]
# Inside a script element these end it, open a comment or break a line of JavaScript. What turns the reading direction
# goes, as on the page, and no-break spaces are plain ones, which every reader knows.
_SAFE = {**formats.TURNING, ord(formats.NBSP): " "} | {ord(sign): f"\\u{ord(sign):04x}" for sign in "<>&\u2028\u2029"}
_PARTS = (2, 3, 4, 5, 6, 8)
_SECONDS = 60


def script_of(page: Page) -> str:
    """A page's data, safe between the tags of a script; empty for a page without any."""
    data_of = KINDS.get(page.template)
    if data_of is None:
        return ""
    return json.dumps(data_of(replace(page.view)), ensure_ascii=False, separators=(",", ":")).translate(_SAFE)


def recipe(view: MixtureView) -> Data:
    """A mixture as a Recipe. The time of its bake is `cookTime`, the hands-on time `prepTime`."""
    mixture, book = view.mixture, view.desk.book
    times = step_times(mixture.method)
    prep = times.hands_on_high_min
    cook = mixture.bake.time.high.base if mixture.bake else 0.0
    whole = prep + times.waiting_high_min
    return _typed(
        "Recipe",
        {
            "name": mixture.name,
            "alternateName": list(mixture.also),
            "description": mixture.about,
            "recipeCategory": view.batch.kind.title,
            "keywords": list(mixture.tags),
            "recipeYield": _yields(view),
            "tool": [_tool(tin.full_name, count) for count, tin in view.batch.tins],
            "recipeIngredient": [
                _line(line.take, ingredient.name, book)
                for line, ingredient in zip(mixture.mix, view.batch.ingredients, strict=True)
            ],
            "recipeInstructions": _steps(mixture.method, lambda step: _mixed(pieces(step.do, mixture, book), view)),
            "prepTime": duration(prep),
            "cookTime": duration(cook),
            # A method without times must not say that everything is done before the cake is baked.
            "totalTime": duration(whole) if whole >= prep + cook else "",
        },
    )


def how_to(view: TechniqueView) -> Data:
    """A technique as a HowTo, for one person."""
    technique, book = view.technique, view.desk.book
    times = technique_times(technique).steps
    takes = [material.take for material in technique.materials]
    return _typed(
        "HowTo",
        {
            "name": technique.name,
            "alternateName": list(technique.also),
            "description": technique.purpose,
            "keywords": list(technique.tags),
            "yield": technique.makes,
            "tool": [_tool(tool.name, tool.count) for tool in view.kit.tools],
            "supply": [
                {
                    "@type": "HowToSupply",
                    "name": ", ".join(word for word in (row.name, takes[row.index].wanted) if word),
                    "requiredQuantity": spelled(takes[row.index].quantity, book),
                }
                for row in view.kit.materials
            ],
            "step": _steps(technique.steps, lambda step: _worked(pieces_of(step.do, takes, book), view)),
            "prepTime": duration(times.hands_on_high_min),
            "totalTime": duration(times.hands_on_high_min + times.waiting_high_min),
        },
    )


def cake_recipe(view: CakeView) -> Data:
    """A cake as a Recipe whose parts are the recipes it is made from and the techniques it takes. It gives no amounts:
    they depend on the size, and are on the page."""
    design, book = view.design, view.desk.book
    baked = (design.of(tier, "mixture") for tier in design.every_tier if not tier.dummy)
    mixtures = [book.mixtures[slug].name for slug in dict.fromkeys((*baked, *design.made_of)) if slug in book.mixtures]
    made_from: list[Data] = [{"@type": "Recipe", "name": name} for name in mixtures]
    made_from += [{"@type": "HowTo", "name": each.name} for each in view.techniques]
    return _typed(
        "Recipe",
        {
            "name": design.name,
            "alternateName": list(design.also),
            "description": design.about,
            "recipeCategory": "Cake",
            "keywords": list(design.tags),
            "recipeYield": "; ".join(f"{tier.tier.count} {tier.tier.tin.full_name}" for tier in design.every_tier),
            "hasPart": made_from,
        },
    )


KINDS: dict[str, Callable[[Any], Data]] = {"mixture": recipe, "technique": how_to, "cake": cake_recipe}
"""By the page's template: a kind of page with data is one line here."""


def spelled(quantity: Quantity, book: Book) -> str:
    """An amount as our own reader reads it, in a house with any cup and, as far as they differ, any spoons."""
    number = _number(quantity.value)
    return f"{number} {_whose(quantity.unit, book.house.cup, book.house.spoon)}" if quantity.unit else number


def duration(minutes: float) -> str:
    """Minutes as an ISO 8601 duration: `PT1H35M`; empty for none.

    >>> duration(95.0)
    'PT1H35M'
    """
    seconds = round(minutes * _SECONDS)
    hours, rest = divmod(seconds, _SECONDS * 60)
    parts = ((hours, "H"), (rest // _SECONDS, "M"), (rest % _SECONDS, "S"))
    time = "".join(f"{count}{unit}" for count, unit in parts if count)
    return f"PT{time}" if time else ""


def _typed(kind: str, values: Data) -> Data:
    """The data without its empty values."""
    return {"@context": CONTEXT, "@type": kind} | {key: value for key, value in values.items() if value}


def _yields(view: MixtureView) -> str:
    """What it is written for: tins as our own reader reads them, or a weight."""
    tins = view.batch.tins
    if not tins:
        return formats.grams(view.batch.makes_shown_g)
    return "; ".join(f"{count} {tin.full_name}" for count, tin in tins)


def _tool(name: str, count: int) -> Data:
    how_many: Data = {"requiredQuantity": count} if count > 1 else {}
    return {"@type": "HowToTool", "name": name, **how_many}


def _line(take: Take, name: str, book: Book) -> str:
    """A line of the mix: its amount, its name on the page (`eggs` for more than one `egg`), how it is wanted."""
    quantity = take.quantity
    if not quantity.unit and quantity.value > 1 and book.house_word(name + "s") == name:
        name += "s"
    return ", ".join(words for words in (f"{spelled(quantity, book)} {name}", take.wanted) if words)


@lru_cache(maxsize=4096)
def _number(value: float) -> str:
    """A number without loss: `250`, `1 1/2`, `1/3`, `0.7`."""
    whole = int(value)
    if whole == value:
        return str(whole)
    for under in _PARTS:
        over = round((value - whole) * under)
        if 0 < over < under and whole + over / under == value:
            return f"{whole} {over}/{under}" if whole else f"{over}/{under}"
    return f"{Decimal(repr(value)):f}"


def _whose(unit: str, cup: str | None, spoon: str) -> str:
    """A unit that another house reads as the same size. Spoons without a name are metric ones."""
    if unit == "cup":
        return cup or unit
    if unit == "fl oz":
        return f"{(cup or '').removesuffix(' cup')} fl oz".strip()
    return f"{spoon} {unit}" if unit in ("tsp", "tbsp") and spoon != "metric" else unit


def _steps(steps: Iterable[Step], words: Callable[[Step], str]) -> list[Data]:
    return [{"@type": "HowToStep", "text": words(step) + (DONE + step.done if step.done else "")} for step in steps]


def _mixed(step: Sequence[StepPiece], view: MixtureView) -> str:
    """A mixture's step in words. A whole line is only named, as the ingredients give its amount; a part of one is
    given."""
    return "".join(
        view.written_cake
        if piece.tins
        else piece.text
        if piece.line is None or piece.share == 1
        else _part(amount(view.batch.ingredients[piece.line], piece.share, view.batch.steps, by_weight=True), piece)
        for piece in step
    )


def _worked(step: Sequence[StepPiece], view: TechniqueView) -> str:
    """A step of a technique in words."""
    rows = {row.index: row for row in view.kit.materials}
    return "".join(
        piece.text
        if piece.line is None or piece.share == 1
        else _part(material_share(rows[piece.line], piece.share, view.desk.book), piece)
        for piece in step
    )


def _part(amount: Any, piece: StepPiece) -> str:
    return f"{formats.spelled(amount)} {piece.text}"
