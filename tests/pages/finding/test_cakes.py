"""Cakes are found by name, by what they are made of, by their notes."""

from tinbook.pages.base.page import Desk
from tinbook.pages.finding.cakes import cakes_found


def test_a_cake_is_found_by_its_name_tags_recipes_and_techniques(desk: Desk) -> None:
    found = {each.address: each for each in cakes_found(desk) if each.kind == "cake"}
    cake = found["cakes/lighthouse-cake"]
    assert (cake.title, cake.figure, cake.under, cake.names) == (
        "Lighthouse cake",
        "20",
        "cm round",
        ("Lighthouse cake", "harbour light cake"),
    )
    assert {"birthday", "Creamed butter sponge", "Stand a lighthouse in front of the cake"} <= set(cake.tags)
    assert "for the slipway party" in cake.text and "slate" in cake.text
    assert found["cakes/estuary-wedding-cake"].figure == "25 + 20 + 15"


def test_its_notes_and_everything_used_are_found_by_themselves(desk: Desk) -> None:
    found = list(cakes_found(desk))
    notes = [each for each in found if each.kind == "note"]
    assert len(notes) == sum(len(design.notes) for design in desk.book.cakes.values())
    assert all(each.anchor == "notes" and each.second for each in notes)
    assert {each.address for each in found if each.kind == "section"} == {
        f"cakes/{slug}/{leaf}" for slug in desk.book.cakes for leaf in ("used", "making")
    }
