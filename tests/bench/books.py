"""Large books to measure with: the demo's recipes over and over under other names, and plain pages for the theme alone."""

from __future__ import annotations

import re
import shutil
from itertools import cycle, islice
from pathlib import Path
from typing import Any

import yaml

ROOT = Path(__file__).parents[2]
DEMO = ROOT / "recipes"
NAME = re.compile(r"^name: (.*)$", re.MULTILINE)
FROM = re.compile(r"^from: (\S+)$", re.MULTILINE)
KINDS = 7
"""Sections of the plain book, as the mixtures are of about so many kinds."""
WORDS = (
    "butter", "sugar", "eggs", "flour", "milk", "tin", "oven", "paper", "rack", "skewer", "batter", "crumb", "drum",
)  # fmt: skip
THEME: dict[str, Any] = {
    "name": "material",
    "font": False,
    "features": ["navigation.indexes", "navigation.prune", "toc.follow"],
}


def dump(path: Path, data: Any) -> None:
    """Write data as YAML."""
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(yaml.safe_dump(data, allow_unicode=True, sort_keys=False), "utf-8")


def repeated(folder: Path, count: int) -> Path:
    """A book of `count` mixtures: the demo's own, then the same under other names, with all the rest of the demo."""
    folder.mkdir(exist_ok=True)
    # orders go by the kitchen's own cakes, and a public site has none
    shutil.copytree(DEMO, folder / "recipes", ignore=shutil.ignore_patterns("orders"))
    sources = sorted((DEMO / "mixtures").glob("*.yaml"))
    for number in range(len(sources), count):
        source, again = sources[number % len(sources)], number // len(sources) + 1
        text = NAME.sub(rf"name: \1 {again}", source.read_text("utf-8"), count=1)
        text = FROM.sub(rf"from: \1-{again}", text)
        (folder / f"recipes/mixtures/{source.stem}-{again}.yaml").write_text(text, "utf-8")
    missing = (count - len(sources)) % len(sources)
    if missing:
        _mend_bases(folder / "recipes/mixtures", count // len(sources) + (count % len(sources) > 0))
    (folder / "book_src").mkdir()
    settings = {"site_name": "Large", "docs_dir": "book_src", "theme": THEME, "plugins": ["tinbook"]}
    dump(folder / "mkdocs.yml", {**settings, "extra": {"generator": False}})
    return folder


def _mend_bases(folder: Path, last: int) -> None:
    """Variations of the last, unfinished round start from a base of the round before where theirs is missing."""
    for file in folder.glob(f"*-{last}.yaml"):
        text = file.read_text("utf-8")
        base = FROM.search(text)
        if base and not (folder / f"{base[1]}.yaml").exists():
            file.write_text(text.replace(f"from: {base[1]}", f"from: {base[1].removesuffix(f'-{last}')}"), "utf-8")


def plain(folder: Path, count: int) -> Path:
    """As many pages of 1 kB Markdown, in sections like those of a book, with the same theme and features."""
    words, sections = cycle(WORDS), {f"Kind {number}": [] for number in range(KINDS)}
    (folder / "docs/mixtures").mkdir(parents=True)
    (folder / "docs/index.md").write_text("# Home\n", "utf-8")
    for number in range(count):
        text = f"# Page {number}\n"
        while len(text) < 1024:
            text += f"\n## Part {len(text) // 300 + 1}\n\n{' '.join(islice(words, 45))}.\n"
        (folder / f"docs/mixtures/page-{number}.md").write_text(text[:1024], "utf-8")
        sections[f"Kind {number % KINDS}"].append({f"Page {number}": f"mixtures/page-{number}.md"})
    settings = {"site_name": "Plain", "docs_dir": "docs", "theme": THEME, "plugins": ["search"]}
    nav = [{"Home": "index.md"}, {"Mixtures": [{kind: pages} for kind, pages in sections.items()]}]
    dump(folder / "mkdocs.yml", {**settings, "nav": nav, "extra": {"generator": False}})
    return folder
