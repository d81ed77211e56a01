"""Which mixture of the house a word means."""

from __future__ import annotations

from tinbook.loading import Loaded
from tinbook.plans.techniques.naming import mixture_called


def test_a_mixture_goes_by_its_name_another_name_and_its_file(demo: Loaded) -> None:
    book = demo.book
    for slug, mixture in book.mixtures.items():
        assert mixture_called(slug, book) == mixture_called(mixture.name.upper(), book) == slug
    also = {name: slug for slug, mixture in book.mixtures.items() for name in mixture.also}
    assert also
    assert all(mixture_called(name, book) == slug for name, slug in also.items())
    assert mixture_called("sugarpaste", book) is None
