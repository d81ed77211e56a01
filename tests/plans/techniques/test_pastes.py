"""What a part is made of."""

from __future__ import annotations

import pytest

from tinbook.loading import Loaded
from tinbook.plans.techniques.pastes import paste_called, paste_or_like


def test_a_mixture_an_ingredient_and_neither(demo: Loaded) -> None:
    mixture = paste_called("modelling-paste", demo.book, demo.facts)
    assert (mixture.slug, mixture.name) == ("modelling-paste", "Boatshed modelling paste")
    assert mixture.g_per_ml == demo.facts.kinds["modelling paste"].gravity.typical
    bought = paste_called("sugarpaste", demo.book, demo.facts)
    assert (bought.slug, bought.g_per_ml) == (None, demo.facts.kinds["sugarpaste"].gravity.typical)
    for word in ("sandpaste", "dark chocolate"):
        with pytest.raises(LookupError):
            paste_called(word, demo.book, demo.facts)
    assert paste_or_like("secret-paste", demo.book, demo.facts).name == "secret paste"
