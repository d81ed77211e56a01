"""The rules for who sells cakes, against the notes on labelling and cautions among the tests' data, and what was read.

Read for them: SI 2013/2996, Schedule 4, paragraph 2 (8 °C); WSI 2006/31, Schedule 4, paragraphs 2 and 6 (8 °C, 63 °C);
SSI 2006/3, Schedule 4, paragraph 2 (no figure, above 63 °C); SI 1995/2200, regulation 14 (82 °C); SSI 2021/70,
explanatory note; the Food Standards Agency's page on registering (28 days). All at legislation.gov.uk or food.gov.uk.
"""

from __future__ import annotations

import pytest
from pydantic import ValidationError
from tests.every import every

from tinbook.facts import Facts, NationLaw, SaleRule

NATIONS = {"England", "Wales", "Scotland", "Northern Ireland"}


def by_nation(rule: SaleRule) -> dict[str, NationLaw]:
    named = {}
    for law in rule.laws:
        for nation in law.nation.replace(" and ", ", ").split(", "):
            named[nation] = law
    return named


def test_what_is_packed_before_it_is_sold_in_every_nation(facts: Facts) -> None:
    rule = facts.rules["packed before sold"]
    laws = by_nation(rule)
    assert set(laws) == NATIONS
    assert {law.since for law in rule.laws} == {"1 October 2021"}
    assert "SI 2019/1218" in laws["England"].law and "SSI 2021/70" in laws["Scotland"].law
    for words in ("full list of ingredients", "fourteen allergens", "made to order", "before the order", "again"):
        assert words in rule.advice
    assert "full list of ingredients" in laws["England"].says


@every(
    ("key", "nation", "words"),
    [
        ("keeping cold", "England", "8 °C"), ("keeping cold", "Wales", "8 °C"), ("keeping cold", "Northern Ireland", "8 °C"),
        ("keeping cold", "Scotland", "no figure"), ("keeping hot", "England", "63 °C"), ("keeping hot", "Wales", "63 °C"),
        ("keeping hot", "Northern Ireland", "63 °C"), ("keeping hot", "Scotland", "63 °C"),
        ("reheating", "Scotland", "82 °C"), ("reheating", "England", "no figure"),
    ],
)  # fmt: skip
def test_temperatures_by_nation(facts: Facts, key: str, nation: str, words: str) -> None:
    assert words in by_nation(facts.rules[key])[nation].says


def test_scotland_has_no_figure_for_the_fridge_and_others_none_for_reheating(facts: Facts) -> None:
    assert "°C" not in by_nation(facts.rules["keeping cold"])["Scotland"].says
    assert "°C" not in by_nation(facts.rules["reheating"])["England"].says
    assert "5 °C" in facts.rules["keeping cold"].advice


def test_registering_takes_28_days(facts: Facts) -> None:
    rule = facts.rules["registering"]
    assert "28 days before trading" in rule.advice and "local authority" in rule.advice
    assert all("852/2004" in law.law and law.source == "registering" for law in rule.laws)


def test_every_law_is_named_and_dated_or_says_that_it_is_not(facts: Facts) -> None:
    for rule in facts.rules.values():
        assert rule.laws and rule.advice.endswith(".")
        for law in rule.laws:
            assert law.law and law.source in facts.sources
            assert law.since or law.kind == "from memory", (rule.key, law.nation)
    cited = {key for section, key, _ in facts.cited() if section == "rules"}
    assert "keeping cold, Scotland" in cited


def test_a_law_without_a_nation_is_refused() -> None:
    with pytest.raises(ValidationError, match="nation"):
        NationLaw.model_validate({"says": "x", "law": "y", "source": "from memory", "kind": "from memory"})
