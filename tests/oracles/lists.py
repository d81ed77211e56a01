"""Lists of ingredients by other means: random books as files, their allergens read off what was written, and the order
of a list in exact fractions. It knows nothing of the engine."""

from __future__ import annotations

import random
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from pathlib import Path

ALLERGENS = {
    "wheat": ("wheat starch", ""), "egg": ("dried egg", "albumen powder"), "soya": ("soya flour", "tofu powder"),
    "milk": ("milk solids", "whey powder"), "almond": ("almonds", "marzipan crumb"), "walnut": ("walnut pieces", ""),
    "sesame": ("sesame paste", "tahini"), "peanut": ("peanuts", "groundnut paste"), "lupin": ("lupin flour", ""),
    "sulphites": ("sulphites", ""), "mustard": ("mustard", ""), "pistachio": ("pistachios", ""),
}  # fmt: skip
"""An allergen, words of a packet that name it, and words that only hide it."""
PLAIN = ("sugar", "palm oil", "salt", "rice starch", "cocoa mass", "glucose syrup", "water")
NAMES = ("ember", "flint", "gorse", "heath", "islet", "jetty", "knoll", "ledge", "marsh", "narrow", "osier", "pebble")


@dataclass
class RandomBook:
    """Files by their path in recipes/, and the allergens of every product as they follow from what was written; None
    where a card says nothing."""

    files: dict[str, str] = field(default_factory=dict)
    cards: dict[str, tuple[str, ...] | None] = field(default_factory=dict)
    mixes: dict[str, list[str]] = field(default_factory=dict)
    cakes: dict[str, list[str]] = field(default_factory=dict)
    private: set[str] = field(default_factory=set)

    def leaves(self, product: str) -> set[str]:
        """Every ingredient of a product, through its mixtures."""
        if product in self.cakes:
            return {name for slug in self.cakes[product] for name in self.mixes[slug]}
        return set(self.mixes[product])

    def allergens(self, product: str) -> set[str]:
        """Every allergen of every leaf."""
        return {key for name in self.leaves(product) for key in self.cards[name] or ()}

    def unknown(self, product: str) -> set[str]:
        """The leaves nobody has said anything about."""
        return {name for name in self.leaves(product) if self.cards[name] is None}

    def write(self, folder: Path) -> Path:
        """The book on disk."""
        for path, text in self.files.items():
            file = folder / "recipes" / path
            file.parent.mkdir(parents=True, exist_ok=True)
            file.write_text(text, "utf-8")
        return folder / "recipes"


def random_book(seed: int) -> RandomBook:
    """Cards with lists that nest, mixtures, variations with swaps, cakes of them; some of it private."""
    draw, book = random.Random(seed), RandomBook()
    lines = ["ingredients:"]
    for name in NAMES:
        lines += _card(name, draw, book)
    book.files["house/ingredients.yaml"] = "\n".join(lines) + "\n"
    book.files["house/house.yaml"] = "book: 1\nname: Random book\neggs: UK large\n"
    nation = draw.choice(["England", "Scotland", "Northern Ireland", "the EU", ""])
    sold = draw.choice(["packed here", "made to order", "loose"])
    own = draw.choice(["merged", "in brackets"])
    told = f"sold: {sold}\nown mixtures: {own}\n"
    book.files["house/labels.yaml"] = (f"sold in: {nation}\n" if nation else "") + told
    bases = []
    for number in range(3):
        slug, filling = f"mix-{number}", number == 2
        used = draw.sample(NAMES, draw.randint(2, 6))
        _mixture(slug, used, filling, draw, book)
        bases.append(slug)
    deep = draw.choice(bases[:2])
    for number in range(draw.randint(1, 3)):
        deep = _variation(f"var-{number}", deep, draw, book)
    for number in range(2):
        baked = draw.choice([slug for slug in book.mixes if slug != "mix-2"])
        _cake(f"cake-{number}", baked, draw, book)
    return book


def _card(name: str, draw: random.Random, book: RandomBook) -> list[str]:
    known = draw.sample(sorted(ALLERGENS), draw.choice([0, 0, 1, 1, 2, 3]))
    hidden = draw.random() < 0.12
    book.cards[name] = None if hidden else tuple(known)
    lines = [f"  {name}:", "    weighs: 1 g/ml"]
    if not hidden:
        lines.append(f"    allergens: [{', '.join(known)}]" if known else "    allergens: none")
    if draw.random() < 0.75 and not hidden:
        lines.append(f'    made of: "{_packet(known, draw)}"')
    if draw.random() < 0.2:
        lines.append("    private: yes")
        book.private.add(name)
    return lines


def _packet(known: Sequence[str], draw: random.Random) -> str:
    words = [draw.choice([word for word in ALLERGENS[key] if word]) for key in known] + draw.sample(PLAIN, 2)
    draw.shuffle(words)
    while len(words) > 2 and draw.random() < 0.7:
        inside = draw.sample(words, 2)
        words = [word for word in words if word not in inside] + [f"filling ({', '.join(inside)})"]
        if words[-1].count("(") > 2:
            break
    return ", ".join(words)


def _mixture(slug: str, used: Iterable[str], filling: bool, draw: random.Random, book: RandomBook) -> None:
    book.mixes[slug] = list(used)
    mix = "\n".join(f"  - {draw.randint(20, 150)} g {name}" for name in used)
    shape = (
        "kind: buttercream\nmakes: 200 g"
        if filling
        else ("kind: creamed\ntins: round 20 cm x 7.5 cm\nbake: {oven: 160 °C, time: 60 min}")
    )
    keeps = "keeps for: 3 days"
    book.files[f"mixtures/{slug}.yaml"] = f"name: The {slug}\n{shape}\n{keeps}\nmix:\n{mix}\n"


def _variation(slug: str, base: str, draw: random.Random, book: RandomBook) -> str:
    mix = list(book.mixes[base])
    changes = []
    swapped = draw.choice(mix)
    new = draw.choice([name for name in NAMES if name not in mix])
    changes.append(f"  - {{swap: {swapped}, for: {new}}}")
    mix[mix.index(swapped)] = new
    spare = [name for name in NAMES if name not in mix]
    if draw.random() < 0.5 and spare:
        added = draw.choice(spare)
        changes.append(f"  - {{add: {draw.randint(5, 60)} g {added}, after: {new}}}")
        mix.insert(mix.index(new) + 1, added)
    book.mixes[slug] = mix
    book.files[f"mixtures/{slug}.yaml"] = f"name: The {slug}\nfrom: {base}\nchange:\n" + "\n".join(changes) + "\n"
    return slug


def _cake(slug: str, baked: str, draw: random.Random, book: RandomBook) -> None:
    iced = draw.random() < 0.8
    book.cakes[slug] = [baked, *(["mix-2"] if iced else [])]
    filling = "mix-2" if iced else "none"
    book.files[f"cakes/{slug}.yaml"] = (
        f"name: The {slug}\ntiers: round 20 cm\nmixture: {baked}\nlayers: 2\nfilling: {filling}\ncoat: {filling}\n"
        "cover: none\nborder: none\nboard: {size: none}\n"
    )


def in_order(
    weights: Mapping[str, Fraction], water: str, loss: Fraction
) -> tuple[list[tuple[str, Fraction]], Fraction]:
    """A list by weight as it goes in, added water by what is left of it, and what the product weighs: all exact."""
    whole = sum(weights.values(), Fraction(0))
    finished = whole * (1 - loss)
    counts = dict(weights)
    if water in counts:
        counts[water] = max(Fraction(0), counts[water] - (whole - finished))
    return sorted(counts.items(), key=lambda each: -each[1]), finished
