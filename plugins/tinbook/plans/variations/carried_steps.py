"""The steps a variation takes over from its base, every mark naming a line of the changed mix."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from tinbook.models import Flaw, Path, Step, Take
from tinbook.plans.mixtures.inline import MARK, lines_named
from tinbook.plans.variations.changed_method import ChangedMethod
from tinbook.plans.variations.changed_mix import ChangedMix, Slot


def carried_steps(mix: ChangedMix, method: ChangedMethod) -> tuple[tuple[Step, ...], list[Flaw]]:
    """The method with every mark naming a line of this mix, and the flaws of those that cannot."""
    olds = [line.take for line in mix.base]
    slots = {slot.base: slot for slot in mix.slots if slot.base is not None}
    news = [slot.line.take for slot in mix.standing if slot.line is not None]
    steps: list[Step] = []
    stale: dict[Path, list[int]] = {}
    flaws: list[Flaw] = []
    for step_slot in method.standing:
        step = step_slot.step
        assert step is not None
        if step_slot.change is not None:
            flaws += _own_flaws(mix, step, step_slot.change, olds)
            steps.append(step)
            continue
        number, text, meant = (step_slot.base or 0) + 1, step.do, set[Slot]()
        for named in reversed(list(lines_named(step.do, olds, mix.book))):
            slot = slots[named.line]
            meant.add(slot)
            if slot.line is None:
                stale.setdefault(slot.place or (), []).append(number)
            elif slot.place is not None:
                text = text[: named.start] + slot.line.take.name + text[named.end :]
        for named in lines_named(text, news, mix.book):
            slot = mix.standing[named.line]
            if slot.place is not None and slot not in meant:
                # something new in the mix has taken another line's name, or given plain text a meaning
                stale.setdefault(slot.place, []).append(number)
        for slot in _spoken_of(mix, step):
            stale.setdefault(_old_place(slot), []).append(number)
        steps.append(step if text == step.do else step.model_copy(update={"do": text}))
    flaws += [_stale(path, numbers) for path, numbers in stale.items()]
    return tuple(steps), flaws


def _old_place(slot: Slot) -> Path:
    """Where a swapped or left-out line is named in the variation's file."""
    place = slot.place or ()
    return (*place[:-1], "swap") if place[-1:] == ("for",) else place


def _stale(path: Path, numbers: list[int]) -> Flaw:
    """Steps of the base that no longer fit because of the change at `path`."""
    first, *others = sorted(set(numbers))
    message = f"step {first} of the base mentions it, and so no longer fits"
    if others:
        steps = " and ".join(map(str, (first, *others)))
        message = f"steps {steps} of the base mention it, and so no longer fit"
    hint = f'write {"them" if others else "it"} again under "method:", with "instead of: {first}"'
    return Flaw(code="step", path=path, message=message, hint=hint)


def _own_flaws(mix: ChangedMix, step: Step, index: int, olds: Sequence[Take]) -> Iterator[Flaw]:
    """Marks in a step written here that name a line of the base no longer in the mix."""
    standing = {mix.name_of(slot.line.take.name) for slot in mix.standing if slot.line is not None}
    slots = {slot.base: slot for slot in mix.slots if slot.base is not None}
    for named in lines_named(step.do, olds, mix.book):
        word, slot = step.do[named.start : named.end], slots[named.line]
        if mix.name_of(word) in standing:
            continue
        yield Flaw(
            code="step",
            path=("method", index, "do"),
            message=f'"{word}" is no longer in the mix',
            hint=f'did you mean "<{slot.line.take.name}>"?' if slot.line else "write the step without it",
            on_key=False,
            start=named.start,
            end=named.end,
        )


def _spoken_of(mix: ChangedMix, step: Step) -> Iterator[Slot]:
    """Lines swapped or left out whose ingredient a step of the base mentions outside its marks."""
    text = MARK.sub(" ", f"{step.do} {step.done or ''}").lower()
    standing = [mix.name_of(slot.line.take.name) for slot in mix.standing if slot.line is not None]
    for slot in mix.slots:
        if slot.place is None or slot.base is None:
            continue
        name = mix.name_of(mix.base[slot.base].take.name)
        if name in standing:
            continue
        names = {name, f"{name}s", *(mix.book.cards[name].also if name in mix.book.cards else ())}
        words = [word for word in map(str.lower, names) if _has(text, word)]
        if any(not any(_has(other, word) for other in standing) for word in words):
            yield slot


def _has(text: str, word: str) -> bool:
    return re.search(rf"(?<!\w){re.escape(word)}(?!\w)", text) is not None
