"""`tinbook table allergens --against FILE`: which products a changed card has changed since the table was saved."""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Any

from tinbook.pages.spelling.sayings import spell
from tinbook.plans.base.asking import AskError
from tinbook.plans.base.result import Result
from tinbook.plans.base.saying import Saying
from tinbook.plans.labels.of_book import changes

TABLE = "allergens"
SAVE = "save one first, with tinbook table allergens --format json"


def changes_told(name: str, raw: bytes, result: Result, form: str) -> str:
    """What has changed, product by product. AskError for another table, or a file that is none of them."""
    if name != TABLE or not any("product" in row for row in result.rows):
        raise AskError(f'the table "{name}" cannot use --against', "it goes with allergens, without --of")
    now = [{key: spell(cell) if isinstance(cell, Saying) else cell for key, cell in row.items()} for row in result.rows]
    found = list(changes(_saved(raw), now))
    if form == "json":
        return json.dumps([_plain(each) for each in found], ensure_ascii=False, indent=2)
    if not found:
        return "Nothing has changed."
    return "\n".join(
        f"{each.product}: {each.allergen}: {each.was or 'nothing'}, now {each.now or 'nothing'}" for each in found
    )


def _plain(each: Any) -> dict[str, str]:
    return {"product": each.product, "allergen": each.allergen, "was": each.was, "now": each.now}


def _saved(raw: bytes) -> list[Mapping[str, object]]:
    try:
        told = json.loads(raw)
    except ValueError:
        raise AskError("the file of --against is not a saved table", SAVE) from None
    rows = told.get("rows") if isinstance(told, dict) and told.get("table") == TABLE else None
    if not isinstance(rows, list) or not all(isinstance(row, dict) and "product" in row for row in rows):
        raise AskError("the file of --against is not a table of the whole book's allergens", SAVE)
    return rows
