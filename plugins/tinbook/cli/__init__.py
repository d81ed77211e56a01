"""The `tinbook` command: check the book, print its tables, start a book, a mixture or a cake."""

from tinbook.cli.command import main

__all__ = ["main"]
