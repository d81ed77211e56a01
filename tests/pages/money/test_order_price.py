"""An order's price: what was said, and what came of it."""

from __future__ import annotations

from tests.pages.money.conftest import CLASS, GONE, WEDDING, number, with_others

from tinbook.pages.base.page import Desk, Page
from tinbook.pages.money.order_price import OrderPriceView


def rendered(view: OrderPriceView) -> str:
    page = Page(address=f"orders/price-of/{view.slug}", title="Price", template="price", view=view, section=("Orders",))
    return page.fill(page.markdown, lambda address, anchor="": address)


def test_what_was_said(money_desk: Desk) -> None:
    view = OrderPriceView(WEDDING, money_desk)
    told = {line.what: line for line in view.ledger}
    assert (told["Quoted"].figure, told["Agreed"].figure, told["Deposit"].figure) == ("475.00", "475.00", "120.00")
    assert number(told["Still to pay"].figure) == 355.0
    assert view.money is not None
    left = told["Left once it is paid for, your hours too"]
    assert number(left.figure) == float(475 - view.money.now.cost.shown)
    html = rendered(view)
    assert "What was said" in html and f"orders/{WEDDING}" in html and "boathouse wedding" in html
    assert "In every size" not in html


def test_once_it_is_done_it_says_what_it_cost(money_desk: Desk) -> None:
    view = OrderPriceView(GONE, money_desk)
    told = {line.what: line for line in view.ledger}
    assert "1 of 28\xa0tasks timed" in told["It cost"].more and "Off what today's prices and the plan say" in told
    assert view.priced is view.money.taken if view.money else False


def test_a_price_that_does_not_cover_it(money_desk: Desk) -> None:
    orders = money_desk.book.others["order"]
    cheap = orders[WEDDING].model_copy(update={"agreed": orders[GONE].deposit})
    view = OrderPriceView(WEDDING, with_others(money_desk, order={**orders, WEDDING: cheap}))
    last = view.ledger[-1]
    assert last.what.startswith("Short of what it costs") and number(last.figure) > 0


def test_of_what_is_gone_from_the_book_nothing_is_said(money_desk: Desk) -> None:
    orders = money_desk.book.others["order"]
    lost = orders[GONE].model_copy(update={"cake": "no-such-cake"})
    view = OrderPriceView(GONE, with_others(money_desk, order={**orders, GONE: lost}))
    assert view.ledger == () and view.lines == () and "The book cannot say what this costs" in rendered(view)


def test_a_class_has_a_price_too(money_desk: Desk) -> None:
    view = OrderPriceView(CLASS, money_desk)
    assert view.lines and not view.sure and "at least" in rendered(view)
