"""Whole cakes: checked once everything they need has been read, and after any cake they start from."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from dataclasses import replace

from tinbook.facts import Facts
from tinbook.loading.intake import Intake
from tinbook.loading.parses import Parses
from tinbook.loading.sound import SoundChecks
from tinbook.loading.variations import CAKES, bases_first, no_base
from tinbook.models import Book, CakeDesign, CakeVariation, Flaw
from tinbook.models.ledger import Ledger
from tinbook.plans.rules.cakes import cake_flaws
from tinbook.plans.variations.cakes_written_out import placed, vary_cake


def with_cakes(
    intake: Intake,
    book: Book,
    designs: Mapping[str, CakeDesign],
    variations: Mapping[str, CakeVariation],
    facts: Facts,
    colours: Collection[str],
) -> tuple[Book, Ledger]:
    """The book with its sound cakes, and what each cake read of it; what is wrong with the others is told. `colours`:
    those lost by a problem told elsewhere."""
    lost = names_lost(intake, colours)
    checks = SoundChecks(book=book, known=intake.parses.learnt.cakes, besides=sorted(lost))

    def flaws_of(slug: str, design: CakeDesign) -> list[Flaw]:
        return checks.found(slug, design, lambda cake, seen: cake_flaws(cake, seen, facts, lost))

    cakes, bases = dict[str, CakeDesign](), dict[str, str]()
    for slug, design in designs.items():
        intake.tell(f"{CAKES}{slug}", flaws_of(slug, design))
        cakes[slug] = design
    for slug in bases_first(intake, variations, CAKES):
        variation, address = variations[slug], f"{CAKES}{slug}"
        if variation.base not in cakes or f"{CAKES}{variation.base}" in intake.broken:
            intake.tell(address, [no_base(intake, slug, variation.base, CAKES)])
            continue
        made = vary_cake(variation, cakes[variation.base])
        if isinstance(made, Flaw):
            intake.tell(address, [made])
            continue
        intake.tell(address, (placed(flaw, variation) for flaw in flaws_of(slug, made)))
        cakes[slug], bases[slug] = made, variation.base
    order = (address.removeprefix(CAKES) for address in intake.sources)
    sound = {slug: cakes[slug] for slug in order if slug in cakes and f"{CAKES}{slug}" not in intake.broken}
    intake.parses.learnt = intake.parses.learnt._replace(cakes=checks.done())
    bases = {slug: base for slug, base in bases.items() if slug in sound}
    return replace(book, cakes=sound, cake_bases=bases), checks.ledger


def still_sound(book: Book, whole: Book, facts: Facts, checked: Ledger, parses: Parses) -> Book:
    """A public book without the cakes that cannot be worked out from what it shows. All were sound in the `whole` book,
    so only those are checked again that read something there (as `checked` knows) which is not the same here."""
    checks = SoundChecks(book=book, known=parses.learnt.shown_cakes, besides=[])

    def sound(slug: str, cake: CakeDesign) -> bool:
        same = cake == whole.cakes[slug] and checks.agrees(checked, slug, cake)
        return same or not checks.found(slug, cake, lambda shown, seen: cake_flaws(shown, seen, facts))

    cakes = {slug: cake for slug, cake in book.cakes.items() if sound(slug, cake)}
    parses.learnt = parses.learnt._replace(shown_cakes=checks.done())
    bases = {slug: base for slug, base in book.cake_bases.items() if {slug, base} <= set(cakes)}
    return replace(book, cakes=cakes, cake_bases=bases)


def names_lost(intake: Intake, colours: Collection[str]) -> frozenset[str]:
    """Names of colours, mixtures, techniques and cards missing perhaps only because of a problem reported elsewhere."""
    broken = (*intake.broken, *intake.refused)
    return frozenset((*colours, *(address.rpartition("/")[2] for address in broken), *_words(intake)))


def _words(intake: Intake) -> Iterator[str]:
    """The names of cards, if there is anything wrong in their file."""
    address = "house/ingredients"
    document = intake.documents.get(address)
    if address in intake.broken and document is not None:
        written = document.data.get("ingredients")
        yield from written if isinstance(written, Mapping) else ()
