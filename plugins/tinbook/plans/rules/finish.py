"""Rules between the figures a cake is finished with: layers, coats and borders that fit together."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Sequence
from dataclasses import replace

from tinbook.engine.layers import layer_for_mm
from tinbook.facts import Facts
from tinbook.models import Book, Border, Finish, Flaw, Mixture, Path, Portions
from tinbook.plans.base.bought import stands_for
from tinbook.plans.base.finishing import Finishing, finishing
from tinbook.plans.finish.cake import Cake
from tinbook.plans.portions.cutting import SIDES
from tinbook.plans.rules.fields import link_flaws
from tinbook.problems import nearest
from tinbook.tins import Tin
from tinbook.tins.growth import area_and_edge

THIN_MM = 10.0
"""The least side of a portion (our own judgement)."""
KIND = re.compile(r"[^\W\d_]+(?:[ -][^\W\d_]+){0,2}")
"""What the house may call a portion: up to three words, letters only."""
MOST_OF_ROOM = 0.9
"""Coats count as filling at most this much of a tube: if they fill it, there is no edge to mark."""
MOST_CROWDED = 1.02
"""How much longer than the edge a row of marks may be: set that much closer, nobody sees it."""
COVERED = {"cover": "cake", "board": "board"}
"""What a paste covers, by its role."""
COATS = {"filling": "filling", "crumb_coat": "crumb coat", "final_coat": "final coat"}


def finish_flaws(finish: Finish, book: Book, facts: Facts) -> Iterator[Flaw]:
    """Figures of the house that do not go together; `book` already includes them."""
    yield from _rise_flaws(finish, facts)
    settled = finishing(finish, facts)
    yield from _height_flaws(finish, settled)
    tins = [own.tin for own in book.tins]
    yield from border_flaws(finish.border, settled, tins)
    yield from portion_flaws(finish.portions, [own.tin for own in book.tins if own.have])


def mixture_finish_flaws(mixture: Mixture, book: Book, facts: Facts, lost: Collection[str] = ()) -> Iterator[Flaw]:
    """The same for one mixture's own figures, in its own tins."""
    own = mixture.finish
    if own is None:
        return
    settled = finishing(book.finish, facts, own)
    flaws = [*_rise_flaws(own, facts), *_height_flaws(own, settled), *made_flaws(own, book, facts, lost)]
    flaws += border_flaws(own.border, settled, [tin for _, tin in mixture.tins])
    flaws += portion_flaws(own.portions, [tin for _, tin in mixture.tins])
    if own.dowels is not None:
        message, hint = "dowels belong to the tier, not to the mixture", "say how many in house/finish.yaml"
        flaws.append(Flaw(code="finish", path=("dowels",), message=message, hint=hint, on_key=True))
    for flaw in flaws:
        yield Flaw(code=flaw.code, path=("finish", *flaw.path), message=flaw.message, hint=flaw.hint,
                   on_key=flaw.on_key)  # fmt: skip


def made_flaws(finish: Finish, book: Book, facts: Facts, lost: Collection[str] = ()) -> Iterator[Flaw]:
    """What a cake should be made with that the book lacks, or that cannot be used that way; `lost` are names reported
    elsewhere. `book` includes its mixtures and cards."""
    named = finish.made_with.model_dump(by_alias=True, exclude_none=True) if finish.made_with else {}
    for role, word in named.items():
        path = ("made with", role)
        kind = _kind_of(word, book, facts)
        if kind is None:
            if word not in lost:
                known = [*book.mixtures, *(name for name, card in book.cards.items() if stands_for(name, card, facts))]
                yield from (replace(flaw, path=path) for flaw in link_flaws("made with", [word], known))
        elif role not in facts.kinds[kind].plays:
            can = [slug for slug, each in book.mixtures.items() if role in facts.kinds[each.kind].plays]
            hint = f"name another, such as {can[0]}" if can else "name another mixture"
            called = facts.kinds[kind].title.lower()
            message = f'"{word}" is {called}, which cannot be used as the {role}'
            if role in COVERED:
                message = f'"{word}" is {called}, which cannot be used to cover the {COVERED[role]}'
            yield Flaw(code="made with", path=path, message=message, hint=hint)


def _kind_of(word: str, book: Book, facts: Facts) -> str | None:
    """The kind of a mixture or of a bought card; None if the book has neither."""
    if word in book.mixtures:
        kind = book.mixtures[word].kind
        return kind if kind in facts.kinds else None
    name = book.house_word(word) or book.house_word(word.replace("-", " "))
    return stands_for(name, book.cards[name], facts) if name else None


def _rise_flaws(finish: Finish, facts: Facts) -> Iterator[Flaw]:
    for kind in finish.rise or {}:
        if kind not in facts.kinds or not facts.kinds[kind].rise:
            message = f'"{kind}" is not a kind of cake'
            hint = f"choose from: {', '.join(key for key, row in facts.kinds.items() if row.rise)}"
            yield Flaw(code="unknown word", path=("rise", kind), message=message, hint=hint, on_key=True)


def _height_flaws(finish: Finish, settled: Finishing) -> Iterator[Flaw]:
    """A stack with no room beside its filling, and coats thicker than a layer."""
    for index, height_mm in enumerate(settled.heights_mm):
        try:
            layer_mm = layer_for_mm(height_mm, settled.layers, settled["filling"])
        except ValueError as error:
            path: Path = ("heights", index) if finish.heights else ("layers",)
            hint = "use fewer layers or less filling, or make the cake taller"
            yield Flaw(code="finish", path=path, message=str(error), hint=hint)
            return
        for key, name in COATS.items():
            if getattr(finish, key) and settled[key] > layer_mm:
                message = f"a {name} of {settled[key]:g} mm is thicker than the layers, {layer_mm:.0f} mm each"
                yield Flaw(code="finish", path=(name,), message=message, hint="write millimetres, such as 5 mm")


def border_flaws(border: Border | None, settled: Finishing, tins: Sequence[Tin]) -> Iterator[Flaw]:
    """More marks than the edge of the smallest cake has room for, and strokes and pitches that cannot be right."""
    if border is None:
        return
    cakes = [tin for tin in tins if not tin.kind.in_trays]
    if not cakes:
        return
    smallest = Cake(min(cakes, key=lambda tin: area_and_edge(tin)[1]), settled.heights_mm[0], 1)
    edge_mm = smallest.outline.grown(min(settled.coats_mm, MOST_OF_ROOM * smallest.outline.room_mm)).edge_mm
    name = smallest.tin.as_said
    if border.pitch > edge_mm:
        message = (
            f"marks every {border.pitch:g} mm do not fit: the smallest cake, {name}, is {edge_mm:.0f} mm all round"
        )
        hint = "write how far one mark is from the next, such as 14 mm"
        yield Flaw(code="finish", path=("border", "pitch"), message=message, hint=hint)
    elif border.count and border.count * border.pitch > edge_mm * MOST_CROWDED:
        message = (
            f"{border.count} {border.marks}, one every {border.pitch:g} mm, do not fit round the smallest cake, "
            f"{name} ({edge_mm:.0f} mm)"
        )
        hint = f"there is room for {int(edge_mm / border.pitch)}; leave the count out and the book works it out"
        yield Flaw(code="finish", path=("border", "count"), message=message, hint=hint)


def portion_flaws(portions: Portions | None, tins: Sequence[Tin]) -> Iterator[Flaw]:
    """A portion larger than the smallest cake, or too thin to cut; or whose name is a slip for one of the trade's, or
    too long for a column's head."""
    cakes = [tin for tin in tins if not tin.kind.in_trays]
    smallest = min(cakes, key=lambda tin: area_and_edge(tin)[0], default=None)
    for kind, sides in (portions or {}).items():
        meant = nearest(kind, SIDES)
        if kind not in SIDES and (meant or not KIND.fullmatch(kind)):
            message = f'a portion cannot be called "{kind}"'
            hint = f'did you mean "{meant}"?' if meant else 'give it a short name in letters, such as "tea slice"'
            yield Flaw(code="unknown word", path=("portions", kind), message=message, hint=hint, on_key=True)
        wide_mm, long_mm = sides
        if min(sides) < THIN_MM:
            message = f"a portion of {wide_mm:g} x {long_mm:g} mm is too thin to cut"
            hint = f"make it at least {THIN_MM:g} mm, such as 25 mm x 50 mm"
            yield Flaw(code="finish", path=("portions", kind), message=message, hint=hint)
        elif smallest and wide_mm * long_mm > area_and_edge(smallest)[0]:
            message = f"a portion of {wide_mm:g} x {long_mm:g} mm is larger than the smallest cake, {smallest.as_said}"
            hint = "write width and length seen from above, such as 25 mm x 50 mm"
            yield Flaw(code="finish", path=("portions", kind), message=message, hint=hint)
