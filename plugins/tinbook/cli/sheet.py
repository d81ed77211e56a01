"""`tinbook sheet`: one technique as a file of its own, to send or to print.

The sheet is built in `pages/sheet`, which says what goes along. The PDF is set here, by Typst: it comes as one Python
wheel for every system with no libraries to install, tags the PDF (PDF/UA-1) and takes the book's own letters.
"""

from __future__ import annotations

import json
from importlib import resources
from pathlib import Path
from tempfile import TemporaryDirectory

import click

from tinbook.loading import Loaded, load_book
from tinbook.loading.files import slug_of
from tinbook.pages.page import Desk
from tinbook.pages.sheet import Dress, Sheet, as_plain, picture_files, sheet_of, sheet_page
from tinbook.plans.technique import MOST_PEOPLE
from tinbook.problems import nearest

LARGE_BYTES = 2_000_000
PACKAGE = resources.files("tinbook")


@click.command()
@click.argument("name")
@click.option("--people", type=click.IntRange(1, MOST_PEOPLE), default=1, help="For how many people.")
@click.option("--pdf", is_flag=True, help="Write a PDF as well, A4.")
@click.option(
    "-o", "--output", type=click.Path(path_type=Path), metavar="FILE", help="Where to; NAME.html if not given."
)
@click.option("--force", is_flag=True, help="Write over a file that is there already.")
@click.pass_obj
def sheet(book: Path, name: str, people: int, pdf: bool, output: Path | None, force: bool) -> None:
    """Write the technique NAME as one file that goes along by itself. Nothing private goes along."""
    loaded = load_book(book.resolve() / "recipes", kitchen=False)
    slug = _slug(name, loaded, book)
    page = output or Path(f"{slug}.html")
    if page.suffix.lower() not in (".html", ".htm"):
        raise click.ClickException(f'"{page}" does not end in .html; a PDF is written beside it with --pdf')
    paths = [page, *([page.with_suffix(".pdf")] if pdf else [])]
    for path in paths:
        if path.is_dir() or (path.exists() and not force):
            cure = "name another" if path.is_dir() else "add --force to write over it, or name another with -o"
            raise click.ClickException(f'"{path}" exists already and is left as it is: {cure}')
        if not path.absolute().parent.is_dir():
            raise click.ClickException(f'there is no folder "{path.parent}"')
    made = sheet_of(slug, Desk(loaded.book, loaded.facts, loaded.broken), people)
    contents = [sheet_page(made, dress()).encode(), *([pdf_of(made)] if pdf else [])]
    for path, content in zip(paths, contents, strict=True):
        with path.open("wb" if force else "xb") as file:
            file.write(content)
        click.echo(f'"{path}" is written, {max(1, round(len(content) / 1000))} kB.')
        if len(content) > LARGE_BYTES:
            click.echo("  That is large for a mail: fewer photos make it smaller.")


def _slug(name: str, loaded: Loaded, book: Path) -> str:
    """The technique that goes by `name`: its file's name, its own or another of its names."""
    techniques = loaded.book.techniques
    names = {
        word.lower(): slug for slug, technique in techniques.items() for word in (*technique.also, technique.name, slug)
    }
    if name.lower() in names:
        return names[name.lower()]
    slug = slug_of(name)
    if f"techniques/{slug}" in loaded.broken:
        raise click.ClickException(f'"{name}" is broken: run "tinbook check" to see what to mend')
    if slug not in techniques and slug in load_book(book.resolve() / "recipes").book.techniques:
        raise click.ClickException(f'"{name}" is private: no sheet of it leaves the house')
    if not techniques:
        raise click.ClickException('the book has no techniques, or cannot be read: run "tinbook check"')
    close = nearest(name, names)
    cure = f'did you mean "{names[close]}"?' if close else "it has: " + ", ".join(sorted(techniques))
    raise click.ClickException(f'the book has no technique "{name}"; {cure}')


def dress() -> Dress:
    """The book's own styles and letters."""
    theme = PACKAGE / "plugin" / "theme" / "assets" / "tinbook"
    return Dress(
        (theme / "tokens.css").read_text("utf-8"),
        (theme / "atkinson.woff2").read_bytes(),
        (theme / "besley.woff2").read_bytes(),
    )


def pdf_of(sheet: Sheet) -> bytes:
    """The sheet as a tagged PDF (PDF/UA-1, ISO 14289-1). What it holds of the world is its title."""
    # A large library, wanted here only.
    import typst

    with TemporaryDirectory() as made, resources.as_file(PACKAGE / "cli" / "fonts") as fonts:
        folder = Path(made)
        (folder / "sheet.typ").write_bytes((PACKAGE / "pages" / "templates" / "sheet" / "sheet.typ").read_bytes())
        (folder / "sheet.json").write_text(json.dumps(as_plain(sheet), ensure_ascii=False), "utf-8")
        for name, content in picture_files(sheet).items():
            (folder / name).write_bytes(content)
        return typst.compile(
            folder / "sheet.typ",
            root=folder,
            font_paths=[fonts],
            ignore_system_fonts=True,
            pdf_standards=["ua-1"],
        )
