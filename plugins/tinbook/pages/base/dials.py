"""Texts that name an oven temperature, with the house's own dial setting beside it."""

from __future__ import annotations

from tinbook.models import Bake, Step
from tinbook.pages.base.page import Desk
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.baking.dials import dials_in
from tinbook.plans.base.saying import Saying


def dial_words(dial: Saying) -> str:
    """`135 °C fan on this oven's dial`."""
    return f"{formats.kept_together(spell(dial))} on this oven's dial"


def dialled(text: str, bake: Bake | None, desk: Desk) -> str:
    """A text with the setting here after each oven temperature: `160 °C (135 °C fan on this oven's dial)`."""
    said, start = list[str](), 0
    for found in dials_in(text, bake, desk.book, desk.facts):
        said += [text[start : found.end], f" ({dial_words(found.dial)})"]
        start = found.end
    return "".join((*said, text[start:])) if said else text


def dialled_step(step: Step, bake: Bake | None, desk: Desk) -> Step:
    """The same for what a step says to do and when it is done."""
    do, done = dialled(step.do, bake, desk), dialled(step.done, bake, desk) if step.done else step.done
    return step if (do, done) == (step.do, step.done) else step.model_copy(update={"do": do, "done": done})
