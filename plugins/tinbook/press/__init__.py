"""Sheets and templates as PDF, set by Typst: one wheel for every system, tagged (PDF/UA-1), in the book's typefaces."""

from tinbook.press.setting import cake_sheet_pdf, days_sheet_pdf, quote_pdf, sheet_pdf, templates_pdf

__all__ = ["cake_sheet_pdf", "days_sheet_pdf", "quote_pdf", "sheet_pdf", "templates_pdf"]
