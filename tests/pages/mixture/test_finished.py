"""What a cake takes to be finished, on its own page."""

from collections.abc import Callable


def test_every_tin_has_its_row_and_the_house_its_mixtures(filled: Callable[[str], str]) -> None:
    text = filled("mixtures/creamed-butter-sponge/tables")
    part = text[text.index("## Finish ") + 3 :].split("\n## ")[0]
    for words in ("Height", "Pilot's buttercream", "Sugarpaste", "Drum", "Finger", "How this was worked out"):
        assert words in part or words.replace("'", "&#39;") in part, words
    assert part.count("<tr") > 30


def test_what_a_cake_leaves_out_has_no_column(filled: Callable[[str], str]) -> None:
    text = filled("mixtures/rich-fruit-cake/tables")
    part = text[text.index("## Finish ") + 3 :].split("\n## ")[0]
    assert "Ready-made marzipan" in part and "buttercream" not in part
