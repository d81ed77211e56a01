"""A mixture's page: what the plans say, spelled."""

import json
import re
from collections.abc import Callable

import pytest

from tinbook.loading import Loaded
from tinbook.pages.base.page import Desk
from tinbook.pages.mixture.view import MixtureView
from tinbook.plans.base.weighing import weigh

N = "\u00a0"
Filled = Callable[[str], str]


def view(desk: Desk, slug: str) -> MixtureView:
    return MixtureView(weigh(slug, desk.book.mixtures[slug], desk.book, desk.facts), desk)


def test_the_written_amounts_stand_large(filled: Filled) -> None:
    text = filled("mixtures/creamed-butter-sponge")
    assert f'<output class="tb-this">2 × round 15{N}cm</output>' in text
    assert re.search(r'data-line="0"><b>300</b><i>g</i>', text)
    assert re.search(r'data-line="2"><b>5</b><i></i>', text)
    assert f"2{N}tsp" in text


def test_unknown_allergens_are_never_shown_as_free(filled: Filled, demo: Loaded) -> None:
    text = filled("mixtures/modelling-paste")
    assert "Unknown does not mean “free from”" in text and "<b>Allergens not known:</b> sugarpaste" in text
    assert "<strong>egg</strong>" in filled("mixtures/creamed-butter-sponge")


def test_the_usual_cautions_stand_where_the_work_meets_them(filled: Filled) -> None:
    assert "Do not taste the raw mixture" in filled("mixtures/creamed-butter-sponge")


def test_what_is_made_by_weight_has_no_tins(desk: Desk, filled: Filled) -> None:
    ganache = view(desk, "dark-ganache")
    assert not ganache.in_tins
    text = filled("mixtures/dark-ganache")
    assert "## For every tin" not in text and f"Makes 900{N}g" in text


@pytest.mark.parametrize("slug", ["creamed-butter-sponge", "dark-ganache", "cupcakes"])
def test_the_browser_is_handed_what_the_plans_know(filled: Filled, desk: Desk, slug: str) -> None:
    text = filled(f"mixtures/{slug}")
    found = re.search(r'id="tb-recipe">(.*?)</script>', text, re.DOTALL)
    assert found
    handed, batch = json.loads(found.group(1)), view(desk, slug).batch
    assert handed["mass_g"] == batch.mass_g
    assert [line["mass_g"] for line in handed["lines"]] == [line.mass_g for line in batch.ingredients]
    assert len(handed["tins"]["rows"]) == (len(view(desk, slug).table.rows) if batch.tins else 0)


def test_a_swap_for_self_raising_flour(filled: Filled) -> None:
    assert f"Instead of 300{N}g use 285{N}g plain flour and 14{N}g baking powder" in filled(
        "mixtures/creamed-butter-sponge"
    )
