"""What a page of the built site may load and run, stated in the page itself: nothing but the book's own files.

A book is written by its house, but words are pasted into it from anywhere. The templates make sure that a page runs
none of them; this is the second lock: if a script did get through, the browser would not run it, nor could it send
anything away. A serving book has no policy: its live reload is an inline script that keeps changing.
"""

from __future__ import annotations

import base64
import hashlib
import re
from functools import lru_cache

SCRIPT = re.compile(r"<script(?P<said>(?![^>]*\bsrc=)[^>]*)>(?P<text>.*?)</script>", re.DOTALL | re.IGNORECASE)
DATA = re.compile(r"""\btype=["']?application/""", re.IGNORECASE)
"""The type of a script that holds data and is not run."""
HEAD = re.compile(r"<head>|<meta charset=[^>]*>", re.IGNORECASE)
RULES = {
    "default-src": "'self'",
    "style-src": "'self' 'unsafe-inline'",
    "img-src": "'self' data: blob:",
    "media-src": "'self' data: blob:",
    "worker-src": "'self' blob:",
    "frame-src": "'self'",
    "object-src": "'none'",
    "base-uri": "'none'",
    "form-action": "'self'",
}
"""Everything except scripts. Styles are in attributes all over the book: swatches, drawings, column widths."""
REFERRER = '<meta name="referrer" content="no-referrer">'


def guarded(html: str) -> str:
    """A page with its policy as early in its head as possible, as it covers what comes after it.

    Scripts may come from the book's own files, or be one of those in the page, by the hash of their text.
    """
    sums = dict.fromkeys(_sum(found["text"]) for found in SCRIPT.finditer(html) if not DATA.search(found["said"]))
    scripts = " ".join(["'self'", *sums])
    rules = "; ".join(f"{what} {which}" for what, which in {**RULES, "script-src": scripts}.items())
    policy = f'<meta http-equiv="Content-Security-Policy" content="{rules}">{REFERRER}'
    places = list(HEAD.finditer(html, 0, 2000))
    return f"{html[: places[-1].end()]}{policy}{html[places[-1].end() :]}" if places else html


@lru_cache(maxsize=256)
def _sum(text: str) -> str:
    # a browser reads every line ending as one character
    text = text.replace("\r\n", "\n").replace("\r", "\n")
    return f"'sha256-{base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()}'"
