"""A technique's sums: times, kit and materials for so many people, what is not food, and what contradicts itself."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from tinbook.engine import rounding
from tinbook.facts import Caution, Facts
from tinbook.models import Book, Flaw, Material, Mixture, Technique
from tinbook.plans.base.versions import Amount
from tinbook.plans.base.weighing import Unweighable, g_per_ml, mass_of, shown_unit
from tinbook.plans.measures.spooned import US_CUP_ML, spooned
from tinbook.plans.mixtures.bench import BenchSteps
from tinbook.plans.mixtures.inline import mark_flaws
from tinbook.plans.mixtures.safety import AllergenStrip, strip_of
from tinbook.plans.mixtures.steps import StepTimes, step_times
from tinbook.problems import nearest
from tinbook.units import GRAMS_PER_OUNCE

MOST_PEOPLE = 99
SUPPORT, SMALL_HARD = "support", "small hard sweets"
"""The care words that anything not food inside a cake, and any small hard part, calls up by itself."""
LIES_OPEN = frozenset(("board", "card", "case", "collar", "drum", "liner", "paper", "ribbon", "stand"))
"""What lies under or round a cake and is seen when it is cut: common practice. Anything else may be hidden in it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MaterialRow:
    """A material for one person: amount as measured out, grams and ml where they are known, and whose it is.

    `name` is the house's word for an ingredient or a mixture of the book, else as written.
    """

    index: int
    name: str
    wanted: str
    amount: Amount
    mass_g: float | None
    volume_ml: float | None
    mixture: str | None
    shared: bool
    not_food: bool
    small_hard: bool


@dataclass(frozen=True, slots=True)
class ToolRow:
    """A tool and how many of it one person wants."""

    name: str
    count: int
    shared: bool
    not_food: bool


@dataclass(frozen=True, slots=True)
class Inedible:
    """Something that is no food: how much of it, and whether it may be hidden in the cake, as a dowel is."""

    name: str
    wanted: str
    amount: Amount
    hidden: bool


@dataclass(frozen=True)
class Kit:
    """All that must be ready, for one person or multiplied for `people`."""

    people: int
    tools: tuple[ToolRow, ...]
    materials: tuple[MaterialRow, ...]
    supports: tuple[Inedible, ...] = ()

    @property
    def not_food(self) -> tuple[Inedible, ...]:
        """What goes into, under or onto the cake and is no food, and how many of it."""
        tools = (_inedible(*tool.name.split(", ", 1), count=tool.count) for tool in self.tools if tool.not_food)
        rows = (Inedible(row.name, row.wanted, row.amount, _hidden(row.name)) for row in self.materials if row.not_food)
        return (*tools, *rows, *self.supports)


def _inedible(name: str, wanted: str = "", *, count: float) -> Inedible:
    return Inedible(name, wanted, Amount(count, count, ""), _hidden(name))


def _hidden(name: str) -> bool:
    """Whether its last word names nothing that lies open."""
    last = name.lower().split()[-1]
    return not {last, last.removesuffix("s")} & LIES_OPEN


@dataclass(frozen=True, slots=True)
class TechniqueTimes:
    """Hands-on and waiting minutes of all steps, and the hands-on minutes of those that may be done ahead."""

    steps: StepTimes
    ahead_low_min: float
    ahead_high_min: float


def kit(technique: Technique, book: Book, facts: Facts, people: int = 1) -> Kit:
    """Tools and materials for `people` (1 to 99); what is shared is not multiplied."""
    if not 1 <= people <= MOST_PEOPLE:
        raise ValueError(f"for 1 to {MOST_PEOPLE} people, not {people}")
    tools = tuple(
        ToolRow(tool.tool, tool.count * (1 if tool.shared else people), tool.shared, tool.not_food)
        for tool in technique.tools
    )
    materials = tuple(
        _row(index, material, book, facts, 1 if material.shared else people)
        for index, material in enumerate(technique.materials)
    )
    return Kit(people, tools, materials, tuple(_supports(technique, people)))


def _supports(technique: Technique, people: int) -> Iterator[Inedible]:
    """Supports of the parts, but for those that stand among the tools or materials as no food."""
    listed = [tool.tool for tool in technique.tools if tool.not_food]
    listed += [material.take.name for material in technique.materials if material.not_food]
    for part in technique.parts:
        if part.support:
            name = part.support.what.partition(",")[0]
            count = part.support.count * part.count * people
            if not any(each.lower().startswith(name.lower().rstrip("s")) for each in listed):
                yield Inedible(name, f"in {part.part}", Amount(count, count, ""), True)


def _row(index: int, material: Material, book: Book, facts: Facts, times: int) -> MaterialRow:
    take, quantity = material.take, material.take.quantity
    name = book.house_word(take.name)
    mixture = mixture_called(take.name, book)
    mass_g = quantity.base if quantity.dimension == "mass" else None
    volume_ml = quantity.base if quantity.dimension == "volume" else None
    if name is not None:
        try:
            mass_g = mass_of(take, name, book, facts)
        except Unweighable:
            mass_g = None
        density = g_per_ml(book.cards[name], facts)
        volume_ml = mass_g / density if density and mass_g and quantity.dimension != "count" else volume_ml
    unit, value = shown_unit(quantity, mass_g, book)
    wanted = "; ".join(words for words in (take.wanted, material.note) if words)
    exact = value * times
    amount = Amount(exact, rounded(exact, unit, book), unit)
    word = book.mixtures[mixture].name if mixture else name or take.name
    return MaterialRow(
        index=index,
        name=word,
        wanted=wanted,
        amount=amount,
        mass_g=mass_g * times if mass_g else None,
        volume_ml=volume_ml * times if volume_ml else None,
        mixture=mixture,
        shared=material.shared,
        not_food=material.not_food,
        small_hard=material.small_hard,
    )


def rounded(exact: float, unit: str, book: Book) -> float:
    """An amount in `unit` as it is measured out."""
    if unit in ("tsp", "tbsp"):
        return rounding.spoon(exact)
    if unit == "":
        return exact
    scales = book.house.scales
    return rounding.scales(exact, rounding.ScaleSteps(scales.step, scales.fine_step, scales.fine_below))


def material_share(row: MaterialRow, share: float, book: Book) -> Amount:
    """A share of a material's amount, as measured out; of pieces, the pieces."""
    exact = row.amount.exact * share
    return Amount(exact, rounded(exact, row.amount.unit, book), row.amount.unit)


def in_measure(row: MaterialRow, share: float, measure: str, book: Book) -> Amount:
    """The same in grams, ounces or cups; as written where a material has no weight or no volume measure."""
    if row.amount.unit and row.mass_g and measure == "ounces":
        exact = row.mass_g * share / GRAMS_PER_OUNCE
        return Amount(exact, rounding.ounces(exact), "oz")
    if row.amount.unit and row.mass_g and row.volume_ml and measure == "cups":
        poured = spooned(row.volume_ml * share, book.house.spoons)
        return Amount(poured.exact, poured.shown, poured.unit)
    return material_share(row, share, book)


@dataclass(frozen=True, slots=True, kw_only=True)
class KitLine:
    """A material for the browser: as a line of a mixture, grams None where they are not known."""

    unit: str
    amount: float
    mass_g: float | None
    volume_ml: float | None
    shared: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class KitBench:
    """The kit for one person, for the browser to multiply; measures and scales as for a mixture."""

    lines: tuple[KitLine, ...]
    tools: tuple[tuple[int, bool], ...]
    steps: BenchSteps
    g_per_oz: float
    cup_ml: float
    tablespoon_ml: float
    teaspoon_ml: float
    most: int


def technique_bench(technique: Technique, book: Book, facts: Facts) -> KitBench:
    """What the browser is handed of a technique."""
    one, scales, spoons = kit(technique, book, facts), book.house.scales, book.house.spoons
    return KitBench(
        lines=tuple(
            KitLine(
                unit=row.amount.unit,
                amount=row.amount.exact,
                mass_g=row.mass_g,
                volume_ml=row.volume_ml,
                shared=row.shared,
            )
            for row in one.materials
        ),
        tools=tuple((tool.count, tool.shared) for tool in one.tools),
        steps=BenchSteps(scales.step, scales.fine_step, scales.fine_below),
        g_per_oz=GRAMS_PER_OUNCE,
        cup_ml=spoons.cup_ml or US_CUP_ML,
        tablespoon_ml=spoons.tablespoon_ml,
        teaspoon_ml=spoons.teaspoon_ml,
        most=MOST_PEOPLE,
    )


def mixture_called(word: str, book: Book) -> str | None:
    """The slug of the mixture that goes by `word`: its name, another name of it, or the slug itself."""
    low = word.lower()
    for slug, mixture in book.mixtures.items():
        if low in (slug, mixture.name.lower(), *(other.lower() for other in mixture.also)):
            return slug
    return None


def technique_times(technique: Technique) -> TechniqueTimes:
    """The times of a technique, added up."""
    ahead = step_times(step for step in technique.steps if step.ahead)
    return TechniqueTimes(step_times(technique.steps), ahead.hands_on_low_min, ahead.hands_on_high_min)


def technique_cautions(technique: Technique, book: Book, facts: Facts, more: Iterable[str] = ()) -> tuple[Caution, ...]:
    """The usual cautions it calls up: by its care words, its materials' cards, what is not food, small hard parts;
    and by the words that its parts add."""
    traits = {*technique.care, *more}
    for material in technique.materials:
        name = book.house_word(material.take.name)
        if name:
            traits |= set(book.cards[name].care)
        mixture = mixture_called(material.take.name, book)
        if mixture:
            lines = (book.house_word(line.take.name) for line in book.mixtures[mixture].mix)
            traits |= {trait for line in lines if line for trait in book.cards[line].care}
    if any(each.hidden for each in kit(technique, book, facts).not_food):
        traits.add(SUPPORT)
    if any(material.small_hard for material in technique.materials):
        traits.add(SMALL_HARD)
    told = [caution for caution in facts.cautions.values() if traits & set(caution.traits)]
    return tuple(caution for caution in told if caution.when in ("always", "uncooked"))


def technique_allergens(technique: Technique, book: Book, facts: Facts) -> AllergenStrip | None:
    """What its materials and the mixtures it works with contain; None where it names nothing to eat.

    What the book has no card for is unknown, and so is a mixture with an ingredient nobody has said anything of.
    """
    said: dict[str, Iterable[str] | None] = {}
    for name in (material.take.name for material in technique.materials if not material.not_food):
        mixture, word = mixture_called(name, book), book.house_word(name)
        if mixture is None:
            said[word or name] = book.cards[word].known_allergens if word else None
        else:
            said |= _mixture_said(book.mixtures[mixture], book)
    named = (mixture_called(word, book) for word in (*technique.works_with, *technique.mixtures))
    for slug in named:
        if slug is not None:
            said |= _mixture_said(book.mixtures[slug], book)
    return strip_of(said.items(), facts) if said else None


def _mixture_said(mixture: Mixture, book: Book) -> dict[str, Iterable[str] | None]:
    words = [book.house_word(line.take.name) for line in mixture.mix]
    said = [book.cards[word].known_allergens if word else None for word in words]
    known: dict[str, Iterable[str] | None] = {mixture.name: dict.fromkeys(key for each in said for key in each or ())}
    return {**known, f"some of {mixture.name}": None} if None in said else known


def technique_flaws(technique: Technique, book: Book, facts: Facts) -> Iterator[Flaw]:
    """Rules between the fields of a technique."""
    for index, word in enumerate(technique.care):
        if word not in facts.traits:
            close = nearest(word, facts.traits)
            hint = f'did you mean "{close}"?' if close else "known here: " + ", ".join(sorted(facts.traits))
            yield Flaw(
                code="unknown word", path=("care", index), message=f'the care word "{word}" is not known', hint=hint
            )
    yield from mark_flaws("steps", technique.steps, [material.take for material in technique.materials], book)
    yield from _picture_flaws(technique)
    yield from _order_flaws(technique)
    for index, step in enumerate(technique.steps):
        path = ("steps", index)
        if step.stands and step.keeps and step.stands.minutes > step.keeps.minutes:
            message = f"it must stand {step.stands.written} but keeps only {step.keeps.written}"
            yield Flaw(code="windows", path=(*path, "stands"), message=message, hint="mend the one that is wrong")
        if step.ahead and step.keeps and step.ahead.minutes > step.keeps.minutes:
            message = f"it may be done {step.ahead.written} ahead but keeps only {step.keeps.written}"
            yield Flaw(code="windows", path=(*path, "ahead"), message=message, hint="mend the one that is wrong")


def _picture_flaws(technique: Technique) -> Iterator[Flaw]:
    files = [picture.file for picture in technique.pictures]
    for index, step in enumerate(technique.steps):
        if step.picture and step.picture not in files:
            close = nearest(step.picture, files)
            hint = f'did you mean "{close}"?' if close else 'list it under "pictures:", with its alt text'
            yield Flaw(
                code="no picture",
                path=("steps", index, "picture"),
                message=f'no picture "{step.picture}" is listed here',
                hint=hint,
            )
    for index, file in enumerate(files):
        if file in files[:index]:
            yield Flaw(
                code="twice",
                path=("pictures", index, "file"),
                message=f'"{file}" is listed twice',
                hint="keep one of the two",
            )


def _order_flaws(technique: Technique) -> Iterator[Flaw]:
    """Names that two steps share, steps that wait for none of the book, or for themselves."""
    names: dict[str, int] = {}
    for index, step in enumerate(technique.steps):
        if step.called in names:
            message = f'two steps are called "{step.called}"'
            yield Flaw(code="twice", path=("steps", index, "called"), message=message, hint="call one another way")
        elif step.called:
            names[step.called] = index
    waits: dict[int, tuple[int, ...]] = {}
    for index, step in enumerate(technique.steps):
        for at, word in enumerate(step.after):
            if word not in names:
                close = nearest(word, names)
                hint = f'did you mean "{close}"?' if close else 'name the step it follows with "called: ..."'
                yield Flaw(
                    code="no such step",
                    path=("steps", index, "after", at),
                    message=f'no step is called "{word}"',
                    hint=hint,
                )
        waits[index] = tuple(names[word] for word in step.after if word in names)
    for index in waits:
        if index in reached(waits, index):
            hint = 'take the name out of "after:", or of the steps between'
            yield Flaw(
                code="waits for itself", path=("steps", index, "after"), message="the step waits for itself", hint=hint
            )


def reached(waits: Mapping[int, tuple[int, ...]], start: int) -> set[int]:
    """Every step that `start` waits for, straight or through others."""
    seen: set[int] = set()
    ahead = list(waits[start])
    while ahead:
        step = ahead.pop()
        if step not in seen:
            seen.add(step)
            ahead += waits[step]
    return seen
