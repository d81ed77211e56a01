"""Words of a text as Find looks for them."""

from tests.every import every

from tinbook.pages.finding.words import ALIKE, LIGHT_WORDS, STOP_WORDS, plain_words, tokens


@every(
    ("text", "words"),
    [
        ("Pilot's buttercream", ["pilots", "buttercream"]),
        ("glacé cherries", ["glace", "cherries"]),
        ("Round 20\u00a0cm", ["round", "20cm"]),
        ("8 inch, 9-inch, 10 inches", ["8in", "9in", "10in"]),
        ('an 8" tin', ["an", "8in", "tin"]),
        ("2 lb loaf", ["2lb", "loaf"]),
        ("ready-to-roll", ["ready", "to", "roll"]),
        ("CMC, E466", ["cmc", "e466"]),
        ("", []),
    ],
)
def test_words(text: str, words: list[str]) -> None:
    assert tokens(text) == words


def test_amounts_are_no_words_of_running_text() -> None:
    assert plain_words("Beat 300 g butter for 5 min, E415 too") == ["beat", "butter", "for", "min", "e415", "too"]


def test_words_that_say_nothing_and_words_that_mean_the_same_are_as_they_are_looked_for() -> None:
    for line in (STOP_WORDS, LIGHT_WORDS, *ALIKE):
        assert tokens(line) == line.split(" ")
    assert {"in", "a", "how", "the"} <= set(STOP_WORDS.split())
    assert not set(STOP_WORDS.split()) & set(LIGHT_WORDS.split())
