"""The oven's tables with a row for each mixture: other ways to bake it, and what a bake takes."""

from __future__ import annotations

from collections.abc import Iterable

from tinbook.pages.base.grids import Grid, GridRow, Head, cells
from tinbook.pages.base.page import Desk
from tinbook.pages.base.shared import tin_name, worked_view
from tinbook.pages.mixture.baking import span
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.baking.loads import ABOVE, REFUSED, Load, written_loads
from tinbook.plans.baking.oven import WaysToBake, dial, ways
from tinbook.plans.baking.times import Baking
from tinbook.plans.base.saying import Saying
from tinbook.plans.base.worked import Worked

number = formats.number


def ways_grid(desk: Desk, known: Iterable[Baking]) -> Grid:
    """Each mixture as written, in two tins, and in a cooler oven."""
    facts = desk.facts
    rows = tuple(_way(desk, ways(each, desk.book, facts)) for each in known)
    heads = (
        Head("Mixture", "its tin"), Head("Batter", "mm deep"), Head("Check", "min"), Head("Done", "min"),
        Head("Two tins, check", "min"), Head("Two tins, done", "min"), Head("Cooler oven: set to"),
        Head("Cooler, done", "min"),
    )  # fmt: skip
    cooler = facts.numbers["wide tin oven"]
    keys = dict.fromkeys([cooler.source, *cooler.also])
    wide, deep = facts.numbers["wide tin from"], facts.numbers["deep batter from"]
    worked = Worked(
        "two tins: the same formula at half the depth of batter; cooler: the same formula in an oven "
        f"{cooler.value:g} °C lower",
        (
            f"a cooler oven is an option for tins {wide.value / 10:g} cm wide or more, or batter {deep.value:g} mm "
            "deep or more, so that the edge does not dry out before the middle is done; many bakers keep to one "
            "temperature",
        ),
        tuple(keys),
    )
    return Grid(
        title="Other ways to bake it", anchor="ways", heads=heads, rows=rows, worked=worked_view((worked,), facts)
    )


def _way(desk: Desk, way: WaysToBake) -> GridRow:
    batch, book = way.known.batch, desk.book
    cooler = ("no need", "no need")
    if way.cooler_c is not None and way.cooler is not None:
        cooler = (kept_dial(dial(way.cooler_c, book, desk.facts)), span(way.cooler))
    whole = cells(number(round(way.batter_mm)), number(way.whole.check_shown_min), span(way.whole))
    others = cells(number(way.half.check_shown_min), span(way.half), *cooler)
    name = formats.tin_words(way.tin.name)
    return GridRow(head=batch.mixture.name, cells=(*whole, *others), note=name, address=f"mixtures/{batch.slug}")


def loads_grid(desk: Desk, known: Iterable[Baking]) -> Grid:
    """What each mixture takes in its own tins."""
    facts = desk.facts
    rows: list[GridRow] = []
    for each in known:
        batch = each.batch
        name, address = batch.mixture.name, f"mixtures/{batch.slug}"
        loads = written_loads(batch, each, desk.book, facts)
        rows.extend(_load_row(name, address, load) for load in loads)
    heads = (
        Head("Mixture", "its tins"), Head("Mixes"), Head("Tins at once"), Head("Loads"), Head("Oven busy", "min"),
        Head("Baked", "mm"), Head("In its own tins", words=True), Head("Nearest you have", words=True),
    )  # fmt: skip
    limit = facts.numbers["rim limit"]
    worked = Worked(
        "baked = batter depth × rise; loads = tins / tins that fit on the shelves; busy = loads × range of baking "
        "times",
        (
            f"above the rim it may spill; above {limit.value:g} times the tin's depth it is too full",
            "the figures for rise and weight loss are your own wherever you have logged bakes",
        ),
        (limit.source,),
    )
    return Grid(
        title="What each bake involves",
        anchor="loads",
        heads=heads,
        rows=tuple(rows),
        worked=worked_view((worked,), facts),
    )


def _load_row(name: str, address: str, load: Load) -> GridRow:
    fit = load.fit
    busy = number(load.oven_low_min)
    if load.oven_high_min != load.oven_low_min:
        busy = f"{busy}–{number(load.oven_high_min)}"
    nearest = "you have none"
    if load.nearest:
        nearest = f"{formats.tin_words(load.nearest.name)}, × {formats.fixed(round(load.nearest_factor, 2), 2)}"
    row_cells = (
        *cells(number(load.mixes), "no shelf given" if fit.per_bake is None else number(fit.per_bake)),
        *cells(number(load.fit.bakes) if load.fit.bakes else "does not fit", busy, number(round(load.all_in_mm))),
        *cells(_verdict(load), nearest),
    )
    return GridRow(head=name, cells=row_cells, note=tin_name(fit.count, fit.tin), address=address)


def _verdict(load: Load) -> str:
    if load.verdict == ABOVE:
        return f"{formats.millimetres(load.above_mm)} above the rim: may spill"
    if load.verdict == REFUSED:
        most = f", {formats.grams(load.most_g)} in each at most" if load.most_g else ""
        return f"too full: fill {load.fit.needed} tins{most}"
    return spell(load.verdict)


def kept_dial(shown: Saying | str) -> str:
    """A dial's figure joined to its unit."""
    return formats.kept_together(spell(shown))
