"""The command and what all its parts share."""

from __future__ import annotations

import sys
from pathlib import Path

import click

from tinbook.cli.check import check
from tinbook.cli.log import log
from tinbook.cli.new import new
from tinbook.cli.schema import schema
from tinbook.cli.sheet import sheet
from tinbook.cli.table import table
from tinbook.cli.template import template


@click.group(context_settings={"help_option_names": ["-h", "--help"]})
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


main.add_command(check)
main.add_command(table)
main.add_command(new)
main.add_command(log)
main.add_command(sheet)
main.add_command(template)
main.add_command(schema)
