"""What a note's second mixture is, and what it can be on the cake: an icing, a filling, a syrup."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass

from tinbook.facts import Facts
from tinbook.models import Book, read_take
from tinbook.notes.reading import NotePart
from tinbook.plans.base.weighing import Unweighable, mass_of

_KINDS: tuple[tuple[str, str], ...] = (
    (r"meringue butter\s?cream|swiss|italian", "meringue buttercream"),
    (r"butter\s?cream|butter icing", "buttercream"),
    (r"ganache", "ganache"),
    (r"royal icing", "royal icing"),
    (r"marzipan", "marzipan"),
    (r"sugarpaste", "sugarpaste"),
    (r"syrup|soak", "syrup"),
    (r"curd", "curd"),
    (r"jam", "jam"),
)
_ROLES: tuple[tuple[str, str], ...] = (
    (r"crumb coat", "crumb coat"),
    (r"filling|to fill|jam|curd", "filling"),
    (r"icing|frosting|topping|coat|glaz|decorat|to finish", "final coat"),
    (r"marzipan|sugarpaste|covering", "cover"),
)


@dataclass(frozen=True, slots=True)
class PartKind:
    """The kind of a part, and why it is not certain; "" for an unknown one."""

    kind: str
    doubt: str


def kind_of(part: NotePart, book: Book, facts: Facts) -> PartKind:
    """What kind a part is: by its own name or, as a guess, by what goes in."""
    for words, kind in _KINDS:
        if kind in facts.kinds and re.search(words, part.name):
            return PartKind(kind, "")
    names = _names(part, book)
    if {"butter", "icing sugar"} <= names:
        return PartKind("buttercream", "guessed from its butter and icing sugar")
    if {"double cream"} <= names and any("chocolate" in name for name in names):
        return PartKind("ganache", "guessed from its chocolate and cream")
    return PartKind("", "what kind it is")


def kind_called(title: str, facts: Facts) -> str:
    """The kind a title ends in, if that is not a cake: "Swiss meringue buttercream"; "" for any other."""
    for words, kind in _KINDS:
        if kind in facts.kinds and re.search(rf"(?:{words})(?:\s+recipe)?\W*$", title.lower()):
            return kind
    return ""


def _names(part: NotePart, book: Book) -> set[str]:
    found = set()
    for line in part.mix:
        words = re.sub(r"^[\W\d]*(?:g|kg|ml|oz|lb|tbsp|tsp|cups?)?\s+", "", line.text.partition(",")[0])
        found.add(book.house_word(words) or words)
    return found


def role_of(part: NotePart, kind: str, facts: Facts) -> tuple[str, str]:
    """What a part is on the cake, among what its kind can be, and why that is not certain; "" if it can be nothing."""
    plays: Mapping[str, None] = dict.fromkeys(facts.kinds[kind].plays) if kind in facts.kinds else {}
    for words, role in _ROLES:
        if role in plays and re.search(words, part.name):
            return role, ""
    if "filling" in plays:
        return "filling", "filling, or final coat?" if "final coat" in plays else ""
    return next(iter(plays), ""), ""


def weight_of(part: NotePart, book: Book, facts: Facts) -> float:
    """Grams of everything that goes in; 0 if any of it is uncertain or has no weight in the book."""
    total = 0.0
    for line in part.mix:
        if not line.text or line.doubt:
            return 0.0
        take = read_take(line.text, book.house.spoons)
        try:
            total += mass_of(take, book.house_word(take.name) or "", book, facts)
        except (Unweighable, KeyError):
            return 0.0
    return total
