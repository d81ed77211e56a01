"""Patterns for editors: none refuses what its reader takes, and each refuses the plain slips."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

from hypothesis import given
from hypothesis import strategies as st
from tests.every import every, many

from tinbook.units import (
    WORDS,
    Misread,
    measures_of,
    patterns,
    read_heat,
    read_length,
    read_line,
    read_mass,
    read_percent,
    read_span,
    read_time,
    read_volume,
)

SPOONS = measures_of("US cup", "metric")
READERS: dict[str, tuple[Callable[[str], Any], str]] = {
    "weight": (lambda text: read_mass(text, SPOONS), patterns.whole(patterns.MASS)),
    "volume": (lambda text: read_volume(text, SPOONS), patterns.whole(patterns.VOLUME)),
    "length": (lambda text: read_length(text, SPOONS), patterns.whole(patterns.LENGTH)),
    "time": (lambda text: read_time(text, SPOONS), patterns.whole(patterns.TIME)),
    "span": (lambda text: read_span(text, ("time",), SPOONS), patterns.whole(patterns.TIME_SPAN)),
    "stand": (lambda text: read_span(text, ("time",), SPOONS), patterns.whole(patterns.STANDING)),
    "percent": (read_percent, patterns.whole(patterns.PERCENT)),
    "heat": (read_heat, patterns.HEAT_TEXT),
    "line": (lambda text: read_line(text, SPOONS), patterns.LINE_TEXT),
}
NUMBERS = st.sampled_from(
    ["1", "250", "0.5", "1,250", "1/2", "1 1/2", "½", "1½", "1 ½", "3 ⁄ 4", "12,500.5", "2⅔", "0", ""]
)
UNITS = st.sampled_from([*WORDS, *map(str.upper, WORDS), "fl. oz", "Fluid ounces", "deg C", "degrees F", "level tsp"])
UNITS |= st.sampled_from(["US cup", "uk fl oz", "Australian tbsp", "%", "per cent", "days", "week", "", "butter", "g."])
JOINS = st.sampled_from([" ", "", "-", " – ", " to ", "—", " x ", ", ", "  ", "\u00a0"])
TEXTS = st.lists(st.tuples(NUMBERS, JOINS, UNITS, JOINS), min_size=1, max_size=3).map(
    lambda parts: "".join("".join(part) for part in parts).strip()
)
HEATS = st.sampled_from(
    ["180 °C", "160C fan", "fan 160 °C", "gas mark 1/2", "Mark 4", "350 ºF", "350 degrees Fahrenheit"]
)


@every("what", READERS)
@many(400)
@given(text=TEXTS | HEATS | st.text(max_size=12))
def test_what_a_reader_takes_its_pattern_lets_pass(what: str, text: str) -> None:
    read, pattern = READERS[what]
    try:
        read(text)
    except Misread:
        return
    assert re.search(pattern, text), text


@every(
    ("what", "texts"),
    [
        ("weight", ["250", "g", "", "250 ml", "250 grms", "four g", "250 g butter"]),
        ("volume", ["30 g", "30", "30 mls of it"]),
        ("length", ["20", "20 kg", "x cm"]),
        ("time", ["45", "45 cm", "an hour"]),
        ("span", ["45", "45-50", "45 min to", "to 50 min"]),
        ("stand", ["2 moons", "days"]),
        ("percent", ["25", "%", "25 parts"]),
        ("heat", ["180", "hot", "°C"]),
        ("line", ["butter", "250 g", "250", "", " ", "1/2 tsp", "1 lb"]),
    ],
)
def test_plain_slips_are_refused(what: str, texts: list[str]) -> None:
    for text in texts:
        assert not re.search(READERS[what][1], text), text


def test_a_pattern_reads_alike_in_javascript() -> None:
    """No flags, no names, no possessive or atomic groups: none of them is in ECMA-262 without its `u` or `v` mode."""
    for _, pattern in READERS.values():
        assert not re.search(r"\(\?[^:=!]|\\[AZzpP]|[*+?}]\+", pattern)


def test_a_word_in_any_case() -> None:
    assert re.fullmatch(patterns.either(("cm", "c", '"')), "CM")
    assert patterns.any_case("g.") == r"[gG]\."
