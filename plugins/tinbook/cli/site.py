"""`tinbook serve` and `tinbook build`: the site, built by MkDocs, without its theme's notice about other projects.

The theme prints a notice before any plugin runs, and only an environment variable can silence it. Decision 68 says what
it warns of.
"""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import click

from tinbook.cli.command import recipes_of

QUIET = {"NO_MKDOCS_2_WARNING": "true", "DISABLE_MKDOCS_2_WARNING": "true"}
PROGRAM = "tinbook.plugin.program"
LOOSE = {"ignore_unknown_options": True, "allow_extra_args": True}


@click.command(context_settings=LOOSE)
@click.argument("words", nargs=-1, type=click.UNPROCESSED)
@click.pass_obj
def serve(book: Path, words: tuple[str, ...]) -> None:
    """Show the book on this computer, kept up to date as you edit. Any other options go to mkdocs serve."""
    _mkdocs(book, "serve", "--livereload", *words)


@click.command(context_settings=LOOSE)
@click.argument("words", nargs=-1, type=click.UNPROCESSED)
@click.pass_obj
def build(book: Path, words: tuple[str, ...]) -> None:
    """Build the book's site. Any other options, such as --strict, go to mkdocs build."""
    _mkdocs(book, "build", *words)


def _mkdocs(book: Path, *words: str) -> None:
    recipes_of(book)
    settings = book / "mkdocs.yml"
    if not settings.is_file():
        raise click.ClickException(f'there is no mkdocs.yml next to recipes in "{book}"')
    command = [sys.executable, "-m", PROGRAM, words[0], "-f", str(settings), *words[1:]]
    with subprocess.Popen(command, env={**os.environ, **QUIET}) as process:
        try:
            raise SystemExit(process.wait())
        except KeyboardInterrupt:
            # it is being stopped too, and clears up what it served
            raise SystemExit(process.wait()) from None
