"""`tinbook table`: every sum of the book, asked from outside."""

import json
import math
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import CliRunner, Result
from tests.every import every

from tinbook.cli import main
from tinbook.cli.table import table
from tinbook.loading import Loaded
from tinbook.plans.base.asking import OPTIONS
from tinbook.plans.tables import TABLES

Run = Callable[..., Result]
OTHERS = {"coats": "american-buttercream", "covers": "marzipan",
          **dict.fromkeys(("parts", "colours", "pastes", "marks"), "boat-on-the-shingle"),
          **dict.fromkeys(("cake", "used", "price", "cake-weights", "cake-supports", "cake-loads", "cake-ahead"), "estuary-wedding-cake")}  # fmt: skip
SPONGE = ("--of", "creamed-butter-sponge")
ASKED = {"fits": ("--tin", "square 25 cm x 7.5 cm")}


@pytest.fixture(scope="module")
def run(demo: Loaded) -> Run:
    """The command on the demo book, which is read once for all questions."""

    def call(*words: str) -> Result:
        with pytest.MonkeyPatch.context() as patch:
            patch.setattr("tinbook.cli.table.load_book", lambda folder: demo)
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


@every("name", TABLES)
@every("form", ["text", "json"])
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


@every(
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


GIVEN = {
    "of": ("creamed-butter-sponge",), "tins": ("round 15 cm x 7.5 cm",), "count": ("3",), "deep": (), "eggs": ("7",),
    "above": ("round 10 cm",), "measured": ("round 20 cm x 10 cm, measured 2900 ml",),
    "weight_g": ("777 g",), "batches": ("3",), "plus": ("30 %",), "left": ("123 g butter",), "layers": ("5",),
    "layer_mm": ("31 mm",), "height_mm": ("117 mm",), "guests": ("33",),
    "stacked": ("30 + 23 + 15 cm",), "portion": ("33 mm x 44 mm",), "keep_top": (),
    "owned": (), "beside": ("cupcakes",), "oven_c": ("150 °C",), "start_c": ("8 °C",), "size": ("-1",),
    "made": ("2026-12-13",),
}  # fmt: skip
"""Every option of the command with something to ask for."""
CAKE = ("--tin", "round 20 cm x 10 cm")
BESIDE = {
    "count": CAKE, "deep": CAKE, "above": CAKE,
    "layers": (*CAKE, "--layer", "28 mm"), "layer_mm": (*CAKE, "--layers", "4"),
}  # fmt: skip
"""What an option is asked together with."""


def asked_of(name: str) -> tuple[str, ...]:
    return ("--of", OTHERS[name]) if name in OTHERS else SPONGE if TABLES[name].of else ()


def pair(name: str, key: str) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """A question and the same one with an option more, or with another word for it where it must be asked with it."""
    given = ("--tin" if key == "measured" else OPTIONS[key], *GIVEN[key])
    if key == "of" and TABLES[name].of:
        # nothing is told without it
        asked: tuple[str, ...] = CAKE if name == "fits" else ()
        return asked, (*asked_of(name), *asked)
    if name == "fits" and key == "tins":
        return (*SPONGE, *CAKE), (*SPONGE, *given)
    if name == "layers" and key in ("tins", "measured"):
        stack = ("--layers", "4", "--layer", "28 mm")
        return (*SPONGE, *CAKE, *stack), (*SPONGE, *given, *stack)
    if key == "measured" and key in TABLES[name].options:
        # so many that whole eggs stand near enough, whatever the mixture
        many = "7 round 15 cm x 10 cm" if "count" in TABLES[name].options else "round 15 cm x 10 cm"
        return (*asked_of(name), "--tin", many), (*asked_of(name), "--tin", f"{many}, measured 1650 ml")
    needed = BESIDE.get(key, ()) if key in TABLES[name].options else ()
    if name in ("used", "cake-weights", "cake-supports", "cake-loads") and key in ("keep_top", "portion"):
        needed = ("--guests", "70")
    return (*asked_of(name), *needed), (*asked_of(name), *needed, *given)


def test_every_option_of_the_command_is_tried() -> None:
    assert {param.name for param in table.params} - {"name", "form", "against"} == set(GIVEN) - {"measured"}
    assert set(GIVEN) == set(OPTIONS)


@every("key", GIVEN)
@every("name", TABLES)
def test_an_option_is_used_or_refused_by_name(run: Run, name: str, key: str) -> None:
    """Every option at every table: it changes the answer, or the table says that it cannot use it."""
    plain, more = pair(name, key)
    after = run("table", name, *more, "--format", "json")
    if key in TABLES[name].options:
        assert after.exit_code == 0, after.output
        assert after.output != run("table", name, *plain, "--format", "json").output
    else:
        assert after.exit_code == 1
        # where no tin can be asked of, neither can what it holds
        key = "tins" if key == "measured" and "tins" not in TABLES[name].options else key
        assert f'the table "{name}" cannot use {OPTIONS[key]}: ' in after.output


@every(
    ("words", "told"),
    [
        (("oven", "--beside", "nothing"), 'the table "oven" cannot use --beside: it takes no options'),
        (("sizes", "--height", "12 cm"), "; --height goes with coats, covers, boards, portions, guests"),
        (("factors", "--tin", "2 round 20 cm"), 'the table "factors" cannot use --count: ask about one tin at a time'),
        (("scaled", *SPONGE, "--deep"), 'the table "scaled" cannot use --deep without --tin: say which'),
        (("scaled", *SPONGE, "--eggs", "6", "--count", "2"), 'the table "scaled" cannot use --count without --tin'),
        (("layers", *SPONGE, *CAKE), "layers need a height and a single tin"),
        (
            ("layers", *SPONGE, *CAKE, *CAKE, "--layers", "4", "--layer", "3 cm"),
            "a height and a single tin",
        ),
    ],
)
def test_what_is_not_used_is_refused_with_what_to_ask_instead(run: Run, words: tuple[str, ...], told: str) -> None:
    done = run("table", *words)
    assert done.exit_code == 1
    assert told in done.output


def test_a_tin_may_be_asked_with_what_it_holds(run: Run) -> None:
    """Such a tin is taken at its measure, in factors and by the brim, whatever the house says of one alike."""
    tin = "round 20 cm x 7.5 cm, measured 2200 ml"
    (row,) = rows(run("table", "sizes", "--tin", tin, "--format", "json"))
    assert (row["tin"], row["brim_ml"], row["measured"]) == ("round 20 cm", 2200.0, True)
    (bare,) = rows(run("table", "sizes", "--tin", "round 20 cm x 7.5 cm", "--format", "json"))
    assert bare["brim_ml"] == pytest.approx(math.pi * 100 * 7.5, abs=0.01)
    sides = {row["to"]: row["factor"] for row in rows(run("table", "factors", "--tin", tin, "--format", "json"))}
    plain = {
        row["to"]: row["factor"]
        for row in rows(run("table", "factors", "--tin", "round 20 cm x 7.5 cm", "--format", "json"))
    }
    assert sides["round 30 cm"] == pytest.approx(plain["round 30 cm"] * math.pi * 750 / 2200, rel=1e-4)


@every(
    ("tin", "told"),
    [
        ("round 20 cm, measured 2200 ml", "--tin: a measured tin needs its depth: write how deep it is"),
        ("round 20 cm x 7.5 cm, measured 220 ml", "going by its size, the tin holds about 2356 ml: measure it again"),
        (
            "round 20 cm x 7.5 cm, measured",
            'how much does it hold?: write what it holds to the brim: "measured 2200 ml"',
        ),
        ("round 20 cm x 7.5 cm, measured 2200 g", "--tin: "),
        ("set of round 15, 20 cm x 7.5 cm, measured 2200 ml", "a set cannot be measured as one tin"),
    ],
)
def test_a_measure_that_cannot_be_is_refused(run: Run, tin: str, told: str) -> None:
    done = run("table", "sizes", "--tin", tin)
    assert done.exit_code == 1 and told in done.output, done.output


def test_dowels_come_with_the_word_that_they_are_no_food(run: Run) -> None:
    asked = ("table", "dowels", "--tin", "round 20 cm", "--above", "round 15 cm")
    assert "Not edible: count them in, count them out" in run(*asked).output
    told = json.loads(run(*asked, "--format", "json").output)
    assert any(line.startswith("Not edible: count them in") for line in told["worked_out"]["inputs"])
    assert [row["dowels"] for row in told["rows"]] == [5]


def test_help_says_how_a_measured_tin_is_asked(run: Run) -> None:
    assert '", measured 2200 ml"' in " ".join(run("table", "--help").output.split())


def test_few_and_wide_rows_stand_upright(run: Run) -> None:
    told = run("table", "scaled", *SPONGE, "--eggs", "6").output.splitlines()
    assert max(map(len, told)) < 100


@every(
    ("words", "told"),
    [
        (("scald",), 'there is no table "scald": did you mean "scaled"?'),
        (("scaled",), "this table needs a mixture"),
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
        (
            ("scaled", *SPONGE, "--tin", "round 20 cm", "--weight", "900 g"),
            "--tin and --weight cannot be used together",
        ),
        (("tins", "--of", "../house/house"), "the book has no mixture"),
        (("scaled", *SPONGE, "--left", "400 g marzipan"), '"marzipan" is not in "Creamed butter sponge"'),
        (("scaled", *SPONGE, "--eggs", "6", "--plus", "25 %"), "used together"),
        (("scaled", "--of", "dark-ganache", "--eggs", "6"), "has no whole eggs"),
        (("scaled", "--of", "dark-ganache", "--tin", "round 20 cm"), "made by weight"),
        (("tins", "--of", "dark-ganache"), "made by weight"),
        (("fits", *SPONGE), "this table needs a tin"),
        (("balance", "--of", "modelling-paste"), 'there are no balance rules for the kind "modelling paste"'),
    ],
)
def test_a_question_that_cannot_be_answered_says_why(run: Run, words: tuple[str, ...], told: str) -> None:
    done = run("table", *words)
    assert done.exit_code == 1
    assert told in done.output


@every(
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
    assert done.exit_code == 1 and "there is no book in" in done.output


def test_a_broken_mixture_sends_to_check(book: Path) -> None:
    path = book / "recipes" / "mixtures" / "madeira-cake.yaml"
    path.write_text(path.read_text(encoding="utf-8").replace("butter", "buttter"), encoding="utf-8")
    done = CliRunner().invoke(main, ["--book", str(book), "table", "tins", "--of", "madeira-cake"])
    assert done.exit_code == 1 and "tinbook check" in done.output
