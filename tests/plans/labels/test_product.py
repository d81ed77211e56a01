"""A product by the name of its file."""

from __future__ import annotations

import pytest

from tinbook.loading import Loaded
from tinbook.plans.base.asking import AskError
from tinbook.plans.labels.product import product_asked


def test_a_mixture_or_a_cake(demo: Loaded) -> None:
    mixture, none = product_asked("madeira-cake", demo.book, demo.facts)
    cake, whole = product_asked("night-watch-cake", demo.book, demo.facts)
    assert none is None and not mixture.cake and whole is not None and cake.cake


def test_neither(demo: Loaded) -> None:
    with pytest.raises(AskError) as told:
        product_asked("maderia-cake", demo.book, demo.facts)
    assert told.value.hint == 'did you mean "madeira-cake"?'
    with pytest.raises(AskError, match="needs a product"):
        product_asked(None, demo.book, demo.facts)
