"""What a page is for, in one line: what a search engine shows below its name."""

from __future__ import annotations

from collections.abc import Mapping

DESCRIPTIONS: Mapping[str, str] = {
    "home": "{book}: cakes, icings and techniques of one kitchen, weighed for every tin it bakes in.",
    "mixture": "{title}: what to weigh for the tin you have, how it is made and how long it bakes.",
    "mixture_tables": "{title}: every tin, layers, by the egg, balance and times, as a wall sheet.",
    "technique": "{title}: what to have ready, step by step, and what to do if it goes wrong.",
    "cake": "{title}: every tier in every size, its heights, layers, coats, paste and portions.",
    "cake_used": "{title}: ingredients with whole eggs, pastes, colours, tools, boards and dowels.",
    "list": "{title}: {book}, each on a page of its own.",
    "ingredient": "{title}: what a cup and a spoon of it weigh, what to use instead, and where it is used.",
    "ingredients": "Ingredients in {book}: what each weighs by the cup and spoon.",
    "tins": "Convert a tin: how much of a mixture another tin takes, and how many eggs.",
    "all_tins": "Convert any tin to any other: how much of a mixture each takes, and what it holds.",
    "on_hand": "What fits our tins: which mixtures fill them, and how much to make.",
    "measures": "Cups, spoons, eggs, inches and oven marks in grams, centimetres and degrees.",
    "portions": "How many portions a cake from each tin serves, cut as cake makers cut it.",
    "cuts": "{title}: how to cut every cake, drawn to scale.",
    "guests": "From guests to tins: which cakes serve how many.",
    "covering": "How much paste, icing and ribbon covers a cake of every size.",
    "boards": "Drums and cards for every cake: how wide, how much paste, which ribbon and box.",
    "colours": "Our colours, and how to mix each one.",
    "oven": "What to set on this oven’s dial, and how long each mixture bakes in each tin.",
    "rules": "What the law asks when you sell a cake, nation by nation.",
    "reference": "{title}: every key of the files, what it means, what happens without it, and how to write it.",
    "forms": "How to write amounts, tins, times and other values in the files of {book}.",
    "sources": "Who published the figures in {book}, and when.",
}


def described(template: str, title: str, book: str) -> str:
    """The line for a page of this template; its title and the book's name if the template has none."""
    return DESCRIPTIONS.get(template, "{title}, {book}.").format(title=title, book=book)
