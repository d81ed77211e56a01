"""The reference pages: writing recipes, writing techniques, the house's files, and how values are written."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import lru_cache

from markupsafe import Markup

from tinbook.facts import Facts
from tinbook.models import (
    CakeDesign,
    CakeVariation,
    Change,
    Finish,
    Mixture,
    StepChange,
    Technique,
    Variation,
    Written,
)
from tinbook.models.a_form import WrittenForm
from tinbook.models.keys import groups_below
from tinbook.models.ledger import Itself
from tinbook.models.orders import Order, OrderChange, OrderedClass, OrderedMixture
from tinbook.models.register import REGISTER, SeenBy, SourceKind, kinds
from tinbook.models.written_forms import FORMS
from tinbook.pages.base.page import Desk, Page
from tinbook.pages.lists.lists import Entry, Group, ListView
from tinbook.pages.reference.examples import (
    CAKE,
    CAKE_FROM,
    EXPLAINED,
    ORDER,
    RECIPE,
    STARTS_FROM,
    TECHNIQUE,
    WholeFile,
    whole,
    whole_of,
)
from tinbook.pages.reference.groups import KeyGroup, coded, key_group
from tinbook.pages.reference.words import more_of

SECTION = "Reference"
RECIPES, TECHNIQUES, CAKES = "reference/recipes", "reference/techniques", "reference/cakes"
ORDERS, HOUSE, KITCHEN = "reference/orders", "reference/house", "reference/kitchen"
FORMS_PAGE = "reference/forms"
TITLE_OF = {
    RECIPES: "Writing recipes",
    TECHNIQUES: "Writing techniques",
    CAKES: "Writing cakes",
    ORDERS: "Writing orders",
    HOUSE: "House files",
    KITCHEN: "Kitchen files",
    FORMS_PAGE: "How amounts, tins and times are written",
}
_KEYS = "what it means, what happens if you leave it out, and how to write it."
LEADS = {
    RECIPES: f"Every key in a recipe: {_KEYS}",
    TECHNIQUES: f"Every key in a technique: {_KEYS}",
    CAKES: f"Every key in a cake: {_KEYS}",
    ORDERS: f"Every key in an order: {_KEYS}",
    HOUSE: f"Every key in the files in `recipes/house` that say how you bake: {_KEYS}",
    KITCHEN: f"Every key in the files in `recipes/house` that say when you work and what is on the shelves: {_KEYS}",
    FORMS_PAGE: "How to write a file, and the values that are more than plain words. Type what is in a box "
    "exactly as shown.",
}
SECONDS = {
    RECIPES: "Cakes, fillings, icings and pastes, and recipes that start from another.",
    TECHNIQUES: "Steps, tools, materials, and the parts of a decoration.",
    CAKES: "Tiers, board and decorations, and cakes that start from another.",
    ORDERS: "What is to be made, and when it goes out.",
    HOUSE: "Your kitchen, its tins and cards, how you finish a cake, and the log of bakes.",
    KITCHEN: "When you work, what is done, what is on the shelves, and boards, boxes and ribbon.",
    FORMS_PAGE: "Several ways of writing each.",
}
"""The line below each in the list of them."""
AWAY = dict.fromkeys(groups_below(Finish), HOUSE)
"""What a recipe can say under `finish` is described with the house's files."""
BOUGHT = ("supplies", "labels")
"""What is read with the stock or the orders, although everybody may see it."""


@dataclass(frozen=True, kw_only=True)
class ReferenceView:
    """A page of groups of keys."""

    desk: Desk
    address: str
    groups: tuple[KeyGroup, ...]

    @property
    def items(self) -> tuple[KeyGroup, ...]:
        """Its sections."""
        return self.groups

    @property
    def lead(self) -> Markup:
        """What it is for."""
        return coded(LEADS[self.address])


@dataclass(frozen=True, slots=True)
class FormView:
    """One way to write a value, with examples and what each shows."""

    form: WrittenForm

    @property
    def title(self) -> str:
        """Its heading: `How a tin is written`."""
        name = self.form.name
        return f"How to write {name}" if name.startswith(("how ", "what ")) else f"How {name} is written"

    @property
    def says(self) -> Markup:
        """What is said about it."""
        return coded(self.form.says)

    @property
    def examples(self) -> tuple[tuple[str, str], ...]:
        """Texts, and what each shows."""
        return tuple(self.form.examples.items())

    @property
    def noted(self) -> bool:
        """Whether any of them has a word beside it."""
        return any(self.form.examples.values())


@dataclass(frozen=True, kw_only=True)
class FormsView:
    """Every way to write a value."""

    desk: Desk

    @property
    def items(self) -> tuple[FormView, ...]:
        """Each in its section."""
        return tuple(FormView(form) for form in FORMS)

    @property
    def lead(self) -> Markup:
        """What it is for."""
        return coded(LEADS[FORMS_PAGE])

    @property
    def whole(self) -> WholeFile:
        """A file with its punctuation explained."""
        return whole(f"mixtures/{EXPLAINED}.yaml")


def _below(model: type[Written], facts: Facts) -> tuple[KeyGroup, ...]:
    """The groups in a model, without those described elsewhere."""
    inside = [group for group in groups_below(model)[1:] if group not in AWAY]
    return tuple(key_group(group, facts, away=AWAY) for group in inside)


def recipe_groups(facts: Facts) -> tuple[KeyGroup, ...]:
    """A recipe, and one that starts from another."""
    recipe, variation = (whole(f"mixtures/{name}.yaml") for name in (RECIPE, STARTS_FROM))
    return (
        key_group(Mixture, facts, wholes=(recipe,), away=AWAY),
        *_below(Mixture, facts),
        key_group(Variation, facts, own=True, wholes=(variation,)),
        key_group(Change, facts),
        key_group(StepChange, facts, own=True),
    )


def technique_groups(facts: Facts) -> tuple[KeyGroup, ...]:
    """A technique."""
    example = whole(f"techniques/{TECHNIQUE}.yaml")
    return (key_group(Technique, facts, wholes=(example,)), *_below(Technique, facts))


def cake_groups(facts: Facts) -> tuple[KeyGroup, ...]:
    """A cake, and one that starts from another."""
    cake, variation = (whole(f"cakes/{name}.yaml") for name in (CAKE, CAKE_FROM))
    return (
        key_group(CakeDesign, facts, wholes=(cake,), away=AWAY),
        *_below(CakeDesign, facts),
        key_group(CakeVariation, facts, own=True, wholes=(variation,)),
    )


def order_groups(facts: Facts) -> tuple[KeyGroup, ...]:
    """An order; what it can change about a cake is described with cakes."""
    example = whole(f"orders/{ORDER}.yaml")
    return (
        key_group(Order, facts, wholes=(example,), more=more_of(kinds()["order"])),
        key_group(OrderChange, facts, own=True, away=dict.fromkeys(groups_below(CakeDesign), CAKES)),
        key_group(OrderedMixture, facts),
        key_group(OrderedClass, facts),
    )


def house_groups(facts: Facts) -> tuple[KeyGroup, ...]:
    """Every file of the house that says how it bakes, as the register has them."""
    return tuple(group for kind in _of_house(kitchens=False) for group in _file_groups(kind, facts))


def kitchen_groups(facts: Facts) -> tuple[KeyGroup, ...]:
    """The house's files that are the kitchen's alone, and what it buys."""
    return tuple(group for kind in _of_house(kitchens=True) for group in _file_groups(kind, facts))


def _of_house(kitchens: bool) -> Iterator[SourceKind]:
    """The house's files about the kitchen's time and shelves, or all others."""
    house = (kind for kind in REGISTER if kind.room == "house")
    return (kind for kind in house if (kind.seen_by is SeenBy.KITCHEN or kind.name in BOUGHT) == kitchens)


def _file_groups(kind: SourceKind, facts: Facts) -> Iterator[KeyGroup]:
    """A file of the house, and what is in it."""
    first, *inside = groups_below(kind.model)
    yield key_group(first, facts, wholes=whole_of(kind), more=more_of(kind))
    yield from (key_group(group, facts) for group in inside)


PAGES = (
    (RECIPES, recipe_groups),
    (TECHNIQUES, technique_groups),
    (CAKES, cake_groups),
    (ORDERS, order_groups),
    (HOUSE, house_groups),
    (KITCHEN, kitchen_groups),
)


@lru_cache(maxsize=16)
def _made_once(groups: Callable[[Facts], tuple[KeyGroup, ...]], facts: Itself[Facts]) -> tuple[KeyGroup, ...]:
    """The same for every book: made from the models, with the trade's usual figures."""
    return groups(facts.value)


def reference_pages(desk: Desk) -> Iterator[Page]:
    """The pages, and the list of them."""
    entries = tuple(
        Entry(address=address, name=title, left="", second=SECONDS[address]) for address, title in TITLE_OF.items()
    )
    lead = (
        "How to write the files your book is made of. Once you have run “tinbook schema”, your editor tells "
        "you the same as you type."
    )
    yield Page(
        address="reference/index",
        title=SECTION,
        template="list",
        view=ListView(title=SECTION, lead=lead, items=(Group("", "", entries),)),
        section=(SECTION,),
    )
    for address, groups in PAGES:
        view = ReferenceView(desk=desk, address=address, groups=_made_once(groups, Itself(desk.facts)))
        title = TITLE_OF[address]
        yield Page(address=address, title=title, template="reference", view=view, section=(SECTION, title))
    title = TITLE_OF[FORMS_PAGE]
    yield Page(address=FORMS_PAGE, title=title, template="forms", view=FormsView(desk=desk), section=(SECTION, title))
