"""Allergens with the ingredient they come from, and each caution once, with its places."""

from __future__ import annotations

from tests.plans.cakes.conftest import Design, Made, in_house

from tinbook.loading import Loaded
from tinbook.models import Book
from tinbook.plans.base.weighing import weigh
from tinbook.plans.cakes.whole import whole_cake
from tinbook.plans.mixtures.safety import allergens, strip_of
from tinbook.plans.techniques.technique import technique_cautions

PLAIN = {"tiers": "20 cm", "mixture": "almond-lemon-cake", "cover": "none"}


def contents(book: Book) -> dict[str, tuple[str, ...]]:
    return {name: tuple(card.known_allergens or ()) for name, card in book.cards.items()}


def test_all_that_is_eaten_is_in_it(made: Made, demo: Loaded) -> None:
    """Whatever the mixture and its icing contain, with every ingredient it comes from; nothing else."""
    strip = made({**PLAIN, "board": {"covered": "no"}}).allergens
    own = {
        each.allergen: set(each.ingredients)
        for slug in ("almond-lemon-cake", "american-buttercream")
        for each in allergens(
            weigh(slug, demo.book.mixtures[slug], demo.book, demo.facts), demo.book, demo.facts
        ).contains
    }
    found = {each.allergen: set(each.ingredients) for each in strip.contains}
    assert set(found) == set(own) and "almond" in str(found).lower()
    assert all(ingredients <= found[allergen] for allergen, ingredients in own.items())


def test_a_decoration_brings_its_own(made: Made) -> None:
    """The modelling paste has egg white in it."""
    with_egg = made({**PLAIN, "mixture": "vegan-vanilla-sponge", "coat": "none", "filling": "none", "board": "none",
                     "decorations": [{"technique": "heron-for-the-side", "on": "side"}]})  # fmt: skip
    assert with_egg.allergens.known
    plain = made({**PLAIN, "mixture": "vegan-vanilla-sponge", "coat": "none", "filling": "none", "board": "none"})
    assert set(plain.allergens.unknown) <= set(with_egg.allergens.unknown)
    assert "gel food colour" in with_egg.allergens.unknown


def test_what_nobody_has_said_anything_about_is_unknown_and_never_free(demo: Loaded) -> None:
    strip = strip_of([("driftwood", None), ("butter", ("milk",))], demo.facts)
    assert strip.unknown == ("driftwood",) and [each.allergen for each in strip.contains] == ["milk"]


def test_each_caution_is_told_once_with_all_its_places(made: Made) -> None:
    data = {"tiers": ["25 cm", "20 cm"], "mixture": "madeira-cake",
            "decorations": [{"technique": "lighthouse-for-the-front"}]}  # fmt: skip
    cautions = made(data).cautions
    keys = [each.caution.key for each in cautions]
    assert len(set(keys)) == len(keys)
    assert {"raw batter", "support", "dowels", "carrying", "choking"} <= set(keys)
    places = {each.caution.key: [place.key for place in each.places] for each in cautions}
    assert places["dowels"] == ["in_the_stack"] and places["choking"] == ["in_a_decoration"]
    assert places["raw batter"] == ["tier_of_cake", "tier_of_cake"]
    assert places["support"] == ["in_the_stack", "in_a_decoration"]


def test_no_caution_of_a_technique_is_lost(made: Made, demo: Loaded) -> None:
    linked = ("stack-two-tiers", "pipe-a-border")
    cautions = made({**PLAIN, "techniques": list(linked)}).cautions
    own = {
        caution.key
        for slug in linked
        for caution in technique_cautions(demo.book.techniques[slug], demo.book, demo.facts)
    }
    assert own <= {each.caution.key for each in cautions}


def test_a_single_tier_is_carried_without_a_word_on_stacks(made: Made) -> None:
    assert "in_the_stack" not in {place.key for each in made(PLAIN).cautions for place in each.places}


def test_what_nobody_names_on_a_cake_is_unknown(demo: Loaded, design: Design) -> None:
    """A house that has not said what it fills and coats with, or keeps it back."""
    bare = in_house(demo.book, made_with=None)
    whole = whole_cake("tide-cake", design({**PLAIN, "board": "none"}), bare, demo.facts)
    assert {"filling", "crumb coat", "final coat"} <= set(whole.allergens.unknown)
    plain = {**PLAIN, "board": "none", "filling": "none", "coat": "none"}
    told = whole_cake("tide-cake", design(plain), bare, demo.facts).allergens.unknown
    assert not {"filling", "crumb coat", "final coat"} & set(told)


def test_the_law_of_colours_is_said_for_paste_coat_and_board(made: Made) -> None:
    """Lamp red has E129 in it, which is one of the six; slate has none of them."""
    for more in (
        {"colour": "lamp red"},
        {"colour": "lamp red", "cover": "sugarpaste"},
        {"board": {"colour": "lamp red"}},
    ):
        whole = made({**PLAIN, **more})
        assert whole.law is not None and "E129" in str(whole.law), more
        assert "colours" in {each.caution.key for each in whole.cautions}, more
        assert "gel food colour" in whole.allergens.unknown, more
    assert made({**PLAIN, "colour": "slate"}).law is None
    assert made({**PLAIN, "board": "none"}).law is None
