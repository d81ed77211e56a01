"""YAML text as plain data in which every value knows its line and column; faults are reported to the baker."""

from tinbook.source.document import Document
from tinbook.source.reading import LARGEST_BYTES, read_yaml

__all__ = ["LARGEST_BYTES", "Document", "read_yaml"]
