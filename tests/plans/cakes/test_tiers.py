"""Each figure of a tier is that of the table it comes from, at the tier's true height."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import cache
from typing import Any

import pytest
from hypothesis import assume, given
from tests.every import every, many
from tests.plans.cakes.conftest import Design, Made, cakes, in_house

from tinbook.loading import Loaded
from tinbook.plans.baking.bakes import Bakes
from tinbook.plans.base.asking import AskError, Query
from tinbook.plans.base.result import Row
from tinbook.plans.base.scaling import fit
from tinbook.plans.cakes.asked import layers_of
from tinbook.plans.cakes.tiers import TierWorked, cake_asked_for, can_be, worked_tier
from tinbook.plans.cakes.whole import portion_of, whole_cake
from tinbook.plans.finish.boards import guide_of
from tinbook.plans.finish.coating import coat_row
from tinbook.plans.finish.pasting import paste_row
from tinbook.plans.finish.used import learned
from tinbook.plans.portions.cutting import cut_of
from tinbook.plans.rules.cakes import cake_flaws
from tinbook.plans.tables import TABLES
from tinbook.tins import SHAPES as SHAPES_OF

Rows = Callable[..., tuple[Row, ...]]


@pytest.fixture(scope="module")
def rows(demo: Loaded) -> Rows:
    """`rows("layers", of="madeira-cake")`: a table of the demo with every shape in it, asked once."""

    book = replace(demo.book, house=demo.book.house.model_copy(update={"also_show": tuple(SHAPES_OF)}))

    @cache
    def ask(name: str, **asked: Any) -> tuple[Row, ...]:
        return TABLES[name].rows(book, demo.facts, Query(**asked)).rows

    return ask


def row_of(found: tuple[Row, ...], tin: str, key: str = "tin") -> Row:
    return next(row for row in found if str(row[key]).startswith(tin))


SHAPES = ("round 20 cm", "square 25 cm", "heart 20 cm", "hexagon 23 cm", "octagon 25 cm", "petal 23 cm", "dome 15 cm",
          "ball 15 cm", "ring 23 cm x 7.5 cm, tube 7.5 cm", "rectangle 23 cm x 33 cm", "half sheet", "2 lb loaf",
          "oval 20 cm x 28 cm", "number 1", "tapered ring 25 cm x 23 cm", "fluted ring 25 cm", "round 18 cm")  # fmt: skip
SLUGS = ("creamed-butter-sponge", "ginger-sponge", "madeira-cake")


@every("tin", SHAPES)
@every("slug", SLUGS)
def test_one_tier_as_its_recipe_bakes_gives_the_recipes_own_figures(
    made: Made, rows: Rows, slug: str, tin: str
) -> None:
    """Batter, layers, coats, paste, board and portions as on the page of the recipe, for any shape."""
    (tier,) = made({"tiers": tin, "mixture": slug, **({"board": "none"} if "sheet" in tin else {})}).tiers
    name, baked, covered = tier.asked.tin.name, tier.baked, tier.covered
    assert baked and covered and tier.cake and tier.serving
    own = next(row for row in rows("tins", of=slug) if row["tin"] == name)
    assert (baked.whole.factor, baked.whole.mass_g) == pytest.approx((own["factor"], own["mixture_g"]), abs=0.001)
    assert (baked.fit.needed, baked.fit.bakes, baked.mixes) == (own["fill_tins"], own["bakes"], own["mixes"])
    if baked.stack:
        layers = row_of(rows("layers", of=slug), tier.asked.tin.full_name)
        assert baked.stack.stack_mm == pytest.approx(layers["stack_mm"], abs=0.006)
        assert (baked.stack.layers, baked.stack.tins) == (layers["layers"], layers["tins"])
    coats = next(row for row in rows("coats", of=slug) if row["tin"] == name)
    (icing,) = covered.made
    assert (icing.filling_g, icing.crumb_g, icing.final_g, icing.border_g, icing.made_g) == pytest.approx(
        tuple(coats[key] for key in ("filling_g", "crumb_coat_g", "final_coat_g", "border_g", "made_g")), abs=0.006
    )
    paste = next(row for row in rows("covers", of=slug) if row["tin"] == name)
    assert covered.paste
    assert (covered.paste.made_g, covered.paste.net_g) == pytest.approx(
        (paste["roll_out_g"], paste["on_the_cake_g"]), abs=0.006
    )
    board = next(row for row in rows("boards", of=slug) if row["tin"] == name)
    assert (covered.board.cake_ribbon_mm, covered.board.guide_mm[0]) == pytest.approx(
        (board["cake_ribbon_mm"], board["guide_mm"]), abs=0.06
    )
    served = next(row for row in rows("portions", of=slug) if row["tin"] == name)
    assert tier.serves == served["dessert_count"]
    assert tier.cake.stands_mm == pytest.approx(served["stands_mm"], abs=0.006)


@every("slug", SLUGS)
@every("tin", ["round 20 cm", "square 20 cm", "dome 15 cm"])
def test_its_time_in_the_oven_is_that_of_its_recipe_in_that_tin(made: Made, rows: Rows, slug: str, tin: str) -> None:
    (tier,) = made({"tiers": tin, "mixture": slug}).tiers
    assert tier.baked and tier.baked.time
    own = row_of(rows("times", of=slug), tier.asked.tin.full_name)
    assert tier.baked.time.likely_min == pytest.approx(own["likely_exact_min"], abs=0.001)
    assert tier.baked.time.check_shown_min == own["check_min"]
    assert tier.baked.oven_low_min == tier.baked.fit.bakes * float(own["low_min"] or 0)


@every(("height_mm", "layers"), [(100, 4), (75, 3), (130, 5)])
def test_a_tier_as_high_as_asked_takes_what_the_tables_give_for_that_height(
    made: Made, rows: Rows, demo: Loaded, height_mm: int, layers: int
) -> None:
    """The mixture for the layers; icing, paste, board at that height, in a house of so many layers."""
    data = {"tiers": "round 20 cm", "mixture": "madeira-cake", "height": f"{height_mm} mm", "layers": str(layers)}
    (tier,) = made(data).tiers
    assert tier.baked and tier.covered and tier.covered.paste
    layer_mm = (height_mm - (layers - 1) * 5.0) / layers
    tin = tier.asked.tin
    (own,) = rows("layers", of="madeira-cake", tins=((1, tin),), layers=layers, layer_mm=layer_mm)
    assert tier.baked.whole.mass_g == pytest.approx(own["whole_egg_mixture_g"], abs=0.006)
    assert tier.baked.exact.mass_g == pytest.approx(own["mixture_g"], abs=0.006)
    assert tier.cake and tier.cake.stands_mm == pytest.approx(height_mm)
    house = in_house(demo.book, layers=layers)
    query = Query(of="american-buttercream", height_mm=float(height_mm))
    coats = row_of(TABLES["coats"].rows(house, demo.facts, query).rows, "round 20 cm")
    (icing,) = tier.covered.made
    assert (icing.filling_g, icing.final_g, icing.made_g) == pytest.approx(
        (coats["filling_g"], coats["final_coat_g"], coats["made_g"]), abs=0.006
    )
    paste = row_of(rows("covers", of="sugarpaste", height_mm=float(height_mm)), "round 20 cm")
    assert tier.covered.paste.made_g == pytest.approx(paste["roll_out_g"], abs=0.006)


@given(data=cakes())
@many(1000)
def test_every_figure_is_that_of_the_function_behind_its_table(
    demo: Loaded, design: Design, bakes: Bakes, data: dict[str, Any]
) -> None:
    """For random cakes of one to four tiers, all shapes: a figure is asked, and never worked out here."""
    book, facts, cake = demo.book, demo.facts, design(data)
    assume(not cake_flaws(cake, book, facts))
    whole = whole_cake("tide-cake", cake, book, facts, bakes=bakes)
    for tier in whole.every_tier:
        baked, settled = tier.baked, tier.asked.settled
        if baked is not None:
            again = fit(
                baked.batch, book, facts, tier.asked.tin, baked.fit.count,
                sum(_ml(baked)), baked.fit.each_g * baked.fit.needed,
            )  # fmt: skip
            assert (again.needed, again.bakes) == (baked.fit.needed, baked.fit.bakes)
            assert again.batter_mm == pytest.approx(baked.fit.batter_mm)
        if tier.cake is None or tier.table is None or tier.covered is None:
            continue
        if tier.asked.height_mm is not None:
            assert tier.cake.stands_mm == pytest.approx(tier.asked.height_mm)
        for (slug, batch), row in zip(tier.table.mixtures.items(), tier.covered.made, strict=True):
            roles = [role for role, player in tier.table.roles.items() if player.slug == slug]
            spoken = {role.replace("_", " ") for role in roles if settled[role]}
            spoken |= {"border"} if "final coat" in spoken and "border" in batch.kind.plays else set()
            factor = learned(batch, book, facts).factor
            own = coat_row(batch, tier.cake, True, settled, facts, roles=spoken, factor=factor)
            assert row.made_g == pytest.approx(own.made_g)
        if tier.table.cover and tier.covered.paste:
            cover, factor = tier.table.cover, learned(tier.table.cover, book, facts).factor
            assert tier.covered.paste.made_g == paste_row(cover, tier.cake, True, settled, facts, factor).made_g
        assert tier.guide_mm == guide_of(tier.cake, settled)
        if tier.serving:
            assert tier.serves == tier.asked.count * cut_of(tier.asked.tin, whole.portion, tier.cake.stands_mm).count


def _ml(baked: Any) -> list[float]:
    """The batter in all tins of a fit, tin by tin."""
    return [baked.fit.tin.volume_ml(baked.fit.batter_mm)] * baked.fit.needed


def test_cups_are_baked_by_how_full_they_are_and_not_coated(made: Made, rows: Rows) -> None:
    (cups,) = made({"tiers": "24 standard cups", "mixture": "cupcakes"}).tiers
    assert cups.baked and cups.cake is None and cups.covered is None
    assert (cups.serves, cups.high_mm, cups.outer_mm > 0.0) == (24, 0.0, True)
    (own,) = rows("fits", of="cupcakes", tins=((24, cups.asked.tin),))
    assert cups.baked.fit.needed == own["fill_tins"] == 24
    assert cups.baked.tins == 2
    assert cups.baked.fit.each_g == pytest.approx(own["each_tin_g"], abs=0.006)


def test_foam_takes_paste_and_no_batter(made: Made) -> None:
    data = {"tiers": [{"tier": "25 cm", "dummy": "yes"}, "20 cm"], "mixture": "madeira-cake", "height": "10 cm"}
    foam, cake = made(data).tiers
    assert foam.baked is None and foam.serves == 0 and foam.covered and foam.covered.paste
    assert all(row.made_g == 0.0 for row in foam.covered.made)
    assert foam.high_mm == pytest.approx(100.0 + 5.0) and cake.high_mm == pytest.approx(100.0 + 6.0 + 5.0)


def test_a_dummy_without_paste_is_coated(made: Made) -> None:
    (foam,) = made({"tiers": [{"tier": "20 cm", "dummy": "yes"}], "cover": "none"}).tiers
    assert foam.covered and foam.covered.paste is None
    assert foam.covered.made[0].final_g > 0.0 and foam.covered.made[0].filling_g == 0.0


def test_what_there_is_none_of_takes_none(made: Made) -> None:
    plain = {"tiers": "20 cm", "mixture": "madeira-cake", "filling": "none", "coat": "none", "cover": "none"}
    (tier,) = made(plain).tiers
    assert tier.covered and tier.covered.paste is None
    assert sum(row.made_g for row in tier.covered.made) == 0.0 and tier.outer_mm == 0.0


def test_a_mixture_that_cannot_be_cut_so_high_is_refused(demo: Loaded, design: Design, made: Made) -> None:
    high = {"tiers": "20 cm", "mixture": "madeira-cake", "height": "30 cm", "layers": "1"}
    with pytest.raises(AskError, match="a layer of 300 mm needs a tin 333 mm deep"):
        made(high)
    with pytest.raises(AskError, match="do not fit in 20 mm"):
        made({**high, "height": "20 mm", "layers": "6"})


def test_its_time_is_left_out_where_nobody_asks(demo: Loaded, design: Design, made: Made) -> None:
    """The rules ask for sums alone."""
    whole = made({"tiers": "20 cm", "mixture": "madeira-cake"})
    asked = whole.tiers[0].asked
    worked = worked_tier(asked, portion_of(whole.design, demo.book, demo.facts), demo.book, demo.facts)
    assert isinstance(worked, TierWorked) and worked.baked and worked.baked.time is None
    assert worked.baked.oven_high_min == 0.0 and layers_of(asked) == (4, 28.0)


def test_what_stops_a_tier_is_told_without_its_sums(made: Made) -> None:
    """By the same words; a tier that is only as its recipe bakes is stopped by no tin's depth."""
    tier = made({"tiers": "20 cm", "mixture": "madeira-cake", "height": "10 cm"}).tiers[0].asked
    can_be(tier, cake_asked_for(tier))
    high = replace(tier, height_mm=300.0, layers=1)
    with pytest.raises(AskError, match="a layer of 300 mm needs a tin 333 mm deep"):
        can_be(high, cake_asked_for(high))
    shallow = replace(tier, tin=replace(tier.tin, depth_mm=25.0), height_mm=None, layers=None)
    can_be(shallow, cake_asked_for(shallow))
    cups = made({"tiers": "24 standard cups", "mixture": "cupcakes"}).tiers[0].asked
    assert cake_asked_for(cups) is None
    can_be(cups, None)
