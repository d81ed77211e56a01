"""Colours on parts: pots by weight, what the law warns of, labels that can be read on their swatch."""

from __future__ import annotations

from pathlib import Path

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from tinbook.loading import Loaded
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.techniques.colours import (
    Colouring,
    colour_needs,
    label_on,
    law_said,
    luminance,
    technique_colours,
    technique_law,
)
from tinbook.plans.techniques.pastes import paste_called

ROOT = Path(__file__).parents[3] / "recipes"
PHRASE = "may have an adverse effect on activity and attention in children"
"""Regulation (EC) 1333/2008, Annex V, word for word."""
SIX = {"E102", "E104", "E110", "E122", "E124", "E129"}


def test_pots_go_by_the_paste(demo: Loaded) -> None:
    red = Colouring.called("lamp red", demo.book, demo.facts)
    assert red is not None
    assert [pot.for_g(250.0) for pot in red.pots] == [pytest.approx(6.0), pytest.approx(0.25)]
    assert [each.key for each in red.warned] == ["E129"]
    assert red.deepens
    assert Colouring.called(None, demo.book, demo.facts) is None


def test_paste_of_one_colour_is_one_lump(demo: Loaded) -> None:
    paste = paste_called("sugarpaste", demo.book, demo.facts)
    red = Colouring.called("lamp red", demo.book, demo.facts)
    needs = colour_needs([(paste, red, 10.0), (paste, None, 5.0), (paste, red, 2.5)])
    assert [(need.colour and need.colour.name, need.mass_g) for need in needs] == [("lamp red", 12.5), (None, 5.0)]
    assert [need.law and spell(need.law) for need in needs] == [f"E129 (allura red): {PHRASE}", None]


def test_the_words_of_the_law(demo: Loaded) -> None:
    colours = demo.facts.colours
    assert {key for key, each in colours.items() if law_said([each])} == SIX
    told = law_said([colours["E122"], colours["E133"], colours["E102"], colours["E122"]])
    assert told is not None and spell(told) == f"E122 (carmoisine), E102 (tartrazine): {PHRASE}"
    assert law_said([colours["E133"]]) is law_said([]) is None


def test_the_law_of_a_technique_is_of_its_parts_and_marks(demo: Loaded) -> None:
    """Against the sources, read without any of ours: which colours of the house hold one of the six."""
    house = yaml.safe_load((ROOT / "house/colours.yaml").read_text("utf-8"))["colours"]
    flagged = {name for name, each in house.items() if SIX & set(each["additives"])}
    assert flagged
    for slug, technique in demo.book.techniques.items():
        source = yaml.safe_load((ROOT / f"techniques/{slug}.yaml").read_text("utf-8"))
        used = {each.get("colour") for each in (*source.get("parts", ()), *source.get("repeats", ()))}
        law = technique_law(technique, demo.book, demo.facts)
        assert bool(law) == bool(used & flagged), slug
        assert not law or spell(law).endswith(PHRASE)
        assert set(technique_colours(technique)) == used - {None}


def test_contrast_by_wcag() -> None:
    """WCAG 2.2: white on black is 21 to 1; #767676 is the grey that white reads on at 4.54."""
    assert luminance("#FFFFFF") == pytest.approx(1.0)
    assert label_on("#000000") == ("white", pytest.approx(21.0))
    assert (1.05) / (luminance("#767676") + 0.05) == pytest.approx(4.54, abs=0.005)


@given(st.integers(0, 0xFFFFFF))
def test_a_label_can_always_be_read(value: int) -> None:
    assert label_on(f"#{value:06X}")[1] >= 4.5
