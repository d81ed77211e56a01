"""Rules of a cake's board and decorations; the messages themselves are in tests/source/bad/cakes."""

from __future__ import annotations

from tests.every import every
from tests.plans.rules.test_cakes import flaws

from tinbook.loading import Loaded
from tinbook.plans.finish.boards import SOLD_MM
from tinbook.plans.rules.cakes_on_show import board_flaws, decoration_flaws

HERON = {"technique": "heron-for-the-side", "on": "side"}


@every(
    ("board", "path"),
    [
        ({"size": "35 cm", "wider": "wide"}, ("board", "wider")),
        ("37 cm", ("board", "size")),
        ({"covered": "no", "paste": "sugarpaste"}, ("board", "paste")),
        ({"size": "none", "covered": "whole"}, ("board", "covered")),
        ({"paste": "sugarpast"}, ("board", "paste")),
        ({"colour": "hul blue"}, ("board", "colour")),
    ],
)
def test_a_board_that_cannot_be(demo: Loaded, board: object, path: tuple[str, ...]) -> None:
    assert [flaw.path for flaw in flaws(demo, {"board": board})] == [path]


def test_every_board_that_is_sold_may_be_written(demo: Loaded) -> None:
    for size in SOLD_MM:
        told = flaws(demo, {"tiers": "round 5 cm", "board": f"{size:g} mm"})
        assert not [flaw for flaw in told if flaw.path[0] == "board" and "sold" in flaw.message], size


@every(
    ("decoration", "path"),
    [
        ({"technique": "line-a-tin"}, "technique"),
        ({"technique": "heron-for-the-sid"}, "technique"),
        ({**HERON, "tier": "3"}, "tier"),
    ],
)
def test_a_decoration_that_cannot_be(demo: Loaded, decoration: object, path: str) -> None:
    assert [flaw.path for flaw in flaws(demo, {"decorations": [decoration]})] == [("decorations", 0, path)]


def test_where_a_decoration_cannot_stand(demo: Loaded) -> None:
    assert flaws(demo, {"tiers": "dome 20 cm", "decorations": [HERON]})[0].path == ("decorations", 0, "on")
    assert flaws(demo, {"board": "none", "decorations": [{"technique": HERON["technique"]}]})[0].code == "board"
    cups = {"tiers": "12 standard cups", "mixture": "cupcakes"}
    assert flaws(demo, {**cups, "decorations": [HERON]})[0].path == ("decorations", 0)
    assert flaws(demo, {**cups, "board": "30 cm"})[0].path == ("board",)


def test_the_demos_cakes_have_none(demo: Loaded) -> None:
    for design in demo.book.cakes.values():
        assert not [*board_flaws(design, demo.book, demo.facts, ()), *decoration_flaws(design, demo.book, ())]
