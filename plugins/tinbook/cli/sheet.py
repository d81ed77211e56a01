"""`tinbook sheet`: a technique or a whole cake as a file of its own, to send or to print.

A sheet is built in `pages`, where its fields say what it includes; its PDF is set in `press`.
"""

from __future__ import annotations

from collections.abc import Mapping
from datetime import datetime
from importlib import resources
from pathlib import Path
from typing import Any

import click

from tinbook.cli.cake_sheet import SizeAsked, cake_sheet
from tinbook.cli.command import MOMENTS, recipes_of
from tinbook.cli.job_sheet import job_files
from tinbook.cli.template import FORCE, PAPER, SVG, cake_of, files_of, free, write_all
from tinbook.loading import Loaded, load_book
from tinbook.loading.files import slug_of
from tinbook.models import CakeDesign, Technique
from tinbook.pages.base.page import Desk
from tinbook.pages.cake.sheet import cake_sheet_page
from tinbook.pages.technique.sheet import sheet_of
from tinbook.pages.technique.sheet_file import Dress, sheet_page
from tinbook.plans.base.asking import AskError
from tinbook.plans.techniques.kit import MOST_PEOPLE
from tinbook.press import cake_sheet_pdf, sheet_pdf
from tinbook.problems import nearest
from tinbook.tins import Tin

LARGE_BYTES = 2_000_000
PACKAGE = resources.files("tinbook")
TECHNIQUE, CAKE = "techniques", "cakes"


@click.command()
@click.argument("name", required=False)
@click.option("--order", metavar="HANDLE", help="The job sheet of an order, for the kitchen alone.")
@click.option(
    "--today",
    type=click.DateTime(MOMENTS),
    metavar="DATE",
    help='With --order: plan as of another day, such as "2026-12-03".',
)
@click.option("--people", type=click.IntRange(1, MOST_PEOPLE), help="For a technique: how many people it is for.")
@click.option("--pdf", is_flag=True, help="Write an A4 PDF as well.")
@click.option(
    "-o", "--output", type=click.Path(path_type=Path), metavar="FILE", help="Where to write it; NAME.html if not given."
)
@click.option(
    "--cake", metavar="TIN", help='For a technique: the cake to make it for, with its templates, such as "round 20 cm".'
)
@click.option(
    "--size", metavar="SIZE", help="For a cake: its size, by name or as +1 or -2; if not given, the size in its file."
)
@click.option(
    "--guests", type=click.IntRange(1, 1000), help="For a cake: the smallest of its sizes that serves this many guests."
)
@PAPER
@SVG
@FORCE
@click.pass_obj
def sheet(
    book: Path,
    /,
    name: str | None,
    order: str | None,
    today: datetime | None,
    pdf: bool,
    output: Path | None,
    force: bool,
    **asked: Any,
) -> None:
    """Write the technique or cake NAME as a single file to send or print. Nothing private goes into it.

    A technique with parts comes with every cake to choose from, with templates at actual size. With --cake the
    sheet is for that cake only, and its templates are also written as a PDF next to it. A whole cake comes in one
    size, with everything to bake, mix, weigh and have ready for it. With --order it is the kitchen's own sheet of an
    order instead: the cake as ordered, what to do on which day, and a card to go with it.
    """
    if order is not None:
        if name is not None or any(asked[key] for key in ("people", "cake", "size", "guests", "svg")):
            raise click.ClickException("an order says itself what it is for: leave out the name and the other options")
        files = job_files(book, order, output, pdf, force, dress(), today or datetime.now())
        write_all(files, force)
        return
    if name is None:
        raise click.ClickException("say which technique or cake, or --order and the handle of an order")
    loaded = load_book(recipes_of(book), kitchen=False)
    room, slug = _named(name, loaded, book)
    _refuse(room, asked)
    try:
        if room == CAKE:
            files = _of_cake(slug, SizeAsked(asked["size"], asked["guests"]), loaded, output, pdf, force)
        else:
            files = _of_technique(slug, loaded, output, pdf, force, asked)
    except AskError as error:
        raise click.ClickException(f"{error.message}: {error.hint}") from None
    write_all(files, force)
    if any(len(content) > LARGE_BYTES for path, content in files.items() if path.suffix == ".html"):
        click.echo("  That is large for an email: fewer photos make it smaller.")


def _of_cake(
    slug: str, size: SizeAsked, loaded: Loaded, output: Path | None, pdf: bool, force: bool
) -> dict[Path, bytes]:
    made, stem = cake_sheet(slug, size, loaded)
    page = _page(output, stem, pdf, force)
    files = {page: cake_sheet_page(made, dress()).encode()}
    return {**files, page.with_suffix(".pdf"): cake_sheet_pdf(made)} if pdf else files


def _of_technique(
    slug: str, loaded: Loaded, output: Path | None, pdf: bool, force: bool, asked: Mapping[str, Any]
) -> dict[Path, bytes]:
    cake, svg = asked["cake"], asked["svg"]
    if svg and not cake:
        raise click.ClickException('templates are for a cake: say which, such as --cake "round 20 cm"')
    tin = _cake(slug, cake, loaded) if cake else None
    page = _page(output, f"{slug}-{slug_of(tin.name)}" if tin else slug, pdf, force)
    desk = Desk(loaded.book, loaded.facts, loaded.broken)
    made = sheet_of(slug, desk, asked["people"] or 1, tin, asked["paper"])
    files = {page: sheet_page(made, dress()).encode(), **({page.with_suffix(".pdf"): sheet_pdf(made)} if pdf else {})}
    if tin:
        beside = page.with_name(f"{page.stem}-templates.pdf")
        templates = [paper_page for parts in made.cakes for paper_page in parts.templates]
        files |= files_of(f"{made.name}, templates for {tin.name}", templates, beside, svg) if templates else {}
    return files


def _page(output: Path | None, stem: str, pdf: bool, force: bool) -> Path:
    """Where to write the page; neither it nor its PDF may exist yet."""
    page = output or Path(f"{stem}.html")
    if page.suffix.lower() not in (".html", ".htm"):
        raise click.ClickException(f'"{page}" does not end in .html; a PDF is written beside it with --pdf')
    free([page, *([page.with_suffix(".pdf")] if pdf else [])], force)
    return page


def _refuse(room: str, asked: Mapping[str, Any]) -> None:
    """ClickException for an option that goes with the other kind of sheet."""
    others = ("size", "guests") if room == TECHNIQUE else ("people", "cake", "svg")
    what = "a whole cake in the book" if room == TECHNIQUE else "a technique"
    for key in others:
        if asked[key]:
            raise click.ClickException(f"--{key} goes with {what}: leave it out")


def _cake(slug: str, cake: str, loaded: Loaded) -> Tin:
    """The cake asked for, for a technique with parts."""
    technique = loaded.book.techniques[slug]
    tin = cake_of(cake, loaded.book, "--cake")
    if not (technique.parts or technique.repeats):
        hint = f"leave --cake out, or try \"tinbook template ring --cake '{tin.name}'\" and the like"
        raise AskError(f'"{technique.name}" has no parts to draw for a cake', hint)
    return tin


def _named(name: str, loaded: Loaded, book: Path) -> tuple[str, str]:
    """The technique or cake called `name`: its file name, with or without its folder, or any of its names."""
    folders: dict[str, Mapping[str, Technique | CakeDesign]]
    folders = {TECHNIQUE: loaded.book.techniques, CAKE: loaded.book.cakes}
    names: dict[str, list[tuple[str, str]]] = {}
    for room, things in folders.items():
        for slug, thing in things.items():
            for word in dict.fromkeys(word.lower() for word in (*thing.also, thing.name, slug, f"{room}/{slug}")):
                names.setdefault(word, []).append((room, slug))
    found = names.get(name.lower(), [])
    if len(found) > 1:
        paths = " or ".join(f'"{room}/{slug}"' for room, slug in found)
        raise click.ClickException(f'the book has more than one "{name}": write {paths}')
    if found:
        return found[0]
    slug = slug_of(name)
    if any(f"{room}/{slug}" in loaded.broken for room in folders):
        raise click.ClickException(f'"{name}" has a mistake in it: run "tinbook check" to see what to fix')
    shown, whole = folders.values(), load_book(recipes_of(book)).book
    if any(slug in things for things in (whole.techniques, whole.cakes)) and not any(slug in each for each in shown):
        raise click.ClickException(f'"{name}" is private, so no sheet can be made of it')
    if not names:
        raise click.ClickException('the book has no techniques or cakes, or cannot be read: run "tinbook check"')
    close = nearest(name, names)
    known = ", ".join(sorted(slug for things in folders.values() for slug in things))
    cure = f'did you mean "{close if "/" in close else names[close][0][1]}"?' if close else f"it has: {known}"
    raise click.ClickException(f'the book has no technique or cake "{name}"; {cure}')


def dress() -> Dress:
    """The book's own styles and typefaces."""
    theme = PACKAGE / "plugin" / "theme" / "assets" / "tinbook"
    return Dress(
        (theme / "tokens.css").read_text("utf-8"),
        (theme / "atkinson.woff2").read_bytes(),
        (theme / "besley.woff2").read_bytes(),
    )
