"""Rules between the fields of the house: its egg class, its privacy, its tins."""

from __future__ import annotations

from collections.abc import Collection, Iterator

from tinbook.facts import Facts
from tinbook.models import Flaw, House, ShelfLine
from tinbook.plans.rules.fields import unknown_word
from tinbook.tins import measure_fault, read_tins
from tinbook.units import Misread


def house_flaws(house: House, facts: Facts) -> Iterator[Flaw]:
    """The egg size must be among the facts, and there is no book without its house."""
    if house.eggs not in facts.eggs:
        message = f'the egg size "{house.eggs}" is not known'
        yield unknown_word(("eggs",), house.eggs, facts.eggs, message=message)
    if house.private is True:
        hint = 'list the keys to keep private, such as "private: [mixer bowl]"'
        yield Flaw(code="private", path=("private",), message="house.yaml as a whole cannot be private", hint=hint)


def tin_flaws(line: ShelfLine, named: Collection[str]) -> Iterator[Flaw]:
    """An outline needs a name of its own, not among the `named` (in lower case); a measure must be plausible for the
    tin."""
    tin, name = line.tin[0], line.name
    if tin.kind.free and name is None:
        hint = 'add "name: number 4"'
        yield Flaw(code="missing", path=("tin",), message="an outline needs a name", hint=hint)
    elif name is not None and not tin.kind.free:
        message = f"only an outline has a name of its own, not a {tin.kind.noun}"
        hint = 'leave "name" out: it goes by its shape and size'
        yield Flaw(code="name", path=("name",), message=message, hint=hint, on_key=True)
    elif name is not None and (flaw := _name_flaw(name, named)):
        yield flaw
    if line.measured is not None:
        yield from _measure_flaws(line, line.measured)


def _name_flaw(name: str, named: Collection[str]) -> Flaw | None:
    """What is wrong with the name of an outline, and what to do."""
    if name.casefold() in named:
        message, hint = f'another tin is already called "{name}"', "give each outline a name of its own"
    elif not name[0].isalpha() or any(not (sign.isalnum() or sign in " '’-") for sign in name):
        message = f'a tin cannot be called "{name}"'
        hint = "start with a letter, and use only letters, figures and spaces"
    else:
        try:
            read_tins(name)
        except Misread:
            return None
        message, hint = f'"{name}" is the name of another tin', 'write a name such as "number 4"'
    return Flaw(code="name", path=("name",), message=message, hint=hint)


def _measure_flaws(line: ShelfLine, measured_ml: float) -> Iterator[Flaw]:
    """What a tin holds, by its measure and by its sizes."""
    fault = measure_fault(line.tin, measured_ml)
    if fault is None:
        return
    code, path = ("missing", "tin") if fault.what == "depth" else ("measure", "measured")
    yield Flaw(code=code, path=(path,), message=fault.message, hint=fault.hint, on_key=fault.what == "of")
