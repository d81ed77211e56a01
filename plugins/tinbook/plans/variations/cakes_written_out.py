"""A cake and what differs from it become a cake like any other, once, when the book is loaded."""

from __future__ import annotations

from dataclasses import replace

from tinbook.models import NOT_TAKEN_OVER, CakeDesign, CakeVariation, Flaw
from tinbook.plans.variations.inherited import gives_away, held, taken_over


def vary_cake(variation: CakeVariation, base: CakeDesign) -> CakeDesign | Flaw:
    """The variation of a sound `base`, written out; or why it cannot be."""
    if flaw := gives_away(variation, base, "cake"):
        return flaw
    anew = variation.model_fields_set | NOT_TAKEN_OVER
    values = taken_over(variation, base, CakeDesign)
    written = {name for name in CakeDesign.model_fields if name in variation.model_fields_set | base.model_fields_set}
    return CakeDesign.model_construct(written, **{**values, "private": held(variation, base, CakeDesign, anew)})


def placed(flaw: Flaw, variation: CakeVariation) -> Flaw:
    """A flaw of the cake, placed where it can be mended: at what this file says about it, or else at its base."""
    fields = type(variation).model_fields
    written = {fields[name].alias or name for name in variation.model_fields_set}
    if not flaw.path or flaw.path[0] in written:
        return flaw
    return replace(flaw, path=("from",), on_key=True, start=None, end=None)
