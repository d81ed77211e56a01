"""The command and what all its parts share. A part is imported when it is asked for: the others cost nothing."""

from __future__ import annotations

import gc
import sys
from collections.abc import Mapping
from importlib import import_module
from pathlib import Path

import click

PARTS: Mapping[str, str] = {
    "check": "Read the whole book and tell every problem with its place and its cure.",
    "log": "Add to what the house has done.",
    "new": "Start a book or a mixture.",
    "schema": "Write the folder schema, which tells an editor every key of the book's files.",
    "sheet": "Write the technique NAME as one file that goes along by itself.",
    "table": "Print a table by its NAME, or the names of all tables.",
    "template": "Write a template of a KIND for a cake, to print at true size; without a KIND, what there is.",
}
"""Each part, in a module of this room by its name, and how its own help begins."""


class LateGroup(click.Group):
    """A group whose commands only tell of themselves; that of a part is imported when it is to run."""

    def resolve_command(
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:  # fmt: skip
        name, stub, rest = super().resolve_command(ctx, args)
        return name, stub and part_called(stub.name or ""), rest


def part_called(name: str) -> click.Command:
    """The command of a part."""
    collected = gc.isenabled()
    gc.disable()  # modules leave no rubbish while they are made, and looking for it takes a tenth of a start
    try:
        part: click.Command = getattr(import_module(f"tinbook.cli.{name}"), name)
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
    default=Path(),
    help="The folder of the book, with recipes/ in it. Here, if not given.",
)
@click.version_option(package_name="tinbook")
@click.pass_context
def main(context: click.Context, book: Path) -> None:
    """Tinbook: a house book for a maker of celebration cakes."""
    # A kitchen's terminal may not speak UTF-8; a ½ must not stop the answer.
    for stream in (sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure:
            reconfigure(errors="replace")
    context.obj = book
