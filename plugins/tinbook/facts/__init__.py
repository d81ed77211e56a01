"""Cited facts of nature, trade and law. Every row has a unit, a range where there is one, and a source.

The rows live in data/*.yaml, one file per section: sources, numbers, densities, eggs, marks, kinds, allergens,
cautions, parts, balance, swaps, portions, colours, dowels, rules, and what
labels need. A new fact is a new row there. A source called common
practice, from memory or our own judgement is shown as just that.

Cautions are called up by traits, which an ingredient card or a decoration lists as `care`: raw flour, raw egg, dairy
filling, honey, alcohol, colour, glitter, flowers, whole nuts, small hard sweets, marshmallow, whole small fruit,
support, wire, dowel, tiered cake, candles, dummy, strong flavouring.
"""

from tinbook.facts.label_rows import AdditiveClass, FlourLaw, LabelRule, ListWords
from tinbook.facts.reading import Facts, read_facts
from tinbook.facts.rows import (
    Additive,
    Allergen,
    BalanceRule,
    Caution,
    Cited,
    Dowelled,
    EggClass,
    Fact,
    FormulaPart,
    GasMark,
    Kind,
    Range,
    Served,
    Source,
    Swap,
    SwapPart,
)
from tinbook.facts.rules import NationLaw, SaleRule

__all__ = [
    "Additive",
    "AdditiveClass",
    "Allergen",
    "BalanceRule",
    "Caution",
    "Cited",
    "Dowelled",
    "EggClass",
    "Fact",
    "Facts",
    "FlourLaw",
    "FormulaPart",
    "GasMark",
    "Kind",
    "LabelRule",
    "ListWords",
    "NationLaw",
    "Range",
    "SaleRule",
    "Served",
    "Source",
    "Swap",
    "SwapPart",
    "read_facts",
]
