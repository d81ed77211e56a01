"""A problem as plain data."""

import json

from tinbook.problems import Place, Problem, as_dict


def test_as_dict_is_plain_and_whole() -> None:
    problem = Problem("unknown-key", "unknown key", Place("a.yaml", 7, 21, 8, "text"), "did you mean?", "note")
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
    assert as_dict(Problem("c", "m", Place("f", 1, 4, 0)))["end_column"] == 5
