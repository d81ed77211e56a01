"""Pictures that go with a sheet: as elements of its page, and as files beside its PDF."""

from __future__ import annotations

import base64
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from markupsafe import Markup

from tinbook.models import Picture, PictureFile
from tinbook.pages.base.pictures import drawing

LETTERS = "Atkinson Hyperlegible Next"
"""The name of the book's typeface in its file, for what sets drawings with it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """A picture: an element for the page, the bytes of its file under a `name`, what it shows, its caption."""

    name: str
    element: Markup
    content: bytes
    width: float
    height: float
    alt: str
    caption: str


def shown_pictures(pictures: Iterable[Picture], files: Mapping[str, PictureFile], name: str) -> tuple[Shown, ...]:
    """Pictures by the files the book holds of them; `name` begins their file names in the sheet."""
    return tuple(_shown(picture, files[picture.file], f"{name}-{number}") for number, picture in enumerate(pictures, 1))


def _shown(picture: Picture, file: PictureFile, name: str) -> Shown:
    if file.kind == "drawing":
        ending, content = "svg", lettered_svg(file.svg).encode()
        element = drawing(file, picture.alt)
    else:
        ending, content = "jpg", file.copies[0].content
        element = Markup('<img src="{}" width="{}" height="{}" alt="{}">').format(
            data_address("image/jpeg", content), file.copies[0].width, file.copies[0].height, picture.alt
        )
    return Shown(
        name=f"{name}.{ending}",
        element=element,
        content=content,
        width=file.width,
        height=file.height,
        alt=picture.alt,
        caption=picture.shows or "",
    )


def lettered_svg(svg: str) -> str:
    """A drawing in the book's typeface."""
    return svg.replace("<svg", f'<svg font-family="{LETTERS}"', 1)


def data_address(kind: str, content: bytes) -> str:
    """Content as a data address, which needs no request: RFC 2397."""
    return f"data:{kind};base64,{base64.b64encode(content).decode()}"
