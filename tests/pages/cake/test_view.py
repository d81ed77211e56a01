"""A cake's two leaves, filled: whole without a script, and each thing said once."""

from __future__ import annotations

import re
from collections.abc import Callable

from tinbook.pages.base.page import Page
from tinbook.pages.cake.view import CakeView

SLUGS = ("lighthouse-cake", "estuary-wedding-cake")
MOST_BYTES = 120_000


def test_a_page_is_light_and_only_its_own_size_shows(filled: Callable[[str], str]) -> None:
    for slug in SLUGS:
        for leaf in (f"cakes/{slug}", f"cakes/{slug}/used"):
            html = filled(leaf)
            assert len(html.encode()) < MOST_BYTES - 20_000, leaf  # the frame of the page takes some
            shown = re.findall(r'<section class="tb-size"[^>]*data-size="([^"]*)"[^>]*>', html)
            hidden = re.findall(r'<section class="tb-size"[^>]*data-size="([^"]*)"[^>]* hidden>', html)
            assert set(shown) - set(hidden) == {"written"}
            assert html.count("tb-what tb-this") == 1


def test_each_caution_is_told_once_with_its_places(views: dict[str, CakeView], filled: Callable[[str], str]) -> None:
    for slug, view in views.items():
        html = filled(f"cakes/{slug}")
        titles = [caution.title for caution in view.cautions]
        assert len(set(titles)) == len(titles) == len(view.written.cake.cautions)
        for title in titles:
            assert html.count(f"<b>{title}.</b>") == 1, title
        assert all(caution.places for caution in view.cautions)


def test_sizes_that_cannot_be_say_why(views: dict[str, CakeView], filled: Callable[[str], str]) -> None:
    others = views["estuary-wedding-cake"].others
    assert any("no board large enough" in each.why for each in others)
    html = filled("cakes/estuary-wedding-cake")
    assert all(f"{each.name}: {each.why}." in html for each in others)


def test_both_leaves_lead_to_each_other_and_share_a_view(page: Callable[[str], Page]) -> None:
    cake, used = page("cakes/lighthouse-cake"), page("cakes/lighthouse-cake/used")
    assert cake.view is used.view and cake.listed and not used.listed
    assert repr(cake.view) == "CakeView(slug='lighthouse-cake', desk=Desk())"


def test_the_law_allergens_and_techniques_are_told(views: dict[str, CakeView], filled: Callable[[str], str]) -> None:
    html = filled("cakes/estuary-wedding-cake")
    assert "<strong>egg</strong> (egg and egg white powder)" in html
    assert views["estuary-wedding-cake"].law in html
    for each in views["estuary-wedding-cake"].techniques:
        assert f'href="/{each.address}#"' in html
