"""The pages of plans: a plan for every tin and kind of portion, with its numbers and what a piece weighs."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace

from tests.conftest import read

from tinbook.models import OwnedTin
from tinbook.pages.at_a_glance.cuts import MOST, PLAN, CutsView, cuts_pages, plan_addresses, shape_address, tin_anchor
from tinbook.pages.base.page import Desk
from tinbook.plans.base.shelf import all_outlines
from tinbook.tins import SHAPES, Tin

N = "\u00a0"


def test_every_tin_has_its_plans_on_the_page_it_is_said_to_be_on(desk: Desk, filled: Callable[[str], str]) -> None:
    for shape in ("round", "fluted ring", "cups"):
        addresses = plan_addresses(desk, shape)
        assert set(addresses) == {tin for tin, _ in all_outlines(desk.book) if tin.shape == shape}
        for tin, address in addresses.items():
            for kind in ("finger", "dessert", "tea-slice"):
                assert f'id="{tin_anchor(tin)}-{kind}"' in filled(address), tin.name
    assert CutsView(desk, "round").title == "Round"


def test_the_list_has_the_houses_tins_first_and_opens_each_plan(desk: Desk, filled: Callable[[str], str]) -> None:
    view = CutsView(desk, "round")
    owned = [each.section.owned for each in view.plans]
    assert owned == sorted(owned, reverse=True) and [each.first for each in view.plans].index(True) == owned.index(
        False
    )
    assert all(len(each.figures) == len(view.columns) for each in view.plans)
    assert all(sum(figure.usual for figure in each.figures) == 1 for each in view.plans)
    for here in ("portions/round", "portions/round/round-40-cm"):
        page = filled(here)
        for each in view.plans:
            way = "#" if each.address == here else f"/{each.address}#"
            assert f'<a href="{way}{each.section.anchor}"' in page, (here, each.section.name)
            assert all(f'<a href="{way}{figure.anchor}"' in page for figure in each.figures), (here, each.section.name)


def test_a_page_draws_no_more_than_it_holds(desk: Desk, filled: Callable[[str], str]) -> None:
    """The house's own come first; each tin that is left has a page, which stands in no contents."""
    pages = list(cuts_pages(desk, "round", ("Tins",)))
    first, *others = pages
    assert first.listed and others and not any(page.listed for page in others)
    assert [page.address for page in pages] == list(dict.fromkeys(plan_addresses(desk, "round").values()))
    assert all(
        address == first.address for tin, address in plan_addresses(desk, "round").items() if tin.sizes_mm[0] <= 250.0
    )
    assert all(page.view is first.view for page in others)
    for page in pages:
        text = filled(page.address)
        plans, pieces = text.count("<figure"), len(re.findall(r"<text x=[\d.]+ y=[\d.]+>\d", text))
        assert plans * PLAN + pieces <= 1.1 * MOST, page.address
        assert len(text.encode()) < 120_000, page.address
        assert text.count('<svg class="tb-outline"') == len(page.view.items[page.part].here)
    assert [len(page.view.items[page.part].here) for page in others] == [1] * len(others)


def test_large_tins_of_one_name_share_a_page(desk: Desk) -> None:
    shelf = []
    for side in (600, 620, 640, 660):
        own = read(OwnedTin, {"tin": f"outline M0 0H600V{side}H0Z x 5 cm"})
        shelf.append(own.model_copy(update={"tin": replace(own.tin, called="slab")}))
    book = replace(desk.book, tins=tuple(shelf))
    first, *others = cuts_pages(replace(desk, book=book), "outline", ("Tins",))
    assert [page.address for page in others] == ["portions/outline/slab"]
    parts = [page.view.items[page.part].here for page in (first, *others)]
    assert [len(part) for part in parts] == [2, 2] and len(first.view.items) == 2
    assert [each.section.tin.sizes_mm for part in parts for each in part] == [own.tin.sizes_mm for own in book.tins]


def test_numbers_on_the_page_are_the_counts(desk: Desk, filled: Callable[[str], str]) -> None:
    for shape in SHAPES:
        page = "".join(filled(address) for address in dict.fromkeys(plan_addresses(desk, shape).values()))
        for count, body in re.findall(r"<figcaption><b>(\d+)</b>(.*?)</figure>", page, re.S):
            numbers = re.search(r"<g class=tb-nos[^>]*>(.*?)</g>", body, re.S)
            drawn = len(re.findall(r"<text", numbers[1])) if numbers else 0
            halves = 2 if shape == "ball" else 1
            assert drawn * halves == int(count) or shape == "cups"


def test_what_a_piece_weighs_and_how_it_prints(filled: Callable[[str], str]) -> None:
    page = filled("portions/round")
    figure = page[page.index('id="round-20-cm-dessert"') :]
    assert re.search(rf"About 65{N}g each, creamed sponge 10{N}cm high", figure)
    assert "On A4, scaled to fit, 1 : 1.2." in figure
    assert "On A4 at full size" in page[page.index('id="round-15-cm-dessert"') :]


def test_anchors_are_names_without_signs() -> None:
    assert tin_anchor(Tin(shape="oval", sizes_mm=(200.0, 280.0))) == "oval-20-x-28-cm"
    assert shape_address("tapered ring") == "portions/tapered-ring"


def test_a_cup_is_handed_out_whole(desk: Desk) -> None:
    cups, rounds = (next(iter(cuts_pages(desk, shape, ()))).markdown for shape in ("cups", "round"))
    assert "Cut in the order shown" in rounds
    assert "Seen from above. Only" in " ".join(cups.split()) and "Cut in" not in cups
