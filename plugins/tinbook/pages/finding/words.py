"""The words of a text as Find searches them, and what it knows about words: which words say nothing, and which mean the
same."""

from __future__ import annotations

import re
import unicodedata

LETTERS = re.compile(r"[a-z0-9]+")
APART = re.compile(r"(?<=\d)\s+(?=(?:cm|mm|in|lb|oz|g|kg|ml|l)\b)")
"""The space between a figure and its unit: `20 cm` is searched for as `20cm`."""
INCH = re.compile(r"(?<=\d)(?:\s*-?\s*inch(?:es)?\b|\s*[\"″”])")

STOP_WORDS = (
    "a about all am an and any are as at avoid be been but by can could do does doing for from get go goes got "
    "had has have he help her how i if in into is it its me mend my of off on one onto or our out prevent she "
    "should so some stop than that the their them then there these they this to too up us was we what when where "
    "which who why will with you your"
)
"""What a baker says around the words that matter. A question of these alone finds nothing."""

LIGHT_WORDS = (
    "bake baking best book cake cakes cook easy good instead make makes making made much many need needs new nice "
    "recipe recipes thing things use used using want way work"
)
"""Words for what nearly the whole book is about: next to other words they say little, and need not be found."""

ALIKE = (
    "sink sank sunk sunken sinks sinking", "tear tore torn tears", "rise rose risen", "stick stuck sticks sticky",
    "freeze froze frozen freezer", "break broke broken breaks", "shrink shrank shrunk shrinks",
    "split curdle curdled splits separate separated", "pan tin tins pans", "frosting icing buttercream",
    "fondant sugarpaste", "weep sweat sweats sweating weeping", "colour color", "mould mold", "grey gray",
    "middle centre center", "layer layers torte", "gum modelling", "dye tint colour", "half halve",
    "conversion convert conversions", "chocolate cocoa", "cut slice", "cool cold chill",
    "no without free", "write writes writing written",
)  # fmt: skip
"""Words that mean the same at the bench; each row is searched for together, the word as typed first."""


def tokens(text: str) -> list[str]:
    """Lower-case letters and figures without accents and apostrophes; a figure and its unit are one word."""
    bare = text.lower()
    if not bare.isascii():
        bare = "".join(sign for sign in unicodedata.normalize("NFKD", bare) if not unicodedata.combining(sign))
    joined = APART.sub("", INCH.sub("in", re.sub(r"['’]", "", bare)))
    return LETTERS.findall(joined)


def plain_words(text: str) -> list[str]:
    """The words of running text: amounts and sizes do not count as words of the book; E415 does."""
    return [word for word in tokens(text) if word[0].isalpha() and len(word) > 1]
