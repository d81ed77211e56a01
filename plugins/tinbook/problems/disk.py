"""Why something could not be written, in words for a baker."""

from __future__ import annotations

import errno

FULL = frozenset((errno.ENOSPC, errno.EDQUOT, errno.EFBIG))
"""The disk has no room for what was to be written."""
REASONS = {
    errno.ENOSPC: "the disk is full",
    errno.EDQUOT: "the disk is full",
    errno.EROFS: "the disk can only be read",
    errno.EACCES: "its folder may not be written to",
    errno.EPERM: "its folder may not be written to",
    errno.EFBIG: "the disk takes no file so large",
}


def why_not(error: OSError) -> str:
    """The system's reason, in words."""
    return REASONS.get(error.errno or 0) or (error.strerror or str(error)).lower()
