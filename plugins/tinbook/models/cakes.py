"""A cake as a whole: its tiers from the bottom, what each is made of, its board, its decorations (recipes/cakes)."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Annotated, Any, ClassVar

from pydantic import AfterValidator, Field, ValidationInfo

from tinbook.models.finish import Border, OneCake, Slug, read_coat
from tinbook.models.house import Grams, Millimetres, read_at
from tinbook.models.keeping import Seasons
from tinbook.models.parts import PLACES
from tinbook.models.reading import (
    NONE,
    ONE_OR_MORE,
    SCALAR,
    OrNone,
    Private,
    ReadAs,
    Text,
    Texts,
    Written,
    WrittenLine,
    YesNo,
    like,
    measures_in,
    one_of,
    spelled,
    such_as,
    text_of,
    tins_in,
    whole_number,
)
from tinbook.tins import Tin, read_tin
from tinbook.tins.words import SHAPE_WORD
from tinbook.units import Measures, Misread, patterns

NO_BORDER = Border.model_construct(marks="shells", nozzle="round", opening=0.0, pitch=0.0, stroke=0.0, count=0)
"""A tier with no border, whatever the house usually pipes."""
TOP, SIDE, BOARD = "top", "side", "board"
"""Where a decoration goes."""
WHOLE, IN_TIERS = "whole", "in tiers"
"""How a cake travels."""
USUAL_SHAPE = "round"


@dataclass(frozen=True, slots=True, kw_only=True)
class TierSize:
    """The size of a tier: its tin, and how many of them: one, except for cups. `bare`: written as a size alone."""

    count: int
    tin: Tin
    bare: bool
    written: str


def read_tier(text: str, names: Mapping[str, Tin], measures: Measures, shape: str = USUAL_SHAPE) -> TierSize:
    """`25 cm`, `square 25 cm`, `dome 15 cm`, `24 standard cups`, a tin by its own name; a size alone has this `shape`.

    Raises Misread.
    """
    bare = text[:1].isnumeric() and SHAPE_WORD.search(text) is None

    def read(told: str, _: Measures) -> tuple[int, Tin]:
        return read_tin(told, names, measures.tins)

    count, tin = read_at(read, text, 0, measures, before=f"{shape} " if bare else "")
    if count != 1 and not tin.kind.in_trays:
        raise Misread(
            "a tier is one cake", f'write "{tin.name}"; the book works out how many tins to bake it in', 0, len(text)
        )
    return TierSize(count=count, tin=tin, bare=bare, written=text)


def _size(value: Any, info: ValidationInfo) -> TierSize:
    return read_tier(text_of(value), tins_in(info), measures_in(info))


TierText = Annotated[TierSize, ReadAs(_size, SCALAR)]
"""A tier by shape and size, or by its size alone."""


BoardSize = Annotated[float, spelled(read_coat, like(rf"{NONE}|{patterns.LENGTH}", "board"))]
"""How wide a board is in mm; 0 for none."""


class TierKeys(Written):
    """What can be said about one tier, or about the whole cake for all its tiers."""

    mixture: Annotated[Text | None, such_as("creamed-butter-sponge")] = None
    """Its recipe, by the name of the file without `.yaml`. If you give it for the whole cake, it applies to
    every tier without one of its own. Left out: the whole cake's recipe. Every tier except a dummy must have one."""
    height: Annotated[Millimetres | None, such_as("10 cm")] = None
    """How high it is, filled but not yet coated. Left out: as high as its recipe bakes, or as its layers add
    up to."""
    layers: Annotated[int | None, whole_number(1, 20), such_as("4")] = None
    """How many layers of cake are in it. Left out: as many as its recipe says; if you give a height, as many as your
    tiers usually have."""
    filling: Annotated[Slug | None, such_as("american-buttercream", NONE)] = None
    """What goes between its layers: a recipe, by the name of its file, a card, or `none`. Left out: what its recipe
    says, or your usual filling."""
    coat: Annotated[Slug | None, such_as("dark-ganache", NONE)] = None
    """What it is coated with, first coat and last, or `none`. Left out: what its recipe says, or your usual coats."""
    cover: Annotated[Slug | None, such_as("sugarpaste", NONE)] = None
    """The paste that covers it, or `none`. Left out: what its recipe says, or your usual paste."""
    colour: Annotated[Text | None, such_as("hull blue")] = None
    """The colour of that paste, or of the coat if there is no paste, by its name in `house/colours.yaml`. Left out:
    it is not coloured."""
    batter_colour: Annotated[Text | None, such_as("tide blue")] = None
    """The colour of its batter, by its name in `house/colours.yaml`. Left out: it is not coloured."""
    border: Annotated[
        Border | None, OrNone(NO_BORDER), such_as("{opening: 8 mm, pitch: 14 mm, stroke: 20 mm}", NONE)
    ] = None
    """The border piped round it, or `none`. Left out: the border its recipe gives, or your usual one."""
    ribbon: Annotated[YesNo, such_as("yes")] = False
    """Whether a ribbon goes round its foot."""


class TierLine(WrittenLine):
    """A tier that can be written as just its size."""

    chief: ClassVar[str] = "tier"

    tier: Annotated[TierText, such_as("25 cm", "square 25 cm", "24 standard cups")]
    """Its shape and size, as for a tin. A size on its own means the same shape as the tier before it; the first is
    round."""


class DesignTier(TierKeys, TierLine):
    """One tier. If its size is all there is to say, write it without any key. What you give for the whole cake applies
    to each tier that does not say otherwise."""

    on_pillars: Annotated[Millimetres | None, such_as("8 cm")] = None
    """If it stands on pillars, how big the gap below it is. Left out: it stands on the tier below."""
    dummy: Annotated[YesNo, such_as("yes")] = False
    """Whether it is made of foam: covered and decorated, but not to be eaten."""
    icing: Annotated[Slug | None, such_as("american-buttercream")] = None
    """For cups, what goes on each of them: a recipe by the name of its file, or a card. Left out: nothing does."""
    icing_each: Annotated[Grams | None, such_as("35 g")] = None
    """For cups, how much of it goes on each. Left out: what a swirl usually takes."""


class DesignBoard(WrittenLine):
    """The drum the cake stands on. If its size is all there is to say, write it without any key."""

    chief: ClassVar[str] = "size"

    size: Annotated[BoardSize | None, such_as("35 cm", NONE)] = None
    """How wide it is, or `none` if the cake has no board. Left out: wider than the cake by the usual amount, or by what
    `wider` says."""
    wider: Annotated[str | None, one_of("usual", "wide", "least"), such_as("wide")] = None
    """How much wider than the cake it is. Left out: wide if a decoration stands on it, or wider if that needs more
    room, otherwise as your boards usually are."""
    covered: Annotated[str | None, one_of("whole", "ring", "no"), such_as("ring")] = None
    """Whether paste covers all of it, only the ring that shows, or nothing. Left out: as your boards usually are."""
    paste: Annotated[Slug | None, such_as("sugarpaste")] = None
    """The paste that covers it. Left out: your usual paste for boards."""
    colour: Annotated[Text | None, such_as("slate")] = None
    """The colour of that paste, by its name in `house/colours.yaml`. Left out: it is not coloured."""

    @property
    def missing(self) -> bool:
        """Whether the cake has no board."""
        return self.size == 0.0


class DesignDecoration(Written):
    """A decoration: a technique with parts, and where it goes. Its parts are worked out for the tier it goes with."""

    technique: Annotated[Text, such_as("lighthouse-for-the-front")]
    """The technique, by the name of its file without `.yaml`."""
    on: Annotated[str, one_of(*PLACES), such_as("side")] = BOARD
    """Where it goes: on the board in front of the cake, on the side of a tier, or on top."""
    tier: Annotated[int | None, whole_number(1, 12), such_as("2")] = None
    """The tier it goes with, counted from the bottom. Left out: the top one for a decoration on top, otherwise the
    bottom one."""
    count: Annotated[int, whole_number(1, 99), such_as("3")] = 1
    """How many of them are on the cake."""
    gap: Annotated[Millimetres | None, such_as("2 cm")] = None
    """How much space there is between one and the next, where there are several. Left out: the drawing leaves 1 cm."""
    sized_for: Annotated[OneCake | None, such_as("round 20 cm")] = None
    """The cake its parts are sized for, if you want it larger or smaller than its tier calls for. Left out: its
    tier."""
    note: Annotated[Text | None, such_as("A hand's breadth left of the middle.")] = None
    """A short note about it. Left out: nothing is shown."""


def _carried(tiers: tuple[DesignTier, ...]) -> tuple[DesignTier, ...]:
    """The tiers, with a size alone in the shape of the tier before it, if one size is enough for that shape."""
    shape, told = USUAL_SHAPE, list[DesignTier]()
    for tier in tiers:
        size, kind = tier.tier, tier.tier.tin.kind
        if size.bare and shape != USUAL_SHAPE:
            tin = read_tin(f"{shape} {size.written}", sold=size.tin.sold)[1]
            tier = tier.model_copy(update={"tier": replace(size, tin=tin)})
        elif not size.bare:
            shape = kind.key if kind.main == 1 and not kind.extras and not kind.in_trays else USUAL_SHAPE
        told.append(tier)
    return tuple(told)


Tiers = Annotated[tuple[DesignTier, ...], AfterValidator(_carried), ONE_OR_MORE]
SizeTiers = Annotated[tuple[TierText, ...], ONE_OR_MORE]


class CakeHead(Written):
    """What a cake is called, and its tiers."""

    name: Annotated[Text, such_as("Headland cake")]
    """What it is called, at the top of its page and in every list."""
    about: Annotated[Text | None, such_as("The point at low water, with the light on it.")] = None
    """A line or two at the top of its page. Left out: nothing is shown."""
    also: Annotated[Texts, such_as("[lighthouse cake]")] = ()
    """Other names people may look for it by. Left out: only its own name is found."""
    tags: Annotated[Texts, such_as("[birthday, wedding]")] = ()
    """Occasions and other words that group it with cakes like it. Left out: it has no tags."""
    seasons: Annotated[Seasons, such_as("summer", "[May, September to October]")] = ()
    """What time of year you make it. Left out: it is for all seasons."""
    tiers: Annotated[
        Tiers, such_as("[25 cm, 20 cm, 15 cm]", "- {tier: 25 cm, mixture: ginger-sponge}\n- 20 cm", "24 standard cups")
    ]
    """Its tiers, from the bottom up. A single tier, a sheet, a ball, an outline or cups in a box is a cake too."""


class CakeDesign(TierKeys, CakeHead):
    """Each file in `recipes/cakes` is one cake you make: its tiers from the bottom up, what each is made of, its board
    and its decorations. Everything else about it is worked out, for any size. Name the file in lower case with
    hyphens: that becomes its address.
    """

    needed = frozenset((
        "mixture", "height", "layers", "filling", "coat", "cover", "colour", "batter colour", "border", "ribbon",
        "beside", "board", "decorations", "travels", "through dowel",
    ))  # fmt: skip

    beside: Annotated[Tiers, such_as("12 standard cups", "- {tier: 12 standard cups, mixture: cupcakes}")] = ()
    """Cakes that are served with it: cups, or a sheet cut in the kitchen. Left out: there are none."""
    board: Annotated[DesignBoard, such_as("35 cm", "{wider: wide, colour: slate}")] = DesignBoard()
    """The board it stands on, and what the board is covered with."""
    decorations: Annotated[
        tuple[DesignDecoration, ...], such_as("- {technique: heron-for-the-side, on: side, tier: 2}")
    ] = ()
    """Its modelled or cut decorations, each a technique with parts. Left out: it has none."""
    travels: Annotated[str | None, one_of(WHOLE, IN_TIERS), such_as(IN_TIERS)] = None
    """How it travels: `whole`, put together at home, or `in tiers`, put together at the venue. Left out: in
    tiers, if it has more than one."""
    through_dowel: Annotated[YesNo | None, such_as("yes")] = None
    """Whether it has a centre dowel, through all its tiers into the board. Left out: it has one if the cake travels
    whole or is tall for its width."""
    techniques: Annotated[Texts, such_as("[cover-a-board, rope-edge]")] = ()
    """Other techniques that go with it, by the names of their files without `.yaml`. Left out: none is linked."""
    portion: Annotated[Text | None, such_as("dessert", "tea slice")] = None
    """The portion each guest gets, by the name you give it. Left out: a dessert portion."""
    sizes: Annotated[Mapping[str, SizeTiers] | None, such_as("{family: [20 cm, 15 cm], party: [30 cm, 25 cm]}")] = None
    """Other sizes you make it in, each under a name: the same number of tiers, from the bottom up. Left out: only its
    own size, and all tiers one size up or down."""
    notes: Annotated[Texts, such_as("[Set up on site; it does not travel stacked.]")] = ()
    """What you have learned about it. Left out: nothing is shown."""
    private: Annotated[Private, such_as("yes", "[notes]")] = False
    """What to leave out of a public site: `yes` for the whole cake, or the names of keys."""

    @property
    def every_tier(self) -> tuple[DesignTier, ...]:
        """Its tiers from the bottom, then what is served beside it."""
        return (*self.tiers, *self.beside)

    @property
    def coloured(self) -> tuple[Any, ...]:
        """Everything that may have a colour: the cake, its board, its tiers."""
        return (self, self.board, *self.every_tier)

    @property
    def made_of(self) -> tuple[str, ...]:
        """The recipes and cards it names for filling, coat, cover and board, each once."""
        named = [getattr(each, name) for each in (self, *self.every_tier) for name in ("filling", "coat", "cover")]
        named += [tier.icing for tier in self.every_tier]
        return tuple(dict.fromkeys(word for word in (*named, self.board.paste) if word and word != NONE))

    @property
    def goes_whole(self) -> bool:
        """Whether it travels put together; a cake with one tier has nothing to put together."""
        return len(self.tiers) < 2 or self.travels == WHOLE

    def of(self, tier: DesignTier, name: str) -> Any:
        """The value of a field for a tier: the tier's own, or else the cake's."""
        return getattr(tier if name in tier.model_fields_set else self, name)


class CakeVariation(CakeDesign):
    """A cake that starts `from` another, and says only what differs. Any key you write here replaces the one it started
    with; everything else stays."""

    needed = CakeDesign.needed | {"tiers"}

    base: Annotated[Text, Field(alias="from", examples=["headland-cake"])]
    """The cake it starts from, by the name of its file without `.yaml`."""
    tiers: Annotated[Tiers, such_as("[20 cm, 15 cm]")] = ()
    """Its tiers, from the bottom up, if they differ. Left out: the tiers of the cake it starts from."""
