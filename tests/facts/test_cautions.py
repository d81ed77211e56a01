"""Cautions against the list in tests/data/cautions.csv, which names its sources row by row."""

from __future__ import annotations

from tests.every import every

from tinbook import facts as room

# Number in the list: our rows, and words or figures without which the caution would say something else.
LISTED = {
    "K1": (
        ("raw flour", "raw batter"),
        ("E. coli", "salmonella", "Under-fives", "not an accepted safeguard"),
    ),
    "K2": (("raw egg", "raw batter"), ("pasteurised", "duck, goose or quail", "UK", "USA", "public sales")),
    "K3": (("glitter",), ("Non-toxic does not mean", "E numbers", "food contact", "come off")),
    "K4": (
        ("support", "wires", "dowels"),
        ("food-grade", "Wire never", "count it out", "leave a note", "before serving"),
    ),
    "K5": (("fresh flowers",), ("grown to be eaten", "Florists", "Never push a stem")),
    "K6": (
        ("unsafe plants",),
        ("lily of the valley", "oleander", "hydrangea", "gypsophila", "yew", "disagree"),
    ),
    "K7": (("edible flowers",), ("rose petals", "viola", "nasturtium", "elderflower")),
    "K8": (("honey",), ("twelve months", "baked or not")),
    "K9": (("whole nuts",), ("under five", "grind")),
    "K10": (
        ("choking",),
        ("Hard sugar balls", "Quarter grapes", "lengthways", "Never put glass marbles", "popcorn"),
    ),
    "K11": (("candles",), ("holders", "wax", "foil")),
    "K12": (("alcohol",), ("40%", "25%", "5%")),
    "K13": (("cold chain",), ("8 °C", "5 °C", "four hours", "41 °F", "local food safety officer")),
    "K14": (("colours",), ("may have an adverse effect on activity and attention in children", "USA")),
    "K15": (("not food",), ("Polystyrene", "pins", "foil", "cutting the cake")),
    "K16": (("strong flavouring",), ("apricot kernels", "Tonka", "nutmeg", "Essential oils", "oppy seed")),
}


OURS = {"carrying"}
"""What the list has not."""


def test_every_caution_of_the_list_is_given(table):
    assert [row["id"] for row in table("cautions")] == list(LISTED)


def test_no_caution_is_off_the_list(facts):
    assert {key for keys, _ in LISTED.values() for key in keys} | OURS == set(facts.cautions)


@every("number", LISTED)
def test_the_caution_says_what_it_must(facts, number):
    keys, words = LISTED[number]
    advice = " ".join(facts.cautions[key].advice for key in keys)
    for word in words:
        assert word in advice, (number, word)


def test_the_six_colours_are_named(facts):
    """Regulation (EC) 1333/2008 Annex V."""
    for number in ("E102", "E104", "E110", "E122", "E124", "E129"):
        assert number in facts.cautions["colours"].advice


def test_a_plant_is_not_called_both_safe_and_unsafe(facts, table):
    listed = {row["id"]: row["trigger"] + row["advice_in_short"] for row in table("cautions")}
    unsafe = facts.cautions["unsafe plants"].advice.split(". A plant")[0].lower()
    safe = facts.cautions["edible flowers"].advice
    for plant in (
        "rose petals",
        "viola",
        "calendula",
        "nasturtium",
        "cornflower",
        "borage",
        "lavender",
        "primrose",
    ):
        assert plant in listed["K7"] and plant in safe
        assert plant not in unsafe
    named = listed["K6"].split(") ", 1)[-1].removeprefix("unsafe plants (never touch cake)").replace("/", ", ")
    missing = [plant for plant in named.split(", ") if plant.split()[0] not in unsafe and plant != "narcissus"]
    assert missing == ["delphinium"], "narcissus is the daffodil, delphinium the larkspur"


def test_the_sort_of_knowledge_is_marked(facts, table):
    """What the list has only from memory is not printed as published."""
    kinds = {row["id"]: row["kind"] for row in table("cautions")}
    for number, (keys, _) in LISTED.items():
        if kinds[number] == "from memory":
            assert all(facts.cautions[key].kind == "from memory" for key in keys), number


def test_traits_are_told_to_who_writes_cards(facts):
    told = " ".join((room.__doc__ or "").split()).split("raw flour,")[-1].removesuffix(".")
    assert facts.traits == {"raw flour"} | {trait.strip() for trait in told.split(",")}


def test_raw_egg_and_flour_are_met_before_and_without_the_oven(facts):
    for trait in ("raw flour", "raw egg"):
        met = {caution.when for caution in facts.cautions.values() if trait in caution.traits}
        assert met == {"baked", "uncooked"}


def test_what_the_oven_does_not_mend_is_always_told(facts):
    for key in ("honey", "alcohol", "whole nuts", "support", "colours"):
        assert facts.cautions[key].when == "always"


def test_advice_is_short_and_plain(facts):
    for caution in facts.cautions.values():
        assert len(caution.advice) <= 520, caution.key
        assert caution.advice.endswith(".")
        assert "Lion" not in caution.advice
