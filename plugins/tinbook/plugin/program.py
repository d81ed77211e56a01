"""What `tinbook build` and `tinbook serve` run: MkDocs' own command, with anything that stops it put plainly.

After the part it is asked for, it takes `-f` and the path of mkdocs.yml first, then whatever MkDocs takes.
"""

from __future__ import annotations

import errno
import sys
from collections.abc import Sequence
from pathlib import Path

import click
from mkdocs.__main__ import cli
from mkdocs.exceptions import ConfigurationError

from tinbook.plugin.slips import PlainSlips, refused
from tinbook.problems.disk import FULL, why_not

TAKEN = "this address is in use, perhaps by another tinbook serve: stop that one, or add -a localhost:8001"

HALF = "Stopped. The site may be half built: build it again before you publish it."


def main(words: Sequence[str]) -> int:
    """The exit code; 1 for a fault in the book or on the machine, which is then reported."""
    path = Path(words[2])
    PlainSlips(path).listen()
    try:
        ended = cli.main(list(words), prog_name="tinbook", standalone_mode=False)
    except ConfigurationError as error:
        click.echo(f"Error: {refused(path, error)}", err=True)
        return error.exit_code
    except click.ClickException as error:
        error.show()
        return error.exit_code
    except click.Abort:  # by Ctrl+C
        if words[0] == "build":
            click.echo(HALF, err=True)
        return 1
    except OSError as error:
        click.echo(f"Error: {_stopped(error)}", err=True)
        return 1
    return ended if isinstance(ended, int) else 0


def _stopped(error: OSError) -> str:
    """What the machine refused before or after a build. Raises OSError again for anything else, which is a mistake of
    ours."""
    if error.errno == errno.EADDRINUSE:
        return TAKEN
    if error.errno in FULL or "temporary directory" in str(error.strerror):
        return f"there is no room to work in: {why_not(error)}"
    if error.filename is None:
        return f"this address cannot be used: {(error.strerror or str(error)).lower()}"
    raise error


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
