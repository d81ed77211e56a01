"""Steps as stints: where one ends, what comes before it, and that no minute is lost."""

from __future__ import annotations

from tests.every import check_every

from tinbook.loading import Loaded
from tinbook.models import Step, read_model
from tinbook.plans.orders.stints import LONGEST_MIN, stints


def step(do: str, **said: object) -> Step:
    read, flaws = read_model(
        Step, {"do": do, **{name.replace("_", " "): each for name, each in said.items()}}, "a step"
    )
    assert read is not None, flaws
    return read


def test_a_stint_ends_where_something_is_left_to_stand() -> None:
    first, second = stints([step("Roll.", hands_on="5-8 min"), step("Rest.", waiting="20-45 min", waits_in="fridge"),
                            step("Cut.", hands_on="3 min")])  # fmt: skip
    assert (first.hands_min, first.wait_min, first.chilled) == (8, 20, True)
    assert (second.hands_min, second.after) == (3, (0,))


def test_what_waits_for_another_step_is_a_stint_of_its_own() -> None:
    found = stints([
        step("Make paste.", hands_on="5 min", called="paste"), step("Dry it.", waiting="1 h", called="dry"),
        step("Cut card.", hands_on="2 min", after=["paste"], called="card"), step("Join.", hands_on="1 min", after=["dry", "card"]),
    ])  # fmt: skip
    assert [each.after for each in found] == [(), (0,), (0, 1)]


def test_what_can_be_done_long_ahead_is_kept_apart() -> None:
    found = stints([step("Drill.", hands_on="8 min", ahead="14 days"), step("Fix.", hands_on="5 min", ahead="1 day"),
                    step("Stand it up.", hands_on="4 min")])  # fmt: skip
    assert [each.ahead_min for each in found] == [14 * 1440, 1440, None]


def test_no_minute_is_lost(demo: Loaded) -> None:
    def whole(steps: tuple[Step, ...]) -> None:
        found = stints(steps)
        assert sum(len(each.steps) for each in found) == len(steps)
        assert sum(each.hands_min for each in found) == sum(each.hands_on.high.base for each in steps if each.hands_on)
        assert sum(each.wait_min for each in found) == sum(
            (each.waiting.low.base if each.waiting else 0) + (each.stands.minutes if each.stands else 0)
            for each in steps
        )
        assert all(each.hands_min <= LONGEST_MIN for each in found)
        assert all(before < place for place, each in enumerate(found) for before in each.after)

    check_every([each.steps for each in demo.book.techniques.values()], whole)
    check_every([each.method for each in demo.book.mixtures.values()], whole)
