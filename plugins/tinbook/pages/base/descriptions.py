"""What a page is for, in one line: what a search engine shows below its name."""

from __future__ import annotations

from collections.abc import Mapping

DESCRIPTIONS: Mapping[str, str] = {
    "home": "{book}: the cakes, icings and techniques of one kitchen, weighed out for every tin we bake in.",
    "mixture": "{title}: what to weigh out, for any tin or batch, and how to make it.",
    "mixture_tables": "{title}: all its tables on one page, to print for the wall.",
    "technique": "{title}: what to have ready, step by step, and what to do if it goes wrong.",
    "cake": "{title}: every tier in every size, its heights, layers, coats, paste and portions.",
    "cake_used": "{title}: ingredients with whole eggs, pastes, colours, tools, boards and dowels.",
    "cake_making": "{title}: oven loads, what it weighs, what holds it up, its boxes, and what is made ahead.",
    "list": "{title}: a page for each, in {book}.",
    "ingredient": "{title}: what a cup and a spoonful of it weigh, what to use instead, and where it is used.",
    "ingredients": "Ingredients in {book}: what a cup and a spoonful of each weigh.",
    "tins": "Convert tin sizes: how much of a mixture another tin takes, and how many eggs.",
    "all_tins": "Convert any tin to any other: how much of a mixture each takes, and what it holds.",
    "on_hand": "What fits our tins: which mixtures fill them, and how much to make.",
    "measures": "Cups, spoons, eggs, inches and oven marks in grams, centimetres and degrees.",
    "portions": "How many portions you get from a cake in each tin, cut as cake makers cut them.",
    "cuts": "{title}: how to cut every cake, drawn to scale.",
    "guests": "Tins by number of guests: the cakes that serve them.",
    "covering": "How much paste, icing and ribbon a cake of every size takes.",
    "boards": "Drums and cards for every cake: how wide, how much paste, which ribbon and box.",
    "colours": "Our colours, and how to mix each one.",
    "oven": "What to set on this oven’s dial, and how long each mixture bakes in each tin.",
    "oven_kind": "{title}: other ways to bake each of them, and what a bake takes.",
    "oven_log": "{title}: how long each cake was in this oven, and what was expected.",
    "allergens": "Which allergens are in everything that {book} makes, and its lists of ingredients.",
    "rules": "What the law asks when you sell a cake, nation by nation.",
    "reference": "{title}: every key in the files, what it means, what happens without it, and how to write it.",
    "forms": "How to write amounts, tins, times and other values in the files of {book}.",
    "sources": "Who published the figures in {book}, and when.",
}


def described(template: str, title: str, book: str) -> str:
    """The line for a page of this template; its title and the book's name if the template has none."""
    return DESCRIPTIONS.get(template, "{title}, {book}.").format(title=title, book=book)
