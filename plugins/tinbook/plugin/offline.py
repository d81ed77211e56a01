"""The book on a device: kept by a worker when it comes over HTTPS, or as a folder that opens by itself."""

from __future__ import annotations

import hashlib
import json
import os
from collections.abc import Mapping
from pathlib import Path

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure.files import File, Files

from tinbook.plugin.classic import classic_script
from tinbook.plugin.kitchens import MARK, TOLD

WORKERS = Path(__file__).parent / "workers"
OURS = "assets/tinbook"
ENTRIES = (
    "main",
    "bench_tins",
    "bench_batches",
    "mixture_tables",
    "tins",
    "technique",
    "narrow",
    "measures",
    "guests",
    "cuts",
    "home",
    "cake",
    "orders",
    "shopping",
)
"""The scripts that pages load; the others are imported by these."""
FINDING = "finding"
"""The modules that Find starts from; the first gives it its name."""
LIBRARY = "minisearch.js"
"""The library Find searches with."""
PAPER = "#FBFCFA"
# No page asks for these; and the sitemap carries the day of the build, which does not make a new book.
LEFT_OUT = ("sw.js", "sitemap.xml", "sitemap.xml.gz", MARK)
UNUSED = ("assets/javascripts/lunr/", "assets/javascripts/workers/")
"""What the theme brings for its own search."""
ICONS = (("icon-192", 192, "any"), ("icon-512", 512, "any"), ("icon-maskable", 512, "maskable"))


def set_for_folder(config: MkDocsConfig) -> None:
    """Addresses that open without a server."""
    config.use_directory_urls = False
    config.theme.static_templates.discard("404.html")  # a host shows it, and from the host's root


def sort_scripts(files: Files, config: MkDocsConfig, modules: Path, folder: bool) -> None:
    """Keep the scripts the site can use: modules, or one classic script.

    Find is a classic script either way: a page fetches it on demand, and so the two cannot differ.
    """
    for file in list(files):
        inside, _, name = file.src_uri.rpartition("/")
        ours = inside == OURS and name.endswith(".js") and name != LIBRARY
        if ours and (folder or name.startswith(FINDING)):
            files.remove(file)
    made = {"find": classic_script(modules, FINDING)}
    if folder:
        made["main"] = classic_script(modules, *ENTRIES)
    for name, script in made.items():
        files.append(File.generated(config, f"{OURS}/{name}.js", content=script))


def write_offline(config: MkDocsConfig, hosted: bool, sums: Mapping[str, bytes], kitchen: bool = False) -> None:
    """Write what a device needs to keep the finished site: the manifest and the worker. `sums`: the SHA-256 of files
    for which it is known, by their path in the site. `kitchen`: it is the kitchen's own book.

    A book that is being written, or built as a folder, gets the worker that removes an earlier one: a kept book answers
    every address in its place, and would hide the live one for good.
    """
    site = Path(config.site_dir)
    if hosted:
        site.joinpath("manifest.webmanifest").write_text(manifest(config.site_name, kitchen), "utf-8")
    site.joinpath("sw.js").write_text(worker(site, sums, kitchen) if hosted else _script("gone"), "utf-8")
    if kitchen:
        site.joinpath(MARK).write_text(TOLD, "utf-8")


def manifest(name: str, kitchen: bool = False) -> str:
    """The web app manifest of a book. Its addresses are relative, so the book can live anywhere on its host."""
    return json.dumps(
        {
            "name": f"{name}, kitchen" if kitchen else name,
            "short_name": "Kitchen" if kitchen else "Tinbook",
            "lang": "en-GB",
            "start_url": ".",
            "scope": ".",
            "display": "standalone",
            "background_color": PAPER,
            "theme_color": PAPER,
            "icons": [
                {"src": f"{OURS}/{icon}.png", "sizes": f"{side}x{side}", "type": "image/png", "purpose": purpose}
                for icon, side, purpose in ICONS
            ],
        },
        ensure_ascii=False,
        indent=1,
    )


def worker(site: Path, sums: Mapping[str, bytes] | None = None, kitchen: bool = False) -> str:
    """The worker of a built site: its version and the SHA-256 of each file, then the script that keeps them."""
    known = sums or {}
    digests = {
        name: known[name].hex() if name in known else hashlib.sha256((site / name).read_bytes()).hexdigest()
        for name in kept_files(site)
    }
    listed = json.dumps(digests, ensure_ascii=False, indent=0)
    version = hashlib.sha256(listed.encode()).hexdigest()[:16]
    whose = "kitchen" if kitchen else "tinbook"
    return f'const VERSION = "{version}", DIGESTS = {listed};\nconst WHOSE = "{whose}";\n{_script("book")}'


def kept_files(site: Path) -> list[str]:
    """Every file of a built site that one of its pages can request, sorted."""
    paths = (os.path.join(folder, name) for folder, _, files in os.walk(site) for name in files)
    names = sorted(os.path.relpath(path, site).replace(os.sep, "/") for path in paths if os.path.isfile(path))
    return [name for name in names if not (name in LEFT_OUT or name.endswith(".map") or name.startswith(UNUSED))]


def _script(name: str) -> str:
    return (WORKERS / f"{name}.js").read_text("utf-8")
