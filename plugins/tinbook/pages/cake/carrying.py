"""What a cake weighs, what holds it up and how it travels, spelled."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from tinbook.pages.cake.jobs import JobLine
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.making import between, heavy
from tinbook.pages.spelling.sayings import spell, spelled_all
from tinbook.plans.cakes.weights import CakeWeights, TierWeight
from tinbook.plans.making.held import Held, HeldUp
from tinbook.plans.making.journey import Boxed, Journey

number = formats.number


@dataclass(frozen=True, slots=True, kw_only=True)
class CarriedView:
    """Figures for the band; lines of weights, of what holds it up, of boxes; what is to be said beside each."""

    facts: tuple[tuple[str, str], ...]
    weights: tuple[JobLine, ...]
    weight_notes: tuple[str, ...]
    held: tuple[JobLine, ...]
    held_notes: tuple[str, ...]
    boxes: tuple[JobLine, ...]
    steps: tuple[str, ...]
    take: str
    warm: str


def carried_view(weights: CakeWeights, held: HeldUp, journey: Journey) -> CarriedView:
    """A cake's weights, supports and journey in words."""
    low, high = journey.warm_c
    remarks = tuple(f"{formats.title(words)}." for words in spelled_all(journey.remarks))
    return CarriedView(
        facts=tuple(_facts(weights, held)),
        weights=tuple(_weight_lines(weights)),
        weight_notes=tuple(_weight_notes(weights)),
        held=tuple(_held_lines(held)),
        held_notes=tuple(f"{formats.title(words)}." for words in spelled_all(held.remarks)),
        boxes=tuple(_box_lines(journey)),
        steps=(*(f"{spell(step)}." for step in journey.steps), *remarks),
        take=formats.title("; ".join(spelled_all(journey.take))),
        warm=formats.with_unit(formats.bounds(low, high), "°C"),
    )


def _facts(weights: CakeWeights, held: HeldUp) -> Iterator[tuple[str, str]]:
    if weights.whole.mass_g:
        yield heavy(weights.whole.mass_g), "in all"
    if weights.heaviest:
        yield heavy(weights.heaviest.whole.mass_g), "in the heaviest tier"
    count = sum(each.under.plan.count for each in held.tiers if each.under)
    if count:
        yield str(count), "pillars" if all(each.under.pillars for each in held.tiers if each.under) else "dowels"


def _figure(mass_g: float) -> tuple[str, str]:
    figure, _, unit = heavy(mass_g).partition(formats.NBSP)
    return figure, unit


def _weight_lines(weights: CakeWeights) -> Iterator[JobLine]:
    several = len(weights.tiers) > 1
    for each in reversed(weights.tiers if several else ()):
        yield _weight_line(_place(each), each, f"; carries {heavy(each.carries.mass_g)}" if each.carries.mass_g else "")
    if several and weights.board:
        figure, unit = _figure(weights.board_whole.mass_g)
        kinds = formats.sentence(spell_kind(kind) for kind in weights.board)
        yield JobLine(figure=figure, unit=unit, name="board", note=kinds if len(weights.board) > 1 else "")
    if weights.tiers and weights.whole.mass_g:
        figure, unit = _figure(weights.whole.mass_g)
        parts = ", ".join(
            f"{spell_kind(kind)} {heavy(part.mass_g)}" for kind, part in weights.by_kind.items() if part.mass_g
        )
        ends = between(weights.whole.low_g, weights.whole.high_g)
        yield JobLine(figure=figure, unit=unit, name="all of it", note=f"{ends}; {parts}")
    for each in weights.beside:
        yield _weight_line(spell(each.said), each, "")


def _place(each: TierWeight) -> str:
    return spell(each.said).partition(",")[0]


def _weight_line(name: str, each: TierWeight, more: str) -> JobLine:
    figure, unit = _figure(each.whole.mass_g)
    return JobLine(figure=figure, unit=unit, name=name, note=f"{between(each.whole.low_g, each.whole.high_g)}{more}")


def spell_kind(kind: str) -> str:
    """`coats`, `boards`: what a weight is of."""
    return {"coat": "coats", "board": "boards"}.get(kind, kind)


def _weight_notes(weights: CakeWeights) -> Iterator[str]:
    if weights.whole.high_g > weights.two_g:
        yield "It takes two people to lift it: at arm's length it is too heavy for one."
    elif weights.whole.mass_g:
        yield "One person can lift it, close to the body, both hands under the board."


def _held_lines(held: HeldUp) -> Iterator[JobLine]:
    if len(held.tiers) < 2:
        return
    for each in reversed(held.tiers):
        yield _held_line(each)
    if held.through_shown_mm is not None:
        long = formats.millimetres(held.through_shown_mm)
        note = f"about {long}: measure on the cake; sharpened, through all tiers and cards into the board"
        yield JobLine(figure="1", unit="", name="centre dowel", note=note)


def _held_line(each: Held) -> JobLine:
    place = spell(each.said).partition(",")[0]
    plate = "separator plate" if each.under and each.under.pillars else "card"
    card = f"{formats.centimetres(each.card_mm)} {plate} under it" if each.card_mm else ""
    if each.under is None:
        on = "on the board" if each.held_by == "board" else "on the foam below, which carries it"
        figure, unit = _figure(each.stands.mass_g)
        note = "; ".join(words for words in (on, card) if words)
        return JobLine(figure=figure, unit=unit, name=f"{place} and everything above it", note=note)
    plan = each.under.plan
    published = f"published charts say {formats.bounds(plan.low, plan.high)}"
    house = f"; {plan.count} is our own number" if plan.by_house and plan.house == plan.count else ""
    fewer = "; no room for more" if plan.fewer else ""
    what = "pillars" if each.under.pillars else "dowels"
    told = [
        f"about {formats.millimetres(each.under.long_shown_mm)}: measure on the cake",
        f"{formats.millimetres(round(plan.inset_mm))} in from its edge",
        f"each carries {heavy(each.each_g or 0.0)}",
        f"{published}{house}{fewer}",
        card,
    ]
    note = "; ".join(words for words in told if words)
    return JobLine(figure=str(plan.count), unit="", name=f"{what} under the {place} tier", note=note)


def _box_lines(journey: Journey) -> Iterator[JobLine]:
    boxes = [*([journey.whole] if journey.whole else []), *journey.tiers]
    for each in boxes:
        name = "box for all of it" if each.said is None else f"box for the {spell(each.said).partition(',')[0]} tier"
        yield JobLine(figure="1", unit="", name=name, note=f"{_sides(each)} inside; {heavy(each.weight.mass_g)}"
                      f"{', two people' if each.for_two else ''}")  # fmt: skip


def _sides(each: Boxed) -> str:
    sides = " × ".join(number(side / 10.0) for side in each.box_shown_mm)
    return formats.with_unit(sides, "cm")
