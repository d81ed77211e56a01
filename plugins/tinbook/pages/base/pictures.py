"""Drawings and photos as a page shows them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from markupsafe import Markup

from tinbook.models import Book, Copy, Picture, PictureFile, Technique


@dataclass(frozen=True, slots=True)
class PhotoSize:
    """A copy of a photo: its path in the site, for `link`, and its width in px."""

    address: str
    width: int


@dataclass(frozen=True, slots=True, kw_only=True)
class PictureView:
    """A picture: a drawing with its `svg`, or a photo at `src` with its copies in `srcset`, smallest first."""

    is_drawing: bool
    svg: Markup
    src: str
    srcset: tuple[PhotoSize, ...]
    width: float
    height: float
    alt: str
    caption: str


def picture_view(technique: Technique, file: str, book: Book, nth: int = 0) -> PictureView | None:
    """A technique's picture by its file; None if the book does not hold it (it may be private).

    A picture shown again on the same page needs another `nth`: no two elements of a page may share an id.
    """
    picture = next((picture for picture in technique.pictures if picture.file == file), None)
    held = book.pictures.get(file)
    return _view(picture, held, nth) if picture and held else None


def _view(picture: Picture, file: PictureFile, nth: int) -> PictureView:
    sizes = tuple(PhotoSize(photo_address(copy), copy.width) for copy in file.copies)
    return PictureView(
        is_drawing=file.kind == "drawing",
        svg=drawing(file, picture.alt, nth),
        src=sizes[-1].address if sizes else "",
        srcset=sizes,
        width=file.width,
        height=file.height,
        alt=picture.alt,
        caption=picture.shows or "",
    )


def loose_pictures(technique: Technique, book: Book) -> Iterator[PictureView]:
    """The pictures that no step shows."""
    shown = {step.picture for step in technique.steps}
    for picture in technique.pictures:
        view = picture_view(technique, picture.file, book)
        if view and picture.file not in shown:
            yield view


def drawing(file: PictureFile, alt: str, nth: int = 0) -> Markup:
    """A drawing as an element of a page that says what it shows; nothing for a photo."""
    svg = file.svg.replace(file.prefix, f"{file.prefix}{nth}-") if nth else file.svg
    named = Markup('<svg class="{}" role="img" aria-label="{}"').format("tb-inked" if file.inked else "tb-lit", alt)
    return Markup(svg.replace("<svg", named, 1))


def photo_address(copy: Copy) -> str:
    """Where a photo is in the site."""
    return f"pictures/{copy.name}"
