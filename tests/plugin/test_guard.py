"""The policy of a page: which scripts it names, and where it stands."""

from __future__ import annotations

import re
from pathlib import Path

from mkdocs.commands.build import build
from mkdocs.config import load_config
from tests.plugin.builds import Built

from tinbook.plugin.guard import guarded

HELD = {
    "default-src": "'self'", "style-src": "'self' 'unsafe-inline'", "img-src": "'self' data: blob:",
    "media-src": "'self' data: blob:", "worker-src": "'self' blob:", "frame-src": "'self'", "object-src": "'none'",
    "base-uri": "'none'", "form-action": "'self'",
}  # fmt: skip
"""Nothing comes from elsewhere or goes there: no script, no base for links, no form."""
POLICY = re.compile(r'<meta http-equiv="Content-Security-Policy" content="([^"]*)">')


def policy(html: str) -> dict[str, str]:
    (found,) = POLICY.findall(html)
    return dict(rule.split(" ", 1) for rule in found.split("; "))


def test_scripts_in_the_page_go_by_their_sum() -> None:
    """The sum of `alert('Hello, world.');` is the standard's own example (Content Security Policy Level 3, W3C,
    https://www.w3.org/TR/CSP3/; its place there from memory), and what `sha256sum` says of those letters."""
    html = "<html><head><title>x</title></head><script>alert('Hello, world.');</script>"
    expected = "'sha256-qznLcsROx4GACP2dm0UCKCzCG+HiZ1guq6ZZDob/Tng='"
    assert policy(guarded(html))["script-src"] == f"'self' {expected}"


def test_data_and_files_need_none() -> None:
    html = '<head><script src="a.js"></script><script type="application/json">{"a": 1}</script></head>'
    assert policy(guarded(html))["script-src"] == "'self'"


def test_line_ends_are_one_sign() -> None:
    assert (
        guarded("<head><script>a\r\nb</script>").split("<script>")[0]
        == guarded("<head><script>a\nb</script>").split("<script>")[0]
    )


def test_it_stands_before_all_it_holds_for() -> None:
    html = guarded('<!doctype html><html><head>\n<meta charset="utf-8"><link rel="stylesheet" href="a.css"></head>')
    assert html.index("charset") < html.index("Content-Security-Policy") < html.index("stylesheet")
    assert guarded("no page") == "no page"


def test_every_page_of_a_built_site_has_it(demo_site: Path) -> None:
    pages = {path.relative_to(demo_site).as_posix(): path.read_text("utf-8") for path in demo_site.rglob("*.html")}
    assert len(pages) > 100 and "404.html" in pages
    for name, text in pages.items():
        rules = policy(text)
        assert rules.pop("script-src").startswith("'self'") and "unsafe" not in text.partition("script-src")[2][:200], (
            name
        )
        assert rules == HELD, name
        assert '<meta name="referrer" content="no-referrer">' in text, name


def test_a_serving_book_has_none(first: tuple[Path, Built], book: Path) -> None:
    """Its live reload is a script in the page that changes as it runs."""
    config = load_config(str(book / "mkdocs.yml"), site_dir=str(book / "site"))
    config.plugins.on_startup(command="serve", dirty=False)
    build(config)
    assert "Content-Security-Policy" not in (book / "site" / "index.html").read_text("utf-8")
    assert "Content-Security-Policy" in first[1].files["index.html"].decode()
