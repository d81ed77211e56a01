"""Where a value was written: line, column and width."""

from hypothesis import given
from hypothesis import strategies as st
from tests.every import every

from tinbook.problems import Place
from tinbook.source import Document, read_yaml

TEXT = """\
name: Crème sponge   # a comment
tins: 2 round 15 cm x 7.5 cm
bake: {oven: '170 °C', time: "55-65 min", done: springs back}
mix:
  - 250 g butter, soft
  - take: 20 g cocoa powder
    note: sifted
  - - nested
    - list
about: |
  One spoon.
  Two spoons, one spoon.
folded: one
  two three
  two
quoted: "first
  second"
escaped: "half\\u00bd and half"
keeps:
empty group: {}
empty list: []
méthode: {tin: x}
"""


def read(raw: bytes) -> Document:
    document, problems = read_yaml(raw, "recipes/a.yaml")
    assert not problems
    assert document is not None
    return document


DOCUMENT = read(TEXT.encode())


def spot(place: Place) -> tuple[int, int, str]:
    """Line, column, and the text the carets would stand under."""
    assert place.file == "recipes/a.yaml"
    return place.line, place.column, place.text[place.column - 1 : place.column - 1 + place.width]


@every(
    ("path", "expected"),
    [
        (("name",), (1, 7, "Crème sponge")),
        (("tins",), (2, 7, "2 round 15 cm x 7.5 cm")),
        (("bake", "oven"), (3, 14, "'170 °C'")),
        (("bake", "time"), (3, 30, '"55-65 min"')),
        (("bake", "done"), (3, 49, "springs back")),
        (("mix", 0), (5, 5, "250 g butter, soft")),
        (("mix", 1, "take"), (6, 11, "20 g cocoa powder")),
        (("mix", 1, "note"), (7, 11, "sifted")),
        (("mix", 2, 1), (9, 7, "list")),
        (("about",), (10, 8, "|")),
        (("folded",), (13, 9, "one")),
        (("quoted",), (16, 9, '"first')),
        (("escaped",), (18, 10, '"half\\u00bd and half"')),
        (("méthode", "tin"), (22, 16, "x")),
    ],
)
def test_a_value(path: tuple[str | int, ...], expected: tuple[int, int, str]) -> None:
    assert spot(DOCUMENT.place(path)) == expected


@every(
    ("path", "expected"),
    [
        (("name",), (1, 1, "name")),
        (("bake", "time"), (3, 24, "time")),
        (("mix", 1, "note"), (7, 5, "note")),
        (("méthode",), (22, 1, "méthode")),
        (("méthode", "tin"), (22, 11, "tin")),
        (("mix", 0), (5, 5, "250 g butter, soft")),
    ],
)
def test_a_name(path: tuple[str | int, ...], expected: tuple[int, int, str]) -> None:
    assert spot(DOCUMENT.place(path, key=True)) == expected


@every(
    ("path", "expected"),
    [
        (("bake",), (3, 1, "bake")),
        (("mix",), (4, 1, "mix")),
        (("mix", 1), (6, 5, "take")),
        (("mix", 2), (8, 5, "-")),
        (("keeps",), (19, 1, "keeps")),
        (("empty group",), (20, 1, "empty group")),
        (("empty list",), (21, 1, "empty list")),
        ((), (1, 1, "name")),
    ],
)
def test_a_list_or_group_is_pointed_at_by_its_name(path: tuple[str | int, ...], expected: tuple[int, int, str]) -> None:
    assert spot(DOCUMENT.place(path)) == expected


@every(
    ("path", "expected"),
    [
        (("kind",), (1, 1, "name")),
        (("bake", "oven temperature"), (3, 1, "bake")),
        (("bake", "oven", "fan"), (3, 14, "'170 °C'")),
        (("mix", 7), (4, 1, "mix")),
        (("mix", 1, "part"), (6, 5, "take")),
        (("mix", "take"), (4, 1, "mix")),
        (("keeps", "cold"), (19, 1, "keeps")),
    ],
)
def test_what_is_missing_has_the_place_of_the_last_thing_there(
    path: tuple[str | int, ...], expected: tuple[int, int, str]
) -> None:
    assert spot(DOCUMENT.place(path)) == expected
    assert spot(DOCUMENT.place(path, key=True))[0] == expected[0]
    assert spot(DOCUMENT.place(path, start=0, end=2))[0] == expected[0]


@every(
    ("path", "piece", "expected"),
    [
        (("name",), "sponge", (1, 13, "sponge")),
        (("tins",), "round", (2, 9, "round")),
        (("tins",), "7.5 cm", (2, 23, "7.5 cm")),
        (("bake", "oven"), "°C", (3, 19, "°C")),
        (("bake", "time"), "65", (3, 34, "65")),
        (("mix", 0), "soft", (5, 19, "soft")),
        (("about",), "Two", (12, 3, "Two")),
        (("folded",), "three", (14, 7, "three")),
        (("quoted",), "second", (17, 3, "second")),
        (("escaped",), "and", (18, 22, "and")),
    ],
)
def test_a_piece_of_a_value(path: tuple[str | int, ...], piece: str, expected: tuple[int, int, str]) -> None:
    value = DOCUMENT.data
    for step in path:
        value = value[step]
    start = value.index(piece)
    assert spot(DOCUMENT.place(path, start=start, end=start + len(piece))) == expected


def test_the_second_of_the_same_words_is_found_by_counting() -> None:
    about = DOCUMENT.data["about"]
    first, second = about.index("spoon"), about.rindex("spoon")
    assert spot(DOCUMENT.place(("about",), start=first, end=first + 5)) == (11, 7, "spoon")
    assert spot(DOCUMENT.place(("about",), start=second, end=second + 5)) == (12, 19, "spoon")
    folded = DOCUMENT.data["folded"]
    assert spot(DOCUMENT.place(("folded",), start=folded.rindex("two"), end=len(folded))) == (15, 3, "two")


def test_a_piece_that_is_not_there_letter_for_letter_gets_the_whole_value() -> None:
    half = DOCUMENT.data["escaped"].index("½")
    assert spot(DOCUMENT.place(("escaped",), start=half, end=half + 1)) == (18, 10, '"half\\u00bd and half"')


@every(("start", "end"), [(0, 99), (5, 99), (99, 120), (3, 1), (-4, 2), (7, None)])
def test_a_piece_beyond_the_value_stays_on_its_line(start: int, end: int | None) -> None:
    place = DOCUMENT.place(("tins",), start=start, end=end)
    assert place.line == 2
    assert place.text == "tins: 2 round 15 cm x 7.5 cm"
    assert 7 <= place.column <= len(place.text) + 1
    assert place.column - 1 + place.width <= len(place.text) + 1


@every("bom", [b"", b"\xef\xbb\xbf"], ids=["plain", "byte order mark"])
@every("end", [b"\n", b"\r\n", b"\r"], ids=["lf", "crlf", "cr"])
def test_places_do_not_depend_on_the_editor(bom: bytes, end: bytes) -> None:
    document = read(bom + TEXT.encode().replace(b"\n", end))
    paths: list[tuple[str | int, ...]] = [
        ("name",),
        ("bake", "done"),
        ("mix", 1, "note"),
        ("about",),
        ("nope",),
    ]
    for path in paths:
        assert document.place(path) == DOCUMENT.place(path)
        assert document.place(path, key=True) == DOCUMENT.place(path, key=True)
    assert document.place(("about",), start=11, end=14) == DOCUMENT.place(("about",), start=11, end=14)
    assert document.data == DOCUMENT.data


WORDS = st.text("abcé½蛋🎂 ", min_size=1, max_size=8).map(str.strip).filter(bool)


@given(st.dictionaries(WORDS, WORDS, min_size=1, max_size=8), st.data())
def test_every_piece_of_a_plain_value_is_where_it_says(tree: dict[str, str], data: st.DataObject) -> None:
    document = read("".join(f"{key}:   {value}\n" for key, value in tree.items()).encode())
    for line, (key, value) in enumerate(tree.items(), 1):
        start = data.draw(st.integers(0, len(value) - 1))
        end = data.draw(st.integers(start + 1, len(value)))
        assert spot(document.place((key,))) == (line, len(key) + 5, value)
        assert spot(document.place((key,), key=True)) == (line, 1, key)
        assert spot(document.place((key,), start=start, end=end)) == (
            line,
            len(key) + 5 + start,
            value[start:end],
        )


@every(
    ("path", "expected"),
    [
        (("tiers", 0, "height"), (1, 35, "12 cm")),
        (("tiers", 0), (1, 1, "tiers")),
        (("tiers", 1, "height"), (1, 1, "tiers")),
    ],
)
def test_one_group_stands_for_a_list_of_it(path: tuple[str | int, ...], expected: tuple[int, int, str]) -> None:
    assert spot(read(b"tiers: {tier: dome 20 cm, height: 12 cm}\n").place(path)) == expected
