"""What goes into a product, and what is left of it."""

from __future__ import annotations

import pytest

from tinbook.loading import Loaded
from tinbook.plans.base.weighing import weigh
from tinbook.plans.cakes.whole import whole_cake
from tinbook.plans.labels.makeup import finished_share, is_water, of_cake, of_mixture


def test_what_goes_in_is_what_is_weighed_out(demo: Loaded) -> None:
    for slug, mixture in demo.book.mixtures.items():
        batch, made = weigh(slug, mixture, demo.book, demo.facts), of_mixture(slug, demo.book, demo.facts)
        assert sum(each.mass_g or 0.0 for each in made.goes) == pytest.approx(batch.mass_g)
        assert made.finished_g == pytest.approx(batch.mass_g * finished_share(batch))
        assert 0.0 < finished_share(batch) <= 1.0


def test_only_water_dries_up(demo: Loaded) -> None:
    made = of_mixture("sugar-syrup", demo.book, demo.facts)
    for each in made.goes:
        assert each.counts_g == each.mass_g or is_water(each.card, demo.book)
        assert each.counts_g is not None and each.mass_g is not None and 0.0 <= each.counts_g <= each.mass_g


def test_everything_eaten_of_a_cake_goes_in(demo: Loaded) -> None:
    for slug, design in demo.book.cakes.items():
        cake = whole_cake(slug, design, demo.book, demo.facts)
        made = of_cake(cake, demo.book, demo.facts)
        assert set(made.eaten) == {each.card for each in made.goes}, slug
        assert {each.allergen for each in cake.allergens.contains} == {
            demo.facts.allergens[key].label for known in made.eaten.values() for key in known or ()
        }
        assert set(cake.allergens.unknown) <= {name for name, known in made.eaten.items() if known is None}


def test_what_is_used_and_not_counted_is_told(demo: Loaded) -> None:
    thrift = demo.book.cakes["thrift-island-cake"]
    made = of_cake(whole_cake("thrift-island-cake", thrift, demo.book, demo.facts), demo.book, demo.facts)
    assert "vanilla extract" in made.uncounted
    assert all(each.mass_g is None for each in made.goes if each.card in made.uncounted)
