"""Laws of finishing: a larger or a higher cake never takes less of anything, and what is made is what is on the cake."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations
from math import inf

import pytest
from tests.every import every

from tinbook.loading import Loaded
from tinbook.plans.base.bought import made_or_bought
from tinbook.plans.base.finishing import finishing
from tinbook.plans.base.scaling import tin_table
from tinbook.plans.base.weighing import weigh
from tinbook.plans.finish.boards import BoardRow, board_row
from tinbook.plans.finish.cake import Cake
from tinbook.plans.finish.cakes import baked_cakes
from tinbook.plans.finish.coating import CoatRow, coat_row, coats_of, roles_of
from tinbook.plans.finish.covered import covered_table
from tinbook.plans.finish.pasting import PasteRow, paste_row
from tinbook.tins import SHAPES, Tin

COATED = [key for key, shape in SHAPES.items() if shape.standard and not shape.in_trays]
CAKES = ("creamed-butter-sponge", "madeira-cake", "rich-fruit-cake", "coffee-and-walnut-sponge")


def pairs(key: str) -> Iterator[tuple[Tin, Tin]]:
    """Standard tins of a shape of which the second is no smaller any way, and its tube no other."""
    tins = [Tin(shape=key, sizes_mm=sizes, depth_mm=None) for sizes in {sizes for sizes, _ in SHAPES[key].standard}]
    for one, other in combinations(sorted(tins, key=lambda tin: tin.sizes_mm), 2):
        tubes = {Cake(tin, 100.0, 4).outline.room_mm for tin in (one, other)}
        if len(tubes) == 1 and all(a <= b for a, b in zip(one.sizes_mm, other.sizes_mm, strict=True)):
            yield one, other


def taken(demo: Loaded, cake: Cake) -> dict[str, float]:
    """All that one cake takes in the demo's house, with its dam and its border; what is not sold so large is endless."""
    book, facts = demo.book, demo.facts
    settled = finishing(book.finish, facts)
    icing, paste = made_or_bought("american-buttercream", book, facts), made_or_bought("sugarpaste", book, facts)
    assert icing and paste and settled.border and settled.dam_mm
    roles = roles_of(icing, settled)
    made = coat_row(icing, cake, True, settled, facts, roles=roles)
    cover = paste_row(paste, cake, True, settled, facts)
    board = board_row(cake, True, settled, facts, paste_g_per_ml=1.4, steps=icing.steps)
    return {**of_coats(made), **of_paste(cover), **of_boards(board)}


def of_coats(row: CoatRow) -> dict[str, float]:
    keys = ("filling_g", "crumb_g", "final_g", "border_g", "bag_g", "made_g", "made_shown_g", "batches")
    return {key: getattr(row, key) for key in keys}


def of_paste(row: PasteRow) -> dict[str, float]:
    packs_g = sum(count * size for count, size in row.packs)
    found = {"net_g": row.net_g, "roll_g": row.made_g, "rolled_mm": max(row.rolled_mm), "packs_g": packs_g}
    return found | {"some get by on": row.net_low_g, "some cake makers allow": row.net_high_g}


def of_boards(row: BoardRow) -> dict[str, float]:
    found = {"cake_ribbon_mm": row.cake_ribbon_mm, "guide_mm": max(row.guide_mm)}
    for name, drum in row.drums.items():
        sides = drum.board.size_mm or (inf, inf)
        whole_g, ribbon_mm = (inf if figure is None else figure for figure in (drum.whole_g, drum.ribbon_mm))
        boxed = max(drum.box_mm[:2]) if drum.box_mm else inf
        high = drum.box_mm[2] if drum.box_mm else inf
        found |= {f"{name} drum": max(sides), f"{name} paste": whole_g, f"{name} ribbon": ribbon_mm}
        found |= {f"{name} box": boxed, f"{name} box, high": high}
    return found


@every("key", COATED)
def test_a_larger_cake_never_takes_less_of_anything(key: str, demo: Loaded) -> None:
    settled = finishing(demo.book.finish, demo.facts)
    known: dict[Tin, dict[str, float]] = {}
    for one, other in pairs(key):
        for tin in (one, other):
            cake = Cake(tin, 100.0, 4)
            if tin not in known and cake.room_for(settled.coats_mm + settled["paste"]):
                known[tin] = taken(demo, cake)
        if one in known and other in known:
            less = [name for name, figure in known[one].items() if known[other][name] < figure - 1e-9]
            assert not less, (one.name, other.name, less)


@pytest.mark.parametrize("tin", [Tin(shape="round", sizes_mm=(150.0,)), Tin(shape="rectangle", sizes_mm=(330.0, 230.0)),
                                 Tin(shape="heart", sizes_mm=(200.0,)), Tin(shape="petal", sizes_mm=(200.0,))])  # fmt: skip
def test_a_higher_cake_takes_more_all_round_it_and_no_less_of_the_rest(tin: Tin, demo: Loaded) -> None:
    low, high = taken(demo, Cake(tin, 100.0, 4)), taken(demo, Cake(tin, 123.0, 4))
    assert not [name for name in low if high[name] < low[name] - 1e-9]
    for more in ("crumb_g", "final_g", "made_g", "net_g", "roll_g", "rolled_mm"):
        assert high[more] > low[more], more
    assert high["filling_g"] == low["filling_g"] and high["border_g"] == low["border_g"]
    for drum in ("least", "usual", "wide"):
        assert high[f"{drum} box, high"] - low[f"{drum} box, high"] == pytest.approx(23.0)
    layered = taken(demo, Cake(tin, 123.0, 5))
    assert layered["filling_g"] == pytest.approx(low["filling_g"] * 4 / 3)


@pytest.mark.parametrize("slug", CAKES)
def test_what_is_made_is_what_is_on_the_cake_less_bowl_and_bag(slug: str, demo: Loaded) -> None:
    """And what the mixtures of one cake come to together is what the cake takes: nothing is left out, nothing twice."""
    book, facts = demo.book, demo.facts
    table = covered_table(
        baked_cakes(tin_table(weigh(slug, book.mixtures[slug], book, facts), book, facts), book, facts), book, facts
    )
    settled = table.finishing
    for row in table.rows:
        for made in row.made:
            on_the_cake = made.filling_g + made.crumb_g + made.final_g + made.border_g
            assert on_the_cake == pytest.approx((made.made_g - made.bag_g) * (1 - settled["stays_in_the_bowl"]))
        whole = coats_of(row.cake, settled, facts)
        border_ml = whole.border_ml if settled["final_coat"] else 0.0
        wanted_ml = whole.in_all_ml - whole.border_ml + border_ml
        assert sum(made.coats.in_all_ml for made in row.made) == pytest.approx(wanted_ml)
    assert len(table.rows) > 30
