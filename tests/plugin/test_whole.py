"""Pages filled at once or at the end: the same page, with the styles and scripts it wants and no more."""

from __future__ import annotations

from pathlib import Path

import pytest
from mkdocs.structure.files import File

from tinbook.loading import Loaded
from tinbook.plugin.whole import OWN_FILES, SCRIPTS_MARK, STYLES_MARK, WholePages, own_files
from tinbook.site import Site, build_site

THEME = Path(__file__).parents[2] / "plugins" / "tinbook" / "plugin" / "theme" / "assets" / "tinbook"


@pytest.fixture(scope="module")
def site(demo: Loaded) -> Site:
    return build_site(demo.book, demo.facts, {})


def pages_of(site: Site, folder: Path, scripts: bool = True, processes: int = 0) -> WholePages:
    addresses = [*site.pages, *site.photos, *site.templates]
    names = [f"{address}.md" if address in site.pages else address for address in addresses]
    files = {name: File(name, "docs", str(folder), use_directory_urls=True) for name in names}
    return WholePages(site, files, [*site.pages], processes=processes, scripts=scripts)


def test_a_page_gets_its_own_files_and_no_others(site: Site, tmp_path: Path) -> None:
    whole = pages_of(site, tmp_path).fill("guests", f"{STYLES_MARK}|{SCRIPTS_MARK}")
    assert whole == (
        '<link rel="stylesheet" href="../assets/tinbook/guests.css">|'
        '<script type="module" src="../assets/tinbook/guests.js"></script>'
    )


def test_a_book_as_a_folder_loads_no_modules(site: Site, tmp_path: Path) -> None:
    whole = pages_of(site, tmp_path, scripts=False).fill("guests", f"{STYLES_MARK}|{SCRIPTS_MARK}")
    assert whole.endswith("|")


@pytest.mark.parametrize(
    ("shown", "styles", "scripts"),
    [
        ('<ul data-narrow="x">', ["folds", "rows", "guests", "narrow"], ["guests", "narrow"]),
        ('<ul class="tb-links">', ["guests", "links"], ["guests"]),
        ('<div class="tb-scroll"><table class="tb-table">', ["tables", "guests"], ["guests"]),
        ("<table><thead>", ["written", "guests"], ["guests"]),
        ('<nav class="tb-toc">', ["toc", "guests"], ["guests"]),
        ('<ul class="tb-lines"><li class="tb-do">', ["guests"], ["guests"]),
        ('<ul class="tb-list">', ["rows", "guests"], ["guests"]),
        ("<p>Written by hand</p>", ["guests"], ["guests"]),
    ],
)
def test_what_stands_in_a_page_comes_with_its_style(shown: str, styles: list[str], scripts: list[str]) -> None:
    for ending, names in (("css", styles), ("js", scripts)):
        assert own_files("guests", shown, ending) == [f"assets/tinbook/{name}.{ending}" for name in names]


def test_a_page_of_tables_has_the_styles_of_the_bench_and_not_its_script() -> None:
    names = [Path(file).stem for file in own_files("mixture_tables", "", "css")]
    assert names == ["mixture", "mixture_tables"]
    assert own_files("mixture_tables", "", "js") == ["assets/tinbook/mixture_tables.js"]


def test_every_own_file_is_there_and_of_a_kind_of_page(site: Site) -> None:
    kinds = {page.template for page in site.pages.values()} | {"broken", "orders", "shopping"}
    for ending, names in OWN_FILES.items():
        assert set(names) <= kinds
        assert all((THEME / f"{name}.{ending}").is_file() for name in names)
