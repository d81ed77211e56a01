"""The rows of the large tables."""

import re
from collections.abc import Callable
from html.parser import HTMLParser

import pytest

from tinbook.pages.base.page import Desk
from tinbook.pages.base.rows import (
    Short,
    TableRow,
    asked_mm,
    grouped,
    house_first,
    plain_head,
    short_rows,
    table_rows,
    tin_head,
    whole_lines,
)
from tinbook.pages.mixture.view import MixtureView
from tinbook.plans.base.weighing import Batch, weigh
from tinbook.tins import Tin

N = "\u00a0"


def test_cells_are_text() -> None:
    made = str(
        table_rows([TableRow(head=plain_head("<b>"), cells=("1", "<i>", "&"), first=True, factor=1.5, width_mm=200.0)])
    )
    assert "<b>" not in made and "<i>" not in made
    assert "<td>1<td>&lt;i&gt;<td>&amp;" in made
    assert table_rows([]) == ""
    assert "data-factor=1.5 data-width=200" in made and " class=tb-first>" in made


@pytest.mark.parametrize(("slug", "raised"), [("creamed-butter-sponge", False), ("mud-cake", True)])
def test_a_row_for_every_tin_says_what_its_plan_says(desk: Desk, slug: str, raised: bool) -> None:
    view = MixtureView(weigh(slug, desk.book.mixtures[slug], desk.book, desk.facts), desk)
    rows = str(table_rows(whole_lines(view.batch, view.table.rows))).split("\n")
    assert len(rows) == len(view.table.rows)
    for row, plan in zip(rows, view.table.rows, strict=True):
        cells = re.findall(r"<td[^>]*>([^<]*)", row)
        place = [line.name for line in view.batch.ingredients].index("butter")
        assert cells[place].replace(",", "") == f"{plan.whole.amounts[place].shown:g}"
        # eggs that are weighed say their unit
        egg = [line.whole_egg for line in view.batch.ingredients].index(True)
        assert cells[egg].endswith("g") == plan.beaten
        told = re.match(r"<tr data-factor=(\S+?)(?: data-width=(\d+))?(?: class=tb-first)?>", row)
        assert told is not None and float(told[1]) == pytest.approx(plan.whole.factor, rel=1e-12)
        # where a tin is so wide that it changes the raising agent, the browser has to know
        wide_mm = plan.tin.bounds_mm[0]
        assert told[2] == (f"{wide_mm:g}" if raised and wide_mm > 250.0 else None), plan.tin.name


def test_what_is_out_of_the_common_stands_under_the_name(desk: Desk) -> None:
    mixture = desk.book.mixtures["creamed-butter-sponge"]
    view = MixtureView(weigh("creamed-butter-sponge", mixture, desk.book, desk.facts), desk)
    rows = str(table_rows(whole_lines(view.batch, view.table.rows))).split("\n")
    said = {
        plan.tin.name: re.findall(r"</small><small>([^<]*)", row)
        for row, plan in zip(rows, view.table.rows, strict=True)
    }
    assert said["round 15 cm"] == [] and said["round 23 cm"] == [f"2{N}mixes, 2{N}loads"]
    assert said["rectangle 23 x 33 cm"] == [f"2{N}mixes, fill 3 tins, 3{N}loads"]
    assert said["square 40 cm"][0].endswith("wider than the shelf")


def test_the_house_comes_first_and_a_house_without_tins_sees_all() -> None:
    round_, square = Tin(shape="round", sizes_mm=(200.0,)), Tin(shape="square", sizes_mm=(200.0,))
    rows = [(round_, False, ("1",)), (square, True, ("2",)), (round_, True, ("3",))]
    made = house_first(rows, (0,))
    assert made.others == 1 and re.findall(r"<td>(\d)", made.own) == ["2", "3"] and "<td>1" in made.rest
    none = house_first([(tin, False, cells) for tin, _, cells in rows])
    assert none.others == 0 and none.rest == "" and none.own.count("<tr") == 3
    # what is lent, and which column is read, is said of a whole body of rows
    assert (made.own_styles, made.rest_styles) == ("tb-main-1", "tb-main-1 tb-lent")
    assert none.own_styles == "tb-lent" and not made.lent and none.lent


def test_a_tins_head_has_what_is_said_second(batch: Callable[..., Batch]) -> None:
    plain = Tin(shape="round", sizes_mm=(200.0,))
    assert tin_head(plain) == f"<th scope=row>round 20{N}cm <small>8{N}in</small>"
    assert tin_head(plain, "2 mixes").endswith(f"<small>8{N}in</small><small>2 mixes</small>")
    loaf = Tin(shape="loaf", sizes_mm=(230.0, 130.0))
    assert tin_head(loaf, "fill 2").count("<small>") == 2


def test_only_a_raised_mixture_asks_how_wide_a_tin_is(batch: Callable[..., Batch]) -> None:
    wide, narrow = Tin(shape="round", sizes_mm=(300.0,)), Tin(shape="round", sizes_mm=(250.0,))
    raised = batch(mix=["200 g butter", "4 eggs", "200 g plain flour", "1 tsp baking powder"])
    flat = batch(mix=["200 g butter", "4 eggs", "200 g plain flour"])
    assert [asked_mm(raised, wide), asked_mm(raised, narrow), asked_mm(flat, wide)] == [300.0, 0.0, 0.0]


def test_short_rows_are_text_and_their_shapes_are_parted() -> None:
    made = str(short_rows([Short(plain_head("<b>"), ("1", "<i>"), True)], (1,)))
    assert made == '<tr class=tb-first><th scope="row">&lt;b&gt;</th><td>1<td class=tb-main>&lt;i&gt;'
    round_, square = Tin(shape="round", sizes_mm=(200.0,)), Tin(shape="square", sizes_mm=(200.0,))
    rows = list(grouped([(round_, True, ("1",)), (round_, False, ("2",)), (square, True, ("3",))]))
    assert [row.first for row in rows] == [True, False, True]
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
