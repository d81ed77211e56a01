"""What a baker writes for a tin, and the exact words that answer what cannot be read."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.every import every

from tinbook.tins import SHAPES, Tin, read_tin
from tinbook.units import Misread


@every(
    ("text", "count", "name"),
    [
        ("2 round 15 cm x 7.5 cm", 2, "round 15 cm x 7.5 cm"),
        ("round 20 cm", 1, "round 20 cm"),
        ("round 8 in x 3 in", 1, "round 20 cm x 7.5 cm"),
        ("round 8in x 3in", 1, "round 20 cm x 7.5 cm"),
        ('3 x square 8" × 2"', 3, "square 20 cm x 5 cm"),
        ("round 20cmx7.5cm", 1, "round 20 cm x 7.5 cm"),
        ("Round tin 20 cm, 7.5 cm deep", 1, "round 20 cm x 7.5 cm"),
        ("2 round tins 20 cm x 7.5 cm deep", 2, "round 20 cm x 7.5 cm"),
        ("round 20 cm, depth 7 cm", 1, "round 20 cm x 7 cm"),
        ("round 20 cm,", 1, "round 20 cm"),
        ("round 203 mm", 1, "round 20.3 cm"),
        ("round 203.2 mm", 1, "round 203.2 mm"),
        ("round 8.25 in x 1½ in", 1, "round 209.55 mm x 4 cm"),
        ("rectangle 33 x 23 x 5 cm", 1, "rectangle 23 x 33 cm x 5 cm"),
        ("rectangle 9 by 13 in", 1, "rectangle 23 x 33 cm"),
        ("rectangular tin 9 x 13 x 2 inches", 1, "rectangle 23 x 33 cm x 5 cm"),
        ("2 lb loaf", 1, "2 lb loaf"),
        ("2 x 2 lb loaf tins", 2, "2 lb loaf"),
        ("2 2lb loaf", 2, "2 lb loaf"),
        ("1-lb loaf", 1, "1 lb loaf"),
        ("loaf 2 pounds", 1, "2 lb loaf"),
        ("loaf 23 cm x 13 cm x 7 cm", 1, "2 lb loaf"),
        ("loaf 23 cm x 13 cm x 7 cm, base 20 cm x 10 cm", 1, "2 lb loaf"),
        ("loaf 25 x 13 x 7 cm base 22 x 11 cm", 1, "loaf 25 x 13 cm x 7 cm, base 22 x 11 cm"),
        ("loaf 25 x 13 cm, base 22 x 11 cm, 7 cm deep", 1, "loaf 25 x 13 cm x 7 cm, base 22 x 11 cm"),
        ("ring 20 cm x 7.5 cm", 1, "ring 20 cm x 7.5 cm"),
        ("ring 8 in, tube 3 in", 1, "ring 20 cm, tube 7.5 cm"),
        ("savarin 21 cm x 7.5 cm, tube 6 cm", 1, "ring 21 cm x 7.5 cm, tube 6 cm"),
        ("tube 23 cm x 10 cm, tube 7 cm", 1, "ring 23 cm x 10 cm, tube 7 cm"),
        ("standard cups", 1, "standard cups"),
        ("24 standard cups", 24, "standard cups"),
        ("24 muffin cups", 24, "standard cups"),
        ("12 Muffins", 12, "standard cups"),
        ("12 mini muffins", 12, "mini cups"),
        ("12 bun cups", 12, "fairy cups"),
        ("12 fairy cakes", 12, "fairy cups"),
        ("12 cups 8 cm x 4 cm, base 6 cm", 12, "cups 8 cm x 4 cm, base 6 cm"),
        ("2 heart tins 8 in x 3 in", 2, "heart 20 cm x 7.5 cm"),
        ("hexagonal tin 23 cm, 7.5 cm deep", 1, "hexagon 23 cm x 7.5 cm"),
        ("oval 20 x 15 x 7.5 cm", 1, "oval 15 x 20 cm x 7.5 cm"),
        ("half sheet", 1, "half sheet"),
        ("2 quarter sheet pans", 2, "quarter sheet"),
        ("dome 15 cm", 1, "dome 15 cm"),
        ("ball 15 cm", 1, "ball 15 cm"),
        ("dome 20 cm x 8 cm", 1, "dome 20 cm x 8 cm"),
        ("tapered ring 9 in x 8 in x 4 in", 1, "tapered ring 23 x 20 cm x 10 cm"),
        ("tapered ring 21 x 24 x 10 cm, tube 5 x 7 cm", 1, "tapered ring 24 x 21 cm x 10 cm, tube 7 x 5 cm"),
        ("fluted ring 10 in x 9 cm", 1, "fluted ring 25 cm x 9 cm"),
        ("fluted ring 24 cm x 10 cm, tube 6 cm", 1, "fluted ring 24 cm x 10 cm, tube 6 cm"),
        ("outline M0 0H80V160H0Z x 5 cm", 1, "outline M-40 -80L40 -80L40 80L-40 80Z x 5 cm"),
        ("2 outline m0,0 h80 v160 h-80 z, 5 cm deep", 2, "outline M-40 -80L40 -80L40 80L-40 80Z x 5 cm"),
    ],
)
def test_is_understood(text: str, count: int, name: str) -> None:
    found, tin = read_tin(text)
    assert (found, tin.full_name) == (count, name)


def test_inches_are_the_trades_centimetres_and_millimetres_are_exact() -> None:
    assert (
        read_tin("round 8 in x 3 in")
        == read_tin("round 20 cm x 7.5 cm")
        == (1, Tin(shape="round", sizes_mm=(200.0,), depth_mm=75.0))
    )
    assert read_tin("round 203.2 mm x 76.2 mm") == (1, Tin(shape="round", sizes_mm=(203.2,), depth_mm=76.2))
    assert read_tin("rectangle 12 x 18 in") == (1, Tin(shape="rectangle", sizes_mm=(300.0, 460.0)))


SHAPE_LIST = (
    "the shapes are round, square, rectangle, sheet, loaf, ring, tapered ring, fluted ring, heart, hexagon, octagon, "
    "petal, oval, dome, ball, outline and cups"
)
ROUND = 'write "round 20 cm x 7.5 cm"'
RING = '"ring 21 cm x 7.5 cm, tube 6 cm"'
FIGURES = 'start with the shape, or with how many in figures: "2 round 20 cm x 7.5 cm"'


@every(
    ("text", "at", "message", "hint"),
    [
        # The shape
        ("rond 20 cm", "rond", 'there is no tin shape called "rond"', 'did you mean "round"?'),
        ("2 sqare 20 cm", "sqare", 'there is no tin shape called "sqare"', 'did you mean "square"?'),
        ("rıng 20 cm", "rıng", 'there is no tin shape called "rıng"', 'did you mean "ring"?'),
        ("bathtub 20 cm", "bathtub", 'there is no tin shape called "bathtub"', SHAPE_LIST),
        ("20 cm x 7.5 cm", "20 cm x 7.5 cm", "what shape is the tin?",
         f'put the shape first: "round 20 cm"; {SHAPE_LIST}'),
        ("", "", "no tin is written here", 'write a shape and its size: "round 20 cm"'),
        ("24 muffin", "muffin", '"muffin" does not name a shape', 'did you mean "standard cups"?'),
        # Before the shape
        ("2 20 cm round", "2 20 cm", 'the size is written before "round"; put the shape first', ROUND),
        ("0 round 20 cm", "0", "no tins at all", "write how many, from 1 to 999"),
        ("1000 round 20 cm", "1000", "1000 tins are more than any kitchen holds",
         "write how many, from 1 to 999"),
        ("1.5 round 20 cm", "1.5", '"1.5" is not a number of tins', "tins come whole: write 1, 2 or 3"),
        ("½ round 20 cm", "½", '"½" is not a number of tins', "tins come whole: write 1, 2 or 3"),
        ("two round 20 cm", "two", '"two" is not understood before "round"', FIGURES),
        ("2 deep round 20 cm", "deep", '"deep" is not understood before "round"', FIGURES),
        ("3 lb loaf", "3 lb", 'there is no loaf tin called "3 lb"', 'did you mean "2 lb"?'),
        ("12 large cups", "large", 'there is no cup called "large"',
         "the sizes are mini, fairy, standard and jumbo"),
        ("12 jumbi cups", "jumbi", 'there is no cup called "jumbi"', 'did you mean "jumbo"?'),
        # Sizes
        ("2 round", "2 round", "a round tin needs its diameter", ROUND),
        ("rectangle 20 cm", "rectangle 20 cm", "a rectangular tin needs its long side too",
         'write "rectangle 23 cm x 33 cm x 5 cm"'),
        ("cups", "cups", "which cups?",
         'there are mini, fairy, standard and jumbo: write "12 standard cups"'),
        ("round 20 cm x 7.5 cm x 3 cm", "3 cm", "too many sizes for a round tin", ROUND),
        ("ring 20 cm x 6 cm x 8 cm", "8 cm", "too many sizes for a ring tin", f"write {RING}"),
        ("ring 21 cm x 7.5 cm", "21 cm", "this ring tin needs its tube too",
         f"write it after a comma: {RING}"),
        ("ring 20 cm, tube", "tube", '"tube" should be followed by the tube diameter', f"write {RING}"),
        ("ring 20 cm, tube 25 cm", "25 cm", "the tube, 25 cm, is wider than the ring, 20 cm",
         "the ring's diameter comes first, the tube after the comma"),
        ("ring 20 cm, tube 18 cm", "18 cm", "a tube of 18 cm leaves next to no room in a ring of 20 cm",
         "measure the tube across the middle, at the rim"),
        ("ring 20 cm, tube 5 cm, tube 6 cm", "tube 6 cm", "the tube is written twice", "write it once"),
        ("loaf 20 x 10 x 7 cm, base 9 cm", "base 9 cm",
         '"base" should be followed by the base length and base width',
         'write "loaf 25 cm x 13 cm x 7 cm, base 22 cm x 11 cm"'),
        ("loaf 20 x 10 x 7 cm, base 23 x 9 cm", "23",
         "the base length, 23 cm, is larger than the length, 20 cm",
         "measure the top inside the rim, and the base inside"),
        ("loaf 20 x 10 x 7 cm, base 2 x 15 cm", "2",
         "the base width, 2 cm, is very small for a tin 10 cm across", "4 cm is the least the book accepts"),
        ("round 1 cm", "1 cm", "1 cm is too small for the diameter of a round tin",
         "it should be between 2 cm and 100 cm"),
        ("rectangle 20 cm x 200 cm", "200 cm", "200 cm is too large for the long side of a rectangular tin",
         "it should be between 2 cm and 100 cm"),
        ("12 cups 8 mm, base 5 mm", "8 mm", "8 mm is too small for the top diameter of a cup",
         "it should be between 2 cm and 15 cm"),
        ("round 20 cm x 2 mm", "2 mm", "2 mm is too shallow for a round tin",
         "the depth should be between 1 cm and 30 cm"),
        ("round 20 cm x 50 cm", "50 cm", "50 cm is too deep for a round tin",
         "the depth should be between 1 cm and 30 cm"),
        ("round 20 cm x 5 cm, 7 cm deep", "7 cm deep", "the depth is written twice", "write it once"),
        ("2 lb loaf x 7 cm", "7 cm", '"2 lb" already says the size', "leave the lengths out, or the name"),
        ("2 lb loaf 1 lb", "1 lb", '"2 lb" and "1 lb" are two sizes', "write one"),
        # What follows
        ("round 20 cm, loose base", "loose base", '"loose base" is not understood after a round tin', ROUND),
        ("ring 20 cm, base 5 cm", "base 5 cm", '"base 5 cm" is not understood after a ring tin',
         'write "ring 20 cm x 7.5 cm"'),
        ("24 cup tray", "tray", '"tray" could mean a cup or a whole tray',
         'count the cups: one tray is "12 standard cups"'),
        ("2 mini cup trays", "trays", '"trays" could mean a cup or a whole tray',
         'count the cups: one tray is "24 mini cups"'),
    ],
)  # fmt: skip
def test_is_refused_in_these_words(text: str, at: str, message: str, hint: str) -> None:
    with pytest.raises(Misread) as caught:
        read_tin(text)
    wrong = caught.value
    assert (wrong.message, wrong.hint) == (message, hint)
    assert text[wrong.start : wrong.end] == at


@every(
    ("text", "at"),
    [
        ("round 20", "20"),
        ("round 20 cm x 7,5 cm", "7,5"),
        ("round -20 cm", "-20"),
        ("round 20 kg", "20 kg"),
        ("rectangle 20 x 30 kg", "30 kg"),
        ("round 2 m", "m"),
        ("round 20 cm x 3 ft", "ft"),
        ("round nan cm", "nan"),
        ("round 20 cm (loose base)", "(loose base)"),
        ("ring 20 cm, tube 5 cmm", "cmm"),
    ],
)
def test_a_misread_length_is_pointed_at_in_the_whole_text(text: str, at: str) -> None:
    with pytest.raises(Misread) as caught:
        read_tin(text)
    assert text[caught.value.start : caught.value.end] == at
    assert caught.value.message and caught.value.hint


PIECES = st.sampled_from(
    [*SHAPES, "tin", "tray", "muffin", "muffins", "mini", "2 lb", "x", "×", "by", ",", "base", "tube",
     "depth", "deep", "20 cm", "8 in", '3"', "5", "½", "0", "-", "7,5", "1e9", "cm", "²", "٣", "\n", "\t",
     "(", "é"]
)  # fmt: skip


@given(text=st.one_of(st.text(max_size=60), st.lists(PIECES, max_size=9).map(" ".join)))
def test_any_text_is_a_tin_or_a_misread_within_it(text: str) -> None:
    try:
        count, tin = read_tin(text)
    except Misread as wrong:
        assert wrong.message and wrong.hint
        assert 0 <= wrong.start <= wrong.end <= len(text)
    else:
        assert 1 <= count <= 999
        assert read_tin(tin.full_name) == (1, tin)
