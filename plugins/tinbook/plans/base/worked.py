"""How a table was worked out: part of the table, not an afterthought."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Worked:
    """The formula in words, the inputs with their units, and the keys of the sources in `facts`."""

    formula: str
    inputs: tuple[str, ...] = ()
    sources: tuple[str, ...] = ()
