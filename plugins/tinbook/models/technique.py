"""A technique: what hands do, with what, and how it looks when it is right."""

from __future__ import annotations

from typing import Annotated, ClassVar

from tinbook.models.finish import OneCake
from tinbook.models.mixture import Take, read_take
from tinbook.models.parts import Part, Repeat
from tinbook.models.reading import (
    LINE,
    Private,
    Text,
    Texts,
    Written,
    WrittenLine,
    YesNo,
    one_of,
    spelled,
    such_as,
    whole_number,
)
from tinbook.models.steps import Step

LEVELS = ("first steps", "steady hands", "practised")


class Tool(WrittenLine):
    """A tool or cutter, by type and size: `palette knife, 15 cm`. `shared`: one serves a whole class. `not food`: it
    goes into or onto the cake and must come off before it is eaten."""

    chief: ClassVar[str] = "tool"

    tool: Annotated[Text, such_as("palette knife, 15 cm")]
    count: Annotated[int, whole_number(1, 999)] = 1
    shared: YesNo = False
    not_food: YesNo = False


class Material(WrittenLine):
    """A material with its amount, in bench spelling. `not food` and `small hard` call up their cautions."""

    chief: ClassVar[str] = "take"

    take: Annotated[Take, spelled(read_take, LINE), such_as("300 g sugarpaste")]
    note: Text | None = None
    shared: YesNo = False
    not_food: YesNo = False
    small_hard: YesNo = False


class Fault(Written):
    """What can go wrong, and its cure."""

    fault: Annotated[Text, such_as("The paste cracks at the rim.")]
    cure: Annotated[Text, such_as("Rub in a little white fat.")]


class Picture(Written):
    """A drawing or photo of the folder recipes/pictures: its file, what it shows to who cannot see it, a caption."""

    file: Annotated[Text, such_as("board-edge.svg")]
    alt: Annotated[Text, such_as("A board seen from the side, the paste cut flush.")]
    shows: Text | None = None


class Technique(Written):
    """techniques/NAME.yaml."""

    needed = frozenset(("tools", "materials", "cautions", "care", "parts for", "parts", "repeats"))

    name: Annotated[Text, such_as("Line a tin")]
    purpose: Annotated[Text, such_as("So that the sides stay straight.")]
    level: Annotated[str, one_of(*LEVELS)] | None = None
    makes: Text | None = None
    also: Texts = ()
    tags: Texts = ()
    works_with: Texts = ()
    tools: tuple[Tool, ...] = ()
    materials: tuple[Material, ...] = ()
    steps: Annotated[tuple[Step, ...], such_as("- Draw round the base.")]
    checks: Texts = ()
    faults: tuple[Fault, ...] = ()
    cautions: Texts = ()
    care: Texts = ()
    pictures: tuple[Picture, ...] = ()
    parts_for: OneCake | None = None
    parts: Annotated[tuple[Part, ...], such_as("- {part: buoy, solid: ball 12 mm, paste: modelling-paste}")] = ()
    repeats: Annotated[tuple[Repeat, ...], such_as("- {repeat: portholes, on: hull, mark: 6 mm, gap: 12 mm}")] = ()
    tips: Texts = ()
    related: Texts = ()
    mixtures: Texts = ()
    private: Private = False
