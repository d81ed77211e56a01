"""The lines of a note as a reader sees them: quotes, bullets, tables and wrapping undone, and anything not a recipe set
aside."""

from __future__ import annotations

import re
from collections.abc import Iterator

from tinbook.notes.lines import is_order

_QUOTE = re.compile(r"^\s*(?:>\s?)+")
_MAIL = re.compile(r"^(?:from|to|cc|bcc|subject|sent|date|reply-to|attachments?)\s*:\s*\S?", re.IGNORECASE)
_WROTE = re.compile(
    r"^(?:on .{4,60} wrote:|-{3,}\s*(?:original|forwarded) message\s*-*|begin forwarded message:?)$", re.IGNORECASE
)
_GREETING = re.compile(
    r"^(?:dear|hi|hello|hey|hiya)\b[^.]{0,30}[,!.]?$|^(?:hi|hello|hey|dear)\b"
    r"|^(?:with\s+(?:much\s+)?|lots of |all my |much )love\b|^love[,!. x]*(?:from\b.*)?$"
    r"|^(?:kind |best |warm )?(?:regards|wishes)\b|^all the best\b"
    r"|^(?:cheers|thanks?(?: you)?|thank you|yours|see you|speak soon|take care[,!.]*$"
    r"|happy baking|enjoy|let me know|bye|hope (?:you|this|it)|xx?x?)\b|^sent "
    r"from\b",
    re.IGNORECASE,
)
_FAREWELL = re.compile(
    r"^(?:(?:with\s+)?(?:(?:much|lots of|all my|best)\s+)?love|all the best|(?:kind |best |warm )?(?:regards|wishes)"
    r"|yours(?: \w+)?|cheers|thanks)[,!. x]*$",
    re.IGNORECASE,
)
_PAGE = re.compile(
    r"^(?:skip to|jump to|print(?:\s+recipe|\s+this|\s+page|er)?$|pin(?:\s+(?:it"
    r"|recipe|this))?$|save(?:\s+recipe|\s+this|\s+to .*)?$|share(?:$|\s+(?:this"
    r"|on|via))|rate (?:this|it)|did you make|tag (?:us|me)\b|(?-i:[Bb]y [A-Z])"
    r"|leave a (?:comment|review|reply)"
    r"|comments?\b|[0-9.,]+ comments?|reviews?\b|advertisement|ad$|sponsored"
    r"|subscribe|sign up|newsletter|follow (?:us|me|for|@|along)|home\s*[>»/|]"
    r"|menu$|search$|log ?in|cookie"
    r"|related (?:recipes|posts)|you (?:may|might) also|more recipes|next:|previous:"
    r"|copyright|©|all rights|privacy|terms|photo(?:graph)?s?(?: by|:)|(?:image"
    r"|video)(?:$|[ :]*(?:credit|by|:))|watch (?:the|how|this)|read more"
    r"|cook mode|prevent your screen|scale(?:$|\s+[123]x)|1x\b|[123]x(?:\s+[123]x)*$"
    r"|us customary|metric$|tap to|click|add to (?:basket|list|favourites)|author"
    r"|by:|posted|published|updated|course:|cuisine:|difficulty|keyword"
    r"|tags?:|categor|www\.|https?:|#\w+|page [0-9]+)"
    r"|[★☆⭐]|\b[0-9.]+\s*(?:from|/5|out of 5|stars?)\b.*\b(?:votes?|ratings?"
    r"|reviews?)|\bvotes?\)?$|(?:^|\s)#[a-z]\w+|https?://|\bkcal\b|^calories\b",
    re.IGNORECASE,
)
_NUTRITION = re.compile(r"^(?:nutrition(?:al)?(?:\s+(?:information|facts|per serving))?|per serving)\b", re.IGNORECASE)
_BULLET = re.compile(
    r"^\s*(?:[-*•·▢□☐☑✓✔◦‣▪○●–—→»~]+(?=\s|[^\W\d_])\s*|\[[ x]?\]\s*|[^\w\s\"'“‘(½¼¾⅓⅔⅛⅜⅝⅞<>|#.,:;£$€=+/\\&%°]+\s*)+"
)
_NUMBERED = re.compile(
    r"^\s*(?:step\s*)?(?:\(?[0-9]{1,2}[.):]|\(?[0-9]{1,2}\)|step\s+[0-9]{1,2}\s*[-–:]?)\s*(?=[^\W\d_\s]"
    r"|\*)(?!\s*(?:oz|g|ml|cm)\b)",
    re.IGNORECASE,
)
_AMOUNT_LIST = re.compile(r"^\s*\(?[0-9]{1,2}[.)]\s+(?=[0-9½¼¾⅓⅔])")
_BARE = re.compile(r"^\s*[1-9][0-9]?\s+(?=[A-Z])")
_BLANKS = re.compile(r"[^\S\t\n]{3,}")
_RULE = re.compile(r"^[\s|:+=_*~-]*$")
_FENCE = re.compile(r"^\s*(?:`{3,}|<!--|-->)")
_MARKS = re.compile(r"\*\*|__|(?<!\w)[*_](?=\w)|(?<=[\w.,])[*_](?!\w)|`")


def printable(line: str) -> str:
    """A pasted line without the characters a file of the book may not hold."""
    return "".join(sign if sign.isprintable() else "\t" if sign == "\t" else " " for sign in line).replace(
        "\ufffd", "?"
    )


def lines_of(text: str) -> Iterator[str]:
    """The lines of a text, unquoted, one for each table row or wrapped paragraph; blank ones stay."""
    waiting = ""
    for raw in text.splitlines():
        line = _QUOTE.sub("", printable(raw)).rstrip()
        if waiting and _goes_on(waiting, line):
            waiting = f"{waiting} {line.strip()}"
            continue
        if waiting:
            yield waiting
        waiting = ""
        if not line.strip():
            yield ""
        elif "|" in line and line.strip().startswith("|"):
            yield _row(line)
        else:
            waiting = line.strip(" ")
    if waiting:
        yield waiting


def _row(line: str) -> str:
    """A table row as one line, its cells separated by tabs."""
    return "" if _RULE.match(line) else "\t".join(cell.strip() for cell in line.strip().strip("|").split("|"))


def _goes_on(before: str, line: str) -> bool:
    """Whether a line continues a wrapped one: a long line without an ending, followed by lower case."""
    return len(before) >= 50 and before[-1:] not in ".!?:;" and bool(re.match(r"\s*[a-z(]", line)) and "\t" not in line


def is_rule(line: str) -> bool:
    """A line that only separates: rules, the frame of a table."""
    return bool(_RULE.match(line)) or bool(_FENCE.match(line))


def is_farewell(line: str) -> bool:
    """Whether it ends a letter: only a name comes after it."""
    return bool(_FAREWELL.match(line))


def is_junk(line: str) -> bool:
    """Whether it belongs to a letter, or to the page round a recipe, and not to the recipe."""
    return bool(_MAIL.match(line) or _WROTE.match(line) or _GREETING.match(line) or _PAGE.search(line))


def begins_junk(line: str) -> bool:
    """A heading below which a page lists food values, not the recipe."""
    return bool(_NUTRITION.match(line))


def bare(line: str) -> tuple[str, bool]:
    """A line without its bullet, and whether it had a step number."""
    # many spaces say no more than two, and would cost far more
    text = _BULLET.sub("", _BLANKS.sub("  ", line), count=1)
    if _AMOUNT_LIST.match(text):
        return _MARKS.sub("", _AMOUNT_LIST.sub("", text)).strip(" "), False
    number = _NUMBERED.match(text)
    if number is None and (number := _BARE.match(text)) and not is_order(text[number.end() :]):
        number = None
    return _MARKS.sub("", text[number.end() :] if number else text).strip(" "), bool(number)
