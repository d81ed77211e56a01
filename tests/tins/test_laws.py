"""Laws that hold for every tin shape in the register; a new shape is tested by being registered.

Polygons are measured by shapely, volumes integrated by scipy over the polygons: neither knows our formulas.
"""

from __future__ import annotations

import math
from itertools import pairwise
from typing import NamedTuple

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import simpson
from shapely import Polygon
from tests.every import all_seeds, every, many

from tinbook.tins import SHAPES, Shape, Sizes, Tin, read_tin

each_shape = every("key", SHAPES)
# Of each law some four hundred examples, as there are so many shapes; with --all-seeds a hundred of each shape.
examples = many(100 if all_seeds() else 25)
SHARE = st.floats(0.0, 1.0)


class Sample(NamedTuple):
    shape: Shape
    sizes: Sizes
    depth_mm: float


@st.composite
def samples(draw: st.DrawFn, shape: Shape) -> Sample:
    """Any tin the shape believes in, from the limits it states for its own sizes; or any line round a middle."""
    if shape.free:
        return Sample(shape, draw(outlines(shape)), round(draw(st.floats(shape.least_deep_mm, 300.0)), 2))
    sizes: list[float] = []
    for rule in shape.sizes:
        low, high = rule.low_mm, rule.high_mm
        if rule.of is not None:
            low, high = max(low, rule.least * sizes[rule.of]), min(high, rule.most * sizes[rule.of])
        sizes.append(draw(st.floats(low, high)))
    settled = shape.settled(sizes)
    # Sizes put in order (a longer base than its top) may no longer fit inside one another.
    if shape.fault(settled):
        settled = typical(shape)[0]
    return Sample(shape, settled, round(draw(st.floats(shape.least_deep_mm, 300.0)), 2))


@st.composite
def outlines(draw: st.DrawFn, shape: Shape) -> Sizes:
    """A star of any number of points with a like hole in it, or without."""
    radii = draw(st.lists(st.floats(40.0, 400.0), min_size=3, max_size=24))
    turns = [2.0 * math.pi * k / len(radii) for k in range(len(radii))]
    rings = [[(r * share * math.cos(t), r * share * math.sin(t)) for r, t in zip(radii, turns, strict=True)]
             for share in ((1.0, 0.5) if draw(st.booleans()) else (1.0,))]  # fmt: skip
    path = "".join("M" + "L".join(f"{x:.2f} {y:.2f}" for x, y in ring) + "Z" for ring in rings)
    return read_tin(f"outline {path}")[1].sizes_mm


def typical(shape: Shape) -> tuple[Sizes, float]:
    """Sizes and depth the trade sells, or those of the shape's example."""
    tin = read_tin(shape.example)[1]
    return shape.standard[0] if shape.standard else (tin.sizes_mm, tin.brim_mm)


def polygon(shape: Shape, sizes: Sizes, height: float = 1.0) -> Polygon:
    outer, *holes = shape.outline_mm(sizes, height)
    return Polygon(outer, holes)


# A round-bottomed tin has no outline at the very base.
@each_shape
@examples
@given(data=st.data(), height=st.floats(0.01, 1.0))
def test_area_is_the_outlines_area(key: str, data: st.DataObject, height: float) -> None:
    shape, sizes, _ = data.draw(samples(SHAPES[key]))
    assert polygon(shape, sizes, height).is_valid
    assert shape.area_mm2(sizes, height) == pytest.approx(
        shape.parts * polygon(shape, sizes, height).area, rel=1e-4, abs=1e-9
    )
    assert shape.area_mm2(sizes) == shape.area_mm2(sizes, 1.0)


@each_shape
@examples
@given(data=st.data())
def test_perimeter_is_the_outlines_length(key: str, data: st.DataObject) -> None:
    shape, sizes, _ = data.draw(samples(SHAPES[key]))
    drawn = polygon(shape, sizes)
    assert shape.perimeter_mm(sizes) == pytest.approx(shape.parts * drawn.exterior.length, rel=1e-3)
    holes = sum(hole.length for hole in drawn.interiors)
    assert shape.inner_perimeter_mm(sizes) == pytest.approx(holes, rel=1e-3)


@each_shape
@examples
@given(data=st.data())
def test_bounds_contain_the_outline(key: str, data: st.DataObject) -> None:
    shape, sizes, _ = data.draw(samples(SHAPES[key]))
    left, low, right, high = polygon(shape, sizes).bounds
    width, depth = shape.bounds_mm(sizes)
    assert left + right == pytest.approx(0.0, abs=1e-6 * width)
    assert low + high == pytest.approx(0.0, abs=1e-6 * depth)
    assert right - left <= width * (1 + 1e-12)
    assert high - low <= depth * (1 + 1e-12)
    if shape.holes(sizes) == 1:
        assert (right - left, high - low) == pytest.approx((width, depth), rel=1e-4)
        assert shape.stand_mm(sizes) == (shape.parts * width, depth)
    else:
        # A tray is at least the ground its cups take.
        tray = shape.stand_mm(sizes)
        assert tray[0] * tray[1] >= shape.holes(sizes) * width * depth * (1 - 1e-9)


@each_shape
@examples
@given(data=st.data())
def test_an_outline_never_grows_towards_the_base(key: str, data: st.DataObject) -> None:
    # A cake has to come out of its tin.
    shape, sizes, _ = data.draw(samples(SHAPES[key]))
    outlines = [polygon(shape, sizes, height) for height in (0.01, 0.5, 1.0)]
    for lower, upper in pairwise(outlines):
        assert lower.difference(upper).area <= 1e-9 * upper.area


@each_shape
@examples
@given(data=st.data(), share=SHARE)
def test_volume_is_the_outlines_piled_up(key: str, data: st.DataObject, share: float) -> None:
    shape, sizes, depth = data.draw(samples(SHAPES[key]))
    fill = share * depth

    levels = [fill * step / 8 for step in range(9)]
    piled = shape.parts * simpson([polygon(shape, sizes, level / depth).area for level in levels], x=levels)
    assert shape.volume_ml(sizes, depth, fill) == pytest.approx(piled / 1000.0, rel=1e-3, abs=1e-9)


@each_shape
@examples
@given(data=st.data(), share=SHARE)
def test_lengths_doubled_hold_eight_times_as_much(key: str, data: st.DataObject, share: float) -> None:
    shape, sizes, depth = data.draw(samples(SHAPES[key]))
    double = tuple(2.0 * size for size in sizes)
    once = shape.volume_ml(sizes, depth, share * depth)
    assert shape.volume_ml(double, 2.0 * depth, 2.0 * share * depth) == pytest.approx(8.0 * once, rel=1e-9)
    assert shape.area_mm2(double) == pytest.approx(4.0 * shape.area_mm2(sizes), rel=1e-9)
    assert shape.perimeter_mm(double) == pytest.approx(2.0 * shape.perimeter_mm(sizes), rel=1e-9)
    assert shape.bounds_mm(double) == pytest.approx([2.0 * side for side in shape.bounds_mm(sizes)], rel=1e-9)


@each_shape
@examples
@given(data=st.data(), low=st.floats(0.0, 2.0), more=st.floats(1e-3, 1.0))
def test_more_batter_stands_deeper(key: str, data: st.DataObject, low: float, more: float) -> None:
    shape, sizes, depth = data.draw(samples(SHAPES[key]))
    tin = Tin(shape=key, sizes_mm=sizes, depth_mm=depth)
    below, above = low * depth, (low + more) * depth
    assert tin.volume_ml(0.0) == 0.0
    assert tin.volume_ml(above) > tin.volume_ml(below)
    # By no more than the rim's area, which is the widest, and no less than the base's.
    gained = tin.volume_ml(above) - tin.volume_ml(below)
    assert gained <= tin.area_mm2 * (above - below) / 1000.0 * (1 + 1e-9)
    assert gained >= shape.area_mm2(tin.sizes_mm, 0.0) * (above - below) / 1000.0 * (1 - 1e-9)


@each_shape
@examples
@given(data=st.data(), share=st.floats(0.0, 2.0), measured=st.one_of(st.none(), st.floats(50.0, 20000.0)))
def test_fill_undoes_volume(key: str, data: st.DataObject, share: float, measured: float | None) -> None:
    _, sizes, depth = data.draw(samples(SHAPES[key]))
    tin = Tin(shape=key, sizes_mm=sizes, depth_mm=depth, measured_ml=measured)
    assert tin.fill_mm(tin.volume_ml(share * depth)) == pytest.approx(share * depth, rel=1e-9, abs=1e-9 * depth)


@each_shape
@examples
@given(data=st.data(), share=st.floats(0.0, 1.5), measured=st.floats(50.0, 20000.0))
def test_a_measure_scales_every_depth(key: str, data: st.DataObject, share: float, measured: float) -> None:
    _, sizes, depth = data.draw(samples(SHAPES[key]))
    plain, owned = (
        Tin(shape=key, sizes_mm=sizes, depth_mm=depth),
        Tin(shape=key, sizes_mm=sizes, depth_mm=depth, measured_ml=measured),
    )
    assert owned.brim_ml() == pytest.approx(measured, rel=1e-12)
    ratio = measured / plain.brim_ml()
    assert owned.volume_ml(share * depth) == pytest.approx(ratio * plain.volume_ml(share * depth), rel=1e-9)
    assert owned.brim_ml(depth) == pytest.approx(measured, rel=1e-9)
    assert owned.name == plain.name
    assert owned != plain


@each_shape
@examples
@given(data=st.data())
def test_a_tin_is_a_value(key: str, data: st.DataObject) -> None:
    shape, sizes, depth = data.draw(samples(SHAPES[key]))
    tin = Tin(shape=key, sizes_mm=sizes, depth_mm=depth)
    assert tin == Tin(shape=key, sizes_mm=tin.sizes_mm, depth_mm=tin.depth_mm)
    assert hash(tin) == hash(Tin(shape=key, sizes_mm=tin.sizes_mm, depth_mm=tin.depth_mm))
    assert tin != Tin(shape=key, sizes_mm=sizes)
    assert shape.settled(tin.sizes_mm) == tin.sizes_mm
    assert all(isinstance(size, float) for size in tin.sizes_mm)


@each_shape
@examples
@given(data=st.data(), count=st.integers(1, 999), deep=st.booleans())
def test_every_name_is_read_back(key: str, data: st.DataObject, count: int, deep: bool) -> None:
    _, sizes, depth = data.draw(samples(SHAPES[key]))
    tin = Tin(shape=key, sizes_mm=sizes, depth_mm=depth if deep else None)
    for name in tin.full_names:
        assert read_tin(name) == (1, tin)
        assert read_tin(f"{count} {name}") == (count, tin)
        assert read_tin(f"{count} x {name}".upper()) == (count, tin)
    assert tin.name == tin.names[0] and tin.full_name == tin.full_names[0]
    assert tin.size_label in tin.name


@each_shape
def test_standard_tins_are_read_back_by_every_name(key: str) -> None:
    shape = SHAPES[key]
    for sizes, depth in shape.standard:
        tin = Tin(shape=key, sizes_mm=sizes, depth_mm=depth)
        for name in tin.full_names:
            assert read_tin(name) == (1, tin)
        plain = tin if shape.named_size(sizes) else Tin(shape=key, sizes_mm=sizes)
        for name in plain.names:
            assert read_tin(name) == (1, plain)


@each_shape
def test_every_word_for_a_shape_is_read(key: str) -> None:
    shape = SHAPES[key]
    _, tin = read_tin(shape.example)
    assert tin.shape == key
    if shape.extra_example:
        assert read_tin(shape.extra_example)[1].shape == key
    for word in shape.words:
        assert read_tin(Tin(shape=key, sizes_mm=tin.sizes_mm, depth_mm=100.0).full_name.replace(key, word))[1] == Tin(
            shape=key, sizes_mm=tin.sizes_mm, depth_mm=100.0
        )
    for named in shape.named:
        expected = Tin(shape=key, sizes_mm=named.sizes_mm, depth_mm=named.depth_mm)
        for size in (named.name, *named.also):
            assert read_tin(f"2 {size} {key}") == (2, expected)
            assert read_tin(f"{key} {size}") == (1, expected)
        for noun in named.nouns:
            assert read_tin(f"12 {noun}") == (12, expected)


@each_shape
@examples
@given(needed=st.floats(1.0, 150.0))
def test_the_least_depth_holds_and_no_lesser_one_does(key: str, needed: float) -> None:
    shape = SHAPES[key]
    for sizes, usual in shape.standard:
        named = shape.named_size(sizes)
        # A named size brings its depth with it, and half a ball is half as deep as it is wide.
        sold = (named.depth_mm,) if named else (sizes[0] / 2,) if key in ("dome", "ball") else shape.depths_mm
        holding = [depth for depth in sold if depth >= needed - 1e-6]
        assert Tin(shape=key, sizes_mm=sizes).least_depth(needed) == (min(holding) if holding else None)
        assert usual in shape.depths_mm


@each_shape
def test_what_a_shape_says_of_itself(key: str) -> None:
    shape = SHAPES[key]
    assert shape.key == key
    assert shape.key in shape.words
    assert shape.title and shape.example
    assert shape.kept in ("depth", "share")
    assert list(shape.depths_mm) == sorted(set(shape.depths_mm))
    assert len(shape.size_names) == len(set(shape.size_names)) == len(shape.sizes)
    assert shape.free or len(shape.sizes) == shape.main + shape.extras
    assert bool(shape.extra_word) == bool(shape.extras)
    areas = [shape.area_mm2(sizes) for sizes, _ in shape.standard]
    assert areas == sorted(areas) and len(set(areas)) == len(areas) and bool(areas) != shape.free
    # Other shapes' words would be read as those shapes.
    others = {word for other in SHAPES.values() if other is not shape for word in other.words}
    assert not others & set(shape.words)
    for named in shape.named:
        assert (named.sizes_mm, named.depth_mm) in shape.standard


@each_shape
def test_a_developers_mistake_raises(key: str) -> None:
    shape = SHAPES[key]
    sizes, depth = typical(shape)
    for wrong in (
        lambda: Tin(shape=f"{key}ish", sizes_mm=sizes),
        lambda: Tin(shape=key, sizes_mm=()),
        lambda: Tin(shape=key, sizes_mm=(*sizes, 100.0)),
        lambda: Tin(shape=key, sizes_mm=tuple(size * 1000.0 for size in sizes)),
        lambda: Tin(shape=key, sizes_mm=tuple(size / 1000.0 for size in sizes)),
        lambda: Tin(shape=key, sizes_mm=tuple(math.nan for _ in sizes)),
        lambda: Tin(shape=key, sizes_mm=sizes, depth_mm=2000.0),
        lambda: Tin(shape=key, sizes_mm=sizes, depth_mm=0.0),
        lambda: Tin(shape=key, sizes_mm=sizes, depth_mm=math.nan),
        lambda: Tin(shape=key, sizes_mm=sizes, depth_mm=depth, measured_ml=0.0),
        lambda: Tin(shape=key, sizes_mm=sizes, depth_mm=depth, measured_ml=math.inf),
        lambda: Tin(shape=key, sizes_mm=sizes, depth_mm=None, measured_ml=1000.0),
        lambda: Tin(shape=key, sizes_mm=sizes).volume_ml(-1.0),
        lambda: Tin(shape=key, sizes_mm=sizes).fill_mm(-1.0),
        lambda: Tin(shape=key, sizes_mm=sizes).volume_ml(math.nan),
    ):
        with pytest.raises(ValueError):
            wrong()
