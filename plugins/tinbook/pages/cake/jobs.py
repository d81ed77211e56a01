"""What a cake takes in the order of the work, to tick: bakes, fillings and coats, pastes, decorations, board."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.models.cakes import BOARD, SIDE
from tinbook.pages.base.shared import plural, tin_name
from tinbook.pages.cake.addresses import Way, batch_at_bench, figure_at_size, tier_at_bench
from tinbook.pages.cake.figures_drawn import in_front, letter_of
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.sayings import spell
from tinbook.pages.technique.figures import pot_g, weight_g
from tinbook.plans.cakes.figures import CakeFigure
from tinbook.plans.cakes.totals import AmountFor, PasteTotal, over_of_packs_g, packs_of, tier_said
from tinbook.plans.cakes.used import CutUsed, things_cut
from tinbook.plans.cakes.whole import WholeCake
from tinbook.plans.techniques.colours import BATTER
from tinbook.tins.trade import called_mm
from tinbook.units import Sold

number = formats.number
WHERE = {BOARD: "on the board, in front", SIDE: "on the side", "top": "on top"}
TOOK_AWAY = "not food"
MOST_OVER = 0.5
"""Of a last batch of which more than this share is left over, a page says how many times the recipe would do."""
LEAST_POT_G = 0.01
"""Of less colour than this a page says that it is a speck: scales for colour show hundredths of a gram."""


@dataclass(frozen=True, slots=True, kw_only=True)
class JobLine:
    """A line: figure, unit, what it is with its page, a second line. `flag`: it is not food."""

    figure: str
    unit: str
    name: str
    note: str = ""
    link: Way | None = None
    swatch: str = ""
    flag: str = ""


@dataclass(frozen=True, slots=True)
class JobGroup:
    """Lines of one kind of work."""

    title: str
    lines: tuple[JobLine, ...]


def jobs(cake: WholeCake, size: str, book: Book, facts: Facts) -> tuple[JobGroup, ...]:
    """Everything there is to do for a cake."""
    groups = (
        JobGroup("Bake", tuple(_bakes(cake, size))),
        JobGroup("Fill and coat", tuple(_mixed(cake, size))),
        JobGroup("Paste, by colour", tuple(map(paste_line, cake.pastes))),
        JobGroup("Coloured batter and buttercream", tuple(_tinted(cake))),
        JobGroup("Decorations", tuple(_figures(cake, size))),
        JobGroup("Board and stacking", tuple(_cut(cake, book, facts))),
    )
    return tuple(group for group in groups if group.lines)


def _bakes(cake: WholeCake, size: str) -> Iterator[JobLine]:
    for tier in cake.every_tier:
        baked = tier.baked
        if baked is None:
            continue
        time = baked.time
        look = [f"check from {formats.with_unit(number(time.check_shown_min), 'min')}"] if time else []
        mixes = [f"mix in {baked.mixes} lots"] if baked.mixes > 1 else []
        where = spell(tier_said(tier, len(cake.tiers))).partition(",")[0] if len(cake.every_tier) > 1 else ""
        told = [where, tin_name(baked.fit.needed, tier.asked.tin), *mixes, *look]
        yield JobLine(
            figure=number(baked.whole.mass_shown_g),
            unit="g",
            name=baked.batch.mixture.name,
            note=formats.title(", ".join(word for word in told if word)),
            link=tier_at_bench(cake.slug, size, tier),
        )


def _mixed(cake: WholeCake, size: str) -> Iterator[JobLine]:
    for total in cake.mixtures:
        batch = total.batch
        many = plural(total.batches, "batch", "batches")
        if total.batches > 1 and total.over_g > MOST_OVER * total.batch.makes_g:
            many = f"{number(round(total.factor, 2))} times the recipe, or {many}"
        link = None
        if batch.slug in cake_mixtures(cake):
            link = batch_at_bench(batch.slug, cake.slug, size, total.made_shown_g)
        over = [f"{formats.grams(total.over_shown_g)} over"] if total.over_shown_g else []
        yield JobLine(
            figure=number(total.made_shown_g),
            unit="g",
            name=batch.mixture.name,
            note="; ".join((many, *over, _amounts(total.amounts))) if link else _amounts(total.amounts),
            link=link,
        )


def cake_mixtures(cake: WholeCake) -> frozenset[str]:
    """The fillings and icings that are made, and have a page of their own: those that are bought have none."""
    return frozenset(
        total.batch.slug for total in cake.mixtures if not total.batch.packs_g and total.batch.mixture.method
    )


def _tinted(cake: WholeCake) -> Iterator[JobLine]:
    for tint in cake.tints:
        where = spell(tint.said).partition(",")[0]
        what = "its batter" if tint.base == BATTER else "its coat"
        verb = "fold in" if tint.base == BATTER else "beat in"
        pots = [_pot(*pot) for pot in tint.pots or ()]
        how = f"{verb} {formats.sentence(pots)}" if pots else f"by eye: its card does not say what {tint.base} takes"
        yield JobLine(
            figure=number(tint.shown_g),
            unit="g",
            name=f"{tint.of}, {tint.colour.name}",
            note=f"{where}, {what}; {how}",
            swatch=tint.colour.swatch,
        )


def paste_line(total: PasteTotal) -> JobLine:
    """A paste in one colour: all of it, where it goes, what is kneaded in."""
    colour = total.colour
    pots = [_pot(*pot) for pot in total.pots]
    packs = " + ".join(f"{count} × {formats.grams(mass_g)}" for count, mass_g in packs_of(total))
    over_g = over_of_packs_g(total)
    over = f", {formats.grams(over_g)} over" if over_g else ""
    told = [
        _amounts(total.amounts),
        f"knead in {formats.sentence(pots)}" if pots else "",
        packs and f"packs: {packs}{over}",
    ]
    return JobLine(
        figure=number(total.shown_g),
        unit="g",
        name=f"{total.paste}, {colour.name}" if colour else total.paste,
        note="; ".join(word for word in told if word),
        swatch=colour.swatch if colour else "",
    )


def _pot(name: str, shade: str, mass_g: float | None) -> str:
    named = f"{shade} {name}".strip()
    if mass_g is not None and mass_g < LEAST_POT_G:
        return f"a speck of {named}"
    return named if mass_g is None else f"{formats.with_unit(pot_g(mass_g), 'g')} {named}"


def _amounts(amounts: Iterable[AmountFor]) -> str:
    """What each is for, with its grams where there is more than one."""
    told = [(spell(each.what).partition(",")[0], formats.grams(each.shown_g)) for each in amounts]
    return told[0][0] if len(told) == 1 else ", ".join(f"{what} {grams}" for what, grams in told)


def _figures(cake: WholeCake, size: str) -> Iterator[JobLine]:
    for nth, figure in enumerate(cake.figures):
        yield JobLine(
            figure=str(figure.count) if figure.count > 1 else letter_of(nth),
            unit="",
            name=formats.several(figure.thing) if figure.count > 1 else figure.thing,
            note="; ".join(_figure_notes(cake, figure, nth)),
            link=figure_at_size(cake.slug, size, figure),
        )


def _figure_notes(cake: WholeCake, figure: CakeFigure, nth: int) -> Iterator[str]:
    tier = spell(tier_said(cake.tiers[figure.tier], len(cake.tiers))).partition(",")[0]
    where = WHERE[figure.on] if len(cake.tiers) == 1 or figure.on == BOARD else f"{WHERE[figure.on]}, {tier}"
    letter = f"{letter_of(nth)}, " if figure.count > 1 else ""
    behind = figure.count - in_front(cake, nth)
    yield formats.title(f"{letter}{where}{f', {behind} of them at the back' if behind else ''}")
    high = formats.with_unit(number(round(figure.high_mm / 10.0, 1)), "cm")
    yield f"{high} high, sized for {formats.tin_words(formats.a_said(figure.parts.cake.as_said))} cake"
    over_mm = figure.high_mm - cake.tiers[figure.tier].high_mm
    if figure.on == SIDE and over_mm >= 1.0:
        yield f"{formats.millimetres(over_mm)} taller than its tier: size it for a smaller cake"
    made = [
        f"{part.name} {'' if part.made == 1 else f'× {part.made} '}{formats.with_unit(weight_g(part.total_g), 'g')}"
        for part in figure.parts.parts
    ]
    yield f"parts: {', '.join(made)}"
    if figure.note:
        yield figure.note.rstrip(".")


def _cut(cake: WholeCake, book: Book, facts: Facts) -> Iterator[JobLine]:
    drum = cake.stacked.drum
    for thing in together(things_cut(cake, book, facts)):
        yield cut_line(thing, drum.board.sold if drum else "cm")
    if drum is not None and drum.box_shown_mm:
        sides = " × ".join(number(side / 10.0) for side in drum.box_shown_mm)
        yield JobLine(figure="1", unit="", name="box", note=f"{formats.with_unit(sides, 'cm')} inside, at least")


def together(things: Iterable[CutUsed]) -> Iterator[CutUsed]:
    """Things alike in one, counted."""
    counts: dict[CutUsed, int] = {}
    for thing in things:
        one = replace(thing, count=1)
        counts[one] = counts.get(one, 0) + thing.count
    yield from (replace(one, count=count) for one, count in counts.items())


def cut_line(thing: CutUsed, sold: Sold) -> JobLine:
    """Something cut to length or bought by size."""
    told = []
    if thing.what in ("drum", "card", "separator-plate") and thing.wide_mm is not None:
        sides = dict.fromkeys(called_mm(side, sold) for side in (thing.wide_mm, thing.long_mm or thing.wide_mm))
        told = [formats.with_unit(" × ".join(number(side / 10.0) for side in sides), "cm")]
    elif thing.long_mm is not None:
        long = formats.centimetres(thing.long_mm) if thing.what == "ribbon" else formats.millimetres(thing.long_mm)
        told = [f"{long} long"]
        if thing.wide_mm and thing.what != "pillar":
            how = "wide" if thing.what == "ribbon" else "thick"
            told += [f"{number(round(thing.wide_mm))} mm {how}"]
    what = thing.what.replace("-", " ")
    name = what if thing.count == 1 else f"{what}s"
    return JobLine(figure=str(thing.count), unit="", name=name, note=", ".join(told), flag=TOOK_AWAY)
