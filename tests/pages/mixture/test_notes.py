"""The notes of a mixture."""

from collections.abc import Callable
from dataclasses import replace

from tinbook.pages.base.page import Desk
from tinbook.pages.mixture.notes import NotesView

Filled = Callable[[str], str]


def notes(desk: Desk, slug: str) -> NotesView:
    return NotesView(desk.batches[slug], desk)


def test_when_and_how_long(filled: Filled, desk: Desk) -> None:
    text = filled("mixtures/rich-fruit-cake")
    assert "**In season.** October to January." in text
    # the words of the baker win over the short form
    assert "**Keeps.** Three months, wrapped" in text and "3 months" not in text.partition("## Notes")[2]
    assert notes(desk, "rich-fruit-cake").keeps_for == "3 months"


def test_notes_of_cards_follow_as_far_as_their_pages_do(desk: Desk) -> None:
    found = [note for slug in desk.batches for note in notes(desk, slug).card_notes]
    assert found
    for note in found:
        assert note.text in desk.book.cards[note.ingredient].notes
        assert note.address == desk.card_pages[note.ingredient]


def test_tags_lead_to_the_page_of_tags(desk: Desk, filled: Filled) -> None:
    for tag in notes(desk, "rich-fruit-cake").tags:
        assert f'<a href="/tags#{tag.anchor}">{tag.name}</a>' in filled("mixtures/rich-fruit-cake")


def test_why_it_is_off_balance_is_told_once(desk: Desk) -> None:
    batch = desk.batches["creamed-butter-sponge"]
    why = batch.mixture.model_copy(update={"off_balance": "Lighter."})
    assert NotesView(replace(batch, mixture=why), desk).off_balance == ""
    paste = batch.mixture.model_copy(update={"off_balance": "Stiffer.", "kind": "sugarpaste"})
    kind = desk.facts.kinds["sugarpaste"]
    assert NotesView(replace(batch, mixture=paste, kind=kind), desk).off_balance == "Stiffer."


def test_nothing_to_note(desk: Desk) -> None:
    batch = desk.batches["creamed-butter-sponge"]
    silent = dict.fromkeys(("about", "keeps", "off_balance")) | dict.fromkeys(
        ("also", "seasons", "keeps_for", "notes", "tags"), ()
    )
    bare = replace(batch, slug="in-no-cake", mixture=batch.mixture.model_copy(update=silent), ingredients=())
    assert not NotesView(bare, desk).shown
    assert [cake.name for cake in NotesView(batch, desk).cakes] == [
        "Estuary wedding cake", "First season cake", "Lighthouse cake", "Sea-garden cups",
    ]  # fmt: skip
    assert NotesView(batch, desk).shown
