"""What ingredients count as in a formula."""

from __future__ import annotations


def test_each_weight_counts_as_one_thing(facts):
    weights = [weight for part in facts.parts.values() for weight in part.weights]
    assert len(weights) == len(set(weights))
    assert set(weights) <= set(facts.densities)


def test_every_flour_sugar_and_fat_of_the_weights_is_sorted(facts):
    """Common practice: what is called a flour, a sugar, a syrup or an oil is one."""
    for word, part in (("flour", "flour"), ("sugar", "sugar"), ("syrup", "sugar"), ("oil", "fat")):
        for key in facts.densities:
            if key.split(",")[0].split()[-1] == word:
                assert key in facts.parts[part].weights, key
