"""Steps and what they stand and keep."""

import pytest
from tests.every import every

from tinbook.models import Step, read_model
from tinbook.models.steps import DAY_MIN, read_stand
from tinbook.units import METRIC, Misread


@every(
    ("text", "minutes"),
    [
        ("12 h", 720),
        ("45 min", 45),
        ("1 h 30 min", 90),
        ("2 days", 2 * DAY_MIN),
        ("1 day", DAY_MIN),
        ("3 weeks", 21 * DAY_MIN),
        ("1 month", 30 * DAY_MIN),
        ("2 months", 60 * DAY_MIN),
    ],
)
def test_a_time_that_stands(text: str, minutes: float) -> None:
    assert read_stand(text, METRIC).minutes == minutes
    assert read_stand(text, METRIC).written == text


@every("text", ["12", "days", "2 fortnights", "12-24 h", "900 days", "0 days", "two days", "2 days or so days"])
def test_what_is_no_time(text: str) -> None:
    with pytest.raises(Misread):
        read_stand(text, METRIC)


def test_a_step_is_a_text_or_a_group() -> None:
    short, _ = read_model(Step, "Wait.", "a step")
    long, _ = read_model(Step, {"do": "Wait.", "stands": "12 h", "ahead": "2 days", "after": "paste"}, "a step")
    assert short is None or short.do == "Wait."
    assert long is not None and long.stands is not None and long.ahead is not None
    assert (long.stands.minutes, long.ahead.minutes, long.after) == (720, 2 * DAY_MIN, ("paste",))
