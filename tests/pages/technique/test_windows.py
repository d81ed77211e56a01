"""What steps share is said once."""

from __future__ import annotations

from dataclasses import replace

from tinbook.loading import Loaded
from tinbook.pages.base.page import Desk
from tinbook.pages.base.shared import StepView
from tinbook.pages.technique.view import TechniqueView
from tinbook.pages.technique.windows import shared_windows

STEP = StepView(pieces=(), times=(), done="", name="it", windows=(), pictures=())


def test_what_several_steps_share_is_said_once_with_their_numbers() -> None:
    ahead, keeps = "may be done 7 days ahead", "keeps for 3 days"
    steps = [replace(STEP, windows=windows) for windows in ((ahead,), (ahead, keeps), (ahead,), (), (ahead, "keeps for 1 day"), (keeps,))]  # fmt: skip
    lines, bare = shared_windows(steps)
    assert lines == ("Steps 1 to 3 and 5 may be done 7 days ahead.", "After steps 2 and 6 it keeps for 3 days.")
    assert [step.windows for step in bare] == [(), (), (), (), ("keeps for 1 day",), ()]


def test_no_technique_says_a_time_ahead_twice(demo: Loaded) -> None:
    for slug, technique in demo.book.techniques.items():
        view = TechniqueView(slug=slug, technique=technique, desk=Desk(demo.book, demo.facts, {}))
        left = [window for step in view.steps for window in step.windows]
        assert len(left) == len(set(left)), slug
        # and every step that has one is told of
        written = sum(bool(step.ahead) + bool(step.stands) + bool(step.keeps) for step in technique.steps)
        assert (written > 0) == bool(left or view.windows), slug
