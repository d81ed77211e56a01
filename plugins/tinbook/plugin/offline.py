"""The book on a device: kept by a worker when it comes over HTTPS, or as a folder that opens by itself."""

from __future__ import annotations

import hashlib
import json
from pathlib import Path

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure.files import File, Files

from tinbook.plugin.classic import classic_script

WORKERS = Path(__file__).parent / "workers"
OURS = "assets/tinbook"
SHIM = f"{OURS}/iframe-worker.js"
ENTRIES = ("main", "mixture_tables", "tins", "technique", "narrow", "measures", "guests", "home")
"""The scripts that pages load; the others are imported by these."""
PAPER = "#FBFCFA"
# Never asked for by a page; and the sitemap bears the day of the build, which makes no new book.
LEFT_OUT = ("sw.js", "sitemap.xml", "sitemap.xml.gz")
ICONS = (("icon-192", 192, "any"), ("icon-512", 512, "any"), ("icon-maskable", 512, "maskable"))


def set_for_folder(config: MkDocsConfig) -> None:
    """Addresses that open without a server, and the search without a worker, which `file://` refuses."""
    config.use_directory_urls = False
    config.extra.setdefault("polyfills", []).append(SHIM)
    config.theme.static_templates.discard("404.html")  # a host shows it, and from the host's root


def sort_scripts(files: Files, config: MkDocsConfig, modules: Path, folder: bool) -> None:
    """Leave in the site the scripts it can use: modules, or one classic script and the theme's stand-in for workers."""
    for file in list(files):
        inside, _, name = file.src_uri.rpartition("/")
        is_shim = "iframe-worker" in name
        if inside == OURS and (is_shim or name.endswith(".js")) and is_shim != folder:
            files.remove(file)
    if folder:
        files.append(File.generated(config, f"{OURS}/main.js", content=classic_script(modules, *ENTRIES)))


def write_offline(config: MkDocsConfig, hosted: bool, folder: bool) -> None:
    """Write what a device needs to keep the finished site: the manifest and the worker; to a folder, its search index.

    A book that is being written, or goes as a folder, gets the worker that takes an earlier one away: a kept book
    answers every address of its place, so it would hide the live one for good.
    """
    site = Path(config.site_dir)
    if hosted:
        site.joinpath("manifest.webmanifest").write_text(manifest(config.site_name), "utf-8")
    site.joinpath("sw.js").write_text(worker(site) if hosted else _script("gone"), "utf-8")
    index = site / "search" / "search_index.json"
    if folder and index.is_file():
        # a script may be read from a folder, JSON may not; the theme looks for this name
        index.with_suffix(".js").write_text(f"var __index = {index.read_text('utf-8')}", "utf-8")


def manifest(name: str) -> str:
    """The web app manifest of a book. Its addresses are relative, so the book may lie anywhere on its host."""
    return json.dumps(
        {
            "name": name,
            "short_name": "Tinbook",
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


def worker(site: Path) -> str:
    """The worker of a built site: its version and the SHA-256 of each file, then the script that keeps them."""
    digests = {name: hashlib.sha256((site / name).read_bytes()).hexdigest() for name in kept_files(site)}
    listed = json.dumps(digests, ensure_ascii=False, indent=0)
    version = hashlib.sha256(listed.encode()).hexdigest()[:16]
    return f'const VERSION = "{version}", DIGESTS = {listed};\n{_script("book")}'


def kept_files(site: Path) -> list[str]:
    """Every file of a built site that one of its pages can ask for, sorted."""
    languages = ("assets/javascripts/lunr/",) if _english_only(site) else ()
    names = sorted(path.relative_to(site).as_posix() for path in site.rglob("*") if path.is_file())
    return [name for name in names if not (name in LEFT_OUT or name.endswith(".map") or name.startswith(languages))]


def _english_only(site: Path) -> bool:
    """Whether the search can do without the stemmers of other languages, a third of the site."""
    index = site / "search" / "search_index.json"
    return not index.is_file() or json.loads(index.read_text("utf-8"))["config"]["lang"] == ["en"]


def _script(name: str) -> str:
    return (WORKERS / f"{name}.js").read_text("utf-8")
