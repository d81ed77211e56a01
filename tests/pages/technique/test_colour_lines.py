"""Colours of a decoration in lines."""

from __future__ import annotations

from dataclasses import replace

from tinbook.loading import Loaded
from tinbook.pages.technique.colour_lines import LABEL, colour_line, law_lines, minded, mixed
from tinbook.plans.techniques.colours import Colouring, ColourNeed
from tinbook.plans.techniques.pastes import paste_called


def red(demo: Loaded) -> Colouring:
    colour = Colouring.called("lamp red", demo.book, demo.facts)
    assert colour is not None
    return colour


def need(demo: Loaded, colour: Colouring | None, mass_g: float = 250.0) -> ColourNeed:
    return ColourNeed(paste_called("sugarpaste", demo.book, demo.facts), colour, mass_g)


def test_pots_go_by_the_paste(demo: Loaded) -> None:
    """6 g and 0.25 g to 250 g, by its recipe for 100 g."""
    line = colour_line(need(demo, red(demo)))
    assert [pot.said.split()[:2] for pot in line.pots] == [["6", "g"], ["0.25", "g"]]
    unweighed = replace(red(demo), pots=tuple(replace(pot, per_100_g=None) for pot in red(demo).pots))
    assert all(pot.said.endswith(" for 100 g") for pot in colour_line(need(demo, unweighed)).pots)


def test_paste_as_it_is(demo: Loaded) -> None:
    line = colour_line(need(demo, None))
    assert (line.name, line.total, line.swatch, line.pots, line.warning) == ("Uncoloured", "250", "", (), "")
    assert mixed([line]) == ((("Uncoloured, 250 g"), "sugarpaste."),)


def test_the_only_paste_is_named_once_where_it_is_told_to_have_it_ready(demo: Loaded) -> None:
    one = colour_line(need(demo, red(demo)))
    assert mixed([one], ["sugarpaste"])[0][1].startswith("6 g ")
    assert mixed([one])[0][1].startswith("sugarpaste; 6 g ")
    # of two pastes each colour names its own
    two = [one, replace(one, paste="marzipan")]
    assert [text.split(";")[0] for _, text in mixed(two, ["sugarpaste", "marzipan"])] == ["sugarpaste", "marzipan"]
    # what the law wants stands beside the colour
    assert one.warning and one.warning in mixed([one], ["sugarpaste"])[0][1]


def test_what_becomes_of_a_colour(demo: Loaded) -> None:
    plain = replace(red(demo), deepens=False, fades=False, browns=False)
    assert minded(plain) == ""
    assert minded(replace(plain, fades=True, browns=True)) == "fades in light and browns when baked"
    assert minded(replace(plain, additives=None)) == "additives unknown: read the pot"


def test_an_additive_of_two_colours_is_told_once(demo: Loaded) -> None:
    rose = replace(red(demo), name="rose")
    (words,) = law_lines([need(demo, red(demo)), need(demo, rose), need(demo, None)])
    assert words.startswith("Lamp red and rose contains E129 (allura red): ") and words.endswith(LABEL)
