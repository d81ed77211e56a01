"""A hundred and more spoilt sources of fixed seeds: read, written as pages, pasted. The long run is in trials.py."""

from __future__ import annotations

import pytest
from tests.every import all_seeds, every
from tests.fuzz.mutations import CARDS, RAW, a_book, a_note, a_page
from tests.fuzz.trials import TRIALS

LOTS = 10 if all_seeds() else 5
EACH = {"read": 20, "render": 2, "paste": 30}
FELL = {"read": (108_984,), "render": (3_002_357,), "paste": (5_005_905,)}
"""Seeds of the long run that fell over once, by trial."""


@every("lot", range(LOTS))
@every("trial", TRIALS)
def test_nothing_falls_over(trial: str, lot: int) -> None:
    for seed in range(lot * EACH[trial], (lot + 1) * EACH[trial]):
        try:
            TRIALS[trial](seed)
        except Exception as error:
            raise AssertionError(f"{trial}, seed {seed}") from error


@pytest.mark.parametrize("trial", FELL)
def test_what_fell_over_once_stands(trial: str) -> None:
    for seed in FELL[trial]:
        TRIALS[trial](seed)


def test_seeds_are_fixed_and_spoil_something() -> None:
    assert a_book(7) == a_book(7) and (a_note(7), a_page(7)) == (a_note(7), a_page(7))
    spoilt = [
        name
        for seed in range(40)
        for name, raw in a_book(seed)[0].items()
        if name != CARDS and raw.decode("utf-8", "replace") != RAW[name]
    ]
    assert len(spoilt) >= 40 and len(set(spoilt)) >= 10
