"""Everything used for a cake in one of its sizes, in lines to tick; and its tools, which are the same in all."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from tinbook.models import Book
from tinbook.pages.base.page import Desk
from tinbook.pages.base.shared import plural
from tinbook.pages.cake.addresses import Way
from tinbook.pages.cake.jobs import LEAST_POT_G, JobGroup, JobLine, cut_line, together
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.sayings import spell
from tinbook.pages.technique.figures import mm, pot_g
from tinbook.plans.base.versions import Amount
from tinbook.plans.cakes.figures import Besides
from tinbook.plans.cakes.used import CutterUsed, EverythingUsed, IngredientUsed, PotUsed, TinUsed
from tinbook.plans.techniques.kit import Inedible
from tinbook.units import Sold

number = formats.number
BESIDES = "For the techniques, in the amounts given on their pages"
CUT = ("dowel", "pillar", "card", "drum", "ribbon")
"""What is cut to length or bought by size, whose words take an s."""


def used_groups(every: EverythingUsed, sold: Sold, desk: Desk) -> tuple[JobGroup, ...]:
    """The groups of the list, those that hold anything; without the tools."""
    not_food = (
        *(cut_line(thing, sold) for thing in together(every.cut)),
        *map(_inedible, every.not_food),
        *(replace(_inedible(thing), note=f"count back in: “{technique}”") for technique, thing in every.at_work),
    )
    groups = (
        JobGroup("Ingredients", tuple(_ingredient(one, desk) for one in every.ingredients)),
        JobGroup("Colours", tuple(map(_pot, every.pots))),
        JobGroup(BESIDES, tuple(_besides(one, desk) for one in every.besides)),
        JobGroup("Tins", tuple(map(_tin, every.tins))),
        JobGroup("Cutters and nozzles", tuple(_shaped(every))),
        JobGroup("Not food: count in, count out", not_food),
    )
    return tuple(group for group in groups if group.lines)


@dataclass(frozen=True, slots=True)
class NotFood:
    """What is not food and may be hidden in the cake, what is in plain view, and what goes back to the bench while it
    is made: `5 dowels and 1 lolly stick`; empty for none."""

    hidden: str
    shown: str
    at_work: str = ""


def not_food(every: EverythingUsed) -> NotFood:
    """Everything inedible in, under or on a cake, counted."""
    found: dict[bool, dict[tuple[str, str], float]] = {True: {}, False: {}}
    for each in every.cut:
        things = found[each.hidden]
        key = each.what.replace("-", " "), ""
        things[key] = things.get(key, 0.0) + each.count
    for thing in every.not_food:
        things, key = found[thing.hidden], (thing.name, thing.amount.unit)
        things[key] = things.get(key, 0.0) + thing.amount.shown
    hidden, shown = (
        [_counted(name, unit, count) for (name, unit), count in found[each].items()] for each in (True, False)
    )
    work = [
        f"{_counted(thing.name, thing.amount.unit, thing.amount.shown)} ({technique})"
        for technique, thing in every.at_work
    ]
    return NotFood(*(formats.sentence(told) if told else "" for told in (hidden, shown, work)))


def _counted(name: str, unit: str, count: float) -> str:
    if name in CUT:
        return plural(count, name)
    return formats.counted(Amount(count, count, unit), name)


def _ingredient(one: IngredientUsed, desk: Desk) -> JobLine:
    page = desk.card_pages.get(desk.book.house_word(one.name) or "", "")
    told = formats.sentence(one.of)
    if one.pieces:
        figure, unit, note = formats.mixed(one.pieces), "", f"{formats.grams(one.shown_g)}; {told}"
    else:
        figure, unit, note = number(one.shown_g), "g", told
    name = many(one.name, one.pieces, desk.book)
    return JobLine(figure=figure, unit=unit, name=name, note=note, link=Way(page, "") if page else None)


def many(name: str, pieces: float, book: Book) -> str:
    """An ingredient's name; with an s where there are several pieces of it and the house calls them so."""
    return f"{name}s" if pieces > 1 and book.house_word(f"{name}s") == name else name


def _besides(one: Besides, desk: Desk) -> JobLine:
    wanted = spell(one.wanted) if one.wanted else ""
    page = desk.card_pages.get(one.name, "")
    return JobLine(
        figure=formats.figure(one.amount),
        unit=one.amount.unit,
        name=one.name,
        note="; ".join(word for word in (wanted, formats.sentence(one.of)) if word),
        link=Way(page, "") if page else None,
    )


def _pot(pot: PotUsed) -> JobLine:
    name = " ".join((pot.shade, pot.name)).strip()
    if pot.mass_g is None or pot.mass_g < LEAST_POT_G:
        return JobLine(figure="some" if pot.mass_g is None else "a speck", unit="", name=name)
    return JobLine(figure=pot_g(pot.mass_g), unit="g", name=name)


def _tin(used: TinUsed) -> JobLine:
    note = "" if used.have >= used.fill else "to borrow" if not used.have else f"you have {used.have}"
    case = "a paper case for each" if used.tin.kind.in_trays else ""
    told = "; ".join(words for words in (note, case) if words)
    return JobLine(figure=str(used.fill), unit="", name=formats.tin_words(used.tin.full_name), note=told)


def _shaped(every: EverythingUsed) -> Iterator[JobLine]:
    for cutter in every.cutters:
        yield JobLine(figure="1", unit="", name=f"{cutter.form} cutter", note=_cutter(cutter))
    for nozzle in every.nozzles:
        yield JobLine(figure="1", unit="", name=f"{nozzle.nozzle} nozzle", note=f"{mm(nozzle.opening_mm)} mm opening")


def _cutter(cutter: CutterUsed) -> str:
    wanted = formats.with_unit(" × ".join(map(mm, cutter.wanted_mm)), "mm")
    near = f"nearest in the drawer: {cutter.owned}" if cutter.owned else "none near it in the drawer"
    return f"{wanted}; {near}"


def _inedible(thing: Inedible) -> JobLine:
    amount = thing.amount
    return JobLine(
        figure=formats.figure(amount),
        unit=amount.unit,
        name=thing.name if amount.unit or amount.shown <= 1 else formats.several(thing.name),
        note=spell(thing.wanted) if thing.wanted else "",
        flag="not food",
    )
