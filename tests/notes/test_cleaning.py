"""Lines as a reader sees them: marks of lists, tables and letters undone, what is no recipe told apart."""

from __future__ import annotations

from tests.every import every

from tinbook.notes.cleaning import bare, begins_junk, is_farewell, is_junk, is_rule, lines_of


@every(
    ("line", "text", "numbered"),
    [
        ("- 250 g butter", "250 g butter", False),
        ("• 5 eggs", "5 eggs", False),
        ("▢ 1 Tbsp vanilla", "1 Tbsp vanilla", False),
        ("✅ 125 g butter", "125 g butter", False),
        ("👉 Beat it all.", "Beat it all.", False),
        ("[x] 2 eggs", "2 eggs", False),
        ("1. Beat", "Beat", True),
        ("2) Bake at 160 °C", "Bake at 160 °C", True),
        ("1. 250 g butter", "250 g butter", False),
        ("1 Preheat the oven", "Preheat the oven", True),
        ("STEP 1 Beat the eggs", "Beat the eggs", True),
        ("**Method**", "Method", False),
        ("½ tsp salt", "½ tsp salt", False),
        ("1.5 kg flour", "1.5 kg flour", False),
        ("2 Eggs", "2 Eggs", False),
    ],
)
def test_a_line_without_its_mark(line: str, text: str, numbered: bool) -> None:
    assert bare(line) == (text, numbered)


def test_quoted_wrapped_and_in_a_table() -> None:
    text = "> > 200 g butter\n| Butter | 250 g |\n|---|---|\nBeat the butter with the sugar until it is pale and very\nlight indeed.\n"
    assert list(lines_of(text)) == [
        "200 g butter",
        "Butter\t250 g",
        "",
        "Beat the butter with the sugar until it is pale and very light indeed.",
    ]


@every(
    "line",
    ["From: the galley", "Subject: Re: cake", "On Tuesday somebody wrote:", "Dear all,", "Kind regards", "Sent from my phone",
     "Skip to recipe", "Print", "★★★★☆ 4.6 from 213 votes", "Follow for more! #baking", "Leave a comment", "https://example.org/x"],
)  # fmt: skip
def test_what_is_no_recipe(line: str) -> None:
    assert is_junk(line)


@every(
    "line",
    ["Share between the tins.", "Watch it closely.", "Follow the method above.", "Take care not to overmix.", "250 g butter",
     "Scale 1.2 kg per tin.", "Save the whites for meringue.", "Love cake", "Bake 20 minutes.", "Rest it well."],
)  # fmt: skip
def test_what_is_of_the_recipe(line: str) -> None:
    assert not is_junk(line)


def test_rules_farewells_and_food_values() -> None:
    assert is_rule("-----") and is_rule("| --- |") and not is_rule("- butter")
    assert is_farewell("With love,") and not is_farewell("Love cake")
    assert begins_junk("Nutrition per serving") and not begins_junk("Notes")
