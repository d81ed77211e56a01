"""Our scripts, styles and the theme's HTML made small in the built site. What is written here stays readable; the site
stays light.

The minifier has no build for some machines (Macs with Apple's chips among them); there the files go out as written.
"""

from __future__ import annotations

import re
from pathlib import Path

try:
    import minify
except ImportError:
    minify = None

KINDS = {".js": "application/javascript", ".css": "text/css"}
AS_IT_CAME = ("minisearch.js",)
"""Scripts of others: the minifier puts a variable of this one before what it is made of."""

INDENT = re.compile(r"\n\s+")
"""A line's end with all the space after it, which a browser reads as one space, as it does the end alone."""


def tight(html: str) -> str:
    """A page without empty lines and indents; one that holds text as it was typed stays as it is."""
    return html if "<pre" in html or "<textarea" in html else INDENT.sub("\n", html)


def squeeze(folder: Path) -> None:
    """Make every script and style of ours in `folder` small, in place."""
    if minify is None:
        return
    for path in sorted(folder.iterdir()):
        if path.suffix in KINDS and path.name not in AS_IT_CAME:
            text = minify.string(KINDS[path.suffix], path.read_text("utf-8"))
            path.write_text(text, "utf-8")
