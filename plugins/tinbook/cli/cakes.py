"""A new cake as a file: the request is checked against the book before anything is written."""

from __future__ import annotations

import json
import re

from tinbook.cli.table import named_tins
from tinbook.facts import Facts
from tinbook.models import Book, CakeDesign, read_model
from tinbook.plans.base.asking import AskError
from tinbook.plans.rules.cakes import cake_flaws
from tinbook.problems import nearest

PLAIN = re.compile(r"[^\W\d_][\w '’-]*")
"""A name that needs no quotes in a file."""


def draft_cake(title: str, tiers: str, mixture: str | None, book: Book, facts: Facts) -> str:
    """The text of a sound file. AskError for a tier or a mixture that cannot be right."""
    sizes = [size.strip() for size in tiers.split(",")]
    data = {"name": title, "tiers": sizes, "mixture": _mixture(mixture, book)}
    design, flaws = read_model(CakeDesign, data, "a cake", book.house.spoons, named_tins(book))
    for flaw in flaws or (cake_flaws(design, book, facts) if design else ()):
        raise AskError(flaw.message, flaw.hint)
    name = title if PLAIN.fullmatch(title) else json.dumps(title, ensure_ascii=False)
    listed = sizes[0] if len(sizes) == 1 else f"[{', '.join(sizes)}]"
    return f"name: {name}\ntiers: {listed}\nmixture: {data['mixture']}\n"


def _mixture(asked: str | None, book: Book) -> str:
    """Its recipe: as asked, or the only cake recipe there is."""
    baked = [slug for slug, mixture in book.mixtures.items() if mixture.tins]
    told = "say which, such as --mixture " + (baked[0] if baked else "NAME")
    if asked is None and len(baked) == 1:
        return baked[0]
    if asked is None:
        raise AskError("a cake needs a recipe", told)
    if asked not in baked:
        close = nearest(asked, baked)
        raise AskError(f'there is no cake recipe "{asked}" in the book', f'did you mean "{close}"?' if close else told)
    return asked
