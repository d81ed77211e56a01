"""The rows of the data files. All are frozen; numbers may come as text; an unknown word is refused."""

from __future__ import annotations

from typing import Literal, Self

from pydantic import BaseModel, ConfigDict, model_validator

SourceKind = Literal["published", "common practice", "from memory", "our own judgement"]
RowKind = Literal["published", "derived", "common practice", "from memory", "our own judgement"]


class FactRow(BaseModel):
    """A row of a data file: frozen, and refusing a word it does not know."""

    model_config = ConfigDict(frozen=True, extra="forbid", allow_inf_nan=False, defer_build=True)


class Source(FactRow):
    """Where facts come from: a publication's title, publisher, address and date.

    Several of one kind are joined by "; ". `address` is as printed, empty if unknown; `date` a year, a version, or
    "undated"; `read` says what was read there and how. `sells`: the publisher sells what it writes about.
    Pseudo-sources have neither publisher nor date.
    """

    key: str
    title: str
    publisher: str = ""
    address: str = ""
    date: str = ""
    sells: bool = False
    read: str
    kind: SourceKind = "published"


class Cited(FactRow):
    """What every row of fact carries.

    `source` is the key of the source of the value, `also` of those that confirm it or set its range; `row` is the row
    read there. `kind`: published = the source prints it; derived = arithmetic on what it prints, or a neighbour's value
    taken over; from memory = not looked up, maybe remembered from the named source; common practice; our own judgement.
    """

    source: str
    also: tuple[str, ...] = ()
    kind: RowKind
    row: str = ""
    note: str = ""


class Fact(Cited):
    """One number in `unit`. `low` and `high`, in the same unit, are the range found in practice; None for no range."""

    key: str
    value: float
    unit: str
    low: float | None = None
    high: float | None = None

    @model_validator(mode="after")
    def _in_range(self) -> Self:
        low = self.value if self.low is None else self.low
        high = self.value if self.high is None else self.high
        if not low <= self.value <= high:
            raise ValueError(f'"{self.key}": {self.value} is outside {self.low} to {self.high}')
        return self


class SwapPart(Fact):
    """What replaces the thing asked for: `value` in `unit` for one of it, or its share where the parts make up the
    whole.

    `key` is the ingredient by the house's name; `teaspoon_g` the weight of a level teaspoon of it, where that is a fact
    of its own; `leave` is what to leave out.
    """

    unit: Literal["g", "ml", "tsp"]
    teaspoon_g: float | None = None
    leave: bool = False


class Swap(FactRow):
    """What may replace what: `parts` for each of `amounts` of `instead`, in `unit`.

    `each`: the amounts are pieces, each weighing as much as that part of an egg. `together`: the parts are shares that
    make up the amount. `note`: what to watch for.
    """

    key: str
    title: str
    instead: str
    unit: Literal["g", "ml", "tsp", "piece"] = "g"
    each: Literal["", "whole egg", "egg white", "egg yolk"] = ""
    amounts: tuple[float, ...]
    together: bool = False
    parts: tuple[SwapPart, ...]
    note: str = ""

    @model_validator(mode="after")
    def _of_one_measure(self) -> Self:
        if not self.parts or not self.amounts or min(self.amounts) <= 0:
            raise ValueError(f'"{self.key}": a swap needs parts and amounts')
        if self.together and {part.unit for part in self.parts} != {self.unit}:
            raise ValueError(f'"{self.key}": parts of a whole are measured like the whole')
        return self


class Range(Cited):
    """A quantity between `low` and `high`, usually about `typical`."""

    low: float
    typical: float
    high: float

    @model_validator(mode="after")
    def _in_order(self) -> Self:
        if not 0 < self.low <= self.typical <= self.high:
            raise ValueError(f"{self.low}, {self.typical}, {self.high} are not in order")
        return self


class Kind(FactRow):
    """A kind of mixture.

    `gravity`: g/ml of the batter, or of the finish as used. Only cakes have `rise` (baked depth, before levelling, over
    batter depth), `loss` (the share of the weight lost as steam) and `bake` (minutes until done in a tin 200 mm wide
    with batter 40 mm deep at 170 °C). `plays`: what it may be on a finished cake.
    """

    key: str
    title: str
    group: Literal["cake", "filling", "coat", "paste", "syrup"]
    gravity: Range
    rise: Range | None = None
    loss: Range | None = None
    bake: Range | None = None
    plays: tuple[Literal["filling", "crumb coat", "final coat", "border", "cover", "board"], ...] = ()

    @property
    def ranges(self) -> tuple[Range, ...]:
        """The ranges it has: gravity, rise, loss, bake."""
        return tuple(quantity for quantity in (self.gravity, self.rise, self.loss, self.bake) if quantity)

    @property
    def source(self) -> str:
        """The key of the source of its gravity; rise and loss name their own."""
        return self.gravity.source

    @property
    def kind(self) -> RowKind:
        """How certain its gravity is; rise and loss have their own."""
        return self.gravity.kind


class EggClass(Cited):
    """A class of hen's eggs, weights in grams.

    In the shell an egg weighs from `shell_low_g` to just under `shell_high_g`; None is an open end. `typical_g` is the
    middle of the class or, in the USA, the least a dozen may average; `guess` marks a guess at a class with an open
    end. The parts are shares of `typical_g`: shelled = (1 - shell share) x typical; likewise white and yolk, which are
    measured separately and may miss the shelled egg by half a gram.
    """

    key: str
    shell_low_g: float | None = None
    shell_high_g: float | None = None
    typical_g: float
    guess: bool = False
    shelled_g: float
    white_g: float
    yolk_g: float

    @model_validator(mode="after")
    def _in_class(self) -> Self:
        low, high = self.shell_low_g or 0.0, self.shell_high_g or float("inf")
        if not low <= self.typical_g < high:
            raise ValueError(f'"{self.key}": {self.typical_g} g is outside its class')
        return self


class GasMark(Cited):
    """A gas mark. `value` 0.25 for ¼; `celsius_printed` is what the trade prints; published tables range from
    `celsius_low` to `celsius_high`, °C.
    """

    mark: str
    value: float
    fahrenheit: float
    celsius_printed: str
    celsius_low: float
    celsius_high: float

    @property
    def celsius(self) -> float:
        """The exact °C of its °F."""
        return (self.fahrenheit - 32) / 1.8

    @model_validator(mode="after")
    def _in_range(self) -> Self:
        # Tables round to whole degrees, so the exact value may lie half a degree outside them.
        if not self.celsius_low - 0.5 <= self.celsius <= self.celsius_high + 0.5:
            raise ValueError(f"gas mark {self.mark}: {self.celsius:.1f} °C is outside its range")
        return self


class Allergen(Cited):
    """What a card may declare. `label`: the word to emphasise in the UK and EU; `group`: its number in Annex II, 1 to
    14; `usa_label`: the word in the USA, empty if it is not one of the nine; `note`: where it hides.
    """

    key: str
    label: str
    group: int
    group_name: str
    usa_label: str = ""

    @property
    def big_nine(self) -> bool:
        """Whether the USA counts it among its nine major allergens."""
        return bool(self.usa_label)


class Caution(Cited):
    """A usual kitchen caution, shown where an ingredient or decoration carries one of `traits`, and with every mixture
    of one of `kinds`.

    `when`: "uncooked" is for what is eaten without baking or boiling, "baked" for what goes into the oven.
    """

    key: str
    title: str
    advice: str
    traits: tuple[str, ...]
    kinds: tuple[str, ...] = ()
    when: Literal["always", "uncooked", "baked"] = "always"


class Served(Cited):
    """How many portions a published chart gives for a cake: its shape and its sizes in inches, short side first.

    `dessert`: of 1 by 2 in; `broad`: of 1½ by 2 in.
    """

    key: str
    shape: str
    inches: tuple[float, ...]
    dessert: int
    broad: int


class Additive(Cited):
    """A food colour by its E number. `warning` is the phrase the law requires beside its name, empty if none."""

    key: str
    name: str
    also_called: tuple[str, ...] = ()
    warning: str = ""


class Dowelled(Cited):
    """How many dowels a publication sets under a tier `low_in` to `high_in` wide; `across_in` is their thickness."""

    key: str
    low_in: float
    high_in: float
    count: int
    what: str
    across_in: float | None = None


class FormulaPart(FactRow):
    """What ingredients count as in a formula: those whose published weight is one of `weights`."""

    key: str
    weights: tuple[str, ...] = ()


class BalanceRule(Cited):
    """A rule of balance for `kinds`: weight of `parts` over weight of `over`, from `low` to `high` (None: no limit).

    Without `over`: over everything but `parts`. `other_form` is a rule that says the same another way.
    """

    model_config = ConfigDict(alias_generator=lambda name: name.replace("_", " "), populate_by_name=True)

    key: str
    title: str
    kinds: tuple[str, ...]
    parts: tuple[str, ...]
    over: tuple[str, ...] = ()
    low: float
    high: float | None = None
    other_form: str = ""

    @model_validator(mode="after")
    def _in_order(self) -> Self:
        if not 0 < self.low <= (self.high or self.low):
            raise ValueError(f'"{self.key}": {self.low} and {self.high} are not in order')
        return self
