"""The table of every tin, worked out again from the files of the demo book.

Nothing is shared with the plans but the tins' outlines and the published weights: lines are read here with a pattern of
five words, sums are exact fractions, areas and volumes are shapely's and scipy's, halves are rounded up as fractions.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cache
from math import ceil, floor
from pathlib import Path
from typing import Any

import pytest
import yaml
from scipy.integrate import simpson
from scipy.optimize import brentq
from shapely import Polygon
from tests.every import every

from tinbook import facts as room
from tinbook.loading import Loaded
from tinbook.plans.base.asking import Query
from tinbook.plans.base.result import Row
from tinbook.plans.tables import TABLES
from tinbook.tins import SHAPES, Tin, read_tin, standard_tins

RECIPES = Path(__file__).parents[2] / "recipes"
LINE = re.compile(r"(?P<number>[\d. /½¼¾]+) ?(?P<unit>kg|g|ml|tsp|tbsp|pinch|)(?:es)? (?P<name>[^,]+)")
SPOON_ML = {"tsp": Fraction(5), "tbsp": Fraction(15), "pinch": Fraction(5, 16), "US cup": Fraction("236.5882365")}
# An inscribed polygon of 360 sides is short of its circle by 0.005 %.
NEAR = 2e-4
UNIT = {"g": "g", "ml": "ml", "tsp": "tsp", "tbsp": "tbsp", "": "pieces"}


def read(path: Path) -> Any:
    return yaml.load(path.read_text("utf-8"), Loader=yaml.BaseLoader)


@cache
def facts(name: str) -> Any:
    return read(Path(room.__file__).parent / "data" / f"{name}.yaml")


@cache
def house(name: str) -> Any:
    return read(RECIPES / "house" / f"{name}.yaml")


def number(text: str) -> Fraction:
    for sign, part in {"½": " 1/2", "¼": " 1/4", "¾": " 3/4"}.items():
        text = text.replace(sign, part)
    return sum((Fraction(part) for part in text.split()), Fraction(0))


@dataclass(frozen=True)
class Line:
    """One line as the oracle reads it; `amount` in `unit`, the one it is scaled in."""

    key: str
    unit: str
    amount: Fraction
    mass_g: Fraction
    egg: bool
    raises: bool


def card_of(word: str) -> tuple[str, Mapping[str, Any]]:
    for name, card in house("ingredients")["ingredients"].items():
        also = card.get("also", [])
        words = {name, *([also] if isinstance(also, str) else also)}
        if word in words or word.removesuffix("s") in words:
            return name, card
    raise AssertionError(f"no card for {word}")


def g_per_ml(card: Mapping[str, Any]) -> Fraction:
    if "weighs as" in card:
        return Fraction(facts("densities")[card["weighs as"]]["value"])
    grams, _, volume = card["weighs"].partition(" g per ")
    return Fraction(grams) / SPOON_ML[volume] if volume else Fraction(card["weighs"].removesuffix(" g/ml"))


def egg_g(part: str) -> Fraction:
    shares = facts("numbers")
    share = {
        "whole egg": 1 - Fraction(shares["shell share of egg"]["value"]),
        "egg white": Fraction(shares["white share of egg"]["value"]),
        "egg yolk": Fraction(shares["yolk share of egg"]["value"]),
    }[part]
    return Fraction(facts("eggs")[house("house")["eggs"]]["typical_g"]) * share


def line_of(written: Any) -> Line:
    text, part = (written, "") if isinstance(written, str) else (written["take"], written.get("part", ""))
    found = LINE.match(text)
    assert found, text
    amount, unit = number(found["number"]), found["unit"]
    name, card = card_of(found["name"].strip())
    key = "_".join(f"{part} {name}".replace("-", " ").replace("'", "").split())
    counted = card.get("each", "")
    if unit in ("g", "kg"):
        mass_g = amount * (1000 if unit == "kg" else 1)
        unit, amount = "g", mass_g
    elif unit in SPOON_ML:
        mass_g = amount * SPOON_ML[unit] * g_per_ml(card)
        if unit == "pinch":
            unit, amount = "tsp", amount / 16
    elif unit == "ml":
        mass_g = amount * g_per_ml(card)
    else:
        each = egg_g(counted) if counted.startswith(("whole", "egg")) else Fraction(counted.removesuffix(" g"))
        mass_g = amount * each
    return Line(key, unit, amount, mass_g, unit == "" and counted == "whole egg", card.get("raises") == "yes")


# Tins by their outlines


def outline(tin: Tin, height: float = 1.0) -> Polygon:
    outer, *holes = SHAPES[tin.shape].outline_mm(tin.sizes_mm, height)
    return Polygon(outer, holes)


@cache
def depth_of(tin: Tin) -> float:
    if tin.depth_mm:
        return tin.depth_mm
    return next((depth for sizes, depth in SHAPES[tin.shape].standard if sizes == tin.sizes_mm), 75.0)


@cache
def geometry_ml(tin: Tin, fill_mm: float) -> float:
    """Areas piled up; above the rim the wall goes straight up."""
    depth, rim = depth_of(tin), outline(tin).area
    if outline(tin, 0.0).area == rim:
        return rim * fill_mm / 1000
    level = min(fill_mm, depth)
    heights = [level * step / 8 for step in range(9)]
    inside = simpson([outline(tin, height / depth).area for height in heights], x=heights)
    return float(inside + rim * max(0.0, fill_mm - depth)) / 1000


def ml(tin: Tin, fill_mm: float) -> float:
    measured = measures().get((tin.shape, tin.sizes_mm, tin.depth_mm))
    scale = measured / geometry_ml(tin, depth_of(tin)) if measured else 1.0
    return geometry_ml(tin, fill_mm) * scale


BY_SHARE = ("cups", "dome", "ball")
EVERYDAY = ("round", "square", "rectangle", "loaf", "ring", "cups")


def shelf() -> list[Any]:
    """The lines of the shelf but for sets, which are none of the kitchen's own."""
    lines = [line for line in house("tins")["tins"] if not line["tin"].startswith("set of")]
    assert all(line["have"] == "0" for line in house("tins")["tins"] if line not in lines)
    return lines


@cache
def owned() -> tuple[tuple[int, Tin], ...]:
    return tuple((int(own.get("have", 1)), read_tin(own["tin"])[1]) for own in shelf())


@cache
def measures() -> dict[Any, float]:
    """ml to the brim of the tins measured with water."""
    return {
        (tin.shape, tin.sizes_mm, tin.depth_mm): float(own["measured"].removesuffix(" ml"))
        for own, (_, tin) in zip(shelf(), owned(), strict=True)
        if "measured" in own
    }


def name(tin: Tin) -> str:
    """What a tin goes by: of an outline what its line on the shelf says."""
    called = [own.get("name") for own, (_, mine) in zip(shelf(), owned(), strict=True) if mine == tin]
    return called[0] if called and called[0] else tin.name


def rows() -> Iterator[Tin]:
    """Every standard outline of the everyday shapes, in the house's own depth where it has one; what else it owns."""
    mine = [tin for have, tin in owned() if have or tin.shape in EVERYDAY]
    yield from mine
    for tin in standard_tins(EVERYDAY):
        if not any((own.shape, own.sizes_mm) == (tin.shape, tin.sizes_mm) for own in mine):
            yield tin


# A recipe in every tin


@dataclass(frozen=True)
class Recipe:
    """A cake of the demo, its lines, and its batter."""

    lines: tuple[Line, ...]
    tins: tuple[tuple[int, Tin], ...]
    batter_ml: float
    depth_mm: float
    rise: float
    less_in_wide: bool

    @property
    def mass_g(self) -> Fraction:
        return sum((line.mass_g for line in self.lines), Fraction(0))

    @property
    def eggs(self) -> Fraction:
        return sum((line.amount for line in self.lines if line.egg), Fraction(0))

    def wanted_ml(self, tin: Tin, count: int) -> float:
        if tin.shape in BY_SHARE:
            brims = sum(number * ml(own, depth_of(own)) for number, own in self.tins)
            return count * ml(tin, depth_of(tin)) * self.batter_ml / brims
        return count * ml(tin, self.depth_mm)


def recipe(slug: str) -> Recipe:
    data = read(RECIPES / "mixtures" / f"{slug}.yaml")
    written = data["tins"] if isinstance(data["tins"], list) else [data["tins"]]
    tins = tuple(read_tin(text) for text in written)
    lines = tuple(line_of(each) for each in data["mix"])
    kind = facts("kinds")[data["kind"]]
    mass_g = float(sum(line.mass_g for line in lines))

    def all_ml(depth: float) -> float:
        return sum(count * ml(tin, depth) for count, tin in tins)

    if "batter depth" in data:
        depth_mm = float(data["batter depth"].removesuffix(" mm"))
        batter_ml = all_ml(depth_mm)
    else:
        batter_ml = mass_g / float(kind["gravity"]["typical"])
        depth_mm = brentq(lambda depth: all_ml(depth) - batter_ml, 1.0, 99.0, xtol=1e-9)
    rise = float(kind["rise"]["typical"])
    return Recipe(lines, tins, batter_ml, depth_mm, rise, data.get("raising") == "less in wide tins")


def kept(width_mm: float) -> Fraction:
    """Raising agent kept: all to 25 cm, then straight lines to 0.84 at 30 cm and 0.75 at 35 cm (The Cake Bible)."""
    width = Fraction(width_mm)
    if width <= 300:
        return 1 - max(Fraction(0), width - 250) / 50 * Fraction("0.16")
    return Fraction("0.84") - min(Fraction(50), width - 300) / 50 * Fraction("0.09")


def up(value: Fraction, step: Fraction) -> Fraction:
    """Halves up, and nothing positive to nothing."""
    return max(Fraction(1), Fraction(floor(value / step + Fraction(1, 2)))) * step


def step_of(unit: str, amount: Fraction) -> Fraction:
    if unit in ("tsp", "tbsp"):
        return Fraction(1, 8) if amount < Fraction(1, 2) else Fraction(1, 4)
    if unit == "":
        return Fraction(1)
    return Fraction(1) if amount < 50 else Fraction(5)


def count_of(made: Recipe, tin: Tin) -> int:
    if tin.shape == "cups":
        return SHAPES["cups"].holes(tin.sizes_mm)
    return 1 if all(own.shape == "cups" for _, own in made.tins) else sum(count for count, _ in made.tins)


CAKES = sorted(path.stem for path in (RECIPES / "mixtures").glob("*.yaml") if "tins" in read(path))


@pytest.fixture(scope="module")
def tables(demo: Loaded) -> dict[str, dict[str, Row]]:
    """The book's own answer, by mixture and tin."""
    # without the log, which moves how much a cake rises: what it teaches is held by tests/plans/test_bake_log.py
    book = replace(demo.book, bakes=())
    return {
        slug: {str(row["tin"]): row for row in TABLES["tins"].rows(book, demo.facts, Query(of=slug)).rows}
        for slug in CAKES
    }


def test_the_oracle_sees_the_whole_table(tables: dict[str, dict[str, Row]]) -> None:
    assert len(CAKES) >= 5
    for found in tables.values():
        # the house also shows domes, of which the oracle knows nothing
        assert {tin for tin in found if not tin.startswith("dome")} == {
            called for tin in rows() if not (called := name(tin)).startswith("dome")
        }


@every("slug", CAKES)
def test_every_row_by_fractions_and_polygons(slug: str, tables: dict[str, dict[str, Row]]) -> None:
    made, unsure = recipe(slug), 0
    tolerance = Fraction(facts("numbers")["egg tolerance"]["value"])
    for tin in rows():
        row = tables[slug][name(tin)]
        where = f"{slug}, {name(tin)}: {row}"
        count = count_of(made, tin)
        exact = made.wanted_ml(tin, count) / made.batter_ml
        assert row["count"] == count, where
        assert row["exact_factor"] == pytest.approx(exact, rel=NEAR, abs=1e-6), where

        eggs = made.eggs * Fraction(exact)
        whole = max(1, floor(eggs + Fraction(1, 2)))
        off = abs(Fraction(whole) / eggs - 1) if eggs else Fraction(0)
        if eggs and (abs(eggs % 1 - Fraction(1, 2)) < eggs * Fraction(NEAR) or abs(off - tolerance) < NEAR):
            # Half an egg, or the tolerance, to the width of the polygon's error.
            unsure += 1
            continue
        beaten = off > tolerance
        factor = Fraction(exact) if beaten or not eggs else whole / made.eggs
        near = NEAR if beaten or not eggs else 1e-9
        assert row["beaten_egg"] == beaten, where
        assert row["factor"] == pytest.approx(float(factor), rel=near, abs=1e-6), where

        mass_g, errors = Fraction(0), {"spoon": [0.0], "weight": [0.0]}
        for line in made.lines:
            share = factor * (kept(tin.bounds_mm[0]) if line.raises and made.less_in_wide else 1)
            unit, amount = line.unit, line.amount * share
            if unit == "" and (beaten or amount.denominator != 1):
                unit, amount = "g", line.mass_g * share
            mass_g += line.mass_g * share
            assert row[f"{line.key}_exact_g"] == pytest.approx(float(line.mass_g * share), rel=near, abs=1e-4), where
            # The exact factor is known to a few hundredths of a percent, so a half may be met from either side.
            could = {up(amount * (1 + Fraction(sign) * Fraction(near)), step_of(unit, amount)) for sign in (-1, 0, 1)}
            shown = row[f"{line.key}_{UNIT[unit]}"]
            assert any(shown == pytest.approx(float(one), abs=1e-9) for one in could), (line, where)
            kind = "spoon" if unit in ("tsp", "tbsp") else "weight"
            errors[kind].append(abs(float(shown or 0) / float(amount) - 1))
        assert row["mixture_g"] == pytest.approx(float(mass_g), rel=near, abs=1e-3), where
        assert row["weight_error_percent"] == pytest.approx(max(errors["weight"]) * 100, abs=0.03), where
        assert row["spoon_error_percent"] == pytest.approx(max(errors["spoon"]) * 100, abs=0.03), where
        bowl = Fraction(house("house")["mixer bowl"].removesuffix(" kg")) * 1000
        assert row["mixes"] == ceil(mass_g / bowl), where

        volume_ml = made.batter_ml * float(factor)
        needed = count
        if (
            tin.depth_mm
            and tin.shape not in BY_SHARE
            and volume_ml / count > ml(tin, tin.depth_mm / made.rise) * (1 + 1e-6)
        ):
            needed = ceil(volume_ml / ml(tin, tin.depth_mm / made.rise))
        assert row["fill_tins"] == needed, where
        assert row["each_tin_g"] == pytest.approx(float(mass_g) / needed, rel=near, abs=0.006), where
        assert ml(tin, float(row["batter_mm"] or 0)) == pytest.approx(volume_ml / needed, rel=2e-3), where
    assert unsure <= 2
