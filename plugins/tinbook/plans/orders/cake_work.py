"""The tasks of a whole cake, in the order of the work: lined, mixed, baked, filled, covered, put together."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from tinbook.models import Technique
from tinbook.models.technique import BOARD, TIER, TIERS, TINS, WHOLE
from tinbook.plans.baking.tin_times import bake_step
from tinbook.plans.base.saying import saying
from tinbook.plans.base.scaling import mixes
from tinbook.plans.base.weighing import Batch
from tinbook.plans.cakes.figures import techniques_of
from tinbook.plans.cakes.oven_loads import OvenLoad, OvenPlan
from tinbook.plans.cakes.whole import WholeCake
from tinbook.plans.orders.stints import stints
from tinbook.plans.orders.tasks import SLOT_MIN, After, rounds
from tinbook.plans.orders.work import DAY_MIN, EVER_MIN, Work
from tinbook.plans.techniques.naming import mixture_called
from tinbook.plans.techniques.technique import used_words

LINED_MIN = DAY_MIN
"""How long a lined tin may stand before it is filled (our own judgement)."""
INTO_OVEN_MIN = 15.0
"""How soon batter goes into the oven (common practice, no source)."""

Ends = list[After]


def cake_work(work: Work, cake: WholeCake, part: str, baked: Ends, made: Mapping[str, Ends]) -> Ends:
    """The tasks of a cake once it is baked, and what has to be over before it goes out. `baked`: what has to be over
    before its tiers are cut; `made`: icings and pastes that are made already, by recipe; `part` begins their names."""
    techniques = techniques_of(cake.design, work.book)
    counts = {each.technique: each.count for each in cake.design.decorations}
    tiers = max(1, sum(not tier.asked.tin.kind.in_trays for tier in cake.every_tier))
    there = bool(work.order.delivered) and len(cake.tiers) > 1 and not cake.design.goes_whole
    icings = {**icing_work(work, batches_of(cake), part, skip=made), **made}
    icings = {slug: icings[slug] for slug in (batch.slug for batch, _, _ in batches_of(cake)) if slug in icings}

    def done(slug: str, technique: Technique, after: Iterable[After], times: int = 1) -> Ends:
        said, steps = saying("task_technique", technique=technique.name), technique.steps
        if there and technique.done_to in (WHOLE, None):
            last = [step for step in steps if not step.ahead]
            work.there_min += times * sum(step.hands_on.high.base for step in last if step.hands_on)
            steps = tuple(step for step in steps if step.ahead)
        chain = stints(steps)
        return work.add(f"{part}{slug}", chain, said, after=after, times=times, of=slug) if chain else list(after)

    def of(*where: str | None) -> list[tuple[str, Technique]]:
        # in the order in which the cake names them
        named = [slug for slug in cake.design.techniques if slug in techniques]
        order = dict.fromkeys((*named, *techniques))
        return [(slug, techniques[slug]) for slug in order if techniques[slug].done_to in where]

    beforehand: Ends = []
    for slug, technique in of(None):
        beforehand += done(slug, technique, _pastes_of(technique, icings, work), counts.get(slug, 1))
    every_icing = [after for ends in icings.values() for after in ends]
    tier, iced = baked, False
    for slug, technique in of(TIERS, TIER):
        words = (*used_words(technique), *technique.works_with)
        takes = not iced and any(mixture_called(word, work.book) for word in words)
        times = tiers if technique.done_to == TIERS else 1
        tier = done(slug, technique, [*tier, *(every_icing if takes else ())], times)
        iced = iced or takes
    board: Ends = []
    for slug, technique in of(BOARD):
        board = done(slug, technique, board)
    whole = [*tier, *board, *(() if iced else every_icing)]
    for slug, technique in of(WHOLE):
        whole = done(slug, technique, whole)
    _last(work, beforehand, whole)
    return [*whole, *beforehand]


def _last(work: Work, beforehand: Ends, whole: Ends) -> None:
    """What of the decorations cannot be done ahead comes after everything else."""
    keys = {after.key for after in beforehand}
    for place, task in enumerate(work.tasks):
        if task.key in keys and work.ahead_of[task.key] == work.on_the_day_min:
            after = {each.key: each for each in (*task.after, *whole)}
            work.tasks[place] = replace(task, after=tuple(after.values()))


def batches_of(cake: WholeCake) -> list[tuple[Batch, float, bool]]:
    """Fillings, coats and pastes made at home for a cake: each with its grams, and whether it is the fresher the
    better."""
    pastes: dict[str, tuple[Batch, float]] = {}
    for total in cake.pastes:
        if total.batch:
            before = pastes.get(total.batch.slug, (total.batch, 0.0))[1]
            pastes[total.batch.slug] = (total.batch, before + total.mass_g)
    return [
        *((total.batch, total.made_g, True) for total in cake.mixtures),
        *((batch, mass_g, False) for batch, mass_g in pastes.values()),
    ]


def icing_work(
    work: Work, batches: Iterable[tuple[Batch, float, bool]], part: str, skip: Iterable[str] = ()
) -> dict[str, Ends]:
    """What is made once for some orders, by recipe, but for what is made elsewhere."""
    found: dict[str, Ends] = {}
    sums: dict[str, tuple[Batch, float, bool]] = {}
    for batch, mass_g, eaten in batches:
        sums[batch.slug] = (batch, sums[batch.slug][1] + mass_g if batch.slug in sums else mass_g, eaten)
    for slug, (_, mass_g, eaten) in sums.items():
        mixture = work.book.mixtures.get(slug)
        if mixture is None or slug in skip:
            continue
        times, keeps = mixes(work.book, mass_g), work.keeps_min(slug, mixture)
        said = saying("task_make", mixture=mixture.name)
        found[slug] = work.add(
            f"{part}make-{slug}", stints(mixture.method), said,
            times=times, keeps_min=keeps, mixer=True, eaten=eaten, of=slug,
        )  # fmt: skip
    return found


def _pastes_of(technique: Technique, icings: Mapping[str, Ends], work: Work) -> Ends:
    """The pastes made at home that a technique uses."""
    called = (mixture_called(word, work.book) for word in used_words(technique))
    slugs = dict.fromkeys(slug for slug in called if slug)
    return [after for slug in slugs for after in icings.get(slug, ())]


def baking_work(
    work: Work, plan: OvenPlan | None, part: str, linings: Sequence[tuple[str, Technique]]
) -> list[tuple[OvenLoad, Ends]]:
    """Tins lined, mixed, baked and cooled, load by load; with each load what has to be over before it is cut."""
    if plan is None:
        return []
    tins = sum(each.count for load in plan.loads for each in load.tins if not each.tin.kind.in_trays)
    lined: Ends = []
    for slug, technique in linings if tins else ():
        said = saying("task_technique", technique=technique.name)
        out = work.add(f"{part}{slug}", stints(technique.steps), said, times=tins, keeps_min=EVER_MIN, of=slug)
        lined += [After(key=each.key, wait_min=each.wait_min, within_min=LINED_MIN) for each in out]
    found: list[tuple[OvenLoad, Ends]] = []
    for number, load in enumerate(plan.loads, 1):
        # of loads that are all alike the first in the list goes in first
        alike = bool(found) and _told(found[-1][0]) == _told(load)
        last = After(key=f"{work.slug}/{part}load-{number - 1}-bake") if alike else None
        found.append((load, _load_work(work, load, f"{part}load-{number}", number, lined, last)))
    return found


def _told(load: OvenLoad) -> tuple[object, ...]:
    """What a load takes: those that take the same can change places."""
    mixes = tuple((mix.batch.slug, mix.mass_g) for mix in load.mixes)
    return (mixes, load.high_min, tuple((id(tins.tier), tins.count) for tins in load.tins))


def linings_of(cakes: Iterable[WholeCake], work: Work) -> list[tuple[str, Technique]]:
    """What is done to the tins for some cakes, each once."""
    found = {slug: each for cake in cakes for slug, each in techniques_of(cake.design, work.book).items()}
    return [(slug, technique) for slug, technique in found.items() if technique.done_to == TINS]


def _load_work(work: Work, load: OvenLoad, name: str, number: int, lined: Ends, last: After | None) -> Ends:
    mixed: Ends = [last] if last else []
    for mix in load.mixes:
        at = bake_step(mix.batch.mixture)
        method = mix.batch.mixture.method
        said = saying("task_mix", mixture=mix.batch.mixture.name, load=number)
        out = work.add(
            f"{name}-mix-{mix.batch.slug}", stints(method[:at] if at is not None else method), said,
            after=lined, times=mix.lots, keeps_min=EVER_MIN, mixer=True, of=mix.batch.slug,
        )  # fmt: skip
        mixed += [After(key=each.key, wait_min=each.wait_min, within_min=each.wait_min + INTO_OVEN_MIN) for each in out]
    baked = work.task(
        f"{name}-bake",
        saying("task_bake", load=number),
        EVER_MIN,
        hands_min=SLOT_MIN,
        oven_min=rounds(load.high_min),
        oven_least_min=rounds(load.low_min),
        oven_c=load.oven_c,
        eaten=True,
        after=tuple(mixed),
    )
    ends: Ends = []
    for mix in load.mixes:
        at, keeps = bake_step(mix.batch.mixture), work.keeps_min(mix.batch.slug, mix.batch.mixture)
        rest = stints(mix.batch.mixture.method[at + 1 :]) if at is not None else ()
        said = saying("task_cool", mixture=mix.batch.mixture.name, load=number)
        out = work.add(
            f"{name}-cool-{mix.batch.slug}",
            rest,
            said,
            after=(After(key=baked.key),),
            keeps_min=EVER_MIN,
            of=mix.batch.slug,
        )
        # its age is held against when it is cut or goes out, not against a day
        ends += [After(key=each.key, wait_min=each.wait_min, within_min=max(keeps, each.wait_min)) for each in out]
        ends += [] if out else [After(key=baked.key, within_min=keeps)]
    return ends
