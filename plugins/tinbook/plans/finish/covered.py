"""A cake from every tin, finished as the house finishes its cakes: at the usual height, or as one bakes."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.models.ledger import Itself, ledger_of
from tinbook.plans.base.bought import made_or_bought
from tinbook.plans.base.finishing import Finishing
from tinbook.plans.base.saying import saying
from tinbook.plans.base.weighing import Batch
from tinbook.plans.base.worked import Worked
from tinbook.plans.finish.boards import BoardRow, board_table
from tinbook.plans.finish.cake import Cake
from tinbook.plans.finish.cakes import Cakes
from tinbook.plans.finish.coating import CoatRow, coat_row, roles_of
from tinbook.plans.finish.covering import covers
from tinbook.plans.finish.pasting import PasteRow, paste_row
from tinbook.plans.finish.used import Correction, learned

COATS = ("filling", "crumb_coat", "final_coat")
"""The roles that are named; a border is piped with the final coat's mixture, if that can be piped."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CoveredRow:
    """One cake: what it takes of each mixture that fills and coats it, in the order of the table's mixtures."""

    cake: Cake
    owned: bool
    made: tuple[CoatRow, ...]
    paste: PasteRow | None
    board: BoardRow

    def coat_g(self, slug_at: int, role: str) -> tuple[float, float]:
        """What goes into a role, exactly and as the scales show it; the final coat includes its border and a dam."""
        row = self.made[slug_at]
        if role == "filling":
            return row.filling_g, row.filling_shown_g
        if role == "crumb_coat":
            return row.crumb_g, row.crumb_shown_g
        return row.final_g + row.border_g, row.final_and_border_shown_g


@dataclass(frozen=True, kw_only=True)
class CoveredTable:
    """Cakes from every tin. `roles`: which mixture plays what; `mixtures`: each of those that fill and coat, once, by
    slug; `missing`: keys of roles for which the house names nothing that the book shows and that will do."""

    cakes: Cakes
    roles: Mapping[str, Batch]
    mixtures: Mapping[str, Batch]
    cover: Batch | None
    missing: tuple[str, ...]
    learned: Mapping[str, Correction]
    rows: tuple[CoveredRow, ...]
    worked: Worked

    @property
    def finishing(self) -> Finishing:
        """The figures of the house, or of the cake."""
        return self.cakes.finishing

    def place_of(self, role: str) -> int:
        """The position, among the mixtures, of the one that plays a role."""
        return list(self.mixtures).index(self.roles[role].slug)


def covered_table(cakes: Cakes, book: Book, facts: Facts) -> CoveredTable:
    """Each of the cakes, finished with what the house, or the cake's own file, names for it."""
    settled = cakes.finishing
    name = ("players", Itself(settled), Itself(facts))
    players = ledger_of(book).lately(name, lambda: _players(settled, book, facts))
    rows = tuple(_row(board, settled, facts, players) for board in board_table(cakes, book, facts, chosen=True).rows)
    worked = Worked(
        saying("covered"),
        (
            cakes.said,
            saying("stays_in_bowl", share=settled["stays_in_the_bowl"]),
            *(correction.told for correction in players.learned.values() if correction.told),
        ),
        ("common practice",),
    )
    return CoveredTable(
        cakes=cakes,
        roles=players.roles,
        mixtures=players.mixtures,
        cover=players.cover,
        missing=players.missing,
        learned=players.learned,
        rows=rows,
        worked=worked,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Players:
    """Who plays what on cakes finished alike, whatever their tins: as in the table; `plays` has every role of each
    mixture."""

    roles: Mapping[str, Batch]
    mixtures: Mapping[str, Batch]
    cover: Batch | None
    missing: tuple[str, ...]
    learned: Mapping[str, Correction]
    plays: Mapping[str, tuple[str, ...]]


def _players(settled: Finishing, book: Book, facts: Facts) -> _Players:
    named = {role: _named(getattr(settled.made, role), book, facts) for role in (*COATS, "cover")}
    roles = {role: batch for role in COATS if (batch := named[role]) and role.replace("_", " ") in batch.kind.plays}
    cover = named["cover"] if named["cover"] and covers(named["cover"]) else None
    mixtures = {batch.slug: batch for batch in roles.values()}
    corrections = {slug: learned(batch, book, facts) for slug, batch in mixtures.items()}
    if cover:
        corrections[cover.slug] = learned(cover, book, facts)
    missing = tuple(role for role in COATS if role not in roles) + (() if cover else ("cover",))
    return _Players(
        roles=roles,
        mixtures=mixtures,
        cover=cover,
        missing=missing,
        learned=corrections,
        plays={slug: _plays(batch, roles, settled) for slug, batch in mixtures.items()},
    )


def _named(word: str | None, book: Book, facts: Facts) -> Batch | None:
    """What the book shows under a name."""
    return made_or_bought(word, book, facts) if word else None


def _plays(batch: Batch, roles: Mapping[str, Batch], settled: Finishing) -> tuple[str, ...]:
    """What a mixture is on these cakes: the roles it is named for, and the border with the final coat."""
    named = {role.replace("_", " ") for role, player in roles.items() if player.slug == batch.slug}
    return tuple(
        role for role in roles_of(batch, settled) if role in named or (role == "border" and "final coat" in named)
    )


def _row(board: BoardRow, settled: Finishing, facts: Facts, players: _Players) -> CoveredRow:
    cake, owned, cover, learnt = board.cake, board.owned, players.cover, players.learned
    made = tuple(
        coat_row(batch, cake, owned, settled, facts, roles=players.plays[slug], factor=learnt[slug].factor)
        for slug, batch in players.mixtures.items()
    )
    return CoveredRow(
        cake=cake,
        owned=owned,
        made=made,
        paste=paste_row(cover, cake, owned, settled, facts, learnt[cover.slug].factor) if cover else None,
        board=board,
    )
