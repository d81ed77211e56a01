"""Rules for coiled ropes. The words a baker is shown are in tests/source/bad."""

from __future__ import annotations

from typing import Any

from tests.every import every
from tests.plans.rules.test_parts import flaws

from tinbook.facts import Facts
from tinbook.models import Book
from tinbook.plans.rules.coils import coil_flaws

POST = {"part": "post", "solid": "cylinder 20 mm x 40 mm", "paste": "sugarpaste"}
ROPE = {"part": "rope", "rope": "5 mm x 200 mm", "paste": "sugarpaste"}


@every(
    ("keys", "told"),
    # one turn of 5 mm round 20 mm is 25 π = 78.5 mm
    [
        ({**ROPE, "coiled": "0"}, []),
        ({**ROPE, "coiled": "2", "lies on": "post"}, []),
        ({**ROPE, "coiled": "3", "lies on": "post"}, [("parts", 1, "coiled")]),
        ({**ROPE, "coiled": "1"}, [("parts", 1, "coiled")]),
        ({**POST, "part": "rope", "coiled": "0"}, [("parts", 1, "coiled")]),
    ],
)
def test_what_can_be_coiled(kitchen: Book, facts: Facts, keys: dict[str, Any], told: list[Any]) -> None:
    found = flaws(kitchen, facts, parts=[POST, keys])
    assert [flaw.path for flaw in found] == told
    assert not told or found[0].hint in (
        "write 2, or a longer rope",
        'add "lies on:", or write "coiled: 0"',
        "take it out",
    )


def test_a_part_that_is_not_coiled_has_nothing_to_say(kitchen: Book, facts: Facts) -> None:
    assert list(coil_flaws(*_plain())) == [] and flaws(kitchen, facts, parts=[POST, ROPE]) == []


def _plain() -> tuple[Any, Any, Any]:
    from tinbook.models import Part, read_model

    part, _ = read_model(Part, ROPE, "it")
    return part, ("parts", 0, "coiled"), (part,)
