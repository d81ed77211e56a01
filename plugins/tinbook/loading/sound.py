"""What was found sound is not checked again until something that was read changes."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from typing import TypeVar

from tinbook.models import Book, Flaw
from tinbook.models.ledger import Kept, Ledger, watched

T = TypeVar("T")


@dataclass(kw_only=True)
class SoundChecks:
    """The checks of one load, by name. `known`: earlier checks that found nothing; `besides`: what each of them goes by
    that is neither in the book nor the thing itself."""

    book: Book
    known: Kept
    besides: object
    ledger: Ledger = field(init=False)
    _things: dict[str, object] = field(default_factory=dict)
    _unsound: set[str] = field(default_factory=set)

    def __post_init__(self) -> None:
        self.ledger = Ledger(self.known)
        self._book = watched(self.book, self.ledger)
        self.ledger.comes_from("of", self._things.get)
        self.ledger.comes_from("besides", lambda _: self.besides)

    def found(self, name: str, thing: T, check: Callable[[T, Book], Iterable[Flaw]]) -> list[Flaw]:
        """What is wrong with a thing; nothing, unchecked, if that was so before and all it goes by is as it was."""
        self._things[name] = thing
        if self.ledger.stands(name):
            return []
        with self.ledger.reading(name):
            for read in (f"of/{name}", "besides"):
                self.ledger.note(read)
            flaws = list(check(thing, self._book))
        if flaws:
            self._unsound.add(name)
        return flaws

    def agrees(self, checked: Ledger, name: str, thing: object) -> bool:
        """Whether all that a check read in another's book is the same in this one."""
        self._things[name] = thing
        return self.ledger.agrees(checked, name)

    def done(self) -> Kept:
        """What is now known about the checks that found nothing."""
        kept = self.ledger.kept()
        reads = {name: keys for name, keys in kept.reads.items() if name not in self._unsound}
        return Kept(reads, kept.digests, kept.values)
