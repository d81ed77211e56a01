"""What a design says about each tier, settled: its tin, its mixture, and the figures it is finished with."""

from __future__ import annotations

from dataclasses import dataclass, fields, replace
from typing import Any

from tinbook.engine.layers import layer_for_mm
from tinbook.facts import Facts
from tinbook.models import Book, CakeDesign, DesignTier, Finish, Made
from tinbook.models.cakes import BOARD, NO_BORDER
from tinbook.models.ledger import Itself, ledger_of
from tinbook.models.reading import NONE
from tinbook.plans.base.asking import AskError
from tinbook.plans.base.bought import made_or_bought
from tinbook.plans.base.finishing import Finishing, finishing
from tinbook.plans.base.scaling import owned_count
from tinbook.plans.base.shelf import all_outlines
from tinbook.plans.base.weighing import Batch, as_owned, same_outline, weigh
from tinbook.plans.finish.covering import covers
from tinbook.tins import Tin

SEEN_ALONE = ("place", "beside", "gap_mm", "colour", "batter_colour", "ribbon")
"""What of a tier is seen and changes none of its own sums."""


@dataclass(frozen=True, kw_only=True)
class TierAsked:
    """One tier as it is to be made. `place` counts from 0 at the bottom; of what stands `beside` the cake, from 0 too.

    `batch` is None for a dummy; `icing` is what goes on cups, `icing_g` how much on each if that is said. `height_mm`
    and `layers` are None where they follow from what its mixture bakes.
    """

    place: int
    beside: bool
    count: int
    tin: Tin
    owned: bool
    batch: Batch | None
    settled: Finishing
    height_mm: float | None
    layers: int | None
    colour: str | None
    batter_colour: str | None
    ribbon: bool
    gap_mm: float
    icing: Batch | None = None
    icing_g: float | None = None

    @property
    def sums_by(self) -> tuple[object, ...]:
        """What its sums go by: two tiers alike in this take and give the same, wherever they stand."""
        values = (getattr(self, each.name) for each in fields(self) if each.name not in SEEN_ALONE)
        return tuple(each if isinstance(each, float | int | Tin | None) else Itself(each) for each in values)

    @property
    def dummy(self) -> bool:
        """Whether it is foam."""
        return self.batch is None

    @property
    def cups(self) -> bool:
        """Whether it is cups, which are neither cut nor coated."""
        return self.tin.kind.in_trays


def on_the_shelf(tin: Tin, book: Book) -> tuple[Tin, bool]:
    """A tin as the tables of mixtures have it, with the depth and measure of the house's own; and whether it is
    owned."""
    if tin.depth_mm is None and not tin.called:
        for known, owned in all_outlines(book):
            if same_outline(known, tin):
                return known, owned
    own = as_owned(tin, book)
    return own, owned_count(book, own) > 0


def tiers_asked(design: CakeDesign, tins: tuple[Tin, ...], book: Book, facts: Facts) -> tuple[TierAsked, ...]:
    """The tiers of a sound design, in these `tins` from the bottom, and what stands beside it, each in its own."""
    stacked = tuple(
        _asked(design, tier, place, tin, False, book, facts)
        for place, (tier, tin) in enumerate(zip(design.tiers, tins, strict=True))
    )
    served = tuple(
        _asked(design, tier, place, tier.tier.tin, True, book, facts) for place, tier in enumerate(design.beside)
    )
    return stacked + served


def _asked(
    design: CakeDesign, tier: DesignTier, place: int, tin: Tin, beside: bool, book: Book, facts: Facts
) -> TierAsked:
    word = None if tier.dummy else design.of(tier, "mixture")
    batch = weigh(word, book.mixtures[word], book, facts) if word else None
    upright, cups = tin.kind.solid == "upright", tin.kind.in_trays
    asked = TierAsked(
        place=place,
        beside=beside,
        count=tier.tier.count,
        tin=tin,
        owned=False,
        batch=batch,
        settled=_settled(design, tier, batch.mixture.finish if batch else None, book, facts),
        height_mm=design.of(tier, "height") if upright and not cups else None,
        layers=None if cups else design.of(tier, "layers"),
        colour=None if cups else design.of(tier, "colour"),
        batter_colour=None if tier.dummy else design.of(tier, "batter_colour"),
        ribbon=design.of(tier, "ribbon") and not cups,
        gap_mm=tier.on_pillars or 0.0,
        icing=made_or_bought(tier.icing, book, facts) if tier.icing and cups else None,
        icing_g=tier.icing_each,
    )
    return in_tin(asked, tin, book)


def in_tin(asked: TierAsked, tin: Tin, book: Book) -> TierAsked:
    """The tier in another tin. Where its height or its layers are asked for, a tin without a depth is as deep as the
    house's usually are: how many layers one gives goes by its depth."""
    own, owned = on_the_shelf(tin, book)
    usual_mm = round(book.house.usual_deep_mm, 2)
    by_depth = own.depth_mm is None and own.kind.solid == "upright" and own.kind.kept == "depth"
    if by_depth and (asked.height_mm or asked.layers) and not own.kind.depth_fault(usual_mm):
        own = replace(own, depth_mm=usual_mm)
    return replace(asked, tin=own, owned=owned)


def layers_of(asked: TierAsked) -> tuple[int, float]:
    """How many layers a tier has whose height or layers are asked for, and how high each is. AskError where its filling
    leaves no room for them."""
    settled, layers = asked.settled, asked.layers or asked.settled.layers
    if asked.height_mm is None:
        return layers, settled["layer"]
    try:
        return layers, layer_for_mm(asked.height_mm, layers, settled["filling"])
    except ValueError as error:
        raise AskError(str(error), "ask for fewer layers, less filling or a taller tier") from None


def own_finish(design: CakeDesign, tier: DesignTier, recipe: Finish | None) -> Finish:
    """What the design says about how a tier is finished, overriding what its recipe says."""
    recipe = recipe or Finish()
    made = recipe.made_with.model_dump(by_alias=True) if recipe.made_with else {}
    changes: dict[str, Any] = {}
    for name, roles in _ROLES.items():
        word = design.of(tier, name)
        if word == NONE:
            changes |= dict.fromkeys(_THICK[name], 0.0)
        elif word is not None:
            made |= dict.fromkeys(roles, word)
    if design.board.paste is not None:
        made["board"] = design.board.paste
    if (border := design.of(tier, "border")) is not None:
        changes["border"] = border
    if wider := design.board.wider or ("wide" if any(each.on == BOARD for each in design.decorations) else None):
        changes["board"] = wider
    if design.board.covered in ("whole", "ring"):
        changes["board_covered"] = design.board.covered
    if made:
        changes["made_with"] = Made.model_construct(**made)
    return recipe.model_copy(update=changes)


_ROLES = {"filling": ("filling",), "coat": ("crumb coat", "final coat"), "cover": ("cover",)}
"""What a tier's keys name, in the words of the house's `made with`."""
_THICK = {"filling": ("filling",), "coat": ("crumb_coat", "final_coat"), "cover": ("paste",)}
"""The figures that are zero if it has none of it."""


def _settled(design: CakeDesign, tier: DesignTier, recipe: Finish | None, book: Book, facts: Facts) -> Finishing:
    """The same figures in every size."""
    name = ("finished", Itself(design), Itself(tier), Itself(recipe), Itself(facts))
    return ledger_of(book).lately(name, lambda: finished(design, tier, recipe, book, facts))


def finished(design: CakeDesign, tier: DesignTier, recipe: Finish | None, book: Book, facts: Facts) -> Finishing:
    """The figures a tier is finished with: its own, its recipe's, the house's, the trade's, in this order.

    A dummy has no filling; under paste it has no coats either, and without paste only the last of them.
    """
    settled = finishing(book.finish, facts, own_finish(design, tier, recipe))
    bare = {
        key.replace(" ", "_"): None for name, roles in _ROLES.items() if design.of(tier, name) == NONE for key in roles
    }
    made = settled.made.model_copy(update=bare)
    if tier.dummy:
        covered = made_or_bought(made.cover, book, facts) if made.cover else None
        nothing = ("filling", "crumb_coat", "final_coat") if covered and covers(covered) else ("filling", "crumb_coat")
        figures = {key: replace(settled.figures[key], value=0.0) for key in nothing}
        settled = replace(settled, figures={**settled.figures, **figures}, dam_mm=0.0)
    border = None if settled.border is NO_BORDER else settled.border
    return replace(settled, made=made, border=border)
