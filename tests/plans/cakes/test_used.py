"""Everything used: ingredients over all mixtures, colours, tins, tools, and what is not food."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from hypothesis import assume, given
from tests.every import many
from tests.plans.cakes.conftest import Design, Made, cakes

from tinbook.loading import Loaded
from tinbook.plans.cakes.used import by_weight, everything_used, ingredients_used, pastes_used, versions_used
from tinbook.plans.cakes.whole import whole_cake
from tinbook.plans.rules.cakes import cake_flaws

FULL = {"tiers": [{"tier": "25 cm", "mixture": "ginger-sponge"}, "20 cm", {"tier": "15 cm", "on pillars": "6 cm"}],
        "mixture": "creamed-butter-sponge", "height": "10 cm", "colour": "lamp red", "ribbon": "yes",
        "decorations": [{"technique": "lighthouse-for-the-front", "count": "2"}],
        "techniques": ["stack-two-tiers"]}  # fmt: skip


@given(data=cakes())
@many(1000)
def test_no_gram_is_lost_and_none_is_counted_twice(demo: Loaded, design: Design, data: dict[str, Any]) -> None:
    """All ingredients together weigh what all mixtures do."""
    cake = design(data)
    assume(not cake_flaws(cake, demo.book, demo.facts))
    whole = whole_cake("tide-cake", cake, demo.book, demo.facts)
    used = ingredients_used(whole, demo.book, demo.facts)
    mixed_g = sum(version.mass_g for _, version in versions_used(whole, demo.facts))
    assert sum(each.mass_g for each in used) == pytest.approx(mixed_g, rel=1e-6)
    sponges_g = sum(tier.baked.whole.mass_g for tier in whole.every_tier if tier.baked)
    iced_g = sum(total.made_g * total.batch.mass_g / total.batch.makes_g for total in whole.mixtures)
    pasted_g = sum(total.mass_g * total.batch.mass_g / total.batch.makes_g for total in whole.pastes if total.batch)
    assert mixed_g == pytest.approx(sponges_g + iced_g + pasted_g, rel=1e-6)
    eggs = sum(each.pieces for each in used if each.name == "egg")
    assert eggs == whole.totals.eggs
    assert len({each.name for each in used}) == len(used)


THREE_ON_PILLARS = {"tiers": ["25 cm", {"tier": "20 cm", "on pillars": "8 cm"}, "15 cm"], "mixture": "madeira-cake",
                    "height": "10 cm"}  # fmt: skip


def test_printed_weights_sum_what_each_mixture_weighs_out(made: Made, demo: Loaded) -> None:
    whole = made({"tiers": ["20 cm", "15 cm"], "mixture": "creamed-butter-sponge", "cover": "none", "board": "none"})
    flour = next(each for each in ingredients_used(whole, demo.book, demo.facts) if each.name == "self-raising flour")
    shown = 0.0
    for tier in whole.tiers:
        assert tier.baked
        at = [line.name for line in tier.baked.batch.ingredients].index("self-raising flour")
        shown += tier.baked.whole.amounts[at].shown
    assert flour.shown_g == shown and flour.of == ("Creamed butter sponge",)


def test_paste_for_parts_is_what_is_to_be_had_ready(made: Made) -> None:
    whole = made(
        {"tiers": "20 cm", "mixture": "madeira-cake", "decorations": [{"technique": "lighthouse-for-the-front"}]}
    )
    taken = {batch.slug: mass_g for batch, mass_g in pastes_used(whole)}
    assert taken["modelling-paste"] == pytest.approx(200.0)
    covers_g = sum(total.mass_g for total in whole.pastes if total.paste == "sugarpaste")
    assert taken["sugarpaste"] == pytest.approx(covers_g)


def test_what_is_cut_to_length_is_counted(made: Made, demo: Loaded) -> None:
    whole = made(FULL)
    used = everything_used(whole, demo.book, demo.facts)
    told = [(each.what, each.count) for each in used.cut]
    assert told == [
        ("drum", 1), ("ribbon", 1), ("card", 1), ("card", 1), ("separator-plate", 1), ("ribbon", 1), ("ribbon", 1), ("ribbon", 1), ("dowel", 5),
        ("pillar", 5),
    ]  # fmt: skip
    assert [each.hidden for each in used.cut if each.what in ("dowel", "pillar")] == [True, True]
    sticks = {thing.name: thing.amount.shown for thing in used.not_food}
    assert sticks["lolly stick"] == 2


def test_tins_cutters_tools_and_pots(made: Made, demo: Loaded) -> None:
    used = everything_used(made(FULL), demo.book, demo.facts)
    assert {tin.tin.name: (tin.fill, tin.have) for tin in used.tins} == {
        "round 25 cm": (2, 1), "round 20 cm": (2, 2), "round 15 cm": (2, 2),
    }  # fmt: skip
    assert any(cutter.form == "round" and cutter.owned for cutter in used.cutters)
    names = [tool.name for tool in used.tools]
    assert len(set(names)) == len(names) and "fine saw or dowel cutter" in names
    reds = [pot for pot in used.pots if pot.shade == "poppy red"]
    assert len(reds) == 1 and reds[0].mass_g and reds[0].mass_g > 0.0


def test_as_many_of_a_tool_as_are_wanted_at_once(made: Made, demo: Loaded) -> None:
    """Two broad palette knives lift a tier; one of 15 cm will do, though two techniques ask for one each."""
    cake = made(
        {**FULL, "techniques": ["stack-two-tiers", "stack-three-tiers", "cover-a-board", "cover-with-sugarpaste"]}
    )
    found = {tool.name: tool.count for tool in everything_used(cake, demo.book, demo.facts).tools}
    assert (found["palette knife, broad, 25 cm"], found["palette knife, 15 cm"]) == (2, 1)
    asked = [
        tool for each in demo.book.techniques.values() for tool in each.tools if tool.tool == "palette knife, 15 cm"
    ]
    assert len(asked) > 1


def test_a_border_wants_its_nozzle(made: Made, demo: Loaded) -> None:
    piped = everything_used(made({"tiers": "20 cm", "mixture": "madeira-cake"}), demo.book, demo.facts)
    assert [(each.nozzle, each.opening_mm) for each in piped.nozzles] == [("open star", 8.0)]
    plain = everything_used(
        made({"tiers": "20 cm", "mixture": "madeira-cake", "border": "none"}), demo.book, demo.facts
    )
    assert plain.nozzles == ()


def test_a_mixture_by_weight_is_all_weighed(made: Made, demo: Loaded) -> None:
    batch = made({"tiers": "20 cm", "mixture": "madeira-cake"}).tiers[0].baked
    assert batch is not None
    assert all(amount.unit != "" for amount in by_weight(batch.batch, 0.3, demo.facts).amounts)


def test_what_linked_techniques_use_that_is_not_food_is_counted_once(made: Made, demo: Loaded) -> None:
    """By hand. Two gulls take two sticks each, and fixing them is told with the same sticks; two techniques speak of
    the one card under a cake of one tier; dowels, boards and ribbons are those the cake counts itself; the eight sticks
    of levelling, the four of colouring and the one to mark with go back to the bench."""
    gulls = {"technique": "gull-for-the-side", "on": "side", "count": "2"}
    plain = {"tiers": "20 cm", "mixture": "madeira-cake", "decorations": [gulls]}
    used = everything_used(made(plain), demo.book, demo.facts)
    assert [(thing.name, thing.amount.shown) for thing in used.not_food] == [
        ("cocktail stick", 4),
        ("sheet of paper", 1),
    ]
    linked = ["level-and-cut", "colour-paste", "crumb-coat-and-final-coat", "move-to-the-board", "stack-two-tiers"]
    used = everything_used(made({**plain, "techniques": linked}), demo.book, demo.facts)
    told = {thing.name: thing.amount.shown for thing in used.not_food}
    assert told == {"cocktail stick": 4, "sheet of paper": 1, "dowels": 5}
    cards = [(each.count, each.wide_mm, each.long_mm) for each in used.cut if each.what == "card"]
    assert cards == [(1, 200.0, 200.0)]
    back = {technique.partition(" ")[0]: (thing.name, thing.amount.shown) for technique, thing in used.at_work}
    stick = "cocktail stick"
    assert back == {"Level": (stick, 8), "Colour": (stick, 4), "Fix": (stick, 1)}
    pier = everything_used(made({**THREE_ON_PILLARS, "techniques": linked}), demo.book, demo.facts)
    assert pier.not_food == () and [each.what for each in pier.cut].count("pillar") == 1


def test_a_technique_brings_the_cautions_of_those_it_is_done_with(made: Made, demo: Loaded, design: Design) -> None:
    data = {"tiers": "20 cm", "mixture": "madeira-cake", "techniques": ["rope-edge"]}
    book = demo.book
    cakes = {}
    for uses in ((), ("coil-of-rope",), ("move-to-the-board",)):
        rope = book.techniques["rope-edge"].model_copy(update={"uses": uses})
        back = book.techniques["move-to-the-board"].model_copy(update={"uses": ("rope-edge", "fix-a-figure-on-sticks")})
        kitchen = replace(book, techniques={**book.techniques, "rope-edge": rope, "move-to-the-board": back})
        cakes[uses] = whole_cake("tide-cake", design(data), kitchen, demo.facts), kitchen
    keys = {uses: {each.caution.key for each in cake.cautions} for uses, (cake, _) in cakes.items()}
    stick = next(each.key for each in demo.facts.cautions.values() if "support" in each.traits)
    # by way of another one, and round a ring of them
    assert stick not in keys[()] and stick in keys[("move-to-the-board",)]
    used = everything_used(*cakes[("move-to-the-board",)], demo.facts)
    assert "cocktail sticks" in {thing.name for thing in used.not_food}
    assert "card" in {each.what for each in used.cut}


def test_what_techniques_take_besides_is_listed_as_their_pages_say(made: Made, demo: Loaded) -> None:
    """By hand, from their pages: a rope takes its own paste on top of the cover's, each of two gulls takes ten grams
    of icing to fix it and a spoon of water; the buttercream of a page on coats is not for a cake that has ganache."""
    gulls = {"technique": "gull-for-the-side", "on": "side", "count": "2"}
    cake = {"tiers": "20 cm", "mixture": "madeira-cake", "coat": "dark-ganache", "filling": "dark-ganache",
            "cover": "sugarpaste", "decorations": [gulls],
            "techniques": ["crumb-coat-and-final-coat", "cover-with-sugarpaste", "rope-edge"]}  # fmt: skip
    used = everything_used(made(cake), demo.book, demo.facts)
    told = [(each.name, each.amount.shown, each.amount.unit) for each in used.besides]
    paste, modelling, royal = "sugarpaste", "Boatshed modelling paste", "Hoar-frost royal icing"
    assert [each for each in told if each[0] in (paste, modelling, royal)] == [
        (paste, 35.0, "g"), (modelling, 35.0, "g"), (modelling, 5.0, "g"), (royal, 20.0, "g"),
    ]  # fmt: skip
    (water,) = (each for each in used.besides if each.name == "water")
    # one for each gull, two on the coat, one for the rope
    assert (water.amount.shown, water.amount.unit, len(water.of)) == (5.0, "tsp", 3)
    assert not {name for name, _, _ in told} & {"Pilot's buttercream", "Dark-water ganache"}
    plain = everything_used(made({"tiers": "20 cm", "mixture": "madeira-cake"}), demo.book, demo.facts)
    assert plain.besides == () and "card" not in {each.what for each in plain.cut}


def test_a_cutter_that_is_far_out_is_not_offered(made: Made, demo: Loaded) -> None:
    """The bank of shingle is an oval of 150 by 96 mm for a 20 cm cake; the drawer's largest oval is 45 by 64."""
    boat = {"tiers": "20 cm", "mixture": "madeira-cake",
            "decorations": [{"technique": "boat-on-the-shingle", "on": "top"}]}  # fmt: skip
    (oval,) = everything_used(made(boat), demo.book, demo.facts).cutters
    assert (oval.form, oval.wanted_mm, oval.owned) == ("oval", (150.0, 96.0), "")
