"""The book as a MkDocs plugin: the only package that knows MkDocs. Each hook is a few lines."""

from tinbook.plugin.events import TinbookPlugin

__all__ = ["TinbookPlugin"]
