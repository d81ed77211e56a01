"""Ways through the book: from page to page, to its main sections from every page, and its contents as MkDocs wants
them."""

from __future__ import annotations

from collections.abc import Mapping
from html import escape
from typing import Any

from mkdocs.structure.files import File

from tinbook.pages.base.sheets import FOLDER as SHEETS

ROOMS = {
    "Mixtures": "mixtures/index",
    "Techniques": "techniques/index",
    "Cakes": "cakes/index",
    "Orders": "orders/index",
    "Tins": "tins",
    "Measures": "measures",
}
INSIDE = {
    "Mixtures": ("tags", "on-hand"),
    "Techniques": ("colours",),
    "Tins": ("portions/", "guests", "boards", "covering"),
    "Measures": ("ingredients", "oven"),
}
"""Pages that belong to a section without being in its folder; one that ends in a slash is a folder."""
MORE = {
    "Guests": "guests", "Portions": "portions/index", "Covering": "covering", "Boards": "boards",
    "Colours": "colours", "Oven": "oven",
    "Ingredients": "ingredients", "Tags": "tags", "Cautions": "cautions",
    "Allergens": "allergens", "Sources": "sources",
    "Reference": "reference/index",
    "On the tablet": "on-the-tablet", "Changes": "changes",
}  # fmt: skip


def way(here: File, files: Mapping[str, File], address: str, anchor: str = "") -> str:
    """The link from a page to an address or a photo of the book. LookupError if there is no such page."""
    target = files.get(f"{address}.md") or files.get(address)
    if target is None:
        raise LookupError(f"{here.src_uri} links to {address}, which is not a page in the book")
    return target.url_relative_to(here) + (f"#{anchor}" if anchor else "")


def rooms_of(files: Mapping[str, File]) -> list[str]:
    """The main sections of a book, by address."""
    return [each for each in (*ROOMS.values(), *MORE.values()) if f"{each}.md" in files]


def ways_from(here: str, files: Mapping[str, File]) -> dict[str, list[dict[str, Any]]]:
    """What the header and footer of a page lead to."""
    return {"rooms": rooms_from(here, ROOMS, files), "more_rooms": rooms_from(here, MORE, files)}


def rooms_from(here: str, rooms: Mapping[str, str], files: Mapping[str, File]) -> list[dict[str, Any]]:
    """Links for the header or footer, for those pages the book has.

    `here` says whether it is the page itself ("page") or the page is inside it ("true"), as ARIA's `aria-current`.
    """
    return [
        {"title": title, "url": file.url, "here": "page" if here == address else _inside(here, title, address)}
        for title, address in rooms.items()
        if (file := files.get(f"{address}.md"))
    ]


def _inside(here: str, title: str, address: str) -> str:
    """`true` for a page inside a section, otherwise empty. A sheet of a list is where the list is."""
    here = here.removeprefix(SHEETS)
    folders = (f"{address.removesuffix('/index')}/", *INSIDE.get(title, ()))
    belongs = any(here.startswith(each) if each.endswith("/") else here.split("/")[0] == each for each in folders)
    return "true" if belongs else ""


def as_nav(entries: list[Any]) -> list[Any]:
    """Contents as MkDocs wants them: addresses become file names."""
    return [_nav_entry(entry) for entry in entries]


def _nav_entry(entry: Any) -> Any:
    if isinstance(entry, str):
        return f"{entry}.md"
    # the theme prints titles as they are, so a baker's title is escaped here
    return {
        escape(title): as_nav(inner) if isinstance(inner, list) else f"{inner}.md" for title, inner in entry.items()
    }
