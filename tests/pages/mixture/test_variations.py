"""What differs from a base, and what starts from it, as the pages of the demo say it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from tinbook.loading import Loaded, load_book
from tinbook.models import Book
from tinbook.pages.base.page import Desk
from tinbook.pages.lists.lists import kind_groups
from tinbook.pages.mixture.variations import DifferenceRow, differs_view, from_base, variations_of
from tinbook.plans.base.weighing import weigh

N = "\u00a0"
Filled = Callable[[str], str]


def rows(demo: Loaded, slug: str) -> tuple[DifferenceRow, ...]:
    book = demo.book
    found = differs_view(weigh(slug, book.mixtures[slug], book, demo.facts), book, demo.facts)
    assert found is not None
    return found.rows


def test_the_two_columns(demo: Loaded) -> None:
    assert rows(demo, "coffee-and-walnut-sponge")[:3] == (
        DifferenceRow(f"2{N}tsp vanilla extract", f"2{N}tbsp instant coffee", first=True),
        DifferenceRow("none", f"100{N}g chopped walnuts, toasted and cold"),
        DifferenceRow(f"30{N}ml milk, at room temperature", f"30{N}ml milk, warmed"),
    )
    steps = rows(demo, "coffee-buttercream")[-2:]
    assert steps[0] == DifferenceRow(
        "none", "Step 1. Stir instant coffee into milk until it has all dissolved, and leave it to go cold.", first=True
    )
    assert steps[1].before.startswith("Step 3. ") and steps[1].here.startswith("Step 4. ")


def test_a_page_names_its_base_and_a_base_its_variations(filled: Filled, demo: Loaded) -> None:
    text = filled("mixtures/mocha-buttercream")
    assert "## What differs" in text and 'href="/mixtures/coffee-buttercream#"' in text
    assert "## Variations" not in text
    base = filled("mixtures/creamed-butter-sponge")
    assert "## What differs" not in base and "## Variations" in base
    for slug in demo.book.variations["creamed-butter-sponge"]:
        assert f'href="/mixtures/{slug}#"' in base
    assert "## Variations" not in filled("mixtures/madeira-cake")


def test_variations_open_with_their_first_words(demo: Loaded) -> None:
    (found,) = variations_of("coffee-buttercream", demo.book)
    assert (found.address, found.lines) == ("mixtures/mocha-buttercream", f"3{N}ingredients changed")
    assert found.words == "Coffee and cocoa in equal measure, so that neither drowns the other."


def test_lists_show_variations_after_their_base(demo: Loaded) -> None:
    groups = {
        group.title: [entry.name for entry in group.entries] for group in kind_groups(Desk(demo.book, demo.facts, {}))
    }
    names = groups["Buttercream"]
    at = [names.index(demo.book.mixtures[slug].name) for slug in (
        "american-buttercream", "coffee-buttercream", "mocha-buttercream",
    )]  # fmt: skip
    assert at == list(range(at[0], at[0] + 3))
    assert from_base("mocha-buttercream", demo.book) == "from Galley coffee buttercream"
    assert from_base("madeira-cake", demo.book) == ""


def test_tins_and_bake_that_differ_stand_in_the_table(demo: Loaded) -> None:
    book, slug = demo.book, "ginger-sponge"
    other, same = book.mixtures["madeira-cake"], book.mixtures[slug]
    moved = same.model_copy(update={"tins": other.tins, "bake": other.bake, "batter_depth": None})
    changed = replace(book, mixtures={**book.mixtures, slug: moved})
    found = differs_view(weigh(slug, moved, changed, demo.facts), changed, demo.facts)
    assert found is not None
    said = [(row.before, row.here) for row in found.rows]
    assert (f"2 × round 15{N}cm{N}×{N}7.5{N}cm (6{N}in)", f"1 × round 20{N}cm{N}×{N}7.5{N}cm (8{N}in)") in said
    assert (f"160{N}°C for 50–60{N}min", f"160{N}°C for 75–90{N}min") in said


@pytest.mark.parametrize("kitchen", [True, False])
def test_the_demo_has_variations_to_show(kitchen: bool) -> None:
    book: Book = load_book(Path(__file__).parents[3] / "recipes", kitchen).book
    assert len(book.varies) >= 4
    assert any(varies.base in book.varies for varies in book.varies.values())
