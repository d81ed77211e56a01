"""Views that more than one page has."""

import pytest

from tinbook.loading import Loaded
from tinbook.models import Step, read_model
from tinbook.pages.base import shared
from tinbook.plans.base.worked import Worked
from tinbook.tins import read_tin

N = "\u00a0"


@pytest.mark.parametrize(
    ("low", "high", "text"),
    [
        (25, 25, f"25{N}min"),
        (55, 59, f"55–59{N}min"),
        (55, 65, f"55{N}min to 1{N}h{N}5{N}min"),
        (130, 130, f"2{N}h{N}10{N}min"),
        (0, 0, f"0{N}min"),
    ],
)
def test_minutes(low: float, high: float, text: str) -> None:
    assert shared.minutes(low, high) == text


def test_counts() -> None:
    assert shared.plural(1, "tin") == f"1{N}tin"
    assert shared.plural(2, "batch", "batches") == f"2{N}batches"
    assert shared.plural(0.5, "batch", "batches") == f"½{N}batch"
    count, tin = read_tin("2 round 15 cm x 7.5 cm")
    assert shared.tin_count(count, tin) == f"2 × round 15{N}cm{N}×{N}7.5{N}cm (6{N}in)"
    assert shared.tin_name(count, tin) == f"2 × round 15{N}cm"
    assert shared.tin_name(*read_tin("24 standard cupcakes")) == "24 standard cupcakes"


def test_file_names_are_plain_and_no_two_alike() -> None:
    words = [
        "glacé cherries",
        "CMC (E466)",
        "a b",
        "a-b",
        "index",
        "con",
        "!!!",
        "抹茶",
        "x" * 300,
        "../../etc",
        "Butter",
    ]
    names = shared.file_names(words)
    assert list(names) == words
    assert names["glacé cherries"] == "glace-cherries"
    assert (names["a b"], names["a-b"]) == ("a-b", "a-b-2")
    assert (names["index"], names["con"], names["!!!"]) == ("index-card", "con-card", "card")
    assert names["抹茶"] == "抹茶"
    for name in names.values():
        assert 0 < len(name) < 80
        assert all(sign.isalnum() or sign == "-" for sign in name)
    assert len(set(names.values())) == len(words)


def test_a_fold_names_its_sources_once(demo: Loaded) -> None:
    key = next(iter(demo.facts.sources))
    view = shared.worked_view((Worked("a = b", ("b is 2",), (key,)), Worked("c = d", (), (key,))), demo.facts)
    assert view.formulas == ("a = b", "c = d") and view.inputs == ("b is 2",)
    assert [source.title for source in view.sources] == [demo.facts.sources[key].title]


def test_a_step_has_times_windows_and_a_short_name() -> None:
    step, flaws = read_model(
        Step,
        {"do": "Roll two <sugarpaste> ropes, then twist.", "waiting": "12 h", "stands": "12 h", "keeps": "3 days"},
        "a step",
    )
    assert step is not None, flaws
    view = shared.step_view(step, (shared.PieceView(text="x"),))
    assert view.name == "Roll two sugarpaste ropes"
    assert [time.words for time in view.times] == [f"wait 12{N}h"] and view.times[0].minutes == 720
    assert view.windows == (f"must be left to stand for at least 12{N}h", f"keeps for 3{N}days")


@pytest.mark.parametrize(
    ("do", "name"),
    [
        ("Heat the oven to 170 °C, shelf in the middle.", "Heat the oven"),
        ("Fold in the <flour>, then the milk.", "Fold in the flour"),
        ("Cream. Scrape down.", "Cream"),
        ("Leave it in the tin for an hour.", "Leave it"),
        ("To", "To"),
    ],
)
def test_a_timers_name_ends_in_a_word_that_can_end_it(do: str, name: str) -> None:
    assert shared.short_name(do) == name
