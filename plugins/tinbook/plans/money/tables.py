"""What a cake or a mixture costs, as a table."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.asking import AskError, Query
from tinbook.plans.base.result import Cell, Result, Row, short
from tinbook.plans.base.saying import Saying, saying
from tinbook.plans.base.worked import Worked
from tinbook.plans.money.cost import DRIVE, HANDS, HOUSE, OVEN, PACKAGING, WASTED, CostRow
from tinbook.plans.money.of_mixtures import mixture_cost
from tinbook.plans.money.offered import FOR_ITSELF, Priced, order_for, priced
from tinbook.plans.money.till import Till, till_of
from tinbook.plans.orders.asked import worked_order
from tinbook.plans.shopping.things import FOOD, LENGTH
from tinbook.problems import nearest

SOURCES = ("common practice",)
SAID = {
    WASTED: saying("cost_wasted"), PACKAGING: saying("cost_packaging"), HANDS: saying("cost_hands"),
    HOUSE: saying("cost_house"), OVEN: saying("cost_oven"), DRIVE: saying("cost_drive"),
}  # fmt: skip
"""What a row is of that is no thing."""


def price(book: Book, facts: Facts, query: Query) -> Result:
    """What a cake costs in its own size or another, row by row, and the price that comes of it; of a mixture, what its
    ingredients cost. AskError if the book has none by that name."""
    till = till_of(book, facts)
    if query.of in book.cakes or query.of is None:
        return _cake(query, till)
    if query.of in book.mixtures:
        return _mixture(query, till)
    known = [*sorted(book.cakes), *sorted(book.mixtures)]
    close = nearest(query.of, known)
    hint = f'did you mean "{close}"?' if close else "it has " + ", ".join(known)
    raise AskError(f'the book has no cake or mixture "{query.of}"', hint)


def _cake(query: Query, till: Till) -> Result:
    slug = query.of
    if slug is None:
        first = next(iter(till.book.cakes), "NAME")
        raise AskError("this table needs a cake or a mixture", f"say which, such as --of {first}")
    if query.size is not None and query.guests is not None:
        raise AskError("--size and --guests cannot be used together", "use just one of them")
    order = order_for(slug, query.size).model_copy(update={"guests": query.guests})
    worked = worked_order(FOR_ITSELF, order, till.book, till.facts, till.bakes)
    found = priced(worked, till)
    size = worked.size.said if worked.size else saying("size_by_steps", steps=0)
    title = saying("price_of", cake=till.book.cakes[slug].name, size=size, code=till.money.currency.code)
    rows = (*map(_row, found.cost.rows), *_asked(found, till))
    return Result(title, rows, _worked(found.cost.unknown), till.money.currency.places)


def _mixture(query: Query, till: Till) -> Result:
    for key in ("size", "guests"):
        if getattr(query, key) is not None:
            raise AskError(f"--{key} is for a cake, and this is a mixture", "leave it out")
    found = mixture_cost(query.of or "", till)
    rows = [*map(_row, found.cost.rows)]
    rows.append(_sum("sums", saying("cost_all"), found.cost.shown, found.cost.bought_shown))
    rows.append(_sum("sums", saying("cost_100_g"), found.hundred_shown))
    if found.tin is not None and found.tin_shown is not None and found.in_tin:
        rows.append(_sum("sums", saying("cost_of_a_tin", tin=found.in_tin.name), found.tin_shown))
    title = saying("mixture_price_of", mixture=found.name, code=till.money.currency.code)
    return Result(title, tuple(rows), _worked(found.cost.unknown), till.money.currency.places)


def _worked(unknown: tuple[str, ...]) -> Worked:
    known = saying("unknown_prices", names=unknown) if unknown else saying("all_prices_known")
    return Worked(saying("price_worked"), (saying("at_prices_paid"), known), SOURCES)


def row_said(row: CostRow) -> Saying | str:
    """What a row is of."""
    return SAID.get(row.of, row.of)


def _row(row: CostRow) -> Row:
    cells: dict[str, Cell] = {"group": row.group, "what": row_said(row)}
    if row.thing:
        unit = "g" if row.thing.unit == FOOD else "mm" if row.thing.unit == LENGTH else "count"
        cells[f"used_{unit}"] = short(row.amount)
    elif row.of in (HANDS, OVEN):
        cells["used_min"] = short(row.amount)
    return {
        **cells,
        "cost_money": _float(row.shown),
        "at_least_money": _float(row.least_shown),
        "in_packs_money": _float(row.bought_shown),
    }


def _float(amount: Decimal | None) -> float | None:
    """As JSON holds it: the shortest figure that means this one is what is printed."""
    return None if amount is None else float(amount)


def _sum(group: str, what: Saying, shown: Decimal, packs: Decimal | None = None, least: Decimal | None = None) -> Row:
    return {
        "group": group, "what": what, "cost_money": _float(shown), "at_least_money": _float(least),
        "in_packs_money": _float(packs),
    }  # fmt: skip


def _asked(found: Priced, till: Till) -> Iterator[Row]:
    made, cost = found.price, found.cost
    yield _sum("price", saying("cost_all"), cost.shown, cost.bought_shown, least=cost.least_shown)
    yield _sum("price", saying("cost_added", mark_up=till.mark_up, margin=till.margin), made.added)
    yield _sum("price", saying("cost_lifted") if made.least else saying("cost_rounding"), made.rounding)
    if made.vat:
        yield _sum("price", saying("cost_vat", rate=till.money.vat), made.vat)
    yield _sum("price", saying("cost_price") if found.sure else saying("cost_price_at_least"), made.price)
    each = found.each(found.serves)
    if each is not None:
        yield _sum("price", saying("cost_portion", serves=found.serves), each)
