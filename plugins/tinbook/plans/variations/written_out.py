"""A base and what differs from it become a mixture like any other, once, when the book is loaded."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import Any

from tinbook.facts import Facts
from tinbook.models import NOT_TAKEN_OVER, Book, Flaw, MixLine, Mixture, Path, Variation, Varies
from tinbook.plans.base.weighing import Unweighable, mass_of
from tinbook.plans.variations.carried_steps import carried_steps
from tinbook.plans.variations.changed_method import ChangedMethod, StepSlot
from tinbook.plans.variations.changed_mix import ChangedMix, Slot
from tinbook.plans.variations.inherited import gives_away, held, taken_over

_KEEPING = frozenset(("keeps", "keeps_for"))
_KEEPS_LESS = frozenset(("dairy filling", "raw egg"))
"""Care words of whatever shortens the life of something unbaked."""


@dataclass(frozen=True, kw_only=True)
class Varied:
    """The mixture a variation describes, and how it came from its base; or the flaws that stop it being one.

    `places` leads from a line or step of the mixture to where it stands in the variation's file; `written` are the keys
    that file has.
    """

    mixture: Mixture | None
    varies: Varies
    flaws: tuple[Flaw, ...] = ()
    places: Mapping[Path, Path] = field(default_factory=dict)
    written: frozenset[str] = frozenset()

    def placed(self, flaw: Flaw) -> Flaw:
        """A flaw of the mixture, placed where it can be mended: at what this file says about it, or else at its
        changes."""
        path = flaw.path
        if path[:2] in self.places:
            place = self.places[path[:2]]
            return replace(flaw, path=place if path[0] == "mix" else (*place, *path[2:]))
        if not path or path[0] in self.written:
            return flaw
        key = next((key for key in ("change", "tins", "makes", "method") if key in self.written), "from")
        return replace(flaw, path=(key,), on_key=True, start=None, end=None)


def vary(variation: Variation, base: Mixture, book: Book, facts: Facts) -> Varied:
    """The variation of a sound `base`, written out. Whether it can be weighed is for the checks to say."""
    if flaw := gives_away(variation, base, "mixture"):
        return Varied(mixture=None, varies=Varies(variation.base), flaws=(flaw,))
    mix = ChangedMix(base.mix, variation.change, book)
    method = ChangedMethod(base.method, variation.method)
    steps_paired = () if method.own else _pairs(method.slots)
    varies = Varies(variation.base, _pairs(mix.slots), steps_paired, method.own)
    flaws = [*_key_flaws(variation), *mix.flaws, *method.flaws]
    if not flaws:
        flaws += _keeping_flaws(variation, base, mix)
    if flaws:
        return Varied(mixture=None, varies=varies, flaws=tuple(flaws))
    steps, flaws = carried_steps(mix, method)
    if flaws:
        return Varied(mixture=None, varies=varies, flaws=tuple(flaws))
    lines = tuple(slot.line for slot in mix.standing if slot.line is not None)
    values = {**_taken_over(variation, base), "mix": lines, "method": steps}
    values |= _followed(variation, base, lines, book, facts)
    fields = type(variation).model_fields
    written = frozenset(fields[name].alias or name for name in variation.model_fields_set)
    return Varied(
        mixture=Mixture.model_construct(**values),
        varies=varies,
        flaws=(),
        places=_places(mix, method),
        written=written - {"mix", "method"},
    )


def _places(mix: ChangedMix, method: ChangedMethod) -> dict[Path, Path]:
    """Where each line and step that is changed stands in the variation's file."""
    places: dict[Path, Path] = {}
    for index, slot in enumerate(mix.standing):
        if slot.place is not None:
            places["mix", index] = slot.place
    for index, step in enumerate(method.standing):
        if step.change is not None:
            places["method", index] = ("method", step.change)
    return places


def _pairs(slots: Sequence[Slot | StepSlot]) -> tuple[tuple[int | None, int | None], ...]:
    """Places, in the base and here, of everything that changed."""
    pairs, here = [], 0
    for slot in slots:
        content, change = (slot.line, slot.place) if isinstance(slot, Slot) else (slot.step, slot.change)
        standing = content is not None
        if change is not None:
            pairs.append((slot.base, here if standing else None))
        here += standing
    return tuple(pairs)


def _key_flaws(variation: Variation) -> Iterator[Flaw]:
    if "mix" in variation.model_fields_set:
        message = "a variation takes its mix from its base"
        hint = 'write what differs under "change:", such as "- {swap: milk, for: buttermilk}"'
        yield Flaw(code="change", path=("mix",), message=message, hint=hint, on_key=True)


def _taken_over(variation: Variation, base: Mixture) -> dict[str, Any]:
    """Every key but mix and method: as written here, or else the base's; `also` and `about` are never inherited."""
    written, values = variation.model_fields_set, taken_over(variation, base, Mixture)
    if "tins" in written and "makes" not in written:
        values["makes"] = None
    if "makes" in written and "tins" not in written:
        values |= {"tins": (), "bake": None, "batter_depth": None} | {
            name: getattr(variation, name) for name in ("bake", "batter_depth") if name in written
        }
    if written & _KEEPING:
        values |= {name: Mixture.model_fields[name].get_default() for name in _KEEPING - written}
    values["private"] = _held(variation, base)
    return values


def _keeping_flaws(variation: Variation, base: Mixture, mix: ChangedMix) -> Iterator[Flaw]:
    """Added ingredients that may go off sooner than anything in the base, while the base's `keeps` still applies."""
    if variation.bake or base.bake or variation.model_fields_set & _KEEPING or not (base.keeps or base.keeps_for):
        return
    before = {trait for line in base.mix for trait in mix.care_of(line)}
    for slot in mix.standing:
        if slot.place is not None and slot.line is not None and set(mix.care_of(slot.line)) & _KEEPS_LESS - before:
            message = f'the base has no "{slot.line.take.name}", so it may keep longer than this'
            hint = 'say how long this one keeps: "keeps: ..."'
            yield Flaw(code="keeps", path=slot.place, message=message, hint=hint)
            return


def _held(variation: Variation, base: Mixture) -> bool | tuple[str, ...]:
    """What is private; a method is the base's until it is written afresh."""
    anew = variation.model_fields_set | NOT_TAKEN_OVER
    if not ChangedMethod(base.method, variation.method).own:
        anew -= {"method"}
    return held(variation, base, Mixture, anew)


def _followed(
    variation: Variation, base: Mixture, lines: tuple[MixLine, ...], book: Book, facts: Facts
) -> dict[str, Any]:
    """What the base makes, and how deep its batter was measured, adjusted to the weight of this mix.

    A depth measured in other tins, or for another kind, says nothing here; nor does one above the brim, which the
    checks deal with by weight.
    """
    written, values = variation.model_fields_set, dict[str, Any]()
    before_g, now_g = _mass_g(base.mix, book, facts), _mass_g(lines, book, facts)
    ratio = now_g / before_g if before_g and now_g and variation.change else 1.0
    if base.makes and not written & {"makes", "tins"}:
        values["makes"] = base.makes * ratio
    if base.batter_depth and "batter_depth" not in written:
        depth_mm = base.batter_depth * ratio
        lost = written & {"tins", "makes", "kind"} or depth_mm > min(tin.brim_mm for _, tin in base.tins)
        values["batter_depth"] = None if lost else depth_mm
    return values


def _mass_g(lines: Sequence[MixLine], book: Book, facts: Facts) -> float | None:
    """The weight of a mix, None if one of its lines cannot be weighed."""
    total_g = 0.0
    for line in lines:
        name = book.house_word(line.take.name)
        if name is None:
            return None
        try:
            total_g += mass_of(line.take, name, book, facts)
        except Unweighable:
            return None
    return total_g
