"""The command and what its parts share. A part is imported only when it is used, so the others cost nothing."""

from __future__ import annotations

import gc
import sys
from collections.abc import Mapping
from importlib import import_module
from pathlib import Path

import click

PARTS: Mapping[str, str] = {
    "build": "Build the book's site. Any other options, such as --strict, go to mkdocs build.",
    "check": "Check the whole book and list every mistake, where it is and how to fix it.",
    "kitchen": "Build the kitchen's own book, with its orders, the plan of the week and all that is private.",
    "label": "Print labels for a mixture or a cake at true size, or the card that goes with it.",
    "log": "Add to your logs.",
    "new": "Start a book, a mixture, a cake or an order.",
    "plan": "Plan the work for every order that is asked for or agreed: what to do when, with one oven and two hands.",
    "quote": "Make out a quote for ORDER, by its handle or its file: no costs and no hours are in it.",
    "schema": "Write a folder called schema, so that your editor knows every key in the book's files.",
    "serve": "Show the book on this computer, kept up to date as you edit. Any other options go to mkdocs serve.",
    "sheet": "Write the technique or cake NAME as a single file to send or print.",
    "shop": "List what to buy for the orders that are agreed, in packs, less what is at home, by where it is found.",
    "table": "Print the table called NAME; without a NAME, list them all.",
    "template": "Write a KIND of template for a cake, to print at actual size; without a KIND, list them all.",
    "trace": "Follow a pack into what was baked and handed over, or a batch back to its packs, as far as was logged.",
}
"""Each part, in the module here with its name, and how its own help begins."""
MODULES = {"build": "site", "kitchen": "site", "serve": "site"}
"""The module for parts that share one."""


MOMENTS = ("%Y-%m-%d", "%Y-%m-%d %H:%M")
"""How a day, or a day and a time, is given on the command line."""
NEW_BOOK = "tinbook new book FOLDER"


class LateGroup(click.Group):
    """A group that lists its commands without importing them; a part is imported when it is about to run."""

    def parse_args(self, ctx: click.Context, args: list[str]) -> list[str]:
        """The whole command's options may also come after a part's name: `tinbook check --book FOLDER`."""
        end = args.index("--") if "--" in args else len(args)
        for at, word in enumerate(args[:end]):
            if word == "--book" and at + 1 < end:
                args = [word, args[at + 1], *args[:at], *args[at + 2 :]]
                break
            if word.startswith("--book="):
                args = [word, *args[:at], *args[at + 1 :]]
                break
        return super().parse_args(ctx, args)

    def resolve_command(
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:  # fmt: skip
        name, stub, rest = super().resolve_command(ctx, args)
        return name, stub and part_called(stub.name or ""), rest


def part_called(name: str) -> click.Command:
    """The command of a part."""
    collected = gc.isenabled()
    gc.disable()  # importing makes no garbage, and looking for it takes a tenth of the start
    try:
        part: click.Command = getattr(import_module(f"tinbook.cli.{MODULES.get(name, name)}"), name)
    finally:
        if collected:
            gc.enable()
    return part


@click.group(
    cls=LateGroup,
    commands=[click.Command(name, help=begins) for name, begins in PARTS.items()],
    context_settings={"help_option_names": ["-h", "--help"]},
)
@click.option(
    "--book",
    type=click.Path(path_type=Path),
    help="The book's folder, with recipes/ in it; if not given, this folder or one above it.",
)
@click.version_option(package_name="tinbook")
@click.pass_context
def main(context: click.Context, book: Path | None) -> None:
    """Tinbook: a recipe book for one celebration-cake maker."""
    # A kitchen's terminal may not speak UTF-8; a ½ must not stop the answer.
    for stream in (sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure:
            reconfigure(errors="replace")
    context.obj = book or book_above(Path())


def book_above(folder: Path) -> Path:
    """The folder itself if it holds a book, or else the nearest above that does; itself if none does."""
    here = folder.resolve()
    found = next((each for each in (here, *here.parents) if (each / "recipes" / "house").is_dir()), here)
    return folder if found == here else found


def recipes_of(book: Path) -> Path:
    """The sources of a book. ClickException if there are none."""
    folder = book.resolve() / "recipes"
    if not folder.is_dir():
        where = "here" if book == Path() else f'in "{book}"'
        cure = f'go to the folder your book is in, or name it with --book; "{NEW_BOOK}" starts one'
        raise click.ClickException(f"there is no book {where}: {cure}")
    return folder
