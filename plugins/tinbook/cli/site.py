"""`tinbook serve`, `tinbook build` and `tinbook kitchen`: the site, built by MkDocs without its
theme's notice about other projects.

The theme prints a notice before any plugin runs, and only an environment variable can silence it. Decision 68 says what
it warns of.
"""

from __future__ import annotations

import os
import subprocess
import sys
from datetime import datetime
from pathlib import Path

import click

from tinbook.cli.command import MOMENTS, recipes_of

QUIET = {"NO_MKDOCS_2_WARNING": "true", "DISABLE_MKDOCS_2_WARNING": "true"}
PROGRAM = "tinbook.plugin.program"
WANTED, TODAY = "TINBOOK_KITCHEN", "TINBOOK_TODAY"
"""What the plugin is asked with, as in `plugin/kitchens.py`: this part may not import that one."""
LOOSE = {"ignore_unknown_options": True, "allow_extra_args": True}


@click.command(context_settings=LOOSE)
@click.argument("words", nargs=-1, type=click.UNPROCESSED)
@click.option("--kitchen", "own", is_flag=True, help="Show the kitchen's own book, with its orders.")
@click.pass_obj
def serve(book: Path, own: bool, words: tuple[str, ...]) -> None:
    """Show the book on this computer, kept up to date as you edit. Any other options go to mkdocs serve."""
    _mkdocs(book, "serve", "--livereload", *words, **({WANTED: ""} if own else {}))


@click.command(context_settings=LOOSE)
@click.argument("words", nargs=-1, type=click.UNPROCESSED)
@click.pass_obj
def build(book: Path, words: tuple[str, ...]) -> None:
    """Build the book's site. Any other options, such as --strict, go to mkdocs build."""
    _mkdocs(book, "build", *words)


@click.command()
@click.option(
    "--to",
    type=click.Path(file_okay=False, path_type=Path),
    metavar="FOLDER",
    help="Where to put it; if not given, a folder called kitchen beside the public site.",
)
@click.option(
    "--today", type=click.DateTime(MOMENTS), metavar="DATE", help='Plan as of another day, such as "2026-12-03".'
)
@click.pass_obj
def kitchen(book: Path, to: Path | None, today: datetime | None) -> None:
    """Build the kitchen's own book, with its orders, the plan of the week and all that is private.

    It has a folder of its own, never inside one that is published.
    """
    asked = {TODAY: today.isoformat()} if today else {}
    _mkdocs(book, "build", **{WANTED: str(to.resolve()) if to else ""}, **asked)


def _mkdocs(book: Path, *words: str, **asked: str) -> None:
    recipes_of(book)
    settings = book / "mkdocs.yml"
    if not settings.is_file():
        raise click.ClickException(f'there is no mkdocs.yml next to recipes in "{book}"')
    command = [sys.executable, "-m", PROGRAM, words[0], "-f", str(settings), *words[1:]]
    with subprocess.Popen(command, env={**os.environ, **QUIET, **asked}) as process:
        try:
            raise SystemExit(process.wait())
        except KeyboardInterrupt:
            # it is being stopped too, and clears up what it served
            raise SystemExit(process.wait()) from None
