"""Small tables: what is marked, and what the one template makes of them."""

from tinbook.pages.base.grids import Cell, Grid, GridRow, Head, cells, heads_stand, own_first
from tinbook.pages.base.render import render


def test_the_first_cells_are_what_the_table_is_read_for() -> None:
    assert cells("1", "2", "3", main=2) == (Cell("1", True), Cell("2", True), Cell("3"))


def test_a_link_says_the_short_title() -> None:
    assert Grid(title="Ounces to grams", anchor="oz", heads=(), rows=()).name == "Ounces to grams"
    assert Grid(title="Ounces to grams", anchor="oz", heads=(), rows=(), short="Ounces").name == "Ounces"


def test_the_template_says_it_all_and_escapes_it() -> None:
    row = GridRow(
        head="A <b>", cells=(Cell("1", True, "about"), Cell("2")), note="of this house", address="ingredients/butter"
    )
    grid = Grid(title="T", anchor="t", heads=(Head("Of"), Head("Weighs", "g"), Head("Told", words=True)), rows=(row,), lead="L", after="A",
                narrow="them")  # fmt: skip
    text = render("parts/grid.html", item=grid, link=lambda address, anchor="": f"/{address}")
    for words in ('<a href="/ingredients/butter">A &lt;b&gt;</a>', "<small>of this house</small>", "<small>g</small>",
                  '<td class="tb-main">1<small>about</small></td>', "<td>2</td>", 'data-narrow="them"', "<p>L</p>",
                  'class="tb-words"', 'id="t-rows"'):  # fmt: skip
        assert words in text
    assert "How this was worked out" not in text


def test_a_row_says_what_it_is_narrowed_by() -> None:
    row = GridRow(head="A", cells=(Cell("1"),), lent=True, marks=(("kind", "Round"), ("tag", "a & b")))
    grid = Grid(
        title="T", anchor="t", heads=(Head("Of"), Head("G")), rows=(row,), narrow="cakes", captions=(("kind", "Shape"),)
    )
    text = render("parts/grid.html", item=grid, link=lambda address, anchor="": f"/{address}")
    assert '<tr data-kind="Round" data-tag="a &amp; b"><th scope="row" class="tb-lent">A' in text
    assert 'data-narrow="cakes" data-narrow-kind="Shape"' in text


def test_own_tins_stand_before_others_under_one_rule() -> None:
    rows = [GridRow(head=name, cells=(), lent=name.islower()) for name in "aBcD"]
    assert [(row.head, row.first) for row in own_first(rows)] == [("B", False), ("D", False), ("a", True), ("c", False)]


def test_words_stand_after_the_table() -> None:
    grid = Grid(title="T", anchor="t", heads=(Head("Of"),), rows=(), lead="What it is", after="More")
    text = render("parts/grid.html", item=grid, link=lambda address, anchor="": f"/{address}")
    assert text.index("</table>") < text.index("What it is") < text.index("More")


def test_heads_stand_on_end_once_they_do_not_fit_an_upright_tablet() -> None:
    """Thirteen short heads take 13 x (40 + 8) = 624 of the 626 px beside the tins' names, fourteen 672."""
    short = Head("Eggs", "g")
    assert not heads_stand([short] * 13)
    assert heads_stand([short] * 14)
    assert heads_stand([*[short] * 12, Head("Buttercream")]), "a long word is wider: 11 x 8.3 + 8 px"
