"""How to write a value that is more than words: a tin, a time, a solid; what each means, with examples.

The reference pages show them, and link to them from every key that uses one. The examples of tins come from
the shapes themselves; a new shape is added automatically.
"""

from __future__ import annotations

from collections.abc import Mapping

from tinbook.models.a_form import WrittenForm
from tinbook.models.bakes import LoggedTin, OneTime
from tinbook.models.cakes import BoardSize, TierText
from tinbook.models.cards import Weighs, WeightOfOne
from tinbook.models.finish import Coat, Day, OneCake, Share
from tinbook.models.forms import CUTTERS, SHEETS, SOLIDS, CutterText, MarkText, SheetText, SolidText, TwoLengths
from tinbook.models.house import Celsius, Grams, Millilitres, Millimetres, OvenHeat, TwoSides
from tinbook.models.keeping import OneKeep, OneSeason
from tinbook.models.keys import KeyWords
from tinbook.models.kitchen_forms import KITCHEN_FORMS
from tinbook.models.mixture import Amount, Tins
from tinbook.models.orders import InMinutes
from tinbook.models.parts import PlaceOnPart, TurnOfPart
from tinbook.models.portions import Sides
from tinbook.models.reading import YesNo
from tinbook.models.shelf import TinOrSet
from tinbook.models.steps import Minutes, Standing
from tinbook.tins import SHAPES


def _named(words: Mapping[str, object]) -> str:
    return ", ".join(f"`{word}`" for word in words)


FORMS: tuple[WrittenForm, ...] = (
    WrittenForm(
        name="an amount",
        says="A number, a unit and the ingredient. Things you count need no unit. After a comma you can say how you "
        "want it. Write fractions as you would on paper. A cup or a tablespoon is the one you use, unless you "
        "say which.",
        examples={
            "250 g butter, soft": "by weight", "1 lb 4 oz caster sugar": "pounds and ounces",
            "1 1/2 tsp vanilla extract": "by the spoon", "½ tsp salt": "a fraction as one character",
            "2 US cups plain flour": "saying which cup", "4 eggs": "by number",
        },
        types=(Amount,),
    ),
    WrittenForm(
        name="a weight",
        says="A number and a unit.",
        examples={"250 g": "", "2.5 kg": "", "12 oz": "", "1 lb 4 oz": ""},
        types=(Grams,),
    ),
    WrittenForm(
        name="a volume",
        says="A number and a unit.",
        examples={"240 ml": "", "1.5 litres": "", "2 tbsp": "", "1/2 US cup": ""},
        types=(Millilitres,),
    ),
    WrittenForm(
        name="a length",
        says="A number and a unit. Heights, depths and thicknesses are lengths too.",
        examples={"5 mm": "", "7.5 cm": "", "8 in": "", "8 1/2 in": ""},
        types=(Millimetres,),
    ),
    WrittenForm(
        name="a pair of lengths",
        says="Two lengths with an `x` between them, each with its unit.",
        examples={"44 cm x 36 cm": "", "25 mm x 50 mm": ""},
        types=(TwoSides, Sides),
    ),
    WrittenForm(
        name="a thickness",
        says="A length, or `none` if the cake does not have that coat.",
        examples={"5 mm": "", "none": ""},
        types=(Coat,),
    ),
    WrittenForm(
        name="a percentage",
        place="a-share",
        says="A number and a percent sign.",
        examples={"5 %": "", "12.5 %": ""},
        types=(Share,),
    ),
    WrittenForm(
        name="a place on a part",
        says="A number: 0 is its foot or its left end, 1 its top or its right end. Below 0 or above "
        "1 is beyond the part.",
        examples={"1/3": "", "0.5": "", "-0.2": "below its foot, or left of it"},
        types=(PlaceOnPart,),
        place="a-share-of-the-height",
    ),
    WrittenForm(
        name="how far something leans",
        place="how-far-it-leans",
        says="Degrees to the right, or with a minus to the left.",
        examples={"20°": "", "-15": "to the left"},
        types=(TurnOfPart,),
    ),
    WrittenForm(
        name="a time",
        says="Minutes, hours, or a range of times. In the bake log it is one time, not a range.",
        examples={"25 min": "", "55-65 min": "", "1 h 10 min": "", "48-72 h": ""},
        types=(Minutes, OneTime, InMinutes),
    ),
    WrittenForm(
        name="a length of time",
        place="a-time-to-stand",
        says="One time, anything from minutes to months. A month counts as 30 days.",
        examples={"45 min": "", "12 h": "", "2 days": "", "3 weeks": "", "2 months": ""},
        types=(Standing,),
    ),
    WrittenForm(
        name="an oven temperature",
        place="an-oven-heat",
        says="A figure in °C or °F, or a gas mark. Add `fan` if it is for a fan oven.",
        examples={"170 °C": "", "150 °C fan": "", "gas mark 3": "", "325 °F": ""},
        types=(OvenHeat,),
    ),
    WrittenForm(
        name="a temperature",
        says="How hot or cold something is, in °C or °F.",
        examples={"97 °C": "", "207 °F": ""},
        types=(Celsius,),
    ),
    WrittenForm(
        name="a tier",
        says="A shape and a size, as for a tin. A size on its own means the same shape as the tier below it; the first "
        "is round. For cupcakes, say how many.",
        examples={
            "25 cm": "a round", "square 25 cm": "", "10 in": "in inches", "heart 20 cm": "",
            "dome 15 cm": "a half ball", "24 standard cups": "two dozen cupcakes",
        },
        types=(TierText,),
    ),
    WrittenForm(
        name="the size of a board",
        says="A length, or `none` if the cake has no board.",
        examples={"35 cm": "", "14 in": "", "none": ""},
        types=(BoardSize,),
    ),
    WrittenForm(
        name="a tin",
        says="The shape, its size, then its depth after the last `x`. Measure inside the rim. Leave the depth out if "
        "it is your usual one. In a recipe you can write how many in front; everywhere else it is one tin. 20 cm "
        "and 8 in are two names for the same tin.",
        examples={
            "2 round 20 cm x 7.5 cm": "two of the same tin",
            "round 20 cm": "of the usual depth",
            "round 8 in x 3 in": "in inches",
            "square 20 cm, 7.5 cm deep": "the depth in words",
            **{shape.example: shape.key for shape in SHAPES.values() if shape.key not in ("round", "square")},
            "2 lb loaf": "by the name it is sold under",
            "set of round 15, 20, 25 cm x 7.5 cm": "a set: unit and depth come last",
        },
        types=(Tins, TinOrSet, LoggedTin, OneCake),
    ),
    WrittenForm(
        name="a season",
        says="A season, a month, or a range such as October to March. Seasons are those of the northern hemisphere.",
        examples={"autumn": "", "October": "", "October to March": "", "all year": ""},
        types=(OneSeason,),
    ),
    WrittenForm(
        name="a keeping time",
        place="a-time-it-keeps",
        says="A time and a place: `in the fridge`, `in the freezer`, or `somewhere cool`, which you can leave out.",
        examples={"3 days": "", "1 week in the fridge": "", "2 months in the freezer": ""},
        types=(OneKeep,),
    ),
    WrittenForm(
        name="a date",
        place="a-day",
        says="Year, month and day.",
        examples={"2026-05-02": "the second of May"},
        types=(Day,),
    ),
    WrittenForm(
        name="a weight by volume",
        says="What one measure of it weighs. Spoon it into the cup, do not sift it, and level the top.",
        examples={
            "140 g per US cup": "", "5 g per tsp": "", "0.85 g/ml": "",
            "no volume measure": "",
        },
        types=(Weighs,),
    ),
    WrittenForm(
        name="what one weighs",
        place="the-weight-of-one",
        says="A whole egg, white or yolk of the size you buy, or a weight.",
        examples={"whole egg": "", "egg white": "", "egg yolk": "", "18 g": ""},
        types=(WeightOfOne,),
    ),
    WrittenForm(
        name="a solid",
        says=f"A shape you model: {_named(SOLIDS)}. The width comes first, then how long or how high. "
        "`half` is split lengthways; `flattened` means pressed down; give the size it is pressed to.",
        examples={
            "ball 20 mm": "", "half egg 20 mm x 30 mm": "", "cone 22 mm x 16 mm": "across, high",
            "frustum 36 mm x 70 mm, top 24 mm": "a tower that tapers", "slab 20 x 30 x 8 mm": "wide, long, thick",
            "flattened ball 50 mm, to 84 mm x 70 mm": "a 50 mm ball, pressed to that size",
        },
        types=(SolidText,),
    ),
    WrittenForm(
        name="a sheet",
        says=f"The outline of a flat piece: {_named(SHEETS)}, or a path in mm, as in SVG.",
        examples={"round 40 mm": "", "oval 30 mm x 20 mm": "wide, high", "M0 18V6A6 6 0 0 1 12 6V18Z": "a door"},
        types=(SheetText,),
    ),
    WrittenForm(
        name="a cutter",
        says=f"Its shape and size: {_named(CUTTERS)}. For a cutter that marks a part, a fraction of the part's width "
        "will do.",
        examples={"round 40 mm": "", "leaf 12 mm x 40 mm": "wide, high", "round 3/4": "of the part's width"},
        types=(CutterText,),
    ),
    WrittenForm(
        name="a strip or a rope",
        says="How wide a strip is, or how thick a rope is, then how long it is.",
        examples={"12 mm x 690 mm": "", "15 mm x 20 cm": ""},
        types=(TwoLengths,),
    ),
    WrittenForm(
        name="a mark",
        says="How big one mark is: how far across, or how wide and how high.",
        examples={"6 mm": "", "12 mm x 6 mm": ""},
        types=(MarkText,),
    ),
    *KITCHEN_FORMS,
    WrittenForm(
        name="yes or no",
        says="One or the other.",
        examples={"yes": "", "no": ""},
        types=(YesNo,),
    ),
)  # fmt: skip


def form_of(key: KeyWords) -> WrittenForm | None:
    """How the values of a key are written; None for plain words, a choice, or a group of keys."""
    own = {id(reader) for reader in key.readers}
    return next((form for form in FORMS if own & form.readers), None)
