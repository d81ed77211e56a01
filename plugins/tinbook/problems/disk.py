"""Why something could not be written, in words for a baker."""

from __future__ import annotations

import errno

FULL = frozenset((errno.ENOSPC, errno.EDQUOT, errno.EFBIG))
"""The disk has no room for what was to be written."""
REASONS = {
    errno.ENOSPC: "the disk is full",
    errno.EDQUOT: "the disk is full",
    errno.EROFS: "the disk is read-only",
    errno.EACCES: "you may not write to its folder",
    errno.EPERM: "you may not write to its folder",
    errno.EFBIG: "the disk cannot hold so large a file",
}


def why_not(error: OSError) -> str:
    """The system's reason, in words."""
    return REASONS.get(error.errno or 0) or (error.strerror or str(error)).lower()
