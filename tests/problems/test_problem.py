"""A problem as plain data."""

import json

from tinbook.problems import Place, Problem, as_dict


def test_as_dict_is_plain_and_whole() -> None:
    problem = Problem(
        code="unknown-key",
        message="unknown key",
        place=Place(file="a.yaml", line=7, column=21, width=8, text="text"),
        hint="did you mean?",
        severity="note",
    )
    assert as_dict(problem) == {
        "code": "unknown-key",
        "severity": "note",
        "message": "unknown key",
        "hint": "did you mean?",
        "file": "a.yaml",
        "line": 7,
        "column": 21,
        "end_column": 29,
    }
    assert json.loads(json.dumps(as_dict(problem))) == as_dict(problem)


def test_a_place_is_at_least_one_wide() -> None:
    assert as_dict(Problem(code="c", message="m", place=Place(file="f", line=1, column=4, width=0)))["end_column"] == 5
