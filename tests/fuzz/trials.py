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
from collections.abc import Callable
from contextlib import suppress
from functools import cache
from itertools import islice
from pathlib import Path

from tests.fuzz.mutations import a_book, a_drawing, a_note, a_page

from tinbook.cli.drafting import NoteWanted, draft_found, draft_mixture
from tinbook.cli.importing import NoRecipe, find_recipe
from tinbook.loading import Loaded, load_book
from tinbook.loading.drawings import read_drawing
from tinbook.loading.files import Unfit
from tinbook.problems import spell
from tinbook.site import build_site

SELDOM = ("cuts", "portions", "guests", "boards")
"""Pages that go by the house alone and take long: every tenth book has them written."""
CHUNK = 10


@cache
def _folder() -> Path:
    return Path(tempfile.mkdtemp(prefix="spoilt")) / "recipes"


_there: dict[str, bytes] = {}


def _written(seed: int) -> Path:
    """The folder of a spoilt book; what is as before is not written again."""
    files, folder = a_book(seed), _folder()
    for name in _there.keys() - files.keys():
        (folder / name).unlink()
        del _there[name]
    for name, raw in files.items():
        if _there.get(name) != raw:
            (folder / name).parent.mkdir(parents=True, exist_ok=True)
            (folder / name).write_bytes(raw)
            _there[name] = raw
    return folder


def _sound(loaded: Loaded) -> None:
    for problem in loaded.problems:
        assert problem.message and problem.place.line >= 1 and spell(problem)
    addresses = {f"mixtures/{slug}" for slug in loaded.book.mixtures}
    assert not addresses & set(loaded.broken)


def read(seed: int) -> None:
    """A book is read in one of the two modes."""
    _sound(load_book(_written(seed), kitchen=seed % 2 == 0))


def render(seed: int) -> None:
    """A book is read and every page written, in both modes; every link leads somewhere."""
    folder = _written(seed)
    for kitchen in (True, False):
        loaded = load_book(folder, kitchen)
        _sound(loaded)
        site = build_site(loaded.book, loaded.facts, loaded.broken)
        known = {*site.pages, *site.photos, *site.templates}

        def link(address: str, anchor: str = "", known: set[str] = known) -> str:
            assert address in known, address
            return f"/{address}#{anchor}"

        for page in site.pages.values():
            if page.template not in SELDOM or seed % 10 == 0:
                page.fill(page.markdown, link)


@cache
def _demo() -> Loaded:
    return load_book(Path(__file__).parents[2] / "recipes")


ASKED = NoteWanted(name="Jetty cake")


def paste(seed: int) -> None:
    """Notes, data for machines or a drawing."""
    book, facts = _demo().book, _demo().facts
    if seed % 3 == 0:
        draft_mixture(ASKED, a_note(seed), book, facts)
    elif seed % 3 == 1:
        with suppress(NoRecipe):
            draft_found(ASKED, find_recipe(a_page(seed), "json", ASKED.name), book, facts)
    else:
        with suppress(Unfit):
            read_drawing(a_drawing(seed), "jetty.svg", "jetty")


TRIALS: dict[str, Callable[[int], None]] = {"read": read, "render": render, "paste": paste}


def _chunk(asked: tuple[str, int]) -> list[tuple[str, int, str]]:
    """What fell over among some seeds."""
    name, start = asked
    fallen = []
    for seed in range(start, start + CHUNK):
        try:
            TRIALS[name](seed)
        except Exception:
            fallen.append((name, seed, traceback.format_exc()))
    return fallen


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--read", type=int, default=300_000)
    parser.add_argument("--render", type=int, default=30_000)
    parser.add_argument("--paste", type=int, default=30_000)
    parser.add_argument("--from", dest="first", type=int, default=0, help="the first seed")
    parser.add_argument("--minutes", type=float, default=600.0, help="stop after so long")
    given = vars(parser.parse_args())
    start, done, kinds = time.monotonic(), Counter[str](), Counter[str]()

    with multiprocessing.Pool() as pool:
        for name in TRIALS:
            chunks = iter([(name, given["first"] + at) for at in range(0, given[name], CHUNK)])
            until = time.monotonic() + 60.0 * given["minutes"] / len(TRIALS)
            # asked in small lots: a pool takes all that it is given at once
            while lot := list(islice(chunks, 4)) if time.monotonic() < until else []:
                for fallen in pool.imap_unordered(_chunk, lot):
                    done[name] += CHUNK
                    for _, seed, told in fallen:
                        last = told.strip().splitlines()
                        where = next((line for line in reversed(last) if "tinbook/" in line), "")
                        kinds[f"{where.strip()} {last[-1][:120]}"] += 1
                        if kinds[f"{where.strip()} {last[-1][:120]}"] == 1:
                            print(f"--- {name} {seed}\n{told}", flush=True)
            print(f"{name}: {done[name]} tried", flush=True)
    print(f"{sum(kinds.values())} fell over in {len(kinds)} places, {time.monotonic() - start:.0f} s")
    for place, count in kinds.most_common():
        print(f"{count:6}  {place}")
    raise SystemExit(bool(kinds))


if __name__ == "__main__":
    main()
