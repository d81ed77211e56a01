"""`tinbook table`: every sum of the book, asked from outside."""

import json
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from tinbook.cli import main
from tinbook.loading import Loaded
from tinbook.plans.tables import TABLES

Run = Callable[..., Result]
OTHERS = {"coats": "american-buttercream", "covers": "marzipan",
          **dict.fromkeys(("parts", "colours", "marks"), "boat-on-the-shingle")}  # fmt: skip
SPONGE = ("--of", "creamed-butter-sponge")
ASKED = {"fits": ("--tin", "square 25 cm x 7.5 cm")}


@pytest.fixture
def run(monkeypatch: pytest.MonkeyPatch, demo: Loaded) -> Run:
    """The command on the demo book, which is read once for all questions."""
    monkeypatch.setattr("tinbook.cli.table.load_book", lambda folder: demo)

    def call(*words: str) -> Result:
        done = CliRunner().invoke(main, words)
        assert done.exception is None or isinstance(done.exception, SystemExit), done.exception
        return done

    return call


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
    of = ("--of", OTHERS[name]) if name in OTHERS else SPONGE if TABLES[name].of else ()
    done = run("table", name, *of, *ASKED.get(name, ()), "--format", form)
    assert done.exit_code == 0, done.output
    if form == "json":
        told = json.loads(done.output)
        assert set(told) == {"table", "title", "rows", "worked_out"}
        assert told["rows"] and told["worked_out"]["formula"]
        for row in told["rows"]:
            assert all(cell is None or isinstance(cell, str | float | int) for cell in row.values())


def test_a_fifth_more_of_the_sponge(run: Run) -> None:
    """60 g each of butter, sugar and flour go to an egg, and 5 eggs and a fifth more of them are 6."""
    whole = rows(run("table", "scaled", *SPONGE, "--plus", "20 %", "--format", "json"))[1]
    assert (whole["butter_g"], whole["caster_sugar_g"], whole["self_raising_flour_g"]) == (360, 360, 360)
    assert whole["egg_pieces"] == 6


@pytest.mark.parametrize(
    ("asked", "factor"),
    [
        (("--eggs", "6"), 1.2),
        (("--batches", "1 1/2"), 1.5),
        (("--left", "450 g butter"), 1.5),
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
        (("scaled", *SPONGE, "--batches", "1e5"), "--batches: "),
        (("scaled", *SPONGE, "--batches", "100000"), "--batches: "),
        (("scaled", *SPONGE, "--eggs", "nan"), "--eggs: "),
        (("scaled", *SPONGE, "--eggs", "-1"), "--eggs: "),
        (("scaled", *SPONGE, "--eggs", "0"), "--eggs: "),
        (("scaled", *SPONGE, "--eggs", "9" * 400), "--eggs: "),
        (("scaled", *SPONGE, "--plus", "-100 %"), "--plus: "),
        (("scaled", *SPONGE, "--plus", "25"), "--plus: "),
        (("scaled", *SPONGE, "--weight", "12345678901234567890 kg"), "--weight: "),
        (("scaled", *SPONGE, "--weight", "0 g"), "--weight: "),
        (("scaled", *SPONGE, "--weight", ""), "--weight: "),
        (("scaled", *SPONGE, "--left", "400 g"), "--left: "),
        (("scaled", *SPONGE, "--left", "0 g butter"), "--left: "),
        (("fits", *SPONGE, "--tin", "round 1000 m"), "--tin: "),
        (("fits", *SPONGE, "--tin", "round nan cm"), "--tin: "),
        (("fits", *SPONGE, "--tin", "round 20 cm", "--weight", "900 g"), "at once"),
        (("tins", "--of", "../house/house"), "the book has no mixture"),
        (("scaled", *SPONGE, "--left", "400 g marzipan"), '"marzipan" is not in "Creamed butter sponge"'),
        (("scaled", *SPONGE, "--eggs", "6", "--plus", "25 %"), "at once"),
        (("scaled", "--of", "dark-ganache", "--eggs", "6"), "has no whole eggs"),
        (("scaled", "--of", "dark-ganache", "--tin", "round 20 cm"), "made by weight"),
        (("tins", "--of", "dark-ganache"), "made by weight"),
        (("fits", *SPONGE), "this table is of tins"),
        (("balance", "--of", "modelling-paste"), 'no rule of balance is known for the kind "modelling paste"'),
    ],
)
def test_a_question_that_cannot_be_answered_says_why(run: Run, words: tuple[str, ...], told: str) -> None:
    done = run("table", *words)
    assert done.exit_code == 1
    assert told in done.output


@pytest.mark.parametrize(
    "words",
    [
        ("scaled", *SPONGE, "--count", "0"), ("scaled", *SPONGE, "--count", "1000"), ("scaled", *SPONGE, "--format", "xml"),
        ("scaled", *SPONGE, "--slices", "40"), ("tins", "more", "words"), ("scaled", "--of"),
    ],
)  # fmt: skip
def test_an_option_that_is_none_is_a_fault_of_use(run: Run, words: tuple[str, ...]) -> None:
    assert run("table", *words).exit_code == 2


def test_no_book_no_table(tmp_path: Path) -> None:
    done = CliRunner().invoke(main, ["--book", str(tmp_path), "table", "tins", *SPONGE])
    assert done.exit_code == 1 and "cannot be read" in done.output


def test_a_broken_mixture_sends_to_check(book: Path) -> None:
    path = book / "recipes" / "mixtures" / "madeira-cake.yaml"
    path.write_text(path.read_text(encoding="utf-8").replace("butter", "buttter"), encoding="utf-8")
    done = CliRunner().invoke(main, ["--book", str(book), "table", "tins", "--of", "madeira-cake"])
    assert done.exit_code == 1 and "tinbook check" in done.output
