"""Figures that do not go together, in the house and in a mixture."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

from tests.every import every

from tinbook.facts import Facts
from tinbook.models import Book, Finish, Mixture
from tinbook.plans.rules.finish import finish_flaws, mixture_finish_flaws

BORDER = {"opening": "8 mm", "pitch": "15 mm", "stroke": "20 mm"}


@every(
    ("said", "path", "told"),
    [
        ({"rise": {"mudd": "1.2"}}, ("rise", "mudd"), "not a kind of cake"),
        ({"heights": "5 cm", "layers": "6", "filling": "10 mm"}, ("heights", 0), "do not fit in 50 mm"),
        ({"crumb coat": "3 cm"}, ("crumb coat",), "thicker than the layers"),
        ({"filling": "24 mm"}, ("filling",), "thicker than the layers"),
        ({"border": {**BORDER, "count": "60"}}, ("border", "count"), "do not fit round the smallest cake"),
        ({"border": {**BORDER, "pitch": "60 cm"}}, ("border", "pitch"), "do not fit: the smallest cake"),
    ],
)
def test_figures_that_fight(said: dict[str, Any], path: tuple[object, ...], told: str, kitchen: Book, facts: Facts) -> None:  # fmt: skip
    (flaw,) = finish_flaws(Finish.model_validate(said), kitchen, facts)
    assert flaw.path == path
    assert told in flaw.message
    assert flaw.hint


def test_figures_that_go_together(kitchen: Book, facts: Facts) -> None:
    said = {"heights": ["10 cm", "15 cm"], "layers": "4", "rise": {"mud": "1.2"}, "border": {**BORDER, "count": "30"}}
    assert not list(finish_flaws(Finish.model_validate(said), kitchen, facts))
    assert not list(finish_flaws(Finish(), replace(kitchen, tins=()), facts))


def test_a_mixture_is_checked_at_its_own_tins(mixture: Callable[..., Mixture], kitchen: Book, facts: Facts) -> None:
    # 60 marks of 15 mm go round a 33 cm cake and not round a 15 cm one
    border = {"border": {**BORDER, "count": "60"}}
    assert not list(mixture_finish_flaws(mixture(tins="round 33 cm x 7.5 cm", finish=border), kitchen, facts))
    (flaw,) = mixture_finish_flaws(mixture(tins="round 15 cm x 7.5 cm", finish=border), kitchen, facts)
    assert flaw.path == ("finish", "border", "count")
    assert not list(mixture_finish_flaws(mixture(), kitchen, facts))


def test_dowels_are_the_houses_word(mixture: Callable[..., Mixture], kitchen: Book, facts: Facts) -> None:
    (flaw,) = mixture_finish_flaws(mixture(finish={"dowels": "4"}), kitchen, facts)
    assert (flaw.path, flaw.message) == (("finish", "dowels"), "dowels belong to the tier, not to the mixture")
    assert not list(finish_flaws(Finish.model_validate({"dowels": "4"}), kitchen, facts))
