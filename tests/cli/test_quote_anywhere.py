"""A quote on any day, in any language's signs and letters; and prices only from files without a slip."""

from __future__ import annotations

import subprocess
from collections.abc import Callable
from pathlib import Path

from click.testing import Result
from tests.every import check_every

Run = Callable[..., Result]
CUPS = "2026-12-12-regatta-club-cups"


def test_nothing_is_quoted_for_a_day_that_is_past(run: Run) -> None:
    late = run("quote", "regatta club cups", "--today", "2026-12-13")
    assert late.exit_code == 1 and "12 Dec 2026, is past" in late.output and '"hand over:"' in late.output
    in_time = run("quote", "regatta club cups", "--today", "2026-12-12")
    assert in_time.exit_code == 0 and "12 Dec 2026 at 10:00" in in_time.output


def test_signs_and_days_that_no_typeface_has_are_said_in_others(run: Run, book: Path, tmp_path: Path) -> None:
    """A price is never a question mark with a figure: the code stands for its sign. A day is in figures, whole."""
    order = book / "recipes" / "orders" / f"{CUPS}.yaml"
    told = order.read_text("utf-8")
    (book / "recipes" / "house" / "prices.yaml").unlink()
    for other in order.parent.iterdir():
        if other != order:
            other.unlink()

    def check(case: tuple[str, str, str, str]) -> None:
        code, language, price, day = case
        money = f"currency: {code}\nlanguage: {language}\ndeposit: 50 %\n"
        (book / "recipes" / "house" / "money.yaml").write_text(money, "utf-8")
        order.write_text(f"{told}quoted: 1200\n", "utf-8")
        out = tmp_path / f"{code}.pdf"
        done = run("quote", "regatta club cups", "--today", "2026-12-01", "--pdf", "-o", str(out), "--force")
        assert done.exit_code == 0, done.output
        words = subprocess.run(["pdftotext", "-layout", out, "-"], capture_output=True, check=True, timeout=60)
        text = words.stdout.decode().replace("\u00a0", " ")
        assert price in text and day in text and "?" not in text

    check_every(
        [
            ("GBP", "en-GB", "£1,200.00", "12 Dec 2026"), ("JPY", "ja-JP", "¥1,200", "2026/12/12"),
            ("CNY", "ja-JP", "CNY 1,200.00", "2026/12/12"), ("BDT", "bn-BD", "1,200.00 BDT", "2026-12-12"),
            ("LKR", "si-LK", "LKR 1,200.00", "2026-12-12"), ("KHR", "km-KH", "1,200.00 KHR", "2026-12-12"),
            ("PLN", "pl-PL", "200,00 zł", "12 gru 2026"), ("BHD", "en-GB", "BHD 1,200.000", "12 Dec 2026"),
        ],
        check,
    )  # fmt: skip


def test_a_price_is_not_worked_out_from_files_with_a_slip(run: Run, book: Path) -> None:
    prices = book / "recipes" / "house" / "prices.yaml"
    assert run("table", "price", "--of", "madeira-cake").exit_code == 0
    prices.write_text(
        prices.read_text("utf-8") + "  - {day: 2026-11-27, of: butter, pack: 250 g, price: -2}\n", "utf-8"
    )
    done = run("table", "price", "--of", "madeira-cake")
    assert done.exit_code == 1 and "has a mistake in it" in done.output and "tinbook check" in done.output
    assert run("table", "written", "--of", "madeira-cake").exit_code == 0
