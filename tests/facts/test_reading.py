"""What read_facts takes and what it refuses, and the laws every row of the data keeps."""

from __future__ import annotations

import pytest

from tinbook.facts import read_facts

NO_RANGE = {
    "wide tin raising 10 in", "small share of a product", "water left out up to", "x-height", "x-height on a small pack",
    "small pack", "polyols with a warning", "letters in the USA",
}  # fmt: skip
"""What one publication or a law gives as one figure."""
PSEUDO = {"common practice", "from memory", "our own judgement"}


def test_every_source_resolves_and_none_is_unused(facts):
    used = {name for _, _, row in facts.cited() for name in (row.source, *row.also)}
    assert used == set(facts.sources)


def test_only_pseudo_sources_are_without_publication(facts):
    assert {key for key, source in facts.sources.items() if source.kind != "published"} == PSEUDO
    for key in PSEUDO:
        assert facts.sources[key].address == ""
        assert facts.sources[key].kind == key
    unplaced = {key for key, source in facts.sources.items() if not source.address} - PSEUDO
    assert unplaced == {"egg parts", "alcohol table", "chocolate cake chart"}


def test_addresses_are_addresses(facts):
    for source in facts.sources.values():
        for address in source.address.split("; ") if source.address else []:
            assert " " not in address and "." in address and "//" not in address


def test_every_number_lies_in_its_range(facts):
    for fact in (*facts.numbers.values(), *facts.densities.values()):
        if fact.key in NO_RANGE:
            assert (fact.low, fact.high) == (None, None)
            continue
        assert fact.low < fact.high
        assert fact.low <= fact.value <= fact.high
        assert fact.unit


def test_a_published_row_rests_on_a_publication(facts):
    for section, key, row in facts.cited():
        source = facts.sources[row.source]
        if row.kind in ("published", "derived"):
            assert source.kind == "published", (section, key)


def test_reading_from_text_or_numbers_is_the_same(trees, facts):
    trees["numbers"]["pinch"]["value"] = 0.0625
    trees["eggs"]["UK large"]["typical_g"] = 68
    assert read_facts(trees) == facts


def test_facts_cannot_be_changed(facts):
    with pytest.raises(TypeError):
        facts.numbers["pinch"] = facts.numbers["rim limit"]
    with pytest.raises(ValueError, match="frozen"):
        facts.numbers["pinch"].value = 1.0


def put(*path):
    """A change to the trees: the last of `path` is put at the address before it; None takes away."""
    *way, last, value = path

    def spoil(trees):
        for key in way:
            trees = trees[key]
        if value is None:
            del trees[last]
        else:
            trees[last] = value

    return spoil


@pytest.mark.parametrize(
    ("spoil", "words"),
    [
        (put("eggs", None), "data files should be"),
        (put("spoons", {}), "data files should be"),
        (put("marks", []), "should be a mapping"),
        (put("numbers", "pinch", "value", "0.5"), '"pinch": 0.5 is outside 0.0625 to 0.125'),
        (put("numbers", "pinch", "value", "a little"), "valid number"),
        (put("numbers", "pinch", "value", "nan"), "finite number"),
        (put("numbers", "pinch", "unit", None), "unit"),
        (put("numbers", "pinch", "valeu", "1"), "Extra inputs"),
        (put("numbers", "pinch", "source", "hearsay"), 'numbers, "pinch": there is no source "hearsay"'),
        (
            put("densities", "butter", "also", ["hearsay"]),
            'densities, "butter": there is no source "hearsay"',
        ),
        (put("numbers", "pinch", "kind", "published"), 'a row published cannot rest on "common practice"'),
        (put("numbers", "pinch", "kind", "true"), "kind"),
        (
            put("densities", "butter", "kind", "our own judgement"),
            "our own judgement needs no source but its own name",
        ),
        (put("kinds", "creamed", "rise", "low", "1.6"), "not in order"),
        (put("kinds", "creamed", "group", "bread"), "group"),
        (put("kinds", "mud", "gravity", "source", "hearsay"), 'kinds, "mud": there is no source "hearsay"'),
        (put("eggs", "UK large", "typical_g", "73"), '"UK large": 73.0 g is outside its class'),
        (put("marks", "4", "fahrenheit", "360"), "gas mark 4: 182.2 °C is outside its range"),
        (put("cautions", "honey", "when", "often"), "when"),
        (put("parts", "fat", "weights", ["milk"]), "a weight is in two parts"),
        (put("parts", "fat", "weights", ["buttr"]), 'parts: "buttr" is not known'),
        (put("balance", "sugar to flour, oil", "kinds", ["oily"]), 'balance: "oily" is not known'),
        (put("balance", "sugar to flour, oil", "over", ["bran"]), 'balance: "bran" is not known'),
        (put("balance", "sugar to flour, oil", "other form", "a friend"), 'balance: "a friend" is not known'),
        (put("balance", "sugar to flour, oil", "low", "1.4"), "not in order"),
    ],
)
def test_a_fault_in_the_data_raises(trees, spoil, words):
    spoil(trees)
    with pytest.raises(ValueError, match=words.replace("(", r"\(")):
        read_facts(trees)
