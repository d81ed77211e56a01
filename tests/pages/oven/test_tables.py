"""The oven's tables of some mixtures."""

from tinbook.pages.base.page import Desk
from tinbook.pages.oven.tables import kept_dial, loads_grid, ways_grid
from tinbook.plans.baking.loads import written_loads
from tinbook.plans.baking.oven import dial


def test_a_row_for_each_that_is_asked_about(desk: Desk) -> None:
    known = [baking for batch in desk.batches.values() if batch.tins and (baking := desk.bakes.of(batch))][:3]
    ways, loads = ways_grid(desk, known), loads_grid(desk, known)
    assert [row.address for row in ways.rows] == [f"mixtures/{each.batch.slug}" for each in known]
    taken = [written_loads(each.batch, each, desk.book, desk.facts) for each in known]
    assert len(loads.rows) == sum(map(len, taken))
    assert all(len(row.cells) + 1 == len(grid.heads) for grid in (ways, loads) for row in grid.rows)


def test_a_dial_keeps_its_unit_beside_it(desk: Desk) -> None:
    assert kept_dial(dial(160.0, desk.book, desk.facts)) == "135\u00a0°C\u00a0fan"
