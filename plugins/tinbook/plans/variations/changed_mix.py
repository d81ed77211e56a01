"""The mix of a variation: the lines of its base with the changes made, each knowing where it came from."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from tinbook.models import Book, Change, Flaw, MixLine, Path, Take
from tinbook.problems import nearest

OF_BASE = "of the base"
"""The code of a flaw whose hint quotes the base."""

_KINDS = {"swap": "swap", "add": "add", "leave_out": "leave out", "amount": "amount"}
_MOST_NAMED = 12
"""How many ingredients of the base a hint lists."""


@dataclass(slots=True, eq=False)
class Slot:
    """A place in the mix: its line, None if it is left out; its number in the base, None if it is added.

    `place`: where in the variation's file its ingredient is named, None if nothing is changed.
    """

    line: MixLine | None
    base: int | None
    place: Path | None = None
    beside: Slot | None = None


class ChangedMix:
    """The base's lines, to which changes are made one by one; `flaws` are those of the changes."""

    def __init__(self, base: Sequence[MixLine], changes: Sequence[Change], book: Book) -> None:
        self.base, self.book = base, book
        self.slots = [Slot(line, index) for index, line in enumerate(base)]
        self._own = tuple(self.slots)
        self.flaws: list[Flaw] = []
        for index, change in enumerate(changes):
            path: Path = ("change", index)
            flaw = _slip(change, path) or self._make(change, path)
            if flaw is not None:
                self.flaws.append(flaw)
        if not self.flaws:
            self.flaws += self._doubled()

    def name_of(self, word: str) -> str:
        """What an ingredient is called in the house, if the house knows it."""
        return self.book.house_word(word) or " ".join(word.lower().split())

    def care_of(self, line: MixLine) -> tuple[str, ...]:
        """An ingredient's care words, if the house knows it."""
        card = self.book.cards.get(self.name_of(line.take.name))
        return card.care if card else ()

    @property
    def standing(self) -> tuple[Slot, ...]:
        """The slots with a line in them."""
        return tuple(slot for slot in self.slots if slot.line is not None)

    def _make(self, change: Change, path: Path) -> Flaw | None:
        """Make one change, or say why not."""
        if change.add is not None:
            return self._add(change, change.add, path)
        key = next(key for key in _KINDS if getattr(change, key) is not None)
        word = change.amount.name if change.amount else str(getattr(change, key))
        place: Path = (*path, _KINDS[key])
        slot = self._line(word, change.part, place)
        if isinstance(slot, Flaw):
            return slot
        if slot.place is not None:
            hint = "make the two changes one"
            return Flaw(code="twice", path=place, message=f'"{word}" is changed twice', hint=hint)
        old, slot.place = self.base[slot.base or 0], place
        if change.swap is not None:
            slot.line, slot.place = _swapped(old, change), (*path, "for")
        elif change.amount is not None:
            take = replace(change.amount, wanted=change.amount.wanted or old.take.wanted)
            slot.line = old.model_copy(update={"take": take, "note": change.note or old.note})
        else:
            slot.line = None
        return None

    def _add(self, change: Change, take: Take, path: Path) -> Flaw | None:
        """Put a new line beside the one it names, or at the end."""
        key = "after" if change.after is not None else "before"
        word = change.after if change.after is not None else change.before
        if word is None:
            within = [slot for slot in self.slots if _part(slot, self.base) == change.part]
            beside: Slot | Flaw = within[-1] if within and change.part else self.slots[-1]
        else:
            beside = self._anchor(word, (*path, key))
        if isinstance(beside, Flaw):
            return beside
        part = change.part or _part(beside, self.base)
        line = MixLine.model_construct(take=take, note=change.note, part=part)
        slot = Slot(line, None, (*path, "add"), beside if key == "after" else None)
        index = self.slots.index(beside)
        if word is None:
            index += 1
        elif key == "after":
            index = _behind(self.slots, index)
        self.slots.insert(index, slot)
        return None

    def _line(self, word: str, part: str | None, path: Path) -> Slot | Flaw:
        """The line of the base that `word` names, in `part` if that is given."""
        slots = [slot for slot in self._own if self._name_in_base(slot) == self.name_of(word)]
        within = [slot for slot in slots if part is None or self.base[slot.base or 0].part == part]
        if len(within) == 1:
            return within[0]
        if not slots:
            return self._no_line(word, path)
        parts = list(dict.fromkeys(self.base[slot.base or 0].part or "" for slot in slots))
        if not within:
            message = f'"{word}" is not in that part of the recipe it starts from'
            hint = f'it is in "{parts[0]}"' if parts[0] else 'leave "part" out'
            return Flaw(code=OF_BASE, path=(*path[:-1], "part"), message=message, hint=hint)
        message = f'the base has "{word}" more than once'
        if part is None and len(parts) == len(slots):
            last = next(name for name in reversed(parts) if name)
            return Flaw(code=OF_BASE, path=path, message=message, hint=f'say which, such as "part: {last}"')
        return Flaw(code=OF_BASE, path=path, message=message, hint="write this one out in full as a mixture of its own")

    def _anchor(self, word: str, path: Path) -> Slot | Flaw:
        """The last line that `word` names, before or after the changes."""
        name = self.name_of(word)
        for slot in reversed(self.slots):
            name_now = self.name_of(slot.line.take.name) if slot.line else ""
            if name in (name_now, self._name_in_base(slot)):
                return slot
        return self._no_line(word, path)

    def _name_in_base(self, slot: Slot) -> str:
        return self.name_of(self.base[slot.base].take.name) if slot.base is not None else ""

    def _no_line(self, word: str, path: Path) -> Flaw:
        names = list(dict.fromkeys(self._name_in_base(slot) for slot in self._own))
        close = nearest(word, names) or next((name for name in names if name in word.lower()), None)
        more = ", ..." if len(names) > _MOST_NAMED else ""
        hint = f'did you mean "{close}"?' if close else f"it has {', '.join(names[:_MOST_NAMED])}{more}"
        return Flaw(code=OF_BASE, path=path, message=f'the base has no "{word}"', hint=hint)

    def _doubled(self) -> Iterator[Flaw]:
        """New lines whose ingredient is already in that part of the mix: a slip, as a step could name neither."""
        for slot in self.standing:
            if slot.place is None or slot.line is None:
                continue
            name, part = self.name_of(slot.line.take.name), slot.line.part
            for other in self.standing:
                if other is slot or other.line is None or other.line.part != part:
                    continue
                if self.name_of(other.line.take.name) == name and (other.place is None or other.base is None):
                    hint = f'make it one line, such as "amount: 300 g {name}", or give this one a "part"'
                    yield Flaw(code="twice", path=slot.place, message=f'"{name}" is in the mix already', hint=hint)
                    break


def _behind(slots: Sequence[Slot], index: int) -> int:
    """The place after the slot at `index` and everything added after it."""
    beside = slots[index]
    index += 1
    while index < len(slots) and slots[index].beside is beside:
        index += 1
    return index


def _slip(change: Change, path: Path) -> Flaw | None:
    """What is wrong with a change in itself: it must be one thing, with the keys that belong to it."""
    kinds = [alias for key, alias in _KINDS.items() if getattr(change, key) is not None]
    if not kinds:
        hint = 'write "swap", "add", "leave out" or "amount"'
        return Flaw(code="change", path=path, message="this changes nothing", hint=hint)
    if len(kinds) > 1:
        message, hint = f'one change says both "{kinds[0]}" and "{kinds[1]}"', "make it two changes, each after a dash"
        return Flaw(code="change", path=(*path, kinds[1]), message=message, hint=hint, on_key=True)
    if change.swap is not None and change.instead is None:
        message, hint = f'swap "{change.swap}" for what?', 'add "for: buttermilk"'
        return Flaw(code="change", path=(*path, "swap"), message=message, hint=hint)
    return next(_strays(change, path), None)


def _strays(change: Change, path: Path) -> Iterator[Flaw]:
    """Keys that belong to another kind of change."""
    if change.instead is not None and change.swap is None:
        yield _stray("for", path, hint='use it with "swap", such as {swap: milk, for: buttermilk}')
    if change.after is not None and change.add is None:
        yield _stray("after", path, hint='use it with "add", such as {add: 80 g walnuts, after: self-raising flour}')
    if change.before is not None and (change.add is None or change.after is not None):
        yield _stray("before", path, hint='use it with "add", and without "after"')
    if change.note is not None and change.leave_out is not None:
        yield _stray("note", path, hint="take it out: the ingredient is left out")


def _stray(key: str, path: Path, *, hint: str) -> Flaw:
    return Flaw(code="change", path=(*path, key), message=f'"{key}" does not belong here', hint=hint, on_key=True)


def _swapped(old: MixLine, change: Change) -> MixLine:
    """The line with another ingredient: by its own amount, or the old one's."""
    new = change.instead
    assert new is not None
    if new.take is not None:
        return old.model_copy(update={"take": new.take, "note": change.note})
    wanted = new.wanted or old.take.wanted
    written = f"{old.take.written[: old.take.at]}{new.name}{', ' if wanted else ''}{wanted}"
    take = Take(quantity=old.take.quantity, name=new.name, wanted=wanted, at=0, written=written)
    return old.model_copy(update={"take": take, "note": change.note or old.note})


def _part(slot: Slot, base: Sequence[MixLine]) -> str | None:
    """The part of the mix a place is in."""
    if slot.line is not None:
        return slot.line.part
    return base[slot.base].part if slot.base is not None else None
