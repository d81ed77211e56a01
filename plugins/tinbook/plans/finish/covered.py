"""Covering at a glance: a cake of every tin, finished with what the house finishes its cakes with."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from tinbook.engine import coats, rounding
from tinbook.engine.tolerance import whole_up
from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.finishing import Finishing, finishing
from tinbook.plans.base.saying import saying
from tinbook.plans.base.weighing import Batch, steps_of, weigh
from tinbook.plans.base.worked import Worked
from tinbook.plans.finish.boards import BoardRow, board_row
from tinbook.plans.finish.cake import Cake, house_cakes
from tinbook.plans.finish.coating import coat_row
from tinbook.plans.finish.covering import covers, fills, only_fills
from tinbook.plans.finish.pasting import PasteRow, paste_row
from tinbook.plans.finish.used import Correction, learned

COATS = ("filling", "crumb_coat", "final_coat")
"""The roles that go together in one bowl where one mixture plays them."""


@dataclass(frozen=True, slots=True)
class MixtureNeed:
    """How much of one mixture is made for a cake, what stays in the bowl in it, and how many whole batches that is."""

    made_g: float
    made_shown_g: float
    batches: int


@dataclass(frozen=True, slots=True, kw_only=True)
class CoveredRow:
    """One cake. `coats_shown_g` by role, and `made` by mixture, in the order of the table."""

    cake: Cake
    owned: bool
    coats_g: tuple[float, ...]
    coats_shown_g: tuple[float, ...]
    made: tuple[MixtureNeed, ...]
    paste: PasteRow | None
    board: BoardRow


@dataclass(frozen=True, kw_only=True)
class CoveredTable:
    """Cakes of every tin at one height. `roles`: which mixture plays what; `mixtures`: each of those that fill and
    coat once, by slug; `missing`: keys of roles for which the house has named nothing that the book shows."""

    finishing: Finishing
    height_mm: float
    roles: Mapping[str, Batch]
    mixtures: Mapping[str, Batch]
    cover: Batch | None
    missing: tuple[str, ...]
    learned: Mapping[str, Correction]
    rows: tuple[CoveredRow, ...]
    worked: Worked


def covered_table(book: Book, facts: Facts, height_mm: float | None = None) -> CoveredTable:
    """Every cake, as high as asked or as the house usually makes them."""
    settled = finishing(book.finish, facts)
    height_mm = height_mm or settled.heights_mm[0]
    named = {role: _batch(getattr(settled.made, role), book, facts) for role in (*COATS, "cover")}
    roles = {role: batch for role in COATS if (batch := named[role]) and _plays(batch, role)}
    cover = named["cover"] if named["cover"] and covers(named["cover"]) else None
    mixtures = {batch.slug: batch for batch in roles.values()}
    corrections = {slug: learned(batch, book, facts) for slug, batch in mixtures.items()}
    if cover:
        corrections[cover.slug] = learned(cover, book, facts)
    missing = tuple(role for role in COATS if role not in roles) + (() if cover else ("cover",))
    under_mm = settled.coats_mm + settled["paste"]
    rows = tuple(
        _row(cake, owned, settled, facts, roles, cover, corrections, book)
        for cake, owned in house_cakes(book, height_mm, settled.layers, under_mm)
    )
    worked = Worked(
        saying("covered"),
        (
            saying("cake_before_coats", high_mm=height_mm, layers=settled.layers),
            saying("stays_in_bowl", share=settled["stays_in_the_bowl"]),
            *(correction.told for correction in corrections.values() if correction.told),
        ),
        ("common practice",),
    )
    return CoveredTable(
        finishing=settled,
        height_mm=height_mm,
        roles=roles,
        mixtures=mixtures,
        cover=cover,
        missing=missing,
        learned=corrections,
        rows=rows,
        worked=worked,
    )


def _batch(slug: str | None, book: Book, facts: Facts) -> Batch | None:
    """A mixture the book shows."""
    return weigh(slug, book.mixtures[slug], book, facts) if slug and slug in book.mixtures else None


def _plays(batch: Batch, role: str) -> bool:
    """Whether it can play the role: what is too soft to coat with only fills."""
    return fills(batch) and (role == "filling" or not only_fills(batch))


def _row(
    cake: Cake,
    owned: bool,
    settled: Finishing,
    facts: Facts,
    roles: Mapping[str, Batch],
    cover: Batch | None,
    corrections: Mapping[str, Correction],
    book: Book,
) -> CoveredRow:
    grams, by_mixture = [], dict[str, float]()
    for role, batch in roles.items():
        alone = only_fills(batch)
        coat = coat_row(batch, cake, owned, settled, facts, corrections[batch.slug].factor, alone)
        used_g = {"filling": coat.filling_g, "crumb_coat": coat.crumb_g, "final_coat": coat.final_g + coat.border_g}
        grams.append(used_g[role])
        by_mixture[batch.slug] = by_mixture.get(batch.slug, 0.0) + used_g[role]
    needs = tuple(_need(slug, used_g, roles, settled, book) for slug, used_g in by_mixture.items())
    steps = steps_of(book)
    return CoveredRow(
        cake=cake,
        owned=owned,
        coats_g=tuple(grams),
        coats_shown_g=tuple(rounding.scales(coat_g, steps) for coat_g in grams),
        made=needs,
        paste=paste_row(cover, cake, owned, settled, facts, corrections[cover.slug].factor) if cover else None,
        board=board_row(cake, owned, settled, facts, steps),
    )


def _need(slug: str, used_g: float, roles: Mapping[str, Batch], settled: Finishing, book: Book) -> MixtureNeed:
    batch = next(batch for batch in roles.values() if batch.slug == slug)
    made_g = coats.with_bowl(used_g, settled["stays_in_the_bowl"])
    batches = whole_up(made_g / batch.makes_g)
    return MixtureNeed(made_g, rounding.scales_up(made_g, steps_of(book)), batches)
