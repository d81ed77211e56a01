"""The garbage collector, off during a build.

Scanning a large book again and again would take a tenth of the build's time.
"""

from __future__ import annotations

import atexit
import gc
from collections.abc import Iterator
from contextlib import contextmanager


class Attention:
    """Collector off from `hold` to `let_go`."""

    _collects = False

    def as_the_process_ends(self) -> None:
        """Off then too, as Python would scan the whole book once more."""
        atexit.register(gc.freeze)

    def hold(self) -> None:
        """Turn the collector off, if it is on."""
        self._collects = gc.isenabled()
        gc.disable()

    @contextmanager
    def held(self) -> Iterator[None]:
        """Off meanwhile."""
        self.hold()
        try:
            yield
        finally:
            self.let_go()

    def let_go(self) -> None:
        """Turn it on again, with the whole book among the objects it rarely scans."""
        if self._collects:
            gc.freeze()
            gc.unfreeze()
            gc.enable()
