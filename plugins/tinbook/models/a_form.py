"""One way to write a value that is more than words."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from tinbook.models.keys import readers_in


@dataclass(frozen=True, slots=True, kw_only=True)
class WrittenForm:
    """One way to write a value: `name` with its article, what is said about it, and examples, with what each shows.

    `types` are the types of fields read this way; the first reads every example. `place` is its address on the page
    if that is older than its name.
    """

    name: str
    says: str
    examples: Mapping[str, str]
    types: tuple[Any, ...]
    place: str = ""

    @property
    def anchor(self) -> str:
        """Its address on its page."""
        return self.place or "-".join(self.name.split())

    @property
    def readers(self) -> frozenset[int]:
        """What reads it, compared by identity."""
        return frozenset(id(reader) for each in self.types for reader in readers_in(each))
