"""The site of the last build, set aside while the next one is made, so that unchanged pages are not written again.

MkDocs empties the site's folder before it builds, except for hidden files. So the last site waits there in a
hidden folder, which is gone when the build ends. What it holds is compared by its bytes: nothing is taken for granted.
"""

from __future__ import annotations

import atexit
import hashlib
import os
import shutil
from collections.abc import Mapping
from contextlib import suppress
from pathlib import Path

ASIDE = ".tinbook-last"
"""The hidden folder."""


class LastSite:
    """What is in the folder `site` as a build begins."""

    def __init__(self, site: Path) -> None:
        self._site, self._aside = site, site / ASIDE

    def set_aside(self) -> None:
        """Before MkDocs empties the folder. Anything that cannot be moved is deleted as usual."""
        if not self._site.is_dir():
            return
        self.forget()  # what a build that was killed has left
        atexit.register(self.forget)
        with suppress(OSError):
            self._aside.mkdir()
            for entry in list(os.scandir(self._site)):
                if not (entry.name.startswith(".") or entry.is_symlink()):
                    os.rename(entry.path, self._aside / entry.name)

    def keep(self, sums: Mapping[str, bytes]) -> set[str]:
        """Delete all but the files that are what they should be: `sums` has the SHA-256 of each, by its path within the
        site. Returns the paths of those kept."""
        found: set[str] = set()
        if self._aside.is_dir():
            if sums:
                _clear(str(self._aside), "", sums, found)
            else:
                self.forget()
        return found

    def put_together(self) -> None:
        """Put what was kept back among what has been written since."""
        if self._aside.is_dir():
            _merge(self._site, self._aside)
            for entry in list(os.scandir(self._aside)):
                os.rename(entry.path, self._site / entry.name)
            self._aside.rmdir()

    def forget(self) -> None:
        """Delete what is set aside."""
        shutil.rmtree(self._aside, ignore_errors=True)


def _clear(folder: str, within: str, sums: Mapping[str, bytes], found: set[str]) -> None:
    """Delete anything in a folder that is not as it should be, and any folders in it that are then empty."""
    for entry in list(os.scandir(folder)):
        path = within + entry.name
        if entry.is_dir(follow_symlinks=False):
            _clear(entry.path, f"{path}/", sums, found)
            with suppress(OSError):  # it holds something
                os.rmdir(entry.path)
        elif path in sums and entry.is_file(follow_symlinks=False) and _sum(entry.path) == sums[path]:
            found.add(path)
        else:
            os.unlink(entry.path)


def _sum(path: str) -> bytes:
    with suppress(OSError), open(path, "rb") as file:
        return hashlib.sha256(file.read()).digest()
    return b""


def _merge(new: Path, old: Path) -> None:
    """Move whatever is in the folder `new` to `old`, where a folder of the same name is there already."""
    for entry in list(os.scandir(new)):
        place = old / entry.name
        if entry.name == ASIDE or not place.exists():
            continue
        _move(entry, place)


def _move(entry: os.DirEntry[str], place: Path) -> None:
    if not (entry.is_dir(follow_symlinks=False) and place.is_dir()):
        os.replace(entry.path, place)
        return
    for inner in list(os.scandir(entry.path)):
        _move(inner, place / inner.name)
    os.rmdir(entry.path)
