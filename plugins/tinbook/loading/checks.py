"""The rules a mixture must keep. One found sound is not checked again until something that was read changes."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field

from tinbook.facts import Facts
from tinbook.models import Book, Flaw, Mixture
from tinbook.models.ledger import Kept, Ledger, watched
from tinbook.plans.mixtures.inline import step_flaws
from tinbook.plans.rules import fields as rules
from tinbook.plans.rules.fields import Spoilt
from tinbook.plans.rules.finish import mixture_finish_flaws


@dataclass(kw_only=True)
class Checks:
    """The checks of one load. `techniques` and `mixtures`: the names of all files, usable or not; `sound`: what is
    known about checks that found nothing."""

    book: Book
    facts: Facts
    spoilt: Spoilt
    techniques: list[str]
    mixtures: list[str]
    sound: Kept
    _mixtures: dict[str, Mixture] = field(default_factory=dict)
    _unsound: set[str] = field(default_factory=set)

    def __post_init__(self) -> None:
        self._ledger = Ledger(self.sound)
        self._book = watched(self.book, self._ledger)
        self._ledger.comes_from("of", self._mixtures.get)
        self._ledger.comes_from("besides", lambda _: (self.spoilt, self.techniques, self.mixtures))

    def rules(self, name: str, mixture: Mixture) -> list[Flaw]:
        """Whether a mixture keeps to the rules."""
        return self._found(name, mixture, self._broken_rules)

    def steps(self, name: str, mixture: Mixture) -> list[Flaw]:
        """Whether its steps name what is in the mix. A slip in the mix would show up again in every step."""
        return self._found(f"{name} steps", mixture, step_flaws)

    def done(self) -> Kept:
        """What is now known about the checks that found nothing."""
        kept = self._ledger.kept()
        reads = {name: keys for name, keys in kept.reads.items() if name not in self._unsound}
        return Kept(reads, kept.digests, kept.values)

    def _broken_rules(self, mixture: Mixture, book: Book) -> list[Flaw]:
        return [
            *rules.mixture_flaws(mixture, book, self.facts, self.spoilt),
            *rules.link_flaws("techniques", mixture.techniques, self.techniques),
            *mixture_finish_flaws(mixture, book, self.facts, self.mixtures),
        ]

    def _found(self, name: str, mixture: Mixture, check: Callable[[Mixture, Book], Iterable[Flaw]]) -> list[Flaw]:
        self._mixtures[name] = mixture
        if self._ledger.stands(name):
            return []
        with self._ledger.reading(name):
            for read in (f"of/{name}", "besides"):
                self._ledger.note(read)
            found = list(check(mixture, self._book))
        if found:
            self._unsound.add(name)
        return found
