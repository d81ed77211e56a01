"""Views that more than one page uses."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache

from tinbook.facts import Facts
from tinbook.models import Book, Step
from tinbook.models.ledger import once
from tinbook.pages.base.pictures import PictureView
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.sayings import formula_of, inputs_of, spell
from tinbook.plans.base.worked import Worked
from tinbook.plans.cakes.naming import cakes_naming
from tinbook.plans.techniques.colours import technique_law
from tinbook.tins import Tin

MEASURES = (("grams", "g"), ("ounces", "oz"), ("cups", "cups"))
"""The measures to choose from, and what the switch says."""


def measures_of(book: Book) -> tuple[tuple[str, str, bool], ...]:
    """The measures to choose from, what the switch says, and which is the house's own."""
    return tuple((key, words, key == book.house.measures) for key, words in MEASURES)


@dataclass(frozen=True, slots=True)
class Linked:
    """A page of the book to link to: its address, its name, what the law requires beside a colour in it."""

    address: str
    name: str
    law: str = ""


@dataclass(frozen=True, slots=True)
class LeafLink:
    """A leaf of several that belong together; `here`: the one that is open."""

    address: str
    name: str
    here: bool


def leaves_at(leaves: Iterable[Linked], address: str) -> tuple[LeafLink, ...]:
    """The leaves, seen from the one at an address."""
    return tuple(LeafLink(leaf.address, leaf.name, leaf.address == address) for leaf in leaves)


@dataclass(frozen=True, slots=True)
class SourceLine:
    """A source named by a table: its key on the page of sources, its title."""

    anchor: str
    title: str


@dataclass(frozen=True, slots=True)
class WorkedView:
    """The fold "How this was worked out"."""

    formulas: tuple[str, ...]
    inputs: tuple[str, ...]
    sources: tuple[SourceLine, ...]


def worked_view(worked: Iterable[Worked], facts: Facts) -> WorkedView:
    """Formulas, inputs and sources of one or more calculations."""
    worked = tuple(worked)
    keys = dict.fromkeys(key for calculation in worked for key in calculation.sources)
    return WorkedView(
        tuple(formula_of(calculation) for calculation in worked),
        tuple(line for calculation in worked for line in inputs_of(calculation)),
        tuple(SourceLine(source_anchor(key), facts.sources[key].title) for key in keys),
    )


def source_anchor(key: str) -> str:
    """The anchor of a source on its page."""
    return "source-" + "-".join(key.split())


LONGEST_NAME = 60
RESERVED = frozenset(("index", "readme", "con", "prn", "aux", "nul"))
"""Names that a server or a file system reserves for itself."""


def file_names(words: Iterable[str]) -> dict[str, str]:
    """A file name for each of `words`, in letters, figures and hyphens: no two the same, whatever is written."""
    named: dict[str, str] = {}
    taken: set[str] = set()
    for word in words:
        bare = "".join(sign for sign in unicodedata.normalize("NFKD", word.lower()) if not unicodedata.combining(sign))
        name = "-".join("".join(sign if sign.isalnum() else " " for sign in bare).split())[:LONGEST_NAME].strip("-")
        name = f"{name}-card" if name in RESERVED else name or "card"
        count, free = 2, name
        while free in taken:
            free, count = f"{name}-{count}", count + 1
        taken.add(free)
        named[word] = free
    return named


def tag_anchor(tag: str) -> str:
    """The anchor of a tag on its page."""
    return "tag-" + "".join(sign if sign.isalnum() else "-" for sign in tag.lower())


def plural(count: float, one: str, many: str = "") -> str:
    """`1 tin`, `2 tins`, `½ batch`."""
    return formats.with_unit(formats.mixed(count), one if count <= 1 else many or one + "s")


def unsure_said(lines: Sequence[int]) -> str:
    """Says that lines of a file are still marked unsure: by their numbers, never by their words."""
    *most, last = map(str, lines)
    named = f"Lines {', '.join(most)} and {last} of its file are" if most else f"Line {last} of its file is"
    return f"{named} still marked unsure: check before you bake from it."


def tin_name(count: int, tin: Tin) -> str:
    """`2 × round 15 cm`, `24 standard cups`: without the depth."""
    return formats.tin_words(f"{count} {tin.name}" if tin.holes > 1 else f"{count} × {tin.name}")


@lru_cache(maxsize=1024)
def tin_count(count: int, tin: Tin) -> str:
    """`2 round 15 cm × 7.5 cm (6 in)`."""
    name = f"{count} {tin.full_name}" if tin.kind.in_trays else f"{count} × {tin.full_name}"
    inches = f" ({tin.size_label_in})" if tin.size_label_in else ""
    return formats.tin_words(name + inches)


def minutes(low: float, high: float) -> str:
    """`25 min`, `55–65 min`, `2 h 10 min`; in days beyond two."""
    if low == high:
        return _clock(low)
    return f"{formats.number(low)}–{_clock(high)}" if high < 60 else f"{_clock(low)} to {_clock(high)}"


def _clock(value: float) -> str:
    hours, rest = divmod(round(value), 60)
    parts = [formats.with_unit(str(amount), unit) for amount, unit in ((hours, "h"), (rest, "min")) if amount]
    return formats.NBSP.join(parts) or formats.with_unit("0", "min")


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceView:
    """A piece of a step: text, or the amount of a line of the mix (a share of it) and its name, or the tins,
    or the letter of a part."""

    text: str
    amount: str = ""
    line: int | None = None
    share: float = 1.0
    tins: bool = False
    letter: bool = False

    @property
    def is_amount(self) -> bool:
        """Whether it follows the chosen tin."""
        return self.line is not None


@dataclass(frozen=True, slots=True)
class TimeView:
    """A time of a step in words, and the minutes to set a timer to: its least. `starts`: what the timer's button says,
    if different."""

    words: str
    minutes: float
    starts: str = ""


@dataclass(frozen=True, slots=True)
class DialView:
    """What to set this house's oven to: `135 °C` and `fan`, or `gas mark 2` and nothing."""

    figure: str
    fan: str


def dial_view(said: str) -> DialView:
    """A spelled dial, taken apart."""
    figure, fan, _ = said.partition(" fan")
    return DialView(formats.kept_together(figure), fan.strip())


@dataclass(frozen=True, slots=True, kw_only=True)
class StepView:
    """A step: its pieces, its times, when it is done, and a short name for its timers. `dial`: it heats the oven, and
    this is what to set; `bakes`: it is the bake itself."""

    pieces: tuple[PieceView, ...]
    times: tuple[TimeView, ...]
    done: str
    name: str
    windows: tuple[str, ...]
    pictures: tuple[PictureView, ...]
    dial: DialView | None = None
    bakes: bool = False

    @property
    def timed(self) -> bool:
        """Whether it gives a time."""
        return bool(self.times)


NAME_WORDS = 4
HANGING = frozenset((
    "a", "an", "and", "at", "by", "for", "from", "in", "into", "of", "on", "or", "over", "the", "till", "to", "until",
    "with",
))  # fmt: skip
"""Words that no name ends with."""


def short_name(do: str) -> str:
    """The first words of what is to be done, without marks, as far as they make a name."""
    words = do.replace("<", "").replace(">", "").split(".")[0].split()[:NAME_WORDS]
    while len(words) > 1 and words[-1].lower() in HANGING:
        words.pop()
    return " ".join(words).rstrip(",;:")


def step_view(
    step: Step, pieces: tuple[PieceView, ...], pictures: tuple[PictureView, ...] = (), waits: TimeView | None = None
) -> StepView:
    """A step for the page. Its name is its first words without marks. `waits`: its waiting time, if known better."""
    times = []
    if step.hands_on is not None:
        times.append(TimeView(formats.span(step.hands_on), step.hands_on.low.base))
    if step.waiting is not None:
        times.append(waits or TimeView(f"wait {formats.span(step.waiting)}", step.waiting.low.base))
    windows = (
        ("can be done {} ahead", step.ahead),
        ("must be left to stand for at least {}", step.stands),
        ("keeps for {}", step.keeps),
    )
    spans = tuple(words.format(formats.kept_together(stand.written)) for words, stand in windows if stand)
    return StepView(
        pieces=pieces,
        times=tuple(times),
        done=step.done or "",
        name=step.called or short_name(step.do),
        windows=spans,
        pictures=pictures,
    )


def linked_techniques(slugs: Iterable[str], book: Book, facts: Facts) -> tuple[Linked, ...]:
    """Techniques by slug, those the book shows."""
    found = ((slug, book.techniques[slug]) for slug in slugs if slug in book.techniques)
    return tuple(
        Linked(f"techniques/{slug}", each.name, spell(technique_law(each, book, facts) or "")) for slug, each in found
    )


def linked_mixtures(slugs: Iterable[str], book: Book) -> tuple[Linked, ...]:
    """Mixtures by slug, those the book shows."""
    names = _names(book)
    return tuple(Linked(f"mixtures/{slug}", names[slug]) for slug in slugs if slug in names)


def linked_cakes(address: str, book: Book) -> tuple[Linked, ...]:
    """The cakes that take the mixture or technique at an address."""
    return tuple(Linked(f"cakes/{slug}", name) for slug, name in cakes_naming(book).get(address, ()))


@once
def _names(book: Book) -> Mapping[str, str]:
    """What each mixture is called: a page that only links to it reads no more than that."""
    return {slug: mixture.name for slug, mixture in book.mixtures.items()}
