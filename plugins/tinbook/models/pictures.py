"""A picture from the folder recipes/pictures, ready for pages to show, with nothing in it that cannot be seen."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal


@dataclass(frozen=True, slots=True)
class Copy:
    """A photo at one size: its own file name (with a hash of its bytes), width and height in px, the JPEG itself."""

    name: str
    width: int
    height: int
    content: bytes = field(repr=False)


@dataclass(frozen=True, slots=True, kw_only=True)
class PictureFile:
    """A picture by the name sources use for it, and its size in px.

    A drawing is `svg` text of allowed parts only, its ids beginning with `prefix`; `inked`: it has no colour of its own
    and takes the page's ink. A photo has `copies`, smallest first, no two the same.
    """

    file: str
    kind: Literal["drawing", "photo"]
    width: float
    height: float
    svg: str = ""
    prefix: str = ""
    inked: bool = False
    copies: tuple[Copy, ...] = ()
