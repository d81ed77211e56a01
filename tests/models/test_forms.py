"""Solids, sheets and cutters as a baker writes them."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.every import every

from tinbook.models.forms import read_cutter, read_one_or_two, read_sheet, read_solid, read_two
from tinbook.units import METRIC, Measures, Misread


@every(
    ("text", "form", "sizes", "how", "to"),
    [
        ("ball 20 mm", "ball", (20,), "", ()),
        ("Half egg 20 x 30 mm", "egg", (20, 30), "half", ()),
        ("frustum 3 cm x 6 cm, top 18 mm", "frustum", (30, 60, 18), "", ()),
        ("slab 20 mm x 30 mm x 8 mm", "slab", (20, 30, 8), "", ()),
        ("teardrop 1/2 in x 1 in", "teardrop", (12.7, 25.4), "", ()),
        ("flattened ball 30 mm, to 40 mm x 44 mm", "ball", (30,), "flattened", (40, 44)),
    ],
)
def test_a_solid(text: str, form: str, sizes: tuple[float, ...], how: str, to: tuple[float, ...]) -> None:
    made = read_solid(text, METRIC)
    assert (made.form, made.how, made.to_mm) == (form, how, to)
    assert made.sizes_mm == pytest.approx(sizes)


def test_an_outline_is_centred_and_turned_up() -> None:
    sheet = read_sheet("M10 10H40V30H10Z", METRIC)
    assert sheet.form == "outline"
    assert sorted(sheet.rings[0]) == [(-15.0, -10.0), (-15.0, 10.0), (15.0, -10.0), (15.0, 10.0)]
    peak = read_sheet("M0 20H40L20 0Z", METRIC)
    assert max(peak.rings[0], key=lambda point: point[1]) == (0.0, 10.0)


def test_a_cutter_may_be_a_share_of_the_width() -> None:
    assert read_cutter("round 3/4", METRIC).share == 0.75
    assert read_cutter("scalloped round 38 mm", METRIC).sizes_mm == (38.0,)
    assert read_one_or_two("12 mm x 6 mm", METRIC).mm == (12.0, 6.0)


@every(
    ("read", "text", "message", "hint"),
    [
        (read_solid, "bal 20 mm", 'there is no solid called "bal"', '"ball"'),
        (read_solid, "ball", "a ball needs a size", "such as 20 mm"),
        (read_solid, "egg 20 mm", "an egg needs two measurements, not one", "diameter x length"),
        (read_solid, "frustum 30 mm x 60 mm", "needs its top", "after a comma"),
        (read_solid, "cone 30 mm x 60 mm, top 4 mm", "no top of its own", "frustum"),
        (read_solid, "ball 30 mm, to 40 mm x 44 mm", "only a flattened piece", "flattened"),
        (read_solid, "flattened ball 30 mm", "what size is it pressed to", "40 mm x 44 mm"),
        (read_solid, "egg 30 mm x 20 mm", "longer than it is across", "width first"),
        (read_solid, "ball 0.1 mm", "too small for a part", "150 cm"),
        (read_sheet, "M0 0H80V160", "the outline is open", "close the line with Z"),
        (read_sheet, "M0 0L40 40L40 0L0 40Z", "crosses or touches itself", "round the part"),
        (read_sheet, "M0 0H9V9Z M20 20H30V30Z", "is outside the first", "round the part first"),
        (read_cutter, "round 4/3", "not a fraction of the width", "round 3/4"),
        (read_two, "12 mm", "this needs two measurements, not one", "thickness x length"),
    ],
)
def test_what_cannot_be(read: Callable[[str, Measures], Any], text: str, message: str, hint: str) -> None:
    with pytest.raises(Misread, match=message) as told:
        read(text, METRIC)
    assert hint in told.value.hint
    assert told.value.hint
    assert 0 <= told.value.start < told.value.end <= len(text) + 1


@given(
    st.one_of(
        st.text(max_size=40), st.sampled_from(["ball", "egg", "M0 0"]).flatmap(lambda a: st.text().map(a.__add__))
    )
)
def test_any_text_is_read_or_misread(text: str) -> None:
    for read in (read_solid, read_sheet, read_cutter, read_two, read_one_or_two):
        try:
            read(text, METRIC)
        except Misread as error:
            assert error.message and error.hint
