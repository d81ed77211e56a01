"""The solver against every plan there is, tried one by one, and against other eyes."""

from __future__ import annotations

import builtins
from typing import Any

import pytest
from tests.every import all_seeds, check_every
from tests.oracles.weeks import aims, best, random_week, wrong

from tinbook.plans.orders.solving import AIMS, Chore, NoSolver, Week, solved

BRUTE, RANDOM = (500, 2000) if all_seeds() else (100, 100)


@pytest.mark.long
def test_as_good_as_every_plan_tried_one_by_one() -> None:
    """Feasible when and only when a plan exists, and as good in each aim, one after the other."""
    kinds = set()

    def check(seed: int) -> None:
        week = random_week(seed)
        wanted, found = best(week), solved(week)
        assert (found is None) == (wanted is None)
        if found is not None:
            reached = tuple(found.aims[aim].reached for aim in AIMS)
            assert reached == wanted == aims(week, found.starts, found.late)
            assert wrong(week, found.starts, found.late) == []
            assert all(aim.least == aim.reached for aim in found.aims.values())
        kinds.add("none" if wanted is None else "late" if wanted[0] else "in time")

    check_every(range(BRUTE), check)
    assert kinds == {"none", "late", "in time"}


@pytest.mark.long
def test_other_eyes_find_nothing_wrong_with_larger_weeks() -> None:
    found = 0

    def check(seed: int) -> None:
        nonlocal found
        week = random_week(seed, jobs=9, days=5, day=24, orders=3)
        plan = solved(week, 0.3)
        if plan is not None:
            found += 1
            assert wrong(week, plan.starts, plan.late) == []
            assert aims(week, plan.starts, plan.late) == tuple(plan.aims[aim].reached for aim in AIMS)

    check_every(range(10_000, 10_000 + RANDOM), check)
    assert found > RANDOM / 4


def test_the_same_plan_each_time() -> None:
    week = random_week(7, jobs=8, days=4, day=24)
    assert solved(week, 0.5) == solved(week, 0.5)


def test_an_order_is_late_rather_than_not_at_all() -> None:
    week = Week(
        jobs=(Chore(hands=6, orders=((0, 24),)),), due=(4,), may=((0, 12),), usual=((0, 12),), day=12, most_late=10
    )
    found = solved(week)
    assert found is not None and found.late == (2,)
    assert solved(Week(jobs=week.jobs, due=(4,), may=((0, 5), (6, 11)), usual=(), day=12, most_late=10)) is None


def test_without_the_library_it_says_so(monkeypatch: pytest.MonkeyPatch) -> None:
    real = builtins.__import__

    def absent(name: str, *rest: Any) -> Any:
        if name.startswith("ortools"):
            raise ImportError(name)
        return real(name, *rest)

    monkeypatch.setattr(builtins, "__import__", absent)
    with pytest.raises(NoSolver):
        solved(random_week(1))
