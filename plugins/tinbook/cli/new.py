"""`tinbook new`: a book of your own, a mixture from pasted lines, a cake, or an order. It never overwrites a file."""

from __future__ import annotations

import re
from importlib import resources
from importlib.resources.abc import Traversable
from pathlib import Path
from typing import BinaryIO

import click

from tinbook.cli.cakes import draft_cake
from tinbook.cli.command import recipes_of
from tinbook.cli.drafting import NoteWanted, draft_found, draft_mixture, on_screen
from tinbook.cli.importing import NoRecipe, find_recipe, form_of
from tinbook.cli.orders import draft_order
from tinbook.cli.schema import FOLDER, editor_settings, first_line, schema_text
from tinbook.cli.writing import cannot_write, put, whole_folder
from tinbook.loading import load_book
from tinbook.loading.files import SLUG, slug_of
from tinbook.models.register import kinds, of_the_kitchen
from tinbook.notes import KITCHENS, Drafts, NotText, decoded
from tinbook.plans.base.asking import AskError

LONGEST = 100
"""A slug is a file name, and operating systems limit its length."""


@click.group()
def new() -> None:
    """Start a book, a mixture, a cake or an order."""


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
    click.echo(f'{written} files written to "{folder}". Next:')
    click.echo(f'  cd "{folder}"\n  tinbook check\n  tinbook serve')


def _copy(source: Traversable, target: Path, name: str) -> int:
    target.mkdir(parents=True, exist_ok=True)
    written = 0
    for entry in sorted(source.iterdir(), key=lambda each: each.name):
        if entry.is_dir():
            written += _copy(entry, target / entry.name, name)
        else:
            # it stands between double quotes, where these two have a meaning
            text = entry.read_text(encoding="utf-8").replace("BOOK NAME", re.sub(r'["\\]', "'", name))
            with (target / entry.name).open("x", encoding="utf-8", newline="\n") as file:
                file.write(text)
            written += 1
    return written


def _make(folder: Path) -> int:
    """Write what comes from the register: the schemas, which file uses which schema, and what stays out of git."""
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
    type=click.File("rb"),
    required=True,
    help="A text file, a saved page or JSON with schema.org data, or - for text you paste in.",
)
@click.option("--kind", help="What kind it is, such as creamed, madeira or buttercream.")
@click.option("--tins", help='The tins it was written for, such as "2 round 20 cm x 7.5 cm".')
@click.option(
    "--kitchen", type=click.Choice(list(KITCHENS)), help="Which country's cups and spoons it means, if you know."
)
@click.option("--try", "only_try", is_flag=True, help="Print what would be written, without writing it.")
@click.pass_obj
def mixture(
    book: Path, name: str, source: BinaryIO, kind: str | None, tins: str | None, kitchen: str | None, only_try: bool
) -> None:
    """Turn a pasted note, or a page with schema.org data, into mixtures: the first is called NAME.

    Anything not certain is marked "# unsure" until you have looked at it.
    """
    slug, title = _named(name)
    folder = recipes_of(book)
    _refuse_existing(folder, [slug])
    asked = NoteWanted(name=title, slug=slug, kind=kind, tins=tins, kitchen=kitchen)
    drafts = _drafted(source, asked, folder)
    _refuse_existing(folder, [draft.slug for draft in drafts.every])
    done = "written" if drafts.lines and not only_try else "would be written" if drafts.lines else "not written"
    if drafts.lines and not only_try:
        _write(drafts, folder, schema=(book / FOLDER / "mixture.json").is_file())
    for draft in drafts.every if only_try else ():
        click.echo(f"# recipes/mixtures/{draft.slug}.yaml\n{draft.text}")
    for line in on_screen(drafts, done):
        click.echo(line)
    if not drafts.lines:
        hint = 'give each ingredient a line with its amount, such as "250 g butter"; --kitchen says which cups they are'
        raise click.ClickException(f"no ingredient could be read with certainty, so nothing was written: {hint}")
    if any(draft.doubts for draft in drafts.every):
        click.echo(
            'Next: look for "unsure" in the files, put each one right, delete its mark, then run "tinbook check".'
        )
    else:
        click.echo('Next: read it over, then run "tinbook check".')


@new.command()
@click.argument("name")
@click.option("--tiers", default="20 cm", help='Its tiers from the bottom up, such as "25 cm, 20 cm, 15 cm".')
@click.option("--mixture", "made_of", help="Its recipe: the name of the file, without .yaml.")
@click.pass_obj
def cake(book: Path, name: str, tiers: str, made_of: str | None) -> None:
    """Start a cake called NAME, with its tiers and its recipe. The rest is worked out."""
    slug, title = _named(name)
    folder = recipes_of(book)
    _refuse_existing(folder, [slug], "cakes")
    loaded = load_book(folder)
    try:
        text = draft_cake(title, tiers, made_of, loaded.book, loaded.facts)
    except AskError as error:
        raise click.ClickException(f"{error.message}: {error.hint}") from None
    begins = first_line("cake") + "\n" if (book / FOLDER / "cake.json").is_file() else ""
    _make_folder(folder / "cakes")
    put({folder / "cakes" / f"{slug}.yaml": (begins + text).encode()})
    click.echo(f"recipes/cakes/{slug}.yaml written. Next: add its board and decorations, then run:")
    click.echo(f"  tinbook check\n  tinbook table cake --of {slug}")


@new.command()
@click.argument("handle")
@click.option("--cake", "design", metavar="NAME", help="The cake: the name of its file, without .yaml.")
@click.option("--guests", type=click.IntRange(1, 999), help="How many guests it has to serve.")
@click.option("--hand-over", required=True, metavar="DATE", help='When it goes out, such as "2026-12-05 11:00".')
@click.option("--free-from", multiple=True, metavar="WORD", help="What it must be free from; as often as you like.")
@click.pass_obj
def order(
    book: Path, handle: str, design: str | None, guests: int | None, hand_over: str, free_from: tuple[str, ...]
) -> None:
    """Start an order called HANDLE: a word or two that you know it by, never somebody's name."""
    slug, _ = _named(handle)
    folder = recipes_of(book)
    slug = f"{hand_over[:10]}-{slug}" if SLUG.fullmatch(hand_over[:10]) else slug
    _refuse_existing(folder, [slug], "orders")
    loaded = load_book(folder)
    try:
        text, told = draft_order(handle, design, guests, hand_over, free_from, loaded.book, loaded.facts)
    except AskError as error:
        raise click.ClickException(f"{error.message}: {error.hint}") from None
    begins = first_line("order") + "\n" if (book / FOLDER / "order.json").is_file() else ""
    _make_folder(folder / "orders")
    put({folder / "orders" / f"{slug}.yaml": (begins + text).encode()})
    for line in told:
        click.echo(f"To know: {line}")
    click.echo(f"recipes/orders/{slug}.yaml written. Next: see what it would push, and when it is promised, write")
    click.echo('  "state: agreed" in it:\n  tinbook plan')


def _named(name: str) -> tuple[str, str]:
    """A file's name, and the title of its page."""
    slug = name if SLUG.fullmatch(name) else slug_of(name)
    if not name.strip() or len(slug) > LONGEST:
        raise click.ClickException("give it a name of a few words")
    title = name.replace("-", " ") if SLUG.fullmatch(name) else name
    return slug, title[:1].upper() + title[1:]


def _refuse_existing(folder: Path, slugs: list[str], room: str = "mixtures") -> None:
    """An existing file is never overwritten."""
    for slug in slugs:
        path = folder / room / f"{slug}.yaml"
        if path.exists():
            raise click.ClickException(f"{path.relative_to(folder.parent)} already exists and has been left alone")


def _drafted(source: BinaryIO, asked: NoteWanted, folder: Path) -> Drafts:
    """The drafts from a file, whatever kind it is."""
    try:
        text = decoded(source.read())
    except NotText as error:
        raise click.ClickException(f"{error}: save it as UTF-8 text and try again") from None
    loaded = load_book(folder)
    try:
        form = form_of(str(getattr(source, "name", "")), text)
        if form:
            found = find_recipe(text, form, asked.name)
            return draft_found(asked, found, loaded.book, loaded.facts)
    except NoRecipe as error:
        raise click.ClickException(str(error)) from None
    return draft_mixture(asked, text, loaded.book, loaded.facts)


def _write(drafts: Drafts, folder: Path, schema: bool) -> None:
    begins = first_line("mixture") + "\n" if schema else ""
    _make_folder(folder / "mixtures")
    put({folder / "mixtures" / f"{draft.slug}.yaml": (begins + draft.text).encode() for draft in drafts.every})


def _make_folder(folder: Path) -> None:
    try:
        folder.mkdir(exist_ok=True)
    except OSError as error:
        raise cannot_write(folder, error) from None
