"""Pasted lines as the text of a mixture's file: always YAML our reader reads, never a traceback."""

from hypothesis import given
from hypothesis import strategies as st
from tests.conftest import demo_book
from tests.every import every, many

from tinbook.cli.drafting import NoteWanted, draft_mixture
from tinbook.source import read_yaml

LOADED = demo_book()


def draft(text: str, kind: str | None = None, tins: str | None = None) -> str:
    return draft_mixture(NoteWanted(name="Our cake", kind=kind, tins=tins), text, LOADED.book, LOADED.facts).main.text


@every(
    ("line", "written"),
    [
        ("250 g self-raising flour", "  - 250 g self-raising flour"),
        ("5 large eggs", "  - 5 large eggs"),
        ("½ tsp salt", "  - ½ tsp salt"),
        ("* 1 1/2 tbsp milk, warm", "  - 1 1/2 tbsp milk, warm"),
        ("1. 250 g butter", "  - 250 g butter"),
        ("2 tsp vanilla extract: the good one", "  - 2 tsp vanilla extract, the good one"),
    ],
)
def test_a_line_of_the_mix(line: str, written: str) -> None:
    assert any(each.startswith(written) for each in draft(line).splitlines())


def test_what_is_missing_is_asked_for() -> None:
    told = draft("250 g butter")
    assert "# unsure: tins:" in told and "# unsure: bake:" in told and "kind: creamed  # unsure" in told


def test_what_is_made_by_weight_has_no_tins() -> None:
    told = draft("250 g butter", kind="buttercream")
    assert "kind: buttercream\nmakes: 250 g  # unsure: " in told and "bake" not in told


def test_the_longest_time_is_the_bake() -> None:
    assert "bake: {oven: 170 °C, time: 45-50 min}" in draft("250 g butter\nBeat 5 min. Bake 45-50 min at 170 °C.")


NEAR = st.lists(
    st.one_of(
        st.text(max_size=60),
        st.sampled_from(
            ["250 g butter", "Method", "- 5 eggs", "½ tsp: x", "# no", "1. {a: b}", "'", "| >", "12 %", "\t", "&a *a"]
        ),
    ),
    max_size=12,
)


@many(150)
@given(NEAR)
def test_any_text_becomes_a_file_that_reads(lines: list[str]) -> None:
    text = draft("\n".join(lines))
    document, problems = read_yaml(text.encode(), "x.yaml")
    assert document is not None and problems == (), (problems, text)
    assert set(document.data) >= {"name", "kind", "mix"}


@many(100)
@given(st.text(min_size=1, max_size=30), st.text(max_size=30), st.sampled_from([None, "creamed", "ganache", "x: y"]))
def test_any_name_and_any_tins_too(name: str, tins: str, kind: str | None) -> None:
    made = draft_mixture(
        NoteWanted(name=name, kind=kind, tins=tins or None), "250 g butter", LOADED.book, LOADED.facts
    ).main
    document, problems = read_yaml(made.text.encode(), "x.yaml")
    assert document is not None and problems == (), (problems, made.text)


def test_nothing_of_what_was_pasted_is_lost() -> None:
    pasted = ["Sunday tray", "3 knobs butter", "250 g sugar of the moon", "Beat until pale.", "It keeps three days."]
    told = draft("\n".join(pasted))
    assert all(line in told for line in pasted)
