"""Late parts made by other processes are those made in this one."""

from __future__ import annotations

import multiprocessing
import os
import sys
import time
from collections.abc import Iterator
from pathlib import Path

import pytest
from tests.plugin.builds import built

from tinbook.loading import Loaded
from tinbook.plugin import ahead, events
from tinbook.plugin.ahead import Ahead, spare_processes
from tinbook.site import Site, build_site

linux = pytest.mark.skipif(sys.platform != "linux", reason="processes are forked on Linux only")


@pytest.fixture(scope="module")
def site(demo: Loaded) -> Site:
    return build_site(demo.book, demo.facts, demo.broken)


@pytest.fixture(scope="module")
def few(site: Site) -> list[str]:
    """Three pages of each kind, which two processes are not done with before they are ended."""
    kinds: dict[str, list[str]] = {}
    for address, page in site.pages.items():
        kinds.setdefault(page.template, []).append(address)
    return [address for alike in kinds.values() for address in alike[:3]]


def link_from(here: str) -> ahead.Link:
    return lambda address, anchor="": f"/{address}#{anchor}?from={here}"


@pytest.fixture
def two(site: Site) -> Iterator[Ahead]:
    made = Ahead(site, [*site.pages], link_from, 2)
    yield made
    made.close()


@pytest.mark.long
@linux
def test_every_part_is_the_same(two: Ahead, site: Site) -> None:
    marks = 0
    for address, page in site.pages.items():
        parts = two.parts(address)
        marks += len(parts)
        content = page.markdown
        assert page.fill(content, link_from(address), parts) == page.fill(content, link_from(address)), address
    assert marks > len(site.pages)


@linux
def test_a_page_the_book_does_not_have_has_no_parts(two: Ahead, site: Site) -> None:
    address = next(iter(site.pages))
    assert two.ready("nowhere")
    assert two.parts("nowhere") == {}
    assert two.parts(address)
    assert two.parts(address) == {}  # given once


@linux
def test_it_does_not_wait_but_makes_the_last_pages(site: Site) -> None:
    """The other process is slow: asked for the first page, the asker makes others meanwhile."""
    here = os.getpid()

    def slow(address: str) -> ahead.Link:
        if os.getpid() != here:
            time.sleep(0.2)
        return link_from(address)

    made = Ahead(site, [*site.pages], slow, 1)
    first, *_, last = ahead._rarest_first(site.pages)
    assert not made.ready(first) and not made.ready(last)
    assert made.parts(first) == site.pages[first].parts(link_from(first))
    assert made.ready(last)
    assert made.parts(last) == site.pages[last].parts(link_from(last))
    made.close()


def test_pages_of_a_rare_kind_come_first(site: Site) -> None:
    kinds = [site.pages[address].template for address in ahead._rarest_first(site.pages)]
    assert sorted(kinds, key=kinds.count) == kinds
    assert kinds.count(kinds[0]) == 1 < kinds.count(kinds[-1])


@linux
def test_what_shares_a_view_is_made_together(two: Ahead, site: Site) -> None:
    """A mixture's two leaves, and the plans of one shape."""
    lots = [[two._line[place] for place in lot] for lot in two._lots]
    assert [address for lot in lots for address in lot] == two._line
    assert len({id(site.pages[lot[0]].view) for lot in lots}) == len(lots)
    assert any("portions/round/round-40-cm" in lot and "portions/round" in lot for lot in lots)
    leaves = [lot for lot in lots if len(lot) > 1 and site.pages[lot[0]].template == "mixture"]
    assert all([f"{bench}/tables"] == rest for bench, *rest in leaves)
    assert len(leaves) == sum(page.template == "mixture" for page in site.pages.values())


@linux
def test_a_mistake_in_a_process_is_told(site: Site) -> None:
    def nowhere(here: str) -> ahead.Link:
        def link(address: str, anchor: str = "") -> str:
            raise LookupError(f"{here} links to {address}")

        return link

    made = Ahead(site, [*site.pages], nowhere, 1)
    with pytest.raises(LookupError, match="links to"):
        for address in site.pages:
            made.parts(address)
    made.close()


@linux
def test_what_a_process_that_is_gone_has_not_made_is_made_here(site: Site, few: list[str]) -> None:
    made = Ahead(site, few, link_from, 2)
    for helper in made._helpers:
        helper.kill()
        helper.join()
    assert not all(map(made.ready, few)) and len(few) > 40
    for address in few:
        assert made.parts(address) == site.pages[address].parts(link_from(address)), address
    made.close()


@linux
def test_a_process_that_ends_while_it_is_alone_holds_nobody_up(site: Site, few: list[str]) -> None:
    made = Ahead(site, few, link_from, 2)

    def end() -> None:
        made._alone().__enter__()
        os._exit(0)

    gone = multiprocessing.get_context("fork").Process(target=end)
    gone.start()
    gone.join(60)
    assert gone.exitcode == 0
    assert all(made.parts(address) is not None for address in few)
    made.close()


@linux
def test_a_build_with_help_is_the_build_without(book: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Of a small book; of the demo, `test_repeatable.py` builds one with as much help as there is and one without."""
    monkeypatch.setattr(events, "spare_processes", lambda pages: 0)
    alone = built(book, tmp_path / "alone")
    monkeypatch.setattr(events, "spare_processes", lambda pages: 1)
    helped = built(book, tmp_path / "helped")
    names = sorted(path.relative_to(alone) for path in alone.rglob("*.html"))
    assert names == sorted(path.relative_to(helped) for path in helped.rglob("*.html"))
    assert all((alone / name).read_bytes() == (helped / name).read_bytes() for name in names)


def test_where_help_is_taken(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "platform", "linux")
    monkeypatch.setattr(os, "sched_getaffinity", lambda pid: {0, 1, 2}, raising=False)
    assert spare_processes(10_000) == 2
    assert spare_processes(ahead.WORTH_IT) == 1
    assert spare_processes(ahead.WORTH_IT - 1) == 0
    monkeypatch.setattr(os, "sched_getaffinity", lambda pid: {0}, raising=False)
    assert spare_processes(10_000) == 0
    for platform in ("darwin", "win32"):
        monkeypatch.setattr(sys, "platform", platform)
        assert spare_processes(10_000) == 0
