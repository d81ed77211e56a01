"""`tinbook new`: a book of one's own, or a mixture from pasted lines. Nothing existing is ever overwritten."""

from __future__ import annotations

import re
from importlib import resources
from importlib.resources.abc import Traversable
from pathlib import Path
from typing import TextIO

import click

from tinbook.cli.drafting import draft_found, draft_mixture
from tinbook.cli.importing import NoRecipe, find_recipe, form_of
from tinbook.cli.schema import FOLDER, editor_settings, first_line, schema_text
from tinbook.cli.writing import cannot_write, put, whole_folder
from tinbook.loading import load_book
from tinbook.loading.files import SLUG, slug_of
from tinbook.models.register import kinds, of_the_kitchen

LONGEST = 100
"""A slug is a file's name, and systems have their limits."""


@click.group()
def new() -> None:
    """Start a book or a mixture."""


@new.command()
@click.argument("folder", type=click.Path(path_type=Path))
def book(folder: Path) -> None:
    """Write a small book of your own into FOLDER. It builds at once."""
    if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
        raise click.ClickException(f'"{folder}" is not empty: name a folder that does not exist yet')
    starter = resources.files("tinbook.cli").joinpath("starter")
    name = re.sub(r"[-_\s]+", " ", folder.resolve().name).strip() or "Our book"
    with whole_folder(folder) as half:
        written = _copy(starter, half, name[:1].upper() + name[1:]) + _make(half)
    click.echo(f'{written} files written into "{folder}". Next:')
    click.echo(f'  cd "{folder}"\n  tinbook check\n  tinbook serve')


def _copy(source: Traversable, target: Path, name: str) -> int:
    target.mkdir(parents=True, exist_ok=True)
    written = 0
    for entry in sorted(source.iterdir(), key=lambda each: each.name):
        if entry.is_dir():
            written += _copy(entry, target / entry.name, name)
        else:
            # it stands between double quotes, where these two would be more than themselves
            text = entry.read_text(encoding="utf-8").replace("BOOK NAME", re.sub(r'["\\]', "'", name))
            with (target / entry.name).open("x", encoding="utf-8", newline="\n") as file:
                file.write(text)
            written += 1
    return written


def _make(folder: Path) -> int:
    """Write what the register tells: the schemas, which an editor is to use for which file, what stays out of git."""
    (folder / FOLDER).mkdir()
    for name in kinds():
        (folder / FOLDER / f"{name}.json").write_text(schema_text(name), "utf-8", newline="\n")
    (folder / ".vscode").mkdir()
    (folder / ".vscode" / "settings.json").write_text(editor_settings(), "utf-8", newline="\n")
    with (folder / ".gitignore").open("a", encoding="utf-8", newline="\n") as file:
        file.writelines(f"recipes/{path}\n" for path in of_the_kitchen())
    return len(kinds()) + 1


@new.command()
@click.argument("name")
@click.option(
    "--from",
    "source",
    type=click.File(encoding="utf-8-sig"),
    required=True,
    help="A text file, a saved page or JSON with schema.org data, or - for what is pasted.",
)
@click.option("--kind", help="What kind it is, such as creamed, madeira, buttercream.")
@click.option("--tins", help='What it was written for, such as "2 round 20 cm x 7.5 cm".')
@click.pass_obj
def mixture(book: Path, name: str, source: TextIO, kind: str | None, tins: str | None) -> None:
    """Turn pasted lines, or a page with schema.org data, into a mixture called NAME and mark what was unsure."""
    slug = name if SLUG.fullmatch(name) else slug_of(name)
    folder = book.resolve() / "recipes"
    if not (folder / "house").is_dir():
        raise click.ClickException(f'there is no book in "{book}": start one with "tinbook new book FOLDER"')
    if not name.strip() or len(slug) > LONGEST:
        raise click.ClickException("give it a name of a few words")
    path = folder / "mixtures" / f"{slug}.yaml"
    if path.exists():
        raise click.ClickException(f"{path.relative_to(folder.parent)} exists already and is left as it is")
    try:
        text = source.read()
    except UnicodeDecodeError:
        raise click.ClickException("the text is not UTF-8: save it as UTF-8 and try again") from None
    loaded = load_book(folder)
    title = name.replace("-", " ") if SLUG.fullmatch(name) else name
    title = title[:1].upper() + title[1:]
    try:
        form = form_of(str(getattr(source, "name", "")), text)
        if form:
            found = find_recipe(text, form, title)
            draft = draft_found(title, found, loaded.book, loaded.facts, kind, tins)
        else:
            draft = draft_mixture(title, text, loaded.book, loaded.facts, kind, tins)
    except NoRecipe as error:
        raise click.ClickException(str(error)) from None
    begins = first_line("mixture") + "\n" if (book / FOLDER / "mixture.json").is_file() else ""
    try:
        path.parent.mkdir(exist_ok=True)
    except OSError as error:
        raise cannot_write(path, error) from None
    put({path: (begins + draft.text).encode()})
    click.echo(f"{path.relative_to(folder.parent)} is written: {draft.lines} ingredients, {draft.steps} steps.")
    for doubt in draft.doubts:
        click.echo(f"  unsure: {doubt}")
    if draft.doubts:
        click.echo('Search the file for "unsure", put it right, then run "tinbook check".')
