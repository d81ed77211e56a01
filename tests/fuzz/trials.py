"""One spoilt thing tried: whatever is in it, it is told or read, and never a traceback.

The long run, on every core of the machine: `python -m tests.fuzz.trials --read 300000 --render 30000`.
"""

from __future__ import annotations

import argparse
import multiprocessing
import tempfile
import time
import traceback
from collections import Counter
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from functools import cache
from itertools import count, islice
from pathlib import Path
from typing import Any
from unittest.mock import patch

from tests.fuzz.mutations import a_book, a_drawing, a_note, a_page

from tinbook.cli.drafting import NoteWanted, draft_found, draft_mixture
from tinbook.cli.importing import NoRecipe, find_recipe
from tinbook.loading import Loaded, load_book
from tinbook.loading.drawings import read_drawing
from tinbook.loading.files import Unfit
from tinbook.plans.base import shelf
from tinbook.problems import spell
from tinbook.site import build_site
from tinbook.tins import Tin, standard_tins

SELDOM = ("cuts", "portions", "guests", "boards", "tins")
"""Pages that go by the house alone and take long: every tenth book has them written."""
SHARE = 8
"""Of the standard tins a spoilt book sees one in so many, others in the next: what falls over does so in few rows."""
CHUNK = 10


@cache
def _folder() -> Path:
    return Path(tempfile.mkdtemp(prefix="spoilt")) / "recipes"


_there: dict[str, bytes] = {}


def _written(seed: int) -> tuple[Path, int]:
    """The folder of a spoilt book and how many of its files are spoilt; what is as before is not written again."""
    (files, spoilt), folder = a_book(seed), _folder()
    for name in _there.keys() - files.keys():
        (folder / name).unlink()
        del _there[name]
    for name, raw in files.items():
        if _there.get(name) != raw:
            (folder / name).parent.mkdir(parents=True, exist_ok=True)
            (folder / name).write_bytes(raw)
            _there[name] = raw
    return folder, spoilt


def _sound(loaded: Loaded) -> None:
    for problem in loaded.problems:
        assert problem.message and problem.place.line >= 1 and spell(problem)
    addresses = {f"mixtures/{slug}" for slug in loaded.book.mixtures}
    assert not addresses & set(loaded.broken)


@contextmanager
def _few_tins(seed: int) -> Iterator[None]:
    def few(*asked: Any) -> tuple[Tin, ...]:
        return standard_tins(*asked)[seed % SHARE :: SHARE]

    with patch.object(shelf, "standard_tins", few):
        yield


def read(seed: int) -> int:
    """A book is read in one of the two modes. Returns how many spoilt sources that were."""
    folder, spoilt = _written(seed)
    _sound(load_book(folder, kitchen=seed % 2 == 0))
    return spoilt


def render(seed: int) -> int:
    """A book is read and every page written, in both modes; every link leads somewhere. Returns the books written."""
    folder, _ = _written(seed)
    with _few_tins(seed):
        for kitchen in (True, False):
            _render(folder, kitchen, seldom=seed % 10 == 0)
    return 2


def _render(folder: Path, kitchen: bool, seldom: bool) -> None:
    loaded = load_book(folder, kitchen)
    _sound(loaded)
    site = build_site(loaded.book, loaded.facts, loaded.broken)
    known = {*site.pages, *site.photos, *site.templates}

    def link(address: str, anchor: str = "") -> str:
        assert address in known, address
        return f"/{address}#{anchor}"

    for page in site.pages.values():
        if page.template not in SELDOM or seldom:
            page.fill(page.markdown, link)


@cache
def _demo() -> Loaded:
    return load_book(Path(__file__).parents[2] / "recipes")


ASKED = NoteWanted(name="Jetty cake")


def paste(seed: int) -> int:
    """Notes, data for machines or a drawing: one of them."""
    book, facts = _demo().book, _demo().facts
    if seed % 3 == 0:
        draft_mixture(ASKED, a_note(seed), book, facts)
    elif seed % 3 == 1:
        with suppress(NoRecipe):
            draft_found(ASKED, find_recipe(a_page(seed), "json", ASKED.name), book, facts)
    else:
        with suppress(Unfit):
            read_drawing(a_drawing(seed), "jetty.svg", "jetty")
    return 1


TRIALS: dict[str, Callable[[int], int]] = {"read": read, "render": render, "paste": paste}


def _chunk(asked: tuple[str, int]) -> tuple[int, list[tuple[str, int, str]]]:
    """How much was tried with some seeds, and what fell over."""
    name, start = asked
    tried, fallen = 0, []
    for seed in range(start, start + CHUNK):
        try:
            tried += TRIALS[name](seed)
        except Exception:
            tried += 1
            fallen.append((name, seed, traceback.format_exc()))
    return tried, fallen


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--read", type=int, default=300_000, help="spoilt sources, one to three in a book")
    parser.add_argument("--render", type=int, default=30_000, help="books written, each spoilt one in both modes")
    parser.add_argument("--paste", type=int, default=30_000, help="notes, data for machines and drawings")
    parser.add_argument("--from", dest="first", type=int, default=0, help="the first seed")
    parser.add_argument("--minutes", type=float, default=600.0, help="stop after so long")
    parser.add_argument("--cores", type=int, help="how many at once; all of the machine's if not said")
    given = vars(parser.parse_args())
    start, done, kinds = time.monotonic(), Counter[str](), Counter[str]()

    with multiprocessing.Pool(given["cores"]) as pool:
        for name in TRIALS:
            chunks = ((name, given["first"] + at) for at in count(0, CHUNK))
            until = time.monotonic() + 60.0 * given["minutes"] / len(TRIALS)
            # asked in small lots: a pool takes all that it is given at once
            while done[name] < given[name] and time.monotonic() < until:
                for tried, fallen in pool.imap_unordered(_chunk, islice(chunks, 4)):
                    done[name] += tried
                    for _, seed, told in fallen:
                        last = told.strip().splitlines()
                        where = next((line for line in reversed(last) if "tinbook/" in line), "")
                        kind = f"{where.strip()} {last[-1][:120]}"
                        kinds[kind] += 1
                        if kinds[kind] == 1:
                            print(f"--- {name} {seed}\n{told}", flush=True)
            print(f"{name}: {done[name]} tried in {time.monotonic() - start:.0f} s", flush=True)
    print(f"{sum(kinds.values())} fell over in {len(kinds)} places, {time.monotonic() - start:.0f} s")
    for place, many in kinds.most_common():
        print(f"{many:6}  {place}")
    raise SystemExit(bool(kinds))


if __name__ == "__main__":
    main()
