"""Which rules hold for what a house sells, and where."""

from __future__ import annotations

from tinbook.facts import Facts, LabelRule
from tinbook.models.labels import USA, Labelling


def rules_for(house: Labelling, facts: Facts) -> tuple[LabelRule, ...]:
    """The rules for how and where it sells; none if it has not said where."""
    if house.sold_in is None:
        return ()
    return tuple(rule for rule in facts.label_rules.values() if rule.applies(house.sold_in, house.sold))


def label_name(key: str, facts: Facts, nation: str | None) -> str:
    """The name an allergen has on a label there."""
    allergen = facts.allergens[key]
    return allergen.usa_label or allergen.label if nation == USA else allergen.label


def declared(keys: tuple[str, ...], facts: Facts, nation: str | None) -> tuple[str, ...]:
    """Those of some allergens that the law of a nation counts: fourteen groups, or nine in the USA."""
    return tuple(key for key in keys if nation != USA or facts.allergens[key].big_nine)
