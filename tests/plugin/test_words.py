"""What the scripts say to a reader stands in the scripts of words alone: no other script has a sentence or a label of its own."""

from __future__ import annotations

import re
from pathlib import Path

from tests.every import every

PACKAGE = Path(__file__).parents[2] / "plugins" / "tinbook"
SCRIPTS = sorted(
    path
    for path in PACKAGE.rglob("*.js")
    if path.name not in ("words.js", "late_words.js", "page_words.js", "finding_words.js", "minisearch.js")
)

LITERAL = re.compile(r"""//[^\n]*|/\*.*?\*/|"(?P<plain>(?:[^"\\\n]|\\.)*)"|`(?P<filled>(?:[^`\\]|\\.)*)`""", re.DOTALL)
GAP = "¤"
CLASS = re.compile(r"(?<![\w-])(?:tb|md)-[\w-]+")
LETTERS = re.compile(r"[A-Za-z]{2}")
CAPITAL = re.compile(r"(?<![\w-])[A-Z][a-z]+(?![\w-])")
BESIDE = re.compile(rf"(?:[A-Za-z]{{2,}}|\d|{GAP})[.,;:!?]? (?=([A-Za-z]{{2,}}|{GAP}))")
# Selectors, questions to the screen, and what a developer reads.
NOT_SAID = re.compile(r"\b(?:find|all|closest|matches|querySelector|querySelectorAll|matchMedia|Error)\($")
# Whatever stands here is said, be it one small word.
SAID = re.compile(r"\b(?:textContent =|placeholder:|title:|alt:|announce\()$|label\"?:$")
# What the store of the device calls what it keeps; a key of the keyboard, a header.
KEYS = ("tinbook ", "ticks ", "bench ", "notes ", "sum ")
NAMES = {"Escape", "Content-Type", "${key} cake"}


def said(script: str) -> list[str]:
    """The literals of a script that hold words for a reader: two words, a word beside what is filled in, a capital."""
    found = []
    for token in LITERAL.finditer(script):
        if token.lastgroup is None:
            continue
        literal = token[token.lastgroup]
        before = script[: token.start()].rstrip()[-40:]
        if literal in NAMES or literal.startswith(KEYS) or NOT_SAID.search(before):
            continue
        text = CLASS.sub("", re.sub(r"\$\{[^}]*\}", GAP, literal))
        words = CAPITAL.search(text) or any(LETTERS.search(pair[0] + pair[1]) for pair in BESIDE.finditer(text))
        if words or (SAID.search(before) and LETTERS.search(text)):
            found.append(literal)
    return found


@every("path", SCRIPTS, ids=lambda path: path.name)
def test_a_script_says_nothing_in_words_of_its_own(path: Path) -> None:
    assert said(path.read_text("utf-8")) == []


@every(
    "bad",
    [
        'make("p", {}, "nothing is left");',
        'button.textContent = "Copy";',
        'button.textContent = "copy";',
        'make("ul", { "aria-label": "tins" });',
        'make("input", { placeholder: "words" });',
        'announce("copied");',
        "say(`${count} eggs`);",
        'say("1 batch");',
        "say(`for ${cake}`);",
        "say(`serves ${serves}, ${over} over`);",
        'const WORDS = { none: "None" };',
        'say(count ? "one, two" : "");',
        'find(".tb-say").append("no network");',
    ],
)
def test_words_in_a_script_are_seen(bad: str) -> None:
    assert said(bad)


@every(
    "plain",
    [
        '// Said in a comment: `no` matter\n/* "Nor here" */',
        'import { find } from "./dom.js";',
        'find("thead th");',
        'all(".tb-lines, .tb-steps")',
        'make("div", { class: "tb-worked tb-other" });',
        "make(`div`, { class: `tb-plan${kind} tb-round` });",
        "read(`ticks ${slug}`, []);",
        'if (event.key === "Escape") close();',
        "make(`svg`, { viewBox: `0 0 ${width} ${height}`, style: `width:${width}rem` });",
        'announce("");',
        "say(`${cake}, ${tin}: ${factor}.`);",
    ],
)
def test_other_literals_are_let_through(plain: str) -> None:
    assert said(plain) == []
