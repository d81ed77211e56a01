"""`tinbook table`: every sum of the book, asked from outside."""

import json
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import Result

from tinbook.plans.tables import TABLES

Run = Callable[..., Result]
SPONGE = ("--of", "creamed-butter-sponge")
ASKED = {"fits": ("--tin", "square 25 cm x 7.5 cm")}


def rows(done: Result) -> list[dict[str, object]]:
    assert done.exit_code == 0, done.output
    found: list[dict[str, object]] = json.loads(done.output)["rows"]
    return found


def test_all_tables_are_listed(run: Run) -> None:
    told = run("table").output
    assert all(name in told for name in TABLES)


@pytest.mark.parametrize("name", TABLES)
@pytest.mark.parametrize("form", ["text", "json"])
def test_every_table_answers(run: Run, name: str, form: str) -> None:
    of = SPONGE if TABLES[name].of else ()
    done = run("table", name, *of, *ASKED.get(name, ()), "--format", form)
    assert done.exit_code == 0, done.output
    if form == "json":
        told = json.loads(done.output)
        assert told["rows"] and told["worked_out"]["formula"]


def test_a_quarter_more_of_the_sponge(run: Run) -> None:
    """Common practice, no source: 340 g each and 4 eggs, plus 25 %, is 425 g each and 5 eggs."""
    whole = rows(run("table", "scaled", *SPONGE, "--plus", "25 %", "--format", "json"))[1]
    assert (whole["butter_g"], whole["caster_sugar_g"], whole["self_raising_flour_g"]) == (425, 425, 425)
    assert whole["egg_pieces"] == 5


@pytest.mark.parametrize(
    ("asked", "factor"),
    [
        (("--eggs", "6"), 1.5),
        (("--batches", "1 1/2"), 1.5),
        (("--left", "510 g butter"), 1.5),
        (("--tin", "2 round 15 cm"), 1.0),
        (("--tin", "round 15 cm", "--count", "3"), 1.5),
        (("--tin", "round 15 cm", "--tin", "2 round 15 cm"), 1.5),
    ],
)
def test_each_way_of_asking(run: Run, asked: tuple[str, ...], factor: float) -> None:
    exact = rows(run("table", "scaled", *SPONGE, *asked, "--format", "json"))[0]
    assert exact["factor"] == pytest.approx(factor, rel=1e-6)


def test_few_and_wide_rows_stand_upright(run: Run) -> None:
    told = run("table", "scaled", *SPONGE, "--eggs", "6").output.splitlines()
    assert max(map(len, told)) < 100


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("scald",), 'there is no table "scald": did you mean "scaled"?'),
        (("scaled",), "this table is of one mixture"),
        (("scaled", "--of", "creamed-buter-sponge"), 'did you mean "creamed-butter-sponge"?'),
        (("scaled", *SPONGE, "--tin", "roud 20 cm"), "--tin: "),
        (("scaled", *SPONGE, "--weight", "much"), "--weight: "),
        (("scaled", *SPONGE, "--weight", "NaN g"), "--weight: "),
        (("scaled", *SPONGE, "--batches", "none"), "--batches: "),
        (("scaled", *SPONGE, "--left", "400 g marzipan"), '"marzipan" is not in "Creamed butter sponge"'),
        (("scaled", *SPONGE, "--eggs", "6", "--plus", "25 %"), "at once"),
        (("scaled", "--of", "dark-ganache", "--eggs", "6"), "has no whole eggs"),
        (("scaled", "--of", "dark-ganache", "--tin", "round 20 cm"), "made by weight"),
        (("tins", "--of", "dark-ganache"), "made by weight"),
        (("fits", *SPONGE), "this table is of tins"),
    ],
)
def test_a_question_that_cannot_be_answered_says_why(run: Run, words: tuple[str, ...], told: str) -> None:
    done = run("table", *words)
    assert done.exit_code == 1
    assert told in done.output


def test_a_broken_mixture_sends_to_check(run: Run, book: Path) -> None:
    path = book / "recipes" / "mixtures" / "madeira-cake.yaml"
    path.write_text(path.read_text(encoding="utf-8").replace("butter", "buttter"), encoding="utf-8")
    done = run("table", "tins", "--of", "madeira-cake")
    assert done.exit_code == 1 and "tinbook check" in done.output
