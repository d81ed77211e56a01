"""What plans/techniques says: times, kit, parts, colours, marks."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence


def _law(phrases: Sequence[tuple[str, Sequence[tuple[str, str]]]]) -> str:
    """`E102 (tartrazine), E110 (sunset yellow): may have ...; ...`: the additives of one phrase together."""
    return "; ".join(
        f"{', '.join(f'{key} ({name})' for key, name in additives)}: {warning}" for warning, additives in phrases
    )


CALLED = {"frustum": "tapered cylinder"}
"""A solid by the word a baker would use for it."""

SAYINGS: Mapping[str, str | Callable[..., str]] = {
    "in_part": "in {part}",
    "wanted_and_noted": "{wanted}; {note}",
    "some_of": "an ingredient of {mixture}",
    "law": _law,
    "shape_solid": lambda how, form: f"{how} {CALLED.get(form, form)}".strip(),
    "shape_rope": "rope",
    "shape_strip": "strip",
    "shape_sheet": "{form} sheet",
    "shape_to_template": "sheet cut round a template",
    "parts_scaled": (
        "weight = volume × density; lengths × s, solids and ropes × s³, sheets and strips × s² at the same thickness; "
        "s = width of this cake / width of the cake it is written for; once you have weighed a part, its weight is "
        "put right at every size"
    ),
    "scales_of_cakes": lambda scales: f"s = {', '.join(f'{s:.3g}' for s in scales)}",
    "scale_of_cake": "s = {s:.4g}",
    "paste_density": "{paste}: {g_per_ml:g} g/ml",
    "its_parts": "{technique}, its parts",
    "its_colours": "{technique}, its colours",
    "its_pastes": "{technique}, its paste",
    "ready_by_materials": (
        "paste to have ready = paste among the materials × what the parts take for this cake / what they take for the "
        "cake they are written for"
    ),
    "its_marks": "{technique}, its marks",
}
