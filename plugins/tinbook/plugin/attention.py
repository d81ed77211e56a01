"""Python's whole attention for a build: it does not look for garbage in circles while the book grows.

Looking through a large book again and again takes a tenth of the time of its build.
"""

from __future__ import annotations

import atexit
import gc


class Attention:
    """Held from `hold` to `let_go`."""

    _collects = False

    def as_the_process_ends(self) -> None:
        """Python would look through the whole book for garbage then too."""
        atexit.register(gc.freeze)

    def hold(self) -> None:
        """Stop looking for garbage, if Python does."""
        self._collects = gc.isenabled()
        gc.disable()

    def let_go(self) -> None:
        """Look for it again; the whole book goes among what is looked through rarely."""
        if self._collects:
            gc.freeze()
            gc.unfreeze()
            gc.enable()
