"""`tinbook schema`: what an editor needs to complete and check the book's files as they are typed."""

from __future__ import annotations

import json
from pathlib import Path

import click

from tinbook.cli.command import recipes_of
from tinbook.cli.writing import cannot_write, put
from tinbook.models.json_schema import schema_of
from tinbook.models.register import kinds

FOLDER = "schema"
"""Next to recipes/, where the first line of each file looks for it."""


@click.command()
@click.pass_obj
def schema(book: Path) -> None:
    """Write a folder called schema, so that your editor knows every key in the book's files.

    Run it again after updating Tinbook. Tinbook makes the whole folder, and nothing in it is yours.
    """
    recipes_of(book)
    folder = book / FOLDER
    try:
        folder.mkdir(exist_ok=True)
    except OSError as error:
        raise cannot_write(folder, error) from None
    put({folder / f"{name}.json": schema_text(name).encode() for name in kinds()})
    click.echo(
        f'{len(kinds())} files written to "{folder}". The first line of each file in the book names its schema, such as'
    )
    click.echo(f"  {first_line('mixture')}")


def schema_text(name: str) -> str:
    """One schema as a file."""
    return json.dumps(schema_of(name), ensure_ascii=False, indent=1) + "\n"


def editor_settings() -> str:
    """The file .vscode/settings.json, which tells an editor which schema goes with which file."""
    schemas = {f"./{FOLDER}/{name}.json": [f"recipes/{path}" for path in kind.paths] for name, kind in kinds().items()}
    return json.dumps({"yaml.schemas": schemas}, indent=2) + "\n"


def first_line(name: str) -> str:
    """The comment by which an editor finds the schema for a file in a folder of recipes/."""
    return f"# yaml-language-server: $schema=../../{FOLDER}/{name}.json"
