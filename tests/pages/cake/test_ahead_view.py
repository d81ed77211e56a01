"""What can be made ahead, as a cake's page tells it."""

from __future__ import annotations

from tests.every import check_every

from tinbook.pages.cake.ahead_view import ahead_view
from tinbook.pages.cake.view import CakeView
from tinbook.plans.making.ahead import AheadOf, AheadTable


def part(ahead_min: float, on_the_day: int | None) -> AheadOf:
    return AheadOf(
        name="Sails", address="techniques/sails", ahead_min=ahead_min, steps=9, on_the_day=on_the_day, keeps=()
    )


def test_in_words() -> None:
    table = AheadTable(
        parts=(part(90.0, 0), part(1440.0, 1), part(14 * 1440.0, 3), part(0.0, None)),
        keeps=None, least="", unknown=("Sea sponge",),
    )  # fmt: skip
    told = [line.ahead.replace("\N{NO-BREAK SPACE}", " ") for line in ahead_view(table).lines]
    assert told == ["up to 1.5 h", "up to 1 day; the last step on the day", "up to 14 days; 3 steps on the day"]
    assert (ahead_view(table).keeps, ahead_view(table).unknown) == ("", "Sea sponge")


def test_every_line_leads_to_a_page_that_is_there(views: dict[str, CakeView]) -> None:
    def check(view: CakeView) -> None:
        assert view.ahead.lines and view.ahead.keeps and view.ahead.least
        for line in view.ahead.lines:
            room, _, slug = line.address.partition("/")
            assert slug in getattr(view.desk.book, room)

    check_every(views.values(), check)
