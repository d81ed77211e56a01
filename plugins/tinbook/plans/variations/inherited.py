"""What is the same for everything that starts from another of its kind: the keys it takes over, and what is private."""

from __future__ import annotations

from collections.abc import Collection
from typing import Any

from tinbook.models import NOT_TAKEN_OVER, Flaw, Written

PRIVATE_BASE = "private base"
"""The code of the flaw of a public variation on a private base."""


def taken_over(variation: Written, base: Written, model: type[Written]) -> dict[str, Any]:
    """Every key of the model: as written in the variation, or else the base's; what belongs to one alone is never
    inherited."""
    written, values = variation.model_fields_set, dict[str, Any]()
    for name, info in model.model_fields.items():
        if name in written:
            values[name] = getattr(variation, name)
        else:
            values[name] = info.get_default() if name in NOT_TAKEN_OVER else getattr(base, name)
    return values


def held(variation: Any, base: Any, model: type[Written], anew: Collection[str]) -> bool | tuple[str, ...]:
    """What is private: in this file, plus anything still taken from the base and private there; `anew` are the fields
    that are not."""
    if variation.private is True:
        return True
    own = variation.private or ()
    mine = {info.alias or name for name, info in model.model_fields.items() if name in anew}
    lent = base.private if isinstance(base.private, tuple) else ()
    return tuple(dict.fromkeys((*own, *(key for key in lent if key not in mine)))) or False


def gives_away(variation: Any, base: Any, noun: str) -> Flaw | None:
    """The flaw of a public variation on a private base."""
    if base.private is not True or variation.private is True:
        return None
    message = "the base is private, and this one would give it away"
    hint = f'write "private: yes" here too, or write this one out in full as a {noun} of its own'
    return Flaw(code=PRIVATE_BASE, path=("from",), message=message, hint=hint)
