"""Boards, dowels and ribbon as the materials of a technique say them: `cake drum, round 30 cm, 12 mm thick`."""

from __future__ import annotations

import re

from tinbook.models.supplies import ALSO_CALLED, FLAT, RIBBON, STICKS
from tinbook.plans.base.saying import Saying
from tinbook.plans.shopping.things import SizedNeed
from tinbook.units import read_length

_NUMBER = r"[0-9]+(?:\.[0-9]+)?"
_FLAT = re.compile(rf"\b(round|square)\s+({_NUMBER}(?:(?:,\s*|\s+and\s+){_NUMBER})*)\s*(cm|mm|in)\b")
_THICK = re.compile(rf"({_NUMBER}\s*(?:cm|mm|in))\s+(?:thick|across|wide)\b")
_LONG = re.compile(rf"({_NUMBER}\s*(?:cm|mm|in))\s+long\b")


def sized_material(name: str, wanted: Saying | str, count: float) -> tuple[SizedNeed, ...]:
    """So many of a material as what is chosen by size; none if its words do not say one."""
    base = name.lower().removeprefix("cake ")
    what = next(
        (what for what in (*FLAT, *STICKS, RIBBON) if (ALSO_CALLED.get(base) or base).removesuffix("s") == what), None
    )
    told = wanted if isinstance(wanted, str) else str(dict(wanted.figures).get("wanted", ""))
    if what in FLAT:
        found = _FLAT.search(told)
        sizes = re.findall(_NUMBER, found[2]) if found else []
        if not found or len(sizes) not in (1, count):
            return ()
        each = int(count) if len(sizes) == 1 else 1
        lengths = [read_length(f"{size} {found[3]}").base for size in sizes]
        return tuple(SizedNeed(what=what, shape=found[1], sides_mm=(mm,), count=each) for mm in lengths)
    thick, long = _THICK.search(told), _LONG.search(told)
    if what is None or not thick or not long:
        return ()
    sides_mm = read_length(thick[1]).base, read_length(long[1]).base
    return (SizedNeed(what=what, shape="", sides_mm=sides_mm, count=int(count)),)
