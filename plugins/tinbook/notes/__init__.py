"""A pasted note becomes drafts of mixtures: what is certain is read, what is not is marked, and nothing is lost."""

from tinbook.notes.decoding import NotText, decoded
from tinbook.notes.kitchens import KITCHENS
from tinbook.notes.reading import Note, read_note, read_parts
from tinbook.notes.writing import Draft, Drafts, SaidBeside, written

__all__ = [
    "KITCHENS",
    "Draft",
    "Drafts",
    "NotText",
    "Note",
    "SaidBeside",
    "decoded",
    "read_note",
    "read_parts",
    "written",
]
