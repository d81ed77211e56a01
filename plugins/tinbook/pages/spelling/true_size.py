"""What plans/true_size says: templates at actual size."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

WAYS = {
    "grid": "a grid",
    "strips": "strips",
    "uneven": "strips of uneven width",
    "joined": "strips, the leftovers joined",
    "rings": "rings",
    "wedges": "wedges",
}
"""How a cake is cut."""


def _ruler_size(lengths_mm: Sequence[float]) -> str:
    """`54.5 × 60 mm`."""
    return " × ".join(f"{length:g}" for length in lengths_mm) + " mm"


def _part_label(letter: str, name: str, count: int) -> str:
    return f"{letter} {name}, {count} of" if count > 1 else f"{letter} {name}"


def _marks_to_prick(count: int, size: str, how: str, along_mm: float, between_mm: float, cut: bool) -> str:
    words = (
        f"{count} marks {size}, {how}, {along_mm:g} mm from middle to middle, rows {between_mm:g} mm apart. "
        "Prick through the middle of each."
    )
    return f"{words} Cut off whatever hangs over the edge." if cut else words


def _cake_is_cut(count: int, kind: str | None, size: str, way: str, off_percent: float) -> str:
    portions = f"{kind} portions" if kind else "portions"
    return (
        f"{count} {portions} of {size}, cut in {WAYS[way]}; every piece is within {off_percent:g}% of the average size."
        " Before cutting, take out everything that is not food, and count it."
    )


def _dowels_published(
    count: int, what: str, cake: str, above: str, inset_mm: float, low: int, high: int, source: str, wanted: int,
    house: int | None,
) -> str:  # fmt: skip
    published = f"{low} to {high}" if low != high else f"{high}"
    if count < wanted:
        why = f"There is room for only {count}, {inset_mm:g} mm in from its edge: ask the person building it."
    elif house is None:
        why = "The highest is used."
    elif house < low:
        why = f"We use {house}, fewer than anything published, so the highest is used."
    else:
        why = f"We use {house}."
    return (
        f"{count} {what} in {cake}, under {above}, {inset_mm:g} mm in from the edge of the tier above. "
        f"Published for that size: {published} (highest: {source}). {why}"
    )


def _drop(curve: str, deep_mm: float, from_top_mm: float | None) -> str:
    below = f" from {from_top_mm:g} mm below the top edge" if from_top_mm is not None else ""
    return f"Each drop is a {curve}, {deep_mm:g} mm deep at its middle{below}. Prick along it."


SAYINGS: Mapping[str, str | Callable[..., str]] = {
    "line_cut": "outline: cut",
    "line_inner": "mark, do not cut",
    "line_fold": "fold or divide",
    "line_centre": "middle",
    "line_hidden": "hidden, or not food",
    "line_leader": "measure",
    "ruler_size": _ruler_size,
    "size_as_written": "As written, for {cake}.",
    "size_scaled": "Written for {cake}: lengths × {scale:.3g}.",
    "arrow_is_grain": "The arrow shows which way the paste was rolled.",
    "seen_from_the_front": "Solid parts are seen from the front: hold each against its outline.",
    "rope_to_roll": "{letter} {name} {size}",
    "ropes_in_pieces": lambda ropes: (
        f"Long ropes are drawn only in part. Roll the full length against a ruler: {'; '.join(ropes)}."
    ),
    "parts_together": lambda letters: "Parts " + ", ".join(letters),
    "part_alone": "Part {letter}, {name}",
    "parts_of_all": "{count} of {total} parts",
    "part_label": _part_label,
    "piece_of_it": "{size}, part of it",
    "law_of_colour": lambda letters, colour, law: f"{', '.join(letters)} in {colour}: {law}.",
    "marks_on": "Marks {letter}, {name} on {surface}",
    "marks_to_prick": _marks_to_prick,
    "board_ring": "Board guide ring",
    "board_edge": "edge of the board",
    "coated_cake": "coated cake",
    "ring_on_board": "{guide} on {board}",
    "ring_to_prick": (
        "The coated cake is {guide}, the board {board}. Lay the sheet on the covered board, centre to centre, "
        "and prick along the inner line."
    ),
    "cutting_plan": "Cutting plan, {count} portions",
    "cut_into_pieces": "{count} pieces",
    "cake_is_cut": _cake_is_cut,
    "dowel_plan": "Dowel plan",
    "dowels_across": "{count} dowels, {across_mm:g} mm across",
    "dowels_published": _dowels_published,
    "dowel_table": "Dowels. Not edible: count them in, count them out",
    "dowels_worked": (
        "dowels = the most any publication sets under a tier of that size, or our own number "
        "unless it is below the lowest published; never more than there is room for"
    ),
    "dowels_by_the_house": lambda house: f"we use {house}" if house else "we have given no number of our own",
    "dowels_from_the_edge": "{inset_mm:g} mm in from the edge of the tier above",
    "dowels_apart": "at least {apart_mm:g} mm apart",
    "dowels_cut_to": "Cut each to the height of the tier it stands in, measured on the coated cake.",
    "through_hole": "centre dowel, {across_mm:g} mm",
    "dowels_counted": (
        "Not edible: count them in, count them out, and leave a note of where each one is for the person cutting it."
    ),
    "side_strip": "Side strip, {count} {what}",
    "strip_size": "{size}, {count} {what}",
    "strip_round_cake": (
        "Round the coated cake ({out_mm:g} mm of coating on each side): {long_mm:g} mm long, {high_mm:g} mm high; each "
        "of the {count} {what} is {span_mm:g} mm wide."
    ),
    "drop": _drop,
    "strip_tried": (
        "Try it round the cake before you mark it: coats vary. Share any difference between all the panels."
    ),
    "tab": "tab",
}
