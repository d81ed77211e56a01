"""The method of a mixture: its steps with amounts, the bake, the times, the techniques it names."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from tinbook.pages.base.page import Desk
from tinbook.pages.base.shared import Linked, PieceView, StepView, linked_techniques, named_times, step_view
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.baking.oven import own_dial
from tinbook.plans.base.versions import amount
from tinbook.plans.base.weighing import Batch
from tinbook.plans.measures.spooned import Measured
from tinbook.plans.mixtures.inline import StepPiece, pieces


@dataclass(frozen=True)
class MethodView:
    """What the method's template may say; `lines` of the mix by their index, `written_cake` its tins in words."""

    batch: Batch
    desk: Desk
    lines: Mapping[int, Measured]
    written_cake: str

    @property
    def steps(self) -> tuple[StepView, ...]:
        """The method, with amounts and times."""
        mixture, book = self.batch.mixture, self.desk.book
        return tuple(
            step_view(step, tuple(self._piece_view(piece) for piece in pieces(step.do, mixture, book)))
            for step in mixture.method
        )

    def _piece_view(self, piece: StepPiece) -> PieceView:
        if piece.tins:
            return PieceView(text=self.written_cake, tins=True)
        if piece.line is None:
            return PieceView(text=piece.text)
        if piece.share == 1:
            return PieceView(text=piece.text, amount=formats.written(self.lines[piece.line]), line=piece.line)
        part = amount(self.batch.ingredients[piece.line], piece.share, self.batch.steps, by_weight=True)
        return PieceView(text=piece.text, amount=formats.spelled(part), line=piece.line, share=piece.share)

    @property
    def fan_c(self) -> float:
        """How much cooler a fan oven is set."""
        return self.desk.facts.numbers["fan difference"].value

    @property
    def own_dial(self) -> str:
        """What the house's own oven is set to for it, where that is another figure than the recipe's."""
        bake = self.batch.mixture.bake
        dial = own_dial(bake.oven.celsius, self.desk.book, self.desk.facts) if bake else None
        return formats.kept_together(spell(dial)) if dial else ""

    @property
    def times(self) -> tuple[tuple[str, str], ...]:
        """Hands-on and waiting time of the whole method, named and spelled."""
        return named_times(self.batch.mixture.method)

    @property
    def techniques(self) -> tuple[Linked, ...]:
        """The techniques it names, as far as the book shows them."""
        return linked_techniques(self.batch.mixture.techniques, self.desk.book, self.desk.facts)
