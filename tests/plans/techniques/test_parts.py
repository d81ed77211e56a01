"""Parts at every cake: weights by the laws of scaling, supports that stay inside, what is heavy, small and hard."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from typing import Any

import pytest

from tinbook.facts import Facts
from tinbook.loading import Loaded
from tinbook.models import Book, Technique, read_model
from tinbook.plans.techniques.parts import Decoration, cakes_for, decoration, decorations, letter, part_traits
from tinbook.plans.techniques.shown import beside
from tinbook.tins import read_tin

DENSITY = 1.4
"""g/ml of sugarpaste among the facts."""


@pytest.fixture
def made(kitchen: Book, facts: Facts) -> Any:
    def make(*parts: dict[str, Any], cake: str = "round 20 cm", **more: Any) -> Decoration:
        tree = {"name": "x", "purpose": "y", "steps": ["z"], "parts for": "round 20 cm", "parts": list(parts), **more}
        technique, flaws = read_model(Technique, tree, "it")
        assert technique is not None, flaws
        return decoration(technique, read_tin(cake)[1], kitchen, facts)

    return make


BALL = {"part": "buoy", "solid": "ball 20 mm", "paste": "sugarpaste", "count": "3"}


def test_a_ball_by_hand(made: Any) -> None:
    """π/6 × 2³ cm³ × 1.4 g/ml."""
    (part,) = made(BALL).parts
    assert part.each_g == pytest.approx(3.14159265 / 6 * 8 * DENSITY)
    assert part.total_g == pytest.approx(3 * part.each_g)


@pytest.mark.parametrize(
    ("shape", "power"),
    [
        ({"solid": "half egg 20 mm x 30 mm"}, 3), ({"rope": "6 mm x 90 mm"}, 3),
        ({"solid": "flattened ball 30 mm, to 40 mm x 50 mm"}, 3),
        ({"sheet": "round 40 mm", "thick": "2 mm"}, 2), ({"strip": "10 mm x 90 mm", "thick": "1 mm"}, 2),
        ({"sheet": "M0 0H30V20Z", "thick": "1 mm"}, 2),
    ],
)  # fmt: skip
@pytest.mark.parametrize("weighed", [None, "9 g"])
def test_grams_go_by_cube_or_square(shape: dict[str, str], power: int, weighed: str | None, made: Any) -> None:
    part = {"part": "a", "paste": "sugarpaste", **shape, **({"weighed": weighed} if weighed else {})}
    one, other = (made(part, cake=cake).parts[0] for cake in ("round 20 cm", "round 30 cm"))
    assert other.each_g == pytest.approx(one.each_g * 1.5**power)
    assert other.thick_mm == pytest.approx(one.thick_mm * (1.5 if power == 3 else 1.0))
    assert (other.width_mm, other.height_mm) == (pytest.approx(one.width_mm * 1.5), pytest.approx(one.height_mm * 1.5))


def test_a_weighed_part_wins_and_both_are_kept(made: Any) -> None:
    computed = made(BALL).parts[0].each_g
    part = made({**BALL, "weighed": "6 g"}).parts[0]
    assert (part.each_g, part.computed_g) == (pytest.approx(6.0), pytest.approx(computed))
    assert part.off == pytest.approx(6.0 / computed - 1.0)


@pytest.mark.parametrize("cake", ["round 10 cm", "round 20 cm", "round 30 cm"])
@pytest.mark.parametrize("shape", [{"solid": "half ball 30 mm"}, {"sheet": "round 40 mm", "thick": "8 mm"}])
def test_a_support_never_comes_through(cake: str, shape: dict[str, str], made: Any) -> None:
    stick = {"what": "cocktail stick", "count": "2", "length": "7 mm", "in the cake": "30 mm"}
    (part,) = made({"part": "a", "paste": "sugarpaste", "count": "4", "support": stick, **shape}, cake=cake).parts
    support = part.support
    assert support is not None
    assert support.reach_mm <= part.thick_mm
    assert (support.each, support.count) == (2, 8)
    assert support.length_mm == pytest.approx(support.reach_mm + support.rest_mm)
    assert support.shortened == (cake == "round 30 cm" and "sheet" in shape)


def test_drying_by_thickness(made: Any) -> None:
    """Common practice: sheet parts 12-24 h, solid figures 24-72 h."""
    sheet = made({"part": "a", "sheet": "round 40 mm", "thick": "1 mm", "paste": "sugarpaste"}).parts[0].drying
    solid = made({"part": "a", "solid": "ball 40 mm", "paste": "sugarpaste"}).parts[0].drying
    assert (sheet.low_h, sheet.high_h, sheet.soft_within) == (12.0, 24.0, False)
    assert (solid.low_h, solid.high_h, solid.soft_within) == (24.0, 72.0, True)


def test_weight_on_the_side(made: Any) -> None:
    light = made({**BALL, "on": "side"})
    assert light.side_g == pytest.approx(light.parts[0].total_g)
    assert not light.heavy
    assert made({"part": "a", "solid": "half ball 60 mm", "paste": "sugarpaste", "on": "side"}).heavy
    assert not made({"part": "a", "solid": "half ball 60 mm", "paste": "sugarpaste", "on": "board"}).heavy


def test_what_chokes_is_told(made: Any) -> None:
    """The cylinder of 16 CFR 1501.4: 31.7 mm across, 57.1 mm at its deepest (from memory)."""
    assert made({"part": "a", "solid": "ball 31 mm", "paste": "sugarpaste"}).small_hard
    assert not made({"part": "a", "solid": "ball 33 mm", "paste": "sugarpaste"}).small_hard
    assert not made({"part": "a", "solid": "cylinder 10 mm x 60 mm", "paste": "sugarpaste"}).small_hard


def test_letters() -> None:
    assert [letter(k) for k in (0, 1, 25, 26, 27, 52)] == ["A", "B", "Z", "AA", "AB", "BA"]


def test_the_demo_for_every_cake(demo: Loaded) -> None:
    """Five or more decorations, two with repeats, one on the side, one on the board; weighed parts within 15 %."""
    found = {slug: each for slug, each in demo.book.techniques.items() if each.parts}
    assert len(found) >= 5
    assert sum(bool(each.repeats) for each in found.values()) >= 2
    places = {part.on for each in found.values() for part in each.parts}
    assert places == {"top", "side", "board"}
    assert any(part.sheet and part.sheet.rings for each in found.values() for part in each.parts)
    for technique in found.values():
        cakes = cakes_for(technique)
        assert [cakes[0].bounds_mm[0], cakes[-1].bounds_mm[0]] == [100.0, 300.0]
        made = decorations(technique, demo.book, demo.facts)
        totals = [each.total_g for each in made]
        assert totals == sorted(totals)
        assert sum(each.as_written for each in made) == 1
        for each in made:
            assert all(abs(part.off or 0.0) <= each.tolerance for part in each.parts)
            assert each.total_g == pytest.approx(
                sum(part.total_g for part in each.parts) + sum(repeat.mass_g for repeat in each.repeats)
            )


def test_a_part_for_every_cake_of_inches(demo: Loaded) -> None:
    """By the same names, 10 to 30 cm or 4 to 12 in, and as long as the inches say."""
    technique = next(each for each in demo.book.techniques.values() if each.parts)
    assert technique.parts_for is not None
    made_for = read_tin(technique.parts_for.name, sold="inches")[1]
    cakes = cakes_for(technique.model_copy(update={"parts_for": made_for}))
    assert [cake.names for cake in cakes] == [cake.names for cake in cakes_for(technique)]
    assert [cakes[0].bounds_mm[0], cakes[-1].bounds_mm[0]] == pytest.approx([4 * 25.4, 12 * 25.4])


def test_words_that_call_up_cautions(demo: Loaded) -> None:
    traits = part_traits(demo.book.techniques["lighthouse-for-the-front"], demo.book, demo.facts)
    assert traits == {"support", "small hard sweets", "colour"}
    assert part_traits(demo.book.techniques["level-and-cut"], demo.book, demo.facts) == frozenset()
    with pytest.raises(ValueError, match="has no parts"):
        decoration(demo.book.techniques["level-and-cut"], read_tin("round 20 cm")[1], demo.book, demo.facts)


def test_a_paste_that_is_held_back_still_weighs(demo: Loaded) -> None:
    technique = demo.book.techniques["coil-of-rope"]
    held = replace(demo.book, mixtures={})
    made = decoration(technique, read_tin("round 20 cm")[1], held, demo.facts)
    assert made.parts[0].paste.slug is None
    assert made.total_g > 0


@pytest.mark.parametrize("people", [1, 3, 12])
def test_each_of_a_class_makes_every_part(demo: Loaded, people: int) -> None:
    """Counts, paste and colours by so many; what one makes, and what hangs on one cake, stays."""
    for technique in demo.book.techniques.values():
        if technique.parts_for is None:
            continue
        one, all_ = (decoration(technique, technique.parts_for, demo.book, demo.facts, many) for many in (1, people))
        assert all_.total_g == pytest.approx(one.total_g * people)
        assert [need.mass_g for need in all_.colours] == pytest.approx([need.mass_g * people for need in one.colours])
        assert [part.made for part in all_.parts] == [part.count * people for part in one.parts]
        assert [repeat.made for repeat in all_.repeats] == [repeat.count * people for repeat in one.repeats]
        assert [part.each_g for part in all_.parts] == [part.each_g for part in one.parts]
        assert (all_.side_g, all_.heavy) == (one.side_g, one.heavy)


def test_a_cake_stands_between_one_much_smaller_and_one_much_larger(demo: Loaded) -> None:
    every = decorations(demo.book.techniques["lighthouse-for-the-front"], demo.book, demo.facts)
    for sums in every:
        three = beside(sums, every)
        widths = [each.cake.bounds_mm[0] for each in three]
        assert len(three) == 3 and sums in three
        assert all(b >= 1.2 * a for a, b in pairwise(widths)), widths
    square = decoration(
        demo.book.techniques["lighthouse-for-the-front"], read_tin("square 19 cm")[1], demo.book, demo.facts
    )
    assert [each.cake.name for each in beside(square, every)] == ["round 15 cm", "square 19 cm", "round 23 cm"]
    assert beside(square, ()) == (square,)
