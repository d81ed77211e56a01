"""`tinbook quote`: what a customer is told, and nothing that is only for the kitchen."""

from __future__ import annotations

import subprocess
from collections.abc import Callable
from pathlib import Path

from click.testing import Result
from tests.every import every

Run = Callable[..., Result]
TODAY = ("--today", "2026-12-05")
PLANTED = {"house/money.yaml": (("an hour: 15", "an hour: 73.19"), ("kept up: {an hour: 2.80}", "kept up: {an hour: 61.83}")),
           "house/prices.yaml": (("pack: 250 g, price: 2.15", "pack: 250 g, price: 57.29"), ("price: 11.50", "price: 83.17"))}  # fmt: skip


def plant(book: Path) -> None:
    """Wages and prices that stand nowhere else, and a note that is nobody's business."""
    for name, changes in PLANTED.items():
        path = book / "recipes" / name
        text = path.read_text("utf-8")
        for old, new in changes:
            assert old in text
            text = text.replace(old, new)
        path.write_text(text, "utf-8")
    path = book / "recipes/orders/2026-12-11-slipway-birthday.yaml"
    path.write_text(path.read_text("utf-8").replace("Wants the rock", "Cormorantly wants the rock"), "utf-8")


def words(pdf: Path) -> str:
    return subprocess.run(
        ["pdftotext", "-layout", pdf, "-"], capture_output=True, check=True, timeout=60
    ).stdout.decode()


def test_as_agreed(run: Run) -> None:
    told = run("quote", "slipway birthday", *TODAY)
    assert told.exit_code == 0, told.output
    for said in (
        "Quote from Heronsmouth house book, 5 Dec 2026", "Lighthouse cake: 23 cm round, cuts into 32 portions", "For 30 guests",
        "11 Dec 2026 at 11:00, collected from us", "Price: £205.00", "Deposit received: £50.00", "Still to pay: £155.00",
        "Contains wheat, egg and milk.", "Hidden inside: 1 lolly stick", "One bench, one mixer.",
    ):  # fmt: skip
        assert said in told.output, said
    assert "offer stands" not in told.output


def test_as_it_is_worked_out(run: Run, book: Path) -> None:
    path = book / "recipes/house/money.yaml"
    path.write_text(path.read_text("utf-8").replace("offer stands: 21", "offer stands: 4"), "utf-8")
    told = run("quote", "2026-12-12-regatta-club-cups", *TODAY).output
    assert "Price: £70.00" in told and "Deposit, which holds the date: £17.50" in told and "on the day: £52.50" in told
    assert "This offer stands until: 9 Dec 2026" in told
    # never longer than until it is handed over
    assert "stands until: 12 Dec 2026" in run("quote", "regatta club cups", "--today", "2026-12-10").output


def test_nothing_of_the_kitchens_is_in_it(run: Run, book: Path, tmp_path: Path) -> None:
    """Planted prices, wages, notes; nor a sum of the cost, nor hours, as text or as PDF."""
    plant(book)
    out = tmp_path / "quote.pdf"
    told = run("quote", "slipway birthday", *TODAY)
    assert run("quote", "slipway birthday", *TODAY, "--pdf", "-o", str(out)).exit_code == 0
    cost = run("table", "price", "--of", "lighthouse-cake", "--guests", "30", "--format", "json").output
    assert "57.29" not in told.output and "ormorant" not in told.output
    for text in (told.output, words(out)):
        assert "£205.00" in text
        for secret in ("73.19", "61.83", "57.29", "83.17", "ormorant", "mark-up", "margin", "hour", "cost", "slipway"):
            assert secret not in text, secret
        figures = {line.partition(": ")[2].strip(", \n") for line in cost.splitlines() if "_money" in line}
        assert len(figures) > 20 and not {
            figure for figure in figures if "." in figure and figure[-2:] != ".0" and f"{figure} " in text
        }


def test_no_other_paper_has_them_either(run: Run, book: Path, tmp_path: Path) -> None:
    """The shopping list, a cake's sheet, an order's job sheet, the week's calendar: none knows of money."""
    plant(book)
    for path in (book / "recipes/orders").iterdir():
        if path.stem != "2026-12-08-rope-class":
            path.unlink()
    out = tmp_path / "out"
    out.mkdir()
    for words_ in (
        ("sheet", "--order", "rope class", *TODAY, "--pdf", "-o", str(out / "job.html")),
        ("sheet", "lighthouse-cake", "--pdf", "-o", str(out / "cake.html")),
        ("plan", *TODAY, "--ics", str(out / "week.ics")),
        ("shop", *TODAY),
        ("shop", *TODAY, "--format", "json"),
    ):
        done = run(*words_)
        assert done.exit_code == 0, done.output
        (out / f"told-{len(list(out.iterdir()))}.txt").write_text(done.output, "utf-8")
    told = {path.name: words(path) if path.suffix == ".pdf" else path.read_text("utf-8") for path in out.iterdir()}
    assert len(told) == 10 and {"job.pdf", "cake.pdf", "week.ics"} <= set(told)
    secrets = ("73.19", "61.83", "57.29", "83.17", "£")
    assert {
        name: [each for each in secrets if each in text]
        for name, text in told.items()
        if any(each in text for each in secrets)
    } == {}


def test_the_pdf_says_the_same_on_one_page(run: Run, tmp_path: Path) -> None:
    out = tmp_path / "quote.pdf"
    done = run("quote", "boathouse wedding", *TODAY, "--pdf", "-o", str(out))
    assert done.exit_code == 0, done.output
    said = words(out)
    assert said.count("\f") == 1 and "£475.00" in said and "brought to you" in said and "10 dowels" in said
    assert "slipway" not in said and "boathouse" not in said
    again = run("quote", "boathouse wedding", *TODAY, "--pdf", "-o", str(out))
    assert again.exit_code == 1 and "left alone" in again.output
    assert run("quote", "boathouse wedding", *TODAY, "--pdf", "-o", str(out), "--force").exit_code == 0


@every(
    ("asked", "said"),
    [
        (("rope class",), "tinbook log price"), (("point light",), "is gone"), (("boathous weding",), 'did you mean "boathouse wedding"?'),
        (("slipway birthday", "--force"), "go with --pdf"), (("slipway birthday", "--pdf", "-o", "quote.txt"), ".pdf"),
    ],
)  # fmt: skip
def test_what_cannot_be_quoted(run: Run, asked: tuple[str, ...], said: str) -> None:
    done = run("quote", *asked, *TODAY)
    assert done.exit_code == 1 and said in done.output


def test_a_slip_in_the_money_comes_first(run: Run, book: Path) -> None:
    path = book / "recipes/house/money.yaml"
    path.write_text(path.read_text("utf-8") + "margin: 20 %\n", "utf-8")
    done = run("quote", "slipway birthday", *TODAY)
    assert done.exit_code == 1 and "money.yaml" in done.output and "put these right first" in done.output


def test_another_language_and_currency(run: Run, book: Path) -> None:
    path = book / "recipes/house/money.yaml"
    text = path.read_text("utf-8").replace("currency: GBP", "currency: EUR").replace("en-GB", "fr-FR")
    path.write_text(text, "utf-8")
    told = run("quote", "slipway birthday", *TODAY)
    assert "Price: 205,00 €" in told.output and "11 déc. 2026" in told.output
