"""The tables of a technique's parts, by name: parts, colours, marks, for every cake or for
one."""

from __future__ import annotations

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.asking import AskError, Query
from tinbook.plans.base.result import Result, Row, short
from tinbook.plans.base.saying import saying
from tinbook.plans.base.worked import Worked
from tinbook.plans.techniques.parts import Decoration, decoration, decorations, worked_at
from tinbook.plans.techniques.ready import pastes_ready
from tinbook.problems import nearest


def _asked(book: Book, facts: Facts, query: Query) -> tuple[str, tuple[Decoration, ...]]:
    """The technique's name, and its sums for every cake, or for the cakes asked for with --tin."""
    known = sorted(slug for slug, technique in book.techniques.items() if technique.parts or technique.repeats)
    if query.of is None:
        raise AskError("this table needs a technique", "say which, such as --of " + (known[0] if known else "NAME"))
    if query.of not in known:
        close = nearest(query.of, known)
        hint = f'did you mean "{close}"?' if close else "those with parts are " + (", ".join(known) or "none yet")
        raise AskError(f'there is no technique with parts called "{query.of}"', hint)
    technique = book.techniques[query.of]
    if query.tins:
        return technique.name, tuple(decoration(technique, tin, book, facts) for _, tin in query.tins)
    return technique.name, decorations(technique, book, facts)


def _wanted(sizes_mm: tuple[float, ...]) -> Row:
    """Both sizes of the cutter wanted; for a round one, only its width."""
    width_mm, length_mm, *_ = (*sizes_mm, None, None)
    return {"cutter_wanted_width_mm": short(width_mm), "cutter_wanted_length_mm": short(length_mm)}


def part_rows(book: Book, facts: Facts, query: Query) -> Result:
    """Every part of a technique at every cake."""
    name, every = _asked(book, facts, query)
    rows: tuple[Row, ...] = tuple(
        {
            "cake": sums.cake.name,
            "factor": short(sums.scale),
            "letter": part.letter,
            "part": part.name,
            "shape": part.shape,
            "width_mm": short(part.width_mm),
            "height_mm": short(part.height_mm),
            "thick_mm": short(part.thick_mm),
            "count": part.count,
            "volume_ml": short(part.volume_ml),
            "computed_g": short(part.computed_g),
            "weighed_g": short(part.weighed_g),
            "each_g": short(part.each_g),
            "total_g": short(part.total_g),
            "paste": part.paste.name,
            "colour": part.colour.name if part.colour else None,
            "warning": part.colour.law if part.colour else None,
            "on": part.on,
            **_wanted(part.cutter.wanted_mm if part.cutter else ()),
            "cutter_owned": (part.cutter.owned or None) if part.cutter else None,
            "cutter_off_mm": short(part.cutter.off_mm) if part.cutter else None,
            "supports": part.support.count if part.support else None,
            "support_in_part_mm": short(part.support.reach_mm) if part.support else None,
            "support_through_mm": short(part.support.through_mm) if part.support else None,
            "support_mm": short(part.support.length_mm) if part.support else None,
            "dries_low_min": part.drying.low_h * 60.0,
            "dries_high_min": part.drying.high_h * 60.0,
            "small_hard": part.small_hard,
        }
        for sums in every
        for part in sums.parts
    )
    return Result(saying("its_parts", technique=name), rows, worked_at(every))


def colour_rows(book: Book, facts: Facts, query: Query) -> Result:
    """Paste in every colour for every cake, one row for each pot that colours it."""
    name, every = _asked(book, facts, query)
    rows: list[Row] = []
    for sums in every:
        for need in sums.colours:
            row: Row = {
                "cake": sums.cake.name,
                "paste": need.paste.name,
                "colour": need.colour.name if need.colour else None,
                "exact_g": short(need.mass_g),
                "warning": need.law,
            }
            pots = need.colour.pots if need.colour else ()
            rows += [
                {**row, "pot": pot.name, "shade": pot.shade, "pot_g": short(pot.for_g(need.mass_g))} for pot in pots
            ]
            if not pots:
                rows.append({**row, "pot": None, "shade": None, "pot_g": None})
    return Result(saying("its_colours", technique=name), tuple(rows), worked_at(every))


def paste_rows(book: Book, facts: Facts, query: Query) -> Result:
    """Each paste to have ready, for every cake: what the parts take, and what stays on hands and board."""
    name, every = _asked(book, facts, query)
    technique = book.techniques[query.of or ""]
    rows: tuple[Row, ...] = tuple(
        {
            "cake": sums.cake.name,
            "paste": need.paste,
            "parts_g": short(need.parts_g),
            "ready_g": short(need.ready_g),
            "spare_share": short(need.spare),
        }
        for sums in every
        for need in pastes_ready(technique, sums, book, facts)
    )
    worked = worked_at(every)
    return Result(
        saying("its_pastes", technique=name),
        rows,
        Worked(saying("ready_by_materials"), worked.inputs, worked.sources),
    )


def mark_rows(book: Book, facts: Facts, query: Query) -> Result:
    """Marks repeated on its surfaces, for every cake."""
    name, every = _asked(book, facts, query)
    rows: tuple[Row, ...] = tuple(
        {
            "cake": sums.cake.name,
            "letter": repeat.letter,
            "marks": repeat.name,
            "colour": repeat.colour.name if repeat.colour else None,
            "warning": repeat.colour.law if repeat.colour else None,
            "on": repeat.on,
            "set": repeat.how,
            "pitch_mm": short(repeat.pitch_mm[0]),
            "rows_mm": short(repeat.pitch_mm[1]),
            "area_cm2": short(repeat.area_mm2 / 100.0),
            "by_area": short(repeat.by_area),
            "count": repeat.count,
            "cut_by_the_edge": repeat.cut,
            "each_g": short(repeat.each_g),
            "total_g": short(repeat.mass_g),
        }
        for sums in every
        for repeat in sums.repeats
    )
    return Result(saying("its_marks", technique=name), rows, worked_at(every))
