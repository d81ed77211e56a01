"""The tables of a whole cake, by name: tier by tier, and everything used."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.asking import OPTIONS, AskError, Query
from tinbook.plans.base.result import UNIT_KEYS, Cell, Result, Row, short
from tinbook.plans.base.saying import Saying, saying
from tinbook.plans.base.worked import Worked
from tinbook.plans.cakes.sizes import CakeSize, CakeSizes, cake_sizes, size_called, size_for
from tinbook.plans.cakes.tiers import TierWorked
from tinbook.plans.cakes.totals import coat_g, filling_g, tier_said
from tinbook.plans.cakes.used import EverythingUsed, everything_used
from tinbook.plans.cakes.weights import CakeWeights, cake_weights
from tinbook.plans.cakes.whole import WholeCake, whole_cake
from tinbook.problems import nearest


def cake_asked(book: Book, facts: Facts, query: Query) -> tuple[WholeCake, Saying | str]:
    """The cake asked for, at its own size, at the one asked for or for this many guests; and what that size is called.
    AskError if the book has none by that name, or the size cannot be made."""
    slugs = sorted(book.cakes)
    if query.of is None:
        raise AskError("this table needs a cake", "say which, such as --of " + (slugs[0] if slugs else "NAME"))
    if query.of not in book.cakes:
        close = nearest(query.of, slugs)
        hint = f'did you mean "{close}"?' if close else "it has " + (", ".join(slugs) or "none yet")
        raise AskError(f'the book has no cake "{query.of}"', hint)
    design = book.cakes[query.of]
    if query.keep_top and len(design.tiers) < 2:
        raise AskError("a single tier cannot be both cut and kept", "leave out --keep-top")
    asked: dict[str, Any] = {"portion": query.portion, "keep_top": query.keep_top}
    if query.size is None and query.guests is None:
        return whole_cake(query.of, design, book, facts, **asked), saying("size_by_steps", steps=0)
    sizes = cake_sizes(design, book, facts, **asked)
    size = size_asked(sizes, query.size, query.guests)
    return whole_cake(query.of, design, book, facts, tins=size.tins, heights=sizes.heights, **asked), size.said


def cake_for_guests(book: Book, facts: Facts, query: Query) -> tuple[WholeCake, Saying | str]:
    """The same for what portions change only through the size that serves the guests. AskError for portions without
    guests."""
    for key in ("keep_top", "portion"):
        if getattr(query, key) and query.guests is None:
            raise AskError(f"{OPTIONS[key]} changes nothing here without --guests", "say how many guests there are")
    return cake_asked(book, facts, query)


def size_asked(sizes: CakeSizes, word: str | None, guests: int | None) -> CakeSize:
    """The size with this name, or for this many guests; its own if neither is given. AskError for both, and for
    one that cannot be made."""
    if word is not None and guests is not None:
        raise AskError("--size and --guests cannot be used together", "use just one of them")
    if word is None and guests is None:
        return sizes.written
    size = size_for(sizes, guests or 0) if word is None else size_called(sizes, word)
    if not size.offered:
        tins = " + ".join(tin.name for tin in reversed(size.tins))
        raise AskError(f"it cannot be made in {tins}", "ask for another size")
    return size


def cake(book: Book, facts: Facts, query: Query) -> Result:
    """A cake tier by tier from the bottom, what stands beside it, and all of it together."""
    whole, size = cake_asked(book, facts, query)
    weights = cake_weights(whole, book, facts)
    each = zip(whole.every_tier, (*weights.tiers, *weights.beside), strict=True)
    rows = (*(_row(whole, tier, weight.whole.mass_g) for tier, weight in each), _in_all(whole, query, weights))
    return Result(saying("whole_cake_of", cake=whole.design.name, size=size), rows, whole.worked)


def _row(whole: WholeCake, tier: TierWorked, weight_g: float) -> Row:
    asked, baked, level, dowels = tier.asked, tier.baked, whole.level(tier), whole.dowels(tier)
    stack, paste = baked.stack if baked else None, tier.covered.paste if tier.covered else None
    (filling, filling_shown), (coat, coat_shown) = filling_g(tier), coat_g(tier)
    card = tier.covered.board.card.size_mm if tier.covered else None
    row: dict[str, Cell] = {
        "tier": tier_said(tier, len(whole.tiers)),
        "mixture": baked.batch.mixture.name if baked else None,
        "tin": asked.tin.full_name,
        "tins_count": baked.tins if baked else 0,
        "owned": asked.owned,
        "mixture_g": short(baked.whole.mass_g) if baked else None,
        "mixture_shown_g": baked.whole.mass_shown_g if baked else None,
        "factor": short(baked.whole.factor) if baked else None,
        "eggs_count": baked.eggs if baked else None,
        "beaten_egg": baked.beaten if baked else None,
        "batter_mm": short(baked.fit.batter_mm) if baked else None,
        "layers_count": tier.cake.layers if tier.cake and baked else None,
        "layer_mm": short(stack.layer_mm) if stack else None,
        "cake_mm": short(tier.cake.stands_mm) if tier.cake else None,
        "high_mm": short(tier.high_mm),
        "foot_mm": short(level.foot_mm) if level else None,
        "top_mm": short(level.top_mm) if level else None,
        "card_thick_mm": short(level.card_mm) if level and level.card_mm else None,
        "filling_g": short(filling),
        "filling_shown_g": filling_shown,
        "coat_g": short(coat),
        "coat_shown_g": coat_shown,
        "paste_g": short(paste.made_g) if paste else None,
        "paste_shown_g": paste.made_shown_g if paste else None,
        "rolled_mm": short(paste.rolled_mm[0]) if paste else None,
        "colour": asked.colour,
        "card_mm": card[0] if card and level and len(whole.stacked.levels) > 1 else None,
        "dowels_count": dowels.plan.count if dowels else None,
        "dowel_mm": short(dowels.long_mm) if dowels else None,
        "mixes_count": baked.mixes if baked else None,
        "bakes_count": baked.fit.bakes if baked else None,
        "bake_check_min": baked.time.check_shown_min if baked and baked.time else None,
        "bake_low_min": baked.time.low_shown_min if baked and baked.time else None,
        "bake_high_min": baked.time.high_shown_min if baked and baked.time else None,
        "weight_g": short(weight_g),
        "portions_count": tier.serves,
    }
    return row


def _in_all(whole: WholeCake, query: Query, weights: CakeWeights) -> Row:
    total, stacked, drum = whole.totals, whole.stacked, whole.stacked.drum
    box = drum.box_shown_mm if drum else None
    return {
        "tier": saying("in_all"),
        "tins_count": total.tins,
        "owned": whole.owned,
        "mixture_g": short(total.mixture_g),
        "mixture_shown_g": total.mixture_shown_g,
        "eggs_count": total.eggs,
        "layers_count": total.layers,
        "high_mm": short(stacked.high_mm),
        "filling_g": short(total.filling_g),
        "filling_shown_g": total.filling_shown_g,
        "coat_g": short(total.coat_g),
        "coat_shown_g": total.coat_shown_g,
        "paste_g": short(total.paste_g),
        "paste_shown_g": total.paste_shown_g,
        "board_paste_g": short(stacked.paste_g),
        "board_mm": drum.board.size_mm[0] if drum and drum.board.size_mm else None,
        "board_ribbon_mm": short(drum.ribbon_mm) if drum else None,
        "box_width_mm": box[0] if box else None,
        "box_length_mm": box[1] if box else None,
        "box_height_mm": box[2] if box else None,
        "cards_count": total.cards,
        "dowels_count": total.dowels,
        "mixes_count": total.mixes,
        "bakes_count": total.bakes,
        "board_weight_g": short(weights.board_whole.mass_g),
        "weight_g": short(weights.whole.mass_g),
        "portions_count": total.portions,
        "kept_back_count": whole.kept,
        "serves_count": whole.serves,
        "spare_count": whole.serves - query.guests if query.guests else None,
    }


def used(book: Book, facts: Facts, query: Query) -> Result:
    """Everything used for a cake, one row for each thing."""
    whole, size = cake_for_guests(book, facts, query)
    rows = tuple(_used_rows(everything_used(whole, book, facts)))
    inputs = saying("mixed_as_whole_eggs"), saying("parts_by_materials")
    worked = Worked(saying("everything_used"), inputs, whole.worked.sources)
    return Result(saying("used_of", cake=whole.design.name, size=size), rows, worked)


def _used_rows(every: EverythingUsed) -> Iterator[Row]:
    for one in every.ingredients:
        yield {
            "group": "ingredient",
            "what": one.name,
            "exact_g": short(one.mass_g),
            "shown_g": one.shown_g,
            "pieces_count": one.pieces or None,
            "for": ", ".join(one.of),
        }
    for more in every.besides:
        yield {
            "group": "technique",
            "what": more.name,
            "for": ", ".join(more.of),
            f"amount_{UNIT_KEYS[more.amount.unit]}" if more.amount.unit else "pieces_count": more.amount.shown,
        }
    for pot in every.pots:
        yield {"group": "colour", "what": pot.name, "for": pot.shade, "exact_g": short(pot.mass_g)}
    for tin in every.tins:
        yield {"group": "tin", "what": tin.tin.full_name, "pieces_count": tin.fill, "owned_count": tin.have}
    for tool in every.tools:
        yield {"group": "tool", "what": tool.name, "pieces_count": tool.count}
    for cutter in every.cutters:
        wide_mm, *long_mm = cutter.wanted_mm
        yield {
            "group": "cutter",
            "what": cutter.form,
            "width_mm": wide_mm,
            "length_mm": long_mm[0] if long_mm else None,
            "for": cutter.owned or None,
        }
    for nozzle in every.nozzles:
        yield {"group": "nozzle", "what": nozzle.nozzle, "width_mm": nozzle.opening_mm}
    for each in every.cut:
        yield {
            "group": "not food",
            "what": each.what,
            "pieces_count": each.count,
            "length_mm": short(each.long_mm),
            "width_mm": short(each.wide_mm),
        }
    for technique, thing in every.at_work:
        yield {"group": "returned", "what": thing.name, "pieces_count": thing.amount.shown, "for": technique}
    for thing in every.not_food:
        row: dict[str, Cell] = {"group": "not food", "what": thing.name, "for": thing.wanted or None}
        unit = thing.amount.unit
        yield {**row, f"amount_{UNIT_KEYS[unit]}" if unit else "pieces_count": thing.amount.shown}
