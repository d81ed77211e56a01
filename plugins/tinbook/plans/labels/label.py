"""A whole label: its list or its line of allergens, its dates, the rules it follows, or why it cannot be printed."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from tinbook.facts import Facts, LabelRule
from tinbook.models import Book
from tinbook.models.labels import DISTANCE, LOOSE, PREPACKED, TO_ORDER, Labelling
from tinbook.plans.base.saying import saying
from tinbook.plans.cakes.whole import WholeCake
from tinbook.plans.labels.applying import declared, rules_for
from tinbook.plans.labels.dates import KeepsUntil, keep_of, keeps_until, spoils
from tinbook.plans.labels.gaps import LABELS, Gap
from tinbook.plans.labels.listing import IngredientsList, labelling_of, list_of
from tinbook.plans.labels.makeup import Makeup
from tinbook.plans.labels.product import product_asked

NO_LIST = (TO_ORDER, LOOSE, DISTANCE)
"""Sold like this, it needs no list of ingredients, only its allergens."""
NEEDED_ALWAYS = ("gap_allergens", "gap_no_card", "gap_colour", "gap_not_allowed", "gap_uncounted")
"""What must be known even where no list is asked for."""


@dataclass(frozen=True, kw_only=True)
class LabelPlan:
    """A label, as far as it is known. `gaps`: what has to be filled in before it may be printed; with none, it may.
    `contains`: the allergens that the law of the nation counts. `batch`: what leads back to the log of bakes."""

    slug: str
    name: str
    listed: IngredientsList
    with_list: bool
    contains: tuple[str, ...]
    until: KeepsUntil | None
    made: date
    batch: str
    maker: str
    net: str
    cross_contact: str
    rules: tuple[LabelRule, ...]
    gaps: tuple[Gap, ...]
    cake: WholeCake | None
    house: Labelling

    @property
    def ready(self) -> bool:
        """Whether it may be printed."""
        return not self.gaps


def batch_handle(slug: str, made: date) -> str:
    """The day and the recipe: what was baked then stands under both in the log of bakes."""
    return f"{made.isoformat()} {slug}"


def label_of(of: str | None, book: Book, facts: Facts, made_on: date, net: str = "") -> LabelPlan:
    """The label of a mixture or a cake made on a day. AskError for one the book does not have."""
    made, cake = product_asked(of, book, facts)
    slug = of or ""
    house = labelling_of(book)
    listed = list_of(made, book, facts, made_on)
    keep, unsaid = keep_of(slug, cake, book, facts)
    gaps: list[Gap] = []
    if house.sold_in is None:
        gaps.append(Gap(what=saying("gap_nation"), cure=saying("cure_nation"), address=LABELS))
    no_list = house.sold in NO_LIST
    gaps += [gap for gap in listed.gaps if not no_list or gap.what.key in NEEDED_ALWAYS]
    gaps += unsaid
    if house.sold == PREPACKED:
        if house.maker is None:
            gaps.append(Gap(what=saying("gap_maker"), cure=saying("cure_maker"), address=LABELS))
        if not net:
            gaps.append(Gap(what=saying("gap_net"), cure=saying("cure_net"), address=""))
        gaps += _unpromised(made, book)
    return LabelPlan(
        slug=slug,
        name=made.name,
        listed=listed,
        with_list=house.sold_in is not None and (not no_list or listed.complete),
        contains=declared(listed.contains, facts, house.sold_in),
        until=keeps_until(keep, made_on, spoils(made.eaten, book)) if keep else None,
        made=made_on,
        batch=batch_handle(slug, made_on),
        maker=house.maker or "",
        net=net,
        cross_contact=" ".join((book.house.cross_contact or "").split()),
        rules=rules_for(house, facts),
        gaps=tuple(dict.fromkeys(gaps)),
        cake=cake,
        house=house,
    )


def _unpromised(made: Makeup, book: Book) -> list[Gap]:
    """Ingredients that a recipe's name says, and that `named for` does not."""
    found = []
    for slug in made.slugs:
        mixture = book.mixtures[slug]
        words = {word.strip("s,") for word in mixture.name.lower().split()}
        promised = {book.house_word(word) or word for word in mixture.named_for}
        for line in mixture.mix:
            card = book.house_word(line.take.name) or line.take.name
            last = card.lower().split()[-1].strip("s")
            if last in words and card not in promised:
                what = saying("gap_promised", mixture=mixture.name, card=card)
                cure = saying("cure_promised", word=line.take.name)
                found.append(Gap(what=what, cure=cure, address=f"mixtures/{slug}", path=()))
    return found
