"""Templates to text. A template may loop, branch on a named boolean and call a filter named here; nothing more."""

from __future__ import annotations

import hashlib
from contextlib import suppress
from functools import lru_cache
from pathlib import Path
from typing import Any

from jinja2 import Environment, FileSystemBytecodeCache, PackageLoader, StrictUndefined
from jinja2.bccache import Bucket

from tinbook.pages.base import rows, shared
from tinbook.pages.spelling import formats

FILTERS = (
    formats.celsius, formats.centimetres, formats.figure, formats.fixed, formats.grams, formats.litres,
    formats.millimetres, formats.mixed, formats.number, formats.ounces, formats.plain, formats.prose,
    formats.a_or_an, formats.quoted, formats.sentence, formats.title,
    formats.percent, formats.signed, formats.single, formats.span, formats.spelled, formats.spoons, formats.tin_words,
    formats.written, formats.written_figure,
    formats.written_unit, rows.table_rows, shared.leaves_at,
)  # fmt: skip


class Compiled(FileSystemBytecodeCache):
    """Compiled templates as files; where none can be written they are compiled again next time."""

    def dump_bytecode(self, bucket: Bucket) -> None:
        """Keep one."""
        with suppress(OSError):
            super().dump_bytecode(bucket)


@lru_cache(maxsize=1)
def compiled() -> Compiled | None:
    """Where compiled templates are kept, as Python keeps its modules: a folder of the user's own among the temporary
    ones. None if no such folder is safe.

    Constant expressions in a template are evaluated when it is compiled, so the filters are part of a file's name.
    """
    filters = b"".join(Path(str(module.__file__)).read_bytes() for module in (formats, rows, shared))
    try:
        return Compiled(pattern=f"tinbook-{hashlib.sha256(filters).hexdigest()[:16]}-%s")
    except (OSError, RuntimeError):
        return None


@lru_cache(maxsize=1)
def environment() -> Environment:
    """The one Jinja environment: autoescape on, unknown names refused."""
    jinja = Environment(
        loader=PackageLoader("tinbook.pages", "templates"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        auto_reload=False,
        bytecode_cache=compiled(),
    )
    jinja.policies["json.dumps_kwargs"] = {"sort_keys": False, "separators": (",", ":"), "ensure_ascii": False}
    jinja.filters.update({spell.__name__: spell for spell in FILTERS})
    return jinja


@lru_cache(maxsize=64)
def source_of(template: str) -> str:
    """One template of the package, as it is written."""
    loader = environment().loader
    assert loader is not None
    return loader.get_source(environment(), template)[0]


def render(template: str, **values: Any) -> str:
    """One template of the package, filled."""
    return environment().get_template(template).render(**values)
