"""The tasks of a cake: every one after what it needs, and none forgotten."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from itertools import pairwise

from tests.plans.orders.conftest import CUPS, LIGHT, WEDDING, Weeks

from tinbook.loading import Loaded
from tinbook.models.technique import DONE_TO
from tinbook.plans.cakes.figures import techniques_of
from tinbook.plans.orders.tasks import Task


def before(key: str, tasks: Mapping[str, Task]) -> set[str]:
    """Everything that has to be over before a task."""
    found: set[str] = set()
    left = [each.key for each in tasks[key].after]
    while left:
        if (one := left.pop()) not in found:
            found.add(one)
            left += [each.key for each in tasks[one].after]
    return found


def by_key(tasks: Iterable[Task]) -> dict[str, Task]:
    return {task.key: task for task in tasks}


def test_everything_is_over_before_it_goes_out(weeks: Weeks) -> None:
    for data in (WEDDING, LIGHT, CUPS):
        tasks = by_key(weeks(quay=data).tasks)
        assert before("quay/goes-out", tasks) == set(tasks) - {"quay/goes-out"}


def test_the_order_of_the_work(weeks: Weeks) -> None:
    tasks = by_key(weeks(quay=WEDDING).tasks)
    order = ["line-a-tin", "load-1-mix-ginger-sponge", "load-1-bake", "load-1-cool-ginger-sponge-3", "level-and-cut-2",
             "crumb-coat-and-final-coat-3", "cover-with-sugarpaste", "wave-and-reed-pattern-3", "goes-out"]  # fmt: skip
    for first, then in pairwise(order):
        assert f"quay/{first}" in before(f"quay/{then}", tasks), (first, then)
    coat = before("quay/crumb-coat-and-final-coat-1", tasks)
    assert "quay/make-american-buttercream" in coat
    assert "quay/make-american-buttercream" not in before("quay/level-and-cut-2", tasks)
    assert "quay/make-modelling-paste-3" in before("quay/heron-for-the-side-1", tasks)
    assert "quay/cover-a-board-2" in before("quay/stack-three-tiers-2", tasks)


def test_no_technique_and_no_load_is_forgotten(weeks: Weeks, demo: Loaded) -> None:
    tasks = by_key(weeks(quay=WEDDING).tasks)
    techniques = techniques_of(demo.book.cakes["estuary-wedding-cake"], demo.book)
    assert all(any(key.startswith(f"quay/{slug}") for key in tasks) for slug in techniques)
    assert sum(key.endswith("-bake") for key in tasks) == 4


def test_what_is_put_together_there_is_not_done_at_home(weeks: Weeks, demo: Loaded) -> None:
    """A cake that travels in tiers is stacked where it will stand; the minutes are in the delivery."""
    driven = by_key(weeks(quay=WEDDING).tasks)["quay/goes-out"]
    last = [step for step in demo.book.techniques["stack-three-tiers"].steps if not step.ahead]
    there = sum(step.hands_on.high.base for step in last if step.hands_on)
    assert driven.away and driven.hands_min == 2 * 25 + there
    fetched = by_key(weeks(quay={**WEDDING, "delivered": "1 min", "change": {"travels": "whole"}}).tasks)
    assert fetched["quay/goes-out"].hands_min == 5


def test_batter_goes_straight_into_the_oven_and_sponge_is_cut_while_it_keeps(weeks: Weeks) -> None:
    tasks = by_key(weeks(quay=LIGHT).tasks)
    assert all(each.within_min == 15 for each in tasks["quay/load-1-bake"].after if "mix" in each.key)
    assert {each.within_min for each in tasks["quay/level-and-cut-1"].after} == {3 * 1440}


def test_the_demo_says_what_its_techniques_are_done_to(demo: Loaded) -> None:
    said = {each.done_to for each in demo.book.techniques.values()}
    assert said == {None, *DONE_TO}
