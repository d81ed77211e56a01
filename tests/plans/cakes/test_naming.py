"""Which cakes name a mixture or a technique: by tier, by filling and coat, by decoration."""

from tinbook.loading import Loaded
from tinbook.plans.cakes.naming import cakes_naming


def test_what_a_cake_names_knows_the_cake(demo: Loaded) -> None:
    found = cakes_naming(demo.book)
    wedding, first, light, pier, garden, thrift = (
        ("estuary-wedding-cake", "Estuary wedding cake"), ("first-season-cake", "First season cake"),
        ("lighthouse-cake", "Lighthouse cake"), ("pier-cake", "Pier anniversary cake"),
        ("sea-garden-cups", "Sea-garden cups"), ("thrift-island-cake", "Thrift island cake"),
    )  # fmt: skip
    assert found["mixtures/creamed-butter-sponge"] == (wedding, first, light, garden)
    assert found["mixtures/american-buttercream"] == (wedding, first, light, pier)
    assert found["mixtures/ginger-sponge"] == (wedding,) and found["mixtures/cupcakes"] == (garden,)
    assert found["mixtures/madeira-cake"] == (pier, thrift) and "mixtures/mud-cake" not in found
    assert found["techniques/lighthouse-for-the-front"] == (light, thrift)
    assert found["techniques/rope-edge"] == (wedding,) and found["techniques/boat-on-the-shingle"] == (pier,)
