"""Sources spoilt by their structure: the demo's files with parts taken out, doubled, exchanged, or replaced by what a
tired or a hostile hand would write there; and notes, saved pages and drawings spoilt as text.
"""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from copy import deepcopy
from functools import cache
from pathlib import Path
from random import Random
from typing import Any

import yaml

DEMO = Path(__file__).parents[2] / "recipes"
HOUSE = tuple(sorted(path.relative_to(DEMO).as_posix() for path in DEMO.glob("house/*.yaml")))
PAGES = tuple(sorted(path.relative_to(DEMO).as_posix() for path in DEMO.glob("[mt]*/*.yaml")))
CARDS = "house/ingredients.yaml"
KEPT = ("mixtures/creamed-butter-sponge.yaml", "mixtures/american-buttercream.yaml", "mixtures/modelling-paste.yaml",
        "techniques/line-a-tin.yaml")  # fmt: skip
RAW = {name: (DEMO / name).read_text("utf-8") for name in (*HOUSE, *PAGES)}
TREES: Mapping[str, Any] = {name: yaml.load(text, Loader=yaml.CBaseLoader) for name, text in RAW.items()}
WORDS = (
    "", " ", "yes", "no", "none", "0", "-1", "1", "1e9", "999999999", "nan", "½", "1/0", "0 g", "1 g", "900 kg", "0.0001 ml",
    "1 mm", "0 mm", "40 m", "1000 min", "0 min", "400 °C", "gas mark 4", "32 °F", "2 days", "30 months", "100 %", "0 %",
    "round 1 cm", "999 round 100 cm x 30 cm", "round 20 cm x 7.5 cm", "outline M0 0H80V160H0Z", "ring 23 cm x 7.5 cm",
    "24 standard cups", "butter", "egg", "self-raising flour", "creamed", "mud", "buttercream", "syrup", "cupcake",
    "creamed-butter-sponge", "american-buttercream", "line-a-tin", "../../etc", "<script>", "<butter>", "<butter", "{{ x }}",
    "{% raw %}", "<!--tinbook:tables/tins-->", "<!--tinbook:parts/list 99-->", "|", "\u202e", "蛋糕", "e\u0301" * 40, "x" * 5000,
    "#B3261E", "E129", "https://example.org", "javascript:alert(1)", "ball 1 mm", "cone 900 mm x 1 mm", "2026-13-40",
)  # fmt: skip
SIGNS = (
    ": ",
    "\n",
    "\n  ",
    "\n    - ",
    "[",
    "]",
    "{",
    "}",
    '"',
    "'",
    "#",
    "&a",
    "*a",
    "!x",
    "\t",
    "\0",
    "\u00a0",
    "---\n",
    "%",
)


def places(tree: Any, path: tuple[Any, ...] = ()) -> Iterator[tuple[Any, ...]]:
    """The path of everything in a tree but its root."""
    for key, value in tree.items() if isinstance(tree, dict) else enumerate(tree) if isinstance(tree, list) else ():
        yield (*path, key)
        yield from places(value, (*path, key))


def at(tree: Any, path: tuple[Any, ...]) -> Any:
    for key in path:
        tree = tree[key]
    return tree


def written(tree: Any) -> str:
    """A tree as YAML."""
    return str(yaml.dump(tree, Dumper=yaml.CSafeDumper, allow_unicode=True, sort_keys=False))


@cache
def _alike(key: Any) -> list[Any]:
    """Everything that stands under a key anywhere in the book."""
    return [at(each, there) for each in TREES.values() for there in places(each) if there[-1] == key]


def changed(tree: Any, dice: Random) -> None:
    """One change of a tree, in place."""
    found = list(places(tree))
    if not found:
        return
    path = dice.choice(found)
    holder, key = at(tree, path[:-1]), path[-1]
    what = dice.randrange(7)
    if what == 0:
        del holder[key]
    elif what == 1 and isinstance(holder, list):
        holder.insert(dice.randrange(len(holder) + 1), deepcopy(holder[key]))
    elif what == 2:
        other = dice.choice(found)
        holder[key] = deepcopy(at(tree, other))
    elif what == 3:
        # what stands under the same key elsewhere in the book: well formed, and out of place
        alike = _alike(key)
        holder[key] = deepcopy(dice.choice(alike)) if alike else dice.choice(WORDS)
    elif what == 4:
        holder[key] = (
            [holder[key]] if dice.random() < 0.5 else {dice.choice(("take", "do", "private", "x")): holder[key]}
        )
    elif what == 5 and isinstance(holder, dict):
        holder[dice.choice(("private", "from", "change", "finish", "used as", "parts", key))] = dice.choice(WORDS)
    else:
        holder[key] = dice.choice(WORDS)


def text_spoilt(text: str, dice: Random) -> str:
    """A text with one to four places cut, doubled or written into."""
    for _ in range(dice.randrange(1, 5)):
        start = dice.randrange(len(text) + 1)
        end = min(len(text), start + dice.randrange(1, 40))
        piece = dice.choice(("", text[start:end] * 2, dice.choice(WORDS), dice.choice(SIGNS)))
        text = text[:start] + piece + text[end if dice.random() < 0.5 else start :]
    return text


def _cards(names: list[str], dice: Random) -> Any:
    """The cards that some files of the demo name, and a few they do not."""
    said = "\n".join(RAW[name] for name in names if name != CARDS)
    tree = TREES[CARDS]
    cards = {
        name: card
        for name, card in tree["ingredients"].items()
        if any(word in said for word in (name, *(card.get("also") or ()))) or dice.random() < 0.05
    }
    return {**tree, "ingredients": cards}


def a_book(seed: int) -> tuple[dict[str, bytes], int]:
    """The files of a small book cut from the demo, and how many of them are spoilt: one to three."""
    dice = Random(seed)
    names = [*HOUSE, *KEPT, *dice.sample(PAGES, 1)]
    trees = {**TREES, CARDS: _cards(names, dice)}
    raw = {name: RAW[name] for name in names} | {CARDS: written(trees[CARDS])}
    files = {name: text.encode() for name, text in raw.items()}
    spoilt = dice.sample(names, dice.randrange(1, 4))
    for name in spoilt:
        if dice.random() < 0.25:
            files[name] = text_spoilt(raw[name], dice).encode("utf-8", "surrogatepass")
            continue
        tree = deepcopy(trees[name])
        for _ in range(dice.randrange(1, 4)):
            changed(tree, dice)
        files[name] = written(tree).encode()
    return files, len(spoilt)


NOTES = """Jetty cake\n\n225g/8oz butter, soft\n225 g caster sugar\n4 medium eggs\n2 tsp vanilla extract\n\nMethod\n
1. Heat the oven to 180C/160C fan/gas 4.\n2. Beat it all. Bake for 25-30 mins.\nKeeps 3 days in a tin.\n"""
RECIPE = {
    "@context": "https://schema.org", "@type": "Recipe", "name": "Jetty cake", "recipeYield": "12",
    "recipeIngredient": ["225 g butter", "4 eggs", "1 1/2 cups flour"], "cookTime": "PT1H10M",
    "recipeInstructions": [{"@type": "HowToStep", "text": "Beat."}, {"@type": "HowToSection", "itemListElement": ["x"]}],
}  # fmt: skip
DRAWINGS = tuple(path.read_text("utf-8") for path in sorted(DEMO.glob("pictures/*.svg")))


def a_note(seed: int) -> str:
    """Pasted lines, spoilt."""
    return text_spoilt(NOTES, Random(seed))


def a_page(seed: int) -> str:
    """Data for machines, spoilt by its structure or as text."""
    dice = Random(seed)
    tree = deepcopy(RECIPE)
    for _ in range(dice.randrange(1, 4)):
        changed(tree, dice)
    text = json.dumps(tree, ensure_ascii=False)
    return text_spoilt(text, dice) if dice.random() < 0.3 else text


def a_drawing(seed: int) -> bytes:
    """A drawing, spoilt."""
    dice = Random(seed)
    return text_spoilt(dice.choice(DRAWINGS), dice).encode("utf-8", "surrogatepass")
