"""Which cakes name a mixture or a technique: by tier, by filling and coat, by decoration."""

from tinbook.loading import Loaded
from tinbook.plans.cakes.naming import cakes_naming


def test_what_a_cake_names_knows_the_cake(demo: Loaded) -> None:
    found = cakes_naming(demo.book)
    both = (("estuary-wedding-cake", "Estuary wedding cake"), ("lighthouse-cake", "Lighthouse cake"))
    assert found["mixtures/creamed-butter-sponge"] == found["mixtures/american-buttercream"] == both
    assert found["mixtures/ginger-sponge"] == both[:1] and found["techniques/lighthouse-for-the-front"] == both[1:]
    assert found["techniques/rope-edge"] == both[:1] and "mixtures/madeira-cake" not in found
