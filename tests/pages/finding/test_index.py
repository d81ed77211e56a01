"""The index: what stands where, how often, and what is left out."""

from tinbook.pages.finding.find import FIELDS, Find
from tinbook.pages.finding.index import HEADS, index_of

FINDS = (
    Find(
        kind="mixture", title="Ferry sponge", address="mixtures/ferry", names=("ferry cake",), text=("Butter, butter.",)
    ),
    Find(
        kind="note",
        title="Add 30 g butter in the end.",
        address="mixtures/ferry",
        anchor="notes",
        second="Ferry\nsponge",
    ),
    Find(kind="step", title="Line a tin, step 1", address="techniques/line", tags=("Line a tin",), text=("Cut it.",)),
    Find(kind="tin", title="Round 20 cm", address="tins", names=("20cm", "8in"), tin="round 20 cm", owned=True),
)


def index() -> dict[str, object]:
    return index_of((each, f"{each.address}/") for each in FINDS)


def places(term: str) -> dict[str, dict[int, int]]:
    """Where a term stands, read from the index as the browser reads it: by field, how often in which find."""
    made = index_of((each, "") for each in FINDS)
    found: dict[str, dict[int, int]] = {}
    for field, *steps in made["posts"][made["terms"].split(" ").index(term)]:
        counts, place = found.setdefault(FIELDS[field], {}), 0
        for step in steps:
            place += max(step, 0)
            counts[place] = max(1, -step)
    return found


def test_a_term_knows_its_fields_its_finds_and_how_often() -> None:
    assert places("butter") == {"text": {0: 2}, "title": {1: 1}}
    assert places("ferry") == {"title": {0: 1}, "names": {0: 1}}
    assert places("20cm") == {"title": {3: 1}, "names": {3: 1}}


def test_stop_words_amounts_and_a_steps_borrowed_title_are_left_out() -> None:
    terms = str(index()["terms"]).split(" ")
    assert not {"in", "the", "30g", "30", "1", "step"} & set(terms)
    assert places("line") == {"tags": {2: 1}}
    assert terms == sorted(set(terms))


def test_lengths_count_the_different_words_of_each_field() -> None:
    lengths = index()["lengths"]
    assert isinstance(lengths, list) and len(lengths) == len(FINDS) * len(FIELDS)
    assert lengths[:4] == [2, 2, 0, 1]


def test_a_row_is_told_by_its_places_and_ends_where_it_is_empty() -> None:
    rows = index()["finds"]
    assert isinstance(rows, list)
    assert rows[0] == ["mixture", "Ferry sponge", "mixtures/ferry/"]
    assert rows[1] == ["note", "Add 30 g butter in the end.", "mixtures/ferry/#notes", "Ferry sponge"]
    assert dict(zip(HEADS, rows[3], strict=False))["owned"] == 1
