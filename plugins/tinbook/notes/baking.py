"""What a note says about its bake: the temperature and time in sentences about baking, never in those about chilling or
resting."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from tinbook.notes.heats import WORDS, OvenHeat, agreed, heats
from tinbook.notes.times import NotedTime, plain, times

LONGEST = 2000
"""Characters in a sentence: a longer one is not about a bake."""

_BAKE = re.compile(
    r"\b(?:re-?bake|bak(?:e[sd]?|ing)(?!\s+(?:powder|soda|paper|parchment|sheets?"
    r"|trays?|tins?|dish(?:es)?|beans|chocolate))"
    r"|(?:cook|put|place|pop|return)(?:ed)?\b[^.;]{0,40}\boven)\b",
    re.IGNORECASE,
)
_OVEN = re.compile(r"\b(?:oven|pre-?heat(?:ed)?|gas(?: mark)? ?[0-9¼½]|bak(?:e[sd]?|ing))\b", re.IGNORECASE)
_OTHER = re.compile(
    r"\b(?:rest|cool(?:ed|ing)?(?!\s+oven)|chill(?:ed)?|refrigerate|freeze|stand"
    r"|leave|let|soak|prove|set aside|beat(?:en)?|whisk(?:ed)?|cream(?:ed)?"
    r"|boil(?:ed)?|simmer|mix(?:ed)?|steep|infuse|wait|remove|then\b[^.,;]{0,30}\b(?:tin|rack))\b",
    re.IGNORECASE,
)
_SENTENCES = re.compile(r"(?<=[.!?;])\s+(?=[^a-z\s])|\n")
_COOK = re.compile(
    r"^\W*(?:cook(?:ing)?|bak(?:e|ing))(?:\s+time)?\s*(?:[:=–-]\s*(?=\S)|(?=[0-9]+\s*(?:mins?"
    r"|minutes?|hrs?|hours?)\s*\w*\s*$))",
    re.IGNORECASE,
)
_TOTAL = re.compile(
    r"^\W*(?:prep(?:aration)?|total|ready in|chill(?:ing)?|cool(?:ing)?|rest(?:ing)?)(?:\s+time)?\s*(?:[:=–-]|[0-9])",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class NotedBake:
    """The temperature and time in the book's spelling, "" for what is left open, each with the reason why."""

    oven: str
    time: str
    oven_doubt: str
    time_doubt: str


def baking_of(lines: Sequence[str], fahrenheit: bool, named: str = "") -> NotedBake:
    """The bake in a note's lines. `named`: the time its data names, used if the words give none."""
    sentences = [
        part
        for line in lines
        for part in _SENTENCES.split(plain(line))
        if part and part.strip() and len(part) <= LONGEST
    ]
    oven, oven_doubt = _oven(sentences, fahrenheit)
    time, time_doubt = _time(sentences, fahrenheit, named)
    return NotedBake(oven, time, oven_doubt, time_doubt)


def _oven(sentences: Sequence[str], fahrenheit: bool) -> tuple[str, str]:
    found: list[OvenHeat] = []
    for sentence in sentences:
        if _OVEN.search(sentence):
            found += heats(sentence, fahrenheit)
    if not found:
        # a recipe card has no verbs: a line of its own with a temperature and a time
        found = [
            heat
            for part in sentences
            if any(times(part)) and not _OTHER.search(part)
            for heat in heats(part, fahrenheit)
        ]
    spoken = next((words[0] for part in sentences if (words := WORDS.search(part))), "")
    if spoken and not found:
        return "", f'"{spoken}" is not a temperature to set a dial to'
    return agreed(found)


def _time(sentences: Sequence[str], fahrenheit: bool, named: str) -> tuple[str, str]:
    baked: list[NotedTime] = []
    vague = ""
    for sentence in sentences:
        if _COOK.match(sentence) or _TOTAL.match(sentence):
            continue
        if bake := _BAKE.search(sentence):
            baked += _of_the_bake(sentence, bake)
            vague = vague or (sentence.strip() if not any(times(sentence)) else "")
    if not baked:
        cards = [
            part
            for part in sentences
            if any(heats(part, fahrenheit)) and not _OTHER.search(part) and not _TOTAL.match(part)
        ]
        baked = [time for part in cards for time in times(part)]
    if not baked:
        baked = [time for part in sentences if (cook := _COOK.match(part)) for time in times(part[cook.end() :])]
    if not baked:
        return (named, "") if named else ("", "no baking time is given")
    if not all(time.whole for time in baked):
        return "", "it says more about the time than a single figure: " + ", ".join(time.written for time in baked)
    spans = {(time.low, time.high) for time in baked}
    if len(spans) > 1:
        return "", "it gives more than one time: " + ", ".join(dict.fromkeys(time.written for time in baked))
    return baked[0].text, ""


def _of_the_bake(sentence: str, bake: re.Match[str]) -> list[NotedTime]:
    """The times in a sentence that bakes: those before any words for resting or cooling."""
    found = []
    for time in times(sentence):
        between = sentence[bake.end() : time.start] if time.start >= bake.end() else ""
        before = sentence[: time.start] if time.start < bake.start() else ""
        if (time.start >= bake.end() and not _OTHER.search(between)) or (
            before and not _OTHER.search(before) and not _OTHER.search(sentence[time.end : bake.start()])
        ):
            found.append(time)
    return found
