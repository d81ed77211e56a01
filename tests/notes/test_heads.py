"""Headings and labels of a note."""

from __future__ import annotations

from tests.every import every

from tinbook.notes.heads import KEEPS, METHOD, MIX, NOTES, PART, TIMES, head_of, is_main, is_shouted, is_within, part_in


@every(
    ("line", "kind", "name", "rest"),
    [
        ("Method", METHOD, "", ""),
        ("## Directions:", METHOD, "", ""),
        ("What to do", METHOD, "", ""),
        ("STEP 2", METHOD, "", ""),
        ("Method: beat it all.", METHOD, "", "beat it all."),
        ("Method.—Beat the butter.", METHOD, "", "Beat the butter."),
        ("Ingredients (for one tin)", MIX, "", ""),
        ("You will need", MIX, "", ""),
        ("Ingredient\tQty\tUnit\tNote", MIX, "", ""),
        ("Tip: warm the bowl", NOTES, "", "warm the bowl"),
        ("Serves 16", NOTES, "serves", "Serves 16"),
        ("Storage: a week in a tin.", KEEPS, "", "a week in a tin."),
        ("Keeps two weeks.", KEEPS, "", "Keeps two weeks."),
        ("Cook: 1 hr 30", TIMES, "", "Cook: 1 hr 30"),
        ("For the icing", PART, "icing", ""),
        ("FOR THE CHOCOLATE BUTTERCREAM:", PART, "chocolate buttercream", ""),
        ("For the buttercream filling", PART, "buttercream filling", ""),
        ("Sponge ingredients:", PART, "sponge", ""),
        ("Syrup: boil it.", PART, "syrup", "boil it."),
    ],
)
def test_what_a_line_begins(line: str, kind: str, name: str, rest: str) -> None:
    head = head_of(line)
    assert head is not None and (head.kind, head.name, head.rest) == (kind, name, rest)


@every("line", ["250 g butter", "Beat the icing.", "Bake for 20 minutes at 160 °C.", "Butter: 225 g", "Keep warm.", ""])
def test_what_begins_nothing(line: str) -> None:
    assert head_of(line) is None


def test_parts() -> None:
    assert part_in("For the icing, beat the butter.") == "icing" and part_in("Beat the icing.") == ""
    assert is_main("sponge") and is_main("lemon cake") and not is_main("icing")
    assert is_shouted("LIFEBOAT") and not is_shouted("225 G BUTTER") and is_within("Wet ingredients:")
