"""One tier worked out: batter, layers, coats, paste, time and portions, each from its own table."""

from __future__ import annotations

from dataclasses import dataclass, replace

from tinbook.engine import rounding
from tinbook.engine.coats import with_bowl
from tinbook.engine.layers import stack_mm
from tinbook.engine.scaling import factor, times_needed
from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.models.ledger import Itself, ledger_of
from tinbook.plans.baking.bakes import Bakes
from tinbook.plans.baking.times import Time
from tinbook.plans.base.asking import AskError
from tinbook.plans.base.scaling import Fit, fit, mixes, tin_rows, wanted_ml
from tinbook.plans.base.versions import Version, versions
from tinbook.plans.base.weighing import Batch
from tinbook.plans.cakes.asked import TierAsked, layers_of
from tinbook.plans.finish.cake import Cake
from tinbook.plans.finish.cakes import Cakes, baked_cake
from tinbook.plans.finish.covered import CoveredRow, CoveredTable, covered_table
from tinbook.plans.finish.layers import Stack, layers_in, stack_of, wanted
from tinbook.plans.portions.cutting import Portion
from tinbook.plans.portions.serving import Serving, servings

STANDARD_CUP_MM = 70.0
"""How wide the top of a standard cup is."""


@dataclass(frozen=True, kw_only=True)
class TierBaked:
    """What a tier is baked from: the mixture exactly and with whole eggs (`beaten`: weighed instead), its tins, its
    layers (None for cups, a dome or a ball), how many times the mixer bowl is filled, and its time in the oven."""

    batch: Batch
    exact: Version
    whole: Version
    beaten: bool
    fit: Fit
    stack: Stack | None
    mixes: int
    time: Time | None

    @property
    def eggs(self) -> float:
        """Whole eggs in it; 0 if they are beaten and weighed, or there are none."""
        lines = zip(self.batch.ingredients, self.whole.amounts, strict=True)
        return sum(amount.shown for line, amount in lines if line.whole_egg and amount.unit == "")

    @property
    def tins(self) -> int:
        """How many tins are filled; for cups, how many trays."""
        return times_needed(self.fit.needed, self.fit.tin.holes)

    @property
    def oven_low_min(self) -> float:
        """All its bakes, one after another: at least."""
        return self.fit.bakes * self.time.low_shown_min if self.time else 0.0

    @property
    def oven_high_min(self) -> float:
        """The same at most."""
        return self.fit.bakes * self.time.high_shown_min if self.time else 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Icing:
    """What goes on cups: `each_g` on one, usually from `low_g` to `high_g`, `net_g` on all of them; `made_g` with what
    stays in the bowl and, `bag_g`, in the bag."""

    batch: Batch
    each_g: float
    low_g: float
    high_g: float
    net_g: float
    bag_g: float
    made_g: float

    @property
    def net_shown_g(self) -> float:
        """What is on all of them, as the scales show it."""
        return rounding.scales(self.net_g, self.batch.steps)

    @property
    def made_shown_g(self) -> float:
        """All that is made, as it is weighed out."""
        return rounding.scales_up(self.made_g, self.batch.steps)


@dataclass(frozen=True, kw_only=True)
class TierWorked:
    """A tier with all its sums done. `baked` is None for a dummy, `cake` and `covered` for cups; `icing` is for cups.

    `weight_g`: what it weighs, finished, without its board; `serving` is None for a dummy.
    """

    asked: TierAsked
    baked: TierBaked | None
    cake: Cake | None
    table: CoveredTable | None
    covered: CoveredRow | None
    serving: Serving | None
    weight_g: float
    icing: Icing | None = None

    @property
    def cake_g(self) -> float:
        """What it weighs, baked and levelled, before its fillings and coats."""
        return _cake_g(self.baked)

    @property
    def outer_mm(self) -> float:
        """How far coats and paste stand out from it."""
        return self.asked.settled.coats_mm + self.asked.settled["paste"]

    @property
    def high_mm(self) -> float:
        """How high it stands with its coats and paste on; 0 for cups."""
        return self.cake.stands_mm + self.outer_mm if self.cake else 0.0

    @property
    def high_shown_mm(self) -> float:
        """The same, as a ruler shows it."""
        return rounding.ruler(self.high_mm)

    @property
    def guide_mm(self) -> tuple[float, float]:
        """How wide and long it is with its coats and paste on."""
        return self.covered.board.guide_mm if self.covered else self.asked.tin.stand_mm

    @property
    def serves(self) -> int:
        """Portions from it; for cups, one each."""
        return self.asked.count * self.serving.cut.count if self.serving else 0


def worked_tier(asked: TierAsked, portion: Portion, book: Book, facts: Facts, bakes: Bakes | None = None) -> TierWorked:
    """One tier; its time in the oven only where the `bakes` are given. AskError if its mixture cannot be cut as high
    as asked, or its coats would close its tube."""
    name = ("tier", asked.sums_by, portion, Itself(bakes), Itself(facts))
    worked = ledger_of(book).lately(name, lambda: _worked(asked, portion, book, facts, bakes))
    return worked if worked.asked is asked else replace(worked, asked=asked)


def _worked(asked: TierAsked, portion: Portion, book: Book, facts: Facts, bakes: Bakes | None) -> TierWorked:
    baked, cake = (None, foam(asked)) if asked.batch is None else _baked(asked, asked.batch, book, facts, bakes)
    table = covered = None
    if cake is not None:
        cakes = Cakes(
            finishing=asked.settled,
            rows=((cake, asked.owned),),
            height_mm=None if asked.batch else cake.height_mm,
            of=asked.batch,
        )
        table = covered_table(cakes, book, facts)
        if not table.rows:
            raise _closed(asked)
        covered = table.rows[0]
    weight_g = _cake_g(baked)
    serving = None
    if baked is not None:
        high_mm = cake.stands_mm if cake else 0.0
        known_g = weight_g if baked.stack else None
        serving = servings(asked.tin, high_mm, known_g, {portion.kind: portion})[portion.kind]
    icing = _icing(asked, facts)
    return TierWorked(
        asked=asked,
        baked=baked,
        cake=cake,
        table=table,
        covered=covered,
        serving=serving,
        weight_g=weight_g + _finish_g(covered) + (icing.net_g if icing else 0.0),
        icing=icing,
    )


def baked_stack(asked: TierAsked, book: Book, facts: Facts) -> Stack | None:
    """The layers of a tier as it is baked; None for a dummy, cups, a dome or a ball. AskError as in `worked_tier`."""
    return _baked(asked, asked.batch, book, facts, None)[0].stack if asked.batch else None


def _icing(asked: TierAsked, facts: Facts) -> Icing | None:
    """What goes on cups: by its own figure, else by what a swirl on a standard cup takes and the area of its top. Of an
    icing that is piped, a bagful is left over."""
    batch, fact = asked.icing, facts.numbers["icing on a cupcake"]
    if batch is None:
        return None
    larger = (asked.tin.sizes_mm[0] / STANDARD_CUP_MM) ** 2
    usual = [larger * (fact.value if end is None else end) for end in (fact.value, fact.low, fact.high)]
    each, low, high = usual if asked.icing_g is None else [asked.icing_g] * 3
    net_g, settled = each * asked.count, asked.settled
    bag_g = settled["stays_in_the_bag"] * batch.kind.gravity.typical if "border" in batch.kind.plays else 0.0
    made_g = with_bowl(net_g, settled["stays_in_the_bowl"]) + bag_g
    return Icing(batch=batch, each_g=each, low_g=low, high_g=high, net_g=net_g, bag_g=bag_g, made_g=made_g)


def can_be(asked: TierAsked, cake: Cake | None) -> None:
    """AskError if the tier cannot be made as asked: what stops `worked_tier`, without its sums. `cake` is the cake it
    becomes; None for cups."""
    if cake is None:
        return
    if not cake.room_for(asked.settled.coats_mm + asked.settled["paste"]):
        raise _closed(asked)
    as_baked = asked.height_mm is None and asked.layers is None
    if asked.batch is not None and cake.solid == "upright" and not as_baked:
        layers_in(asked.tin, layers_of(asked)[1], asked.settled["level_off"])


def cake_asked_for(asked: TierAsked) -> Cake | None:
    """The cake that becomes of a tier whose height or layers are asked for, else one of its outline, as high as the
    house's layers come to; None for cups."""
    if asked.cups:
        return None
    if asked.dummy:
        return foam(asked)
    layers, layer_mm = layers_of(asked)
    if asked.tin.kind.solid != "upright":
        return Cake(asked.tin, asked.tin.bounds_mm[0] / 2.0, layers)
    return Cake(asked.tin, stack_mm(layers, layer_mm, asked.settled["filling"]), layers)


def _closed(asked: TierAsked) -> AskError:
    return AskError(f"its coats would close the tube of {asked.tin.name}", "use a wider ring, or thinner coats")


def foam(asked: TierAsked) -> Cake:
    """A dummy, as high as asked or as the house usually makes its cakes."""
    return Cake(asked.tin, asked.height_mm or asked.settled.heights_mm[0], 1)


def _baked(
    asked: TierAsked, batch: Batch, book: Book, facts: Facts, bakes: Bakes | None
) -> tuple[TierBaked, Cake | None]:
    """What it is baked from, and the cake that becomes of it: as the mixture bakes, or as high as asked."""
    settled, tin = asked.settled, asked.tin
    if not batch.tins:
        raise AskError(f'"{batch.mixture.name}" is made by weight, not by tins', "name a cake")
    if asked.cups:
        volume_ml = wanted_ml(batch, tin, asked.count)
        exact, whole, beaten = versions(batch, factor(volume_ml, batch.batter_ml), tin.bounds_mm[0], facts)
        fitted = fit(batch, book, facts, tin, asked.count, batch.batter_ml * whole.factor, whole.mass_g)
        return _known(batch, exact, whole, beaten, fitted, None, book, facts, bakes), None
    if asked.height_mm is None and asked.layers is None:
        (row,) = tin_rows(batch, book, facts, [(tin, asked.owned)])
        cake = baked_cake(batch, settled, row)
        stack = stack_of(batch, settled, row.fit) if tin.kind.solid == "upright" else None
        return _known(batch, row.exact, row.whole, row.beaten, row.fit, stack, book, facts, bakes), cake
    layers, layer_mm = layers_of(asked)
    if tin.kind.solid != "upright":
        (row,) = tin_rows(batch, book, facts, [(tin, asked.owned)])
        cake = Cake(tin, tin.bounds_mm[0] / 2.0, layers)
        return _known(batch, row.exact, row.whole, row.beaten, row.fit, None, book, facts, bakes), cake
    answer = wanted(batch, book, facts, tin, layers, layer_mm, settled)
    cake = Cake(tin, answer.stack.stack_mm, answer.stack.layers)
    return _known(batch, answer.exact, answer.whole, answer.beaten, answer.fit, answer.stack, book, facts, bakes), cake


def _known(
    batch: Batch, exact: Version, whole: Version, beaten: bool, fitted: Fit, stack: Stack | None,
    book: Book, facts: Facts, bakes: Bakes | None,
) -> TierBaked:  # fmt: skip
    baking = bakes.of(batch) if bakes else None
    return TierBaked(
        batch=batch,
        exact=exact,
        whole=whole,
        beaten=beaten,
        fit=fitted,
        stack=stack,
        mixes=mixes(book, whole.mass_g),
        time=baking.times([(fitted.tin, fitted.batter_mm)])[0] if baking else None,
    )


def _cake_g(baked: TierBaked | None) -> float:
    """What it weighs, baked and levelled, by what is mixed, whole eggs and all; a dome, a ball and cups are not
    levelled."""
    if baked is None:
        return 0.0
    if baked.stack is not None:
        return baked.stack.weight_g * baked.whole.mass_g / (baked.fit.each_g * baked.fit.needed)
    return baked.whole.mass_g * (1.0 - baked.batch.loss)


def _finish_g(covered: CoveredRow | None) -> float:
    """What its filling, coats, border and paste weigh."""
    if covered is None:
        return 0.0
    coats_g = sum(row.filling_g + row.crumb_g + row.final_g + row.border_g for row in covered.made)
    return coats_g + (covered.paste.net_g if covered.paste else 0.0)
