"""How a table was worked out: part of the table, not an afterthought."""

from __future__ import annotations

from dataclasses import dataclass

from tinbook.plans.base.saying import Saying


@dataclass(frozen=True, slots=True)
class Worked:
    """The formula, the inputs with their units, and the keys of every source in `facts`."""

    formula: Saying | str
    inputs: tuple[Saying | str, ...]
    sources: tuple[str, ...]
