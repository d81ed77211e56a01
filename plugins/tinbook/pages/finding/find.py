"""One thing that Find can answer with."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Kind = Literal[
    "mixture", "technique", "cake", "step", "fault", "note", "ingredient", "tin", "colour", "page", "section"
]
FIELDS = ("title", "names", "tags", "text")
"""What is searched, the weightiest first."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Find:
    """A row of the answer: its kind, title, second line, figure and what stands under it, and where it leads.

    Searched are the title; `names`, what else it goes by; `tags`, what it belongs to and is for; and `text`, whatever
    else is said about it. `tin` is a tin's own name, by which benches know it; for a mixture, what it is written for.
    `owned`: what the house has ranks above what it only knows.
    """

    kind: Kind
    title: str
    address: str
    anchor: str = ""
    second: str = ""
    figure: str = ""
    under: str = ""
    names: tuple[str, ...] = ()
    tags: tuple[str, ...] = ()
    text: tuple[str, ...] = ()
    tin: str = ""
    at_bench: bool = False
    """Of a tin: whether recipes' benches have it. Of a mixture: whether it is baked in tins."""
    owned: bool = False

    def field(self, name: str) -> tuple[str, ...]:
        """The words of one of the FIELDS."""
        words: dict[str, tuple[str, ...]] = {
            "title": (self.title,), "names": self.names, "tags": self.tags, "text": self.text,
        }  # fmt: skip
        return words[name]
