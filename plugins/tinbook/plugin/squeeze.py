"""Our scripts, styles and the theme's HTML minified in the built site. The sources stay readable; the site stays light.

The minifier has no build for some machines (Macs with Apple chips among them); there the files go out as written.
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
"""Other people's scripts: in this one, the minifier puts a variable before what it is made from."""

INDENT = re.compile(r"\n\s+")
"""A line ending with all the space after it, which a browser reads as one space, as it does the ending alone."""


def tight(html: str) -> str:
    """A page without empty lines and indents; one that holds text as it was typed stays as it is."""
    return html if "<pre" in html or "<textarea" in html else INDENT.sub("\n", html)


def squeeze(folder: Path) -> None:
    """Minify every script and style of ours in `folder`, in place."""
    if minify is None:
        return
    for path in sorted(folder.iterdir()):
        if path.suffix in KINDS and path.name not in AS_IT_CAME:
            text = minify.string(KINDS[path.suffix], path.read_text("utf-8"))
            path.write_text(text, "utf-8")
