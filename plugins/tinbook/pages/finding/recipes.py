"""Mixtures with their notes, and techniques with their steps and faults, as answers for Find."""

from __future__ import annotations

import re
from collections.abc import Iterator

from tinbook.models import Mixture, Step, Technique
from tinbook.pages.base.page import Desk
from tinbook.pages.base.shared import minutes, tin_name
from tinbook.pages.finding.find import Find
from tinbook.pages.mixture.variations import from_base
from tinbook.pages.spelling import formats
from tinbook.plans.base.weighing import Batch
from tinbook.plans.mixtures.keeping import season_names
from tinbook.plans.techniques.technique import technique_times

MARKED = re.compile(r"<([^<>]*)>")


def mixtures_found(desk: Desk) -> Iterator[Find]:
    """Each mixture, and each of its notes."""
    for slug, batch in desk.batches.items():
        mixture, address = batch.mixture, f"mixtures/{slug}"
        figure, under = _made(batch)
        yield Find(
            kind="mixture",
            title=mixture.name,
            address=address,
            second=_mixture_line(batch, desk),
            figure=figure,
            under=under,
            names=mixture.also,
            tags=(*mixture.tags, batch.kind.title, *season_names(mixture)),
            text=tuple(_mixture_text(mixture)),
            tin=mixture.tins[0][1].name if mixture.tins else "",
            at_bench=bool(mixture.tins),
        )
        for note in mixture.notes:
            yield Find(
                kind="note",
                title=note,
                address=address,
                anchor="notes",
                second=mixture.name,
                tags=(mixture.name, *mixture.also[:1]),
            )


def _made(batch: Batch) -> tuple[str, str]:
    """How many eggs it takes in its tins, or how much it makes."""
    if not batch.tins:
        return formats.grams(batch.makes_shown_g), "makes"
    tins = ", ".join(tin_name(count, tin) for count, tin in batch.tins)
    if not batch.eggs:
        return formats.grams(batch.mass_shown_g), tins
    return formats.with_unit(formats.mixed(batch.eggs), "egg" if batch.eggs <= 1 else "eggs"), tins


def _mixture_line(batch: Batch, desk: Desk) -> str:
    bake = batch.mixture.bake
    said = [batch.kind.title, from_base(batch.slug, desk.book) or ""]
    said += [f"{formats.celsius(bake.oven.celsius)}, {formats.span(bake.time)}"] if bake else []
    return "; ".join(words for words in said if words)


def _mixture_text(mixture: Mixture) -> Iterator[str]:
    yield mixture.about or ""
    yield from (line.take.name for line in mixture.mix)
    yield from map(_step_text, mixture.method)
    yield mixture.keeps or ""
    yield mixture.bake.done or "" if mixture.bake else ""


def _step_text(step: Step) -> str:
    return MARKED.sub(r"\1", f"{step.do} {step.done or ''}").strip()


def techniques_found(desk: Desk) -> Iterator[Find]:
    """Each technique, each of its steps, and what goes wrong with its remedy."""
    for slug, technique in desk.book.techniques.items():
        times = technique_times(technique).steps
        hands_on = times.hands_on_high_min
        yield Find(
            kind="technique",
            title=technique.name,
            address=f"techniques/{slug}",
            second=technique.purpose,
            figure=minutes(times.hands_on_low_min, hands_on) if hands_on else "",
            under="hands on" if hands_on else "",
            names=technique.also,
            tags=(technique.purpose, *technique.tags, *technique.works_with, technique.level or ""),
            text=tuple(_technique_text(technique)),
        )
        yield from _steps_found(slug, technique)
        for nth, fault in enumerate(technique.faults, 1):
            yield Find(
                kind="fault",
                title=fault.fault,
                address=f"techniques/{slug}",
                anchor=f"fault-{nth}",
                second=f"{technique.name}: {fault.cure}",
                tags=(technique.name, *technique.works_with),
                text=(fault.cure,),
            )


def _steps_found(slug: str, technique: Technique) -> Iterator[Find]:
    for nth, step in enumerate(technique.steps, 1):
        words = _step_text(step)
        yield Find(
            kind="step",
            title=f"{technique.name}, step {nth}",
            address=f"techniques/{slug}",
            anchor=f"step-{nth}",
            second=MARKED.sub(r"\1", step.do),
            figure=formats.span(step.hands_on) if step.hands_on else "",
            tags=(technique.name,),
            text=(words,),
        )


def _technique_text(technique: Technique) -> Iterator[str]:
    yield technique.makes or ""
    yield from (tool.tool for tool in technique.tools)
    yield from (material.take.name for material in technique.materials)
    yield from (part.part for part in technique.parts)
    yield from (*technique.checks, *technique.tips, *technique.cautions)
