"""`tinbook label`: labels at true size, the card that goes with a cake, and the card for a table of cakes."""

from __future__ import annotations

import json
from datetime import date, datetime
from pathlib import Path
from typing import Any

import click

from tinbook.cli.command import recipes_of
from tinbook.cli.template import FORCE, write_all
from tinbook.loading import Loaded, load_book
from tinbook.loading.where import line_of
from tinbook.models.labels import USA
from tinbook.pages.base.page import Desk
from tinbook.pages.labels.cards import goes_with, table_card
from tinbook.pages.labels.printed import MOST, PLAIN, LabelPages, label_pages, label_words, strip_pages
from tinbook.pages.spelling.labels import list_runs, long_date, text_of
from tinbook.pages.spelling.sayings import spell, spelled_all
from tinbook.plans.base.asking import AskError
from tinbook.plans.labels.label import LabelPlan, label_of
from tinbook.plans.labels.listing import labelling_of
from tinbook.press.labels import NoSuchLetter, TooLong, goes_with_pdf, labels_pdf, table_card_pdf
from tinbook.problems import nearest

STRIP, CARD, TABLE, PLAIN_PAPER = "strip", "card", "table", "plain"
KINDS = (STRIP, CARD, TABLE, PLAIN_PAPER)


@click.command()
@click.option("--of", "of", multiple=True, metavar="NAME", help="The mixture or cake, by its file; for table, several.")
@click.option(
    "--made", type=click.DateTime(("%Y-%m-%d",)), metavar="DAY", help="The day it is made; today if left out."
)
@click.option(
    "--paper", default=PLAIN_PAPER, metavar="PAPER",
    help="One of your own sheets by its name, or: plain (A4 to cut up), strip, card (A6, to go with it), table.",
)  # fmt: skip
@click.option("--first", type=click.IntRange(1, MOST), default=1, help="The first label on the sheet that is free.")
@click.option("--count", "many", type=click.IntRange(1, MOST), help="How many labels; a sheet full if not given.")
@click.option("--net", metavar="WEIGHT", default="", help='What is in the pack, such as "450 g".')
@click.option("--small-pack", is_flag=True, help="The pack's largest face is under 80 cm²: smaller letters.")
@click.option("--format", "form", type=click.Choice(["pdf", "text", "json"]), default="pdf", help="What to make.")
@click.option("-o", "--output", type=click.Path(path_type=Path), metavar="FILE", help="Where to write the PDF.")
@FORCE
@click.pass_obj
def label(
    book: Path, /, of: tuple[str, ...], made: datetime | None, form: str, output: Path | None, force: bool, **asked: Any
) -> None:
    """Print labels for a mixture or a cake at true size, or the card that goes with it.

    In the order and the letters that the law asks for. What is missing is listed, with the file and line to write it
    in, and then nothing is printed.
    """
    loaded = load_book(recipes_of(book))
    day = (made or datetime.now()).date()
    try:
        if asked["paper"] == TABLE:
            _table(of, loaded, output, force)
            return
        if len(of) != 1:
            raise AskError("a label is for one mixture or cake", "give --of once; several go on --paper table")
        plan = label_of(of[0], loaded.book, loaded.facts, day, asked["net"])
        if form != "pdf":
            click.echo(_told(plan, loaded) if form == "text" else json.dumps(_data(plan, loaded), ensure_ascii=False))
            return
        _refuse(plan, book)
        pdf, said = _pdf(plan, loaded, asked)
    except NoSuchLetter as error:
        hint = "write it in letters that can be printed, on its card or in its recipe"
        raise click.ClickException(f'"{error.sign}" cannot be printed on a label: {hint}') from None
    except AskError as error:
        raise click.ClickException(f"{error.message}: {error.hint}" if error.hint else error.message) from None
    path = output or Path(f"label-{of[0]}.pdf")
    write_all({path: pdf}, force)
    click.echo(said)
    click.echo("Your local authority has the last word on it: ask before you sell.")


def _refuse(plan: LabelPlan, book: Path) -> None:
    """ClickException with everything that is missing, each with its file and line."""
    if plan.ready:
        return
    folder = recipes_of(book)
    lines = [f'no label for "{plan.name}" yet: {len(plan.gaps)} to fill in']
    for gap in plan.gaps:
        place = line_of(folder, gap.address, gap.path) if gap.address else ""
        lines.append(f"{f'{place}: ' if place else ''}{spell(gap.what)}: {spell(gap.cure)}")
    raise click.ClickException("\n  ".join(lines))


def _pdf(plan: LabelPlan, loaded: Loaded, asked: dict[str, Any]) -> tuple[bytes, str]:
    numbers, house = loaded.facts.numbers, plan.house
    least = numbers["x-height on a small pack" if asked["small_pack"] else "x-height"].value
    if house.sold_in == USA:
        least = numbers["letters in the USA"].value
    if asked["paper"] == CARD:
        desk = Desk(loaded.book, loaded.facts, loaded.broken)
        return goes_with_pdf(goes_with(plan, desk), least), f"One card of A6 for {plan.name}."
    pages = _pages(plan, loaded, asked)
    try:
        pdf, x_mm = labels_pdf(pages, least)
    except TooLong as error:
        hint = f"at {pages.wide_mm:g} mm wide they need {error.need_mm:.0f} mm: take larger labels, or --paper card"
        message = f'the words of "{plan.name}" do not fit on a label {error.have_mm:g} mm high at {error.x_mm:.1f} mm'
        raise AskError(message, hint) from None
    many = sum(map(len, pages.pages))
    sheets = f" on {len(pages.pages)} sheet{'s' if len(pages.pages) > 1 else ''}" if pages.high_mm else ""
    return pdf, f"{many} label{'s' if many > 1 else ''}{sheets}, an x {x_mm:.2f} mm high. Print at 100 %."


def _pages(plan: LabelPlan, loaded: Loaded, asked: dict[str, Any]) -> LabelPages:
    words, house, paper = label_words(plan, loaded.facts), plan.house, asked["paper"]
    if paper == STRIP:
        if house.strip is None:
            raise AskError("nobody has said how wide the roll is", 'write "strip: 62 mm" in house/labels.yaml')
        return strip_pages(words, house.strip)
    sheet = PLAIN if paper == PLAIN_PAPER else house.sheets.get(paper)
    if sheet is None:
        known = (*house.sheets, *KINDS)
        close = nearest(paper, known)
        hint = f'did you mean "{close}"?' if close else "there are " + ", ".join(known)
        raise AskError(f'the house has no labels called "{paper}"', hint)
    if asked["first"] > sheet.count:
        raise AskError(f"there are only {sheet.count} labels on a sheet", "give --first a smaller number")
    many = asked["many"] or sheet.count - asked["first"] + 1
    return label_pages(words, sheet, asked["first"], many, cut=paper == PLAIN_PAPER)


def _table(of: tuple[str, ...], loaded: Loaded, output: Path | None, force: bool) -> None:
    if not of:
        raise AskError("a table of cakes needs some", "give --of once for each")
    desk = Desk(loaded.book, loaded.facts, loaded.broken)
    card = table_card(of, desk, labelling_of(loaded.book).sold_in)
    path = output or Path("on-this-table.pdf")
    write_all({path: table_card_pdf(card)}, force)


def _told(plan: LabelPlan, loaded: Loaded) -> str:
    words = label_words(plan, loaded.facts)
    lines = [plan.name, ""]
    if plan.with_list:
        lines.append(f"Ingredients: {text_of(list_runs(plan.listed, loaded.facts))}")
    lines += [text_of(words.contains)] if words.contains else []
    lines += words.lines
    lines += [f"{words.dated} {words.day}. {words.keep}.", f"Batch {words.batch}"] if words.day else []
    lines += [f"not complete: {spell(gap.what)}: {spell(gap.cure)}" for gap in plan.gaps]
    lines += ["", *(f"{rule.says}: {rule.law}, as noted on {long_date(rule.read_on)}" for rule in plan.rules)]
    lines.append("Your local authority has the last word on it: ask before you sell.")
    return "\n".join(lines)


def _data(plan: LabelPlan, loaded: Loaded) -> dict[str, Any]:
    until = plan.until
    return {
        "name": plan.name,
        "ready": plan.ready,
        "ingredients": text_of(list_runs(plan.listed, loaded.facts)),
        "emphasised": [run.text for run in list_runs(plan.listed, loaded.facts) if run.strong],
        "contains": list(plan.contains),
        "unknown": list(plan.listed.unknown),
        "warnings": list(spelled_all(plan.listed.warnings)),
        "made": _iso(plan.made),
        "date": {"kind": until.kind, "day": _iso(until.day), "keep": until.place} if until else None,
        "batch": plan.batch,
        "sold_in": plan.house.sold_in,
        "sold": plan.house.sold,
        "rules": [{"says": rule.says, "law": rule.law, "read_on": _iso(rule.read_on)} for rule in plan.rules],
        "missing": [{"what": spell(gap.what), "write": spell(gap.cure), "file": gap.address} for gap in plan.gaps],
    }


def _iso(day: date) -> str:
    return day.isoformat()
