"""Each rule of the law that labels follow, in a case reckoned by hand."""

from __future__ import annotations

from datetime import date
from fractions import Fraction

import pytest
from tests.oracles.lists import in_order
from tests.plans.labels.conftest import Kitchen

from tinbook.engine import rounding
from tinbook.loading import Loaded
from tinbook.pages.spelling.labels import list_runs, text_of
from tinbook.pages.spelling.sayings import spelled_all
from tinbook.plans.base.weighing import weigh
from tinbook.plans.labels.label import label_of
from tinbook.plans.labels.listing import IngredientsList, list_of
from tinbook.plans.labels.makeup import GoesIn, Makeup, of_mixture

BEFORE, AFTER = date(2026, 12, 12), date(2026, 12, 13)


def listed(loaded: Loaded, on: date = BEFORE, slug: str = "cake") -> IngredientsList:
    assert not loaded.errors, [problem.message for problem in loaded.errors]
    return list_of(of_mixture(slug, loaded.book, loaded.facts), loaded.book, loaded.facts, on)


def words(loaded: Loaded, on: date = BEFORE, slug: str = "cake") -> str:
    return text_of(list_runs(listed(loaded, on, slug), loaded.facts))


def test_order_by_weight_as_it_goes_in(kitchen: Kitchen) -> None:
    """250 g before 225 g before 200 g, whatever the order of the recipe; equals stay as they came."""
    assert words(kitchen("200 g butter", "250 g sugar", "225 g walnuts", "200 g sultanas")) == (
        "Sugar, walnuts, butter (milk), sultanas"
    )


def test_under_two_percent_keeps_to_weight_as_well(kitchen: Kitchen) -> None:
    """3 g and 5 g in half a kilo are under 2 %: the law leaves their order free, and the book keeps to weight."""
    assert words(kitchen("300 g sugar", "200 g butter", "3 g walnuts", "5 g sultanas")).endswith("sultanas, walnuts")


def test_water_counts_as_what_is_left_of_it(kitchen: Kitchen) -> None:
    """A creamed cake loses a tenth: of 1000 g, 100 g. Of 250 g of water 150 g are left, and it falls behind 200 g of
    sugar; of 120 g, 20 g are left, 2.2 % of 900 g, which need not be listed."""
    loaded = kitchen("350 g flour", "200 g butter", "200 g sugar", "250 g water")
    loss = weigh("cake", loaded.book.mixtures["cake"], loaded.book, loaded.facts).loss
    left = 250 - 1000 * loss
    assert 0.07 < loss < 0.13 and 100 < left < 200
    found = listed(loaded)
    assert [each.name for each in found.listed] == ["wheat flour", "butter", "sugar", "water"]
    assert found.listed[-1].mass_g == pytest.approx(left) and found.finished_g == pytest.approx(1000 * (1 - loss))
    little = listed(kitchen("430 g flour", "250 g butter", "200 g sugar", "120 g water"))
    assert little.left_out == ("water",) and "water" not in [each.name for each in little.listed]


def test_a_compound_ingredient_is_followed_by_its_own_list(kitchen: Kitchen) -> None:
    cards = '  jam: {weighs: no volume measure, allergens: none, made of: "sugar, apricots, gelling agent: pectins"}\n'
    loaded = kitchen("200 g sugar", "100 g jam", cards=cards)
    assert words(loaded) == "Sugar, jam (sugar, apricots, gelling agent: pectins)"


def test_own_mixtures_merged_and_in_brackets_have_the_same_allergens(kitchen: Kitchen) -> None:
    cream = "name: Cream\nkind: buttercream\nmakes: 300 g\nkeeps for: 2 days\nmix:\n  - 100 g butter\n  - 200 g sugar\n"
    cake = (
        "name: Two\ntiers: round 20 cm\nmixture: cake\nlayers: 2\nfilling: cream\ncoat: cream\ncover: none\n"
        "border: none\nboard: {size: none}\n"
    )
    files = {"mixtures/cream.yaml": cream, "cakes/two.yaml": cake}
    loaded = kitchen("300 g flour", "200 g sugar", "100 g walnuts", "4 egg", files=files)
    plan = label_of("two", loaded.book, loaded.facts, BEFORE)
    assert plan.cake is not None
    from tinbook.plans.labels.makeup import of_cake

    made = of_cake(plan.cake, loaded.book, loaded.facts)
    merged, apart = (list_of(made, loaded.book, loaded.facts, BEFORE, own) for own in ("merged", "in brackets"))
    assert merged.contains == apart.contains == ("wheat", "egg", "milk", "walnut")
    assert [each.name for each in apart.listed] == ["Quay cake", "Cream"] or [each.name for each in apart.listed] == [
        "Cream",
        "Quay cake",
    ]
    assert sum(each.name == "sugar" for each in merged.listed) == 1
    assert sum(part.name == "sugar" for each in apart.listed for part in each.parts) == 2


def test_each_allergen_stands_out_every_time(kitchen: Kitchen) -> None:
    cards = (
        '  biscuit: {weighs: no volume measure, allergens: [wheat, milk], made of: "wheat flour, whey powder, sugar"}\n'
    )
    loaded = kitchen("300 g flour", "200 g butter", "50 g biscuit", cards=cards)
    runs = list_runs(listed(loaded), loaded.facts)
    bold = [run.text for run in runs if run.strong]
    assert [word.lower() for word in bold] == ["wheat", "wheat", "milk", "wheat", "milk"]
    assert "whey powder (milk)" in text_of(runs) and "butter (milk)" in text_of(runs)
    for word in ("wheat", "milk"):
        assert not any(word in run.text.lower() for run in runs if not run.strong)


def test_the_percentage_is_of_the_finished_cake() -> None:
    """A council's leaflet on quantities of ingredients (paperzz.com/doc/8931015, read on 1 December 2026): 200 g of
    sultanas and 800 g of dough bake to 800 g: 25 %."""
    exact, finished = in_order({"dough": Fraction(800), "sultanas": Fraction(200)}, "", Fraction(1, 5))
    assert finished == 800 and dict(exact)["sultanas"] / finished == Fraction(1, 4)
    assert rounding.label_percent(float(Fraction(200, 800))) == 25.0


def test_the_book_gives_the_percentage_of_that_leaflet(kitchen: Kitchen) -> None:
    loaded = kitchen(
        "800 g flour", "200 g sultanas", more="named for: [sultanas]\n", name="Sultana cake", kind="creamed"
    )
    made = of_mixture("cake", loaded.book, loaded.facts)
    leaflet = Makeup(
        name=made.name, goes=made.goes, finished_g=800.0, slugs=made.slugs, eaten=made.eaten
    )  # fmt: skip
    found = list_of(leaflet, loaded.book, loaded.facts, BEFORE)
    assert "sultanas (25\N{NO-BREAK SPACE}%)" in text_of(list_runs(found, loaded.facts))


def test_more_than_a_hundred_percent_is_grams_for_a_hundred(kitchen: Kitchen) -> None:
    """150 g of fruit in 120 g of a dried bar: 125 g in 100 g."""
    loaded = kitchen("150 g sultanas", "10 g sugar", more="named for: [sultanas]\n")
    made = of_mixture("cake", loaded.book, loaded.facts)
    dried = Makeup(name=made.name, goes=made.goes, finished_g=120.0, slugs=made.slugs, eaten=made.eaten)
    found = list_of(dried, loaded.book, loaded.facts, BEFORE)
    assert found.listed[0].quid == pytest.approx(1.25)
    assert (
        "sultanas (125\N{NO-BREAK SPACE}g in 100\N{NO-BREAK SPACE}g)" in text_of(list_runs(found, loaded.facts)).lower()
    )


def test_flour_is_followed_by_what_the_law_puts_in_it(kitchen: Kitchen) -> None:
    loaded = kitchen("300 g flour", "200 g sugar")
    four = "Wheat flour (wheat flour, calcium carbonate, iron, niacin, thiamin"
    assert words(loaded, BEFORE).startswith(f"{four})")
    assert words(loaded, AFTER).startswith(f"{four}, folic acid)")


def test_additives_by_their_class(kitchen: Kitchen) -> None:
    cards = (
        '  powder: {weighs: no volume measure, allergens: none, made of: "raising agents (E450, E500), maize starch"}\n'
    )
    assert "powder (raising agents (E450, E500), maize starch)" in words(
        kitchen("200 g sugar", "5 g powder", cards=cards)
    )


def test_the_six_colours_in_the_law_s_own_words(kitchen: Kitchen) -> None:
    wording = "may have an adverse effect on activity and attention in children"
    for number in ("E102", "E104", "E110", "E122", "E124", "E129"):
        cards = f'  strands: {{weighs: no volume measure, allergens: none, made of: "sugar, colour: {number}"}}\n'
        found = listed(kitchen("200 g sugar", "5 g strands", cards=cards))
        assert any(number in said and said.endswith(wording) for said in spelled_all(found.warnings)), number
    cards = '  strands: {weighs: no volume measure, allergens: none, made of: "sugar, colour: E133"}\n'
    assert listed(kitchen("200 g sugar", "5 g strands", cards=cards)).warnings == ()


def test_titanium_dioxide_by_market(kitchen: Kitchen) -> None:
    cards = '  white: {weighs: no volume measure, allergens: none, made of: "sugar, colour: titanium dioxide"}\n'
    for nation, stops in (("England", 0), ("Scotland", 0), ("Northern Ireland", 1), ("the EU", 1)):
        labels = f"sold in: {nation}\nsold: packed here\n"
        found = listed(kitchen("200 g sugar", "5 g white", cards=cards, labels=labels))
        assert sum(gap.what.key == "gap_not_allowed" for gap in found.gaps) == stops, nation


def test_sweeteners_say_so(kitchen: Kitchen) -> None:
    cards = '  sweet: {weighs: no volume measure, allergens: none, made of: "maltitol, sweetener: aspartame"}\n'
    said = spelled_all(listed(kitchen("80 g sugar", "20 g sweet", cards=cards)).warnings)
    assert "With sweetener." in said and "Contains aspartame (a source of phenylalanine)." in said
    assert "Excessive consumption may produce laxative effects." in said
    little = spelled_all(listed(kitchen("400 g sugar", "10 g sweet", cards=cards)).warnings)
    assert "Excessive consumption may produce laxative effects." not in little


def test_alcohol_is_said_and_coffee_needs_nothing(kitchen: Kitchen) -> None:
    cards = (
        "  rum: {weighs: 1 g/ml, allergens: none, care: [alcohol], made of: itself}\n"
        "  coffee: {weighs: no volume measure, allergens: none, made of: itself}\n"
    )
    fed = listed(kitchen("200 g sugar", "20 g rum", "5 g coffee", cards=cards))
    assert spelled_all(fed.warnings) == ("Contains alcohol.",)
    assert listed(kitchen("200 g sugar", "5 g coffee", cards=cards)).warnings == ()


def test_made_to_order_needs_only_the_line_of_allergens(kitchen: Kitchen) -> None:
    """No list of ingredients: the word contains, then the allergens. Nothing has to be known of what things are made
    of, but all of their allergens."""
    cards = "  nougat: {weighs: no volume measure, allergens: [almond, egg]}\n  riddle: {weighs: no volume measure}\n"
    labels = "sold in: England\nsold: made to order\n"
    plan_of = kitchen("200 g flour", "50 g nougat", cards=cards, labels=labels)
    plan = label_of("cake", plan_of.book, plan_of.facts, BEFORE)
    assert plan.ready and not plan.with_list and plan.contains == ("wheat", "egg", "almond")
    unknown = kitchen("200 g flour", "50 g riddle", cards=cards, labels=labels)
    refused = label_of("cake", unknown.book, unknown.facts, BEFORE)
    assert [gap.what.key for gap in refused.gaps] == ["gap_allergens"]


def test_packed_for_others_wants_more(kitchen: Kitchen) -> None:
    labels = "sold in: Wales\nsold: packed for others to sell\n"
    loaded = kitchen("200 g flour", "100 g walnuts", name="Walnut loaf", labels=labels)
    plan = label_of("cake", loaded.book, loaded.facts, BEFORE)
    assert [gap.what.key for gap in plan.gaps] == ["gap_maker", "gap_net", "gap_promised"]
    whole = kitchen(
        "200 g flour", "100 g walnuts", name="Walnut loaf", labels=f"{labels}maker: Small kitchen\n",
        more="named for: [walnuts]\n",
    )  # fmt: skip
    assert label_of("cake", whole.book, whole.facts, BEFORE, "300 g").ready


def test_no_nation_no_label(kitchen: Kitchen) -> None:
    loaded = kitchen("200 g flour", labels="sold: packed here\n")
    plan = label_of("cake", loaded.book, loaded.facts, BEFORE)
    assert not plan.ready and plan.contains == ("wheat",) and plan.rules == ()
    assert [gap.what.key for gap in plan.gaps] == ["gap_nation"]


def test_the_usa_counts_nine_and_says_soy(kitchen: Kitchen) -> None:
    cards = (
        "  miso: {weighs: no volume measure, allergens: [soya, barley, sesame], made of: soya beans, and: x}\n".replace(
            ", and: x", ""
        ).replace("made of: soya beans", 'made of: "soya beans, barley, sesame"')
    )
    labels = "sold in: the USA\nsold: packed here\n"
    loaded = kitchen("200 g butter", "50 g miso", cards=cards, labels=labels)
    plan = label_of("cake", loaded.book, loaded.facts, BEFORE)
    assert plan.contains == ("soya", "milk", "sesame")
    assert all("EU" not in rule.law for rule in plan.rules) and plan.rules


def test_the_order_is_that_of_an_independent_sort(kitchen: Kitchen) -> None:
    """Against exact fractions: the list, the weight when finished, and each share of it."""
    import random

    for seed in range(20):
        draw = random.Random(seed)
        names = draw.sample(["flour", "butter", "sugar", "walnuts", "sultanas", "water"], 5)
        weights = {name: draw.randint(20, 260) for name in names}
        more = f"named for: [{names[0]}]\n"
        loaded = kitchen(*(f"{mass} g {name}" for name, mass in weights.items()), more=more)
        batch = weigh("cake", loaded.book.mixtures["cake"], loaded.book, loaded.facts)
        exact = {name: Fraction(mass) for name, mass in weights.items()}
        wanted, finished = in_order(exact, "water", Fraction(batch.loss))
        if "water" in exact and dict(wanted)["water"] <= finished / 20:
            wanted = [each for each in wanted if each[0] != "water"]
        found = listed(loaded)
        assert [each.cards[0] for each in found.listed] == [name for name, _ in wanted], seed
        assert found.finished_g == pytest.approx(float(finished))
        promised = next((each for each in found.listed if each.cards == (names[0],)), None)
        if promised is not None:
            assert promised.quid == pytest.approx(float(exact[names[0]] / finished))


def test_goes_in_is_what_the_recipe_says(kitchen: Kitchen) -> None:
    loaded = kitchen("200 g flour", "100 g sugar")
    made = of_mixture("cake", loaded.book, loaded.facts)
    assert made.goes == (
        GoesIn(card="flour", mass_g=200.0, counts_g=200.0, of="Quay cake"),
        GoesIn(card="sugar", mass_g=100.0, counts_g=100.0, of="Quay cake"),
    )
