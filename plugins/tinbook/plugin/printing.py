"""Templates as PDF files of the site. Each is kept beside the book once set, so that later builds only copy it.

It is kept under a hash of everything it is made from: the parts for that cake, the paper, the house, and Tinbook's own
code and typefaces. So nothing has to be drawn to find what is kept.
"""

from __future__ import annotations

import hashlib
import multiprocessing
import os
import signal
import sys
from collections.abc import Iterator, Mapping, Sequence
from contextlib import suppress
from functools import cache
from importlib.metadata import version
from pathlib import Path

from tinbook.pages.technique.cake_templates import TemplateFile
from tinbook.plugin.keeping import own_files
from tinbook.press import templates_pdf

CACHE = Path(".cache", "tinbook")
"""Next to mkdocs.yml, where the theme keeps such things too."""
WORTH_IT = 8
"""The fewest files worth another process."""
ROOMS = ("tins/", "engine/", "plans/", "pages/", "press/")


def set_templates(files: Mapping[str, TemplateFile], cache: Path, apart: bool = False) -> Iterator[tuple[str, bytes]]:
    """Each file's path and content; what is in `cache` and no longer needed is deleted.

    `apart`: another process may set them, if the library is not at work in this one: its threads do not live through a
    fork, and anything that needs them would wait for ever. Any that it could not set or keep are set here.
    """
    kept = {path: cache / f"{_key(file)}.pdf" for path, file in files.items()}
    missing = [(files[path], place) for path, place in kept.items() if not _kept(place)]
    if apart and len(missing) >= WORTH_IT and sys.platform == "linux" and "typst" not in sys.modules:
        _set_apart(missing)
    for path, file in files.items():
        yield path, _kept(kept[path]) or _set(file, kept[path])
    with suppress(OSError):
        for old in set(cache.glob("*.pdf")) - set(kept.values()):
            old.unlink()


def _set_apart(missing: Sequence[tuple[TemplateFile, Path]]) -> None:
    """Set and keep files in a process of their own, as the library never gives its memory back."""
    process = multiprocessing.get_context("fork").Process(target=_set_all, args=(missing,), daemon=True)
    process.start()
    process.join()


def _set_all(missing: Sequence[tuple[TemplateFile, Path]]) -> None:
    # whoever stops the build stops the first process, which stops this one
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    with suppress(Exception):  # the first process meets the mistake again, and reports it
        for file, place in missing:
            _set(file, place)


def _key(file: TemplateFile) -> str:
    overlap_mm = file.desk.facts.numbers["overlap of sheets"].value
    comes_of = (_code(), file.title, file.desk.book.house.name, file.paper, overlap_mm, file.made)
    return hashlib.sha256(repr(comes_of).encode()).hexdigest()


@cache
def _code() -> str:
    """The hash of Tinbook's packages that draw and set, and the version of the library they set with."""
    drawn_by = [(name, digest) for name, digest in own_files() if name.startswith(ROOMS)]
    return hashlib.sha256(repr((version("typst"), drawn_by)).encode()).hexdigest()


def _kept(path: Path) -> bytes:
    """A whole PDF, or nothing."""
    with suppress(OSError):
        content = path.read_bytes()
        if content.startswith(b"%PDF-") and content.rstrip().endswith(b"%%EOF"):
            return content
    return b""


def _set(file: TemplateFile, kept: Path) -> bytes:
    content = templates_pdf(file.title, file.pages)
    # a book whose folder is read-only is built all the same
    with suppress(OSError):
        kept.parent.mkdir(parents=True, exist_ok=True)
        half = kept.with_suffix(f".{os.getpid()}")
        try:
            half.write_bytes(content)
            half.replace(kept)
        finally:
            half.unlink(missing_ok=True)
    return content
