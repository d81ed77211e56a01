"""A book of four hundred mixtures: no page grows with it, every row is on one page, every link leads somewhere."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Mapping

import pytest
from tests.books import light

from tinbook.loading import load_book
from tinbook.pages.at_a_glance.on_hand import ROWS as HAND_ROWS
from tinbook.pages.base.page import Page
from tinbook.pages.base.sheets import FOLDER, ROWS
from tinbook.site import Site, build_site

COUNT, BAKED = 400, 300
HEAVIEST = 100_000
"""Bytes of a page without what is round it, 10 kB."""
A_ROW = 900
"""Bytes of a row of a list: of what fits our tins a mixture has three."""


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Site:
    loaded = load_book(light(tmp_path_factory.mktemp("light"), COUNT) / "recipes")
    assert not loaded.problems
    return build_site(loaded.book, loaded.facts, {})


@pytest.fixture(scope="module")
def texts(site: Site) -> Mapping[str, str]:
    """Every page filled, but of the mixtures' own only those of the first and the last."""
    of_one = re.compile(r"mixtures/m\d+")
    some = {f"mixtures/m{number:04}" for number in (0, 1, COUNT - 1)}
    shown = [page for address, page in site.pages.items() if not of_one.match(address) or address in some]
    return {page.address: filled(page, site) for page in shown}


def filled(page: Page, site: Site) -> str:
    def link(address: str, anchor: str = "") -> str:
        assert address in site.pages or address.startswith(("pictures/", "true-size/")), (page.address, address)
        return f"/{address}#{anchor}"

    return page.fill(page.markdown, link)


def sheets(site: Site, address: str) -> list[Page]:
    """A list's pages, in order, by the links of its first."""
    first = site.pages[address]
    assert first.sheet, address
    return [site.pages[each.address] for each in first.sheet.links]


def test_no_page_is_heavy(texts: Mapping[str, str]) -> None:
    heavy = {address: len(text.encode()) for address, text in texts.items() if len(text.encode()) > HEAVIEST}
    # what each tin becomes from each other, and how each cake is cut: as large in any book
    assert set(heavy) <= {"tins/all", "portions/round", "portions/square"}, heavy
    assert max(heavy.values()) < 130_000


def test_a_row_is_light(site: Site, texts: Mapping[str, str]) -> None:
    seen = 0
    for address, page in site.pages.items():
        if page.sheet and page.template in ("list", "oven_kind", "on_hand"):
            rows = page.sheet.end - page.sheet.first
            assert rows <= ROWS and len(texts[address].encode()) < 12_000 + rows * A_ROW, address
            seen += 1
    assert seen > 15


def linked(texts: list[str], folder: str = "mixtures/m") -> list[str]:
    return [
        address for text in texts for address in re.findall(rf'<(?:li[^>]*|th[^>]*)><a href="/({folder}\d+)#"', text)
    ]


def test_every_mixture_is_on_one_sheet_of_each_list(site: Site, texts: Mapping[str, str]) -> None:
    every = [f"mixtures/{slug}" for slug in site.desk.book.mixtures] if site.desk else []
    baked = [address for address in every if int(address[-4:]) % 4]
    for address, wanted in (
        ("mixtures/index", every), ("find", every), ("tags/everyday", every), ("mixtures/kinds/creamed", baked),
        ("tags/for-winter", every[1::2]), ("on-hand", baked), ("ingredients/butter/mixtures", every),
    ):  # fmt: skip
        pages = sheets(site, address)
        most = HAND_ROWS if address == "on-hand" else ROWS
        assert len(pages) == -(-pages[0].sheet.rows // most) if pages[0].sheet else False
        assert sorted(linked([texts[page.address] for page in pages])) == sorted(wanted), address
        assert [page.listed for page in pages[1:]] == [False] * (len(pages) - 1)
    both = Counter(linked([texts[page.address] for page in sheets(site, "oven/creamed")]))
    assert sorted(both) == sorted(baked) and set(both.values()) == {2}  # in either table


def test_a_card_counts_the_mixtures_it_cannot_name(texts: Mapping[str, str]) -> None:
    butter, lemon = texts["ingredients/butter"], texts["ingredients/lemon"]
    assert f'<a class="tb-alone" href="/ingredients/butter/mixtures#">{COUNT}\u00a0mixtures</a>' in butter
    assert "/mixtures/m" not in butter and "In mixtures" not in lemon


def anchors(text: str) -> set[str]:
    return set(re.findall(r'id="([^"]+)"', text)) | set(re.findall(r"{ #(\S+) ", text))


def test_links_and_anchors_lead_somewhere(texts: Mapping[str, str]) -> None:
    known = {address: anchors(text) for address, text in texts.items()}
    tried = 0
    for address, text in texts.items():
        for target, anchor in re.findall(r'href="/([^"#]+)#([^"]+)"', text):
            if target in known:
                assert anchor in known[target], (address, target, anchor)
                tried += target == "tags"
    assert tried >= 6  # two tags of each of three mixtures


def test_sheets_are_in_no_contents_and_in_their_own_room(site: Site) -> None:
    later = [page for address, page in site.pages.items() if address.startswith(FOLDER)]
    assert len(later) > 10 and not any(page.listed for page in later)
    assert all("search: {exclude: true}" in page.markdown for page in later)


def rows_of_links(texts: Mapping[str, str]) -> Iterator[list[str]]:
    for text in texts.values():
        if found := re.search(r'<nav class="tb-sheets.*?</nav>', text):
            yield re.findall(r'href="/([^"#]+)#"', found[0])


def test_every_sheet_leads_to_all(texts: Mapping[str, str]) -> None:
    rows = list(rows_of_links(texts))
    assert len(rows) > 15 and all(len(row) > 1 and set(row) <= set(texts) for row in rows)
