"""What the browser gets for a mixture: everything except multiplying and rounding is worked out here."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import Any, NamedTuple

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.scaling import TinRow, TinTable, owned_count, wanted_ml
from tinbook.plans.base.versions import raising_points
from tinbook.plans.base.weighing import Batch
from tinbook.plans.measures.spooned import US_CUP_ML
from tinbook.tins import SHAPES
from tinbook.tins.trade import read_by_name
from tinbook.units import GRAMS_PER_OUNCE


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchLine:
    """One line: `amount` in `unit` ("" for pieces), grams, and ml where it has a volume measure."""

    name: str
    unit: str
    amount: float
    mass_g: float
    volume_ml: float | None
    raises: bool


class BenchTin(NamedTuple):
    """One tin: `unit_ml` is the batter one of it takes, `room_ml` the batter it holds once risen to its rim, if known;
    `stands` how many fit in the oven at once (None: no shelf given), `have` how many the house has. `by_brim`: its
    factor goes by how full it is, not by the depth of the batter."""

    name: str
    inches: str
    shape: str
    title: str
    width_mm: float
    length_mm: float
    owned: bool
    have: int
    unit_ml: float
    room_ml: float | None
    stands: int | None
    by_brim: bool
    holes: int
    count: int  # type: ignore[assignment]  # hides tuple.count, which nobody asks
    least_mm: float | None


@dataclass(frozen=True, slots=True)
class BenchSteps:
    """How finely the scales read, g."""

    step: float
    fine: float
    fine_below: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Bench:
    """A mixture for the browser. `tin` and `count` are those it is written for; `shapes` holds, for each shape whose
    area is a fixed share of width x length, that share; `named`, by unit, the numbers that name lengths without being
    their size. Volumes ml, weights g, lengths mm."""

    name: str
    lines: tuple[BenchLine, ...]
    mass_g: float
    makes_g: float
    eggs: float
    egg_class: str
    egg_tolerance: float
    steps: BenchSteps
    g_per_oz: float
    cup_ml: float
    tablespoon_ml: float
    teaspoon_ml: float
    bowl_g: float | None
    raising: tuple[tuple[float, float], ...] | None
    batter_ml: float
    depth_mm: float
    share: float
    tin: str
    count: int
    tins: tuple[BenchTin, ...]
    shapes: dict[str, float]
    named: dict[str, dict[str, float]]


def bench(batch: Batch, table: TinTable | None, book: Book, facts: Facts) -> Bench:
    """The mixture with every tin of its table, or none if it is made by weight."""
    spoons, house = book.house.spoons, book.house
    lines = tuple(
        BenchLine(
            name=line.name,
            unit=line.unit,
            amount=line.amount,
            mass_g=line.mass_g,
            volume_ml=line.volume_ml,
            raises=line.raises,
        )
        for line in batch.ingredients
    )
    return Bench(
        name=batch.mixture.name,
        lines=lines,
        mass_g=batch.mass_g,
        makes_g=batch.makes_g,
        eggs=batch.eggs,
        egg_class=house.eggs,
        egg_tolerance=facts.numbers["egg tolerance"].value,
        steps=BenchSteps(house.scales.step, house.scales.fine_step, house.scales.fine_below),
        g_per_oz=GRAMS_PER_OUNCE,
        cup_ml=spoons.cup_ml or US_CUP_ML,
        tablespoon_ml=spoons.tablespoon_ml,
        teaspoon_ml=spoons.teaspoon_ml,
        bowl_g=house.mixer_bowl,
        raising=raising_points(facts) if batch.mixture.raising != "level" else None,
        batter_ml=batch.batter_ml,
        depth_mm=batch.depth_mm,
        share=batch.share if batch.tins else 0.0,
        tin=batch.tins[0][1].name if batch.tins else "",
        count=sum(count for count, _ in batch.tins) if batch.tins else 1,
        tins=tuple(_tin(batch, book, row) for row in table.rows) if table else (),
        shapes=area_shares() if batch.tins else {},
        named=read_by_name(house.tins_sold_in) if batch.tins else {},
    )


def _tin(batch: Batch, book: Book, row: TinRow) -> BenchTin:
    tin, fit = row.tin, row.fit
    by_share = tin.kind.kept == "share"
    room_ml = None if tin.depth_mm is None or by_share else tin.volume_ml(tin.depth_mm / batch.rise)
    width_mm, length_mm = tin.bounds_mm
    return BenchTin(
        name=tin.name,
        inches=tin.size_label_in,
        shape=tin.shape,
        title=tin.kind.title,
        width_mm=width_mm,
        length_mm=length_mm,
        owned=row.owned,
        have=owned_count(book, tin),
        unit_ml=wanted_ml(batch, tin, 1),
        room_ml=room_ml,
        stands=fit.per_bake,
        by_brim=by_share,
        holes=tin.holes,
        count=fit.count,
        least_mm=fit.least_mm,
    )


@lru_cache(maxsize=1)
def area_shares() -> dict[str, float]:
    """For each shape you can measure with a ruler: its area over its width x length, or over its width squared."""
    shares = {shape.key: shape.area_share() for shape in SHAPES.values()}
    return {key: share for key, share in shares.items() if share is not None}


def as_plain(value: Bench) -> dict[str, Any]:
    """The same, as dicts and lists for JSON. (dataclasses.asdict copies every leaf and takes ten times as long.)"""
    return {
        **_fields(value),
        "lines": [_fields(line) for line in value.lines],
        "steps": _fields(value.steps),
        "tins": _columns(value.tins),
    }


def _columns(tins: tuple[BenchTin, ...]) -> dict[str, Any]:
    """Tins as `heads` and `rows`, so that names are given once. A row may end in how the tin is `drawn`."""
    return {"heads": [*BenchTin._fields, "drawn"], "rows": [list(tin) for tin in tins]}


def _fields(row: Bench | BenchLine | BenchSteps) -> dict[str, Any]:
    return {name: getattr(row, name) for name in row.__slots__}
