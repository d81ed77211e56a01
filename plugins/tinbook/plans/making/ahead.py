"""How far ahead each part of a cake can be made and how it keeps; and how long the cake keeps, by its most delicate
part."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from tinbook.models import Book, Step
from tinbook.models.keeping import COOL, FRIDGE, Keep
from tinbook.plans.cakes.figures import techniques_of
from tinbook.plans.cakes.whole import WholeCake


@dataclass(frozen=True, slots=True, kw_only=True)
class AheadOf:
    """A part of a cake: what it is and its page; how far ahead its first steps can be done, min, 0 for none;
    `on_the_day`: how many steps of all of them are done on the day, None if no step says; how it keeps, as
    written."""

    name: str
    address: str
    ahead_min: float
    steps: int
    on_the_day: int | None
    keeps: tuple[Keep, ...]


@dataclass(frozen=True, kw_only=True)
class AheadTable:
    """Every part, in the order of the work. `keeps`: how long the cake does, by the part that keeps least, `least`;
    None if no part says. `unknown`: the parts that do not say."""

    parts: tuple[AheadOf, ...]
    keeps: Keep | None
    least: str
    unknown: tuple[str, ...]


def ahead_table(cake: WholeCake, book: Book) -> AheadTable:
    """The parts of a cake by their own steps and `keeps for`."""
    parts = tuple(_parts(cake, book))
    # decorations may stay on the table when the cake is eaten
    eaten = [each for each in parts if each.address.startswith("mixtures/")]
    known = [each for each in eaten if _longest(each.keeps, FRIDGE)]
    held = [_least(known, place) for place in (COOL, FRIDGE)]
    keeps, least = max((each for each in held if each), key=lambda each: each[0].minutes, default=(None, ""))
    unknown = tuple(each.name for each in eaten if each not in known)
    return AheadTable(parts=parts, keeps=keeps, least=least, unknown=unknown)


def _least(parts: Iterable[AheadOf], place: str) -> tuple[Keep, str] | None:
    """How long a cake of these parts keeps in one place, and the part that decides it; None if one cannot be kept
    there."""
    found = [(_longest(each.keeps, place), each.name) for each in parts]
    known = [(keep, name) for keep, name in found if keep is not None]
    if not known or len(known) < len(found):
        return None
    keep, name = min(known, key=lambda each: each[0].minutes)
    return (keep if keep.place == place else Keep(keep.minutes, place, f"{keep.written} {place}")), name


def _longest(keeps: Iterable[Keep], place: str) -> Keep | None:
    """How it keeps longest in a place. What is kept somewhere cool keeps as long in the fridge, though not the other
    way round; a freezer is nothing that a finished cake sees."""
    places = (COOL, FRIDGE) if place == FRIDGE else (COOL,)
    return max((keep for keep in keeps if keep.place in places), key=lambda keep: keep.minutes, default=None)


def _parts(cake: WholeCake, book: Book) -> Iterator[AheadOf]:
    slugs = dict.fromkeys(
        (
            *(tier.baked.batch.slug for tier in cake.every_tier if tier.baked),
            *(total.batch.slug for total in cake.mixtures),
            *(total.batch.slug for total in cake.pastes if total.batch),
        )
    )
    for slug in slugs:
        mixture = book.mixtures.get(slug)
        if mixture is not None:
            yield _part(mixture.name, f"mixtures/{slug}", mixture.method, mixture.keeps_for)
    for slug, technique in techniques_of(cake.design, book).items():
        yield _part(technique.name, f"techniques/{slug}", technique.steps, ())


def _part(name: str, address: str, steps: Iterable[Step], keeps: tuple[Keep, ...]) -> AheadOf:
    steps = tuple(steps)
    windows = [step.ahead.minutes if step.ahead else 0.0 for step in steps]
    return AheadOf(
        name=name,
        address=address,
        ahead_min=max(windows, default=0.0),
        steps=len(steps),
        on_the_day=sum(not window for window in windows) if any(windows) else None,
        keeps=keeps,
    )
