"""The book as a MkDocs plugin: the only room that knows MkDocs. Each hook is a few lines."""

from tinbook.plugin.events import TinbookPlugin

__all__ = ["TinbookPlugin"]
