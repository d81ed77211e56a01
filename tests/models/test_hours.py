"""The log of hours as it is written."""

from __future__ import annotations

import pytest

from tinbook.models import read_model
from tinbook.models.hours import HoursLog, WorkDone

SOUND = {
    "done": "2026-12-05 10:40",
    "task": "slipway/rope-edge-2",
    "of": "rope-edge",
    "said": "35 min",
    "took": "45 min",
}


def test_what_is_read() -> None:
    entry, flaws = read_model(WorkDone, SOUND, "it")
    assert entry is not None and flaws == ()
    assert (entry.said, entry.took, entry.done.hour) == (35.0, 45.0, 10)
    log, flaws = read_model(HoursLog, {"hours": [SOUND, {key: SOUND[key] for key in ("done", "task")}]}, "it")
    assert log is not None and log.hours[1].took is None


@pytest.mark.parametrize(
    ("key", "text"),
    [("done", "yesterday"), ("done", "2026-02-30 10:00"), ("took", "-5 min"), ("took", "0 min"), ("said", "a while")],
)
def test_what_cannot_be_is_told(key: str, text: str) -> None:
    entry, flaws = read_model(WorkDone, {**SOUND, key: text}, "it")
    assert entry is None and [flaw.path for flaw in flaws] == [(key,)] and flaws[0].hint
