"""`tinbook trace`: what a pack went into and who had it, or which packs a batch was made from."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import click

from tinbook.cli.command import recipes_of
from tinbook.loading import load_book
from tinbook.pages.spelling.labels import HAD, long_date
from tinbook.pages.spelling.orders import moment
from tinbook.pages.spelling.sayings import spelled_all
from tinbook.plans.base.asking import AskError
from tinbook.plans.labels.trace import OpenPack, Traced, trace_batch, trace_pack


@click.command()
@click.option("--pack", metavar="NUMBER", help="The number on a pack, as it was logged.")
@click.option("--batch", metavar="HANDLE", help='The batch on a label, such as "2026-12-05 our-sponge".')
@click.option("--format", "form", type=click.Choice(["text", "json"]), default="text", help="How to print it.")
@click.pass_obj
def trace(book: Path, pack: str | None, batch: str | None, form: str) -> None:
    """Follow a pack into what was baked and handed over, or a batch back to its packs, as far as was logged."""
    if (pack is None) == (batch is None):
        raise click.ClickException("give either --pack or --batch")
    loaded = load_book(recipes_of(book))
    try:
        found = (
            trace_pack(pack, loaded.book, loaded.facts)
            if pack is not None
            else trace_batch(batch or "", loaded.book, loaded.facts)
        )
    except AskError as error:
        raise click.ClickException(f"{error.message}: {error.hint}" if error.hint else error.message) from None
    click.echo(json.dumps(_data(found), ensure_ascii=False, indent=2) if form == "json" else _text(found))


def _pack_said(each: OpenPack) -> str:
    ends = f"until {long_date(each.until)}" if each.until else "still open"
    best = f", best before {long_date(each.entry.best_before)}" if each.entry.best_before else ""
    return f"{each.card}, pack {each.entry.pack}: opened {long_date(each.entry.day)}, {ends}{best}"


def _text(found: Traced) -> str:
    lines = ["Packs", *(f"  {_pack_said(each)}" for each in found.packs)]
    lines += ["", "Baked", *(f"  {each.handle}" for each in found.batches)]
    lines += ["", "Orders"]
    lines += [
        f"  {each.order.handle} ({each.slug}), out {moment(each.order.hand_over)}: {HAD[each.how]}, by {each.by}"
        for each in found.orders
    ]
    lines += ["", "Not logged, so not known", *(f"  {said}" for said in spelled_all(found.missing))]
    return "\n".join(lines)


def _data(found: Traced) -> dict[str, Any]:
    return {
        "packs": [
            {
                "of": each.card,
                "pack": each.entry.pack,
                "opened": each.entry.day.isoformat(),
                "until": each.until.isoformat() if each.until else None,
                "best_before": each.entry.best_before.isoformat() if each.entry.best_before else None,
            }
            for each in found.packs
        ],
        "batches": [
            {"batch": each.handle, "packs": [pack.entry.pack for pack in each.packs], "unlogged": list(each.unlogged)}
            for each in found.batches
        ],
        "orders": [
            {"order": each.slug, "out": each.order.hand_over.isoformat(), "how": each.how, "by": each.by}
            for each in found.orders
        ],
        "not_logged": list(spelled_all(found.missing)),
    }
