"""Files to print for every cake of a technique."""

from __future__ import annotations

from tinbook.loading import Loaded
from tinbook.pages.base.page import Desk
from tinbook.pages.technique.cake_templates import template_files, template_pages, template_paths
from tinbook.plans.techniques.parts import cakes_for, decoration
from tinbook.plans.true_size.papers import PAPERS
from tinbook.tins import Tin


def test_a_file_for_every_cake_and_paper(demo: Loaded) -> None:
    desk = Desk(demo.book, demo.facts, {})
    made = list(template_files(desk))
    wanted = {
        (slug, cake.name, paper)
        for slug, technique in demo.book.techniques.items()
        if technique.parts or technique.repeats
        for cake in cakes_for(technique)
        for paper in ("A4", "Letter")
    }
    assert len(made) == len(wanted) == len({each.path for each in made}) > 100
    for slug, cake, paper in wanted:
        path = f"true-size/{slug}-{cake.replace(' ', '-')}-{paper.lower()}.pdf"
        (file,) = (each for each in made if each.path == path)
        assert (file.made.cake.name, file.paper.name) == (cake, paper)
        assert file.title == f"{demo.book.techniques[slug].name}, templates for {cake}"


def test_pages_are_of_the_paper_and_signed(demo: Loaded) -> None:
    desk = Desk(demo.book, demo.facts, {})
    technique = demo.book.techniques["lighthouse-for-the-front"]
    made = decoration(technique, Tin(shape="round", sizes_mm=(254.0,)), demo.book, demo.facts)
    for paper in PAPERS.values():
        pages = template_pages(made, paper, desk)
        for number, page in enumerate(pages, 1):
            assert sorted((page.width_mm, page.height_mm)) == sorted((paper.width_mm, paper.height_mm))
            said = {each.text for each in page.words}
            assert {demo.book.house.name, f"Page {number} of {len(pages)}"} <= said


def test_no_two_files_lie_at_one_place() -> None:
    """Names that differ in signs only."""
    squares = [(0.0, 0.0, side, 0.0, side, side, 0.0, side, 0.0, 0.0) for side in (100.0, 200.0)]
    names = ("Harbour 20", "harbour-20")
    cakes = tuple(
        Tin(shape="outline", sizes_mm=square, called=name) for square, name in zip(squares, names, strict=True)
    )
    assert {cake.name for cake in cakes} == set(names)
    paths = [path for each in template_paths("gull", cakes).values() for _, path in each]
    assert len(set(paths)) == 4
