"""The late parts of a large book, worked out on the machine's other cores while this one runs Markdown and the theme.

Only where a process can be forked: on Linux, in a build (a serving process has threads), with a core to spare, and for
a book large enough to be worth it. The pages come out the same either way.
"""

from __future__ import annotations

import marshal
import multiprocessing
import os
import signal
import sys
import tempfile
from collections import Counter
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from itertools import groupby

from tinbook.pages.base.page import Link, Page, Views
from tinbook.plugin.attention import Attention
from tinbook.site import Site

LinkFrom = Callable[[str], Link]
"""A page's address to the `link` function of that page."""

WORTH_IT = 60
"""The fewest pages worth another process."""


class Ahead:
    """The late parts of the pages at `made`.

    Pages of one view, such as a mixture's two pages, are made by one process, which works out once what they share. The
    other processes make them from the front. When the first one needs something that is not ready it does not wait, but
    makes pages from the back, so that no process is idle. Anything a process could not make is made here in the end, so
    its mistake comes up again and is reported.

    Nothing passes through pipes: they need threads in this process, which would wait for each other and hold up the
    others. The results are in unnamed files, and shared memory says where.
    """

    def __init__(self, site: Site, made: Sequence[str], link_from: LinkFrom, processes: int) -> None:
        fork = multiprocessing.get_context("fork")
        self._site, self._pages, self._link_from = site, site.pages, link_from
        self._views = Views()
        self._attention = Attention()
        self._line = _rarest_first({address: site.pages[address] for address in made})
        self._lots = [list(lot) for _, lot in groupby(range(len(self._line)), lambda place: id(self._view(place)))]
        """Places of pages that are made together."""
        self._places = {address: place for place, address in enumerate(self._line)}
        self._made: dict[int, dict[str, str]] = {}
        self._files = [tempfile.TemporaryFile() for _ in range(processes)]  # noqa: SIM115, `close` closes them
        self._lock = tempfile.TemporaryFile()  # noqa: SIM115
        self._ends = fork.RawArray("q", [0, len(self._lots)])
        """Between these lots are the pages nobody has begun."""
        self._lies = fork.RawArray("q", 3 * len(self._line))
        """For each place: in which file its parts are, from which byte, and how many bytes; 0 until they are ready."""
        self._helpers = [fork.Process(target=self._help, args=(number,), daemon=True) for number in range(processes)]
        for helper in self._helpers:
            helper.start()

    def ready(self, address: str) -> bool:
        """Whether a page's parts can be had without waiting."""
        place = self._places.get(address)
        return place is None or place in self._made or self._handed_in(place)[2] > 0

    def parts(self, address: str) -> Mapping[str, str]:
        """The late parts of one page, once."""
        while not self.ready(address) and (last := self._begin_last()) is not None:
            self._made |= {place: self._parts(place) for place in last}
        place = self._places.pop(address, None)
        if place is None:
            return {}
        if place in self._made:
            return self._made.pop(place)
        if not self._handed_in(place)[2]:
            for helper in self._helpers:
                helper.join()  # nothing is left to start, so they end once they hand in what they have
        file, start, size = self._handed_in(place)
        if not size:
            return self._parts(place)
        parts: dict[str, str]
        parts, reads = marshal.loads(os.pread(self._files[file].fileno(), size, start))
        self._site.ledger.add_reads(self._site.group_of(address), reads)
        return parts

    def close(self) -> None:
        """Let the processes end."""
        for helper in self._helpers:
            helper.kill()
            helper.join()
        for file in (*self._files, self._lock):
            file.close()

    def _help(self, number: int) -> None:
        """What another process does until nothing is left."""
        # whoever stops the build stops the first process, which stops this one
        signal.signal(signal.SIGINT, signal.SIG_IGN)
        start, file = 0, self._files[number].fileno()
        while (lot := self._begin_first()) is not None:
            self._attention.tidy()
            for place in lot:
                try:
                    made = self._parts(place), self._site.ledger.reads_of(self._site.group_of(self._line[place]))
                    parts = marshal.dumps(made)
                    size = os.pwrite(file, parts, start)
                except Exception:
                    return
                if size < len(parts):
                    return
                with self._alone():
                    self._lies[3 * place : 3 * place + 3] = [number, start, size]
                start += size

    @contextmanager
    def _alone(self) -> Iterator[None]:
        """Holds the lock on what the processes share. The system releases the lock of one that ends
        meanwhile."""
        os.lockf(self._lock.fileno(), os.F_LOCK, 0)
        yield
        os.lockf(self._lock.fileno(), os.F_ULOCK, 0)

    def _begin_first(self) -> list[int] | None:
        with self._alone():
            first, end = self._ends
            self._ends[0] = min(first + 1, end)
        return self._lots[first] if first < end else None

    def _begin_last(self) -> list[int] | None:
        with self._alone():
            first, end = self._ends
            self._ends[1] = max(first, end - 1)
        return self._lots[end - 1] if first < end else None

    def _handed_in(self, place: int) -> tuple[int, int, int]:
        """File, first byte and length of what another process has made; no length if it has not."""
        with self._alone():
            file, start, size = self._lies[3 * place : 3 * place + 3]
        return file, start, size

    def _parts(self, place: int) -> dict[str, str]:
        address = self._line[place]
        with self._site.reading(address):
            return self._pages[address].parts(self._link_from(address), self._views)

    def _view(self, place: int) -> object:
        return self._pages[self._line[place]].view


def spare_processes(pages: int) -> int:
    """How many processes may work ahead for a book of this many pages; 0 if none should."""
    return min(len(os.sched_getaffinity(0)) - 1, pages // WORTH_IT) if sys.platform == "linux" else 0


def _rarest_first(pages: Mapping[str, Page]) -> list[str]:
    """Pages of a rare kind read the whole book and take a long time: one left to the end would keep the rest
    waiting."""
    count = Counter(page.template for page in pages.values())
    return sorted(pages, key=lambda address: count[pages[address].template])
