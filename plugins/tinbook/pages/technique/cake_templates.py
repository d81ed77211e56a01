"""The templates of a technique for each of its cakes: what its page offers and its sheet includes."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from tinbook.pages.base.page import Desk
from tinbook.pages.base.shared import file_names
from tinbook.pages.spelling.sayings import spell
from tinbook.pages.technique.paper import PaperPage
from tinbook.pages.technique.true_size import paper_pages
from tinbook.plans.base.saying import Saying
from tinbook.plans.techniques.parts import Decoration, cakes_for, decorations
from tinbook.plans.true_size.papers import PAPERS, Paper
from tinbook.plans.true_size.parts import has_templates, part_templates
from tinbook.tins import Tin

FOLDER = "true-size"
"""Not `templates`: MkDocs leaves out a folder of that name."""
LABEL_WIDE_MM = 2.25
"""About how wide a letter under a part is, on the safe side."""


@dataclass(frozen=True, kw_only=True)
class TemplateFile:
    """A file to print: its path in the site, its title, and its pages, which are laid out on demand."""

    path: str
    title: str
    made: Decoration
    paper: Paper
    desk: Desk

    @cached_property
    def pages(self) -> tuple[PaperPage, ...]:
        """Its pages."""
        return template_pages(self.made, self.paper, self.desk)


def label_mm(label: Saying) -> float:
    """How wide words under a part are on paper."""
    return len(spell(label)) * LABEL_WIDE_MM


def template_pages(decoration: Decoration, paper: Paper, desk: Desk) -> tuple[PaperPage, ...]:
    """The templates of a decoration's parts on paper, with the house's name."""
    overlap_mm = desk.facts.numbers["overlap of sheets"].value
    return paper_pages(part_templates(decoration, label_mm), paper, overlap_mm, desk.book.house.name)


def template_files(desk: Desk) -> Iterator[TemplateFile]:
    """A file for every technique with parts, every cake of it, every paper."""
    for slug, technique in desk.book.techniques.items():
        if not (technique.parts or technique.repeats):
            continue
        paths = template_paths(slug, cakes_for(technique))
        for decoration in decorations(technique, desk.book, desk.facts):
            for name, path in paths[decoration.cake] if has_templates(decoration) else ():
                title = f"{technique.name}, templates for {decoration.cake.name}"
                yield TemplateFile(path=path, title=title, made=decoration, paper=PAPERS[name], desk=desk)


def template_paths(slug: str, cakes: tuple[Tin, ...]) -> dict[Tin, tuple[tuple[str, str], ...]]:
    """For each cake of a technique, the papers and where their files are."""
    names = file_names([cake.name for cake in cakes])
    return {
        cake: tuple((name, f"{FOLDER}/{slug}-{names[cake.name]}-{name.lower()}.pdf") for name in PAPERS)
        for cake in cakes
    }
