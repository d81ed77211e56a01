"""What the house's own cakes really took: a damped correction to what is worked out, and entries too far out to
trust."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from tinbook.engine import learning, rounding
from tinbook.facts import Facts
from tinbook.models import Book, Flaw, Used
from tinbook.plans.base.bought import made_or_bought
from tinbook.plans.base.finishing import finishing
from tinbook.plans.base.saying import Saying, saying
from tinbook.plans.base.weighing import Batch
from tinbook.plans.finish.cake import Cake
from tinbook.plans.finish.coating import coat_row, roles_of
from tinbook.plans.finish.pasting import paste_row

PASTES = "paste"
"""The group of kinds that cover; fillings and coats are logged with what stayed in the bowl."""


@dataclass(frozen=True, slots=True)
class Correction:
    """The factor on the amounts of a mixture, from `entries` of the house's cakes."""

    factor: float
    entries: int

    @property
    def percent(self) -> float:
        """How far the factor moves an amount, as a percentage, as printed."""
        return rounding.percent(self.factor - 1.0)

    @property
    def told(self) -> Saying | None:
        """How many cakes it comes from, and how far it moves an amount; None if none is logged."""
        return saying("cakes_took", cakes=self.entries, percent=self.percent) if self.entries else None


def learned(batch: Batch, book: Book, facts: Facts) -> Correction:
    """What the log says about one mixture. Entries too far out are reported when the book is read, and are ignored
    here."""
    most = facts.numbers["wild entry"].value
    ratios = [ratio_of(entry, batch, book, facts) for entry in book.used if entry.of == batch.slug]
    sane = [ratio for ratio in ratios if not learning.is_wild(ratio, most)]
    return Correction(learning.correction(sane, facts.numbers["entries against the log"].value), len(sane))


def ratio_of(entry: Used, batch: Batch, book: Book, facts: Facts) -> float:
    """What a cake took, over what is worked out for it without the log: for a paste, what was left on the cake."""
    settled = finishing(book.finish, facts)
    cake = Cake(entry.cake, entry.height, entry.layers or settled.layers)
    if batch.kind.group == PASTES:
        return entry.used / paste_row(batch, cake, True, settled, facts).net_g
    return entry.used / coat_row(batch, cake, True, settled, facts, roles=roles_of(batch, settled)).made_g


def used_flaws(entry: Used, book: Book, facts: Facts) -> Iterator[Flaw]:
    """Flaws of an entry for a mixture that fills no cake, for a cake that cannot be coated, or too wild to learn from.

    What it is for must be in the book.
    """
    batch = made_or_bought(entry.of, book, facts)
    assert batch is not None
    if not batch.kind.plays:
        hint = "log a filling, an icing or a paste"
        yield Flaw(
            code="used", path=("of",), message=f'"{batch.mixture.name}" neither fills nor covers a cake', hint=hint
        )
        return
    if entry.cake.kind.in_trays:
        yield Flaw(
            code="used",
            path=("cake",),
            message="cupcakes are not filled and coated like a cake",
            hint="log a cake baked in a tin",
        )
        return
    try:
        ratio = ratio_of(entry, batch, book, facts)
    except ValueError as error:
        yield Flaw(code="used", path=("cake",), message=str(error), hint="log a cake that can be coated")
        return
    if learning.is_wild(ratio, facts.numbers["wild entry"].value):
        such_g = entry.used / ratio
        message = (
            f"{entry.used:g} g is {ratio:.2g} times the {such_g:.0f} g a cake like this takes; "
            "the book will not learn from it"
        )
        yield Flaw(code="wild entry", path=("used",), message=message, hint="weigh again, or take the entry out")
