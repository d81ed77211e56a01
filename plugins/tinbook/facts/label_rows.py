"""What the law wants on a label: rules by nation and by way of selling, classes of additives, what is put in flour."""

from __future__ import annotations

from datetime import date

from tinbook.facts.rows import Cited


class LabelRule(Cited):
    """One rule of a label: what it `says`, the `law` with its article, and the day its text was last looked at.

    `nations` and `sales`: where and for which ways of selling it applies; empty for all of them.
    """

    key: str
    says: str
    law: str
    nations: tuple[str, ...] = ()
    sales: tuple[str, ...] = ()
    since: str = ""
    read_on: date

    def applies(self, nation: str | None, sale: str) -> bool:
        """Whether it applies there, to what is sold that way."""
        return (not self.nations or nation in self.nations) and (not self.sales or sale in self.sales)


class AdditiveClass(Cited):
    """A class an additive is named by in a list, in the singular."""

    key: str


class FlourLaw(Cited):
    """What has to be in white wheat flour milled from the day `since` on, in the order it is listed."""

    key: str
    since: date
    adds: tuple[str, ...]
    law: str


class ListWords(Cited):
    """The words that name an allergen in a list. `names` do so by themselves (`milk`); `hides` are made from it without
    naming it (`whey`); `but_not` look like either, and are not (`coconut milk`)."""

    key: str
    names: tuple[str, ...]
    hides: tuple[str, ...] = ()
    but_not: tuple[str, ...] = ()
