"""The rows of the large tables."""

import re

from tinbook.pages.mixture import MixtureView
from tinbook.pages.page import Desk
from tinbook.pages.rows import Line, plain_head, table_rows, whole_lines
from tinbook.plans.weighing import weigh


def test_cells_are_text() -> None:
    made = str(table_rows([Line(plain_head("<b>"), ("1", "<i>", "&"), True, 1.5, 200.0, "a < b")]))
    assert "<b>" not in made and "<i>" not in made
    assert "<td>1</td><td>&lt;i&gt;</td><td>&amp;</td>" in made
    assert 'data-factor="1.5"' in made and 'class="tb-first"' in made


def test_a_row_for_every_tin_says_what_its_plan_says(desk: Desk) -> None:
    mixture = desk.book.mixtures["creamed-butter-sponge"]
    view = MixtureView(weigh("creamed-butter-sponge", mixture, desk.book, desk.facts), desk)
    rows = str(table_rows(whole_lines(view.batch, view.table.rows))).split("\n")
    assert len(rows) == len(view.table.rows)
    for row, plan in zip(rows, view.table.rows, strict=True):
        cells = re.findall(r"<td[^>]*>(.*?)</td>", row)
        butter = next(
            got for line, got in zip(view.batch.ingredients, plan.whole.amounts, strict=True) if line.name == "butter"
        )
        assert cells[0].replace(",", "") == f"{butter.shown:g}"
        assert ("beaten" in row) == plan.beaten
        assert float(re.search(r'data-factor="([^"]+)"', row).group(1)) == plan.whole.factor  # type: ignore[union-attr]
