"""A mixture in bakers' percentages, and against the balance rules for its kind: a note, never an error."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from tinbook.engine import rounding
from tinbook.facts import BalanceRule, Facts
from tinbook.models import Book, Card
from tinbook.plans.base.saying import saying
from tinbook.plans.base.weighing import Batch
from tinbook.plans.base.worked import Worked

BASES = ("flour", "sugar")
"""What counts as a hundred: the first of these the mixture has, or else its heaviest part."""
OTHER = "other"


@dataclass(frozen=True, slots=True, kw_only=True)
class Share:
    """A part of the formula, or one ingredient of it: grams, and its weight for 100 of the base."""

    name: str
    part: str
    mass_g: float
    per_100: float
    per_100_shown: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """A rule and where the mixture falls in it; figures are for 100 of what the rule compares with.

    `value` None: the mixture has nothing to compare with. `within` is also true if the rule's `other_form` is met.
    """

    rule: BalanceRule
    value: float | None
    value_shown: float | None
    low_shown: float
    high_shown: float | None
    side: str
    within: bool


@dataclass(frozen=True, kw_only=True)
class Balance:
    """The formula of a mixture, by part and by ingredient, and how it compares with the rules of its kind."""

    base: str
    parts: tuple[Share, ...]
    lines: tuple[Share, ...]
    standings: tuple[Standing, ...]
    worked: Worked

    @property
    def off(self) -> bool:
        """Whether it breaks a rule."""
        return not all(standing.within for standing in self.standings)


def part_of(card: Card, facts: Facts) -> str:
    """What an ingredient counts as: by its card, or else as an egg or by its published weight, or else `other`."""
    if card.counts_as:
        return card.counts_as
    if card.each and card.each.part:
        return "egg"
    return next((key for key, part in facts.parts.items() if card.weighs_as in part.weights), OTHER)


def has_balance(batch: Batch, facts: Facts) -> bool:
    """Whether there is anything to say about its balance: it is a cake, or its kind has rules."""
    return batch.kind.group == "cake" or any(batch.mixture.kind in rule.kinds for rule in facts.balance.values())


def balance(batch: Batch, book: Book, facts: Facts) -> Balance:
    """Bakers' percentages = 100 × weight / weight of the base; each rule's figure = 100 × parts / over."""
    weights = [(line.name, part_of(book.cards[line.name], facts), line.mass_g) for line in batch.ingredients]
    masses_g = {key: sum(mass_g for _, part, mass_g in weights if part == key) for key in (*facts.parts, OTHER)}
    base = next((part for part in BASES if masses_g[part]), None) or _heaviest(masses_g)
    parts = tuple(_share(part, part, mass_g, masses_g[base]) for part, mass_g in masses_g.items() if mass_g)
    lines = tuple(_share(name, part, mass_g, masses_g[base]) for name, part, mass_g in weights)
    rules = [rule for rule in facts.balance.values() if batch.mixture.kind in rule.kinds]
    values = {rule.key: _value(rule, masses_g) for rule in rules}
    kept = {key for key, value in values.items() if value is None or _side(facts.balance[key], value) == "within"}
    standings = tuple(_standing(rule, values[rule.key], kept) for rule in rules)
    return Balance(base=base, parts=parts, lines=lines, standings=standings, worked=_worked(base, lines, rules))


def _heaviest(masses_g: dict[str, float]) -> str:
    known_g = {part: mass_g for part, mass_g in masses_g.items() if part != OTHER and mass_g}
    return max(known_g, key=lambda part: known_g[part], default=OTHER)


def _share(name: str, part: str, mass_g: float, base_g: float) -> Share:
    per_100 = 100 * mass_g / base_g
    return Share(name=name, part=part, mass_g=mass_g, per_100=per_100, per_100_shown=rounding.per_hundred(per_100))


def _value(rule: BalanceRule, masses_g: dict[str, float]) -> float | None:
    over = rule.over or [part for part in masses_g if part not in rule.parts]
    over_g = sum(masses_g[part] for part in over)
    return sum(masses_g[part] for part in rule.parts) / over_g if over_g else None


def _side(rule: BalanceRule, value: float) -> str:
    """Where a value falls, as printed: a figure that reads as the limit meets it."""
    shown = rounding.per_hundred(100 * value)
    if shown < rounding.per_hundred(100 * rule.low):
        return "below"
    return "above" if rule.high is not None and shown > rounding.per_hundred(100 * rule.high) else "within"


def _standing(rule: BalanceRule, value: float | None, kept: set[str]) -> Standing:
    """`kept` are the keys of the rules that are met by themselves."""
    within = rule.key in kept or rule.other_form in kept
    low, high = rounding.per_hundred(100 * rule.low), rule.high and rounding.per_hundred(100 * rule.high)
    per_100 = None if value is None else 100 * value
    return Standing(
        rule=rule,
        value=per_100,
        value_shown=None if per_100 is None else rounding.per_hundred(per_100),
        low_shown=low,
        high_shown=high,
        side="none" if value is None else _side(rule, value),
        within=within,
    )


def _worked(base: str, lines: tuple[Share, ...], rules: Iterable[BalanceRule]) -> Worked:
    """Ingredients by part, each once for each figure, and the notes of the rules."""
    by_part: dict[str, dict[tuple[str, float], None]] = {}
    for line in lines:
        by_part.setdefault(line.part, {})[line.name, line.per_100_shown] = None
    return Worked(
        saying("for_a_hundred", base=base),
        (
            *(saying("part_of_formula", part=part, shares=tuple(shares)) for part, shares in by_part.items()),
            *(saying("note_of_rule", title=rule.title, note=rule.note) for rule in rules if rule.note),
        ),
        tuple(dict.fromkeys(rule.source for rule in rules)) or ("common practice",),
    )
