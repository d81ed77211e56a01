"""What a bake asks of the kitchen: sums over tins, mixes, goes in the oven."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from math import pi

import pytest

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.baking.bakes import Bakes
from tinbook.plans.baking.loads import ABOVE, FITS, REFUSED, Load, load, loads, written_loads
from tinbook.plans.baking.times import Baking
from tinbook.plans.base.asking import Query
from tinbook.plans.base.weighing import Batch
from tinbook.tins import Tin, read_tin


def tin(text: str) -> Tin:
    return read_tin(text)[1]


@pytest.fixture
def ask(batch: Callable[..., Batch], kitchen: Book, facts: Facts) -> Callable[..., Load]:
    def answer(where: str, count: int = 1, book: Book = kitchen, **changes: object) -> Load:
        own = batch(book=book, **changes)
        return load(own, known(own, book, facts), book, facts, count, tin(where))

    return answer


def known(batch: Batch, book: Book, facts: Facts) -> Baking | None:
    return Bakes(replace(book, mixtures={batch.slug: batch.mixture}), facts).of(batch)


def test_a_deep_tin_takes_it(ask: Callable[..., Load]) -> None:
    made = ask("round 20 cm x 10 cm")
    assert (made.verdict, made.above_mm, made.fit.needed) == (FITS, 0.0, 1)
    assert made.time is not None
    assert (made.oven_low_min, made.oven_high_min) == (made.time.low_shown_min, made.time.high_shown_min)


def test_above_the_rim_warns_and_far_above_is_refused(ask: Callable[..., Load]) -> None:
    deep = ask("round 20 cm x 10 cm").all_in_mm
    over, far = (ask(f"round 20 cm x {deep / share:.2f} mm") for share in (1.08, 1.2))
    assert over.verdict == ABOVE and over.above_mm == pytest.approx(deep - deep / 1.08, abs=0.1)
    assert far.verdict == REFUSED and far.fit.needed == 2
    # the fill it would need bakes to the rim, not above it
    assert far.most_g is not None and far.fit.tin.depth_mm is not None
    gravity = far.version.mass_g / (deep / 1.5 * far.fit.tin.area_mm2 / 1000)
    assert far.fit.tin.fill_mm(far.most_g / gravity) * 1.5 == pytest.approx(far.fit.tin.depth_mm, abs=0.3)
    assert far.fit.each_g <= far.most_g + 5


def test_a_cake_that_reaches_the_rim_is_not_above_it(batch: Callable[..., Batch], kitchen: Book, facts: Facts) -> None:
    """Higher by the last digits of its sum it is as high as its tin; higher by a millionth of a mm it is not."""
    own, deep = batch(), tin("round 20 cm x 10 cm")
    to_the_rim = own.rise * 100.0 / load(own, None, kitchen, facts, 1, deep).all_in_mm
    rises = to_the_rim * (1 + 1e-12), to_the_rim * (1 + 1e-8)
    at, above = (load(replace(own, rise=rise), None, kitchen, facts, 1, deep) for rise in rises)
    assert at.all_in_mm > 100.0
    assert (at.verdict, above.verdict) == (FITS, ABOVE)


def test_every_mix_and_every_go_is_counted(ask: Callable[..., Load], kitchen: Book) -> None:
    made = ask("square 30 cm x 10 cm", count=2)
    assert made.fit.per_bake == 1 and made.fit.bakes == 2
    assert made.mixes == -(-made.version.mass_g // 2500)
    assert made.time is not None and made.oven_high_min == 2 * made.time.high_shown_min


def test_two_tins_and_one_owned_are_two_goes(ask: Callable[..., Load], kitchen: Book) -> None:
    """The small kitchen has two round 15 cm tins and one 20 cm square."""
    assert [ask("round 15 cm x 7.5 cm", count=many).fit.bakes for many in (2, 3)] == [1, 2]
    one = ask("square 20 cm x 5 cm", count=2)
    assert one.fit.bakes == one.fit.needed == 3
    assert ask("square 50 cm x 10 cm").fit.bakes == 0


def test_the_nearest_tin_on_hand(ask: Callable[..., Load], kitchen: Book) -> None:
    made = ask("round 20 cm x 10 cm")
    assert made.nearest is not None
    # the 23 cm round holds 2850 ml by water, 1.21 times a 20 cm round of its depth; the 20 cm square 1.27 times
    assert made.nearest.name == "round 23 cm"
    assert made.nearest_factor == pytest.approx(2850 / (pi * 10**2 * 7.5), rel=1e-6)
    none = ask("round 20 cm x 10 cm", book=replace(kitchen, tins=()))
    assert (none.nearest, none.nearest_factor) == (None, 1.0)


def test_all_tins_on_hand_or_those_asked(batch: Callable[..., Batch], kitchen: Book, facts: Facts) -> None:
    own = batch()
    made = known(own, kitchen, facts)
    every = loads(own, made, kitchen, facts, Query())
    assert len(every) == len({each.measured_tin for each in kitchen.tins if each.have})
    asked = loads(own, made, kitchen, facts, Query(tins=((3, tin("round 15 cm")),)))
    assert [(each.fit.tin.name, each.fit.count) for each in asked] == [("round 15 cm", 3)]
    (written,) = written_loads(own, made, kitchen, facts)
    assert written.version.factor == pytest.approx(1.0) and written.fit.count == 2


def test_cups_keep_their_share(ask: Callable[..., Load]) -> None:
    made = ask("standard cups", count=12)
    assert made.verdict == FITS and made.most_g is None
