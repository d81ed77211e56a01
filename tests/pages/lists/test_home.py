"""Home."""

from collections.abc import Callable
from dataclasses import replace

from tinbook.pages.base.page import Desk
from tinbook.pages.lists.home import HomeView
from tinbook.problems import Place, Problem


def test_home_says_what_is_in_the_house(desk: Desk, filled: Callable[[str], str]) -> None:
    text = filled("index")
    assert "Heronsmouth house book" in text and "Sponges and cakes" in text
    assert sum(len(group.entries) for group in HomeView(desk).groups) == len(desk.book.mixtures)
    assert "Our tins seen from above" in text


def test_home_counts_what_cannot_be_shown(desk: Desk) -> None:
    problem = Problem(code="x", message="x", place=Place(file="mixtures/a.yaml", line=1, column=1))
    broken = {"mixtures/a": (problem,), "techniques/b": (problem, problem)}
    view = HomeView(replace(desk, broken=broken))
    assert (view.broken, view.broken_words) == (2, "2\u00a0pages cannot be shown")
    assert HomeView(desk).broken == 0


def test_tins_are_drawn_or_named(desk: Desk) -> None:
    view = HomeView(desk)
    owned = [own for own in desk.book.tins if own.have]
    assert view.plans is not None
    assert len(view.others) == sum(own.tin.shape not in ("round", "square") for own in owned) > 0
