"""Lists that lead to other pages: mixtures by kind, techniques, cakes; a long one continues on sheets."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from tinbook.models.ledger import ledger_of
from tinbook.pages.at_a_glance.on_hand import ADDRESS, TITLE, shows_on_hand
from tinbook.pages.base.page import Desk, Page
from tinbook.pages.base.shared import Linked, plural, tin_count
from tinbook.pages.base.sheets import ListSheet, sheets_of
from tinbook.pages.cake.addresses import cake_address, called
from tinbook.pages.mixture.variations import from_base
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.sayings import spell, spelled_all
from tinbook.plans.base.weighing import makes_shown_g
from tinbook.plans.mixtures.keeping import keep_marks, season_names
from tinbook.plans.techniques.colours import technique_law

FEW = 8


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """A line of a list: a page, what stands to the left of it, a second line, what the list narrows by.

    `law`: what the law requires beside a colour in it. `anchor`: other pages lead to the line itself.
    """

    address: str
    name: str
    left: str
    second: str
    marks: tuple[tuple[str, str], ...] = ()
    law: str = ""
    anchor: str = ""


PARTED = "|"
"""Separates the values of one mark."""


def marks(**values: Iterable[str]) -> tuple[tuple[str, str], ...]:
    """What a row tells the script that narrows lists: `kind`, `season`, `keeps`, `tag`, `also`."""
    joined = ((name, PARTED.join(words)) for name, words in values.items())
    return tuple((name, text) for name, text in joined if text)


@dataclass(frozen=True, slots=True)
class Group:
    """Entries under one heading, with its own page or none."""

    title: str
    address: str
    entries: tuple[Entry, ...]
    anchor: str = ""

    @property
    def count(self) -> int:
        """How many entries."""
        return len(self.entries)

    @property
    def names(self) -> str:
        """Their names, in one line; the first few, if there are many."""
        more = len(self.entries) - FEW
        names = ", ".join(entry.name for entry in self.entries[:FEW])
        return f"{names} and {more} more" if more > 0 else names


@dataclass(frozen=True, kw_only=True)
class ListView:
    """A page that is a list of groups; `kinds`: pages that each have a part of it, if it continues on sheets."""

    title: str
    lead: str
    items: tuple[Group, ...]
    kind_word: str = "Kind"
    asides: tuple[Linked, ...] = ()
    kinds: tuple[Linked, ...] = ()

    @property
    def count(self) -> int:
        """How many rows."""
        return sum(group.count for group in self.items)

    @property
    def narrows(self) -> bool:
        """Whether it is too long to take in at once."""
        return self.count > FEW

    @property
    def choices(self) -> int:
        """How many rows of choices the script will make from the marks, so that room is kept for them."""
        rows = [dict(entry.marks) for group in self.items for entry in group.entries]
        return sum(_narrows([row.get(name, "").split(PARTED) for row in rows], least) for name, least in CHOICES)


CHOICES = (("kind", 1), ("season", 1), ("keeps", 1), ("tag", 2))
"""The marks that offer choices, and how many rows a value must be in to be one."""


def _narrows(rows: Sequence[Sequence[str]], least: int) -> bool:
    """Whether some value is in enough rows to be a choice, and not in all."""
    counts = Counter(value for values in rows for value in set(values) if value)
    return any(least <= count < len(rows) for count in counts.values())


def in_sheets(page: Page) -> Iterator[Page]:
    """The page of a list and, if it is long, the sheets it continues on. A group's heading is on each of them."""
    view: ListView = page.view
    for part in page.in_sheets(sheets_of(page.address, view.count)):
        yield replace(part, view=replace(view, items=tuple(_between(view.items, part.sheet)))) if part.sheet else part


def _between(groups: Iterable[Group], sheet: ListSheet) -> Iterator[Group]:
    """The part of the groups that is on a sheet."""
    before = 0
    for group in groups:
        entries = group.entries[max(0, sheet.first - before) : max(0, sheet.end - before)]
        before += group.count
        if entries:
            yield replace(group, entries=entries)


def mixture_entry(desk: Desk, slug: str) -> Entry:
    """A mixture as a line of a list, used in many lists."""
    return ledger_of(desk.book).share(("line of a list", slug), lambda: _mixture_entry(desk, slug))


def _mixture_entry(desk: Desk, slug: str) -> Entry:
    mixture = desk.book.mixtures[slug]
    kind = desk.facts.kinds[mixture.kind].title
    if mixture.tins:
        left = ", ".join(tin_count(count, tin) for count, tin in mixture.tins)
    else:
        left = formats.grams(makes_shown_g(mixture, desk.book))
    base = from_base(slug, desk.book)
    second = ", ".join([kind, *([base] if base else ()), *mixture.tags])
    narrowing = marks(
        kind=[kind],
        season=season_names(mixture),
        keeps=spelled_all(keep_marks(mixture)),
        tag=mixture.tags,
        also=mixture.also,
    )
    return Entry(address=f"mixtures/{slug}", name=mixture.name, left=left, second=second, marks=narrowing)


def technique_entry(desk: Desk, slug: str) -> Entry:
    """A technique as a line of a list."""
    technique = desk.book.techniques[slug]
    narrowing = marks(kind=[technique.level] if technique.level else [], tag=technique.tags, also=technique.also)
    law = spell(technique_law(technique, desk.book, desk.facts) or "")
    return Entry(
        address=f"techniques/{slug}",
        name=technique.name,
        left=plural(len(technique.steps), "step"),
        second=technique.purpose,
        marks=narrowing,
        law=law,
    )


def cake_entry(desk: Desk, slug: str) -> Entry:
    """A cake as a line of a list: its tins from the bottom, what it is."""
    design = desk.book.cakes[slug]
    sizes, what = called(tier.tier.tin for tier in design.tiers)
    unit, _, shape = what.partition(" ")
    told = [formats.title(shape), design.about or ", ".join(design.tags)]
    return Entry(
        address=cake_address(slug),
        name=design.name,
        left=formats.with_unit(sizes, unit),
        second=". ".join(words for words in told if words),
        marks=marks(kind=["Cake"], season=season_names(design), tag=design.tags, also=design.also),
    )


def kind_groups(desk: Desk) -> tuple[Group, ...]:
    """The mixtures by kind, in the order of the kinds; empty kinds are left out."""
    groups = []
    for key, kind in desk.facts.kinds.items():
        slugs = [slug for slug, mixture in desk.book.mixtures.items() if mixture.kind == key]
        if slugs:
            entries = tuple(
                mixture_entry(desk, slug) for slug in sorted(slugs, key=lambda slug: _name_in_order(desk, slug))
            )
            groups.append(Group(kind.title, kind_address(key), entries, kind_anchor(key)))
    return tuple(groups)


def _name_in_order(desk: Desk, slug: str) -> tuple[str, ...]:
    """Its name after those of its bases, so that variations follow what they start from."""
    varies = desk.book.varies.get(slug)
    above = _name_in_order(desk, varies.base) if varies else ()
    return (*above, desk.book.mixtures[slug].name.lower())


def kind_anchor(key: str) -> str:
    """The anchor of a kind on the page of all mixtures."""
    return "kind-" + "-".join(key.split())


def kind_address(key: str) -> str:
    """Where the list of one kind is."""
    return "mixtures/kinds/" + "-".join(key.split())


def list_pages(desk: Desk) -> Iterator[Page]:
    """Mixtures, one page for each kind, techniques, cakes."""
    kinds = kind_groups(desk)
    count = plural(len(desk.book.mixtures), "mixture")
    on_hand = (Linked(ADDRESS, TITLE),) if shows_on_hand(desk.book) else ()
    apart = tuple(Linked(kind.address, f"{kind.title}, {kind.count}") for kind in kinds)
    mixtures = ListView(title="Mixtures", lead=f"{count}, by kind.", items=kinds, asides=on_hand, kinds=apart)
    yield from in_sheets(
        Page(address="mixtures/index", title="Mixtures", template="list", view=mixtures, section=("Mixtures",))
    )
    for group in kinds:
        view = ListView(
            title=group.title, lead=f"{plural(len(group.entries), 'mixture')} of this kind.", items=(group,)
        )
        section = ("Mixtures", group.title)
        yield from in_sheets(
            Page(address=group.address, title=group.title, template="list", view=view, section=section)
        )
    slugs = sorted(desk.book.techniques, key=lambda slug: desk.book.techniques[slug].name.lower())
    techniques = Group("", "", tuple(technique_entry(desk, slug) for slug in slugs))
    lead = f"{plural(len(slugs), 'technique')}, step by step."
    view = ListView(title="Techniques", lead=lead, items=(techniques,), kind_word="Level")
    yield from in_sheets(
        Page(address="techniques/index", title="Techniques", template="list", view=view, section=("Techniques",))
    )
    if desk.book.cakes:
        by_name = sorted(desk.book.cakes, key=lambda slug: desk.book.cakes[slug].name.lower())
        cakes = Group("", "", tuple(cake_entry(desk, slug) for slug in by_name))
        lead = f"{plural(len(by_name), 'cake')}, each in every size you can make."
        view = ListView(title="Cakes", lead=lead, items=(cakes,))
        yield from in_sheets(Page(address="cakes/index", title="Cakes", template="list", view=view, section=("Cakes",)))
