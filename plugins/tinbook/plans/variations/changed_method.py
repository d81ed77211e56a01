"""The method of a variation: the steps of its base, with its changes, additions and omissions."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from tinbook.models import Flaw, Path, Step, StepChange
from tinbook.plans.variations.changed_mix import OF_BASE

_KINDS = {
    "instead_of": "instead of", "add_after": "add after", "add_before": "add before", "leave_out": "leave out",
}  # fmt: skip
_MOST_NAMED = 3
"""How many steps of the base a hint lists."""


@dataclass(slots=True, eq=False)
class StepSlot:
    """A place in the method: its step, None if it is left out; its number in the base from 0, None if added.

    `change` is its number in the variation's file, None if nothing is changed.
    """

    step: Step | None
    base: int | None
    change: int | None = None
    beside: StepSlot | None = None


class ChangedMethod:
    """The base's steps with the changes made; `flaws` are those of the changes. `own`: a method written afresh."""

    def __init__(self, base: Sequence[Step], written: Sequence[StepChange]) -> None:
        self.base = base
        self.own = bool(written) and not any(_kinds(change) for change in written)
        self.slots = [StepSlot(step, index) for index, step in enumerate(base)]
        self._first = tuple(self.slots)
        self.flaws: list[Flaw] = []
        if self.own:
            self.slots = [StepSlot(_step(change), None, index) for index, change in enumerate(written)]
            return
        for index, change in enumerate(written):
            self.flaws += self._make(change, index)

    @property
    def standing(self) -> tuple[StepSlot, ...]:
        """The slots with a step in them."""
        return tuple(slot for slot in self.slots if slot.step is not None)

    def _make(self, change: StepChange, index: int) -> Iterator[Flaw]:
        """Make one change, or say why not."""
        path: Path = ("method", index)
        kinds = _kinds(change)
        if len(kinds) != 1:
            yield _where(kinds, path)
            return
        (key,) = kinds
        place: Path = (*path, _KINDS[key])
        if (key == "leave_out") == bool(change.do):
            message, hint = "this step does not say what to do", 'add "do: ..."'
            if change.do:
                message, hint = "this step is left out", 'take "do" out, or write "instead of"'
            yield Flaw(code="step", path=place, message=message, hint=hint)
            return
        slot = self._slot(str(getattr(change, key)), place)
        if isinstance(slot, Flaw):
            yield slot
            return
        if key in ("add_after", "add_before"):
            self._add(change, index, slot, after=key == "add_after")
            return
        if slot.change is not None:
            message = f"step {(slot.base or 0) + 1} of the base is changed twice"
            yield Flaw(code="twice", path=place, message=message, hint="make the two changes one")
            return
        slot.change = index
        called = slot.step.called if slot.step else None
        slot.step = _step(change, called) if key == "instead_of" else None

    def _add(self, change: StepChange, number: int, beside: StepSlot, after: bool) -> None:
        """Put a step before another, or after it and everything already added after it."""
        index = self.slots.index(beside)
        if after:
            index += 1
            while index < len(self.slots) and self.slots[index].beside is beside:
                index += 1
        self.slots.insert(index, StepSlot(_step(change), None, number, beside if after else None))

    def _slot(self, word: str, path: Path) -> StepSlot | Flaw:
        """The step of the base that `word` means: its number from 1, or words that only it has."""
        count = len(self.base)
        if not count:
            hint = 'write this method out in full, without "instead of" or "add"'
            return Flaw(code=OF_BASE, path=path, message="the base has no method", hint=hint)
        if word.isascii() and word.isdigit():
            if len(word) < 4 and 1 <= int(word) <= count:
                return self._first[int(word) - 1]
            message, hint = f"the base has no step {word[:6]}", f"its steps are numbered 1 to {count}"
            return Flaw(code=OF_BASE, path=path, message=message, hint=hint)
        small = " ".join(word.lower().split())
        indexes = [
            index
            for index, step in enumerate(self.base)
            if small in _plain(step) or small == (step.called or "").lower()
        ]
        if len(indexes) == 1:
            return self._first[indexes[0]]
        if not indexes:
            hint = f"write its number, from 1 to {count}, or some of its words"
            return Flaw(code=OF_BASE, path=path, message="no step of the base says that", hint=hint)
        message = "more than one step of the base says that"
        hint = f"steps {' and '.join(str(index + 1) for index in indexes[:_MOST_NAMED])} do: write the number"
        return Flaw(code=OF_BASE, path=path, message=message, hint=hint)


def _kinds(change: StepChange) -> list[str]:
    return [key for key in _KINDS if getattr(change, key) is not None]


def _where(kinds: Sequence[str], path: Path) -> Flaw:
    """A step among changes that does not say where it goes, or says so twice."""
    if not kinds:
        hint = 'add "add after: 3", or "instead of: 3": the number of a step in the recipe it starts from'
        return Flaw(code="step", path=path, message="where does this step go?", hint=hint)
    first, second = (_KINDS[key] for key in kinds[:2])
    message, hint = f'one step says both "{first}" and "{second}"', "make it two changes, each after a dash"
    return Flaw(code="step", path=(*path, second), message=message, hint=hint, on_key=True)


def _plain(step: Step) -> str:
    """What a step says, without its marks, in lower case."""
    return " ".join(step.do.replace("<", "").replace(">", "").lower().split())


def _step(change: StepChange, called: str | None = None) -> Step:
    """The step as written, under the name that others wait for."""
    values = {name: getattr(change, name) for name in Step.model_fields}
    return Step.model_construct(**{**values, "called": change.called or called})
