"""What a design says of each tier, settled: by itself, by the cake, by its recipe, by the house."""

from __future__ import annotations

from tests.plans.cakes.conftest import Design, in_house

from tinbook.loading import Loaded
from tinbook.plans.base.finishing import finishing
from tinbook.plans.cakes.asked import TierAsked, finished, in_tin, on_the_shelf, tiers_asked
from tinbook.plans.cakes.whole import written_tins
from tinbook.tins import read_tin


def asked(demo: Loaded, design: Design, **data: object) -> tuple[TierAsked, ...]:
    cake = design({"mixture": "madeira-cake", **data})
    return tiers_asked(cake, written_tins(cake), demo.book, demo.facts)


def test_what_a_tier_does_not_say_the_cake_says(demo: Loaded, design: Design) -> None:
    tiers = [{"tier": "25 cm", "mixture": "mud-cake", "height": "8 cm"}, "20 cm"]
    base, top = asked(demo, design, tiers=tiers, height="12 cm", colour="hull blue", ribbon="yes")
    assert base.batch and top.batch and (base.batch.slug, top.batch.slug) == ("mud-cake", "madeira-cake")
    assert (base.height_mm, top.height_mm) == (80.0, 120.0)
    assert base.colour == top.colour == "hull blue" and base.ribbon and top.ribbon


def test_a_plain_tier_is_finished_as_its_recipe_is(demo: Loaded, design: Design) -> None:
    (tier,) = asked(demo, design, tiers="20 cm")
    own = finishing(demo.book.finish, demo.facts, demo.book.mixtures["madeira-cake"].finish)
    assert tier.settled == own
    assert tier.height_mm is None and tier.layers is None


def test_a_tier_goes_before_its_recipe_and_that_before_the_house(demo: Loaded, design: Design) -> None:
    (tier,) = asked(demo, design, tiers="20 cm", coat="dark-ganache", filling="none", cover="marzipan", border="none")
    made = tier.settled.made
    assert (made.crumb_coat, made.final_coat, made.cover) == ("dark-ganache", "dark-ganache", "marzipan")
    assert made.filling is None and tier.settled["filling"] == 0.0 and tier.settled.border is None
    assert tier.settled["final_coat"] == demo.book.finish.final_coat


def test_a_figure_on_the_board_asks_for_a_wide_one(demo: Loaded, design: Design) -> None:
    stand = {"decorations": [{"technique": "lighthouse-for-the-front", "on": "board"}]}
    assert [each.settled.board for each in asked(demo, design, tiers="20 cm", **stand)] == ["wide"]
    assert [each.settled.board for each in asked(demo, design, tiers="20 cm")] == ["usual"]
    least = asked(demo, design, tiers="20 cm", **stand, board={"wider": "least"})
    assert least[0].settled.board == "least"


def test_foam_has_no_filling_and_under_paste_no_coat(demo: Loaded, design: Design) -> None:
    cake = design({"tiers": [{"tier": "25 cm", "dummy": "yes"}, "20 cm"], "mixture": "madeira-cake"})
    foam = finished(cake, cake.tiers[0], None, demo.book, demo.facts)
    assert [foam[key] for key in ("filling", "crumb_coat", "final_coat")] == [0.0, 0.0, 0.0] and foam["paste"] == 5.0
    bare = in_house(demo.book, made_with=None)
    assert finished(cake, cake.tiers[0], None, bare, demo.facts)["final_coat"] == 4.0


def test_a_tin_is_the_one_on_the_shelf(demo: Loaded) -> None:
    """With its depth and measure, as in the tables of every recipe; else as the trade sells it, else as written."""
    own, owned = on_the_shelf(read_tin("round 23 cm")[1], demo.book)
    assert (own.full_name, own.measured_ml, owned) == ("round 23 cm x 7.5 cm", 2850.0, True)
    sold, owned = on_the_shelf(read_tin("round 28 cm")[1], demo.book)
    assert (sold.full_name, sold.depth_mm, owned) == ("round 28 cm", None, False)
    odd, owned = on_the_shelf(read_tin("round 21 cm x 6 cm")[1], demo.book)
    assert (odd.full_name, owned) == ("round 21 cm x 6 cm", False)


def test_a_tin_whose_depth_nobody_told_is_as_deep_as_the_houses(demo: Loaded, design: Design) -> None:
    """Where layers are asked for, as one tin gives so many; else its recipe's table has it without."""
    high, plain = (asked(demo, design, tiers="28 cm", **more)[0] for more in ({"height": "10 cm"}, {}))
    assert (high.tin.depth_mm, plain.tin.depth_mm) == (75.0, None)
    moved = in_tin(high, read_tin("round 35 cm")[1], demo.book)
    assert (moved.tin.full_name, moved.owned) == ("round 35 cm x 7.5 cm", False)


def test_what_stands_beside_keeps_its_size(demo: Loaded, design: Design) -> None:
    cake = design({"tiers": "20 cm", "beside": "12 standard cups", "mixture": "madeira-cake"})
    larger = tiers_asked(cake, (read_tin("round 25 cm")[1],), demo.book, demo.facts)
    assert [(each.tin.name, each.count, each.beside) for each in larger] == [
        ("round 25 cm", 1, False),
        ("standard cups", 12, True),
    ]
