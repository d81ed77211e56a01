"""Pages of what cannot be shown."""

from dataclasses import replace

from tinbook.pages.base.page import Desk
from tinbook.pages.lists.broken import broken_pages
from tinbook.problems import Place, Problem, spell


def test_a_page_for_each_file_that_cannot_be_shown(desk: Desk) -> None:
    problem = Problem(
        code="x",
        message="what is this?",
        place=Place(file="mixtures/nut-cake.yaml", line=1, column=1),
        hint="write a mixture",
    )
    pages = list(broken_pages(replace(desk, broken={"mixtures/nut-cake": (problem,), "techniques/pipe": (problem,)})))
    assert [(page.address, page.title, page.section) for page in pages] == [
        ("mixtures/nut-cake", "Nut cake (broken)", ("Mixtures",)),
        ("techniques/pipe", "Pipe (broken)", ("Techniques",)),
    ]
    assert pages[0].view.problems == (spell(problem),)
    assert "what is this?" in pages[0].view.problems[0] and "write a mixture" in pages[0].view.problems[0]


def test_a_sound_book_has_none(desk: Desk) -> None:
    assert not list(broken_pages(desk))
