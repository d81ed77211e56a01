"""Reading a number as a baker writes it: 250, 0.5, 1,250, 1/2, 1 1/2, ½, 1½."""

import re
from math import isfinite

from tinbook.units.misread import Misread

_VULGAR = {
    "½": 1 / 2,
    "⅓": 1 / 3,
    "⅔": 2 / 3,
    "¼": 1 / 4,
    "¾": 3 / 4,
    "⅕": 1 / 5,
    "⅖": 2 / 5,
    "⅗": 3 / 5,
    "⅘": 4 / 5,
    "⅙": 1 / 6,
    "⅚": 5 / 6,
    "⅛": 1 / 8,
    "⅜": 3 / 8,
    "⅝": 5 / 8,
    "⅞": 7 / 8,
}
_ONE = "".join(_VULGAR)
# What a number can start with.
DIGITS = f"0-9{_ONE}"
_NUMBER = re.compile(
    rf"""
      (?P<whole>[0-9]+) \s* (?P<part>[{_ONE}])                        # 1½
    | (?P<vulgar>[{_ONE}])                                            # ½
    | (?:(?P<and>[0-9]+)\s+)? (?P<top>[0-9]+)\s*[/⁄]\s*(?P<low>[0-9]+)   # 1 1/2, 1/2
    | (?P<plain>[1-9][0-9]{{0,2}}(?:,[0-9]{{3}})+(?:\.[0-9]+)?|[0-9]+(?:\.[0-9]+)?)
    """,
    re.VERBOSE,
)
# What would make a number run on into something that is not one.
_RUNS_ON = re.compile(rf"[,.]?[0-9]|[/⁄{_ONE}]")
_COMMAS = re.compile(r"([0-9]+),([0-9]+)(?:,[0-9]+)*(?:\.[0-9]+)?")
_SIGN = re.compile(rf"[-−–+]\s*(?=[.{DIGITS}])")
_NO_NUMBER = re.compile(r"(?i)(?:nan|inf(?:inity)?)\b")
_LETTERS = re.compile(
    r"""
      (?=[0-9]*[OoIl]) (?=[OIl]*[0-9]) [0-9OoIl]*[0-9] (?![0-9A-Za-z])    # 3O0, l00, O5
    | [0-9][0-9Oo]*[Oo] (?!\w|\s*[CFcf]\b)                               # 34O, but not the degrees of 160o C
    """,
    re.VERBOSE,
)
"""A number in which a letter stands for the digit it looks like."""
_FIGURES = str.maketrans("OoIl", "0011")
_BARE_POINT = re.compile(r"\.[0-9]+")
_WORD = re.compile(r"[^\s,;]+")
_NUMBER_WORDS = {
    "a": "1",
    "an": "1",
    "one": "1",
    "two": "2",
    "three": "3",
    "four": "4",
    "five": "5",
    "six": "6",
} | {
    "half": "1/2",
    "quarter": "1/4",
    "dozen": "12",
}


def read_number(text: str, at: int, such_as: str = "250 g") -> tuple[float, int]:
    """The number that starts at `at`, and where it ends.

    Raises Misread if there is none, with `such_as` as the example, or if it is malformed.
    """
    if letters := _LETTERS.match(text, at):
        said = letters[0]
        hint = f"write {said.translate(_FIGURES)}, in figures only"
        raise Misread(f'"{said}" has a letter where a figure should be', hint, at, letters.end())
    number = _NUMBER.match(text, at)
    if number is None:
        raise _no_number(text, at, such_as)
    end = number.end()
    if (commas := _COMMAS.match(text, at)) and commas.end() > end:
        raise _comma(commas)
    if run := _RUNS_ON.match(text, end):
        raise Misread(f'"{text[at : run.end()]}" is not a number', "write 250, 0.5, 1/2, 1 1/2 or 1½", at, run.end())
    value = _value(number)
    if not isfinite(value):
        raise Misread(f'"{number[0][:20]}" is too long to be an amount', "check the number", at, end)
    return value, end


def _value(number: re.Match[str]) -> float:
    if part := number["part"]:
        return float(number["whole"]) + _VULGAR[part]
    if vulgar := number["vulgar"]:
        return _VULGAR[vulgar]
    if top := number["top"]:
        over, under = float(top), float(number["low"])
        if not under:
            raise Misread(f'"{number[0]}" divides by zero', "write 1/2", *number.span())
        if number["and"] and over >= under:
            raise Misread(f'"{number[0]}" has a fraction of one or more', "write 1 1/2, or 3/2", *number.span())
        return float(number["and"] or 0) + over / under
    return float(number["plain"].replace(",", ""))


def _comma(commas: re.Match[str]) -> Misread:
    """The error for a comma that does not separate thousands: most likely a decimal comma."""
    decimal = commas.end() == commas.end(2) and (len(commas[2]) < 3 or commas[1] == "0")
    hint = f"write {commas[1]}.{commas[2]}" if decimal else "write the number without commas"
    return Misread(f'"{commas[0]}" has a comma in it', hint, *commas.span())


def _no_number(text: str, at: int, such_as: str) -> Misread:
    word = _WORD.match(text, at)
    end = word.end() if word else len(text)
    said = text[at:end]
    if not text.strip():
        return Misread("nothing is written here", f"write an amount, such as {such_as}", 0, len(text))
    if sign := _SIGN.match(text, at):
        return Misread(f'"{said}" has a sign in front of it', f"write {text[sign.end() : end]}", at, end)
    if _BARE_POINT.match(text, at):
        return Misread(f'"{said}" starts with a decimal point', f"write 0{said}", at, end)
    if _NO_NUMBER.match(text, at):
        return Misread(f'"{said}" is not an amount', f"write a number, such as {such_as}", at, end)
    if digits := _NUMBER_WORDS.get(said.casefold()):
        return Misread(f'the number is written as a word, "{said}"', f"write {digits}", at, end)
    return Misread(
        f'no number before "{said}"' if said else "no number",
        f"write the amount first, such as {such_as}",
        at,
        end,
    )
