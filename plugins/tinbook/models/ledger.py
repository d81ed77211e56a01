"""What each piece of work reads in a book, noted as it reads, so that the work is done again only if that changes.

A key names something that was read: `house`, `cards/butter`, `cards/` for all card names and their order, `=NAME` for
the result of other work. Nobody has to declare what they depend on, so nobody can forget to.
"""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, field, fields
from functools import cached_property, partial, wraps
from hashlib import blake2b
from typing import Any, Generic, TypeVar

from tinbook.models.book import Book

T = TypeVar("T")
Name = str | tuple[object, ...]
WORK = "="
"""What the key for other work begins with."""
LATELY = 96
"""How many large outcomes are at hand at once."""


class Itself(Generic[T]):
    """Stands for a value in the name of work: for that very one, however alike another may be."""

    __slots__ = ("value",)

    def __init__(self, value: T) -> None:
        self.value = value

    def __hash__(self) -> int:
        return id(self.value)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Itself) and self.value is other.value


def digest_of(value: object) -> bytes:
    """Sixteen bytes that change when a value's repr does; the same in every process."""
    return blake2b(repr(value).encode("utf-8", "backslashreplace"), digest_size=16).digest()


@dataclass(frozen=True)
class Kept:
    """What is known about earlier work: what each piece read, and the digest of everything read, both by name."""

    reads: Mapping[str, frozenset[str]] = field(default_factory=dict)
    digests: Mapping[str, bytes] = field(default_factory=dict)
    values: Mapping[str, object] = field(default_factory=dict, repr=False)
    """What was read, for as long as the process lasts: the same value has the same digest."""


class Ledger:
    """Notes what is read in one book, and knows which earlier work is still good."""

    def __init__(self, kept: Kept | None = None) -> None:
        self._kept = kept or Kept()
        self._open: list[set[str]] = []
        self._reads: dict[Name, set[str]] = {}
        self._values: dict[Name, Any] = {}
        self._lately: OrderedDict[Name, tuple[Any, set[str]]] = OrderedDict()
        self._digests: dict[str, bytes] = {}
        self._same: dict[str, bool] = {}
        self._sources: dict[str, Callable[[str], object]] = {}
        self._makers: dict[str, Callable[[], object]] = {}

    def comes_from(self, group: str, source: Callable[[str], object]) -> None:
        """Where the values for a group of keys are: `source(NAME)` for the key `GROUP/NAME`, `source("")` for the
        names, or for the whole group if the key is just its name."""
        self._sources[group] = source

    def made_by(self, name: str, make: Callable[[], object]) -> None:
        """How to do a piece of work, if its result is asked for before anybody needs it."""
        self._makers.setdefault(name, make)

    def note(self, key: str) -> None:
        """Something has been read."""
        if self._open:
            self._open[-1].add(key)

    @contextmanager
    def reading(self, name: Name) -> Iterator[None]:
        """Whatever is read in the meantime is added to what the work `name` has read."""
        self._open.append(self._reads.setdefault(name, set()))
        try:
            yield
        finally:
            self._open.pop()

    def share(self, name: tuple[object, ...], make: Callable[[], T]) -> T:
        """Work that others need, done once. Its user counts as having read all that it read, so its result is not
        kept."""
        value = self._done(name, make)
        if self._open:
            self._open[-1] |= self._reads[name]
        return value

    def lately(self, name: tuple[object, ...], make: Callable[[], T]) -> T:
        """The same for what is large and soon wanted again: kept until LATELY others have been wanted since."""
        if name not in self._lately:
            reads = set[str]()
            self._open.append(reads)
            try:
                made = make()
            finally:
                self._open.pop()
            self._lately[name] = made, reads
            if len(self._lately) > LATELY:
                self._lately.popitem(last=False)
        self._lately.move_to_end(name)
        value, reads = self._lately[name]
        if self._open:
            self._open[-1] |= reads
        found: T = value
        return found

    def work(self, name: str, make: Callable[[], T]) -> T:
        """The same, but its user counts as having read only its result, however that came about."""
        value = self._done(name, make)
        self.note(WORK + name)
        return value

    def add_reads(self, name: str, reads: frozenset[str]) -> None:
        """Work done by another process has read this."""
        self._reads.setdefault(name, set()).update(reads)

    def reads_of(self, name: str) -> frozenset[str]:
        """What a piece of work has read so far."""
        return frozenset(self._reads.get(name, ()))

    def agrees(self, other: Ledger, name: str) -> bool:
        """Whether all that a piece of work read of another's book is the same in this one's."""
        return all(
            self._digest(key) == other._digest(key) if key.startswith(WORK) else self._value(key) == other._value(key)
            for key in other.reads_of(name)
        )

    def stands(self, name: str) -> bool:
        """Whether earlier work is known and nothing it read has changed. If so, it counts as done."""
        reads = self._kept.reads.get(name)
        if reads is None or not all(map(self._unchanged, reads)):
            return False
        self._reads.setdefault(name, set(reads))
        return True

    def changed(self, key: str) -> bool:
        """Whether something that earlier work read has changed."""
        return key in self._kept.digests and not self._unchanged(key)

    def kept(self) -> Kept:
        """What is known about all work that was done or is still good: for the next book's ledger."""
        reads = {name: frozenset(keys) for name, keys in self._reads.items() if isinstance(name, str)}
        for key in {key for keys in reads.values() for key in keys if key.startswith(WORK)}:
            self._digest(key)  # may add to what is known
        reads = {name: frozenset(keys) for name, keys in self._reads.items() if isinstance(name, str)}
        digests = {key: self._digest(key) for key in frozenset().union(*reads.values())}
        return Kept(reads, digests, {key: self._value(key) for key in digests if not key.startswith(WORK)})

    def _done(self, name: Name, make: Callable[[], T]) -> T:
        if name not in self._values:
            with self.reading(name):
                self._values[name] = make()
        value: T = self._values[name]
        return value

    def _unchanged(self, key: str) -> bool:
        if key not in self._same:
            before = self._kept.digests.get(key)
            name = key.removeprefix(WORK)
            self._same[key] = before is not None and (
                (name != key and name not in self._values and self.stands(name)) or self._digest(key) == before
            )
        return self._same[key]

    def _digest(self, key: str) -> bytes:
        if key not in self._digests:
            self._digests[key] = self._of_work(key[1:]) if key.startswith(WORK) else self._of_source(key)
        return self._digests[key]

    def _of_work(self, name: str) -> bytes:
        if name in self._values:
            return digest_of(self._values[name])
        if self._same.get(WORK + name):
            return self._kept.digests[WORK + name]
        return digest_of(self._done(name, self._makers[name])) if name in self._makers else b""

    def _of_source(self, key: str) -> bytes:
        value = self._value(key)
        if key in self._kept.values and self._kept.values[key] is value:
            return self._kept.digests[key]
        return digest_of(value)

    def _value(self, key: str) -> object:
        group, _, name = key.partition("/")
        return self._sources[group](name) if group in self._sources else None


def ledger_of(book: Book) -> Ledger:
    """The ledger of a book. A book that is not watched has one too, but it only keeps what was worked out once."""
    ledger: Ledger = vars(book).setdefault("_ledger", Ledger())
    return ledger


ONCE: list[Callable[[Book], Any]] = []
"""Everything that is worked out once for a whole book."""


def once(work: Callable[[Book], T]) -> Callable[[Book], T]:
    """What another package makes of a whole book: worked out once for each book and kept with it, as its own properties
    are. Another book, however similar, starts afresh."""

    @wraps(work)
    def kept(book: Book) -> T:
        return ledger_of(book).work(_name_of(work), lambda: work(book))

    ONCE.append(work)
    return kept


def _name_of(work: Callable[[Book], Any]) -> str:
    return f"{work.__module__}.{work.__qualname__}"


class _Entries(Mapping[str, T]):
    """Values by name, with a note of which ones are looked at."""

    def __init__(self, group: str, values: Mapping[str, T], ledger: Ledger) -> None:
        self._group, self._values, self._note = f"{group}/", values, ledger.note
        ledger.comes_from(group, self._source)

    def _source(self, name: str) -> object:
        return self._values.get(name) if name else tuple(self._values)

    def __getitem__(self, name: str) -> T:
        self._note(self._group + name)
        return self._values[name]

    def __contains__(self, name: object) -> bool:
        self._note(f"{self._group}{name}")
        return name in self._values

    def __iter__(self) -> Iterator[str]:
        self._note(self._group)
        return iter(self._values)

    def __len__(self) -> int:
        self._note(self._group)
        return len(self._values)


def entries(group: str, values: Mapping[str, T], ledger: Ledger) -> Mapping[str, T]:
    """Values by name; the ledger notes which ones are looked at, as `GROUP/NAME`."""
    return _Entries(group, values, ledger)


class _Watched(Book):
    """A book whose every field tells the ledger when it is read."""


def _looked_at(name: str) -> property:
    return property(lambda book: vars(book)["_look"](name))


FIELDS = tuple(each.name for each in fields(Book)) + tuple(
    name for name, value in vars(Book).items() if isinstance(value, cached_property)
)
"""Everything a book can be asked for."""
for _name in FIELDS:
    setattr(_Watched, _name, _looked_at(_name))


def watched(book: Book, ledger: Ledger) -> Book:
    """The same book, but the ledger notes what is read in it: named things one by one, the rest as a whole."""
    groups: dict[str, Mapping[str, Any]] = {}

    def look(name: str) -> Any:
        if name in groups:
            return groups[name]
        value = getattr(book, name)
        if isinstance(value, Mapping):
            groups[name] = entries(name, value, ledger)
            return groups[name]
        ledger.note(name)
        return value

    for name in FIELDS:
        if not isinstance(getattr(book, name), Mapping):
            ledger.comes_from(name, lambda _, name=name: getattr(book, name))  # type: ignore[misc]
        else:
            look(name)
    made = object.__new__(_Watched)
    vars(made).update(_look=look, _ledger=ledger)
    for work in ONCE:
        ledger.made_by(_name_of(work), partial(work, made))
    return made
