"""A technique: what hands do, with what, and how it looks when it is right."""

from __future__ import annotations

from typing import Annotated, ClassVar

from tinbook.models.finish import OneCake
from tinbook.models.mixture import Amount
from tinbook.models.parts import Part, Repeat
from tinbook.models.reading import (
    Private,
    Text,
    Texts,
    Written,
    WrittenLine,
    YesNo,
    one_of,
    such_as,
    whole_number,
)
from tinbook.models.steps import Step

LEVELS = ("first steps", "steady hands", "practised")


class Tool(WrittenLine):
    """One tool, by type and size. The text alone is enough."""

    chief: ClassVar[str] = "tool"

    tool: Annotated[Text, such_as("palette knife, 15 cm")]
    """What it is, and how large: the type, never a make."""
    count: Annotated[int, whole_number(1, 999), such_as("2")] = 1
    """How many are wanted."""
    shared: Annotated[YesNo, such_as("yes")] = False
    """Whether one is enough for a whole class. With `no`, everybody needs their own."""
    not_food: Annotated[YesNo, such_as("yes")] = False
    """Whether it goes into or onto the cake and has to come off before anybody eats. It is then counted, and cautioned
    about."""


class Material(WrittenLine):
    """One material with its amount, written as a line of a recipe is."""

    chief: ClassVar[str] = "take"

    take: Annotated[Amount, such_as("300 g sugarpaste", "1 tsp water, boiled and cooled")]
    """How much, and of what. It needs no card, though a mixture or a card of that name is linked to."""
    note: Annotated[Text | None, such_as("for the palms")] = None
    """A word beside it. Left out: nothing stands there."""
    shared: Annotated[YesNo, such_as("yes")] = False
    """Whether one lot is enough for a whole class."""
    not_food: Annotated[YesNo, such_as("yes")] = False
    """Whether it has to come off before anybody eats: wire, ribbon, foil."""
    small_hard: Annotated[YesNo, such_as("yes")] = False
    """Whether it makes small, hard pieces on which a child could choke. The caution then stands on the page and the
    sheet."""


class Fault(Written):
    """One thing that can go wrong, and its cure."""

    fault: Annotated[Text, such_as("The paste cracks at the rim.")]
    """What goes wrong, in the words of somebody who sees it."""
    cure: Annotated[Text, such_as("Rub in a little white fat.")]
    """What to do about it."""


class Picture(Written):
    """A drawing or a photo from the folder `recipes/pictures`."""

    file: Annotated[Text, such_as("board-edge.svg")]
    """Its file in `recipes/pictures`: a drawing as SVG, or a photo."""
    alt: Annotated[Text, such_as("A board seen from the side, the paste cut flush.")]
    """What is to be seen in it, for somebody who cannot see it."""
    shows: Annotated[Text | None, such_as("The knife held upright at A.")] = None
    """The caption under it. Left out: it has none."""


class Technique(Written):
    """A file in `recipes/techniques` is one technique: what hands do, with what, and how it looks when it is right. Its
    name, in small letters and with hyphens, is the technique's address.
    """

    needed = frozenset(("tools", "materials", "cautions", "care", "parts for", "parts", "repeats"))

    name: Annotated[Text, such_as("Line a tin")]
    """What it is called, at the head of its page and in every list."""
    purpose: Annotated[Text, such_as("So that the sides stay straight.")]
    """What it is for, in a sentence. Find looks here too."""
    level: Annotated[str | None, one_of(*LEVELS), such_as("steady hands")] = None
    """How much practice it wants. Left out: nothing is said of that."""
    makes: Annotated[Text | None, such_as("69 cm of rope, 12 mm thick.")] = None
    """What there is at the end, with its size. Left out: nothing is said of that."""
    also: Annotated[Texts, such_as("[rope border, sugarpaste rope]")] = ()
    """Other names people ask for it by. Find knows them. Left out: it goes by its name alone."""
    tags: Annotated[Texts, such_as("[finishing, sugarpaste]")] = ()
    """Words that bring it together with others on the page of tags. Left out: it has none."""
    works_with: Annotated[Texts, such_as("[sugarpaste]")] = ()
    """The pastes or coats it can be done with. Left out: nothing is said of that."""
    tools: Annotated[tuple[Tool, ...], such_as("[icing smoother, pizza wheel]", "- {tool: ruler, shared: yes}")] = ()
    """What to lay out on the bench, one by one. Left out: hands are enough."""
    materials: Annotated[
        tuple[Material, ...], such_as("- 300 g sugarpaste", "- {take: 4 lolly sticks, not food: yes}")
    ] = ()
    """What is used up, with amounts. Left out: nothing is."""
    steps: Annotated[
        tuple[Step, ...], such_as("- Draw round the base.", "- {do: Roll out <sugarpaste>., hands on: 4 min}")
    ]
    """What you do, step by step. A material in angle brackets is shown with its amount."""
    checks: Annotated[Texts, such_as("[The board does not rock.]")] = ()
    """How you know that it is right, once it is finished. Left out: there is nothing to check."""
    faults: Annotated[tuple[Fault, ...], such_as("- {fault: The paste cracks., cure: Rub in a little white fat.}")] = ()
    """What can go wrong, each with its cure. Left out: none is known."""
    cautions: Annotated[Texts, such_as("[Take the buoys off before a child under five gets a slice.]")] = ()
    """Dangers, in your own words. They stay in sight on the page and on the sheet. Left out: only those that the book
    adds by itself."""
    care: Annotated[Texts, such_as("[wires]")] = ()
    """Dangers by the book's own words for them. It brings the caution with its source. Left out: only those that follow
    from materials, parts and tools."""
    pictures: Annotated[
        tuple[Picture, ...],
        such_as("- {file: board-edge.svg, alt: A board seen from the side., shows: Cut flush at A.}"),
    ] = ()
    """The pictures at its end, or beside a step that names one. Left out: there are none."""
    parts_for: Annotated[OneCake | None, such_as("round 20 cm")] = None
    """The cake whose size the parts are written for. For any other they are worked out. Left out: there are no
    parts."""
    parts: Annotated[tuple[Part, ...], such_as("- {part: buoy, solid: ball 12 mm, paste: modelling-paste}")] = ()
    """The pieces that are modelled or cut, each with form, size and paste. Left out: it has none."""
    repeats: Annotated[tuple[Repeat, ...], such_as("- {repeat: portholes, on: hull, mark: 6 mm, gap: 12 mm}")] = ()
    """Marks that are pressed, laid on or piped over and over: scales, shingle, bricks. Left out: there are none."""
    tips: Annotated[Texts, such_as("[Twist both ropes the same way.]")] = ()
    """What helps. Left out: nothing stands there."""
    related: Annotated[Texts, such_as("[cover-a-board]")] = ()
    """Other techniques, by the names of their files without `.yaml`. Left out: none is named."""
    mixtures: Annotated[Texts, such_as("[modelling-paste]")] = ()
    """Mixtures it is done with, by the names of their files without `.yaml`. Left out: none is named."""
    private: Annotated[Private, such_as("yes", "[tips]")] = False
    """What a public site leaves out: `yes` for all of it, or the names of keys."""
