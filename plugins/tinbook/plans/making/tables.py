"""The tables of how a whole cake is made and carried: weights, supports, oven loads, what is made ahead."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.asking import AskError, Query
from tinbook.plans.base.result import Cell, Result, Row, short
from tinbook.plans.base.saying import Saying, saying
from tinbook.plans.base.worked import Worked
from tinbook.plans.cakes.oven_loads import OvenLoad
from tinbook.plans.cakes.tables import cake_asked, cake_for_guests
from tinbook.plans.cakes.weights import KINDS, NOTHING, CakeWeights, Heft, cake_weights
from tinbook.plans.making.ahead import ahead_table
from tinbook.plans.making.held import held_up

PRACTICE = ("common practice",)


def weights(book: Book, facts: Facts, query: Query) -> Result:
    """What each tier weighs, by part, with its range and what it carries; the board; what stands beside; the whole."""
    whole, size = cake_for_guests(book, facts, query)
    found = cake_weights(whole, book, facts)
    inputs = saying("weight_ranges"), saying("weights_left_out")
    worked = Worked(saying("cake_weighed"), inputs, weight_sources(facts))
    title = saying("weights_of", cake=whole.design.name, size=size)
    return Result(title, tuple(_weight_rows(found)), worked)


def weight_sources(facts: Facts) -> tuple[str, ...]:
    """Where the weights of boards, cards and foam come from, and when it takes two people."""
    named = ("drum weighs", "card weighs", "foam weighs", "weight for two", "weighed against computed")
    return tuple(dict.fromkeys(facts.numbers[name].source for name in named))


def _weight_rows(found: CakeWeights) -> Iterator[Row]:
    for each in (*found.tiers, *found.beside):
        yield _weight_row(each.said, each.parts, each.whole, each.carries)
    yield _weight_row(saying("the_board"), found.board, found.board_whole, NOTHING)
    yield _weight_row(saying("in_all"), found.by_kind, found.whole, NOTHING)


def _weight_row(said: Saying, parts: Mapping[str, Heft], whole: Heft, carries: Heft) -> Row:
    row: dict[str, Cell] = {"tier": said}
    row |= {f"{kind}_g": short(parts.get(kind, NOTHING).mass_g) for kind in KINDS}
    return row | {
        "weight_g": short(whole.mass_g),
        "least_g": short(whole.low_g),
        "most_g": short(whole.high_g),
        "carries_g": short(carries.mass_g),
    }


def supports(book: Book, facts: Facts, query: Query) -> Result:
    """What stands under each tier, and how much it carries."""
    whole, size = cake_for_guests(book, facts, query)
    held = held_up(whole, cake_weights(whole, book, facts))
    rows: list[Row] = []
    for each in held.tiers:
        plan = each.under.plan if each.under else None
        rows.append(
            {
                "tier": each.said,
                "stands_on": each.on,
                "held_by": each.held_by,
                "pieces_count": plan.count if plan else 0,
                "published_low_count": plan.low if plan else None,
                "published_high_count": plan.high if plan else None,
                "house_count": plan.house if plan else None,
                "length_mm": short(each.under.long_mm) if each.under else None,
                "length_shown_mm": each.under.long_shown_mm if each.under else None,
                "inset_mm": short(plan.inset_mm) if plan else None,
                "gap_mm": short(each.gap_mm),
                "card_mm": short(each.card_mm) if each.card_mm else None,
                "stands_g": short(each.stands.mass_g),
                "each_carries_g": short(each.each_g) if each.each_g else None,
            }
        )
    if held.through_mm is not None:
        rows.append(
            {
                "tier": saying("in_all"),
                "held_by": "centre-dowel",
                "pieces_count": 1,
                "length_mm": short(held.through_mm),
                "length_shown_mm": held.through_shown_mm,
            }
        )
    if not rows:
        raise AskError(f'nothing in "{whole.design.name}" stands on a board', "ask for a cake that does")
    sources = tuple(dict.fromkeys(each.under.plan.source for each in held.tiers if each.under))
    worked = Worked(saying("held_worked"), (saying("dowels_as_long"), saying("dowels_counted")), (*sources, *PRACTICE))
    return Result(saying("held_of", cake=whole.design.name, size=size), tuple(rows), worked)


def oven_loads(book: Book, facts: Facts, query: Query) -> Result:
    """A cake through the oven: every tin of every load, when to look, and what is mixed for it."""
    whole, size = cake_for_guests(book, facts, query)
    if whole.oven is None:
        raise AskError(f'"{whole.design.name}" will not fit in this oven', "ask for a smaller size")
    rows = [row for number, load in enumerate(whole.oven.loads, 1) for row in _load_rows(number, load)]
    inputs = [saying("mixed_by_load"), *([] if whole.oven.proven else [saying("loads_by_turns")])]
    worked = Worked(saying("cake_loads_worked"), tuple(inputs), PRACTICE)
    return Result(saying("cake_loads_of", cake=whole.design.name, size=size), tuple(rows), worked)


def _load_rows(number: int, load: OvenLoad) -> Iterator[Row]:
    lots = {mix.batch.slug: mix for mix in load.mixes}
    for each in load.tins:
        baked = each.tier.baked
        mix = lots[baked.batch.slug] if baked else None
        yield {
            "load_count": number,
            "tin": each.tin.full_name,
            "tins_count": each.count,
            "mixture": mix.batch.mixture.name if mix else None,
            "batter_g": short(each.batter_g),
            "eggs_count": short(each.eggs),
            "mixed_g": short(mix.mass_g) if mix else None,
            "mixes_count": mix.lots if mix else None,
            "oven_c": short(load.oven_c),
            "check_min": load.check_min,
            "low_min": load.low_min,
            "high_min": load.high_min,
        }


def ahead(book: Book, facts: Facts, query: Query) -> Result:
    """What can be made ahead for a cake, how each part keeps, and how long the whole does."""
    whole, _ = cake_asked(book, facts, query)
    found = ahead_table(whole, book)
    rows: list[Row] = [
        {
            "part": each.name,
            "ahead_min": each.ahead_min or None,
            "steps_count": each.steps,
            "on_the_day_count": each.on_the_day,
            "keeps": "; ".join(keep.written for keep in each.keeps) or None,
        }
        for each in found.parts
    ]
    keeps = found.keeps.written if found.keeps else None
    rows.append({"part": saying("in_all"), "keeps": keeps, "least": found.least or None})
    return Result(
        saying("ahead_of", cake=whole.design.name),
        tuple(rows),
        Worked(saying("ahead_worked"), (saying("kept_unfrozen"),), PRACTICE),
    )
