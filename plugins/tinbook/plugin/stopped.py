"""A build that the machine stopped: what the baker is told about it, and about the site, which is now incomplete."""

from __future__ import annotations

import errno
from pathlib import Path

from mkdocs.exceptions import BuildError
from mkdocs.plugins import get_plugin_logger

from tinbook.problems.disk import FULL, REASONS, why_not

log = get_plugin_logger("tinbook")

ROOM = "Make room on the disk, then build again."
ELSEWHERE = "Make sure you may write there, or build into another folder with -d FOLDER."
NOT_BUILT = "The site was not built."


def is_of_files(error: OSError) -> bool:
    """Whether the system refused a file or folder; not a network fault, nor a mistake of ours."""
    return error.errno in REASONS or error.filename is not None or "temporary directory" in str(error.strerror)


def why_stopped(error: OSError, site: Path, serving: bool) -> str:
    """What the baker is told. A served site is put back, so nothing is said about it."""
    told = [_what(error, site)]
    if not serving and site.is_dir() and any(site.iterdir()):
        told.append(f'What is in "{_shown(site)}" now is incomplete, and may be partly an old site: '
                    "do not publish it.")  # fmt: skip
    told.append("Your recipes and pages are untouched.")
    if error.errno in FULL:
        told.append(ROOM)
    elif error.errno in REASONS:
        told.append(ELSEWHERE)
    return "\n".join(told)


def _what(error: OSError, site: Path) -> str:
    named = Path(error.filename) if isinstance(error.filename, str) else None
    inside = named is not None and named.absolute().is_relative_to(site)
    if named is None or inside or error.errno in FULL or error.errno == errno.EROFS:
        return f'The site cannot be written to "{_shown(site)}": {why_not(error)}.'
    return f'"{_shown(named)}" cannot be read: {(error.strerror or str(error)).lower()}.'


def _shown(path: Path) -> str:
    """The path as short as it can be written from here."""
    here = Path.cwd()
    return path.absolute().relative_to(here).as_posix() if path.absolute().is_relative_to(here) else str(path)


def is_told(error: Exception, site: Path, serving: bool) -> bool:
    """Whether what stopped a build has been reported here, so that no more need be said."""
    if isinstance(error, OSError) and is_of_files(error):
        log.error(why_stopped(error, site, serving))
        return True
    if serving and isinstance(error, BuildError):
        log.error(str(error))  # MkDocs would report it only the first time
        return True
    return False
