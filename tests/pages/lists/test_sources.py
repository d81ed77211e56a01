"""The page of sources."""

from collections.abc import Callable

from tinbook.loading import Loaded


def test_every_source_is_on_it(filled: Callable[[str], str], demo: Loaded) -> None:
    text = filled("sources")
    for source in demo.facts.sources.values():
        assert source.title.replace("&", "&amp;").replace("'", "&#39;") in text
    assert 'id="source-common-practice"' in text


def test_an_anchor_that_was_renamed_still_leads_there(filled: Callable[[str], str]) -> None:
    assert 'id="source-our-own-judgement">\n<span id="source-house-judgement"></span>' in filled("sources")
