"""A note sorted: parts, steps, and what is said besides; before a method nothing without an amount is a step or prose."""

from __future__ import annotations

from tinbook.loading import Loaded
from tinbook.notes.reading import Note, read_note, read_parts

ICED = """Tide cake
For the sponge
250 g butter
5 eggs
a bunch of thrift
For the icing:
200 g icing sugar
Method
1. Beat the butter.
2. For the icing, sift the sugar.
Serves 12
Keeps three days.
Sent from my phone
"""


def read(demo: Loaded, text: str) -> Note:
    return read_note(text, demo.book, demo.facts)


def test_each_thing_in_its_place(demo: Loaded) -> None:
    note = read(demo, ICED)
    assert note.title == "Tide cake"
    assert [part.name for part in note.parts[1:]] == ["icing"]
    assert [line.text for line in note.main.mix] == ["250 g butter", "5 eggs", ""]
    assert note.main.mix[2].doubt == "it has no amount"
    assert [line.text for line in note.parts[1].mix] == ["200 g icing sugar"]
    assert note.main.method == [("Beat the butter.", "")]
    assert note.parts[1].method == [("For the icing, sift the sugar.", "")]
    assert note.notes == ["Serves 12"] and note.keeps == ["Keeps three days."]
    assert note.left_out == ["Sent from my phone"]


def test_before_a_method_a_line_without_an_amount_is_never_a_step(demo: Loaded) -> None:
    note = read(demo, "250 g butter\nsome of the good stuff\nwhat the boat gave\n5 eggs\n")
    assert note.main.method == [] and note.about == []
    assert [bool(line.doubt) for line in note.main.mix] == [False, True, True, False]


def test_orders_begin_a_method_where_no_heading_does(demo: Loaded) -> None:
    note = read(demo, "250 g butter\n5 eggs\nBeat them well together.\nBake 40 minutes at 160 °C.\n")
    assert [step for step, _ in note.main.method] == ["Beat them well together.", "Bake 40 minutes at 160 °C."]


def test_an_ingredient_among_the_steps_is_not_certain(demo: Loaded) -> None:
    note = read(demo, "250 g butter\nMethod\nBeat.\n5 eggs\n")
    assert note.main.method[1][1] != ""


def test_what_the_data_says_is_taken_so(demo: Loaded) -> None:
    note = read_parts(
        ["250 g butter", "For the icing:", "200 g icing sugar", "salt"], ["Beat."], ["Ours."], demo.book, demo.facts
    )
    assert [line.text for line in note.parts[1].mix] == ["200 g icing sugar", ""]
    assert note.about == ["Ours."] and note.main.method == [("Beat.", "")]


def test_many_blanks_cost_no_more_than_two(demo: Loaded) -> None:
    note = read(demo, "eggs" + " " * 1500 + "4\n")
    assert [line.text for line in note.main.mix] == ["4 eggs"]


def test_whose_kitchen_can_be_said(demo: Loaded) -> None:
    told = read_note("1 cup caster sugar", demo.book, demo.facts, "US")
    assert told.main.mix[0].text == "1 US cup caster sugar" and read(demo, "1 cup caster sugar").main.mix[0].text == ""


def test_what_a_title_says_in_brackets_is_not_lost(demo: Loaded) -> None:
    note = read(demo, "here is the one I meant:\nCHOCOLATE SPONGE (two 8 in sandwich tins)\n225 g butter\n")
    assert note.title == "CHOCOLATE SPONGE"
    assert note.said == ["CHOCOLATE SPONGE (two 8 in sandwich tins)"]
    icing = read(demo, "Sponge\n225 g butter\nFor the icing (enough for the top)\n100 g icing sugar\n")
    assert icing.left_out == ["For the icing (enough for the top)"]


def test_a_label_names_a_tin(demo: Loaded) -> None:
    note = read(demo, "Plain cake\nTin: 20 cm round, lined\n225 g butter\n")
    assert note.said == ["20 cm round tin"] and note.notes == ["Tin: 20 cm round, lined"]
