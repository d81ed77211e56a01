"""A pack that was opened, as it is logged."""

from __future__ import annotations

from datetime import date

from tinbook.models import read_model
from tinbook.models.opened import PackOpened
from tinbook.units import METRIC


def test_a_pack_is_what_it_is_of_its_number_and_its_day() -> None:
    data = {"day": "2026-12-01", "of": "butter", "pack": "L2306 B", "best before": "2027-01-15"}
    pack, flaws = read_model(PackOpened, data, "this pack", METRIC)
    assert pack is not None and not flaws
    assert (pack.day, pack.pack, pack.best_before, pack.finished) == (
        date(2026, 12, 1), "L2306 B", date(2027, 1, 15), None,
    )  # fmt: skip


def test_a_pack_without_a_number_is_not_logged() -> None:
    pack, flaws = read_model(PackOpened, {"day": "2026-12-01", "of": "butter"}, "this pack", METRIC)
    assert pack is None and "pack" in flaws[0].message
