"""The method of a mixture: its steps with amounts, the bake, the times, the techniques it names."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cached_property

from tinbook.models import Step
from tinbook.pages.base.dials import dial_words, dialled_step
from tinbook.pages.base.page import Desk
from tinbook.pages.base.shared import (
    DialView,
    Linked,
    PieceView,
    StepView,
    TimeView,
    dial_view,
    linked_techniques,
    minutes,
    step_view,
)
from tinbook.pages.mixture.baking import BakingView
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.baking.dials import heating, heats_in
from tinbook.plans.baking.oven import dial, own_dial
from tinbook.plans.base.versions import amount
from tinbook.plans.base.weighing import Batch
from tinbook.plans.measures.spooned import Measured
from tinbook.plans.mixtures.inline import StepPiece, pieces
from tinbook.plans.mixtures.steps import step_times


@dataclass(frozen=True, slots=True)
class TimeTotal:
    """A time for the whole method, named and spelled. `rest`: its minutes apart from the bake, least and most, for the
    bench to add to; empty if it includes no bake."""

    name: str
    words: str
    rest: str


@dataclass(frozen=True, kw_only=True)
class MethodView:
    """What the method's template can say; `lines` of the mix by index, `written_cake` its tins in words, `baking` how
    long it is in the oven, None if that is not known."""

    batch: Batch
    desk: Desk
    lines: Mapping[int, Measured]
    written_cake: str
    baking: BakingView | None

    @cached_property
    def steps(self) -> tuple[StepView, ...]:
        """The method, with amounts and times."""
        return tuple(self._steps())

    @property
    def bakes_in_a_step(self) -> bool:
        """Whether one step is the bake, so that its time stands there."""
        return any(step.bakes for step in self.steps)

    def _steps(self) -> Iterator[StepView]:
        mixture, baking = self.batch.mixture, self.baking
        for index, written in enumerate(mixture.method):
            heats = self._heating is not None and index == self._heating[0]
            # what is shown large beside the step is not repeated in it
            step = written if heats and self._heats_once(written) else dialled_step(written, mixture.bake, self.desk)
            said = tuple(self._piece_view(piece) for piece in pieces(step.do, mixture, self.desk.book))
            bakes = baking if baking and index == baking.step else None
            waits = TimeView(bakes.due, bakes.check_min, bakes.starts) if bakes else None
            dial = self._dial if heats else None
            yield replace(step_view(step, said, waits=waits), dial=dial, bakes=bakes is not None)

    @cached_property
    def _heating(self) -> tuple[int, float] | None:
        return heating(self.batch.mixture) if self.batch.mixture.bake else None

    def _heats_once(self, step: Step) -> bool:
        return len(list(heats_in(step.do, self.batch.mixture.bake))) == 1

    @property
    def _dial(self) -> DialView | None:
        bake = self.batch.mixture.bake
        if bake is None:
            return None
        heat_c = self._heating[1] if self._heating else bake.oven.celsius
        return dial_view(spell(dial(heat_c, self.desk.book, self.desk.facts)))

    @cached_property
    def dial_first(self) -> DialView | None:
        """What to set this house's oven to, if it bakes and no step says so."""
        return None if self._heating else self._dial

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
    def heat(self) -> str:
        """The temperature of the bake, with the house's own setting where that is different, otherwise with fan."""
        bake = self.batch.mixture.bake
        if bake is None:
            return ""
        dial = own_dial(bake.oven.celsius, self.desk.book, self.desk.facts)
        if dial is None:
            return formats.oven(bake.oven, self.desk.facts.numbers["fan difference"].value)
        return f"{formats.celsius(bake.oven.celsius)} ({dial_words(dial)})"

    @property
    def done(self) -> str:
        """When it is done, in the baker's words."""
        bake = self.batch.mixture.bake
        return bake.done or "" if bake else ""

    @cached_property
    def due(self) -> str:
        """How long it bakes in the written tins."""
        bake = self.batch.mixture.bake
        return self.baking.due if self.baking else formats.span(bake.time) if bake else ""

    @cached_property
    def times(self) -> tuple[TimeTotal, ...]:
        """Hands-on and waiting time for the whole method; for the bake in it, that of the written tins."""
        sums, step = step_times(self.batch.mixture.method), self._bake_step
        totals = [("Hands on", sums.hands_on_low_min, sums.hands_on_high_min, "")]
        low, high, rest = sums.waiting_low_min, sums.waiting_high_min, ""
        if self.baking and step and step.waiting:
            low, high = low - step.waiting.low.base, high - step.waiting.high.base
            rest = f"{low:g} {high:g}"
            bakes = self.baking.all_bakes_min
            low, high = low + bakes[0], high + bakes[1]
        totals.append(("Waiting", low, high, rest))
        return tuple(TimeTotal(name, minutes(least, most), other) for name, least, most, other in totals if most)

    @property
    def _bake_step(self) -> Step | None:
        at = self.baking.step if self.baking else None
        return self.batch.mixture.method[at] if at is not None else None

    @cached_property
    def techniques(self) -> tuple[Linked, ...]:
        """The techniques it names that the book shows."""
        return linked_techniques(self.batch.mixture.techniques, self.desk.book, self.desk.facts)
