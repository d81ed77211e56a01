"""Rules between the fields of parts and repeats, and of the house's colours."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence

from tinbook.engine import repeats, solids
from tinbook.engine.tolerance import fits
from tinbook.facts import Facts
from tinbook.models import SURFACES, Book, Colour, Flaw, Part, Path, Repeat, Technique
from tinbook.models.parts import Support
from tinbook.plans.rules.coils import coil_flaws
from tinbook.plans.rules.fields import FOLLOWS
from tinbook.plans.techniques.marks import MOST_MARKS, SIDE, mark_of, pitch_of, surface_of
from tinbook.plans.techniques.parts import LEAST_CAKE_MM, MOST_CAKE_MM
from tinbook.plans.techniques.pastes import paste_called
from tinbook.plans.techniques.shapes import shape_of
from tinbook.problems import nearest
from tinbook.tins import Ring

NO_COLOUR = "none"
LEAST_LEFT_MM = 3.0
"""How much of a part must stay beyond its support (our own judgement)."""
LONGEST_HINT = 240
"""A house may have hundreds of colours."""
FORMS = ("solid", "sheet", "strip", "rope")


def part_flaws(technique: Technique, book: Book, facts: Facts, lost: Collection[str] = ()) -> Iterator[Flaw]:
    """Everything that stops parts and repeats being worked out; `lost` are names reported elsewhere."""
    if not technique.parts and not technique.repeats:
        if technique.parts_for:
            hint = 'write "parts:", or take the line out'
            yield Flaw(code="parts", path=("parts for",), message="there are no parts for this cake", hint=hint)
        return
    if technique.parts_for is None:
        key = "parts" if technique.parts else "repeats"
        hint = 'add the cake they are written for, such as "parts for: round 20 cm"'
        yield Flaw(code="parts", path=(key,), message=f"which cake are the {key} for?", hint=hint, on_key=True)
        return
    if not LEAST_CAKE_MM <= technique.parts_for.bounds_mm[0] <= MOST_CAKE_MM:
        message = f"parts cannot be scaled from {technique.parts_for.name}"
        yield Flaw(code="parts", path=("parts for",), message=message, hint="write a cake from 10 to 30 cm")
        return
    names: list[str] = []
    for index, part in enumerate(technique.parts):
        path = ("parts", index)
        if part.part in (*names, *SURFACES):
            message = f'another part is called "{part.part}"'
            yield Flaw(code="twice", path=(*path, "part"), message=message, hint="give one of them another name")
        names.append(part.part)
        flaws = list(_shape_flaws(part, path))
        yield from flaws
        yield from word_flaws(part.paste, part.colour, path, book, facts, lost)
        if not flaws:
            yield from _support_flaws(part, path)
    for index, part in enumerate(technique.parts):
        yield from _rest_flaws(part, ("parts", index, "support"), technique.parts)
        yield from _place_flaws(part, ("parts", index), technique.parts)
        yield from coil_flaws(part, ("parts", index, "coiled"), technique.parts)
    for index, repeat in enumerate(technique.repeats):
        yield from _repeat_flaws(repeat, ("repeats", index), technique, names, book, facts, lost)


def _shape_flaws(part: Part, path: Path) -> Iterator[Flaw]:
    """One form with a size, and a thickness where the form has none of its own."""
    written = [key for key in FORMS if getattr(part, key) is not None]
    if not written:
        hint = 'write one of solid, sheet, strip or rope, such as "solid: ball 20 mm"'
        yield Flaw(code="parts", path=path, message=f'"{part.part}" has no size', hint=hint)
    elif len(written) > 1:
        message = f'"{part.part}" is both a {written[0]} and a {written[1]}'
        yield Flaw(code="parts", path=(*path, written[1]), message=message, hint="keep one of the two", on_key=True)
    elif part.form in ("sheet", "strip") and part.thick is None:
        message, hint = f"how thick is this {part.form}?", 'add "thick: 1 mm"'
        yield Flaw(code="parts", path=(*path, part.form), message=message, hint=hint, on_key=True)
    elif part.form in ("solid", "rope") and part.thick is not None:
        message, hint = f"a {part.form} has its own thickness", "take it out: the size already gives it"
        yield Flaw(code="parts", path=(*path, "thick"), message=message, hint=hint, on_key=True)


def word_flaws(
    paste: str | None, colour: str | None, path: Path, book: Book, facts: Facts, lost: Collection[str]
) -> Iterator[Flaw]:
    """A paste and a colour that the book has."""
    if paste is not None:
        try:
            paste_called(paste, book, facts)
        except LookupError:
            known = [*book.mixtures, *book.cards]
            close = nearest(paste, known)
            hint = f'did you mean "{close}"?' if close else "write a mixture's file name, or sugarpaste or marzipan"
            message = f'the book has no paste "{paste}"'
            yield Flaw(
                code=FOLLOWS if paste in lost else "unknown paste", path=(*path, "paste"), message=message, hint=hint
            )
    if colour is not None and colour not in book.colours:
        close = nearest(colour, book.colours)
        hint = f"add it to house/colours.yaml, which has {', '.join(book.colours) or 'none yet'}"[:LONGEST_HINT]
        if close:
            hint = f'did you mean "{close}"?'
        message = f'there is no colour called "{colour}"'
        yield Flaw(
            code=FOLLOWS if colour in lost else "unknown colour", path=(*path, "colour"), message=message, hint=hint
        )


def _support_flaws(part: Part, path: Path) -> Iterator[Flaw]:
    """A support never comes out at the front or the top."""
    support = part.support
    if support is None:
        return
    shape = shape_of(part, 1.0)
    room_mm = shape.thick_mm if support.behind else solids.bounds(shape.outline_mm)[1]
    if not fits(support.length, room_mm):
        side = "thick" if support.behind else "high"
        message = (
            f'a support of {support.length:g} mm in "{part.part}", {room_mm:.3g} mm {side}, would come out the other '
            "side"
        )
        most_mm = max(room_mm - LEAST_LEFT_MM, room_mm / 2.0)
        hint = f'write how far it goes into the part, at most {most_mm:.0f} mm, and the rest as "in the cake"'
        yield Flaw(code="support", path=(*path, "support", "length"), message=message, hint=hint)


def _rest_flaws(part: Part, path: Path, parts: Sequence[Part]) -> Iterator[Flaw]:
    """Where a support stands in another part: a part that exists, and one answer to where."""
    support = part.support
    if support is None or (support.rest_in is None and support.rest is None):
        return
    others = [each.part for each in parts if each.part != part.part]
    if support.in_the_cake is not None:
        message, hint = "the rest goes in the cake or in a part, not in both", "keep one of the two"
        yield Flaw(code="support", path=path, message=message, hint=hint)
    elif support.rest_in is None or support.rest is None:
        hint = f'add both, such as "rest: 15 mm, rest in: {next(iter(others), "rock")}"'
        yield Flaw(code="support", path=path, message="how much of it goes in which part?", hint=hint)
    elif support.rest_in not in others:
        close = nearest(support.rest_in, others)
        hint = f'did you mean "{close}"?' if close else "name another part"
        message = f'there is no other part "{support.rest_in}" here'
        yield Flaw(code="support", path=(*path, "rest in"), message=message, hint=hint)
    else:
        yield from _through_flaws(support, path, next(each for each in parts if each.part == support.rest_in))


def _through_flaws(support: Support, path: Path, under: Part) -> Iterator[Flaw]:
    """No further into the part it rests in than that is high."""
    if under.form not in FORMS or (under.form in ("sheet", "strip") and under.thick is None):
        return
    shape = shape_of(under, 1.0)
    lies = (under.solid is not None and under.solid.how == "flattened") or (under.form == "sheet" and not under.upright)
    high_mm = shape.thick_mm if lies else solids.bounds(shape.outline_mm)[1]
    if support.rest is not None and not support.behind and not fits(support.rest, high_mm):
        message = f'{support.rest:g} mm do not go into "{under.part}", which is {high_mm:.3g} mm high'
        hint = f"write at most {int(high_mm)} mm"
        yield Flaw(code="support", path=(*path, "rest"), message=message, hint=hint)


def _place_flaws(part: Part, path: Path, parts: Sequence[Part]) -> Iterator[Flaw]:
    """Where it is in the assembled piece: on one other part, and in the end on one that stands by itself."""
    under = {each.part: each.stands_on or each.lies_on for each in parts}
    key, on = ("stands on", part.stands_on) if part.stands_on else ("lies on", part.lies_on)
    if part.stands_on and part.lies_on:
        message = f'"{part.part}" both stands on a part and lies on one'
        yield Flaw(code="parts", path=(*path, "lies on"), message=message, hint="keep one of the two", on_key=True)
    elif part.up and not part.lies_on:
        hint = 'add "lies on:", or take it out'
        yield Flaw(code="parts", path=(*path, "up"), message="how far up which part?", hint=hint, on_key=True)
    else:
        yield from _told_flaws(part, path)
    if on is None:
        return
    others = [name for name in under if name != part.part]
    if on not in others:
        close = nearest(on, others)
        hint = f'did you mean "{close}"?' if close else "name another part"
        yield Flaw(code="parts", path=(*path, key), message=f'there is no other part "{on}" here', hint=hint)
        return
    seen = {part.part}
    while on is not None and on not in seen:
        seen.add(on)
        on = under.get(on)
    if on == part.part:
        message, hint = f'"{part.part}" stands on itself', "let one of them stand on its own"
        yield Flaw(code="parts", path=(*path, key), message=message, hint=hint)


def _told_flaws(part: Part, path: Path) -> Iterator[Flaw]:
    """How each of them is set: a word for each, and a part it is set on."""
    for name in ("up", "across", "turned"):
        told = len(getattr(part, name))
        if told not in (0, part.count) and (name, told) != ("turned", 1):
            message, hint = f"{told} places for {part.count} of them", "write a place for each"
            yield Flaw(code="parts", path=(*path, name), message=message, hint=hint)
    hint = 'add "stands on:" or "lies on:", or take it out'
    if part.across and not (part.stands_on or part.lies_on):
        yield Flaw(code="parts", path=(*path, "across"), message="how far across which part?", hint=hint, on_key=True)
    if part.behind and not part.lies_on:
        hint = 'add "lies on:", or take it out'
        yield Flaw(code="parts", path=(*path, "behind"), message="behind which part?", hint=hint, on_key=True)
    elif part.behind > part.count:
        message = f"{part.behind} of {part.count} cannot lie behind it"
        yield Flaw(code="parts", path=(*path, "behind"), message=message, hint=f"write at most {part.count}")
    if part.sunk and not part.stands_on:
        hint = 'add "stands on:", or take it out'
        yield Flaw(code="parts", path=(*path, "sunk"), message="sunk into which part?", hint=hint, on_key=True)
    for name in ("upright", "laid"):
        if getattr(part, name) and part.sheet is None:
            message, hint = f'only a sheet can be "{name}"', "take it out"
            yield Flaw(code="parts", path=(*path, name), message=message, hint=hint, on_key=True)
    if part.laid and (part.stands_on or part.lies_on):
        message, hint = "only the part that all others are on is laid down", "say it of that part"
        yield Flaw(code="parts", path=(*path, "laid"), message=message, hint=hint, on_key=True)


def _repeat_flaws(
    repeat: Repeat, path: Path, technique: Technique, names: Sequence[str], book: Book, facts: Facts,
    lost: Collection[str],
) -> Iterator[Flaw]:  # fmt: skip
    cake = technique.parts_for
    assert cake is not None
    if repeat.on not in names and repeat.on not in SURFACES:
        close = nearest(repeat.on, (*names, *SURFACES))
        hint = f'did you mean "{close}"?' if close else "name a part, " + ", or ".join(SURFACES)
        yield Flaw(code="repeats", path=(*path, "on"), message=f'there is no part "{repeat.on}" here', hint=hint)
        return
    if repeat.on == SIDE and repeat.high is None:
        hint = 'add "high: 40 mm"'
        yield Flaw(code="repeats", path=(*path, "on"), message="how high is the band on the side?", hint=hint)
        return
    if repeat.solid and repeat.thick:
        message = "a mark is modelled or cut, not both"
        hint = "keep one: solid is modelled, thick is cut from a sheet"
        yield Flaw(code="repeats", path=(*path, "thick"), message=message, hint=hint, on_key=True)
    if (repeat.solid or repeat.thick) and repeat.paste is None:
        key = "solid" if repeat.solid else "thick"
        hint = 'add "paste: ..."; a mark that is pressed in has neither'
        message = "which paste are the marks made of?"
        yield Flaw(code="repeats", path=(*path, key), message=message, hint=hint, on_key=True)
    yield from word_flaws(repeat.paste, repeat.colour, path, book, facts, lost)
    marked = [part for part in technique.parts if part.part == repeat.on]
    if any(tuple(_shape_flaws(part, ())) for part in marked):
        return
    outlines = {part.part: shape_of(part, 1.0).outline_mm for part in marked}
    yield from _room_flaws(repeat, path, surface_of(repeat, cake, 1.0, outlines))


def _room_flaws(repeat: Repeat, path: Path, outline_mm: Sequence[Ring]) -> Iterator[Flaw]:
    """A mark larger than its surface, and more marks than anybody would make."""
    count = repeats.count_of(solids.rings_mm2(outline_mm), pitch_of(repeat))
    across_mm, high_mm = solids.bounds(outline_mm)
    mark_across_mm, mark_high_mm = mark_of(repeat)
    if mark_across_mm > across_mm or mark_high_mm > high_mm:
        message = f'a mark of {mark_across_mm:g} mm is larger than "{repeat.on}"'
        hint = f'"{repeat.on}" is {across_mm:.0f} x {high_mm:.0f} mm; write a smaller one'
        yield Flaw(code="repeats", path=(*path, "mark"), message=message, hint=hint)
    elif count > MOST_MARKS:
        hint = f"a surface takes at most {MOST_MARKS}: write a wider gap"
        yield Flaw(code="repeats", path=(*path, "gap"), message=f"that makes {count:.0f} marks", hint=hint)


def colour_flaws(colour: Colour, facts: Facts) -> Iterator[Flaw]:
    """Additives by their E number."""
    if colour.additives is None:
        return
    for index, key in enumerate(colour.additives):
        if key == NO_COLOUR and len(colour.additives) > 1:
            message, hint = '"none" cannot go with an E number', "write none on its own, or the E numbers"
            yield Flaw(code="additives", path=("additives", index), message=message, hint=hint)
        elif key != NO_COLOUR and key not in facts.colours:
            close = _named(key, facts) or nearest(key, facts.colours)
            hint = f'did you mean "{close}"?' if close else "write its E number as on the pot, such as E129, or none"
            message = f'the colour "{key}" is not known'
            yield Flaw(code="additives", path=("additives", index), message=message, hint=hint)


def _named(word: str, facts: Facts) -> str | None:
    """The E number of a colour written by its name."""
    names = {
        name.casefold(): key for key, colour in facts.colours.items() for name in (colour.name, *colour.also_called)
    }
    return names.get(word.casefold())
