"""Templates to text. A template loops, branches on a named boolean and calls a filter named here; no more."""

from __future__ import annotations

from functools import lru_cache
from typing import Any

from jinja2 import Environment, PackageLoader, StrictUndefined

from tinbook.pages import formats, rows

FILTERS = (
    formats.celsius, formats.centimetres, formats.figure, formats.fixed, formats.grams, formats.litres,
    formats.millimetres, formats.mixed, formats.number, formats.oven, formats.ounces, formats.plain, formats.prose,
    formats.quoted, formats.sentence, formats.title,
    formats.percent, formats.signed, formats.span, formats.spelled, formats.spoons, formats.tin_words,
    formats.written, formats.written_figure,
    formats.written_unit, rows.table_rows,
)  # fmt: skip


@lru_cache(maxsize=1)
def environment() -> Environment:
    """The one Jinja environment: autoescape on, unknown names refused."""
    made = Environment(
        loader=PackageLoader("tinbook.pages", "templates"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        auto_reload=False,
    )
    made.policies["json.dumps_kwargs"] = {"sort_keys": False, "separators": (",", ":"), "ensure_ascii": False}
    made.filters.update({spell.__name__: spell for spell in FILTERS})
    return made


def render(template: str, **values: Any) -> str:
    """One template of the package, filled."""
    return environment().get_template(template).render(**values)
