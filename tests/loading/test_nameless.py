"""What a public book calls its private cards and colours."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path

from tinbook.loading import load_book

Write = Callable[..., Path]


def test_of_a_private_card_stays_what_public_files_call_it(write: Write, base: Mapping[str, str]) -> None:
    """Nothing of one that nothing public uses."""
    cards = base["house/ingredients.yaml"].replace(
        "  lavender:\n", "  cormorant blend:\n    also: [blend]\n    private: yes\n"
    )
    cards += "  cormorant salt: {private: yes, weighs as: salt, allergens: none, also: [heron salt]}\n"
    icing = (
        "name: Icing\nkind: buttercream\nmakes: 500 g\nmix: [250 g butter, 250 g blend]\nmethod: [Beat in <blend>.]\n"
    )
    files = {"house/ingredients.yaml": cards, "mixtures/icing.yaml": icing}
    site = load_book(write(files), kitchen=False)
    assert not site.problems
    assert set(site.book.cards) >= {"butter", "blend"} and "cormorant" not in repr(site.book).lower()
    assert "heron" not in repr(site.book.cards) and len(site.book.cards) == 5
    assert [line.take.name for line in site.book.mixtures["icing"].mix] == ["butter", "blend"]
    assert "cormorant" in repr(load_book(write(files)).book.cards)


def test_a_number_that_a_colour_has_already_is_passed_over(write: Write) -> None:
    colour = '{per 100 g: 2 g gel, swatch: "#B3261E"'
    sail = "name: Sail\npurpose: For show.\nsteps: [Cut it.]\nparts for: round 20 cm\nparts:\n"
    part = "  - {{part: {0}, solid: ball 20 mm, paste: butter, colour: {0}}}\n"
    colours = f"colours:\n  colour 1: {colour}}}\n  ebb: {colour}, private: yes}}\n  flow: {colour}, private: yes}}\n"
    files = {"house/colours.yaml": colours, "techniques/sail.yaml": sail + part.format("ebb") + part.format("flow")}
    site = load_book(write(files), kitchen=False).book
    assert [part.colour for part in site.techniques["sail"].parts] == ["colour 2", "colour 3"]
    assert list(site.colours) == ["colour 1", "colour 2", "colour 3"]
