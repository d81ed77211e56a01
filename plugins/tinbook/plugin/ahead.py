"""The late parts of a large book, worked out on the machine's other cores while this one runs Markdown and the theme.

Only where a process may be forked: on Linux, in a build (a serving process has threads), with a core to spare, and for
a book large enough to be worth it. The pages come out the same either way.
"""

from __future__ import annotations

import multiprocessing
import os
import sys
from collections.abc import Callable, Mapping
from concurrent.futures import Future, ProcessPoolExecutor

from tinbook.pages.page import Link, Page

LinkFrom = Callable[[str], Link]
"""From a page's address to the `link` of that page."""

WORTH_IT = 60
"""Fewest pages for which a second process pays."""
AT_ONCE = 4
"""Pages handed over together."""

_given: tuple[Mapping[str, Page], LinkFrom]
"""What a forked process finds in its memory, so that nothing of the book has to be sent."""


class Ahead:
    """The late parts of pages, asked for page by page in the order of the book."""

    def __init__(self, pages: Mapping[str, Page], link_from: LinkFrom, processes: int) -> None:
        global _given
        _given = pages, link_from
        self._pool = ProcessPoolExecutor(processes, mp_context=multiprocessing.get_context("fork"))
        self._parts: dict[str, Future[dict[str, dict[str, str]]]] = {}
        # from the end: the first process comes from the beginning, and they meet where they meet
        addresses = list(pages)[::-1]
        for start in range(0, len(addresses), AT_ONCE):
            group = addresses[start : start + AT_ONCE]
            self._parts |= dict.fromkeys(group, self._pool.submit(_parts, group))

    def parts(self, address: str) -> Mapping[str, str]:
        """The late parts of one page, once; none where nobody has begun with them: they are sooner made than awaited."""
        future = self._parts.pop(address, None)
        return {} if future is None or future.cancel() else future.result()[address]

    def close(self) -> None:
        """Let the processes go."""
        self._pool.shutdown(cancel_futures=True)


def spare_processes(pages: int) -> int:
    """How many processes may work ahead for a book of so many pages; 0 where none should."""
    if sys.platform != "linux" or pages < WORTH_IT:
        return 0
    return len(os.sched_getaffinity(0)) - 1


def _parts(addresses: list[str]) -> dict[str, dict[str, str]]:
    pages, link_from = _given
    return {address: pages[address].parts(link_from(address)) for address in addresses}
