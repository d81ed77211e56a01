"""The rows of the large tables."""

import re
from html.parser import HTMLParser

from tinbook.pages.base.page import Desk
from tinbook.pages.base.rows import Short, TableRow, grouped, plain_head, short_rows, table_rows, whole_lines
from tinbook.pages.mixture.view import MixtureView
from tinbook.plans.base.weighing import weigh
from tinbook.tins import Tin


def test_cells_are_text() -> None:
    made = str(
        table_rows(
            [
                TableRow(
                    head=plain_head("<b>"), cells=("1", "<i>", "&"), first=True, factor=1.5, width_mm=200.0, say="a < b"
                )
            ]
        )
    )
    assert "<b>" not in made and "<i>" not in made
    assert "<td>1<td>&lt;i&gt;<td>&amp;<td class=tb-say>a &lt; b" in made
    assert 'data-factor="1.5"' in made and " class=tb-first>" in made


def test_a_row_for_every_tin_says_what_its_plan_says(desk: Desk) -> None:
    mixture = desk.book.mixtures["creamed-butter-sponge"]
    view = MixtureView(weigh("creamed-butter-sponge", mixture, desk.book, desk.facts), desk)
    rows = str(table_rows(whole_lines(view.batch, view.table.rows))).split("\n")
    assert len(rows) == len(view.table.rows)
    for row, plan in zip(rows, view.table.rows, strict=True):
        cells = re.findall(r"<td[^>]*>([^<]*)", row)
        butter = next(
            got for line, got in zip(view.batch.ingredients, plan.whole.amounts, strict=True) if line.name == "butter"
        )
        assert cells[0].replace(",", "") == f"{butter.shown:g}"
        assert ("beaten" in row) == plan.beaten
        # the browser works the row out from the tin in the same place
        assert "data-factor" not in row


def test_short_rows_are_text_and_their_shapes_are_parted() -> None:
    made = str(short_rows([Short(plain_head("<b>"), ("1", "<i>"), True)], (1,)))
    assert made == '<tr class=tb-first><th scope="row">&lt;b&gt;</th><td>1<td class=tb-main>&lt;i&gt;'
    round_, square = Tin(shape="round", sizes_mm=(200.0,)), Tin(shape="square", sizes_mm=(200.0,))
    rows = list(grouped([(round_, True, ("1",)), (round_, False, ("2",)), (square, True, ("3",))]))
    assert [row.first for row in rows] == [True, False, True]
    assert "tb-lent" in rows[1].head and "tb-lent" not in rows[0].head
    assert short_rows([]) == ""


class Cells(HTMLParser):
    """How many cells each row has, as a parser that knows what may be left out counts them."""

    def __init__(self) -> None:
        super().__init__()
        self.rows: list[int] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if tag == "tr":
            self.rows.append(0)
        elif tag in ("td", "th"):
            self.rows[-1] += 1


def test_no_cell_is_lost_without_its_closing_tag() -> None:
    lines = [
        TableRow(head=plain_head("a"), cells=("1", "2"), first=False, factor=1.0, width_mm=200.0),
        TableRow(head=plain_head("b"), cells=("3", "4"), first=False, factor=2.0, width_mm=200.0),
    ]
    read = Cells()
    read.feed(f"<table><tbody>{table_rows(lines)}</table>")
    assert read.rows == [3, 3]
