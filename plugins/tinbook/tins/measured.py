"""A tin and what it holds, given together: `round 20 cm x 7.5 cm, measured 2200 ml`.

In a book the measure goes in tins.yaml, under `measured`; this is for a tin the house has not written down.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import replace
from types import MappingProxyType
from typing import NamedTuple

from tinbook.tins.sets import read_tins
from tinbook.tins.tin import Tin
from tinbook.units import METRIC, Measures, Misread, read_volume

MOST_OFF = 2.0
"""A measure less than half, or more than twice, what the tin's sizes give must be a slip: our own judgement."""

_MEASURED = re.compile(r"\s*,?\s*\bmeasured\b:?\s*(?:at\s+)?", re.IGNORECASE)


class MeasureFault(NamedTuple):
    """Why a measure cannot be right, and what to do: `of` a set, of a tin without `depth`, or `off` from its sizes."""

    what: str
    message: str
    hint: str


def measure_fault(tins: Sequence[Tin], measured_ml: float) -> MeasureFault | None:
    """What is wrong with a measure, ml to the brim, of the `tins` on one line; None if nothing is."""
    tin, *others = tins
    if others:
        hint = "write each tin of the set on its own line, with what it holds"
        return MeasureFault("of", "a set cannot be measured as one tin", hint)
    if tin.depth_mm is None:
        hint = f'write how deep it is, such as "{tin.kind.example}"'
        return MeasureFault("depth", "a measured tin needs its depth", hint)
    holds_ml = tin.brim_ml()
    if not holds_ml / MOST_OFF <= measured_ml <= holds_ml * MOST_OFF:
        message = f"going by its size, the tin holds about {holds_ml:.0f} ml"
        return MeasureFault("off", message, "measure it again in ml, filled to the brim")
    return None


def says_measure(text: str) -> bool:
    """Whether a text gives what its tin holds."""
    return _MEASURED.search(text) is not None


def read_measured(
    text: str, names: Mapping[str, Tin] = MappingProxyType({}), measures: Measures = METRIC
) -> tuple[tuple[int, Tin], ...]:
    """How many of each tin, as read_tins reads them; after `measured`, what one of them holds to the brim.

    Raises units.Misread, with its place in the text, for a measure that cannot be read or cannot be this tin's.
    """
    said = _MEASURED.search(text)
    if said is None:
        return read_tins(text, names, measures.tins)
    tins = read_tins(text[: said.start()], names, measures.tins)
    written = text[said.end() :]
    if not written.strip():
        raise Misread("how much does it hold?", 'write what it holds to the brim: "measured 2200 ml"', *said.span())
    try:
        measured_ml = read_volume(written, measures).base
    except Misread as wrong:
        start, end = (said.end() + edge for edge in (wrong.start, wrong.end))
        raise type(wrong)(wrong.message, wrong.hint, start, end) from None
    bare = [replace(tin, measured_ml=None) for _, tin in tins]
    if fault := measure_fault(bare, measured_ml):
        raise Misread(fault.message, fault.hint, said.end(), len(text))
    return tuple((count, replace(tin, measured_ml=measured_ml)) for count, tin in tins)
