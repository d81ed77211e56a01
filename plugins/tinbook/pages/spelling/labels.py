"""What plans/labels says: lists of ingredients as they stand on a label, what is missing, and the warnings."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from tinbook.facts import Facts
from tinbook.models.keeping import MONTHS
from tinbook.plans.labels.applying import label_name
from tinbook.plans.labels.listing import IngredientsList
from tinbook.plans.labels.naming import named_in
from tinbook.plans.labels.opened import Listed

DATED = {"best_before": "Best before", "use_by": "Use by"}
"""The kinds of date."""
HAD = {"had": "had it", "may_have_had": "may have had it"}
"""How sure it is that an order had something."""
NBSP = "\N{NO-BREAK SPACE}"


@dataclass(frozen=True, slots=True)
class ListRun:
    """Words of a list in one weight: `strong` where they name an allergen."""

    text: str
    strong: bool = False


def list_runs(listed: IngredientsList, facts: Facts) -> tuple[ListRun, ...]:
    """A whole list as a label sets it, its first letter a capital; each allergen stands out every time."""
    names = {key: label_name(key, facts, listed.nation) for key in facts.allergens}
    found = list(_joined([_entry(each, names, facts) for each in listed.listed]))
    if found:
        found[0] = ListRun(found[0].text[:1].upper() + found[0].text[1:], found[0].strong)
    return tuple(_together(found))


def text_of(runs: Iterable[ListRun]) -> str:
    """The words of some runs, without their weight."""
    return "".join(run.text for run in runs)


def contains_runs(names: Sequence[str]) -> tuple[ListRun, ...]:
    """`Contains: milk, egg.`, its allergens in bold."""
    if not names:
        return ()
    found = [ListRun("Contains: ")]
    for nth, name in enumerate(names):
        found += [ListRun(", ")] if nth else []
        found.append(ListRun(name, strong=True))
    return (*found, ListRun("."))


def long_date(day: date) -> str:
    """`10 Dec 2026`."""
    return f"{day.day}{NBSP}{MONTHS[day.month - 1][:3]}{NBSP}{day.year}"


def percent_said(shown: float) -> str:
    """`6 %`."""
    return f"{shown:g}{NBSP}%"


def _entry(each: Listed, names: Mapping[str, str], facts: Facts | None) -> list[ListRun]:
    found = list(_words(each.name, facts))
    if each.quid_shown is not None:
        found.append(ListRun(f" ({_quid(each)})"))
    if each.says:
        found.append(ListRun(" ("))
        for nth, key in enumerate(each.says):
            found += [ListRun(", ")] if nth else []
            found.append(ListRun(names.get(key, key), strong=True))
        found.append(ListRun(")"))
    if each.parts:
        inner = _joined([_entry(part, names, facts) for part in each.parts])
        if each.sort and len(each.parts) == 1:
            found += [ListRun(": "), *inner]
        else:
            found += [ListRun(" ("), *inner, ListRun(")")]
    return found


def _quid(each: Listed) -> str:
    if each.quid is not None and each.quid > 1.0:
        return f"{each.quid_shown:g}{NBSP}g in 100{NBSP}g"
    return percent_said(each.quid_shown or 0.0)


def _words(name: str, facts: Facts | None) -> Iterator[ListRun]:
    at = 0
    for named in named_in(name, facts) if facts else ():
        if named.start > at:
            yield ListRun(name[at : named.start])
        yield ListRun(name[named.start : named.end], strong=True)
        at = named.end
    if at < len(name):
        yield ListRun(name[at:])


def _joined(entries: Iterable[Iterable[ListRun]]) -> Iterator[ListRun]:
    for nth, entry in enumerate(entries):
        if nth:
            yield ListRun(", ")
        yield from entry


def _together(runs: Iterable[ListRun]) -> Iterator[ListRun]:
    """Runs of one weight beside one another as one."""
    held: ListRun | None = None
    for run in runs:
        if held is not None and held.strong == run.strong:
            held = ListRun(held.text + run.text, run.strong)
            continue
        if held is not None:
            yield held
        held = run
    if held is not None:
        yield held


def _listed(entry: Listed, names: Iterable[tuple[str, str]]) -> str:
    return text_of(_entry(entry, dict(names), None))


def _list_of(product: str, complete: bool, nation: str | None) -> str:
    where = f", for {nation}" if nation else ", for nowhere yet: say where you sell in house/labels.yaml"
    return f"{product}, ingredients{where}{'' if complete else ' (not complete)'}"


def _not_allowed(card: str, additive: str, number: str, nation: str) -> str:
    where = f'"{card}" has {additive}' if card else f"a colour has {additive}"
    return f"{where} ({number}) in it, which must not be in food sold in {nation}"


SAYINGS: Mapping[str, str | Callable[..., str]] = {
    # the list
    "listed": _listed,
    "list_of": _list_of,
    "not_complete": "not complete: {what}: {cure}",
    "left_out_water": "too little to list when it is baked",
    "finished_weighs": "finished, it weighs {finished_g:.0f} g",
    "listed_by_weight": "in order of weight at the mixing bowl; added water by what is left of it when it is finished",
    "label_rule": lambda says, law, read_on: f"{says}: {law}, as noted on {long_date(read_on)}",
    "local_authority": "your local authority has the last word: ask before you print",
    "allergens_of_all": "The allergens of everything in the book",
    # what is missing, and where to write it
    "gap_no_card": 'there is no card for "{card}"',
    "cure_no_card": 'add a card "{card}:" with its allergens and what it is made of',
    "gap_allergens": 'the card for "{card}" does not say its allergens',
    "cure_allergens": 'write "allergens: [...]", or "allergens: none" if the packet names none',
    "gap_made_of": 'the card for "{card}" does not say what it is made of',
    "cure_made_of": 'write "made of: ..." as the packet has it, or "made of: itself" for one thing',
    "gap_weight": 'nobody knows what the "{card}" in it weighs',
    "cure_weight": 'write "weighs: ... g/ml" or "each: ... g" on its card, or give its weight where it is used',
    "gap_not_allowed": _not_allowed,
    "cure_not_allowed": "use another, or sell elsewhere",
    "gap_colour": 'the colour "{colour}" does not say its additives',
    "cure_colour": 'write "additives: [E...]" as the pots have it, or "additives: none"',
    "gap_uncounted": 'a technique of it uses "{name}", and nothing says how much of it is eaten',
    "cure_uncounted": "give its weight among the technique's materials, or take the technique off the cake",
    "gap_nation": "nobody has said where you sell, and the rules differ",
    "cure_nation": 'write "sold in: ..." with your nation',
    "gap_keeps": '"{mixture}" does not say how long it keeps',
    "cure_keeps": 'write "keeps for: 3 days", or where: "1 week in the fridge"',
    "gap_maker": "a label for others to sell has your name and address",
    "cure_maker": 'write "maker: ..."',
    "gap_net": "a label for others to sell has the weight of what is in it",
    "cure_net": 'say it with --net "450 g"',
    "gap_promised": 'the name "{mixture}" promises {card}, and a label has to say how much',
    "cure_promised": 'write "named for: [{word}]"',
    # tracing
    "trace_no_order": 'the order "{order}" cannot be worked out, so nobody knows what was in it',
    "trace_class": 'the class "{order}" is on a day when it is open: nobody says whether it is used there',
    "trace_unlogged": lambda batch, cards: f"{batch}: no pack was logged of {', '.join(cards)}",
    "trace_no_bakes": "no bake in the log used it; what was not logged is not known",
    "trace_may": "a recipe that is not baked, or whose bake was not logged, has no day: those orders may have had it",
    # what stands beside it
    "with_sweeteners": lambda count: "With sweeteners." if count > 1 else "With sweetener.",
    "aspartame": "Contains aspartame (a source of phenylalanine).",
    "contains_alcohol": "Contains alcohol.",
    "laxative": "Excessive consumption may produce laxative effects.",
}
