"""`tinbook sheet`: one technique as a file of its own, to send or to print.

The sheet is built in `pages/technique/sheet`, which says what goes along; its PDF is set in `press`.
"""

from __future__ import annotations

from importlib import resources
from pathlib import Path

import click

from tinbook.cli.command import recipes_of
from tinbook.cli.template import FORCE, PAPER, SVG, cake_of, files_of, free, write_all
from tinbook.loading import Loaded, load_book
from tinbook.loading.files import slug_of
from tinbook.pages.base.page import Desk
from tinbook.pages.technique.sheet import sheet_of
from tinbook.pages.technique.sheet_file import Dress, sheet_page
from tinbook.plans.base.asking import AskError
from tinbook.plans.techniques.kit import MOST_PEOPLE
from tinbook.press import sheet_pdf
from tinbook.problems import nearest
from tinbook.tins import Tin

LARGE_BYTES = 2_000_000
PACKAGE = resources.files("tinbook")


@click.command()
@click.argument("name")
@click.option("--people", type=click.IntRange(1, MOST_PEOPLE), default=1, help="For how many people.")
@click.option("--pdf", is_flag=True, help="Write an A4 PDF as well.")
@click.option(
    "-o", "--output", type=click.Path(path_type=Path), metavar="FILE", help="Where to write it; NAME.html if not given."
)
@click.option("--cake", metavar="TIN", help='The cake to make it for, with its templates, such as "round 20 cm".')
@PAPER
@SVG
@FORCE
@click.pass_obj
def sheet(
    book: Path, name: str, people: int, pdf: bool, output: Path | None,
    cake: str | None, paper: str, svg: bool, force: bool,
) -> None:  # fmt: skip
    """Write the technique NAME as a single file to send or print. Nothing private goes into it.

    For a technique with parts, every cake is there to choose from, with its templates at actual size. With --cake the
    sheet is for that cake alone, and its templates are written as a PDF beside it too.
    """
    loaded = load_book(recipes_of(book), kitchen=False)
    slug = _slug(name, loaded, book)
    if svg and not cake:
        raise click.ClickException('templates are for a cake: say which, such as --cake "round 20 cm"')
    tin: Tin | None = None
    stem = slug
    try:
        if cake:
            tin = _cake(slug, cake, loaded)
            stem = f"{slug}-{slug_of(tin.name)}"
    except AskError as error:
        raise click.ClickException(f"{error.message}: {error.hint}") from None
    page = output or Path(f"{stem}.html")
    if page.suffix.lower() not in (".html", ".htm"):
        raise click.ClickException(f'"{page}" does not end in .html; a PDF is written beside it with --pdf')
    desk = Desk(loaded.book, loaded.facts, loaded.broken)
    names = [page, *([page.with_suffix(".pdf")] if pdf else [])]
    free(names, force)
    made = sheet_of(slug, desk, people, tin, paper)
    files = {page: sheet_page(made, dress()).encode(), **({page.with_suffix(".pdf"): sheet_pdf(made)} if pdf else {})}
    if tin:
        beside = page.with_name(f"{page.stem}-templates.pdf")
        templates = [paper_page for parts in made.cakes for paper_page in parts.templates]
        files |= files_of(f"{made.name}, templates for {tin.name}", templates, beside, svg) if templates else {}
    write_all(files, force)
    if len(files[page]) > LARGE_BYTES:
        click.echo("  That is large for an email: fewer photos make it smaller.")


def _cake(slug: str, cake: str, loaded: Loaded) -> Tin:
    """The cake asked for, for a technique with parts."""
    technique = loaded.book.techniques[slug]
    tin = cake_of(cake, loaded.book, "--cake")
    if not (technique.parts or technique.repeats):
        hint = f"leave --cake out, or try \"tinbook template ring --cake '{tin.name}'\" and the like"
        raise AskError(f'"{technique.name}" has no parts to draw for a cake', hint)
    return tin


def _slug(name: str, loaded: Loaded, book: Path) -> str:
    """The technique that goes by `name`: its file name, its own name or another."""
    techniques = loaded.book.techniques
    names = {
        word.lower(): slug for slug, technique in techniques.items() for word in (*technique.also, technique.name, slug)
    }
    if name.lower() in names:
        return names[name.lower()]
    slug = slug_of(name)
    if f"techniques/{slug}" in loaded.broken:
        raise click.ClickException(f'"{name}" has a mistake in it: run "tinbook check" to see what to fix')
    if slug not in techniques and slug in load_book(recipes_of(book)).book.techniques:
        raise click.ClickException(f'"{name}" is private: no sheet of it leaves the house')
    if not techniques:
        raise click.ClickException('the book has no techniques, or cannot be read: run "tinbook check"')
    close = nearest(name, names)
    cure = f'did you mean "{names[close]}"?' if close else "it has: " + ", ".join(sorted(techniques))
    raise click.ClickException(f'the book has no technique "{name}"; {cure}')


def dress() -> Dress:
    """The book's own styles and typefaces."""
    theme = PACKAGE / "plugin" / "theme" / "assets" / "tinbook"
    return Dress(
        (theme / "tokens.css").read_text("utf-8"),
        (theme / "atkinson.woff2").read_bytes(),
        (theme / "besley.woff2").read_bytes(),
    )
