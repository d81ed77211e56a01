"""From guests to tins: against every possible set tried one by one, and by laws."""

from __future__ import annotations

from dataclasses import replace
from itertools import combinations, pairwise

import pytest
from tests.every import every

from tinbook.facts import Facts
from tinbook.loading import Loaded
from tinbook.models import Book
from tinbook.plans.base.finishing import finishing
from tinbook.plans.base.weighing import weigh
from tinbook.plans.portions.choices import APART_MM, FAR_MM, Choices, choices
from tinbook.plans.portions.guests import (
    BESIDE,
    Answer,
    Wish,
    answers,
    batter_ml,
    batter_mm,
    factor,
    mixtures,
    needs_shown,
    own_batter_mm,
)


@pytest.fixture(scope="module")
def made(demo: Loaded) -> Choices:
    return choices(demo.book, demo.facts)


@pytest.fixture(scope="module")
def few(kitchen: Book, facts: Facts) -> Choices:
    """Six rounds, three squares, two hearts and two trays, to be tried one by one."""
    made = choices(kitchen, facts)
    names = {f"round {cm} cm" for cm in (10, 15, 20, 23, 28, 33)} | {f"square {cm} cm" for cm in (15, 20, 25)}
    names |= {"heart 15 cm", "heart 20 cm", "rectangle 18 x 28 cm", "rectangle 23 x 33 cm"}
    kept = [at for at, tier in enumerate(made.tiers) if tier.tin.name in names]
    places = {at: new for new, at in enumerate(kept)}
    sets = tuple(tuple(places[at] for at in chain) for chain in made.sets if set(chain) <= set(kept))
    trays = tuple(places[at] for at in made.trays if at in places)
    return replace(made, tiers=tuple(made.tiers[at] for at in kept), sets=sets, trays=trays)


def tried(few: Choices, wish: Wish) -> list[tuple[bool, bool, int, int, float]]:
    """Every pile of up to four tins of one shape that stands, and what may lie beside it: not all everyday, not all
    owned, over, tins, area."""
    found = []
    tins = range(len(few.tiers))
    for count in range(1, 5):
        for chosen in combinations(tins, count):
            pile = sorted(chosen, key=lambda at: -few.tiers[at].tin.area_mm2)
            kinds = {few.tiers[at].tin.shape for at in pile}
            across = [few.tiers[at].tin.sizes_mm[0] for at in pile]
            stands = all(APART_MM <= one - other <= FAR_MM for one, other in pairwise(across))
            if count > 1 and (len(kinds) > 1 or not stands or kinds == {"rectangle"}):
                continue
            if (wish.keep_top and count < 2) or (wish.owned and not all(few.tiers[at].owned for at in pile)):
                continue
            served = sum(few.tiers[at].serves[wish.kind] for at in (pile[:-1] if wish.keep_top else pile))
            area = sum(few.tiers[at].area_mm2 for at in pile)
            beside = {
                "nothing": [(0, 0, 0.0, True)],
                "a tray": [(few.tiers[at].serves[wish.kind], 1, few.tiers[at].area_mm2, few.tiers[at].owned)
                           for at in few.trays if few.tiers[at].owned or not wish.owned],
                "cupcakes": [(12 * trays, trays, 0.0, False) for trays in range(1, 18) if not wish.owned],
            }[wish.beside]  # fmt: skip
            odd = not all(few.tiers[at].tin.kind.everyday for at in pile)
            for more, trays, more_area, had in beside:
                if served + more >= wish.guests:
                    lent = not (had and all(few.tiers[at].owned for at in pile))
                    found.append((odd, lent, served + more - wish.guests, count + trays, round(area + more_area)))
    return sorted(found)


@every("beside", BESIDE)
@every("keep_top", [False, True])
@every("owned", [False, True])
def test_the_best_is_the_best_of_all_tried(few: Choices, beside: str, keep_top: bool, owned: bool) -> None:
    for kind in range(2):
        for guests in range(10, 121, 11):
            wish = Wish(guests=guests, kind=kind, keep_top=keep_top, owned=owned, beside=beside)
            best, every = answers(few, wish, 1), tried(few, wish)
            assert bool(best) is bool(every), wish
            if best:
                chosen = best[0]
                rank = (not chosen.everyday, not chosen.owned, chosen.over, chosen.tins, round(chosen.area_mm2))
                assert rank == every[0], wish


def test_more_guests_never_take_less(made: Choices) -> None:
    """What is served at best never goes down with the guests, and is never fewer than they are."""
    served = [answers(made, Wish(guests=guests), 1)[0].serves for guests in range(10, 201)]
    assert all(got >= guests for guests, got in enumerate(served, 10))
    assert served == sorted(served)


def test_owned_means_owned(made: Choices) -> None:
    for answer in answers(made, Wish(guests=60, owned=True), 10):
        assert all(made.tiers[at].owned for at in answer.tiers)


def test_the_mixture_a_set_takes(demo: Loaded, made: Choices) -> None:
    """By hand: layers that stand 85 mm between three fillings of 5 mm, levelled by a tenth, from batter that rises."""
    batch = weigh("madeira-cake", demo.book.mixtures["madeira-cake"], demo.book, demo.facts)
    settled = finishing(demo.book.finish, demo.facts, batch.mixture.finish)
    deep = batter_mm(batch, settled, made.height_mm)
    layers = made.height_mm - (settled.layers - 1) * settled["filling"]
    assert deep == pytest.approx(layers / (batch.rise * (1.0 - settled["level_off"])))
    answer = Answer(
        everyday=True, owned=True, tiers=(0,), tray=None, cups=2, serves=30, over=0, tins=3, area_mm2=31_415.9
    )
    assert made.cups is not None
    expected = 31_415.9 * deep / 1000.0 + 2 * 12 * made.cups.tin.brim_ml() / 2.0
    assert batter_ml(deep, made, answer) == pytest.approx(expected)
    assert factor(batch, deep, made, answer) == pytest.approx(expected / batch.batter_ml)
    times, litres = needs_shown(batch, deep, made, answer)
    assert times == pytest.approx(expected / batch.batter_ml, abs=0.00501)
    assert litres == pytest.approx(expected / 1000.0, abs=0.0501)
    own = {each.slug: each.deep_mm for each in mixtures(demo.book, demo.facts)}
    # as on its own page: each tier from as many tins as it is written for, as deep
    assert own["madeira-cake"] == own_batter_mm(batch) == batch.depth_mm * sum(count for count, _ in batch.tins)
    named = list(own)
    assert "madeira-cake" in named
    assert "marzipan" not in named and "cupcakes" not in named
