"""A new order as a file: the request is checked against the book before anything is written."""

from __future__ import annotations

import json
import re

from tinbook.facts import Facts
from tinbook.models import Book, read_model
from tinbook.models.orders import Order
from tinbook.plans.base.asking import AskError
from tinbook.plans.rules.orders import order_flaws

PLAIN = re.compile(r"[^\W\d_][\w '’-]*")
"""Words that need no quotes in a file."""


def draft_order(
    handle: str,
    cake: str | None,
    guests: int | None,
    hand_over: str,
    free_from: tuple[str, ...],
    book: Book,
    facts: Facts,
) -> tuple[str, tuple[str, ...]]:
    """The text of a sound file, and what is only to be known about it. AskError for what cannot be right."""
    data: dict[str, object] = {"handle": handle, "hand over": hand_over}
    if cake:
        data["cake"] = cake
    if guests:
        data["guests"] = str(guests)
    if free_from:
        data["must be free from"] = list(free_from)
    order, flaws = read_model(Order, data, "an order", book.house.spoons)
    found = flaws or (order_flaws(order, book, facts) if order else ())
    for flaw in found:
        if not flaw.note:
            raise AskError(flaw.message, flaw.hint)
    lines = [f"handle: {_text(handle)}"]
    lines += [f"cake: {cake}"] if cake else []
    lines += [f"guests: {guests}"] if guests else []
    lines += [f"hand over: {hand_over}"]
    lines += [f"must be free from: [{', '.join(map(_text, free_from))}]"] if free_from else []
    lines += ["state: asked"]
    return "\n".join(lines) + "\n", tuple(f"{flaw.message}: {flaw.hint}" for flaw in found)


def _text(words: str) -> str:
    return words if PLAIN.fullmatch(words) else json.dumps(words, ensure_ascii=False)
