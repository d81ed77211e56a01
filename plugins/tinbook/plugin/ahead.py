"""The late parts of a large book, worked out on the machine's other cores while this one runs Markdown and the theme.

Only where a process may be forked: on Linux, in a build (a serving process has threads), with a core to spare, and for
a book large enough to be worth it. The pages come out the same either way.
"""

from __future__ import annotations

import multiprocessing
import os
import sys
from collections import Counter
from collections.abc import Callable, Mapping
from concurrent.futures import ProcessPoolExecutor

from tinbook.pages.page import Link, Page

LinkFrom = Callable[[str], Link]
"""From a page's address to the `link` of that page."""

WORTH_IT = 60
"""Fewest pages for which a second process pays."""
AT_ONCE = 2
"""Pages handed over together."""

_given: tuple[Mapping[str, Page], LinkFrom]
"""What a forked process finds in its memory, so that nothing of the book has to be sent."""


class Ahead:
    """The late parts of all pages.

    The other processes make them from the beginning. Where the first one asks for what is not ready it does not wait,
    but makes pages from the end, so that no process is idle.
    """

    def __init__(self, pages: Mapping[str, Page], link_from: LinkFrom, processes: int) -> None:
        global _given
        _given = pages, link_from
        self._pool = ProcessPoolExecutor(processes, mp_context=multiprocessing.get_context("fork"))
        addresses = _rarest_first(pages)
        groups = [addresses[start : start + AT_ONCE] for start in range(0, len(addresses), AT_ONCE)]
        self._left = [(group, self._pool.submit(_parts, group)) for group in groups]
        self._under_way = {address: future for group, future in self._left for address in group}
        self._made: dict[str, dict[str, str]] = {}

    def ready(self, address: str) -> bool:
        """Whether the parts of a page can be had without waiting."""
        future = self._under_way.get(address)
        return address in self._made or future is None or future.done()

    def parts(self, address: str) -> Mapping[str, str]:
        """The late parts of one page, once."""
        future = self._under_way.pop(address, None)
        while future and address not in self._made and not future.done() and self._make_one():
            pass
        if future and address not in self._made:
            self._made |= future.result()
        return self._made.pop(address, {})

    def _make_one(self) -> bool:
        """Make the last pages that nobody has begun with; whether there are any."""
        while self._left:
            group, future = self._left.pop()
            if future.cancel():
                self._made |= _parts(group)
                return True
        return False

    def close(self) -> None:
        """Let the processes go."""
        self._pool.shutdown(cancel_futures=True)


def spare_processes(pages: int) -> int:
    """How many processes may work ahead for a book of so many pages; 0 where none should."""
    if sys.platform != "linux" or pages < WORTH_IT:
        return 0
    return len(os.sched_getaffinity(0)) - 1


def _rarest_first(pages: Mapping[str, Page]) -> list[str]:
    """Pages of a rare kind look over the whole book and take long: one left to the end would keep the rest waiting."""
    count = Counter(page.template for page in pages.values())
    return sorted(pages, key=lambda address: count[pages[address].template])


def _parts(addresses: list[str]) -> dict[str, dict[str, str]]:
    pages, link_from = _given
    return {address: pages[address].parts(link_from(address)) for address in addresses}
