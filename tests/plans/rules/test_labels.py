"""Sheets of labels that cannot be, and packs that cannot have been opened."""

from __future__ import annotations

from datetime import date

from tests.every import every

from tinbook.loading import Loaded
from tinbook.models import read_model
from tinbook.models.labels import Labelling
from tinbook.models.opened import PackOpened
from tinbook.plans.rules.fields import Spoilt
from tinbook.plans.rules.labels import labelling_flaws, opened_flaws
from tinbook.units import METRIC

SHEET = {"columns": "2", "rows": "4", "wide": "99 mm", "high": "67 mm", "left": "5 mm", "top": "14 mm"}


@every(
    ("change", "key", "message"),
    [
        ({"columns": "3"}, "columns", "end 302 mm along a sheet of 210 mm"),
        ({"rows": "5"}, "rows", "end 349 mm along a sheet of 297 mm"),
        ({"across": "90 mm"}, "across", "lie on one another"),
        ({"down": "60 mm"}, "down", "lie on one another"),
        ({"wide": "12 mm"}, "wide", "too small for words"),
        ({"high": "10 mm"}, "high", "too small for words"),
    ],
)
def test_a_sheet_that_cannot_be(change: dict[str, str], key: str, message: str) -> None:
    said, wrong = read_model(Labelling, {"sheets": {"mine": {**SHEET, **change}}}, "labels.yaml", METRIC)
    assert said is not None, wrong
    (flaw,) = labelling_flaws(said)
    assert flaw.path == ("sheets", "mine", key) and message in flaw.message and flaw.hint


def test_a_sheet_and_a_roll_that_can_be() -> None:
    said, _ = read_model(Labelling, {"sheets": {"mine": SHEET}, "strip": "62 mm"}, "labels.yaml", METRIC)
    assert said is not None and list(labelling_flaws(said)) == []
    wide, _ = read_model(Labelling, {"strip": "5 mm"}, "labels.yaml", METRIC)
    assert wide is not None and [flaw.path for flaw in labelling_flaws(wide)] == [("strip",)]


@every(
    ("change", "key", "message"),
    [
        ({"of": "buttr"}, "of", "buttr"),
        ({"finished": "2026-11-30"}, "finished", "before it was opened"),
        ({"day": "2026-12-24"}, "day", "still to come"),
    ],
)
def test_a_pack_that_cannot_be(change: dict[str, str], key: str, message: str, demo: Loaded) -> None:
    data = {"day": "2026-12-01", "of": "butter", "pack": "L1", **change}
    entry, wrong = read_model(PackOpened, data, "this pack", METRIC)
    assert entry is not None, wrong
    (flaw,) = opened_flaws(entry, demo.book, Spoilt(), date(2026, 12, 5))
    assert flaw.path == (key,) and message in flaw.message and flaw.hint


def test_a_card_that_is_lost_is_told_elsewhere(demo: Loaded) -> None:
    entry, _ = read_model(PackOpened, {"day": "2026-12-01", "of": "wick", "pack": "L1"}, "this pack", METRIC)
    assert entry is not None
    (flaw,) = opened_flaws(entry, demo.book, Spoilt({"wick": "wick"}))
    assert flaw.code == "follows"
