"""Bytes to plain data: what is read, and that nothing whatever raises."""

import time
from typing import Any

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st
from tests.every import every, many

from tinbook.problems import spell
from tinbook.source import read_yaml

NOTHING = ("", "~", "null", "Null", "NULL")


def data_of(text: str | bytes) -> Any:
    raw = text.encode() if isinstance(text, str) else text
    document, problems = read_yaml(raw, "f.yaml")
    assert not problems
    assert document is not None
    return document.data


def test_scalars_stay_text() -> None:
    text = "time: 1:30\ncooked: no\nsince: 2026-11-25\nweight: 0.50\noctal: 010\nsign: +5\n12: yes\n"
    assert data_of(text) == {
        "time": "1:30",
        "cooked": "no",
        "since": "2026-11-25",
        "weight": "0.50",
        "octal": "010",
        "sign": "+5",
        "12": "yes",
    }


@every("written", ["", "~", "null", "Null", "NULL", "# later"])
def test_nothing_written_is_none(written: str) -> None:
    assert data_of(f"a: {written}\nb: [{written.removeprefix('# later') or '~'}, x]\n") == {
        "a": None,
        "b": [None, "x"],
    }


@pytest.mark.parametrize("quoted", ['"null"', "'null'", '"~"'])
def test_quoted_nothing_is_text(quoted: str) -> None:
    assert data_of(f"a: {quoted}\nb: ''\n") == {"a": quoted[1:-1], "b": ""}


def test_a_name_like_nothing_is_a_name() -> None:
    assert data_of("null: x\n~: y\n") == {"null": "x", "~": "y"}


def test_lists_groups_and_long_texts() -> None:
    text = (
        "--- # one document, with its marker\n"
        "mix:\n- 250 g butter\n-   take: 20 g cocoa powder\n    note: sifted\n"
        "bake: {oven: 170 °C, time: 55-65 min}\ntags: [everyday, 'carves well']\n"
        "about: |\n  One.\n\n  Two.\nfolded: >-\n  one\n  line\nplain: one\n  line\n"
        "...\n"
    )
    assert data_of(text) == {
        "mix": ["250 g butter", {"take": "20 g cocoa powder", "note": "sifted"}],
        "bake": {"oven": "170 °C", "time": "55-65 min"},
        "tags": ["everyday", "carves well"],
        "about": "One.\n\nTwo.\n",
        "folded": "one line",
        "plain": "one line",
    }


@every("bom", [b"", b"\xef\xbb\xbf"], ids=["plain", "byte order mark"])
@every("end", ["\n", "\r\n", "\r"], ids=["lf", "crlf", "cr"])
def test_marks_and_line_ends_of_any_editor(bom: bytes, end: str) -> None:
    raw = bom + end.join(["name: Crème", "about: |", "  One.", "  Two.", "bake: {oven: 170 °C}", ""]).encode()
    assert data_of(raw) == {"name": "Crème", "about": "One.\nTwo.\n", "bake": {"oven": "170 °C"}}


def test_of_a_name_written_twice_the_first_counts() -> None:
    document, problems = read_yaml(b"a: 1\nb: 2\na: 3\n", "f.yaml")
    assert document is not None
    assert document.data == {"a": "1", "b": "2"}
    assert [(problem.code, problem.place.line) for problem in problems] == [("duplicate", 3)]


def test_twenty_deep_is_read() -> None:
    assert data_of("a: " + "[" * 19 + "]" * 19 + "\n")
    assert read_yaml(b"a: " + b"[" * 20 + b"]" * 20, "f.yaml")[1][0].code == "depth"


def test_an_alias_is_refused_before_it_grows() -> None:
    """Nine lines that would be a thousand million texts."""
    text = "a0: &a0 [x, x, x, x, x, x, x, x, x, x]\n" + "".join(
        f"a{n}: &a{n} [{', '.join([f'*a{n - 1}'] * 10)}]\n" for n in range(1, 9)
    )
    document, problems = read_yaml(text.encode(), "f.yaml")
    assert document is None
    assert {problem.code for problem in problems} == {"alias", "anchor"}


@every(
    "piece",
    [
        "[",
        "{",
        "- ",
        "? ",
        "a: ",
        "{a: ",
        "- - a\n",
        "*a ",
        "&a ",
        "!",
        "'",
        '"',
        "\\",
        "#",
        "\n",
        "|\n",
        "%",
        "é",
    ],
)
def test_a_megabyte_of_anything_is_soon_over(piece: str) -> None:
    raw = (piece * 1_000_000).encode()[:1_000_000]
    start = time.process_time()
    read_yaml(raw, "f.yaml")
    read_yaml(b"a: " + raw[:-3], "f.yaml")
    assert time.process_time() - start < 20


TOKENS = [
    *"{}[],:-?&*!|>'\"%@`#~ab \t\n",
    ": ",
    "- ",
    "  ",
    "\n  ",
    "\n- ",
    "\n",
    "a: ",
    "b:",
    "<<: ",
    "---\n",
    "...\n",
]
TOKENS += [
    "*a",
    "&a ",
    "!!str ",
    "!a!b ",
    "\\x",
    "\\0",
    "é",
    "½",
    "\ufeff",
    "\r\n",
    "\x85",
    "\u2028",
    "\x00",
    "\xa0",
    "| ",
]
YAMLISH = st.lists(st.sampled_from(TOKENS), max_size=40).map("".join)
# Lines of a kind, so that a fair share of the files can be read.
VALUES = [
    "",
    "x",
    "6 eggs",
    "é ½",
    "'q: r'",
    '"a\\tb"',
    "[x, y]",
    "[x, [y]]",
    "{a: x, b: [y]}",
    "# no",
    "~",
    "null",
    "|",
    ">-",
    "-1",
]
LINES = st.builds(
    "{}{}{}{}\n".format,
    st.sampled_from(["", "", "", "  ", "  ", "    "]),
    st.sampled_from(["", "", "", "- "]),
    st.sampled_from(["a: ", "b: ", "c: ", "'d': ", "é: ", "a:", ""]),
    st.sampled_from(VALUES),
)


def bare(value: Any) -> Any:
    """A tree with None for nothing, whether or not it was in quotes: BaseLoader cannot tell "~" from ~."""
    if isinstance(value, dict):
        return {key: bare(item) for key, item in value.items()}
    if isinstance(value, list):
        return [bare(item) for item in value]
    return None if value in NOTHING else value


def check(raw: bytes) -> None:
    document, problems = read_yaml(raw, "f.yaml")
    assert document is not None or problems
    for problem in problems:
        place = problem.place
        assert place.line >= 1 and place.width >= 1
        assert 1 <= place.column <= len(place.text) + 1
        assert "\n" not in place.text
        assert problem.message and problem.hint
        assert spell(problem).startswith(f"f.yaml:{place.line}:{place.column}: ")
    if document is not None and not problems:
        assert isinstance(document.data, dict)
        read = yaml.load(raw.decode("utf-8-sig"), Loader=yaml.CBaseLoader)
        assert bare(document.data) == bare(read)
        walk(document, document.data, ())


def walk(document: Any, data: Any, path: tuple[str | int, ...]) -> None:
    """Every place in a document that was read stands in its text."""
    place = document.place(path)
    assert 1 <= place.column <= len(place.text) + 1
    if isinstance(data, str):
        for start in range(min(len(data), 5)):
            piece = document.place(path, start=start, end=start + 1)
            assert 1 <= piece.column <= len(piece.text) + 1
    children = data.items() if isinstance(data, dict) else enumerate(data) if isinstance(data, list) else ()
    for step, child in children:
        walk(document, child, (*path, step))


@many(2000)
@given(st.text(max_size=80))
def test_no_text_raises(text: str) -> None:
    check(text.encode("utf-8", "surrogatepass"))


@many(2000)
@given(st.binary(max_size=80))
def test_no_bytes_raise(raw: bytes) -> None:
    check(raw)


@many(2000)
@given(YAMLISH)
def test_nothing_like_yaml_raises(text: str) -> None:
    check(text.encode())


@many(2000)
@given(st.lists(LINES, max_size=6).map("".join))
def test_lines_of_yaml_are_read_as_another_loader_reads_them(text: str) -> None:
    check(text.encode())


@many(500)
@given(YAMLISH, YAMLISH)
def test_nothing_like_yaml_raises_inside_a_file(before: str, after: str) -> None:
    check(f"name: Sponge\nmix:\n  - {before}\n  - 6 eggs\nbake: {after}\n".encode())


# Any text but the control characters that no file may hold.
CONTROL = "".join(map(chr, [*range(9), *range(11, 32), *range(127, 133), *range(134, 160)]))
TEXTS = st.text(st.characters(codec="utf-8", exclude_characters=CONTROL), max_size=20)
NAMES = TEXTS.filter(lambda text: text == text.strip() != "" and "\n" not in text and text != "<<")
TREES = st.recursive(
    st.none() | TEXTS,
    lambda children: st.lists(children, max_size=4) | st.dictionaries(NAMES, children, max_size=4),
    max_leaves=12,
)


@many(500)
@given(
    st.dictionaries(NAMES, TREES, min_size=1, max_size=4),
    st.booleans(),
    st.sampled_from([None, True, False]),
    st.sampled_from(["\n", "\r\n"]),
)
def test_what_is_written_comes_back(tree: dict[str, Any], as_is: bool, flow: bool | None, end: str) -> None:
    text = yaml.safe_dump(tree, allow_unicode=as_is, default_flow_style=flow, line_break=end, width=1000)
    document, problems = read_yaml(text.encode(), "f.yaml")
    if problems:
        # Only what is refused in any file may be refused here: odd characters written as they are, and depth.
        assert {problem.code for problem in problems} <= {"control", "depth"}
        return
    assert document is not None
    assert document.data == tree


NUMBERS = st.integers() | st.booleans() | st.floats(allow_nan=False)


@given(st.dictionaries(st.sampled_from(["a", "b", "c"]), NUMBERS | st.lists(NUMBERS), min_size=1))
def test_numbers_come_back_as_they_were_spelled(tree: dict[str, Any]) -> None:
    text = yaml.safe_dump(tree)
    assert data_of(text) == yaml.load(text, Loader=yaml.BaseLoader)
