"""The system's own errors in a baker's words."""

import errno
import os

import pytest

from tinbook.problems.disk import why_not


@pytest.mark.parametrize(
    ("code", "said"),
    [
        (errno.ENOSPC, "the disk is full"),
        (errno.EROFS, "the disk is read-only"),
        (errno.EACCES, "you may not write to its folder"),
        (errno.EIO, os.strerror(errno.EIO).lower()),
    ],
)
def test_why_something_could_not_be_written(code: int, said: str) -> None:
    assert why_not(OSError(code, os.strerror(code))) == said


def test_an_error_without_a_number() -> None:
    assert why_not(OSError("No gulls")) == "no gulls"
