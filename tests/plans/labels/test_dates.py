"""The date on a label: by what keeps least, where all of it can be kept."""

from __future__ import annotations

from datetime import date

from tests.plans.labels.conftest import Kitchen

from tinbook.loading import Loaded
from tinbook.models.keeping import COOL, FRIDGE, read_keep
from tinbook.plans.cakes.whole import whole_cake
from tinbook.plans.labels.dates import BEST_BEFORE, USE_BY, keep_of, keeps_until, spoils
from tinbook.units import METRIC

MADE = date(2026, 12, 30)


def test_whole_days_after_the_day_it_is_made() -> None:
    until = keeps_until(read_keep("3 days", METRIC), MADE, spoils=False)
    assert (until.day, until.days, until.kind, until.place) == (date(2027, 1, 2), 3, BEST_BEFORE, COOL)
    assert keeps_until(read_keep("2 days in the fridge", METRIC), MADE, spoils=True).kind == USE_BY
    assert keeps_until(read_keep("36 h", METRIC), MADE, spoils=False).days == 1


def test_a_mixture_is_kept_cool_if_it_can_be(demo: Loaded) -> None:
    keep, gaps = keep_of("american-buttercream", None, demo.book, demo.facts)
    assert keep is not None and (keep.place, keep.minutes) == (COOL, 2 * 24 * 60) and not gaps
    keep, _ = keep_of("lemon-curd", None, demo.book, demo.facts)
    assert keep is not None and keep.place == FRIDGE


def test_a_cake_never_keeps_longer_than_a_part_of_it_in_that_place(demo: Loaded) -> None:
    """Sponge 3 days, somewhere cool; buttercream 2 days cool or a week in the fridge: 3 days in the fridge."""
    cake = whole_cake("night-watch-cake", demo.book.cakes["night-watch-cake"], demo.book, demo.facts)
    keep, gaps = keep_of("night-watch-cake", cake, demo.book, demo.facts)
    assert keep is not None and not gaps and (keep.place, keep.minutes) == (FRIDGE, 3 * 24 * 60)


def test_what_nobody_says_is_a_gap(kitchen: Kitchen) -> None:
    loaded = kitchen("200 g flour")
    silent = loaded.book.mixtures["cake"].model_copy(update={"keeps_for": ()})
    from dataclasses import replace

    book = replace(loaded.book, mixtures={"cake": silent})
    keep, gaps = keep_of("cake", None, book, loaded.facts)
    assert keep is None and [gap.what.key for gap in gaps] == ["gap_keeps"] and gaps[0].address == "mixtures/cake"


def test_what_spoils_quickly(demo: Loaded) -> None:
    assert spoils(["double cream"], demo.book) and not spoils(["butter", "no such card"], demo.book)
