"""Our scripts and styles made small in the built site. What is written here stays readable; the site stays light.

The minifier has no build for some machines (Macs with Apple's chips among them); there the files go out as written.
"""

from __future__ import annotations

from pathlib import Path

try:
    import minify
except ImportError:
    minify = None

KINDS = {".js": "application/javascript", ".css": "text/css"}


def squeeze(folder: Path) -> None:
    """Make every script and style in `folder` small, in place."""
    if minify is None:
        return
    for path in sorted(folder.iterdir()):
        if path.suffix in KINDS:
            text = minify.string(KINDS[path.suffix], path.read_text("utf-8"))
            path.write_text(text, "utf-8")
