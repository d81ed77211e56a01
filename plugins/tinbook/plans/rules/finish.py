"""Rules between the figures a cake is finished by: layers, coats and borders that fit one another."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from tinbook.engine.layers import layer_for_mm
from tinbook.facts import Facts
from tinbook.models import Book, Finish, Flaw, Mixture, Portions
from tinbook.plans.base.finishing import Finishing, finishing
from tinbook.plans.finish.cake import Cake
from tinbook.tins import Tin
from tinbook.tins.growth import outline_of

THIN_MM = 10.0
"""The least side of a portion (house judgement)."""
COATS = {"filling": "filling", "crumb_coat": "crumb coat", "final_coat": "final coat"}


def finish_flaws(finish: Finish, book: Book, facts: Facts) -> Iterator[Flaw]:
    """Figures of the house that cannot go together; `book` with them already in it."""
    yield from _rise_flaws(finish, facts)
    settled = finishing(finish, facts)
    yield from _height_flaws(finish, settled)
    tins = [own.tin for own in book.tins]
    yield from _border_flaws(finish, settled, tins)
    yield from portion_flaws(finish.portions, [own.tin for own in book.tins if own.have])


def mixture_finish_flaws(mixture: Mixture, book: Book, facts: Facts) -> Iterator[Flaw]:
    """The same of one mixture's own figures, at its own tins."""
    own = mixture.finish
    if own is None:
        return
    settled = finishing(book.finish, facts, own)
    flaws = [*_rise_flaws(own, facts), *_height_flaws(own, settled)]
    flaws += _border_flaws(own, settled, [tin for _, tin in mixture.tins])
    flaws += portion_flaws(own.portions, [tin for _, tin in mixture.tins])
    for flaw in flaws:
        yield Flaw(code=flaw.code, path=("finish", *flaw.path), message=flaw.message, hint=flaw.hint)


def _rise_flaws(finish: Finish, facts: Facts) -> Iterator[Flaw]:
    for kind in finish.rise or {}:
        if kind not in facts.kinds or not facts.kinds[kind].rise:
            rising = ", ".join(key for key, each in facts.kinds.items() if each.rise)
            yield Flaw(
                code="unknown word",
                path=("rise", kind),
                message=f'"{kind}" is no kind of cake',
                hint=f"known here: {rising}",
                on_key=True,
            )


def _height_flaws(finish: Finish, settled: Finishing) -> Iterator[Flaw]:
    """A stack that its filling fills up, and coats thicker than a layer."""
    for index, height_mm in enumerate(settled.heights_mm):
        try:
            layer_mm = layer_for_mm(height_mm, settled.layers, settled["filling"])
        except ValueError as error:
            at = ("heights", index) if finish.heights else ("layers",)
            yield Flaw(
                code="finish", path=at, message=str(error), hint="write fewer layers, less filling or a higher cake"
            )
            return
        for key, name in COATS.items():
            if getattr(finish, key) and settled[key] > layer_mm:
                told = f"a {name} of {settled[key]:g} mm is thicker than the layers, {layer_mm:.0f} mm each"
                yield Flaw(code="finish", path=(name,), message=told, hint="write millimetres, such as 5 mm")


def _border_flaws(finish: Finish, settled: Finishing, tins: Sequence[Tin]) -> Iterator[Flaw]:
    """More marks than the edge of the smallest cake has room for, and strokes and pitches that cannot be."""
    border = finish.border
    if border is None:
        return
    cakes = [Cake(tin, settled.heights_mm[0], 1) for tin in tins if not tin.kind.in_trays]
    if not cakes:
        return
    small = min(cakes, key=lambda cake: cake.outline.edge_mm)
    edge_mm = small.outline.grown(min(settled.coats_mm, 0.9 * small.outline.room_mm)).edge_mm
    if border.pitch > edge_mm:
        told = f"one mark every {border.pitch:g} mm does not go round a {small.tin.name}, {edge_mm:.0f} mm"
        yield Flaw(
            code="finish",
            path=("border", "pitch"),
            message=told,
            hint="write how far one mark is from the next, such as 14 mm",
        )
    elif border.count and border.count * border.pitch > edge_mm * 1.02:
        room = int(edge_mm / border.pitch)
        told = (
            f"{border.count} {border.marks} {border.pitch:g} mm apart are longer than the edge of a "
            f"{small.tin.name}, {edge_mm:.0f} mm"
        )
        hint = f"it has room for {room}; leave the count out to have it worked out"
        yield Flaw(code="finish", path=("border", "count"), message=told, hint=hint)


def portion_flaws(portions: Portions | None, tins: Sequence[Tin]) -> Iterator[Flaw]:
    """A portion that is larger than the smallest cake, or so thin that no knife cuts it."""
    cakes = [tin for tin in tins if not tin.kind.in_trays]
    small = min(cakes, key=lambda tin: outline_of(tin).area_mm2, default=None)
    for kind, sides in portions or ():
        if sides is None:
            continue
        size = f"{sides[0]:g} x {sides[1]:g} mm"
        if min(sides) < THIN_MM:
            told = f"a portion of {size} is too thin to be cut"
            yield Flaw(
                code="finish",
                path=("portions", kind),
                message=told,
                hint=f"{THIN_MM:g} mm is the least, such as 25 mm x 50 mm",
            )
        elif small and sides[0] * sides[1] > outline_of(small).area_mm2:
            told = f"a portion of {size} is larger than the smallest cake, {small.name}"
            yield Flaw(
                code="finish",
                path=("portions", kind),
                message=told,
                hint="write width and length seen from above, such as 25 mm x 50 mm",
            )
