"""What can be labelled: any mixture or cake of the book, by the name of its file."""

from __future__ import annotations

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.base.asking import AskError
from tinbook.plans.cakes.whole import WholeCake, whole_cake
from tinbook.plans.labels.makeup import Makeup, of_cake, of_mixture
from tinbook.problems import nearest


def product_asked(of: str | None, book: Book, facts: Facts) -> tuple[Makeup, WholeCake | None]:
    """What a mixture or a cake is made of, and the cake. AskError if the book has neither by that name."""
    slugs = sorted({*book.mixtures, *book.cakes})
    if of is None:
        raise AskError(
            "this needs a product", "a mixture or a cake: say which, such as --of " + (slugs[0] if slugs else "NAME")
        )
    if of in book.cakes:
        cake = whole_cake(of, book.cakes[of], book, facts)
        return of_cake(cake, book, facts), cake
    if of in book.mixtures:
        return of_mixture(of, book, facts), None
    close = nearest(of, slugs)
    hint = f'did you mean "{close}"?' if close else "it has " + (", ".join(slugs) or "none yet")
    raise AskError(f'the book has no mixture or cake "{of}"', hint)
