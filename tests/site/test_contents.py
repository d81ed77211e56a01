"""The table of contents."""

from collections.abc import Iterator
from typing import Any

from tinbook.loading import Loaded
from tinbook.site import build_site, contents


def addresses(entries: list[Any]) -> Iterator[str]:
    for entry in entries:
        if isinstance(entry, str):
            yield entry
        else:
            for inner in entry.values():
                yield from addresses(inner) if isinstance(inner, list) else (inner,)


def test_every_page_stands_in_it_once(demo: Loaded) -> None:
    site = build_site(demo.book, demo.facts, {})
    told = list(addresses(contents(site, ["changes"])))
    listed = [address for address, page in site.pages.items() if page.listed]
    assert sorted(told) == sorted([*listed, "changes"])
    unlisted = set(site.pages) - set(listed)
    leaves = {f"mixtures/{slug}/tables" for slug in demo.book.mixtures}
    leaves |= {f"cakes/{slug}/{leaf}" for slug in demo.book.cakes for leaf in ("used", "making")}
    others = {address.partition("/")[0] for address in unlisted - leaves}
    assert leaves < unlisted and others == {"ingredients", "find", "portions"}


def test_sections_come_in_order_and_mixtures_by_kind(demo: Loaded) -> None:
    made = contents(build_site(demo.book, demo.facts, {}), ["changes"])
    names = [next(iter(entry)) for entry in made]
    assert names[0] == "Home" and names[-1] == "Changes"
    (mixtures,) = [entry["Mixtures"] for entry in made if "Mixtures" in entry]
    assert mixtures[0] == "mixtures/index"
    kinds = [next(iter(entry)) for entry in mixtures[1:]]
    titles = [kind.title for kind in demo.facts.kinds.values()]
    assert kinds == [title for title in titles if title in kinds]
