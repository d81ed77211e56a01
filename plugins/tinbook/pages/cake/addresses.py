"""Links from a cake to the bench, already set to a tier, to a technique at its size, and to the cutting plans."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple
from urllib.parse import quote, urlencode

from tinbook.models.ledger import ledger_of
from tinbook.pages.at_a_glance.cuts import plan_addresses, tin_anchor
from tinbook.pages.base.page import Desk
from tinbook.pages.spelling import formats
from tinbook.plans.cakes.figures import CakeFigure
from tinbook.plans.cakes.tiers import TierWorked
from tinbook.tins import Tin

ASKED = "for?"
"""What a chosen thing begins with in an address."""


class Way(NamedTuple):
    """A page to go to, and where on it, or what to set it to."""

    address: str
    anchor: str


def cake_address(slug: str) -> str:
    """Where a cake's page is."""
    return f"cakes/{slug}"


def used_address(slug: str) -> str:
    """Where everything used for it is."""
    return f"cakes/{slug}/used"


def making_address(slug: str) -> str:
    """Where its loads, weights, supports and boxes are."""
    return f"cakes/{slug}/making"


def tier_at_bench(slug: str, size: str, tier: TierWorked) -> Way:
    """The page of a tier's mixture, and the anchor that sets its bench: the tin, how many of them, how many times the
    recipe, and which cake to go back to."""
    assert tier.baked is not None
    fit, time = tier.baked.fit, tier.baked.time
    asked: dict[str, object] = {"tin": fit.tin.name, "count": fit.count, "times": f"{tier.baked.exact.factor:.9g}"}
    if time is not None:
        asked |= {"look": f"{time.check_shown_min:g}", "done": formats.bounds(time.low_shown_min, time.high_shown_min)}
    return Way(f"mixtures/{tier.baked.batch.slug}", _anchor(asked, slug, size))


def batch_at_bench(mixture: str, slug: str, size: str, grams: float) -> Way:
    """The page of a filling or icing, set to so many grams."""
    return Way(f"mixtures/{mixture}", _anchor({"grams": f"{grams:g}"}, slug, size))


def figure_at_size(slug: str, size: str, figure: CakeFigure) -> Way:
    """The page of a decoration's technique, set to the cake and to how many of it."""
    many = {"people": figure.count} if figure.count > 1 else {}
    return Way(f"techniques/{figure.slug}", _anchor({"tin": figure.parts.cake.name, **many}, slug, size))


def cut_plan(tin: Tin, desk: Desk) -> Way | None:
    """The plan for cutting a tier; None if the book draws none for that size."""
    addresses = ledger_of(desk.book).lately(("cut_plans", tin.shape), lambda: _plans_by_name(desk, tin.shape))
    return Way(addresses[tin.name], tin_anchor(tin)) if tin.name in addresses else None


def _plans_by_name(desk: Desk, shape: str) -> dict[str, str]:
    return {drawn.name: address for drawn, address in plan_addresses(desk, shape).items()}


def _anchor(asked: dict[str, object], slug: str, size: str) -> str:
    return ASKED + urlencode({**asked, "cake": slug, "size": size}, quote_via=quote)


UNITS = ("cm", "mm", "in")


def size_of(tin: Tin) -> str:
    """`25`, `33 × 23`, `number 1`: a tin's size without its shape and its unit."""
    size = tin.name.removeprefix(tin.shape).strip()
    figures, _, unit = size.rpartition(" ")
    return figures.replace(" x ", " × ") if figures and unit in UNITS else size


def called(tins: Iterable[Tin]) -> tuple[str, str]:
    """`25 + 20 + 15`, `cm round`: the tins of a cake from the bottom, and what all of them are; in full where they are
    not alike."""
    tins = tuple(tins)
    names = [tin.name for tin in tins]
    shapes = {tin.shape for tin in tins}
    sizes = [name.removeprefix(tins[0].shape).strip() for name in names]
    units = {size.rpartition(" ")[2] for size in sizes}
    alike = len(shapes) == 1 and len(units) == 1 and all(size[:1].isdigit() and " " in size for size in sizes)
    if not alike:
        return " + ".join(names), ""
    plain = " + ".join(size.rpartition(" ")[0].replace(" x ", " × ") for size in sizes)
    return plain, f"{units.pop()} {shapes.pop()}"
