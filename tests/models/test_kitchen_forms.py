"""How the kitchen's own files are written: each way is on the reference page, and no two share an address."""

from __future__ import annotations

from tinbook.models.kitchen_forms import KITCHEN_FORMS
from tinbook.models.written_forms import FORMS


def test_each_is_among_those_that_the_page_shows() -> None:
    assert len(KITCHEN_FORMS) > 4
    assert all(form in FORMS for form in KITCHEN_FORMS)
    assert len({form.anchor for form in FORMS}) == len(FORMS)
