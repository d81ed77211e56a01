"""A line of a note as ingredients in the book's spelling: the amount first or last, one or several run together."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from tinbook.facts import Facts
from tinbook.models import Book, read_take
from tinbook.notes import amounts
from tinbook.notes.amounts import NUM, UNIT, NotedAmount
from tinbook.notes.cards import Cards
from tinbook.notes.kitchens import Kitchen
from tinbook.units import Misread

FILLED = 0.15
"""How far cups filled by hand can be from the sources' range (our own judgement); a slip is further out."""

_LAST = re.compile(
    rf"^(?P<name>[^\W\d_][^:\t|0-9]{{1,50}}?)\s*(?:[:\t|=]|\.{{2,}}|…+|\s[-–—]|\s{{2,}}|,|\s)\s*"
    rf"(?P<amount>(?:about\s+)?(?:(?:[0-9]+\s*[x×]\s*)?{NUM}\s*(?:{UNIT})?(?:\s*[/(]\s*{NUM}\s*{UNIT}\)?"
    rf")?|(?:a\s+)?pinch|(?:a\s+)?(?:knob|splash|little|few)))"
    r"(?P<after>\s*(?:[,(;–-].*)?)$",
    re.IGNORECASE,
)
_EACH = re.compile(r"^(?:each\s+(?:of\s+)?|each\s*:\s*|of\s+each\s*:?\s*)", re.IGNORECASE)
_PIECES = re.compile(
    rf"\s*(?:[,;+&]|\s[-–—]\s|\band\b|\bplus\b)\s*(?:then\s+|and\s+|add\s+)?"
    rf"(?=an?\s+pinch|an?\s+[a-z]+spoon|half\b|{NUM}\s*(?:{UNIT}|[a-z])|(?:the\s+)?(?:finely\s+)?(?:grated\s+"
    rf")?(?:zest|juice|rind|peel)\s+(?:of|from)\b)",
    re.IGNORECASE,
)
_TALLY = re.compile(
    rf"(?<![\w.,/])(?:{NUM}\s*-?\s*(?:g|gms?|grams?|kg|oz|ozs?|ounces?|lbs?|pounds?"
    rf"|ml|l|pints?|pt|cups?|tbsps?|tsps?|tablespoons?|teaspoons?|tablespoonfuls?"
    rf"|teaspoonfuls?|sticks?)\b\.?|[0-9]+\s+(?=(?:[a-z]+\s+)?eggs?\b|whites\b"
    rf"|yolks\b))",
    re.IGNORECASE,
)
_NAMES = re.compile(r"\s*(?:of\s+)?(?:the\s+)?((?:[^\W\d_][\w'’-]*[ ]?){1,4})")
_AND = re.compile(r"\s*(?:,\s*and\s+|,|\band\b|&)\s*", re.IGNORECASE)
_PARTS = re.compile(
    r"^(?:the\s+)?(?:finely\s+|grated\s+)*(?:zest|juice|rind|peel|seeds)(?:\s*(?:and"
    r"|&)\s*(?:juice|zest))?\s+(?:of|from)\b",
    re.IGNORECASE,
)
_OPEN = re.compile(
    r"\b(?:for|to)\s+(?:greasing|dusting|taste|the tins?|serve|decorate|finish|brush|grease|dust|coat)\b", re.IGNORECASE
)
_OR = re.compile(r"\b(?:or|and/or)\b", re.IGNORECASE)
_OF_IT = re.compile(r"\b(?:of (?:it|them|which)|divided|reserv)", re.IGNORECASE)
_VERB = re.compile(
    r"^(?:and\s+|then\s+|now\s+|next,?\s+|gently\s+|lightly\s+)?(?:add|arrange"
    r"|allow|bake|beat|blend|boil|bring|brush|chill|chop|combine|cook|cool|cover"
    r"|cream"
    r"|cut|decorate|divide|dredge|drop|dust|fill|fold|grate|grease|heat|keep|leave|let|level|line|loosen|make|measure"
    r"|melt|mix|pipe|place|pour|preheat|put|remove|rest|roll|rub|scrape|separate|set|sieve|sift|simmer|slake|slice|soak"
    r"|soften|spoon|spread|sprinkle|stand|stir|strain|switch|take|test|tip|toast|transfer|trim|turn|warm|weigh|whip"
    r"|whisk|wrap|work|store|freeze|dissolve|knead|tint|colour|sandwich|assemble"
    r"|ice|unmould|check|repeat|swirl|drizzle)\b",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class Read:
    """One ingredient: `text` in the book's spelling, "" if there is none; `doubt`: why it is not certain.

    `written` is what the note says; `unknown` the name that has no card.
    """

    written: str
    text: str = ""
    doubt: str = ""
    unknown: str = ""


def is_order(text: str) -> bool:
    """Whether a sentence says what to do."""
    return bool(_VERB.match(text))


class Lines:
    """Reads the ingredient lines of one note, from one kitchen."""

    def __init__(self, book: Book, facts: Facts, kitchen: Kitchen) -> None:
        self.book, self.facts, self.kitchen = book, facts, kitchen
        self.cards = Cards(book)

    def has_amount(self, line: str) -> bool:
        """Whether a line has the shape of an ingredient: an amount at its start, or a short name and one at its end."""
        text = amounts.prepared(line)
        if amounts.begins(text):
            amount = amounts.read_amount(text, self.kitchen, self.book.house.spoons)
            return amount is None or amount.base is None or amount.base.dimension not in ("length", "time")
        return bool(_PARTS.match(text) or self._celled(text) or self._turned(text))

    def read(self, line: str) -> list[Read]:
        """The ingredients of a line, at least one."""
        text = amounts.prepared(line)
        if (celled := self._celled(text)) is not None:
            return [self._one(celled, line)]
        if (turned := self._turned(text)) is not None:
            return [self._one(turned, line)]
        if _PARTS.match(text):
            return [Read(line, doubt="weigh it, or measure it by the spoon")]
        pieces = list(self._pieces(text))
        return [self._one(piece, line if len(pieces) == 1 else piece) for piece in pieces]

    def told(self, sentence: str) -> list[Read]:
        """The ingredients a sentence mentions, wherever their amounts are in it; those without a card are not
        certain."""
        text = amounts.prepared(sentence)
        found: list[tuple[int, Read]] = []
        for start in _TALLY.finditer(text):
            if found and start.start() < found[-1][0]:
                continue
            amount = amounts.read_amount(text[start.start() :], self.kitchen, self.book.house.spoons)
            if amount is None:
                continue
            at = start.start() + amount.end
            words = named[1].split() if (named := _NAMES.match(text, at)) else []
            known = next((n for n in range(len(words), 0, -1) if self.cards.read(" ".join(words[:n]), ())[0]), 0)
            name = " ".join(words[: known or 2])
            piece = f"{text[start.start() : at].strip()} {name}"
            read = self._one(piece, piece) if known else Read(piece, doubt="which of these words is its name?")
            found.append((at, read))
        return [read for _, read in found]

    def tallies(self, line: str) -> int:
        """How many amounts a line has."""
        return len(_TALLY.findall(amounts.prepared(line)))

    def _celled(self, text: str) -> str | None:
        """A table row as a line: the cell with the amount, perhaps the one with its unit, the name, the rest."""
        cells = [cell.strip() for cell in text.split("\t")]
        at = next((n for n, cell in enumerate(cells) if re.fullmatch(rf"{NUM}\s*(?:{UNIT})?", cell, re.IGNORECASE)), -1)
        if at < 0 or sum(bool(cell) for cell in cells) < 2:
            return None
        amount, rest = cells[at], [cell for n, cell in enumerate(cells) if n != at and cell]
        if re.fullmatch(NUM, amount) and at + 1 < len(cells) and re.fullmatch(UNIT, cells[at + 1], re.IGNORECASE):
            amount, rest = (
                f"{amount} {cells[at + 1]}",
                [cell for n, cell in enumerate(cells) if n not in (at, at + 1) and cell],
            )
        return f"{amount} {', '.join(rest)}" if rest and not any(_TALLY.search(cell) for cell in rest) else None

    def _turned(self, text: str) -> str | None:
        """A line that ends in its amount, turned round."""
        found = None if amounts.begins(text) else _LAST.match(text)
        if found is None or is_order(found["name"]) or len(found["name"].split()) > 6 or _PARTS.match(text):
            return None
        name = found["name"].strip(" -–—.,")
        after = re.sub(r"^[,;–-]\s*", "", found["after"].strip())
        bare = found["amount"].strip()
        # a bare number at the end counts pieces; only a known name tells it from a year or a page
        if re.fullmatch(NUM, bare) and self.cards.read(name, ())[0] is None and not re.search(r"[:\t|=]|\s{2}", text):
            return None
        noted = after.strip("()") if after.startswith("(") else after
        return f"{bare} {name}" + (f", {noted}" if noted else "")

    def _pieces(self, text: str) -> Iterator[str]:
        """The ingredients of a run-in list, each with its own amount; "each of" gives its amount to all that follow."""
        cuts, at = [], 0
        for cut in _PIECES.finditer(text):
            first = text[at : cut.start()].strip()
            name = self._name_of(first)
            if (
                name
                and not first.endswith("(")
                and text.count("(", at, cut.start()) == text.count(")", at, cut.start())
            ):
                cuts.append(first)
                at = cut.end()
        for piece in (*cuts, text[at:].strip()):
            yield from self._shared(piece.rstrip(". "))

    def _name_of(self, piece: str) -> str:
        amount = amounts.read_amount(piece, self.kitchen, self.book.house.spoons) if amounts.begins(piece) else None
        return piece[amount.end :].strip() if amount else ""

    def _shared(self, piece: str) -> Iterator[str]:
        amount = amounts.read_amount(piece, self.kitchen, self.book.house.spoons)
        each = _EACH.match(piece[amount.end :]) if amount else None
        if amount is None or each is None:
            yield piece
            return
        names = [name for name in _AND.split(piece[amount.end + each.end() :]) if name.strip()]
        yield from (f"{piece[: amount.end].strip().removesuffix(' of')} {name.strip()}" for name in names)

    def _one(self, piece: str, written: str) -> Read:
        if (plain := self._as_it_stands(written)) is not None:
            return plain
        amount = amounts.read_amount(piece, self.kitchen, self.book.house.spoons)
        if amount is None:
            why = "weigh it, or measure it by the spoon" if _PARTS.match(piece) else "it has no amount"
            return Read(written, doubt=why)
        name, wanted = _parted(piece[amount.end :])
        if not name:
            return Read(written, doubt="an amount of what?")
        if not amount.text:
            return Read(written, doubt=amount.doubt)
        if amount.base and amount.base.dimension not in ("mass", "volume", "count"):
            return Read(written, doubt="that is not an amount of an ingredient")
        return self._named(amount, name, wanted, written)

    def _named(self, noted: NotedAmount, name: str, wanted: list[str], written: str) -> Read:
        amount = noted.text
        card, spelled, said = self.cards.read(name, wanted)
        is_count = re.fullmatch(NUM, amount) is not None
        text = ", ".join((f"{amount} {spelled}", *said))
        if card is None:
            if _OR.search(name):
                return Read(written, doubt="one or the other?")
            if re.search(r"[0-9]", name) or len(name.split()) > 7:
                return Read(written, doubt="it is not clear what it is")
            return Read(written, text, "no card for it", name)
        if noted.base and noted.beside_ml and not self._is_as_heavy(card, noted.base.base, noted.beside_ml):
            return Read(written, doubt=f"that volume of it does not weigh {amount}")
        if is_count and self.book.cards[card].each is None:
            return Read(written, doubt=f"{amount} of what? g, oz, ml or a spoon")
        if any(_TALLY.search(words) for words in said):
            return Read(written, text, "there is another amount beside it")
        if other := next((words for words in said if self.cards.find(words)), ""):
            return Read(written, text, f"and how much {other}?")
        if any(_OF_IT.search(words) for words in said):
            return Read(written, text, "part of it is for something else")
        if any(re.match(r"plus\s+(?:[0-9½¼¾⅓⅔]|an?\s)", words) for words in said):
            return Read(written, text, "more of it is needed elsewhere")
        try:
            read_take(text, self.book.house.spoons)
        except Misread as error:
            return Read(written, doubt=error.message)
        return Read(written, text)

    def _is_as_heavy(self, name: str, mass_g: float, volume_ml: tuple[float, float]) -> bool:
        """Whether this volume of an ingredient can weigh this much, if its card gives its weight by volume."""
        card = self.book.cards[name]
        if card.weighs_as:
            fact = self.facts.densities[card.weighs_as]
            low, high = fact.low or fact.value, fact.high or fact.value
        elif card.weighs and card.weighs.g_per_ml:
            low = high = card.weighs.g_per_ml
        else:
            return True
        return low * volume_ml[0] * (1 - FILLED) <= mass_g <= high * volume_ml[1] * (1 + FILLED)

    def _as_it_stands(self, line: str) -> Read | None:
        """A line already in the book's spelling, whose name the book knows: it is left exactly as it is."""
        try:
            take = read_take(line, self.book.house.spoons)
        except Misread:
            return None
        theirs = take.quantity.unit in ("cup", "fl oz") or (take.quantity.unit in ("tbsp", "tsp") and self.kitchen.name)
        card = self.book.house_word(take.name)
        if card and take.quantity.dimension == "count" and self.book.cards[card].each is None:
            return None
        if theirs or not card or "(" in line or _OF_IT.search(take.wanted):
            return None
        other = amounts.begins(take.wanted) or _TALLY.search(take.wanted) or self.cards.find(take.wanted)
        return None if other or self.cards.read(take.name, [take.wanted])[2] == [] else Read(line, line)


def _parted(rest: str) -> tuple[str, list[str]]:
    """A name and how it is wanted: whatever is in brackets, or after a comma or a dash."""
    rest = re.sub(r"\s+", " ", rest).strip(" .;:*")
    wanted = [words.strip() for words in re.findall(r"\(([^()]*)\)", rest) if words.strip()]
    bare = re.sub(r"\s*\([^()]*\)\s*", " ", rest).strip()
    name, *more = [part.strip() for part in re.split(r",(?!\d)|\s[–—-]\s|;|:\s", bare)]
    if open_ := _OPEN.search(name):
        more.insert(0, name[open_.start() :])
        name = name[: open_.start()].strip()
    if at := re.search(r"\s(?:at room|plus extra|plus more|,?\s*if needed|to loosen)", name, re.IGNORECASE):
        more.insert(0, name[at.start() :].strip())
        name = name[: at.start()].strip()
    return name, [*(part for part in more if part), *wanted]
