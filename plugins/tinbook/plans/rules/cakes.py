"""Rules for whole cakes: what a design names must be there, and its tiers must stand up."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator
from dataclasses import replace
from typing import Any

from tinbook.facts import Facts
from tinbook.models import Book, CakeDesign, DesignTier, Finish, Flaw, Made, Path
from tinbook.models.cakes import IN_TIERS, NO_BORDER, WHOLE
from tinbook.models.reading import NONE
from tinbook.plans.cakes.asked import finished
from tinbook.plans.cakes.sizes import WRITTEN
from tinbook.plans.portions.cutting import portion_sizes
from tinbook.plans.rules.cakes_on_show import board_flaws, decoration_flaws
from tinbook.plans.rules.cakes_standing import said_at, standing_flaws
from tinbook.plans.rules.fields import FOLLOWS, link_flaws, unknown_word
from tinbook.plans.rules.finish import border_flaws, made_flaws
from tinbook.plans.rules.parts import word_flaws
from tinbook.tins import Tin

OF_CAKES = ("filling", "coat", "cover", "border", "layers", "height", "colour", "ribbon")
"""What is said about cakes alone: cups are neither cut, filled nor coated."""
STEPS = re.compile(r"[+-]?[0-9]+")
"""How a size is asked for by its steps."""
OF_BATTER = ("mixture", "filling", "layers", "batter_colour")
"""What foam does not have."""


def cake_flaws(design: CakeDesign, book: Book, facts: Facts, lost: Collection[str] = ()) -> tuple[Flaw, ...]:
    """Everything that stops a cake being worked out; `lost` are names that the book lacks only because of a problem
    reported elsewhere."""
    flaws = [
        *_tier_list_flaws(design),
        *_word_flaws(design, book, facts, lost),
        *board_flaws(design, book, facts, lost),
        *decoration_flaws(design, book, lost),
        *_size_flaws(design),
        *_travel_flaws(design),
        *_link_flaws(design, book, facts, lost),
    ]
    if not flaws:
        flaws += standing_flaws(design, book, facts)
    # what is said for all tiers is told once, of the topmost and so the smallest
    return tuple({(flaw.path, flaw.code): flaw for flaw in flaws}.values())


def tier_paths(design: CakeDesign) -> Iterator[tuple[Path, DesignTier]]:
    """Each tier and what stands beside the cake, with its place in the file."""
    for key, tiers in (("tiers", design.tiers), ("beside", design.beside)):
        yield from (((key, index), tier) for index, tier in enumerate(tiers))


def _tier_list_flaws(design: CakeDesign) -> Iterator[Flaw]:
    """No tiers, a tier wider than the one below, one that nothing can stand on, cups among tiers, pillars under the
    foot."""
    if not design.tiers:
        hint = 'list them from the bottom up, such as "[25 cm, 20 cm]"'
        yield Flaw(code="tiers", path=("tiers",), message="the cake has no tiers", hint=hint)
    lower: Tin | None = None
    for index, tier in enumerate(design.tiers):
        path, tin = ("tiers", index), tier.tier.tin
        if tin.kind.in_trays and len(design.tiers) > 1:
            hint = 'write them under "beside:"'
            yield Flaw(code="tiers", path=path, message="cupcakes cannot be a tier of a stacked cake", hint=hint)
        elif lower is not None and (flaw := _stands_flaw(path, tin, lower)):
            yield flaw
        if index == 0 and tier.on_pillars:
            message = "the bottom tier stands on the board, not on pillars"
            hint = "write it on the line for the tier above"
            yield Flaw(code="tiers", path=(*path, "on pillars"), message=message, hint=hint, on_key=True)
        lower = tin
    for index, tier in enumerate(design.beside):
        for key, said in (("on pillars", tier.on_pillars), ("dummy", tier.dummy)):
            if said:
                message, hint = "a cake that stands beside the main one cannot be a dummy", "take it out"
                if key != "dummy":
                    message = "a cake that stands beside the main one cannot stand on pillars"
                yield Flaw(code="tiers", path=("beside", index, key), message=message, hint=hint, on_key=True)


def _travel_flaws(design: CakeDesign) -> Iterator[Flaw]:
    """A single tier cannot travel in tiers, nor a cake on pillars whole; neither has a dowel through all of it."""
    if design.travels == IN_TIERS and len(design.tiers) == 1:
        message, hint = "there is only one tier, and it travels whole", "take it out"
        yield Flaw(code="travels", path=("travels",), message=message, hint=hint, on_key=True)
    elif design.travels == WHOLE and any(tier.on_pillars for tier in design.tiers):
        message, hint = "a cake on pillars cannot travel whole", f'write "{IN_TIERS}", or take the pillars out'
        yield Flaw(code="travels", path=("travels",), message=message, hint=hint)
    pillars = any(tier.on_pillars for tier in design.tiers)
    if design.through_dowel and (len(design.tiers) == 1 or pillars):
        message = "a dowel cannot go through a cake on pillars" if pillars else "a single tier needs no centre dowel"
        yield Flaw(code="travels", path=("through dowel",), message=message, hint="take it out", on_key=True)


def _stands_flaw(path: Path, upper: Tin, lower: Tin) -> Flaw | None:
    if lower.kind.solid != "upright" or lower.kind.in_trays:
        message, hint = f"nothing can stand on {lower.as_said}", "list the tiers from the bottom up"
        return Flaw(code="tiers", path=path, message=message, hint=hint)
    if any(top > low for top, low in zip(upper.bounds_mm, lower.bounds_mm, strict=True)):
        message = f"{upper.as_said} is wider than {lower.as_said} below it"
        return Flaw(code="tiers", path=path, message=message, hint="list the tiers from the bottom up, widest first")
    return None


def _word_flaws(design: CakeDesign, book: Book, facts: Facts, lost: Collection[str]) -> Iterator[Flaw]:
    bare = [path for path, tier in tier_paths(design) if not tier.dummy and design.of(tier, "mixture") is None]
    for path, tier in tier_paths(design):
        own = tier.model_fields_set
        if tier.tier.tin.kind.in_trays:
            for name in OF_CAKES:
                if name in own:
                    message = f'cupcakes have no "{name}": they are not filled and coated like a cake'
                    hint = 'take it out; what goes on them is their "icing"'
                    yield Flaw(code="tiers", path=(*path, name), message=message, hint=hint, on_key=True)
            yield from _icing_flaws(tier, path, book, facts, lost)
        elif tier.icing or tier.icing_each:
            key = "icing" if tier.icing else "icing each"
            message, hint = f'"{key}" is for cupcakes: {tier.tier.tin.name} has a "coat"', "take it out"
            yield Flaw(code="tiers", path=(*path, key), message=message, hint=hint, on_key=True)
        elif tier.dummy:
            for name in OF_BATTER:
                if name in own:
                    key = name.replace("_", " ")
                    message = f'a dummy is made of foam, so it has no "{key}"'
                    hint = 'take it out, or take "dummy" out'
                    yield Flaw(code="tiers", path=(*path, key), message=message, hint=hint, on_key=True)
        if tier.tier.tin.kind.solid != "upright" and "height" in own:
            message = f"the height of a {tier.tier.tin.kind.noun} is fixed by its shape"
            yield Flaw(code="tiers", path=(*path, "height"), message=message, hint="take it out", on_key=True)
        word = design.of(tier, "batter_colour")
        yield from _at(said_at(design, tier, path, "batter_colour"), word_flaws(None, word, (), book, facts, lost))
        if not tier.dummy and path not in bare[1:]:
            yield from _mixture_flaws(design, tier, path, book, facts, lost)
        if not tier.tier.tin.kind.in_trays:
            yield from _finish_flaws(design, tier, path, book, facts, lost)


def _mixture_flaws(
    design: CakeDesign, tier: DesignTier, path: Path, book: Book, facts: Facts, lost: Collection[str]
) -> Iterator[Flaw]:
    """A mixture that is there, is sound, and is baked in tins."""
    word, here = design.of(tier, "mixture"), said_at(design, tier, path, "mixture")
    if word is None:
        hint = 'add "mixture:", with the name of a recipe\'s file, here or for the whole cake'
        yield Flaw(code="mixture", path=path, message=f"which recipe is {tier.tier.tin.as_said} made with?", hint=hint)
    elif word in book.mixtures:
        if not book.mixtures[word].tins:
            message = f'"{word}" is made by weight, not by tins'
            yield Flaw(code="mixture", path=here, message=message, hint="name a recipe for a cake")
    elif word in lost:
        message, hint = f'its mixture "{word}" has a mistake in it', f"fix mixtures/{word}.yaml first"
        yield Flaw(code=FOLLOWS, path=here, message=message, hint=hint)
    else:
        yield from _at(here, link_flaws("mixture", [word], book.mixtures))


def _finish_flaws(
    design: CakeDesign, tier: DesignTier, path: Path, book: Book, facts: Facts, lost: Collection[str]
) -> Iterator[Flaw]:
    """What it is filled, coated and covered with, in what colour, and the border round it."""
    for name, role in (("filling", "filling"), ("coat", "final coat"), ("cover", "cover")):
        word = design.of(tier, name)
        if word is not None and word != NONE:
            made = Finish.model_construct(made_with=Made.model_construct(**{role: word}))
            here = said_at(design, tier, path, name)
            for flaw in made_flaws(made, book, facts, lost):
                message = flaw.message.replace("the final coat", "the coat")
                yield replace(flaw, path=here, message=message)
            if word in lost and word not in book.mixtures:
                message, hint = f'its {name} "{word}" has a mistake in it', "fix that file first"
                yield Flaw(code=FOLLOWS, path=here, message=message, hint=hint)
    colour = design.of(tier, "colour")
    yield from _at(said_at(design, tier, path, "colour"), word_flaws(None, colour, (), book, facts, lost))
    border = design.of(tier, "border")
    if border is not None and border is not NO_BORDER and border.pitch > 0.0:
        settled = finished(design, tier, None, book, facts)
        for flaw in border_flaws(border, settled, [tier.tier.tin]):
            yield replace(flaw, path=(*said_at(design, tier, path, "border"), *flaw.path[1:]))


def _icing_flaws(tier: DesignTier, path: Path, book: Book, facts: Facts, lost: Collection[str]) -> Iterator[Flaw]:
    """What goes on cups: something that is there, and how much of it only where it is."""
    if tier.icing is None:
        if tier.icing_each is not None:
            hint = 'add "icing:", with the name of a recipe\'s file'
            message = "how much of which icing?"
            yield Flaw(code="tiers", path=(*path, "icing each"), message=message, hint=hint, on_key=True)
        return
    role: dict[str, Any] = {"final coat": tier.icing}
    made = Finish.model_construct(made_with=Made.model_construct(**role))
    for flaw in made_flaws(made, book, facts, lost):
        message = flaw.message.replace("the final coat", "the icing")
        yield replace(flaw, path=(*path, "icing"), message=message)
    if tier.icing in lost and tier.icing not in book.mixtures:
        message, hint = f'its icing "{tier.icing}" has a mistake in it', "fix that file first"
        yield Flaw(code=FOLLOWS, path=(*path, "icing"), message=message, hint=hint)


def _at(path: Path, flaws: Iterator[Flaw]) -> Iterator[Flaw]:
    """The same flaws in another place."""
    return (replace(flaw, path=path) for flaw in flaws)


def _size_flaws(design: CakeDesign) -> Iterator[Flaw]:
    """Other sizes: as many tiers, none wider than the one below, and a name of their own."""
    for name, sizes in (design.sizes or {}).items():
        path, count = ("sizes", name), len(design.tiers)
        if name.strip().lower() == WRITTEN or STEPS.fullmatch(name.strip()):
            message, hint = f'"{name}" is already the name of a size that every cake has', "give this one another name"
            yield Flaw(code="sizes", path=path, message=message, hint=hint, on_key=True)
        if len(sizes) != count:
            message = f"this size has {len(sizes)} tier{'' if len(sizes) == 1 else 's'}, but the cake has {count}"
            hint = "list as many tiers, from the bottom up; for more or fewer, start another cake from this one"
            yield Flaw(code="sizes", path=path, message=message, hint=hint)
            continue
        for index, (size, tier) in enumerate(zip(sizes, design.tiers, strict=True)):
            here, tin, own = (*path, index), size.tin, tier.tier.tin
            if tin.kind.in_trays != own.kind.in_trays or tin.kind.solid != own.kind.solid:
                message = f"{tin.as_said} cannot replace {own.as_said}"
                yield Flaw(code="sizes", path=here, message=message, hint="write a tier of the same sort")
            elif index and (flaw := _stands_flaw(here, tin, sizes[index - 1].tin)):
                yield flaw


def _link_flaws(design: CakeDesign, book: Book, facts: Facts, lost: Collection[str]) -> Iterator[Flaw]:
    yield from (
        flaw
        for flaw in link_flaws("techniques", design.techniques, {*book.techniques, *lost})
        if design.techniques[int(flaw.path[1])] not in lost
    )
    if design.portion is not None and design.portion not in (sizes := portion_sizes(book, facts)):
        message = f'there is no portion called "{design.portion}"'
        yield unknown_word(("portion",), design.portion, sizes, message=message)
