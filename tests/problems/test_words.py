"""Did you mean?"""

from tests.every import every

from tinbook.problems import nearest

SHAPES = ["round", "square", "rectangle", "loaf", "ring", "cups"]


@every(
    ("word", "known", "found"),
    [
        ("diametre", ["diameter", "depth", "shape"], "diameter"),
        ("rond", SHAPES, "round"),
        ("ROUND", SHAPES, "round"),
        (" square ", SHAPES, "square"),
        ("sqaure", SHAPES, "square"),
        ("rectangel", SHAPES, "rectangle"),
        ("caster suger", ["Caster sugar", "Icing sugar"], "Caster sugar"),
        ("teapot", SHAPES, None),
        ("", SHAPES, None),
        ("round", [], None),
    ],
)
def test_nearest(word: str, known: list[str], found: str | None) -> None:
    assert nearest(word, known) == found


def test_any_iterable_will_do() -> None:
    assert nearest("rign", (shape for shape in SHAPES)) == "ring"


def test_the_same_word_twice_is_spelled_as_it_came_first() -> None:
    assert nearest("egg", ["Egg", "egg"]) == "Egg"
