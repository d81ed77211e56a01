"""The page of what the tins on hand allow."""

import re
from collections.abc import Callable
from dataclasses import replace

from tinbook.models import Mixture
from tinbook.pages.at_a_glance.on_hand import NAMED, ROWS, OnHandView, on_hand_pages
from tinbook.pages.base.page import Desk


def test_every_line_says_what_its_plan_says(desk: Desk) -> None:
    view = OnHandView(desk)
    (part,) = view.items
    assert len(part.lines) == len(view.table.rows) > 3
    for line, row in zip(part.lines, view.table.rows, strict=True):
        assert line.name == row.batch.mixture.name
        assert [float(each.factor) for each in line.choices] == [each.factor_shown for each in row.choices]
        assert [each.verdict == "as in the recipe" for each in line.choices] == [each.written for each in row.choices]
        assert [each.best for each in line.choices] == [True, *[False] * (len(row.choices) - 1)][: len(row.choices)]


def test_it_is_linked_and_whole(filled: Callable[[str], str]) -> None:
    text = filled("on-hand")
    assert "as in the recipe" in text and "No tin is needed for" in text
    assert 'class="tb-plan tb-round"' in text
    assert "on-hand" in filled("tins") and "on-hand" in filled("mixtures/index")


def test_a_house_without_tins_has_no_such_page(desk: Desk) -> None:
    assert not list(on_hand_pages(replace(desk, book=replace(desk.book, tins=()))))


def test_in_a_large_book_every_mixture_is_on_one_page(desk: Desk, mixture: Callable[..., Mixture]) -> None:
    many = {f"m{at:03}": mixture(name=f"M {at:03}") for at in range(ROWS + 5)}
    many |= {
        f"c{at:03}": mixture(name=f"C {at:03}", kind="buttercream", tins=None, bake=None) for at in range(NAMED + 1)
    }
    first, last = on_hand_pages(replace(desk, book=replace(desk.book, mixtures=many, bakes=())))
    assert (first.address, last.address) == ("on-hand", "lists/on-hand/2")
    texts = [page.fill(page.markdown, lambda to, anchor="": f"/{to}") for page in (first, last)]
    named = [re.findall(r'href="/mixtures/(\w+)"', text) for text in texts]
    assert len(named[0]) == ROWS and len(named[1]) == 5
    assert sorted(named[0] + named[1]) == [slug for slug in many if slug.startswith("m")]
    # many that need none are counted
    assert all(f"No tin is needed for {NAMED + 1}\u00a0mixtures." in text for text in texts)
