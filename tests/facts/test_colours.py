"""Food colours against Regulation (EC) 1333/2008, Annex V, as in tests/data/colours.csv."""

from __future__ import annotations

PHRASE = "may have an adverse effect on activity and attention in children"


def test_the_six_that_carry_a_warning(facts, table):
    listed = {row["e_number"] for row in table("colours") if row["warning_required"] == "yes"}
    assert len(listed) == 6
    assert {key for key, each in facts.colours.items() if each.warning} == listed
    assert {each.warning for each in facts.colours.values() if each.warning} == {PHRASE}


def test_names_are_those_printed(facts, table):
    for row in table("colours"):
        ours = facts.colours[row["e_number"]]
        assert any(name.lower() in row["name"].lower() for name in (ours.name, *ours.also_called)), row
