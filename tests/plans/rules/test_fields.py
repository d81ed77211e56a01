"""Rules between the fields of a mixture: a sound mixture breaks none, and each slip is told once, at its place, with a cure."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest
from tests.every import every

from tinbook.facts import Facts
from tinbook.loading import Loaded
from tinbook.models import Book, Flaw
from tinbook.plans.base.weighing import weigh
from tinbook.plans.rules.fields import Spoilt, link_flaws, mixture_flaws

Make = Callable[..., Any]
MADE = {"tins": None, "bake": None, "kind": "buttercream", "makes": "790 g", "mix": ["250 g butter"]}


def only(flaws: Any) -> Flaw:
    found = tuple(flaws)
    assert len(found) == 1, found
    assert found[0].message and found[0].hint
    return found[0]


def test_a_sound_mixture_breaks_no_rule(kitchen: Book, facts: Facts, mixture: Make) -> None:
    assert mixture_flaws(mixture(), kitchen, facts) == ()
    assert mixture_flaws(mixture(**MADE), kitchen, facts) == ()


def test_what_passes_can_be_weighed(demo: Loaded) -> None:
    for slug, mixture in demo.book.mixtures.items():
        assert mixture_flaws(mixture, demo.book, demo.facts) == ()
        assert weigh(slug, mixture, demo.book, demo.facts).mass_g > 0


@every(
    ("changes", "code", "path", "cure"),
    [
        ({"kind": "creemed"}, "unknown word", ("kind",), "creamed"),
        ({"makes": "900 g"}, "tins or makes", ("makes",), "tins"),
        ({"tins": None}, "tins or makes", (), "makes"),
        ({**MADE, "batter_depth": "30 mm"}, "no tins", ("batter depth",), "tins"),
        ({"batter_depth": "101 mm"}, "too deep", ("batter depth",), "100 mm"),
        ({"tins": "round 10 cm x 5 cm"}, "too much", ("tins",), "more tins"),
        ({"tins": "round 18 cm x 5 cm", "mix": ["1 kg butter"]}, "too much", ("tins",), "deeper tins"),
        ({"mix": []}, "empty", ("mix",), "250 g butter"),
    ],
)
def test_a_slip_is_told_at_its_place(
    kitchen: Book, facts: Facts, mixture: Make, changes: Any, code: str, path: Any, cure: str
) -> None:
    flaw = only(mixture_flaws(mixture(**changes), kitchen, facts))
    assert (flaw.code, flaw.path) == (code, path)
    assert cure in flaw.hint


def test_a_cake_says_how_it_is_baked(kitchen: Book, facts: Facts, mixture: Make) -> None:
    flaw = only(mixture_flaws(mixture(bake=None), kitchen, facts))
    assert flaw.code == "missing"
    assert "bake" in flaw.message and "bake:" in flaw.hint


@pytest.mark.parametrize(
    ("text", "code", "said"),
    [("250 g buter, soft", "unknown ingredient", "buter"), ("2 cups egg", "no weight", "egg"),
     ("1 cup sugarpaste", "no weight", "sugarpaste")],
)  # fmt: skip
def test_a_line_is_pointed_at_where_it_is_wrong(
    kitchen: Book, facts: Facts, mixture: Make, text: str, code: str, said: str
) -> None:
    for line in (text, {"take": text}, {"take": text, "note": "sifted"}):
        flaw = only(mixture_flaws(mixture(mix=["250 g butter", line]), kitchen, facts))
        assert flaw.code == code
        assert flaw.path[:2] == ("mix", 1)
        assert flaw.start is not None and text[flaw.start : flaw.end] == said


def test_a_word_no_card_knows_names_the_nearest(kitchen: Book, facts: Facts, mixture: Make) -> None:
    def hint(word: str) -> str:
        return only(mixture_flaws(mixture(mix=[f"3 g {word}"]), kitchen, facts)).hint

    assert '"butter"' in hint("buttr")
    assert '"caster sugar"' in hint("fine caster sugar")
    assert '"vanilla extract"' in hint("vanila extrct")
    assert "house/ingredients.yaml" in hint("quicksilver") and "did you mean" not in hint("quicksilver")


def test_all_wrong_lines_are_told_at_once(kitchen: Book, facts: Facts, mixture: Make) -> None:
    flaws = mixture_flaws(mixture(mix=["3 g aa", "3 g butter", "3 g bb"], kind="cc"), kitchen, facts)
    assert [flaw.path[:2] for flaw in flaws] == [("mix", 0), ("mix", 2), ("kind",)]


def test_cake_over_the_rim_is_refused_beyond_the_limit(kitchen: Book, facts: Facts, mixture: Make) -> None:
    """The limit is a our own judgement: 1.15 times the tin's depth, baked; batter bakes to 1.5 times its depth."""
    limit_mm = facts.numbers["rim limit"].value * 100 / 1.5
    below = mixture(batter_depth=f"{limit_mm - 0.1:.2f} mm")
    above = mixture(batter_depth=f"{limit_mm + 0.1:.2f} mm")
    assert mixture_flaws(below, kitchen, facts) == ()
    assert only(mixture_flaws(above, kitchen, facts)).code == "too much"


def test_cups_may_dome_over_their_rim(kitchen: Book, facts: Facts, mixture: Make) -> None:
    full = mixture(tins="12 standard cups", kind="cupcake", mix=["900 g butter"])
    assert mixture_flaws(full, kitchen, facts) == ()


def test_the_measure_of_an_owned_tin_counts(kitchen: Book, facts: Facts, mixture: Make) -> None:
    # 3116 ml by geometry, 2850 ml by water: 2960 ml of batter fit the one and not the other.
    heavy = {"tins": "round 23 cm x 7.5 cm", "mix": ["2516 g butter"]}
    assert only(mixture_flaws(mixture(**heavy), kitchen, facts)).code == "too much"
    assert "2850 ml" in only(mixture_flaws(mixture(**heavy), kitchen, facts)).hint


def test_files_that_do_not_exist(kitchen: Book) -> None:
    known = ["line-a-tin", "level-and-cut"]
    assert not tuple(link_flaws("techniques", known, known))
    flaw = only(link_flaws("techniques", ["line-a-tin", "line-the-tin"], known))
    assert flaw.path[0] == "techniques"
    assert '"line-a-tin"' in flaw.hint
    assert "did you mean" not in only(link_flaws("related", ["zzz"], known)).hint


def test_a_broken_card_is_not_called_missing(kitchen: Book, facts: Facts, mixture: Make) -> None:
    book = replace(kitchen, cards={name: card for name, card in kitchen.cards.items() if name != "butter"})
    plain = only(mixture_flaws(mixture(mix=["3 g butter"]), book, facts))
    broken = only(mixture_flaws(mixture(mix=["3 g butter"]), book, facts, Spoilt({"butter": "butter"})))
    assert plain.code == "unknown ingredient" != broken.code
    assert "has a mistake in it" in broken.message
