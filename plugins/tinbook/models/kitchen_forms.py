"""How to write what the kitchen's own files say: days and hours, packs, and what there is on the shelves."""

from __future__ import annotations

from tinbook.models.a_form import WrittenForm
from tinbook.models.currency import Away, CurrencyCode, MarkUp, OneSum, PartOfAll, Power, Tongue
from tinbook.models.kitchen import WrittenDays, WrittenHours
from tinbook.models.orders import Moment
from tinbook.models.packs import HowMuch, PackOfFood, PackOfThings
from tinbook.models.supplies import OneSize

KITCHEN_FORMS: tuple[WrittenForm, ...] = (
    WrittenForm(
        name="a day and a time",
        says="Year, month and day, then the time by the kitchen's clock.",
        examples={"2026-12-05 11:00": "", "2026-12-05 9.30": "half past nine"},
        types=(Moment,),
    ),
    WrittenForm(
        name="hours of work",
        says="From when to when, once or more in a day; `off` for no work at all.",
        examples={"08:00-18:00": "", "08:00-12:30, 14:00-18:00": "with a break", "off": ""},
        types=(WrittenHours,),
    ),
    WrittenForm(
        name="days off",
        says="A day, days from one to another, or the public holidays of a place.",
        examples={
            "2026-12-25": "", "2026-12-24 to 2027-01-02": "", "public holidays in England": "",
            "public holidays in FR": "by a country's code",
        },
        types=(WrittenDays,),
    ),
    WrittenForm(
        name="a pack",
        says="What is in one pack: a weight, a volume, or how many. A reel of ribbon has a length.",
        examples={"250 g": "", "1 l": "", "6": "by number, as eggs are", "none": "for what you never buy"},
        types=(PackOfFood, PackOfThings),
    ),
    WrittenForm(
        name="how much there is",
        says="A weight, a volume, a length or a number, once or several times.",
        examples={"500 g": "", "4 x 250 g": "four packs", "12": "by number", "3 m": "of ribbon", "0": "none left"},
        types=(HowMuch,),
    ),
    WrittenForm(
        name="the size of a thing",
        says="One to three lengths with an `x` between them, after its shape if it is a board.",
        examples={
            "round 30 cm": "a board", "oblong 30 cm x 40 cm": "", "36 cm x 36 cm x 15 cm": "a box, its height last",
            "6 mm x 30 cm": "a dowel", "15 mm": "a ribbon",
        },
        types=(OneSize,),
    ),
    WrittenForm(
        name="a sum of money",
        says="A plain figure with a point before its decimals. It needs no sign or code; if there is one, it has to be "
        "that of your currency.",
        examples={"2.10": "", "£2.10": "", "2.10 GBP": "", "410": ""},
        types=(OneSum,),
    ),
    WrittenForm(
        name="a currency",
        says="The three letters of ISO 4217.",
        examples={"GBP": "pounds", "EUR": "euros", "JPY": "yen, which have no smaller part"},
        types=(CurrencyCode,),
    ),
    WrittenForm(
        name="a language",
        says="A language and a country, each by its letters.",
        examples={"en-GB": "", "fr-FR": "", "ja-JP": ""},
        types=(Tongue,),
    ),
    WrittenForm(
        name="a part of a sum",
        says="A number and a percent sign, below 100 %; a mark-up may be more.",
        examples={"20 %": "", "12.5 %": ""},
        types=(PartOfAll, MarkUp),
    ),
    WrittenForm(
        name="what an oven draws",
        says="A number of kilowatts or watts.",
        examples={"2.2 kW": "", "900 W": ""},
        types=(Power,),
    ),
    WrittenForm(
        name="a distance",
        says="A number of kilometres or miles, one way.",
        examples={"18 km": "", "11 miles": ""},
        types=(Away,),
    ),
)  # fmt: skip
