"""Plain trees in, facts out. It reads no file; a fault in the data is a developer's mistake and raises."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Any, TypeVar

from tinbook.facts.label_rows import AdditiveClass, FlourLaw, LabelRule, ListWords
from tinbook.facts.rows import (
    Additive,
    Allergen,
    BalanceRule,
    Caution,
    Cited,
    Dowelled,
    EggClass,
    Fact,
    FactRow,
    FormulaPart,
    GasMark,
    Kind,
    Served,
    Source,
    Swap,
)
from tinbook.facts.rules import SaleRule

R = TypeVar("R", bound=FactRow)

SECTIONS = (
    "sources", "numbers", "densities", "eggs", "marks", "kinds", "allergens", "cautions", "parts", "balance", "swaps",
    "portions", "colours", "dowels", "rules", "list_words", "additive_classes", "flour_laws", "label_rules",
)  # fmt: skip
PSEUDO = ("common practice", "from memory", "our own judgement")
"""Names to use for a source if nothing was published."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Facts:
    """All facts, by section and key, in file order. `densities` are in g/ml."""

    sources: Mapping[str, Source]
    numbers: Mapping[str, Fact]
    densities: Mapping[str, Fact]
    eggs: Mapping[str, EggClass]
    marks: tuple[GasMark, ...]
    kinds: Mapping[str, Kind]
    allergens: Mapping[str, Allergen]
    cautions: Mapping[str, Caution]
    parts: Mapping[str, FormulaPart]
    balance: Mapping[str, BalanceRule]
    swaps: Mapping[str, Swap]
    portions: Mapping[str, Served]
    colours: Mapping[str, Additive]
    dowels: Mapping[str, Dowelled]
    rules: Mapping[str, SaleRule]
    list_words: Mapping[str, ListWords]
    additive_classes: Mapping[str, AdditiveClass]
    flour_laws: Mapping[str, FlourLaw]
    label_rules: Mapping[str, LabelRule]

    def cited(self) -> Iterator[tuple[str, str, Cited]]:
        """Every row that names a source, with its section and key; for a kind, each of its ranges, and for a swap, each
        part.
        """
        plain: dict[str, Mapping[str, Cited]] = {
            "numbers": self.numbers,
            "densities": self.densities,
            "eggs": self.eggs,
            "allergens": self.allergens,
            "cautions": self.cautions,
            "balance": self.balance,
            "portions": self.portions,
            "colours": self.colours,
            "dowels": self.dowels,
            "list_words": self.list_words,
            "additive_classes": self.additive_classes,
            "flour_laws": self.flour_laws,
            "label_rules": self.label_rules,
        }
        for section, rows in plain.items():
            for key, row in rows.items():
                yield section, key, row
        for mark in self.marks:
            yield "marks", mark.mark, mark
        for key, kind in self.kinds.items():
            for quantity in kind.ranges:
                yield "kinds", key, quantity
        for key, swap in self.swaps.items():
            for part in swap.parts:
                yield "swaps", key, part
        for key, rule in self.rules.items():
            for law in rule.laws:
                yield "rules", f"{key}, {law.nation}", law

    @property
    def traits(self) -> frozenset[str]:
        """The words that call up a caution."""
        return frozenset(trait for caution in self.cautions.values() for trait in caution.traits)


def read_facts(trees: Mapping[str, Any]) -> Facts:
    """Facts from the parsed data files, `trees[stem]`; scalars may be text.

    Raises ValueError (pydantic's is one) for a missing or unknown file, an unknown or missing word, a value outside its
    range, a source that is not in sources, or a kind that does not go with its source.
    """
    if set(trees) != set(SECTIONS):
        raise ValueError(f"the data files should be {', '.join(SECTIONS)}, not {', '.join(sorted(trees))}")
    numbers = _rows(Fact, trees["numbers"])
    facts = Facts(
        sources=_rows(Source, trees["sources"]),
        numbers=numbers,
        densities=_rows(Fact, trees["densities"], unit="g/ml"),
        eggs=_eggs(trees["eggs"], numbers),
        marks=tuple(_rows(GasMark, trees["marks"], name="mark").values()),
        kinds=_rows(Kind, trees["kinds"]),
        allergens=_rows(Allergen, trees["allergens"]),
        cautions=_rows(Caution, trees["cautions"]),
        parts=_rows(FormulaPart, trees["parts"]),
        balance=_rows(BalanceRule, trees["balance"]),
        swaps=_swaps(trees["swaps"], numbers),
        portions=_rows(Served, trees["portions"]),
        colours=_rows(Additive, trees["colours"]),
        dowels=_rows(Dowelled, trees["dowels"]),
        rules=_rows(SaleRule, trees["rules"]),
        list_words=_rows(ListWords, trees["list_words"]),
        additive_classes=_rows(AdditiveClass, trees["additive_classes"]),
        flour_laws=_rows(FlourLaw, trees["flour_laws"]),
        label_rules=_rows(LabelRule, trees["label_rules"]),
    )
    _check_sources(facts)
    _check_balance(facts)
    return facts


def _rows(cls: type[R], tree: Any, name: str = "key", **common: object) -> Mapping[str, R]:
    if not isinstance(tree, Mapping):
        raise ValueError(f"rows of {cls.__name__} should be a mapping")
    rows = {key: cls.model_validate({name: key, **common, **row}) for key, row in tree.items()}
    return MappingProxyType(rows)


def _eggs(tree: Mapping[str, Any], numbers: Mapping[str, Fact]) -> Mapping[str, EggClass]:
    """The classes, with shelled egg, white and yolk worked out from the shares among the numbers."""
    shares = {
        "shelled_g": 1 - numbers["shell share of egg"].value,
        "white_g": numbers["white share of egg"].value,
        "yolk_g": numbers["yolk share of egg"].value,
    }
    weighed = {}
    for key, row in tree.items():
        typical_g = float(row["typical_g"])
        weighed[key] = {**row, **{part: typical_g * share for part, share in shares.items()}}
    return _rows(EggClass, weighed)


def _swaps(tree: Mapping[str, Any], numbers: Mapping[str, Fact]) -> Mapping[str, Swap]:
    """The swaps. A part may take its figures from one of the numbers, and its teaspoon from another."""
    swaps = {}
    for key, row in tree.items():
        parts = [{"key": name, **_part(part, numbers)} for name, part in row["parts"].items()]
        swaps[key] = {**row, "parts": parts}
    return _rows(Swap, swaps)


def _part(part: Mapping[str, Any], numbers: Mapping[str, Fact]) -> dict[str, Any]:
    figures = {"unit": "g", **part}
    if number := figures.pop("number", None):
        figures = {**numbers[number].model_dump(exclude={"key", "unit"}), **figures}
    if teaspoon := figures.pop("teaspoon", None):
        figures["teaspoon_g"] = numbers[teaspoon].value
    return figures


def _check_sources(facts: Facts) -> None:
    for section, key, row in facts.cited():
        for name in (row.source, *row.also):
            if name not in facts.sources:
                raise ValueError(f'{section}, "{key}": there is no source "{name}"')
        named = facts.sources[row.source].kind
        if named in PSEUDO and row.kind != named:
            raise ValueError(f'{section}, "{key}": a row {row.kind} cannot rest on "{row.source}"')
        if row.kind in ("common practice", "our own judgement") and row.kind != named:
            raise ValueError(f'{section}, "{key}": {row.kind} needs no source but its own name')


def _check_balance(facts: Facts) -> None:
    """Parts are made of known weights, each in one part; rules refer to known kinds, parts and rules."""
    weights = [weight for part in facts.parts.values() for weight in part.weights]
    if len(set(weights)) < len(weights):
        raise ValueError("parts: a weight is in two parts")
    rules = facts.balance.values()
    for section, words, known in (
        ("parts", weights, facts.densities),
        ("balance", [word for rule in rules for word in rule.kinds], facts.kinds),
        ("balance", [word for rule in rules for word in (*rule.parts, *rule.over)], facts.parts),
        ("cautions", [word for caution in facts.cautions.values() for word in caution.kinds], facts.kinds),
        ("balance", [rule.other_form for rule in rules if rule.other_form], facts.balance),
    ):
        for word in words:
            if word not in known:
                raise ValueError(f'{section}: "{word}" is not known')
