"""An entry of the stock as it is written."""

from __future__ import annotations

from datetime import date

import pytest

from tinbook.models import read_model
from tinbook.models.stock import ACTS, StockEntry


def test_every_key_is_read() -> None:
    data = {
        "day": "2026-12-01", "of": "milk", "counted": "2 x 568 ml", "opened": "2026-11-30", "in opened": "200 ml",
        "good until": "2026-12-05", "for": ["a", "b"], "line": "milk/1",
    }  # fmt: skip
    entry, flaws = read_model(StockEntry, data, "this entry")
    assert entry is not None and flaws == ()
    assert (entry.day, entry.opened, entry.good_until) == (date(2026, 12, 1), date(2026, 11, 30), date(2026, 12, 5))
    assert entry.counted and entry.counted.total == 1136.0 and entry.in_opened and entry.for_ == ("a", "b")
    assert entry.bought is entry.taken is None and set(ACTS) == {"counted", "bought", "taken"}


@pytest.mark.parametrize(
    ("key", "said"), [("day", "soon"), ("day", "2026-13-01"), ("counted", "-5 g"), ("bought", "some"), ("has", "5 g")]
)
def test_what_is_not_right_says_where(key: str, said: str) -> None:
    data = {"day": "2026-12-01", "of": "butter", "counted": "500 g", key: said}
    _, flaws = read_model(StockEntry, data, "this entry")
    assert flaws and flaws[0].path == (key,) and flaws[0].hint
