"""How parts dry, and which of them choke."""

from __future__ import annotations

from tinbook.facts import Facts
from tinbook.plans.techniques.drying import drying, small_hard


def test_thin_parts_dry_as_sheets(facts: Facts) -> None:
    """Common practice: sheet parts 12-24 h, solid figures 24-72 h."""
    thin, thick = drying(1.0, facts), drying(40.0, facts)
    assert (thin.low_h, thin.high_h, thin.sheet, thin.soft_within) == (12.0, 24.0, True, False)
    assert (thick.low_h, thick.high_h, thick.sheet, thick.soft_within) == (24.0, 72.0, False, True)


def test_what_goes_into_the_cylinder_chokes(facts: Facts) -> None:
    """16 CFR 1501.4: 31.7 mm across, 57.1 mm at its deepest (from memory); in whatever order sizes are given."""
    assert small_hard((31.0, 57.0, 31.0), facts) and small_hard((57.0, 31.0, 5.0), facts)
    assert not small_hard((32.0, 32.0, 40.0), facts)
    assert not small_hard((10.0, 10.0, 58.0), facts)
    assert not small_hard((0.0, 10.0, 10.0), facts)
