"""Numbers in words; what only looks like one stays as it is."""

from __future__ import annotations

from tests.every import every

from tinbook.notes.numbers import in_figures


@every(
    ("words", "figures"),
    [
        ("half a teaspoon salt", "1/2 teaspoon salt"),
        ("Half a pound of butter", "1/2 pound of butter"),
        ("three quarters of a pound of flour", "3/4 pound of flour"),
        ("a quarter of a teaspoon", "1/4 teaspoon"),
        ("two and a half cups", "2 1/2 cups"),
        ("Five eggs", "5 eggs"),
        ("a dozen eggs", "12 eggs"),
        ("half a dozen eggs", "6 eggs"),
        ("forty-five minutes", "45 minutes"),
        ("twenty minutes", "20 minutes"),
        ("someone with a oneness", "someone with a oneness"),
        ("cut in half", "cut in half"),
        ("the good one", "the good one"),
        ("eggs, one at a time", "eggs, one at a time"),
    ],
)
def test_in_figures(words: str, figures: str) -> None:
    assert in_figures(words) == figures
