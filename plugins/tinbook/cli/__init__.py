"""The `tinbook` command: check the book, ask it for its sums, start a book or a mixture."""

from tinbook.cli.command import main

__all__ = ["main"]
