"""A technique as it is written."""

from typing import Any

from tests.every import every

from tinbook.models import Technique, read_model


def read(**keys: Any) -> Technique:
    base = {"name": "Rope edge", "purpose": "It hides the seam.", "steps": ["Roll two ropes and twist them."]}
    technique, flaws = read_model(Technique, {**base, **keys}, "a technique")
    assert technique is not None, flaws
    return technique


def flaws(**keys: Any) -> list[str]:
    base = {"name": "Rope edge", "purpose": "It hides the seam.", "steps": ["Roll two ropes and twist them."]}
    _, found = read_model(Technique, {**base, **keys}, "a technique")
    return [flaw.message for flaw in found]


def test_short_and_long_lines() -> None:
    made = read(
        tools=["palette knife, 15 cm", {"tool": "dowel saw", "shared": "yes"}],
        materials=["300 g sugarpaste", {"take": "5 dowels, 6 mm", "not food": "yes"}],
    )
    assert [tool.tool for tool in made.tools] == ["palette knife, 15 cm", "dowel saw"]
    assert made.tools[1].shared and not made.tools[0].shared
    assert made.materials[0].take.quantity.base == 300
    assert made.materials[1].not_food and made.materials[1].take.wanted == "6 mm"


@every(
    "keys",
    [
        {"level": "wizard"},
        {"materials": ["sugarpaste"]},
        {"materials": ["20 cm ribbon"]},
        {"tools": [{"count": "2"}]},
        {"pictures": [{"file": "edge.svg"}]},
        {"faults": [{"fault": "It cracks."}]},
        {"steps": []},
    ],
)
def test_what_cannot_be_read_is_told_once(keys: dict[str, Any]) -> None:
    assert len(flaws(**keys)) == 1 or keys == {"steps": []}
