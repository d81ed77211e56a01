"""A problem as the baker reads it."""

import pytest
from tests.every import every

from tinbook.problems import Place, Problem, spell

FILE = "recipes/mixtures/hazelnut-sponge.yaml"
LINE = "tin: {shape: round, diametre: 20 cm, depth: 7.5 cm}"


def test_the_printed_example() -> None:
    problem = Problem(
        code="unknown-key",
        message='unknown key "diametre" in a round tin',
        place=Place(file=FILE, line=7, column=21, width=8, text=LINE),
        hint='did you mean "diameter"?',
    )
    assert spell(problem) == (
        'recipes/mixtures/hazelnut-sponge.yaml:7:21: unknown key "diametre" in a round tin\n'
        "    7 | tin: {shape: round, diametre: 20 cm, depth: 7.5 cm}\n"
        '      |                     ^^^^^^^^ did you mean "diameter"?'
    )


def test_without_a_hint_the_carets_end_the_text() -> None:
    assert spell(
        Problem(code="c", message="m", place=Place(file="f", line=1, column=6, width=5, text="tin: round"))
    ) == ("f:1:6: m\n    1 | tin: round\n      |      ^^^^^")


def test_a_note_says_so() -> None:
    problem = Problem(
        code="c",
        message="the bowl is nearly full",
        place=Place(file="f", line=2, column=1, width=1, text="x"),
        severity="note",
    )
    assert spell(problem).startswith("f:2:1: note: the bowl is nearly full\n")


def test_no_line_to_show() -> None:
    assert (
        spell(Problem(code="c", message="the file is empty", place=Place(file="f", line=1, column=1)))
        == "f:1:1: the file is empty"
    )
    assert spell(
        Problem(code="c", message="the file is empty", place=Place(file="f", line=1, column=1), hint="write a name")
    ) == ("f:1:1: the file is empty\n      | write a name")


@pytest.mark.parametrize("line", [9, 10, 12345, 1234567])
def test_the_gutter_is_as_wide_as_the_number(line: int) -> None:
    _, text, carets = spell(
        Problem(code="c", message="m", place=Place(file="f", line=line, column=1, width=3, text="abc"), hint="h")
    ).split("\n")
    assert text.index("|") == carets.index("|") >= 6
    assert text == f"{line:>5} | abc"


def carets_stand_under(problem: Problem) -> str:
    """The piece of the shown line that the carets stand under."""
    _, text, carets = spell(problem).split("\n")
    start = carets.index("^")
    return text[start : start + carets.count("^")]


def test_tabs_and_control_characters_take_one_column() -> None:
    place = Place(file="f", line=1, column=9, width=4, text="\tmix:\x07\x1b[ eggs")
    shown = spell(Problem(code="c", message="m", place=place))
    assert "\t" not in shown and "\x07" not in shown and "\x1b" not in shown
    assert "    1 |  mix:␇␛[ eggs" in shown
    assert (
        carets_stand_under(
            Problem(
                code="c", message="m", place=Place(file="f", line=1, column=10, width=4, text="\tmix:\x07\x1b[ eggs")
            )
        )
        == "eggs"
    )


@every("hidden", ["\u202e", "\u200b", "\ufeff", "\x7f", "\x85", "\u2028", "\ud800"])
def test_what_cannot_be_seen_is_marked(hidden: str) -> None:
    shown = spell(
        Problem(
            code="c",
            message=f"m{hidden}",
            place=Place(file=f"f{hidden}", line=1, column=1, width=1, text=f"a{hidden}b"),
            hint=f"h{hidden}",
        )
    )
    assert hidden not in shown
    assert shown.count("\N{REPLACEMENT CHARACTER}") == 4
    assert len(shown.split("\n")) == len(shown.splitlines()) == 3


@pytest.mark.parametrize(
    ("before", "columns"),
    [("é: ", 3), ("e\u0301: ", 3), ("½ ", 2), ("蛋糕: ", 6)],
    ids=["accent", "accent of its own", "half", "wide letters"],
)
def test_carets_line_up_by_columns_not_characters(before: str, columns: int) -> None:
    shown = spell(
        Problem(
            code="c", message="m", place=Place(file="f", line=1, column=len(before) + 1, width=4, text=before + "oven")
        )
    ).split("\n")[-1]
    assert shown == "      | " + " " * columns + "^^^^"


def test_a_long_line_is_cut_round_the_fault() -> None:
    line = " ".join(f"word{n:03}" for n in range(200))
    for number in (0, 3, 12, 100, 150, 198, 199):
        word = f"word{number:03}"
        problem = Problem(
            code="c", message="m", place=Place(file="f", line=1, column=line.index(word) + 1, width=7, text=line)
        )
        text = spell(problem).split("\n")[1].removeprefix("    1 | ")
        assert len(text) == 100
        assert carets_stand_under(problem) == word
        assert text.startswith("…") == (number > 5)
        assert text.endswith("…") == (number < 192)


def test_a_line_of_a_hundred_is_not_cut() -> None:
    line = "x" * 100
    assert f"    1 | {line}\n" in spell(
        Problem(code="c", message="m", place=Place(file="f", line=1, column=100, width=1, text=line))
    )


def test_carets_stay_within_the_line() -> None:
    assert spell(
        Problem(code="c", message="m", place=Place(file="f", line=1, column=3, width=50, text="tin:"))
    ).endswith("|   ^^")
    assert spell(
        Problem(code="c", message="m", place=Place(file="f", line=1, column=5, width=1, text="tin:"), hint="h")
    ).endswith("|     ^ h")
    assert spell(
        Problem(code="c", message="m", place=Place(file="f", line=1, column=99, width=1, text="tin:"))
    ).endswith("|     ^")
