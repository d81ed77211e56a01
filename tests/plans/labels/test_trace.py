"""A pack followed into what was baked and handed over, and a batch back to its packs; what nobody logged is told."""

from __future__ import annotations

from datetime import date

import pytest
from tests.plans.labels.conftest import Kitchen

from tinbook.loading import Loaded
from tinbook.plans.base.asking import AskError
from tinbook.plans.labels.trace import MAY, SURE, open_packs, trace_batch, trace_pack

BAKES = """bakes:
  - {day: 2026-11-02, of: cake, tin: round 20 cm x 7.5 cm, batter: 500 g, oven: 160 °C, done after: 60 min}
  - {day: 2026-11-20, of: cake, tin: round 20 cm x 7.5 cm, batter: 500 g, oven: 160 °C, done after: 60 min}
"""
OPENED = """opened:
  - {day: 2026-11-01, of: flour, pack: A1}
  - {day: 2026-11-10, of: flour, pack: A2, finished: 2026-11-21}
  - {day: 2026-11-01, of: butter, pack: B1, finished: 2026-11-01}
"""
ORDER = "handle: {handle}\nhand over: {day} 11:00\nstate: gone\nmixtures: [{what}]\n"


def logged(kitchen: Kitchen, **orders: str) -> Loaded:
    files = {"house/bakes.yaml": BAKES, "house/opened.yaml": OPENED}
    files |= {
        f"orders/{name}.yaml": ORDER.format(handle=name, day=day, what="cake" if name != "tub" else "cream")
        for name, day in orders.items()
    }
    files["mixtures/cream.yaml"] = (
        "name: Cream\nkind: buttercream\nmakes: 300 g\nkeeps for: 2 days\nmix:\n  - 100 g butter\n  - 200 g sugar\n"
    )
    loaded = kitchen("300 g flour", "200 g sugar", files=files)
    assert not loaded.errors, [problem.message for problem in loaded.errors]
    return loaded


def test_a_pack_is_open_until_it_is_finished_or_the_next_is_opened(kitchen: Kitchen) -> None:
    packs = {each.entry.pack: each for each in open_packs(logged(kitchen).book)}
    assert packs["A1"].until == date(2026, 11, 10) and packs["A2"].until == date(2026, 11, 21)
    assert packs["A1"].open_on(date(2026, 11, 10)) and packs["A2"].open_on(date(2026, 11, 10))
    assert not packs["A1"].open_on(date(2026, 11, 11)) and not packs["A1"].open_on(date(2026, 10, 31))


def test_from_a_pack_to_bakes_and_orders(kitchen: Kitchen) -> None:
    loaded = logged(kitchen, early="2026-11-04", late="2026-11-22", later="2027-01-20")
    first, second = (trace_pack(pack, loaded.book, loaded.facts) for pack in ("A1", " a2 "))
    assert [each.handle for each in first.batches] == ["2026-11-02 cake"]
    assert [each.handle for each in second.batches] == ["2026-11-20 cake"]
    assert [(each.slug, each.how) for each in first.orders] == [("early", SURE)]
    # the last is long after any bake that was logged: nobody knows
    assert [(each.slug, each.how) for each in second.orders] == [("late", SURE), ("later", MAY)]


def test_what_is_not_baked_may_have_had_it(kitchen: Kitchen) -> None:
    loaded = logged(kitchen, tub="2026-11-05")
    found = trace_pack("B1", loaded.book, loaded.facts)
    assert [(each.slug, each.how) for each in found.orders] == [("tub", MAY)] and found.batches == ()
    assert {said.key for said in found.missing} == {"trace_no_bakes", "trace_may"}


def test_from_a_batch_back_to_its_packs(kitchen: Kitchen) -> None:
    loaded = logged(kitchen, early="2026-11-04")
    found = trace_batch("2026-11-02  cake", loaded.book, loaded.facts)
    assert [each.entry.pack for each in found.packs] == ["A1"]
    assert [(each.slug, each.how) for each in found.orders] == [("early", SURE)]
    (said,) = (said for said in found.missing if said.key == "trace_unlogged")
    assert dict(said.figures)["cards"] == ("sugar",)


def test_what_was_never_logged(kitchen: Kitchen) -> None:
    loaded = logged(kitchen)
    with pytest.raises(AskError, match='no pack "Z9"'):
        trace_pack("Z9", loaded.book, loaded.facts)
    with pytest.raises(AskError, match="no bake"):
        trace_batch("2026-11-03 cake", loaded.book, loaded.facts)
