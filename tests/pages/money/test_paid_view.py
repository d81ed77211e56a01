"""What was paid: what is dearer, what is old, what has no price, and the line of each price."""

from __future__ import annotations

from tests.pages.money.conftest import NOW, with_others

from tinbook.pages.base.page import Desk, Page
from tinbook.pages.money.paid_view import HIGH, WIDE, PaidView


def rendered(view: PaidView) -> str:
    page = Page(address="orders/paid", title="Paid", template="paid", view=view, section=("Orders",))
    return page.fill(page.markdown, lambda address, anchor="": address)


def test_the_demos(money_desk: Desk) -> None:
    view = PaidView(NOW.date(), money_desk)
    titles = [group.title for group in view.groups]
    assert titles == ["Dearer than before", "Over half a year old", "All prices"]
    dear, old, every = view.groups
    assert {row.name for row in dear.rows} >= {"Butter", "Egg"} and [row.name for row in old.rows] == ["Black treacle"]
    butter = next(row for row in every.rows if row.name == "Butter")
    assert butter.was == "was £7.96 a kilo, 8\xa0% dearer" and butter.paid == "2.15 for 250 g"
    # the same price again is no rise, but has its line
    icing = next(row for row in every.rows if row.name == "Icing sugar")
    assert icing.points and not icing.was
    assert "lustre dust" in view.unknown and "butter" not in view.unknown
    html = rendered(view)
    assert html.count("<polyline") == sum(bool(row.points) for group in view.groups for row in group.rows) >= 4


def test_the_line_of_a_price_stays_in_its_frame(money_desk: Desk) -> None:
    for row in PaidView(NOW.date(), money_desk).lines:
        points = [tuple(map(float, point.split(","))) for point in row.points.split()]
        assert all(0 <= x <= WIDE and 0 <= y <= HIGH for x, y in points), row.name
        assert [x for x, _ in points] == sorted(x for x, _ in points)
        # it ends as high as the newest price stands: a rise goes up
        assert not row.was or points[-1][1] < points[0][1] or len({y for _, y in points}) > 2


def test_without_prices_it_says_how_to_write_one(money_desk: Desk) -> None:
    html = rendered(PaidView(NOW.date(), with_others(money_desk, prices=())))
    assert "No price is written yet" in html and "tinbook log price" in html
