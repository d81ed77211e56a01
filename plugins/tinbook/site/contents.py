"""The table of contents: sections with a first page of their own, mixtures by kind."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from tinbook.site.book import Site


def contents(site: Site, own: Iterable[str] = ()) -> list[dict[str, Any]]:
    """The contents as nested lists of {title: address or list}; `own` are the addresses of hand-written pages.

    A section with more than its first page is a list; a kind of mixture is a section within Mixtures.
    """
    tree: dict[str, Any] = {}
    for page in site.pages.values():
        if not page.listed:
            continue
        branch = tree
        for name in page.section:
            branch = branch.setdefault(name, {})
        branch.setdefault("", []).append(page)
    made = _branch(tree)
    return made + [{_title(address): address} for address in sorted(own) if address not in site.pages]


def _branch(branch: dict[str, Any]) -> list[Any]:
    entries: list[Any] = [{page.title: page.address} for page in branch.get("", ())]
    for name, inner in branch.items():
        if name:
            inside = _branch(inner)
            only = next(iter(inside[0].values())) if len(inside) == 1 and isinstance(inside[0], dict) else None
            entries.append({name: only if isinstance(only, str) else _first_unnamed(inside)})
    return entries


def _first_unnamed(inside: list[Any]) -> list[Any]:
    """A section's first page has the section's name."""
    first = next(iter(inside[0].values()))
    return [first, *inside[1:]] if isinstance(first, str) else inside


def _title(address: str) -> str:
    return address.rpartition("/")[2].replace("-", " ").capitalize()
