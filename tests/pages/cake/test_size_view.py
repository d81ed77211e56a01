"""One size of a cake: its chip, its band of facts."""

from __future__ import annotations

from tinbook.pages.cake.size_view import CakeInSize, chips
from tinbook.pages.cake.view import CakeView


def test_every_size_offered_has_a_chip_with_its_portions_and_those_without_the_top_tier(
    views: dict[str, CakeView],
) -> None:
    for view in views.values():
        made = chips(view.sizes)
        assert [chip.key for chip in made] == [size.key for size in view.sizes]
        assert [chip.serves for chip in made] == [size.cake.serves for size in view.sizes]
        assert sum(chip.chosen for chip in made) == 1
        for chip, size in zip(made, view.sizes, strict=True):
            tiers = size.cake.tiers
            assert chip.kept == (chip.serves - tiers[-1].serves if len(tiers) > 1 else 0)
            assert chip.lent is bool(size.size.borrow)
            assert f"{chip.serves}\u00a0portion" in chip.words and ("to borrow" in chip.words) is chip.lent


def test_a_size_that_goes_by_two_names_stands_once(views: dict[str, CakeView]) -> None:
    sizes = views["lighthouse-cake"].sizes
    assert len({size.cake.tins for size in sizes}) == len(sizes)
    assert {name for size in sizes for name in size.names} == {"small", "for the slipway party"}


def test_the_band_gives_the_totals(in_sizes: list[CakeInSize]) -> None:
    for size in in_sizes:
        facts = {what: figure for figure, what in size.facts}
        assert facts["portions"] == str(size.cake.totals.portions)
        eggs = size.cake.totals.eggs
        assert facts.get("egg" if eggs == 1 else "eggs") == (f"{eggs:g}" if eggs else None)
        assert facts["high"] == f"{size.cake.stacked.high_shown_mm / 10:g}\u00a0cm"
    assert len({size.anchor for size in in_sizes if size.cake.slug == "lighthouse-cake"}) == 9


def test_the_drawing_says_in_words_what_it_shows(views: dict[str, CakeView]) -> None:
    said = views["estuary-wedding-cake"].written.drawn
    assert said.startswith(
        "From the front, to scale: 25 + 20 + 15 cm round, on a drum of 40\u00a0cm, 35.7\u00a0cm high"
    )
    assert "A: heron for the side" in said
