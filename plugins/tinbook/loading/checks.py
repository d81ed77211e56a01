"""The rules a mixture must keep. One found sound is not checked again until something that was read changes."""

from __future__ import annotations

from dataclasses import dataclass, field

from tinbook.facts import Facts
from tinbook.loading.sound import SoundChecks
from tinbook.models import Book, Flaw, Mixture
from tinbook.models.ledger import Kept
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
    _sound: SoundChecks = field(init=False)

    def __post_init__(self) -> None:
        besides = (self.spoilt, self.techniques, self.mixtures)
        self._sound = SoundChecks(book=self.book, known=self.sound, besides=besides)

    def rules(self, name: str, mixture: Mixture) -> list[Flaw]:
        """Whether a mixture keeps to the rules."""
        return self._sound.found(name, mixture, self._broken_rules)

    def steps(self, name: str, mixture: Mixture) -> list[Flaw]:
        """Whether its steps name what is in the mix. A slip in the mix would show up again in every step."""
        return self._sound.found(f"{name} steps", mixture, step_flaws)

    def done(self) -> Kept:
        """What is now known about the checks that found nothing."""
        return self._sound.done()

    def _broken_rules(self, mixture: Mixture, book: Book) -> list[Flaw]:
        return [
            *rules.mixture_flaws(mixture, book, self.facts, self.spoilt),
            *rules.link_flaws("techniques", mixture.techniques, self.techniques),
            *mixture_finish_flaws(mixture, book, self.facts, self.mixtures),
        ]
