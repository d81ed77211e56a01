"""The one Jinja environment."""

import pytest
from jinja2 import UndefinedError

from tinbook.pages.render import FILTERS, environment


def test_text_is_escaped_and_unknown_names_refused() -> None:
    made = environment()
    assert made.from_string("{{ x }}").render(x="<b>") == "&lt;b&gt;"
    with pytest.raises(UndefinedError):
        made.from_string("{{ y }}").render()


def test_every_filter_is_registered_by_its_name() -> None:
    assert all(environment().filters[spell.__name__] is spell for spell in FILTERS)


def test_embedded_data_cannot_leave_its_script() -> None:
    assert "</script>" not in environment().from_string("{{ x | tojson }}").render(x={"a": "</script><b>"})
