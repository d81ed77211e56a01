"""The only room that reads the disk: a folder becomes a book, the facts, and every problem found."""

from tinbook.loading.book import Loaded, load_book
from tinbook.loading.facts import load_facts
from tinbook.loading.parses import Parses

__all__ = ["Loaded", "Parses", "load_book", "load_facts"]
