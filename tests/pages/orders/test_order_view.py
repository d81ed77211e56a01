"""An order's page: verdicts, the cake at its size, what has gone is left in peace."""

from __future__ import annotations

from dataclasses import replace

from tests.pages.orders.conftest import CUPS, GONE, NOW

from tinbook.loading import Loaded
from tinbook.pages.base.page import Desk
from tinbook.pages.orders.order_view import OrderView, people_said
from tinbook.pages.orders.week import KitchenWeek
from tinbook.plans.rules.orders import PAGES
from tinbook.site import build_site

LIGHT = "2026-12-11-slipway-birthday"


def view(slug: str, desk: Desk, week: KitchenWeek, **changes: object) -> OrderView:
    orders = dict(desk.book.others["order"])
    orders[slug] = orders[slug].model_copy(update=changes)
    book = replace(desk.book, others={**desk.book.others, "order": orders})
    line = next(each for each in (*week.orders, *week.past) if each.slug == slug)
    return OrderView(line=line, items=week.of_order(slug), pushes=(), is_late=(), desk=replace(desk, book=book))


def test_verdicts(kitchen_desk: Desk, planned_week: KitchenWeek) -> None:
    told = {each.word: each for each in view(CUPS, kitchen_desk, planned_week).free_from}
    assert told["sesame"].verdict == "not on any of its cards" and told["sesame"].clear
    milk = view(CUPS, kitchen_desk, planned_week, must_be_free_from=("milk",)).free_from[0]
    assert milk.verdict == "in it" and "butter" in milk.found and not milk.clear
    assert any("Little-boat cupcakes:" in said for said in milk.instead)


def test_no_orders_file_may_be_called_as_a_page_is(demo: Loaded, kitchen_desk: Desk) -> None:
    site = build_site(kitchen_desk.book, demo.facts, {}, now=NOW)
    names = {address.removeprefix("orders/") for address in site.pages if address.startswith("orders/")}
    assert {name for name in names if "/" not in name} - set(kitchen_desk.book.others["order"]) == PAGES


def test_cups_by_themselves_lead_to_the_bench_and_not_back_to_a_cake(
    kitchen_desk: Desk, planned_week: KitchenWeek
) -> None:
    cake = view(CUPS, kitchen_desk, planned_week).cakes[0]
    assert cake.name == "48 × Little-boat cupcakes" and cake.page is None
    links = [line.link for group in cake.jobs for line in group.lines if line.link]
    assert links and all("cake=" not in link.anchor for link in links)


def test_a_cake_as_it_is_in_the_book_leads_to_its_page_at_its_size(demo: Loaded, planned_week: KitchenWeek) -> None:
    line = replace(planned_week.orders[0], slug=LIGHT)
    seen = OrderView(line=line, items=(), pushes=(), is_late=(), desk=Desk(demo.book, demo.facts, {}, NOW))
    cake = seen.cakes[0]
    assert cake.page is not None and cake.page.address == "cakes/lighthouse-cake"
    assert cake.made.cake.serves >= 30


def test_what_has_gone_is_not_worked_out_again(kitchen_desk: Desk, planned_week: KitchenWeek) -> None:
    """Not even if its cake is no longer in the book."""
    gone = view(GONE, kitchen_desk, planned_week, cake="no-such-cake")
    assert gone.cakes == () and gone.free_from == () and gone.pack is None and gone.tubs == ()


def test_people() -> None:
    assert [people_said(count) for count in (1, 6)] == ["1\N{NO-BREAK SPACE}person", "6\N{NO-BREAK SPACE}people"]
