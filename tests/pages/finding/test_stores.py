"""Ingredients, tins and colours as Find answers with them."""

from tinbook.pages.base.page import Desk
from tinbook.pages.finding.stores import cards_found, colours_found, tins_found
from tinbook.plans.base.shelf import all_outlines, house_outlines


def test_an_ingredient_by_either_sides_word(desk: Desk) -> None:
    cards = {each.title: each for each in cards_found(desk)}
    assert len(cards) == len(desk.card_pages)
    icing = cards["Icing sugar"]
    assert "confectioners' sugar" in icing.names
    assert icing.figure and icing.under == "a cup"


def test_a_tin_by_either_measure_leads_to_where_it_is_chosen(desk: Desk) -> None:
    tins = {each.tin: each for each in tins_found(desk)}
    assert list(tins) == [tin.name for tin, _ in all_outlines(desk.book)]
    assert {name for name, each in tins.items() if each.at_bench} == {tin.name for tin, _ in house_outlines(desk.book)}
    assert {"20cm", "8in"} <= set(tins["square 20 cm"].names)
    assert {"23x33cm", "33x23cm", "9x13in", "13x9in"} <= set(tins["rectangle 23 x 33 cm"].names)
    assert tins["square 20 cm"].anchor == "for?to=square+20+cm&from=round+15+cm"
    assert tins["round 20 cm"].figure == "× 1.78", "(20 / 15)² as both are 7.5 cm deep"
    assert "you have 2" in tins["round 20 cm"].second and tins["round 20 cm"].owned
    assert "to borrow" in tins["round 30 cm"].second and not tins["round 30 cm"].owned


def test_a_colour_is_on_the_page_of_colours(desk: Desk) -> None:
    colours = list(colours_found(desk))
    assert len(colours) == len(desk.book.colours) > 0
    assert {each.address for each in colours} == {"colours"}
