"""The files of a note: what is certain is plain, the rest is marked, and any text becomes a file that reads."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st
from tests.every import many

from tinbook.loading import Loaded
from tinbook.notes import Drafts, SaidBeside, read_note, written
from tinbook.source import read_yaml


def draft(demo: Loaded, text: str, kind: str | None = "creamed") -> Drafts:
    return written(
        read_note(text, demo.book, demo.facts),
        SaidBeside(name="Our cake", slug="our-cake", kind=kind),
        demo.book,
        demo.facts,
    )


def test_a_certain_note_has_no_mark(demo: Loaded) -> None:
    text = "250 g butter\n5 eggs\nMethod\nBeat.\nBake 45-50 min at 170 °C in a round 20 cm tin.\n"
    made = draft(demo, text)
    assert made.main.text == (
        "name: Our cake\nkind: creamed\ntins: round 20 cm\nmix:\n  - 250 g butter\n  - 5 eggs\n"
        "bake: {oven: 170 °C, time: 45-50 min}\n"
        "method:\n  - Beat.\n  - Bake 45-50 min at 170 °C in a round 20 cm tin.\n"
    )
    assert made.main.doubts == () and made.lines == 2


def test_what_is_open_is_a_comment_with_what_was_read(demo: Loaded) -> None:
    made = draft(demo, "250 g butter\n3 knobs lard\nBake for two hours or a little over at 150 °C.\n")
    assert "  # unsure: 3 knobs lard (" in made.main.text
    assert "# unsure: bake: {oven: 150 °C, time: " in made.main.text and "\nbake:" not in made.main.text


def test_unknown_names_are_gathered(demo: Loaded) -> None:
    made = draft(demo, "250 g butter\n100 g samphire\n50 g samphire\n")
    assert made.unknown == ("samphire",) and "100 g samphire  # unsure: no card for it" in made.main.text


LINES = st.lists(
    st.one_of(
        st.text(max_size=40),
        st.sampled_from(
            ["For the icing", "Method", "225g/8oz butter", "1. Beat: it", "a\tb\t2", "Serves 12", "| a | 2 g |", "STEP 1", "> x",
             "gas 4, 40 mins, 7 in sq tin", "1 cup # x", "- [ ] 'x", "2 x 8in tins", "½", "Keeps: {", "Ingredients.—2 eggs, a"]
        ),
    ),
    max_size=14,
)  # fmt: skip


@many(300)
@given(LINES)
def test_any_note_becomes_files_that_read(demo: Loaded, lines: list[str]) -> None:
    for made in draft(demo, "\n".join(lines), None).every:
        document, problems = read_yaml(made.text.encode("utf-8", "replace"), "x.yaml")
        assert document is not None and problems == (), (problems, made.text)
        assert set(document.data) >= {"name", "kind", "mix"}
