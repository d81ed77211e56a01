"""The oven: what to set its dial to, other ways to bake, what each bake takes, and what came out of it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from markupsafe import Markup

from tinbook.pages.base.grids import Cell, Grid, GridRow, Head, cells
from tinbook.pages.base.page import Desk, Page
from tinbook.pages.base.rows import Short, short_rows
from tinbook.pages.base.shared import SourceLine, WorkedView, plural, source_anchor, tin_name, worked_view
from tinbook.pages.mixture.baking import span
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.baking.loads import ABOVE, REFUSED, Load, written_loads
from tinbook.plans.baking.oven import LoggedBake, WaysToBake, bakes, dial, dial_worked, dials, log_worked, ways
from tinbook.plans.baking.times import Baking, baking_worked
from tinbook.plans.base.saying import Saying
from tinbook.plans.base.worked import Worked

ADDRESS, TITLE = "oven", "Oven"
KINDS = {"conventional": "a conventional oven", "fan": "a fan oven", "gas": "a gas oven"}
number = formats.number


@dataclass(frozen=True)
class OvenView:
    """Everything the page says. `items` are its tables, in the order of the page."""

    desk: Desk

    @property
    def lead(self) -> str:
        """What oven it is, and how far out its dial is."""
        own = self.desk.book.house.oven
        if own.dial is None or own.thermometer is None:
            return (
                f"We have {KINDS[own.kind]}. Nobody has checked it with a thermometer yet, so it is assumed to match "
                "its dial."
            )
        off = own.off_c
        how = (
            f"{formats.celsius(abs(off))} {'hotter' if off > 0 else 'cooler'} than its dial"
            if off
            else "as its dial says"
        )
        set_to = f"Set to {own.dial.written}, it reaches {formats.celsius(own.thermometer)}"
        return f"We have {KINDS[own.kind]}. {set_to}: {how}."

    @property
    def room(self) -> str:
        """What fits in it at once, and what the mixer holds."""
        house = self.desk.book.house
        parts = []
        if house.oven_shelf:
            wide, deep = house.oven_shelf
            parts.append(
                f"{plural(house.shelves, 'shelf', 'shelves')} of {number(wide / 10)} × {formats.centimetres(deep)}"
            )
        if house.mixer_bowl:
            parts.append(f"a mixer bowl that takes {formats.grams(house.mixer_bowl)}")
        return (
            f"Equipment: {formats.sentence(parts)}."
            if parts
            else "No size is given for the shelf or the mixer bowl, so nothing is split into loads or mixes."
        )

    @property
    def centre(self) -> str:
        """How warm the middle is when done: `97 °C (93 to 99)`."""
        done = self.desk.facts.numbers["centre when done"]
        return f"{formats.celsius(done.value)} ({number(done.low or done.value)} to {number(done.high or done.value)})"

    @cached_property
    def known(self) -> tuple[Baking, ...]:
        """What is known about each mixture baked in tins."""
        bakings = [self.desk.bakes.of(batch) for batch in self.desk.batches.values() if batch.tins]
        return tuple(baking for baking in bakings if baking is not None)

    @cached_property
    def items(self) -> tuple[Grid, ...]:
        """Dials, ways, loads."""
        return (self._dials(), *((self._ways(), self._loads()) if self.known else ()))

    @property
    def bakes_anything(self) -> bool:
        """Whether the book has anything to bake."""
        return bool(self.known)

    def _dials(self) -> Grid:
        rows = tuple(
            GridRow(
                head=number(row.conventional_c),
                cells=(Cell(_kept(shown), True), *cells(number(row.fan_c), number(row.fahrenheit_f), row.gas_mark)),
            )
            for row, shown in dials(self.desk.book, self.desk.facts)
        )
        heads = (
            Head("Recipe says", "°C"), Head("Set here"), Head("or says fan", "°C"), Head("or says", "°F"),
            Head("or gas mark"),
        )  # fmt: skip
        worked = worked_view((dial_worked(self.desk.book, self.desk.facts),), self.desk.facts)
        return Grid(title="What to set on the dial", anchor="dial", heads=heads, rows=rows, worked=worked)

    def _ways(self) -> Grid:
        facts = self.desk.facts
        rows = tuple(self._way(ways(known, self.desk.book, facts)) for known in self.known)
        heads = (
            Head("Mixture", "its tin"), Head("Batter", "mm deep"), Head("Check", "min"), Head("Done", "min"),
            Head("Two tins, check", "min"), Head("Two tins, done", "min"), Head("Cooler, set"),
            Head("Cooler, done", "min"),
        )  # fmt: skip
        cooler = facts.numbers["wide tin oven"]
        keys = dict.fromkeys([cooler.source, *cooler.also])
        wide, deep = facts.numbers["wide tin from"], facts.numbers["deep batter from"]
        worked = Worked(
            "two tins: the same formula at half the depth of batter; cooler: the same formula in an oven "
            f"{cooler.value:g} °C lower",
            (
                f"cooler is an option for tins from {wide.value / 10:g} cm wide or batter from {deep.value:g} mm deep, "
                "so that the edge does not dry out before the middle is done; many bakers keep to one temperature",
            ),
            tuple(keys),
        )
        return Grid(
            title="Other ways to bake it", anchor="ways", heads=heads, rows=rows, worked=worked_view((worked,), facts)
        )

    def _way(self, way: WaysToBake) -> GridRow:
        batch, book = way.known.batch, self.desk.book
        cooler = ("no need", "no need")
        if way.cooler_c is not None and way.cooler is not None:
            cooler = (_kept(dial(way.cooler_c, book, self.desk.facts)), span(way.cooler))
        whole = cells(number(round(way.batter_mm)), number(way.whole.check_shown_min), span(way.whole))
        others = cells(number(way.half.check_shown_min), span(way.half), *cooler)
        name = formats.tin_words(way.tin.name)
        return GridRow(head=batch.mixture.name, cells=(*whole, *others), note=name, address=f"mixtures/{batch.slug}")

    def _loads(self) -> Grid:
        facts = self.desk.facts
        rows: list[GridRow] = []
        for known in self.known:
            batch = known.batch
            name, address = batch.mixture.name, f"mixtures/{batch.slug}"
            loads = written_loads(batch, known, self.desk.book, facts)
            rows.extend(_load_row(name, address, load) for load in loads)
        heads = (
            Head("Mixture", "its tins"), Head("Mixes"), Head("Tins at once"), Head("Loads"), Head("Oven busy", "min"),
            Head("Baked", "mm"), Head("In its own tins", words=True), Head("Nearest you own", words=True),
        )  # fmt: skip
        limit = facts.numbers["rim limit"]
        worked = Worked(
            "baked = batter depth × rise; loads = tins / tins that fit on the shelves; busy = loads × span",
            (
                f"above the rim it may spill; above {limit.value:g} times the tin's depth it is too full",
                "rise and loss are your own wherever you have logged bakes",
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

    @cached_property
    def log(self) -> list[LoggedBake]:
        """All bakes, newest first."""
        return bakes(self.desk.batches.values(), self.desk.bakes, self.desk.book)

    @property
    def logged(self) -> str:
        """How many bakes were learned from; "" for none."""
        desk = self.desk
        bakings = [desk.bakes.of(desk.batches[slug]) for slug in desk.book.bakes_of if slug in desk.batches]
        count = sum(baking.logged for baking in bakings if baking)
        return plural(count, "bake") if count else ""

    @property
    def log_rows(self) -> Markup:
        """Their rows."""
        return short_rows([_bake_row(bake) for bake in self.log], (3,))

    @property
    def sources(self) -> tuple[SourceLine, ...]:
        """What the times rest on before anything was baked."""
        keys = dict.fromkeys(key for known in self.known for key in baking_worked(known, self.desk.facts).sources)
        return tuple(SourceLine(source_anchor(key), self.desk.facts.sources[key].title) for key in keys)

    @property
    def worked(self) -> WorkedView:
        """How the log was worked out."""
        sources = dict.fromkeys(key for known in self.known for key in baking_worked(known, self.desk.facts).sources)
        return worked_view((log_worked(self.desk.book, tuple(sources)),), self.desk.facts)


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


def _bake_row(bake: LoggedBake) -> Short:
    entry = bake.entry
    head = Markup("<th scope=row>{}<small>{}</small>").format(entry.day.isoformat(), bake.batch.mixture.name)
    name = tin_name(1, bake.tin) if bake.tin.holes == 1 else bake.tin.name
    row_cells = (
        formats.tin_words(name.removeprefix("1 × ")), number(round(bake.depth_mm)), _kept(entry.oven.written),
        number(entry.done_after), number(round(bake.expected.likely_min)), span(bake.expected),
        formats.celsius(entry.centre) if entry.centre else "not read", entry.note or "none",
    )  # fmt: skip
    return Short(head, row_cells, False)


def _kept(shown: Saying | str) -> str:
    """A dial's figure joined to its unit."""
    return formats.kept_together(spell(shown))


def oven_pages(desk: Desk) -> Iterator[Page]:
    """The one page of the oven."""
    yield Page(address=ADDRESS, title=TITLE, template="oven", view=OvenView(desk), section=("Oven",))
