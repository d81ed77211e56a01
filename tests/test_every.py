"""A loop reports every case that failed, whatever it failed by, and passes for no other reason than that all passed."""

from __future__ import annotations

import inspect
from types import SimpleNamespace
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.conftest import pytest_collection_modifyitems
from tests.every import all_seeds, check_every, every, many


def failing(test: object, **fixtures: object) -> str:
    """What a loop tells when it fails."""
    assert callable(test)
    with pytest.raises(pytest.fail.Exception) as told:
        test(**fixtures)
    return str(told.value)


def test_every_failure_is_told_by_its_name() -> None:
    @every("number, wanted", [(1, 1), (2, 3), (3, 3), (4, 5)])
    def numbers(number: int, wanted: int, more: int) -> None:
        assert number + more == wanted, f"{number} for {wanted}"

    lines = failing(numbers, more=0).splitlines()
    assert lines[0] == "2 of 4 failed"
    assert lines[1].startswith("2-3: test_every.py:") and "2 for 3" in lines[1]
    assert any(line.startswith("4-5: ") for line in lines)


def test_a_loop_within_a_loop_tells_of_each() -> None:
    @every("letter", "ab", ids=str.upper)
    @every("number", [1, 2])
    def both(letter: str, number: int) -> None:
        assert letter == "a" and number == 1

    told = failing(both)
    assert told.startswith("2 of 2 failed\nA: 1 of 2 failed\n    2: ") and "\nB: 2 of 2 failed\n    1: " in told


def test_errors_skips_and_what_was_not_raised_are_failures() -> None:
    def wrong(case: str) -> None:
        if case == "skips":
            pytest.skip("not here")
        with pytest.raises(KeyError):
            assert case != "raises another" or {}[case] == int("x")

    with pytest.raises(pytest.fail.Exception) as told:
        check_every(["skips", "raises none", "raises another"], wrong)
    text = str(told.value)
    assert text.startswith("2 of 3 failed\nskips: ") and "not here" in text and "DID NOT RAISE" in text


def test_a_loop_over_nothing_is_no_test() -> None:
    with pytest.raises(AssertionError, match="no case"):
        check_every([], lambda case: None)
    with pytest.raises(AssertionError, match="no case"):
        every("a", [])
    with pytest.raises(AssertionError, match="does not take"):
        every("b", [1])(lambda a: None)


def test_its_cases_are_no_fixtures_and_the_rest_is() -> None:
    @every("case", [1])
    def one(case: int, tmp_path: object) -> None:
        """Said of it."""

    assert list(inspect.signature(one).parameters) == ["tmp_path"]
    assert (one.__name__, one.__doc__) == ("one", "Said of it.")


def test_a_property_in_a_loop_tells_its_example() -> None:
    @every("most", [10, 2000])
    @many(300)
    @given(number=st.integers(0, 1000))
    def small(most: int, number: int) -> None:
        assert number < most

    told = failing(small)
    assert told.startswith("1 of 2 failed\n10: ") and "number=10" in told


def test_a_hundred_fixed_seeds_or_all() -> None:
    assert many(2000).max_examples == (2000 if all_seeds() else 100)
    assert many(60).max_examples == 60
    assert many(2000).derandomize is not all_seeds()


class Item:
    """A test as pytest lists it, long or not."""

    def __init__(self, long: bool) -> None:
        self.long = long

    def get_closest_marker(self, name: str) -> bool:
        return self.long


@every("processes", [1, 2, 3, 4])
def test_long_tests_stand_first_in_the_share_of_each_process(processes: int) -> None:
    """Shares as pytest-xdist 3.8 makes them for `--dist worksteal`: what is left, by the processes that have none yet."""
    listed: list[Any] = [Item(long=at % 7 == 0) for at in range(50)]
    config: Any = SimpleNamespace(workerinput={"workercount": processes})
    pytest_collection_modifyitems(config, items := [*listed])
    assert sorted(map(id, items)) == sorted(map(id, listed))
    for place in range(processes):
        share, items = items[: len(items) // (processes - place)], items[len(items) // (processes - place) :]
        fronts = [item.long for item in share]
        assert fronts == sorted(fronts, reverse=True) and 8 // processes <= sum(fronts) <= 8 // processes + 1
