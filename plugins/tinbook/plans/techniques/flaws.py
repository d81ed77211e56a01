"""What contradicts itself in a technique: words, pictures, time windows, and the order of its steps."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from tinbook.facts import Facts
from tinbook.models import Book, Flaw, Technique
from tinbook.plans.mixtures.inline import mark_flaws
from tinbook.problems import nearest


def technique_flaws(technique: Technique, book: Book, facts: Facts) -> Iterator[Flaw]:
    """Rules between the fields of a technique."""
    for index, word in enumerate(technique.care):
        if word not in facts.traits:
            close = nearest(word, facts.traits)
            hint = f'did you mean "{close}"?' if close else "choose from: " + ", ".join(sorted(facts.traits))
            yield Flaw(
                code="unknown word", path=("care", index), message=f'there is no caution called "{word}"', hint=hint
            )
    yield from mark_flaws("steps", technique.steps, [material.take for material in technique.materials], book)
    yield from _picture_flaws(technique)
    yield from _order_flaws(technique)
    for index, step in enumerate(technique.steps):
        path = ("steps", index)
        if step.stands and step.keeps and step.stands.minutes > step.keeps.minutes:
            message = f"it must stand for {step.stands.written} but only keeps for {step.keeps.written}"
            yield Flaw(code="windows", path=(*path, "stands"), message=message, hint="correct whichever is wrong")
        if step.ahead and step.keeps and step.ahead.minutes > step.keeps.minutes:
            message = f"it can be done {step.ahead.written} ahead but only keeps for {step.keeps.written}"
            yield Flaw(code="windows", path=(*path, "ahead"), message=message, hint="correct whichever is wrong")


def _picture_flaws(technique: Technique) -> Iterator[Flaw]:
    files = [picture.file for picture in technique.pictures]
    for index, step in enumerate(technique.steps):
        if step.picture and step.picture not in files:
            close = nearest(step.picture, files)
            hint = f'did you mean "{close}"?' if close else 'list it under "pictures:", with its alt text'
            yield Flaw(
                code="no picture",
                path=("steps", index, "picture"),
                message=f'no picture "{step.picture}" is listed here',
                hint=hint,
            )
    for index, file in enumerate(files):
        if file in files[:index]:
            yield Flaw(
                code="twice",
                path=("pictures", index, "file"),
                message=f'"{file}" is listed twice',
                hint="keep one of the two",
            )


def _order_flaws(technique: Technique) -> Iterator[Flaw]:
    """Names that two steps share, steps that wait for one that does not exist, or for themselves."""
    names: dict[str, int] = {}
    for index, step in enumerate(technique.steps):
        if step.called in names:
            message = f'two steps are called "{step.called}"'
            yield Flaw(
                code="twice", path=("steps", index, "called"), message=message, hint="give one of them another name"
            )
        elif step.called:
            names[step.called] = index
    waits: dict[int, tuple[int, ...]] = {}
    for index, step in enumerate(technique.steps):
        for place, word in enumerate(step.after):
            if word not in names:
                close = nearest(word, names)
                hint = f'did you mean "{close}"?' if close else 'name the step it follows with "called: ..."'
                yield Flaw(
                    code="no such step",
                    path=("steps", index, "after", place),
                    message=f'there is no step called "{word}"',
                    hint=hint,
                )
        waits[index] = tuple(names[word] for word in step.after if word in names)
    for index in waits:
        if index in reached(waits, index):
            hint = 'take the name out of "after:", here or in the steps between'
            yield Flaw(
                code="waits for itself",
                path=("steps", index, "after"),
                message="the step is waiting for itself",
                hint=hint,
            )


def reached(waits: Mapping[int, tuple[int, ...]], start: int) -> set[int]:
    """Every step that `start` waits for, directly or through others."""
    seen: set[int] = set()
    ahead = list(waits[start])
    while ahead:
        step = ahead.pop()
        if step not in seen:
            seen.add(step)
            ahead += waits[step]
    return seen
