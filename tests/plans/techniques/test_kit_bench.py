"""What the browser is handed of a technique."""

from __future__ import annotations

from typing import Any

from tinbook.loading import Loaded
from tinbook.models import Technique, read_model
from tinbook.plans.techniques.kit_bench import technique_bench


def technique(**keys: Any) -> Technique:
    base = {"name": "Stack", "purpose": "To stand.", "steps": ["Set it down."]}
    made, flaws = read_model(Technique, {**base, **keys}, "a technique")
    assert made is not None, flaws
    return made


def test_the_browser_is_handed_one_persons_kit(demo: Loaded) -> None:
    made = technique(tools=[{"tool": "saw", "count": "2", "shared": "yes"}], materials=["300 g sugarpaste"])
    handed = technique_bench(made, demo.book, demo.facts)
    assert handed.tools == ((2, True),)
    assert (handed.lines[0].unit, handed.lines[0].amount, handed.lines[0].mass_g) == ("g", 300, 300)
