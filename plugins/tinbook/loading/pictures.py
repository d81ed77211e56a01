"""The folder of pictures: only those that a technique names are read, and nothing outside the folder."""

from __future__ import annotations

import hashlib
import re
import unicodedata
from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path, PurePath

from tinbook.loading.drawings import read_drawing
from tinbook.loading.files import PICTURE_TYPES, PICTURES, SourceFile, Unfit, shown_name, slug_of, walk
from tinbook.loading.parses import PictureKey
from tinbook.loading.photos import read_photo
from tinbook.models import Flaw, PictureFile
from tinbook.problems import Place, Problem, nearest

LARGEST_BYTES = 25_000_000


def read_pictures(
    folder: Path, named: Iterable[str], known: Mapping[PictureKey, PictureFile]
) -> tuple[dict[str, PictureFile], dict[str, Flaw], dict[PictureKey, PictureFile]]:
    """The pictures of the book in `folder` that are `named`, and what is wrong with the others, each by its name; and
    what is known now. `known` are the pictures read last time: most stay as they are."""
    pictures: dict[str, PictureFile] = {}
    flaws: dict[str, Flaw] = {}
    kept: dict[PictureKey, PictureFile] = {}
    there = {_composed(path.name): path for path in _files(folder)}
    for name in dict.fromkeys(named):
        try:
            raw = _bytes(name, folder, there)
            key = (name, hashlib.sha256(raw).hexdigest())
            kept[key] = pictures[name] = known[key] if key in known else _picture(raw, name)
        except Unfit as fault:
            flaws[name] = Flaw(code=fault.code, path=(), message=fault.message, hint=fault.hint)
    return pictures, flaws, kept


def unnamed_notes(folder: Path, sources: Iterable[SourceFile]) -> Iterator[Problem]:
    """A note for each file in the pictures folder that is not named anywhere."""
    raws = [source.raw for source in sources]
    for path in walk(folder):
        if path.relative_to(folder).parts[0] != PICTURES:
            continue
        name = _composed(path.name).encode("utf-8", "replace")
        word = re.compile(rb"(?<![\w.-])" + re.escape(name) + rb"(?![\w-])")
        # a long log is first searched for the bare letters, which is many times as fast
        if path.parent != folder / PICTURES or not any(name in raw and word.search(raw) for raw in raws):
            shown, hint = shown_name(path, folder), 'name it under "pictures:" of a technique, or take it out'
            place = Place(file=shown, line=1, column=1)
            yield Problem(
                code="unnamed picture", message="no technique shows this file", place=place, hint=hint, severity="note"
            )


def _composed(name: str) -> str:
    """A file's name with each accented letter as one character, however the disk spells it."""
    return unicodedata.normalize("NFC", name)


def _files(folder: Path) -> Iterator[Path]:
    pictures = folder / PICTURES
    return pictures.iterdir() if pictures.is_dir() else iter(())


def _bytes(name: str, folder: Path, there: dict[str, Path]) -> bytes:
    """The bytes of a picture. Raises Unfit for a name that leads out of the folder, or not to a usable file."""
    if re.search(r"[/\\:\x00-\x1f]", name) or name.startswith("."):
        hint = f'put the picture in {PICTURES}/ and write just its name, such as "board-edge.svg"'
        raise Unfit("outside", f'"{name[:40]}" is not a plain file name', hint)
    kind = PurePath(name).suffix
    if kind.lower() not in PICTURE_TYPES:
        hint = "save it as " + ", ".join(PICTURE_TYPES[:-1]) + f" or {PICTURE_TYPES[-1]}"
        raise Unfit("picture", f'"{kind or name}" is not a kind of picture the book can show', hint)
    path = there.get(_composed(name))
    if path is None:
        close = nearest(name, there)
        hint = f'did you mean "{close}"?' if close else "put the file there, or take the line out"
        raise Unfit("no picture", f'there is no "{name[:60]}" in {PICTURES}/', hint)
    try:
        # The folder itself may be a link too; the book may lie behind one.
        if not path.resolve(strict=True).is_relative_to(folder.resolve() / PICTURES):
            hint = f"copy the file itself into {PICTURES}/"
            raise Unfit("outside", f'"{name[:60]}" leads to a file outside {PICTURES}/', hint)
        if not path.is_file():
            raise Unfit("no picture", f'"{name[:60]}" is not a file', "put a picture in its place")
        with path.open("rb") as file:
            raw = file.read(LARGEST_BYTES + 1)
    except (OSError, RuntimeError) as error:
        message = f"the picture cannot be read: {getattr(error, 'strerror', None) or 'its link leads back to itself'}"
        raise Unfit("unreadable", message, "check its permissions, or put the file itself there") from None
    if len(raw) > LARGEST_BYTES:
        message = f"the picture is larger than {LARGEST_BYTES // 1_000_000} MB"
        raise Unfit("too large", message, "save it smaller: 2000 pixels wide is plenty")
    return raw


def _picture(raw: bytes, name: str) -> PictureFile:
    slug = slug_of(PurePath(name).stem)
    return read_drawing(raw, name, slug) if name.lower().endswith(".svg") else read_photo(raw, name, slug)
