"""A technique: what your hands do, what with, and how it looks when it is right."""

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
TINS, TIERS, TIER, BOARD, WHOLE = "the tins", "each tier", "one tier", "the board", "the whole cake"
DONE_TO = (TINS, TIERS, TIER, BOARD, WHOLE)
"""What a technique is done to, in the order of the work."""


class Tool(WrittenLine):
    """One tool, by type and size. If that is all there is to say, write it without a key."""

    chief: ClassVar[str] = "tool"

    tool: Annotated[Text, such_as("palette knife, 15 cm")]
    """What it is and how big: the type, never a brand."""
    count: Annotated[int, whole_number(1, 999), such_as("2")] = 1
    """How many you need."""
    shared: Annotated[YesNo, such_as("yes")] = False
    """Whether one will do for a whole class. If not, everybody needs their own."""
    not_food: Annotated[YesNo, such_as("yes")] = False
    """Whether it goes into or onto the cake and has to come off before anybody eats it. The book counts these, and adds
    a caution."""


class Material(WrittenLine):
    """One material and how much of it, written like a line of a recipe."""

    chief: ClassVar[str] = "take"

    take: Annotated[Amount, such_as("300 g sugarpaste", "1 tsp water, boiled and cooled")]
    """How much, and of what. It needs no card, but if there is a recipe or a card with that name the page links to
    it."""
    note: Annotated[Text | None, such_as("for your palms")] = None
    """A short note beside it. Left out: nothing is shown."""
    shared: Annotated[YesNo, such_as("yes")] = False
    """Whether one lot will do for a whole class."""
    not_food: Annotated[YesNo, such_as("yes")] = False
    """Whether it has to come off before anybody eats the cake: wire, ribbon, foil."""
    extra: Annotated[YesNo, such_as("yes")] = False
    """Whether a cake takes it on top of its own paste, icing and colour: paste for a rope, colour to paint with.
    If not, a cake's page takes any paste, icing or colour to be what it works out already."""
    small_hard: Annotated[YesNo, such_as("yes")] = False
    """Whether it makes small, hard pieces that a child could choke on. The page and the sheet then show the caution."""


class Fault(Written):
    """One thing that can go wrong, and its cure."""

    fault: Annotated[Text, such_as("The paste cracks at the rim.")]
    """What goes wrong, as you would see it."""
    cure: Annotated[Text, such_as("Rub in a little white fat.")]
    """How to put it right."""


class Picture(Written):
    """A drawing or a photo from the folder `recipes/pictures`."""

    file: Annotated[Text, such_as("board-edge.svg")]
    """Its file in `recipes/pictures`: a drawing (SVG) or a photo."""
    alt: Annotated[Text, such_as("A board seen from the side, the paste cut flush.")]
    """What it shows, for somebody who cannot see it."""
    shows: Annotated[Text | None, such_as("The knife held upright at A.")] = None
    """The caption under it. Left out: it has none."""


class Technique(Written):
    """Each file in `recipes/techniques` is one technique: what your hands do, what with, and how it looks when it is
    right. Name the file in lower case with hyphens: that becomes its address.
    """

    needed = frozenset(("tools", "materials", "cautions", "care", "parts for", "parts", "repeats"))

    name: Annotated[Text, such_as("Line a tin")]
    """What it is called, at the top of its page and in every list."""
    purpose: Annotated[Text, such_as("So that the sides stay straight.")]
    """What it is for, in a sentence."""
    level: Annotated[str | None, one_of(*LEVELS), such_as("steady hands")] = None
    """How much practice it takes. Left out: the page does not say."""
    done_to: Annotated[str | None, one_of(*DONE_TO), such_as(TIERS)] = None
    """What it is done to, so that a plan of the week knows when it comes: the tins, before baking; each tier, once it
    is baked, or only one of them; the board; or the whole cake, once tiers and board are ready. Left out: it is done
    beforehand, as a decoration is; steps that cannot be done ahead come last of all."""
    makes: Annotated[Text | None, such_as("69 cm of rope, 12 mm thick.")] = None
    """What you have at the end, and its size. Left out: the page does not say."""
    also: Annotated[Texts, such_as("[rope border, sugarpaste rope]")] = ()
    """Other names people may look for it by. Left out: only its own name is found."""
    tags: Annotated[Texts, such_as("[finishing, sugarpaste]")] = ()
    """Words that group it with others like it on the tags page. Left out: it has no tags."""
    works_with: Annotated[Texts, such_as("[sugarpaste]")] = ()
    """The pastes or coats you can do it with. Left out: the page does not say."""
    tools: Annotated[tuple[Tool, ...], such_as("[icing smoother, pizza wheel]", "- {tool: ruler, shared: yes}")] = ()
    """What to lay out on the bench. Left out: you need no tools."""
    materials: Annotated[
        tuple[Material, ...], such_as("- 300 g sugarpaste", "- {take: 4 lolly sticks, not food: yes}")
    ] = ()
    """What gets used up, with amounts. Left out: nothing is used up."""
    steps: Annotated[
        tuple[Step, ...], such_as("- Draw round the base.", "- {do: Roll out <sugarpaste>., hands on: 4 min}")
    ]
    """What you do, step by step. Put a material in angle brackets and the step shows its amount."""
    checks: Annotated[Texts, such_as("[The board does not rock.]")] = ()
    """How you know that the finished thing is right. Left out: nothing is shown."""
    faults: Annotated[tuple[Fault, ...], such_as("- {fault: The paste cracks., cure: Rub in a little white fat.}")] = ()
    """What can go wrong, and how to put it right. Left out: nothing is shown."""
    cautions: Annotated[Texts, such_as("[Take the buoys off before a child under five gets a slice.]")] = ()
    """Dangers, in your own words. They are always shown, on the page and on the printed sheet. Left out: only the
    cautions the book adds itself are shown."""
    care: Annotated[Texts, such_as("[wire]")] = ()
    """Dangers, by the names the book has for them. Each one adds its caution, with the source. Left out: only what
    follows from the materials, parts and tools."""
    pictures: Annotated[
        tuple[Picture, ...],
        such_as("- {file: board-edge.svg, alt: A board seen from the side., shows: Cut flush at A.}"),
    ] = ()
    """Its drawings and photos. Any that a step names is shown beside that step; the others go at the end. Left out:
    there are none."""
    parts_for: Annotated[OneCake | None, such_as("round 20 cm")] = None
    """The cake the parts are sized for. For any other size of cake they are worked out. Left out: it can have no
    parts."""
    parts: Annotated[tuple[Part, ...], such_as("- {part: buoy, solid: ball 12 mm, paste: modelling-paste}")] = ()
    """The pieces you model or cut. Left out: there are none."""
    repeats: Annotated[tuple[Repeat, ...], such_as("- {repeat: portholes, on: hull, mark: 6 mm, gap: 12 mm}")] = ()
    """Marks you press, cut or model over and over, such as scales, shingle or bricks. Left out: there are none."""
    tips: Annotated[Texts, such_as("[Twist both ropes the same way.]")] = ()
    """Anything that helps. Left out: nothing is shown."""
    related: Annotated[Texts, such_as("[cover-a-board]")] = ()
    """Other techniques, by file name, without `.yaml`. Left out: none is linked."""
    uses: Annotated[Texts, such_as("[fix-a-figure-on-sticks]")] = ()
    """Other techniques it is done with, by file name, without `.yaml`. Their cautions are shown with its own, and a
    cake that uses this technique counts what is not food in them as well. Left out: it is done on its own."""
    mixtures: Annotated[Texts, such_as("[modelling-paste]")] = ()
    """Recipes it uses, by file name, without `.yaml`. Left out: none is linked."""
    private: Annotated[Private, such_as("yes", "[tips]")] = False
    """What to leave out of a public site: `yes` for the whole technique, or the names of keys."""
