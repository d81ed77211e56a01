"""The only package that reads the disk: it turns a folder into a book, the facts, and every problem found."""

from tinbook.loading.book import Loaded, load_book
from tinbook.loading.facts import load_facts
from tinbook.loading.parses import Learnt, Parses

__all__ = ["Learnt", "Loaded", "Parses", "load_book", "load_facts"]
