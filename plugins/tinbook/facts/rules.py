"""The rules for people who sell cakes: what is required, by which law of which nation, and since when."""

from __future__ import annotations

from tinbook.facts.rows import Cited, FactRow


class NationLaw(Cited):
    """What the law of one nation requires. `since`: when it came into force, in words; empty if unknown."""

    nation: str
    says: str
    law: str
    since: str = ""


class SaleRule(FactRow):
    """A rule for people who sell cakes: what it means in a kitchen, and the law of each nation."""

    key: str
    title: str
    advice: str
    laws: tuple[NationLaw, ...]
