"""One question, one answer, in a house whose tins are sold in inches: the demo with one line of its house changed."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from itertools import product
from pathlib import Path
from runpy import run_path
from typing import Any

import pytest
from tests.every import every

from tinbook.loading import Loaded, load_book
from tinbook.plans.base.scaling import owned_count
from tinbook.plans.base.shelf import all_outlines, batter_depth_mm, factor_between
from tinbook.tins import read_tin

ROOT = Path(__file__).parents[2]
SAME = {
    f"{subject}: {question}": ways
    for subject in ("mixtures", "measures", "cakes", "techniques")
    for question, ways in run_path(str(Path(__file__).with_name(f"test_one_answer_{subject}.py")))["ASKED"].items()
}
BY_NAME = {
    "mixtures: how deep must the tin be": "the page prints 7.5 cm, the name of 76.2 mm",
    "cakes: which drum": "the page prints 28 cm, the name of 279.4 mm",
}
"""Questions whose figure on the page is the name in centimetres, not the length; they are asked below."""
SPONGE, DEEP = "creamed-butter-sponge", "round 20 cm x 7.5 cm"
PAGE = f"mixtures/{SPONGE}"
WHOLE = "Amounts for every tin, whole eggs"


@pytest.fixture(scope="module")
def asked_book(tmp_path_factory: pytest.TempPathFactory) -> Loaded:
    """The demo, its tins sold in inches."""
    folder = tmp_path_factory.mktemp("inches") / "recipes"
    shutil.copytree(ROOT / "recipes", folder)
    house = folder / "house" / "house.yaml"
    text = house.read_text("utf-8")
    assert text.count("tins sold in: cm") == 1
    house.write_text(text.replace("tins sold in: cm", "tins sold in: inches"), "utf-8")
    loaded = load_book(folder)
    assert loaded.problems == () and loaded.book.house.tins_sold_in == "inches"
    return loaded


@every("question", [question for question in SAME if question not in BY_NAME])
def test_one_answer(question: str, agree: Callable[[Any], None]) -> None:
    agree(SAME[question])


INCHES: dict[str, tuple[Callable[[Any], object], ...]] = {
    "how deep must a tin of inches be": (
        lambda d: d.row("tins", "--of", SPONGE, tin="round 20 cm")["least_depth_mm"],
        lambda d: d.bench(SPONGE, "round 20 cm")["least_mm"],
        lambda d: {7.5: 76.2, 10.0: 101.6}[d.number(PAGE, WHOLE, "round 20 cm", "Tin depth, at least")],
    ),
    "which drum of inches": (
        lambda d: d.row("boards", tin="round 20 cm")["taken_width_mm"],
        lambda d: 25.4 * d.figure(d.cell("boards", "On the usual drum, the one we use", "round 20 cm", "Drum").split("|")[1]),
        lambda d: 25.4 * {25.0: 10.0, 28.0: 11.0, 30.0: 12.0}[d.number(PAGE, "To finish a cake from each tin", "round 20 cm", "Drum")],
    ),
    "how wide is an 8 in tin": (
        lambda d: 8 * 25.4,
        lambda d: d.bench(SPONGE, "round 20 cm")["width_mm"],
        lambda d: d.row("lengths", inches_in=8.0)["taken_mm"],
        lambda d: d.data(PAGE, "tb-recipe")["named"]["cm"]["20"],
        lambda d: next(
            row[d.data("tins/all", "tb-tins")["heads"].index("width_mm")]
            for row in d.data("tins/all", "tb-tins")["rows"]
            if row[0] == "round 20 cm"
        ),
    ),
    "how many times a 5 in round goes into a 6 in one": (
        lambda d: 1.44,
        lambda d: d.row("factors", "--tin", "round 5 in", to="round 15 cm")["factor"],
        lambda d: d.bench(SPONGE, "round 15 cm")["unit_ml"] / d.bench(SPONGE, "round 13 cm")["unit_ml"],
        lambda d: d.rows("scaled", "--of", SPONGE, "--tin", "round 6 in")[0]["factor"]
        / d.rows("scaled", "--of", SPONGE, "--tin", "round 127 mm")[0]["factor"],
    ),
    "the factor by either name": (
        lambda d: d.rows("scaled", "--of", SPONGE, "--tin", "2 round 8 in x 3 in")[0]["factor"],
        lambda d: d.rows("scaled", "--of", SPONGE, "--tin", f"2 {DEEP}")[0]["factor"],
        lambda d: d.rows("scaled", "--of", SPONGE, "--tin", "2 round 203.2 mm x 76.2 mm")[0]["factor"],
    ),
}  # fmt: skip
"""Questions of this house alone, with the ways of asking each."""


@pytest.mark.parametrize("question", INCHES)
def test_one_answer_in_inches(question: str, agree: Callable[[Any], None]) -> None:
    agree(INCHES[question])


def test_each_tin_has_one_row_by_both_names(asked_book: Loaded, demo: Loaded, doors: Any) -> None:
    """The tins stand in the same rows by the same names as in a house of centimetres."""
    ours, theirs = ([tin.names for tin, _ in all_outlines(loaded.book)] for loaded in (asked_book, demo))
    assert ours == theirs and len(set(ours)) == len(ours)
    for address in (PAGE, "boards", "tins/all", "covering"):
        assert "round 20 cm 8 in" in doors.words(address).replace("Round", "round"), address


def test_a_box_of_tins_is_owned_by_either_name(asked_book: Loaded) -> None:
    """A tin written 20 cm in tins.yaml is the one a recipe calls 8 in; one in mm is another."""
    book = asked_book.book
    for text, have in (("round 8 in x 3 in", 2), ("round 20 cm x 7.5 cm", 2), ("round 20 cm", 2), ("round 200 mm", 0)):
        assert owned_count(book, read_tin(text, sold="inches")[1]) == have, text


def test_factors_between_round_tins_are_those_of_their_inches(asked_book: Loaded, doors: Any) -> None:
    """But for those that were measured with water, which win over their sizes."""
    measured = {own.tin.name for own in asked_book.book.tins if own.measured}
    rows = {
        row["tin_by_inches"]: row
        for row in doors.rows("tins", "--of", SPONGE)
        if row["tin"].startswith("round") and row["tin"] not in measured
    }
    inches = {float(name.split()[1]): row["exact_factor"] for name, row in rows.items() if name}
    assert len(inches) == 13 - sum(name.startswith("round") for name in measured)
    for inch, factor in inches.items():
        assert factor / inches[6.0] == pytest.approx((inch / 6.0) ** 2, rel=2e-4), inch


def test_the_shelf_multiplies_through(asked_book: Loaded) -> None:
    """From one tin to a second and on to a third is from the first to the third."""
    tins = [tin for tin, _ in all_outlines(asked_book.book)]
    depth_mm = batter_depth_mm(asked_book.book)
    assert depth_mm == 38.1
    for one, two, three in product(tins[::3], tins[1::3], tins[2::3]):
        through = factor_between(one, two, depth_mm) * factor_between(two, three, depth_mm)
        assert through == pytest.approx(factor_between(one, three, depth_mm), rel=1e-12)
