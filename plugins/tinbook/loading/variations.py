"""Mixtures that start from another are put together here, each after its base."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from functools import partial
from typing import Protocol, TypeVar

from tinbook.facts import Facts
from tinbook.loading.checks import Checks
from tinbook.loading.files import slug_of
from tinbook.loading.intake import Intake
from tinbook.models import Book, Flaw, Variation, Varies, Written
from tinbook.plans.rules.fields import FOLLOWS
from tinbook.plans.variations.written_out import vary
from tinbook.problems import nearest

FOLDER, CAKES = "mixtures/", "cakes/"
NOUN = {FOLDER: "mixture", CAKES: "cake"}
M = TypeVar("M", bound=Written)
V = TypeVar("V", bound=Written)


class Based(Protocol):
    """A file that starts from another in its folder."""

    @property
    def base(self) -> str:
        """The name of the other one's file."""


def with_variations(
    intake: Intake, book: Book, variations: Mapping[str, Variation], facts: Facts, check: Checks
) -> Book:
    """The book with its variations among the mixtures, written out and checked.

    A variation that breaks a rule, or whose base does, is reported and left out.
    """
    mixtures, varies = dict(book.mixtures), dict[str, Varies]()
    for slug in bases_first(intake, variations):
        variation, address = variations[slug], f"{FOLDER}{slug}"
        if variation.base not in mixtures or f"{FOLDER}{variation.base}" in intake.broken:
            intake.tell(address, [no_base(intake, slug, variation.base)])
            continue
        base = mixtures[variation.base]
        work = partial(vary, variation, base, book, facts)
        said = (base, book.cards, book.house, book.tins)
        made = intake.parses.made((address, "written out", ()), variation, said, work)
        intake.tell(address, made.flaws)
        if made.mixture is None:
            continue
        flaws = check.rules(address, made.mixture) or check.steps(address, made.mixture)
        intake.tell(address, map(made.placed, flaws))
        mixtures[slug], varies[slug] = made.mixture, made.varies
    order = [address.removeprefix(FOLDER) for address in intake.sources]
    return replace(book, mixtures={slug: mixtures[slug] for slug in order if slug in mixtures}, varies=varies)


def is_variation(data: Mapping[str, object]) -> bool:
    """Whether a file in mixtures/ or cakes/ says what differs from a base."""
    return "from" in data or "change" in data


def split(models: Mapping[str, M], variation: type[V]) -> tuple[dict[str, M], dict[str, V]]:
    """Those written out in full, and those that start from another."""
    variations = {slug: each for slug, each in models.items() if isinstance(each, variation)}
    return {slug: each for slug, each in models.items() if slug not in variations}, variations


def bases_first(intake: Intake, variations: Mapping[str, Based], folder: str = FOLDER) -> Iterator[str]:
    """The variations in a folder, each after the one it starts from. Those in a circle are reported: the first, and
    those that follow from it."""
    state: dict[str, bool] = {}
    for slug in variations:
        chain = []
        while slug in variations and slug not in state:
            state[slug] = False
            chain.append(slug)
            slug = variations[slug].base
        if slug in chain:
            circle = chain[chain.index(slug) :]
            _tell_circle(intake, circle, variations, folder)
            chain = chain[: chain.index(slug)]
            state |= dict.fromkeys(circle, True)
        yield from reversed(chain)
        state |= dict.fromkeys(chain, True)


def _tell_circle(intake: Intake, circle: list[str], variations: Mapping[str, Based], folder: str) -> None:
    first, *others = sorted(circle)
    if others:
        chain, slug = "", first
        for _ in circle:
            chain += f"{slug} from "
            slug = variations[slug].base
        message = "its base leads back to itself"
        hint = f"{chain}{first}: write one of them out in full, without a base"
    else:
        message = f"a {NOUN[folder]} cannot start from itself"
        hint = f"name another {NOUN[folder]}, or write this one out in full"
    intake.tell(f"{folder}{first}", [Flaw(code="circle", path=("from",), message=message, hint=hint)])
    for slug in others:
        intake.tell(f"{folder}{slug}", [_broken_base(variations[slug].base, folder)])


def no_base(intake: Intake, own: str, base: str, folder: str = FOLDER) -> Flaw:
    """Why a variation, in the file called `own`, cannot be made: its base is broken, as reported elsewhere, or is not
    in the book."""
    addresses = {*intake.sources, *intake.refused}
    if f"{folder}{base}" in addresses:
        return _broken_base(base, folder)
    known = [address.removeprefix(folder) for address in addresses if address.startswith(folder)]
    known = [each for each in known if each != own]  # it cannot start from itself
    slug = slug_of(base)
    close = slug if slug in known else nearest(slug, known) or next((one for one in known if slug in one), None)
    hint = f'did you mean "{close}"?' if close else "write the name of its file, without .yaml"
    message = f'the book has no {NOUN[folder]} "{base}" to start from'
    return Flaw(code="no such file", path=("from",), message=message, hint=hint)


def _broken_base(base: str, folder: str) -> Flaw:
    message, hint = f'its base "{base}" has a mistake in it', f"fix {folder}{base}.yaml first"
    return Flaw(code=FOLLOWS, path=("from",), message=message, hint=hint)
