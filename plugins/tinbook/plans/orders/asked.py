"""An order as what is to be made: a whole cake at its size, recipes by themselves, a class."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from tinbook.facts import Facts
from tinbook.models import Book, CakeDesign, DesignBoard, DesignTier, Mixture
from tinbook.models.cakes import NO_BORDER, TierSize
from tinbook.models.orders import Order, OrderedMixture
from tinbook.models.reading import NONE
from tinbook.plans.baking.bakes import Bakes
from tinbook.plans.base.asking import AskError
from tinbook.plans.cakes.sizes import CakeSize, cake_sizes
from tinbook.plans.cakes.tables import size_asked
from tinbook.plans.cakes.whole import WholeCake, whole_cake


@dataclass(frozen=True, slots=True, kw_only=True)
class Tub:
    """A recipe made by weight that is ordered by itself: how many times what it makes, and how much that is."""

    slug: str
    mixture: Mixture
    times: int
    mass_g: float


@dataclass(frozen=True, kw_only=True)
class OrderWorked:
    """An order worked out: the cakes in it (one, or a plain one for each recipe ordered by itself), what is made by
    weight, and how the size of the cake was chosen."""

    slug: str
    order: Order
    cakes: tuple[WholeCake, ...]
    tubs: tuple[Tub, ...]
    size: CakeSize | None


def worked_order(slug: str, order: Order, book: Book, facts: Facts, bakes: Bakes | None = None) -> OrderWorked:
    """A sound order. AskError if its cake cannot be made in the size asked for, or does not serve the guests."""
    cakes: list[WholeCake] = []
    size = None
    if order.cake:
        design = design_of(order, book)
        sizes = cake_sizes(design, book, facts)
        size = size_asked(sizes, order.size, None if order.size else order.guests)
        cakes.append(whole_cake(order.cake, design, book, facts, tins=size.tins, heights=sizes.heights, bakes=bakes))
        if order.guests and cakes[0].serves < order.guests:
            raise AskError(
                f"this size serves {cakes[0].serves}, not {order.guests}", "leave the size out, or ask for a larger one"
            )
    cakes += [
        whole_cake(each.mixture, baked, book, facts, bakes=bakes)
        for each in order.mixtures
        if (baked := plain_cake(each, book))
    ]
    return OrderWorked(slug=slug, order=order, cakes=tuple(cakes), tubs=tuple(_tubs(order, book)), size=size)


def design_of(order: Order, book: Book) -> CakeDesign:
    """The cake of an order that has one, with what is different about it this time."""
    design, change = book.cakes[order.cake or ""], order.change
    if change is None:
        return design
    written = change.model_fields_set
    values = {name: getattr(change if name in written else design, name) for name in CakeDesign.model_fields}
    if "tiers" in written and "sizes" not in written:
        values["sizes"] = None  # they are sizes of the tiers it had
    return CakeDesign.model_construct(set(written | design.model_fields_set), **values)


def plain_cake(ordered: OrderedMixture, book: Book) -> CakeDesign | None:
    """A baked recipe ordered by itself, as a cake without filling, coat, cover or board; None if it is made by
    weight."""
    mixture = book.mixtures[ordered.mixture]
    tin = ordered.tin or next((tin for _, tin in mixture.tins), None)
    if tin is None:
        return None
    trays = tin.kind.in_trays
    size = TierSize(count=ordered.count if trays else 1, tin=tin, bare=False, written=tin.name)
    tier = DesignTier.model_construct({"tier"}, tier=size)
    if trays:
        return CakeDesign.model_construct({"mixture"}, name=mixture.name, tiers=(tier,), mixture=ordered.mixture)
    return CakeDesign.model_construct(
        {"mixture", "filling", "coat", "cover", "border", "layers", "board"},
        name=mixture.name, tiers=(tier,), beside=(tier,) * (ordered.count - 1),
        mixture=ordered.mixture, filling=NONE, coat=NONE, cover=NONE, border=NO_BORDER, layers=1,
        board=DesignBoard.model_construct({"size"}, size=0.0),
    )  # fmt: skip


def _tubs(order: Order, book: Book) -> Iterator[Tub]:
    for each in order.mixtures:
        mixture = book.mixtures[each.mixture]
        if mixture.makes:
            yield Tub(slug=each.mixture, mixture=mixture, times=each.count, mass_g=mixture.makes * each.count)
