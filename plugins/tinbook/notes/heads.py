"""The headings of a note, and lines that say one thing under a label: Serves 16, Cook: 1 hr 30, Tip: ..."""

from __future__ import annotations

import re
from dataclasses import dataclass

MIX, METHOD, NOTES, KEEPS, JUNK, PART, TIMES, TOOLS = (
    "mix",
    "method",
    "notes",
    "keeps",
    "junk",
    "part",
    "times",
    "tools",
)

PARTS = (
    r"sponges?|cakes?|torte|g[aâ]teau|loaf|buns|cup\s?cakes|muffins|batter|base|icing|frosting|filling|buttercream"
    "|butter cream|butter icing|glaze|glaz[eé]|syrup|soak|ganache|topping|drizzle|crumble"
    "|streusel"
    "|coating|coat|decoration|covering|marzipan|sugarpaste|royal icing|curd"
    "|jam|custard|cream|crumb coat|paste|to finish|to decorate|to serve|to "
    "fill"
)
_OF = (
    r"(?:(?:vanilla|chocolate|lemon|coffee|almond|ginger|spiced?|plain|simple"
    r"|quick|swiss|italian|meringue|american|dark|milk|white|cream cheese|soft "
    r"cheese|cocoa|mocha|honey|sugar|caramel|brandy|rum|butter|dry|wet|malt|maple"
    r"|walnut|crumb|the|our|my|sponge|cake|treacle|toffee|rosemary|cinnamon|salted"
    r"|salt)\s+){0,3}"
)
_PART = re.compile(
    rf"^(?:(?:ingredients\s+)?for\s+(?:the\s+)?|to\s+make\s+(?:the\s+)?|the\s+"
    rf"|making\s+the\s+)?(?P<name>{_OF}(?:{PARTS})(?:\s+(?:{PARTS}))?)(?:\s+ingredients|\s+mix(?:ture)?)?(?:\s*\([^)]*\))?"
    rf"\s*[:.–-]?\s*$",
    re.IGNORECASE,
)
_FOR = re.compile(rf"^for\s+(?:the\s+)?(?P<name>{_OF}(?:{PARTS})(?:\s+(?:{PARTS}))?)\b[\s,:]+(?=\S)", re.IGNORECASE)
_LABEL = re.compile(
    rf"^(?:for\s+(?:the\s+)?|to\s+make\s+(?:the\s+)?|the\s+)?(?P<name>{_OF}(?:{PARTS})(?:\s+(?:{PARTS}))?)\s*(?:\([^)]*\))?"
    rf"\s*[:–—-]\s+(?=\S)",
    re.IGNORECASE,
)
_FIXED = (
    (METHOD, (r"(?:the\s+|cooking\s+|preparation\s+)?(?:method(?: of preparation)?|step\s*[0-9]{1,2}"
r"|directions?|instructions?|steps?|preparation|procedure|what to do|how "
r"to(?:\s+(?:make|do|bake|cook)(?:\s+it)?)?|to make|to bake|making it|make "
r"it|the doing|here'?s how|baking|way)")),
    (MIX, (r"(?:the\s+)?(?:ingredients?(?:\s+list)?|you(?:'ll|\s+will)?\s+need|what "
r"(?:you(?:'ll|\s+will)?|i) (?:need|use)|shopping list|ingredients?(?:\s*[/|,-]\s*(?:amounts?"
r"|quantity|qty|weights?|units?|notes?|measures?|how much))+|(?:amount|quantity"
r"|weight|qty)s?\s*[/|,-]?\s*ingredients?|take)")),
    (NOTES, (r"(?:cook'?s |baker'?s |recipe )?(?:notes?|tips?|hints?|variations?|good "
r"to know|p\.?s\.?|n\.?b\.?|remarks?)")),
    (KEEPS, r"(?:storage|storing|to store|keeping|keeps|to keep|shelf life|storage tips)"),
    (TOOLS, (r"(?:equipment|tools?|kit|you will also need|special equipment|utensils"
r"|(?:(?:cake|baking|loaf)\s+)?(?:tins?|pans?)(?:\s+size)?)")),
    (JUNK, (r"(?:nutrition(?:al)?(?:\s+(?:information|facts))?(?:\s+per\s+\w+)?|comments?"
r"|reviews?|related recipes|more recipes|you may also like|about the author)")),
)  # fmt: skip
_HEADS = [
    (kind, re.compile(rf"^{words}(?:\s*\([^)]*\)|\s+(?:for|of)\b[^.:]*)?\s*[:.–-]*$", re.IGNORECASE))
    for kind, words in _FIXED
]
_LABELS = [
    (kind, re.compile(rf"^{words}(?:\s*\([^)]*\))?\s*(?:[:–—]|\.\s?[—–-])\s*(?=\S)", re.IGNORECASE))
    for kind, words in _FIXED
]
_SERVES = re.compile(
    r"^(?:serves|servings?|feeds|portions?|cuts? (?:in)?to|makes|yields?|gives|enough for|quantity)\b\s*[:=-]?\s*\S.*$",
    re.IGNORECASE,
)
_TIMES = re.compile(
    r"^(?:(?:prep(?:aration)?|cook(?:ing)?|bak(?:e|ing)|total|active|hands[- ]on"
    r"|ready|chill(?:ing)?|cool(?:ing)?|rest(?:ing)?)(?:\s+times?)?(?:\s+in)?)\s*(?:[:=–-]\s*\S.*"
    r"|[0-9]+\s*(?:mins?|minutes?|hrs?|hours?)\b\s*\w*)$",
    re.IGNORECASE,
)
_KEEPS = re.compile(
    r"^(?:it\s+|this\s+|the cake\s+|they\s+|will\s+|cake\s+)*(?:keeps?|stores?"
    r"|freezes?)\s+(?!the|it|warm|cold|stirring|beating|going|whisking|an eye"
    r"|your)",
    re.IGNORECASE,
)
_WITHIN = re.compile(r"^(?:dry|wet|liquid)(?:\s+(?:ingredients?|mix|things))?\s*:?$", re.IGNORECASE)
_HASH = re.compile(r"^#{1,6}\s+|^={2,}\s*|\s*#+$")


@dataclass(frozen=True, slots=True)
class NoteHead:
    """A heading of a `kind`, or a label: then `rest` is what comes after it. `name` is that of a part."""

    kind: str
    name: str = ""
    rest: str = ""


def head_of(line: str) -> NoteHead | None:
    """What a line starts, if it is a heading or has a label; None for any other line."""
    text = _HASH.sub("", line).strip().strip("*_=~- ").replace("\t", " / ")
    if not text:
        return None
    for kind, words in _HEADS:
        if words.match(text):
            return NoteHead(kind)
    if part := _PART.match(text):
        return NoteHead(PART, _named(part["name"]))
    if _SERVES.match(text) and len(text) < 80:
        return NoteHead(NOTES, "serves", text)
    if _TIMES.match(text) and len(text) < 80:
        return NoteHead(TIMES, "", text)
    if _KEEPS.match(text):
        return NoteHead(KEEPS, "", text)
    for kind, words in _LABELS:
        if label := words.match(text):
            return NoteHead(kind, "", text[label.end() :].strip())
    if label := _LABEL.match(text):
        return NoteHead(PART, _named(label["name"]), text[label.end() :].strip())
    return None


def part_in(line: str) -> str:
    """The part meant by a step that begins "For the icing, ..."; "" for any other."""
    found = _FOR.match(line)
    return _named(found["name"]) if found else ""


def _named(name: str) -> str:
    low = " ".join(name.lower().split())
    return re.sub(r"^(?:the|our|my)\s+", "", low)


def is_within(line: str) -> bool:
    """A heading inside a list, which separates what is mixed from what is poured."""
    return bool(_WITHIN.match(line))


def is_main(name: str) -> bool:
    """Whether a part is the cake itself, not what goes on it."""
    return bool(re.search(r"\b(?:sponges?|cakes?|torte|g[aâ]teau|loaf|buns|cup\s?cakes|muffins|batter|base)$", name))


def is_shouted(line: str) -> bool:
    """A heading of no known kind: a short line in capitals."""
    return line.isupper() and 2 < len(line) < 50 and not re.search(r"[0-9]", line)
