"""A quote is for a day that is still to come."""

from __future__ import annotations

from collections.abc import Callable

from click.testing import Result


def test_nothing_is_quoted_for_a_day_that_is_past(run: Callable[..., Result]) -> None:
    late = run("quote", "regatta club cups", "--today", "2026-12-13")
    assert late.exit_code == 1 and "12 Dec 2026, is past" in late.output and '"hand over:"' in late.output
    in_time = run("quote", "regatta club cups", "--today", "2026-12-12")
    assert in_time.exit_code == 0 and "12 Dec 2026 at 10:00" in in_time.output
