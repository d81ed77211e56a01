"""The rows of the rules for who sells cakes: what is asked, by which law of which nation, since when."""

from __future__ import annotations

from tinbook.facts.rows import Cited, FactRow


class NationLaw(Cited):
    """What the law of one nation asks. `since`: the day it came into force, as it is said; empty where not known."""

    nation: str
    says: str
    law: str
    since: str = ""


class SaleRule(FactRow):
    """A rule for who sells cakes: what it means in a kitchen, and the law of each nation."""

    key: str
    title: str
    advice: str
    laws: tuple[NationLaw, ...]
