"""The garbage collector, off during a build.

Scanning a large book again and again would take a tenth of the build's time. A preview builds again and again, though:
what it has finished with is collected after each change, without scanning the current book.
"""

from __future__ import annotations

import atexit
import gc
from collections.abc import Iterator
from contextlib import contextmanager

FEW = 20
"""Pages after which the memory is tidied: each leaves half a megabyte."""


class Attention:
    """Collector off from `hold` to `let_go`."""

    _collects = False
    _pages = 0
    _serving = False
    _stands = False
    """Whether a whole site exists, set aside from what is scanned."""

    def as_the_process_ends(self, serving: bool = False) -> None:
        """Off at the end too, or Python would scan the whole book once more. `serving`: the process goes on after a
        build."""
        self._serving = serving
        atexit.register(gc.freeze)

    def hold(self) -> None:
        """Turn the collector off, if it is on, for a whole build."""
        self._collects = gc.isenabled()
        gc.disable()

    def set_aside(self) -> None:
        """What exists by now stays to the end of the build: tidying need not look at it, nor write to its memory, which
        other processes share."""
        gc.freeze()

    def let_go(self) -> None:
        """Turn it on again, with the whole book among the objects it rarely scans, or never in a preview."""
        if not self._collects:
            return
        if self._stands:
            gc.unfreeze()
            gc.collect()  # the site that stood before
        gc.freeze()
        self._stands = self._serving
        if not self._serving:
            gc.unfreeze()
        gc.enable()

    def tidy(self) -> None:
        """After some pages: collect the reference cycles they have left, which are new, so that little is scanned."""
        self._pages += 1
        if self._pages % FEW == 0:
            gc.collect(0)

    @contextmanager
    def held(self) -> Iterator[None]:
        """Off while a part is made again; what the last such part left behind is collected."""
        collects = gc.isenabled()
        gc.disable()
        try:
            yield
        finally:
            if collects:
                gc.collect()
                gc.enable()
