"""Rules for a rope that is coiled."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from tinbook.engine import solids
from tinbook.models import Flaw, Part, Path
from tinbook.plans.techniques.shapes import shape_of


def coil_flaws(part: Part, path: Path, parts: Sequence[Part]) -> Iterator[Flaw]:
    """Only a rope is coiled; its turns go round a part, and leave some of it to coil."""
    if part.coiled is None:
        return
    under = next((each for each in parts if each.part == part.lies_on), None)
    if part.form != "rope":
        yield Flaw(code="parts", path=path, message="only a rope is coiled", hint="take it out", on_key=True)
    elif part.coiled and part.lies_on is None:
        hint = 'add "lies on:", or write "coiled: 0"'
        yield Flaw(code="parts", path=path, message="turns round which part?", hint=hint)
    elif under and under.form and part.rope:
        thick, long = part.rope.mm
        rope, round_mm = solids.twisted_mm(thick, part.count), solids.bounds(shape_of(under, 1.0).outline_mm)[0]
        if part.coiled and not solids.coil_mm(long, rope, part.coiled, round_mm):
            most = max(turns for turns in range(part.coiled) if solids.coil_mm(long, rope, turns, round_mm))
            message = f'a rope of {long:g} mm does not go {part.coiled} times round "{under.part}"'
            yield Flaw(code="parts", path=path, message=message, hint=f"write {most}, or a longer rope")
